using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>What cannot be a reading of a winding.</summary>
internal static class HeatProblems
{
    private static readonly string[] Materials = ["copper", "aluminium", "aluminum"];

    public static IEnumerable<Problem> Of(TradeKnowledge knowledge, HeatInput input)
    {
        foreach (var problem in OfReadings(knowledge, input))
        {
            yield return problem;
        }

        var table = knowledge.Tables["insulation-classes"];
        var known = table.Rows.Where(row => table.Number(row, "rise-nema") is not null || table.Number(row, "rise-iec") is not null).Select(row => row.Key).ToList();
        if (!known.Contains(input.InsulationClass.Trim().ToUpperInvariant(), StringComparer.Ordinal))
        {
            yield return new Problem("invalid-fact", "insulationClass", Statement.Of("heat.class-without-rise", ("letter", input.InsulationClass), ("classes", string.Join(", ", known))));
        }
    }

    public static IEnumerable<Problem> OfReadings(TradeKnowledge knowledge, HeatInput input)
    {
        var rule = knowledge.Rules["heat-range"];
        var limit = knowledge.Rules["rise-limit"];
        (string Field, double? Value, string Unit, double Least, double Most)[] figures =
        [
            ("coldOhms", input.ColdOhms, "ohm", double.Epsilon, rule["most-ohms"]),
            ("hotOhms", input.HotOhms, "ohm", double.Epsilon, rule["most-ohms"]),
            ("coldCelsius", input.ColdCelsius, "celsius", rule["least-celsius"], rule["most-celsius"]),
            ("ambientCelsius", input.AmbientCelsius, "celsius", rule["least-celsius"], limit["most-ambient-celsius"]),
            ("altitudeMetres", input.AltitudeMetres, "metre", rule["least-metres"], limit["most-metres"]),
            ("serviceFactor", input.ServiceFactor, "ratio", 1, rule["most-service-factor"]),
        ];
        foreach (var problem in figures.Select(figure => Outside(figure.Field, figure.Value, figure.Unit, figure.Least, figure.Most)).OfType<Problem>())
        {
            yield return problem;
        }

        if (Material(input.Material) is { } wrong)
        {
            yield return wrong;
        }
    }

    public static IEnumerable<Problem> Of(TradeKnowledge knowledge, double ohms, double fromCelsius, double toCelsius, string material)
    {
        var rule = knowledge.Rules["heat-range"];
        return new[]
        {
            Outside("ohms", ohms, "ohm", double.Epsilon, rule["most-ohms"]),
            Outside("fromCelsius", fromCelsius, "celsius", rule["least-celsius"], rule["most-celsius"]),
            Outside("toCelsius", toCelsius, "celsius", rule["least-celsius"], rule["most-celsius"]),
            Material(material),
        }.OfType<Problem>();
    }

    internal static Problem? Outside(string field, double? value, string unit, double least, double most) =>
        value is not { } given || (given >= least && given <= most)
            ? null
            : new Problem("invalid-fact", field, Statement.Of(least is > 0 and <= double.Epsilon ? "heat.not-above" : "heat.out-of-range",
                ("field", field), ("value", Units.Given(given, unit)), ("least", Units.Text(least <= double.Epsilon && least > 0 ? 0 : least, unit)), ("most", Units.Text(most, unit))));

    private static Problem? Material(string material) => Materials.Contains(material, StringComparer.Ordinal)
        ? null
        : new Problem("invalid-fact", "material", Statement.Of("heat.unknown-material", ("material", material), ("materials", "copper, aluminium")));
}
