using System.Globalization;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Insulation;

/// <summary>What cannot be an insulation reading.</summary>
internal static class InsulationProblems
{
    private static readonly string[] Systems = ["thermoset", "thermoplastic", "unknown"];

    public static IEnumerable<Problem> Of(TradeKnowledge knowledge, InsulationInput input)
    {
        var (rule, megohms, minutes, celsius) = (knowledge.Rules["insulation-reading"], knowledge.Rules["input-megohms"], knowledge.Rules["input-minutes"], knowledge.Rules["input-insulation-celsius"]);
        if (input.RatedVolts is not { } volts)
        {
            yield return Problem.NotGiven("ratedVolts");
        }
        else if (!(volts > 0 && volts <= rule["most-rated-volts"]))
        {
            yield return new Problem("invalid-fact", "ratedVolts", Statement.Of("insulation.not-above",
                ("field", "ratedVolts"), ("value", Units.Given(volts, "volt")), ("least", Units.Text(0, "volt")), ("most", Units.Text(rule["most-rated-volts"], "volt"))));
        }

        if (!InsulationMinimum.Kinds.Contains(input.Kind, StringComparer.Ordinal))
        {
            yield return new Problem("invalid-fact", "kind", Statement.Of("insulation.unknown-kind", ("kind", input.Kind), ("kinds", string.Join(", ", InsulationMinimum.Kinds))));
        }

        if (!Systems.Contains(input.System, StringComparer.Ordinal))
        {
            yield return new Problem("invalid-fact", "insulationSystem", Statement.Of("insulation.unknown-system", ("system", input.System), ("systems", string.Join(", ", Systems))));
        }

        if (WrongEdition(knowledge, input.Edition) is { } edition)
        {
            yield return edition;
        }

        if (input.Readings.Count == 0)
        {
            yield return new Problem("invalid-fact", "readings", Statement.Of("insulation.no-reading"));
        }

        for (var at = 0; at < input.EarlierMegohms.Count; at++)
        {
            if (!(input.EarlierMegohms[at] >= megohms["least"] && input.EarlierMegohms[at] <= megohms["most"]))
            {
                yield return new Problem("invalid-fact", $"earlierMegohms[{at}]", Statement.Of("insulation.out-of-range",
                    ("field", $"earlierMegohms[{at}]"), ("value", Units.Given(input.EarlierMegohms[at], "megohm")), ("least", Units.Text(megohms["least"], "megohm")), ("most", Units.Text(megohms["most"], "megohm"))));
            }
        }

        var classes = knowledge.Tables["insulation-classes"];
        if (input.InsulationClass is { Length: > 0 } letter && classes.Row(letter.Trim()) is null)
        {
            yield return new Problem("invalid-fact", "insulationClass", Statement.Of("nameplate.class-unknown", ("letter", letter), ("classes", string.Join(", ", classes.Rows.Select(row => row.Key)))));
        }

        for (var at = 0; at < input.Readings.Count; at++)
        {
            var reading = input.Readings[at];
            (string Name, double? Value, string Unit, double Least, double Most)[] members =
            [
                ("megohms", reading.Megohms, "megohm", megohms["least"], megohms["most"]),
                ("atMinute", reading.AtMinute, "minute", minutes["least"], minutes["most"]),
                ("celsius", reading.Celsius, "celsius", celsius["least"], celsius["most"]),
                ("testVolts", reading.TestVolts, "volt", 0, rule["most-rated-volts"]),
            ];
            foreach (var (name, value, unit, least, most) in members.Where(member => member.Value is { } given && !(given >= member.Least && given <= member.Most)))
            {
                yield return new Problem("invalid-fact", $"readings[{at}].{name}", Statement.Of("insulation.out-of-range",
                    ("field", name), ("value", Units.Given(value!.Value, unit)), ("least", Units.Text(least, unit)), ("most", Units.Text(most, unit))));
            }
        }
    }

    /// <summary>Only editions whose figures stand here are taken; another year is told the nearest of them.</summary>
    private static Problem? WrongEdition(TradeKnowledge knowledge, int edition)
    {
        List<int> known = [.. InsulationMinimum.Editions(knowledge).Order()];
        return known.Contains(edition) ? null : new Problem("invalid-fact", "edition", Statement.Of("insulation.unknown-edition",
            ("edition", edition.ToString(CultureInfo.InvariantCulture)), ("known", string.Join(", ", known)), ("nearest", known.MinBy(one => Math.Abs(one - edition)).ToString(CultureInfo.InvariantCulture))));
    }
}
