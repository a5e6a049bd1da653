using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>A capacitor's health, what may replace it, what several make together, and how it is discharged.</summary>
internal static class CapacitorEndpoint
{
    public static void MapCapacitor(this RouteGroupBuilder calc) => calc.MapPost("/capacitor", (CapacitorBody body, TradeKnowledge knowledge, Problems problems) => problems.Result(Answer(knowledge, body)))
        .WithSummary("Judges a capacitor and its replacements, and how it is made safe")
        .WithDescription(
            "'microfarads' is a number, or two for a printed range. 'measured' is {microfarads}, or {volts, amps, hertz} at the same moment, or {open: true}, {short: true}, {ohms}. " +
            "Parts in 'candidates', 'series' and 'parallel' are {microfarads, volts, use}. 'fromVolts' and 'toVolts' are direct volts.");

    /// <summary>The report, or what is wrong with the body.</summary>
    public static Answer<object> Answer(TradeKnowledge knowledge, CapacitorBody body)
    {
        var wrong = new List<Problem>();
        var input = new CapacitorInput
        {
            Marked = Part(body, string.Empty, wrong),
            Hertz = body.Hertz,
            Measured = body.Measured is { } measured ? new CapacitorMeasured
            {
                Microfarads = measured.Microfarads,
                Volts = measured.Volts,
                Amps = measured.Amps,
                Hertz = measured.Hertz,
                Ohms = measured.Ohms,
                Open = measured.Open ?? false,
                Short = measured.Short ?? false,
            }
            : null,
            Candidates = Parts(body.Candidates, "candidates", wrong),
            Series = Parts(body.Series, "series", wrong),
            Parallel = Parts(body.Parallel, "parallel", wrong),
            BleedOhms = body.BleedOhms,
            FromVolts = body.FromVolts,
            ToVolts = body.ToVolts,
            WithinSeconds = body.WithinSeconds,
            MotorVolts = body.MotorVolts,
            Horsepower = Power(body.Horsepower, "horsepower", wrong),
            Kilowatts = Power(body.Kilowatts, "kilowatts", wrong),
            TurnsRatio = body.TurnsRatio,
            Damaged = body.Damaged ?? false,
        };
        return wrong.Count > 0 ? Answer<object>.Refused(wrong) : CapacitorCalculator.Calculate(knowledge, input).Then(report => (object)report);
    }

    private static IReadOnlyList<CapacitorPart> Parts(IReadOnlyList<PartBody?>? parts, string at, List<Problem> wrong) =>
        [.. (parts ?? []).Select((part, index) => Part(part?.Marks ?? new MarksBody(), $"{at}[{index}].", wrong))];

    private static CapacitorPart Part(MarksBody part, string at, List<Problem> wrong)
    {
        if (part.Microfarads is { Numbers.Count: 0 or > 2 } text)
        {
            wrong.Add(new Problem("unreadable-quantity", at + "microfarads", Statement.Of("nameplate.not-a-number", ("field", at + "microfarads"), ("text", text.Text))));
        }

        var numbers = part.Microfarads?.Numbers ?? [];
        return new CapacitorPart(
            numbers.Count > 0 ? numbers[0] : null, part.MicrofaradsTo ?? (numbers.Count > 1 ? numbers[1] : null), part.Volts, Use(part.Use ?? part.Type), part.TolerancePercent);
    }

    /// <summary>A power as a number, or as the trade writes it: 1/2, 1 1/2.</summary>
    private static double? Power(PlateValue? size, string field, List<Problem> wrong)
    {
        var number = size is null ? null : Fractions.Read(size.Text);
        if (size is not null && number is null)
        {
            wrong.Add(new Problem("unreadable-quantity", field, Statement.Of("nameplate.not-a-number", ("field", field), ("text", size.Text))));
        }

        return number;
    }

    private static string Use(string? use) => use?.ToLowerInvariant() switch
    {
        null or "" => "unknown",
        "electrolytic" or "motor-start" => "start",
        "film" or "metallised-film" or "metallized-film" or "motor-run" => "run",
        var other => other,
    };

    internal sealed record CapacitorBody : MarksBody
    {
        public double? Hertz { get; init; }

        public MeasuredBody? Measured { get; init; }

        public IReadOnlyList<PartBody?>? Candidates { get; init; }

        public IReadOnlyList<PartBody?>? Series { get; init; }

        public IReadOnlyList<PartBody?>? Parallel { get; init; }

        public double? BleedOhms { get; init; }

        public double? FromVolts { get; init; }

        public double? ToVolts { get; init; }

        public double? WithinSeconds { get; init; }

        public double? MotorVolts { get; init; }

        public PlateValue? Horsepower { get; init; }

        public PlateValue? Kilowatts { get; init; }

        public double? TurnsRatio { get; init; }

        public bool? Damaged { get; init; }
    }

    internal sealed record MeasuredBody(double? Microfarads, double? Volts, double? Amps, double? Hertz, double? Ohms, bool? Open, bool? Short);

    /// <summary>What is printed on a capacitor.</summary>
    internal record MarksBody
    {
        public PlateValue? Microfarads { get; init; }

        public double? MicrofaradsTo { get; init; }

        public double? Volts { get; init; }

        public string? Use { get; init; }

        public string? Type { get; init; }

        public double? TolerancePercent { get; init; }
    }

    /// <summary>A part: an object, or its microfarads alone.</summary>
    [System.Text.Json.Serialization.JsonConverter(typeof(PartBodyConverter))]
    internal sealed record PartBody(MarksBody Marks);
}
