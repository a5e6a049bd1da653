using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>A motor that is to take the place of another, plate against plate.</summary>
public static class ReplacementMotor
{
    private const string Rule = "replacement-motor";

    /// <summary>Where the two differ and what follows; that they agree, in what was read of both; and what one of the plates does not say.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="old">The plate of the motor that comes off.</param>
    /// <param name="made">The plate of the motor that goes on.</param>
    public static IReadOnlyList<Statement> Compare(TradeKnowledge knowledge, PlateFields old, PlateFields made)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(made);
        Statement?[] differences = [Supply(knowledge, old, made), Power(knowledge, old, made), Speed(knowledge, old, made), Amps(knowledge, old, made), Frame(old, made)];
        List<Statement> said = [.. differences.OfType<Statement>()];
        var missing = Missing(old, made);
        if (said.Count == 0)
        {
            said.Add(Statement.Of(missing.Count == 0 ? "nameplate.replacement-alike" : "nameplate.replacement-alike-so-far"));
        }

        if (missing.Count > 0)
        {
            said.Add(Statement.Of("nameplate.replacement-missing", ("fields", string.Join(", ", missing))));
        }

        return said;
    }

    /// <summary>Phases first, then hertz, then volts: each needs the one before to be alike.</summary>
    private static Statement? Supply(TradeKnowledge knowledge, PlateFields old, PlateFields made)
    {
        if (old.Phases is { } before && made.Phases is { } after && before != after)
        {
            return Statement.Of("nameplate.replacement-phases").With("old", Quote(knowledge, before, "count")).With("new", Quote(knowledge, after, "count"));
        }

        if (old.Hertz is { } one && made.Hertz is { } other && one != other)
        {
            return Statement.Of("nameplate.replacement-hertz").With("old", Quote(knowledge, one, "hertz")).With("new", Quote(knowledge, other, "hertz"));
        }

        return old.Volts.Count > 0 && made.Volts.Count > 0 && Shared(knowledge, old, made) is null
            ? Statement.Of("nameplate.replacement-volts", ("old", Text(old.Volts)), ("new", Text(made.Volts)))
            : null;
    }

    private static Statement? Power(TradeKnowledge knowledge, PlateFields old, PlateFields made)
    {
        if (PlatePower.Watts(knowledge, old.Horsepower, old.Kilowatts) is not { } before || PlatePower.Watts(knowledge, made.Horsepower, made.Kilowatts) is not { } after
            || Within(knowledge, before, after, "power-percent"))
        {
            return null;
        }

        return Statement.Of(after < before ? "nameplate.replacement-weaker" : "nameplate.replacement-stronger")
            .With("old", Quote(knowledge, before / 1000, "kilowatt")).With("new", Quote(knowledge, after / 1000, "kilowatt"));
    }

    private static Statement? Speed(TradeKnowledge knowledge, PlateFields old, PlateFields made) =>
        old.Rpm is not { } before || made.Rpm is not { } after || Within(knowledge, before, after, "speed-percent")
            ? null
            : Statement.Of(after > before ? "nameplate.replacement-faster" : "nameplate.replacement-slower")
                .With("old", Quote(knowledge, before, "rpm")).With("new", Quote(knowledge, after, "rpm")).With("ratio", Quote(knowledge, after / before, "ratio"));

    /// <summary>Amps at the volts that both plates give: what overload and conductors were set by.</summary>
    private static Statement? Amps(TradeKnowledge knowledge, PlateFields old, PlateFields made)
    {
        if (Shared(knowledge, old, made) is not { } shared || At(old, shared.Old) is not { } before || At(made, shared.New) is not { } after || before == after)
        {
            return null;
        }

        return Statement.Of("nameplate.replacement-amps")
            .With("old", Quote(knowledge, before, "amp")).With("new", Quote(knowledge, after, "amp")).With("volts", Quote(knowledge, shared.New, "volt"));
    }

    private static Statement? Frame(PlateFields old, PlateFields made) =>
        old.Text("frame") is { } before && made.Text("frame") is { } after && !string.Equals(before, after, StringComparison.OrdinalIgnoreCase)
            ? Statement.Of("nameplate.replacement-frame", ("old", before), ("new", after))
            : null;

    private static List<string> Missing(PlateFields old, PlateFields made)
    {
        (string Name, Func<PlateFields, bool> Has)[] wanted =
        [
            ("horsepower", plate => plate.Horsepower is not null || plate.Kilowatts is not null), ("rpm", plate => plate.Rpm is not null),
            ("volts", plate => plate.Volts.Count > 0), ("amps", plate => plate.Amps.Count > 0), ("phases", plate => plate.Phases is not null), ("frame", plate => plate.Text("frame") is not null),
        ];
        return [.. wanted.Where(field => !field.Has(old) || !field.Has(made)).Select(field => field.Name)];
    }

    /// <summary>The volts that both plates give, as each writes them.</summary>
    private static (double Old, double New)? Shared(TradeKnowledge knowledge, PlateFields old, PlateFields made)
    {
        foreach (var before in old.Volts)
        {
            foreach (var after in made.Volts.Where(volts => Within(knowledge, before, volts, "volts-percent")))
            {
                return (before, after);
            }
        }

        return null;
    }

    private static double? At(PlateFields plate, double volts)
    {
        var at = plate.Volts.ToList().IndexOf(volts);
        return at >= 0 && plate.Amps.Count == plate.Volts.Count ? plate.Amps[at] : null;
    }

    private static bool Within(TradeKnowledge knowledge, double before, double after, string band) =>
        Math.Abs(after / before - 1) * 100 <= knowledge.Rules[Rule][band];

    private static string Text(IReadOnlyList<double> volts) => string.Join("/", volts.Select(one => Units.Number(one)));

    private static Quoted Quote(TradeKnowledge knowledge, double value, string unit) => knowledge.Rules[Rule].Quote(value, unit, "plate against plate");
}
