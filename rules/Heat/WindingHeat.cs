using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>A winding cold and hot, to find its rise.</summary>
public sealed record HeatInput
{
    /// <summary>Ω of the cold winding.</summary>
    public double ColdOhms { get; init; }

    /// <summary>°C of the cold winding.</summary>
    public double ColdCelsius { get; init; }

    /// <summary>Ω within half a minute of the stop.</summary>
    public double HotOhms { get; init; }

    /// <summary>°C of the surroundings at the stop.</summary>
    public double AmbientCelsius { get; init; }

    /// <summary>Insulation class letter.</summary>
    public string InsulationClass { get; init; } = string.Empty;

    /// <summary>Height above the sea in m.</summary>
    public double? AltitudeMetres { get; init; }

    /// <summary>Marked service factor, where the rise was taken at service-factor load.</summary>
    public double? ServiceFactor { get; init; }

    /// <summary><c>copper</c> or <c>aluminium</c>.</summary>
    public string Material { get; init; } = "copper";
}

/// <summary>How hot a winding ran.</summary>
public sealed record HeatReport
{
    /// <summary>Rise above the surroundings in K.</summary>
    public required Quoted RiseKelvin { get; init; }

    /// <summary>Mean temperature of the winding in °C.</summary>
    public required Quoted HotCelsius { get; init; }

    /// <summary>The most that the class allows here, in K.</summary>
    public required Quoted LimitKelvin { get; init; }

    /// <summary>What is left to the limit in K; negative when it is passed.</summary>
    public required Quoted MarginKelvin { get; init; }

    /// <summary>Life against that at the class limit.</summary>
    public required Quoted LifeFactor { get; init; }

    /// <summary><c>pass</c> or <c>fail</c>.</summary>
    public required string Verdict { get; init; }

    /// <summary>Why.</summary>
    public required Statement Why { get; init; }
}

/// <summary>A winding's rise.</summary>
/// <param name="Rise">Above its surroundings, in K.</param>
/// <param name="Hot">Its mean temperature in °C.</param>
public sealed record WindingRise(Quoted Rise, Quoted Hot);

/// <summary>Winding temperature from resistance.</summary>
public static class WindingHeat
{
    /// <summary>The rise against the class, or what is wrong with the readings.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="input">The readings.</param>
    public static Answer<HeatReport> Judge(TradeKnowledge knowledge, HeatInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var problems = HeatProblems.Of(knowledge, input).ToList();
        if (problems.Count > 0)
        {
            return Answer<HeatReport>.Refused(problems);
        }

        var risen = Risen(knowledge, input);
        if (!risen.IsGiven)
        {
            return Answer<HeatReport>.Refused(risen.Problems);
        }

        var (rise, hot) = risen.Value;
        var limit = Limit(knowledge, input);
        var margin = knowledge.Rules["rise-margin"].Quote(limit.Value!.Value - rise.Value!.Value, "kelvin", $"{limit.Text} − {rise.Text}");
        var pass = margin.Value >= 0;
        return new HeatReport
        {
            RiseKelvin = rise,
            HotCelsius = hot,
            LimitKelvin = limit,
            MarginKelvin = margin,
            LifeFactor = Life(knowledge, -margin.Value!.Value),
            Verdict = pass ? "pass" : "fail",
            Why = (pass ? Statement.Of("heat.pass", ("letter", Letter(input))) : Statement.Of("heat.fail", ("letter", Letter(input)))).With("rise", rise).With("limit", limit),
        };
    }

    /// <summary>The rise and the hot winding's temperature alone, where the class is not known.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="input">The readings.</param>
    public static Answer<WindingRise> Rises(TradeKnowledge knowledge, HeatInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var problems = HeatProblems.OfReadings(knowledge, input).ToList();
        return problems.Count > 0 ? Answer<WindingRise>.Refused(problems) : Risen(knowledge, input);
    }

