using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Capacitors;

/// <summary>The band in which a capacitor is good, and where a measurement lies in it.</summary>
internal static class CapacitorHealth
{
    /// <summary>Measured µF from a meter, or from volts and amps.</summary>
    public static Quoted? Measured(TradeKnowledge knowledge, CapacitorInput input)
    {
        var rule = knowledge.Rules["capacitor-from-amps"];
        return input.Measured switch
        {
            { Microfarads: { } microfarads } => rule.Quote(microfarads, "microfarad", "read from the meter"),
            { Volts: { } volts and > 0, Amps: { } amps } when (input.Measured.Hertz ?? input.Hertz) is { } hertz => rule.Quote(
                rule["scale"] * amps / (2 * Math.PI * hertz * volts), "microfarad", $"{Units.Text(amps, "amp")}, {Units.Text(volts, "volt")}, {Units.Text(hertz, "hertz")}"),
            _ => null,
        };
    }

    /// <summary>The band of the print.</summary>
    public static QuotedRange? Band(TradeKnowledge knowledge, CapacitorPart part)
    {
        if (part.Microfarads is not { } microfarads)
        {
            return null;
        }

        var (start, run) = (knowledge.Rules["capacitor-band-start"], knowledge.Rules["capacitor-band-run"]);
        if (part.MicrofaradsTo is { } to)
        {
            return new(start.Quote(microfarads, "microfarad", "printed minimum"), start.Quote(to, "microfarad", "printed maximum"));
        }

        var inputs = $"{Units.Text(microfarads, "microfarad", 4)}{(part.TolerancePercent is { } said ? $" ± {Units.Text(said, "percent")}" : string.Empty)}, {part.Use}";
        if (part.TolerancePercent is { } printed)
        {
            return Around(run, microfarads, printed, printed, inputs);
        }

        return string.Equals(part.Use, "start", StringComparison.Ordinal)
            ? Around(start, microfarads, 0, start["above-percent"], inputs)
            : Around(run, microfarads, run["unprinted-percent"], run["unprinted-percent"], inputs);
    }

    /// <summary>The verdict and why.</summary>
    public static (string Verdict, Statement Why) Verdict(TradeKnowledge knowledge, CapacitorInput input, Quoted? measured, QuotedRange? band)
    {
        var dead = knowledge.Rules["capacitor-dead"];
        if (Shorted(dead, input.Measured))
        {
            return ("shorted", Statement.Of("capacitors.shorted"));
        }

        if (input.Measured is { Open: true } || measured?.Value is { } least && (least < dead["open-microfarads"] || least < dead["open-share"] * (input.Marked.Microfarads ?? 0)))
        {
            return ("open", Statement.Of("capacitors.open"));
        }

        if (measured is not { Value: { } value })
        {
            return ("unknown", input.Measured?.Ohms is not null ? Statement.Of("capacitors.ohms-no-proof") : Statement.Of("capacitors.not-measured"));
        }

        if (input.Marked is { Use: "unknown", Microfarads: not null, MicrofaradsTo: null, TolerancePercent: null })
        {
            var (start, run) = (As(knowledge, input, "start", measured), As(knowledge, input, "run", measured));
            return start.Verdict == run.Verdict ? run : ("unknown", Statement.Of("capacitors.use-decides").With("measured", measured));
        }

        if (band is not { Low: { Value: { } low }, High: { Value: { } high } })
        {
            return ("unknown", Statement.Of("capacitors.no-print").With("measured", measured));
        }

        var (from, to) = Limits(knowledge, input.Marked, low, high);
        return value < from ? ("weak", Statement.Of("capacitors.weak").With("measured", measured).With("low", band.Low!).With("high", band.High!))
            : value > to ? ("over", Statement.Of("capacitors.over").With("measured", measured).With("low", band.Low!).With("high", band.High!))
            : value < low - Slack || value > high + Slack ? ("good", Statement.Of("capacitors.good-by-meter").With("measured", measured).With("low", band.Low!).With("high", band.High!)
                .With("from", knowledge.Rules["capacitor-band-run"].Quote(from, "microfarad", "printed band")).With("to", knowledge.Rules["capacitor-band-start"].Quote(to, "microfarad", "printed band")))
            : ("good", Statement.Of("capacitors.good").With("measured", measured).With("low", band.Low!).With("high", band.High!));
    }

    private static (string Verdict, Statement Why) As(TradeKnowledge knowledge, CapacitorInput input, string use, Quoted measured)
    {
        var marked = input.Marked with { Use = use };
        return Verdict(knowledge, input with { Marked = marked }, measured, Band(knowledge, marked));
    }

    /// <summary>The fail limits: the band, widened by the meter's error for a printed tolerance and by a fifth above a printed range.</summary>
    private static (double From, double To) Limits(TradeKnowledge knowledge, CapacitorPart part, double low, double high)
    {
        var (start, run) = (knowledge.Rules["capacitor-band-start"], knowledge.Rules["capacitor-band-run"]);
        if (part.MicrofaradsTo is not null && !string.Equals(part.Use, "run", StringComparison.Ordinal))
        {
            return (low, high * (1 + start["over-print-percent"] / 100));
        }

        var meter = part.TolerancePercent is null ? 0 : run["meter-percent"] / 100 * part.Microfarads!.Value;
        return (low - meter - Slack, high + meter + Slack);
    }

    private static bool Shorted(TradeRule dead, CapacitorMeasured? measured) => measured switch
    {
        { Short: true } => true,
        { Ohms: { } ohms } when ohms < dead["short-ohms"] => true,
        { Volts: { } volts, Amps: { } amps } when amps > 0 && volts / amps < dead["short-volts-per-amp"] => true,
        _ => false,
    };

    private static QuotedRange Around(TradeRule rule, double microfarads, double below, double above, string inputs) => new(
        rule.Quote(microfarads * (1 - below / 100), "microfarad", inputs), rule.Quote(microfarads * (1 + above / 100), "microfarad", inputs));

    private const double Slack = 1e-9;
}
