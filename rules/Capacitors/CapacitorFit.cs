using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Capacitors;

/// <summary>Whether a part may take the place of another: the same use, the same microfarads, the same volts or more.</summary>
internal static class CapacitorFit
{
    public static CapacitorReplacement Of(TradeKnowledge knowledge, CapacitorPart original, CapacitorPart candidate)
    {
        var against = new[] { Use(original, candidate), Volts(knowledge, original, candidate), Microfarads(knowledge, original, candidate) }.OfType<Statement>().ToList();
        return new(candidate, against.Count == 0, against.Count > 0 ? against[0] : Statement.Of("capacitors.fits"), against);
    }

    private static Statement? Use(CapacitorPart original, CapacitorPart candidate) => (original.Use, candidate.Use) switch
    {
        ("run", "start") => Statement.Of("capacitors.start-as-run"),
        ("start", "start") or ("run", "run") or ("start", "run") => null,
        ("unknown", _) => Statement.Of("capacitors.use-of-old-unknown"),
        _ => Statement.Of("capacitors.use-of-new-unknown"),
    };

    private static Statement? Volts(TradeKnowledge knowledge, CapacitorPart original, CapacitorPart candidate)
    {
        var rule = knowledge.Rules["capacitor-replacement"];
        return (original.Volts, candidate.Volts) switch
        {
            (null, _) => Statement.Of("capacitors.volts-of-old-unknown"),
            (_, null) => Statement.Of("capacitors.volts-of-new-unknown"),
            var (old, made) when made < old => Statement.Of("capacitors.volts-too-low", ("made", Units.Text(made.Value, "volt")))
                .With("old", rule.Quote(old.Value, "volt", "marked on the old one")),
            _ => null,
        };
    }

    private static Statement? Microfarads(TradeKnowledge knowledge, CapacitorPart original, CapacitorPart candidate)
    {
        if (original.Middle is not { } || candidate.Middle is not { } made)
        {
            return original.Middle is null ? Statement.Of("capacitors.microfarads-of-old-unknown") : Statement.Of("capacitors.microfarads-of-new-unknown");
        }

        var (low, high) = Allowed(knowledge, original);
        return made >= low.Value - Slack && made <= high.Value + Slack
            ? null
            : Statement.Of("capacitors.microfarads-differ", ("made", Units.Text(made, "microfarad", 4))).With("low", low).With("high", high);
    }

    /// <summary>The µF that a replacement may have: the printed range, or close to the printed figure.</summary>
    public static (Quoted Low, Quoted High) Allowed(TradeKnowledge knowledge, CapacitorPart original)
    {
        var rule = knowledge.Rules["capacitor-replacement"];
        var inputs = $"{Units.Text(original.Microfarads!.Value, "microfarad", 4)}{(original.MicrofaradsTo is { } to ? $" to {Units.Text(to, "microfarad", 4)}" : string.Empty)}, {original.Use}";
        if (original.MicrofaradsTo is { } upper)
        {
            return (rule.Quote(original.Microfarads.Value, "microfarad", inputs), rule.Quote(upper, "microfarad", inputs));
        }

        var start = string.Equals(original.Use, "start", StringComparison.Ordinal);
        var share = rule[start ? "start-percent" : "run-percent"] / 100;
        var above = start ? knowledge.Rules["capacitor-band-start"]["above-percent"] / 100 : share;
        return (rule.Quote(original.Microfarads.Value * (1 - share), "microfarad", inputs), rule.Quote(original.Microfarads.Value * (1 + above), "microfarad", inputs));
    }

    private const double Slack = 1e-9;
}
