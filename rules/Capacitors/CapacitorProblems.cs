using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Capacitors;

/// <summary>What cannot be a capacitor, a measurement of it, or a discharge.</summary>
internal static class CapacitorProblems
{
    private static readonly string[] Uses = ["start", "run", "unknown"];

    public static IEnumerable<Problem> Of(TradeKnowledge knowledge, CapacitorInput input)
    {
        var rule = knowledge.Rules["capacitor-limits"];
        (string Field, double? Value, string Unit, double Least, double Most)[] figures =
        [
            ("hertz", input.Hertz, "hertz", rule["least-hertz"], rule["most-hertz"]),
            ("measured.hertz", input.Measured?.Hertz, "hertz", rule["least-hertz"], rule["most-hertz"]),
            ("measured.volts", input.Measured?.Volts, "volt", 0, rule["most-volts"]),
            ("bleedOhms", input.BleedOhms, "ohm", double.Epsilon, rule["most-ohms"]),
            ("fromVolts", input.FromVolts, "volt", double.Epsilon, rule["most-volts"]),
            ("toVolts", input.ToVolts, "volt", double.Epsilon, rule["most-volts"]),
            ("withinSeconds", input.WithinSeconds, "second", double.Epsilon, rule["most-seconds"]),
            ("motorVolts", input.MotorVolts, "volt", double.Epsilon, rule["most-volts"]),
            ("horsepower", input.Horsepower, "horsepower", double.Epsilon, knowledge.Rules["supply-range"]["most-horsepower"]),
            ("kilowatts", input.Kilowatts, "kilowatt", double.Epsilon, knowledge.Rules["supply-range"]["most-kilowatts"]),
            ("turnsRatio", input.TurnsRatio, "ratio", rule["least-turns-ratio"], rule["most-turns-ratio"]),
            ("measured.microfarads", input.Measured?.Microfarads, "microfarad", 0, rule["most-microfarads"]),
            ("measured.amps", input.Measured?.Amps, "amp", 0, rule["most-amps"]),
            ("measured.ohms", input.Measured?.Ohms, "ohm", 0, rule["most-ohms"]),
        ];
        foreach (var (field, value, unit, least, most) in figures.Where(figure => figure.Value is { } given && !(given >= figure.Least && given <= figure.Most)))
        {
            yield return Outside(field, value!.Value, unit, least, most);
        }

        foreach (var problem in Part(rule, input.Marked, string.Empty, needed: false)
            .Concat(input.Candidates.SelectMany((part, at) => Part(rule, part, $"candidates[{at}].", needed: false)))
            .Concat(input.Series.SelectMany((part, at) => Part(rule, part, $"series[{at}].", needed: true)))
            .Concat(input.Parallel.SelectMany((part, at) => Part(rule, part, $"parallel[{at}].", needed: true))))
        {
            yield return problem;
        }

        foreach (var problem in Together(knowledge, input))
        {
            yield return problem;
        }
    }

    private static IEnumerable<Problem> Together(TradeKnowledge knowledge, CapacitorInput input)
    {
        if (input.Series.Count > 0 && input.Parallel.Count > 0)
        {
            yield return new Problem("invalid-fact", "parallel", Statement.Of("capacitors.series-or-parallel"));
        }

        if (input.Measured is { Open: true, Short: true })
        {
            yield return new Problem("invalid-fact", "measured.short", Statement.Of("capacitors.open-or-short"));
        }

        var powers = knowledge.Rules["pc-kw-hp"];
        if (input is { Horsepower: { } horsepower and > 0, Kilowatts: { } kilowatts } && (kilowatts / horsepower < powers["least"] || kilowatts / horsepower > powers["most"]))
        {
            yield return new Problem("invalid-fact", "kilowatts", Statement.Of("supply.two-powers", ("horsepower", Units.Text(horsepower, "horsepower")), ("kilowatts", Units.Text(kilowatts, "kilowatt"))));
        }

        if (input.Measured is { Volts: not null } or { Amps: not null } && input.Measured.Microfarads is null)
        {
            var missing = input.Measured.Volts is null ? "measured.volts" : input.Measured.Amps is null ? "measured.amps"
                : (input.Measured.Hertz ?? input.Hertz) is null ? "measured.hertz" : null;
            if (missing is not null)
            {
                yield return Problem.NotGiven(missing);
            }
        }

        var safe = CapacitorSafety.SafeVolts(knowledge).Value!.Value;
        if (input.FromVolts is { } from && (input.BleedOhms is not null || input.WithinSeconds is not null) && from <= (input.ToVolts ?? safe))
        {
            yield return new Problem("invalid-fact", "toVolts", Statement.Of("capacitors.to-below-from", ("from", Units.Text(from, "volt")), ("to", Units.Text(input.ToVolts ?? safe, "volt"))));
        }

        var any = input.Marked != new CapacitorPart(null) || input.Measured is not null || input.Candidates.Count > 0 || input.Series.Count > 0
            || input.Parallel.Count > 0 || input.FromVolts is not null || input.MotorVolts is not null || input.Damaged;
        if (!any)
        {
            yield return new Problem("not-ready", "microfarads", Statement.Of("capacitors.empty")) { Missing = ["microfarads", "volts", "use"] };
        }
    }

    private static IEnumerable<Problem> Part(TradeRule rule, CapacitorPart part, string at, bool needed)
    {
        if (!Uses.Contains(part.Use, StringComparer.Ordinal))
        {
            yield return new Problem("invalid-fact", at + "use", Statement.Of("capacitors.unknown-use", ("use", part.Use), ("uses", string.Join(", ", Uses))));
        }

        (string Field, double? Value, string Unit, double Most)[] figures =
        [
            ("microfarads", part.Microfarads, "microfarad", rule["most-microfarads"]),
            ("microfarads", part.MicrofaradsTo, "microfarad", rule["most-microfarads"]),
            ("volts", part.Volts, "volt", rule["most-volts"]),
            ("tolerancePercent", part.TolerancePercent, "percent", rule["most-tolerance"]),
        ];
        foreach (var (field, value, unit, most) in figures.Where(figure => figure.Value is { } given && !(given > 0 && given <= figure.Most)))
        {
            yield return Outside(at + field, value!.Value, unit, double.Epsilon, most);
        }

        if (part.MicrofaradsTo < part.Microfarads)
        {
            yield return new Problem("invalid-fact", at + "microfarads", Statement.Of("capacitors.range-backwards",
                ("low", Units.Text(part.Microfarads.Value, "microfarad", 4)), ("high", Units.Text(part.MicrofaradsTo.Value, "microfarad", 4))));
        }

        if (needed && part.Microfarads is null)
        {
            yield return Problem.NotGiven(at + "microfarads");
        }
    }

    private static Problem Outside(string field, double value, string unit, double least, double most) =>
        new("invalid-fact", field, Statement.Of(least is > 0 and <= double.Epsilon ? "capacitors.out-of-range" : "capacitors.out-of-span",
            ("field", field), ("value", Units.Given(value, unit)), ("least", Units.Text(least is > 0 and <= double.Epsilon ? 0 : least, unit)), ("most", Units.Text(most, unit))));
}