    /// <summary>A resistance at another temperature.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="ohms">Ω at <paramref name="fromCelsius"/>.</param>
    /// <param name="fromCelsius">°C.</param>
    /// <param name="toCelsius">°C.</param>
    /// <param name="material"><c>copper</c> or <c>aluminium</c>.</param>
    public static Answer<Quoted> Resistance(TradeKnowledge knowledge, double ohms, double fromCelsius, double toCelsius, string material)
    {
        var problems = HeatProblems.Of(knowledge, ohms, fromCelsius, toCelsius, material).ToList();
        if (problems.Count > 0)
        {
            return Answer<Quoted>.Refused(problems);
        }

        var rule = Metal(knowledge, material);
        return rule.Quote(ohms * (rule["k"] + toCelsius) / (rule["k"] + fromCelsius), "ohm",
            $"{Units.Text(ohms, "ohm", 5)}, {Units.Text(fromCelsius, "celsius")} to {Units.Text(toCelsius, "celsius")}");
    }

    /// <summary>Life against that at the class limit.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="kelvinAbove">Kelvins above the limit; negative below.</param>
    public static Quoted Life(TradeKnowledge knowledge, double kelvinAbove)
    {
        var rule = knowledge.Rules["insulation-life"];
        return rule.Quote(Math.Pow(2, -kelvinAbove / rule["per-kelvin"]), "ratio", $"Δ = {Units.Text(kelvinAbove, "kelvin")}");
    }

    internal static TradeRule Metal(TradeKnowledge knowledge, string material) =>
        knowledge.Rules[material is "aluminium" or "aluminum" ? "aluminium-resistance" : "copper-resistance"];

    private static Answer<WindingRise> Risen(TradeKnowledge knowledge, HeatInput input)
    {
        var rule = knowledge.Rules["heat-range"];
        var rise = Rise(knowledge, input);
        if (rise.Value < -rule["cold-band-kelvin"])
        {
            return new Problem("invalid-fact", "hotOhms", Statement.Of("heat.below-surroundings").With("rise", rise));
        }

        var hot = knowledge.Rules["hot-celsius"].Quote(input.AmbientCelsius + rise.Value!.Value, "celsius", $"{Units.Text(input.AmbientCelsius, "celsius")} + {rise.Text}");
        return hot.Value > rule["most-celsius"]
            ? new Problem("invalid-fact", "hotOhms", Statement.Of("heat.above-all").With("hot", hot).With("most", rule.Quote(rule["most-celsius"], "celsius", "any winding")))
            : new WindingRise(rise, hot);
    }

    private static Quoted Rise(TradeKnowledge knowledge, HeatInput input)
    {
        var k = Metal(knowledge, input.Material)["k"];
        var kelvin = (input.HotOhms - input.ColdOhms) / input.ColdOhms * (k + input.ColdCelsius) + input.ColdCelsius - input.AmbientCelsius;
        return knowledge.Rules["rise-by-resistance"].Quote(kelvin, "kelvin",
            $"R1 = {Units.Text(input.ColdOhms, "ohm", 5)} at {Units.Text(input.ColdCelsius, "celsius")}, R2 = {Units.Text(input.HotOhms, "ohm", 5)}, ta = {Units.Text(input.AmbientCelsius, "celsius")}, k = {Units.Number(k, 4)}");
    }

    private static Quoted Limit(TradeKnowledge knowledge, HeatInput input)
    {
        var table = knowledge.Tables["insulation-classes"];
        var row = table.Row(Letter(input))!;
        var service = input.ServiceFactor >= knowledge.Rules["heat-range"]["service-factor-from"] ? table.Number(row, "rise-nema-service-factor") : null;
        var rise = service ?? table.Number(row, "rise-nema") ?? table.Number(row, "rise-iec")!.Value;
        var rule = knowledge.Rules["rise-limit"];
        var above = Math.Max(0, (input.AltitudeMetres ?? 0) - rule["from-metres"]);
        var warm = Math.Max(0, input.AmbientCelsius - rule["ambient-celsius"]);
        var limit = rise * (1 - rule["share"] * above / rule["per-metres"]) - warm;
        return rule.Quote(limit, "kelvin",
            $"class {row.Key}: {Units.Text(rise, "kelvin")}, {Units.Text(input.AltitudeMetres ?? 0, "metre")}, {Units.Text(input.AmbientCelsius, "celsius")}",
            null, new TrailStep(table.States, string.Empty, $"class {row.Key}", Units.Text(rise, "kelvin")));
    }

    private static string Letter(HeatInput input) => input.InsulationClass.Trim().ToUpperInvariant();
}
