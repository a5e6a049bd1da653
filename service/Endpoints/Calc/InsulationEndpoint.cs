using WireCoach.Rules.Cases;
using WireCoach.Rules.Insulation;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Insulation and earth readings, judged.</summary>
internal static class InsulationEndpoint
{
    public static void MapInsulation(this RouteGroupBuilder calc) => calc.MapPost("/insulation", (InsulationBody body, TradeKnowledge knowledge, Problems problems) => problems.Result(Answer(knowledge, body)))
        .WithSummary("Judges insulation readings, corrected to 40 °C, and the earth path")
        .WithDescription(
            "Verdicts: pass, marginal, fail, retest (the temperature cannot be corrected), no-proof (not an insulation test, or the range ends too low). " +
            "'earthOhms' with 'cordMetres' and 'region' adds the earth path; it may be asked alone.");

    /// <summary>The judgement, or what is wrong with the body.</summary>
    public static Answer<object> Answer(TradeKnowledge knowledge, InsulationBody body)
    {
        var wrong = new List<Problem>();
        EarthReport? earth = null;
        if (body.EarthOhms is { } ohms)
        {
            var judged = EarthJudge.Judge(knowledge, ohms, body.Region ?? Region.NorthAmerica, body.CordMetres);
            (earth, wrong) = (judged.Value, [.. judged.Problems]);
        }

        InsulationReport? report = null;
        if (earth is null || body.Readings is not null || body.RatedVolts is not null)
        {
            var input = Input(body, wrong);
            if (wrong.Count == 0)
            {
                var answer = InsulationJudge.Judge(knowledge, input);
                report = answer.Value;
                wrong.AddRange(answer.Problems);
            }
        }

        return wrong.Count > 0 ? Answer<object>.Refused(wrong) : Answered(report, earth);
    }

    private static InsulationInput Input(InsulationBody body, List<Problem> wrong)
    {
        var readings = body.Readings ?? [];
        wrong.AddRange(readings.Select((reading, at) => (reading, at))
            .Where(one => one.reading?.Megohms is null)
            .Select(one => new Problem("invalid-fact", $"readings[{one.at}].megohms", Statement.Of("problem.missing", ("field", "megohms")))));
        return new InsulationInput
        {
            RatedVolts = body.RatedVolts,
            Readings = [.. readings.Select(reading => new InsulationReading(
                reading?.Megohms ?? 0, reading?.AtMinute, reading?.Celsius, reading?.TestVolts, reading?.OverRange ?? false))],
            Kind = body.Kind ?? "random-wound",
            System = body.InsulationSystem ?? "unknown",
            InsulationClass = body.InsulationClass,
            Edition = AdoptedYear.Read(body.Edition, wrong) ?? new InsulationInput().Edition,
            EarlierMegohms = body.EarlierMegohms ?? [],
        };
    }

    private static InsulationAnswer Answered(InsulationReport? report, EarthReport? earth) => new(
        report?.CorrectedMegohms, report?.MinimumMegohms, report?.PolarizationIndex, report?.AbsorptionRatio, report?.NotApplicable,
        report?.Verdict ?? earth!.Verdict, report?.Why ?? earth!.Why, report?.DoNext ?? earth!.DoNext, report?.Notes ?? [], report?.TestVolts, earth);

    internal sealed record InsulationBody
    {
        public double? RatedVolts { get; init; }

        public IReadOnlyList<ReadingBody?>? Readings { get; init; }

        public string? Kind { get; init; }

        public string? InsulationSystem { get; init; }

        public string? InsulationClass { get; init; }

        public PlateValue? Edition { get; init; }

        public IReadOnlyList<double>? EarlierMegohms { get; init; }

        public Region? Region { get; init; }

        public double? EarthOhms { get; init; }

        public double? CordMetres { get; init; }
    }

    internal sealed record ReadingBody(double? Megohms, double? AtMinute, double? Celsius, double? TestVolts, bool? OverRange);

    internal sealed record InsulationAnswer(
        Quoted? CorrectedMegohms,
        Quoted? MinimumMegohms,
        Quoted? PolarizationIndex,
        Quoted? AbsorptionRatio,
        Statement? NotApplicable,
        string Verdict,
        Statement Why,
        IReadOnlyList<Statement> DoNext,
        IReadOnlyList<Statement> Notes,
        QuotedRange? TestVolts,
        EarthReport? Earth);
}
