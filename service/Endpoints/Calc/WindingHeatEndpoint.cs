using WireCoach.Rules.Heat;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Winding temperature from resistance, and a resistance at another temperature.</summary>
internal static class WindingHeatEndpoint
{
    public static void MapWindingHeat(this RouteGroupBuilder calc) => calc.MapPost("/winding-heat", (HeatBody body, TradeKnowledge knowledge, Problems problems) => problems.Result(Answer(knowledge, body)))
        .WithSummary("Judges the rise of a winding by its resistance, or carries a resistance to another temperature")
        .WithDescription("Either {coldOhms, coldCelsius, hotOhms, ambientCelsius, insulationClass, altitudeMetres?, serviceFactor?, material?} or {ohms, fromCelsius, toCelsius, material?}.");

    /// <summary>The judgement, or what is wrong with the body.</summary>
    public static Answer<object> Answer(TradeKnowledge knowledge, HeatBody body)
    {
        var material = body.Material ?? "copper";
        if (body.Ohms is not null || body.FromCelsius is not null || body.ToCelsius is not null)
        {
            var missing = Missing(("ohms", body.Ohms), ("fromCelsius", body.FromCelsius), ("toCelsius", body.ToCelsius));
            var carried = missing.Count > 0 ? Answer<Quoted>.Refused(missing)
                : WindingHeat.Resistance(knowledge, body.Ohms!.Value, body.FromCelsius!.Value, body.ToCelsius!.Value, material);
            return carried.Then(found => (object)new CarriedOhms(found));
        }

        var absent = Missing(("coldOhms", body.ColdOhms), ("coldCelsius", body.ColdCelsius), ("hotOhms", body.HotOhms), ("ambientCelsius", body.AmbientCelsius));
        if (string.IsNullOrWhiteSpace(body.InsulationClass))
        {
            absent.Add(Problem.NotGiven("insulationClass"));
        }

        return absent.Count > 0 ? Answer<object>.Refused(absent) : WindingHeat.Judge(knowledge, new HeatInput
        {
            ColdOhms = body.ColdOhms!.Value,
            ColdCelsius = body.ColdCelsius!.Value,
            HotOhms = body.HotOhms!.Value,
            AmbientCelsius = body.AmbientCelsius!.Value,
            InsulationClass = body.InsulationClass!,
            AltitudeMetres = body.AltitudeMetres,
            ServiceFactor = body.ServiceFactor,
            Material = material,
        }).Then(report => (object)report);
    }

    private static List<Problem> Missing(params (string Field, double? Value)[] members) =>
        [.. members.Where(member => member.Value is null).Select(member => Problem.NotGiven(member.Field))];

    internal sealed record HeatBody
    {
        public double? ColdOhms { get; init; }

        public double? ColdCelsius { get; init; }

        public double? HotOhms { get; init; }

        public double? AmbientCelsius { get; init; }

        public string? InsulationClass { get; init; }

        public double? AltitudeMetres { get; init; }

        public double? ServiceFactor { get; init; }

        public double? Ohms { get; init; }

        public double? FromCelsius { get; init; }

        public double? ToCelsius { get; init; }

        public string? Material { get; init; }
    }

    internal sealed record CarriedOhms(Quoted Ohms);
}
