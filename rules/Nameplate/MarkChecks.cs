using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>Checks of the marks that are no power, volts, amps or speed: service factor, insulation, duty, capacitor.</summary>
internal static class MarkChecks
{
    private static readonly string[] ShortTime = ["INT", "S2", "S3", "MIN", "SHORT"];

    public static IEnumerable<PlateFinding> All(PlateFacts facts) =>
        new[] { ServiceAmps(facts), Insulation(facts), Duty(facts), Capacitor(facts), Size(facts) }.OfType<PlateFinding>();

    /// <summary>A power that no single-phase motor of the tables has.</summary>
    private static PlateFinding? Size(PlateFacts facts)
    {
        var rows = facts.Knowledge.Tables["nec-430-248"];
        return facts is { Phases: 1, Horsepower: { } horsepower } && horsepower > rows.Rows[^1].Size() * (1 + facts.Knowledge.Rules["size-rounding"]["share"])
            ? new PlateFinding("PC-SIZE", Statement.Of("nameplate.too-large-for-one-phase", ("power", facts.Plate.Kilowatts is { } kilowatts ? Units.Text(kilowatts, "kilowatt") : Units.Text(horsepower, "horsepower")))
                .With("largest", rows.Quote(rows.Rows[^1].Size(), "horsepower", "largest row")), "doubtful")
            : null;
    }

    private static PlateFinding? ServiceAmps(PlateFacts facts)
    {
        var rule = facts.Knowledge.Rules["pc-sfa"];
        var marked = facts.Plate.Numbers("serviceFactorAmps");
        var amps = facts.Plate.Amps;
        if (marked.Count == 0 || amps.Count == 0)
        {
            return null;
        }

        var factor = facts.Plate.ServiceFactor ?? 1;
        var ratio = marked[0] / amps[0];
        return ratio >= rule["least"] - 1e-9 && ratio <= factor + rule["above-service-factor"] + 1e-9
            ? null
            : new PlateFinding("PC-SFA", Statement.Of("nameplate.service-amps", ("factor", Units.Number(factor)))
                .With("ratio", rule.Quote(ratio, "ratio", $"{Units.Text(marked[0], "amp")} / {Units.Text(amps[0], "amp")}")), "doubtful");
    }

    private static PlateFinding? Insulation(PlateFacts facts)
    {
        if (facts.Plate.Text("insulationClass") is not { } letter)
        {
            return null;
        }

        var table = facts.Knowledge.Tables["insulation-classes"];
        if (table.Row(letter.Trim().Split(' ')[^1]) is not { } row)
        {
            return new PlateFinding("PC-INS", Statement.Of("nameplate.class-unknown", ("letter", letter), ("classes", string.Join(", ", table.Rows.Select(one => one.Key)))), "doubtful");
        }

        var rise = facts.Plate.Number("temperatureRise") ?? facts.Plate.Number("riseKelvin") ?? facts.Plate.Number("rise");
        var limit = table.Number(row, "rise-nema-service-factor") ?? table.Number(row, "rise-iec");
        return rise > limit
            ? new PlateFinding("PC-INS", Statement.Of("nameplate.rise-above-class", ("letter", row.Key), ("rise", Units.Text(rise.Value, "kelvin")))
                .With("limit", table.Quote(limit.Value, "kelvin", $"class {row.Key}")), "doubtful")
            : null;
    }

    private static PlateFinding? Duty(PlateFacts facts)
    {
        var duty = (facts.Plate.Text("duty") ?? facts.Plate.Text("timeRating"))?.ToUpperInvariant();
        return duty is not null && !duty.Contains("CONT", StringComparison.Ordinal) && Array.Exists(ShortTime, word => duty.Contains(word, StringComparison.Ordinal))
            ? new PlateFinding("PC-DUTY", Statement.Of("nameplate.short-time", ("duty", duty)), "mind")
            : null;
    }

    private static PlateFinding? Capacitor(PlateFacts facts) =>
        (facts.Plate.Number("capacitorMicrofarads") ?? facts.Plate.Number("microfarads")) is not null
        && (facts.Plate.Phases == 3 || MotorKind.Of(facts.Type) is "split-phase" or "shaded-pole" or "three-phase" or "dc-permanent-magnet")
            ? new PlateFinding("PC-CAP", Statement.Of("nameplate.capacitor-kind", ("kind", facts.Type ?? "three-phase")), "doubtful")
            : null;
}
