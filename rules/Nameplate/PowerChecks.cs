using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>Checks of the power against amps, volts, efficiency and power factor.</summary>
internal static class PowerChecks
{
    public static IEnumerable<PlateFinding> All(PlateFacts facts) =>
        new[] { PowerUnits(facts), Least(facts), Table(facts), Efficiency(facts), Starting(facts) }.OfType<PlateFinding>();

    /// <summary>Kilowatts against horsepower where both are marked.</summary>
    private static PlateFinding? PowerUnits(PlateFacts facts)
    {
        var rule = facts.Knowledge.Rules["pc-kw-hp"];
        if (facts.Plate is not { Horsepower: { } horsepower, Kilowatts: { } kilowatts } || (kilowatts / horsepower >= rule["least"] && kilowatts / horsepower <= rule["most"]))
        {
            return null;
        }

        var ratio = rule.Quote(kilowatts / horsepower, "ratio", $"{Units.Text(kilowatts, "kilowatt")} / {Units.Text(horsepower, "horsepower")}");
        return new PlateFinding("PC-KW-HP", Statement.Of("nameplate.kw-hp").With("ratio", ratio)
            .With("kilowatts", Units.Text(kilowatts, "kilowatt")).With("horsepower", Units.Text(horsepower, "horsepower")), "doubtful");
    }

    /// <summary>The current below which the marked power cannot be.</summary>
    private static PlateFinding? Least(PlateFacts facts)
    {
        if (facts.Watts is not { } watts)
        {
            return null;
        }

        var rule = facts.Knowledge.Rules["pc-imin"];
        var root = LockedRotor.PhaseFactor(facts.Phases ?? 3);
        foreach (var pair in facts.Pairs.Where(pair => pair.Amps < watts / (root * pair.Volts)).Take(1))
        {
            var least = rule.Quote(watts / (root * pair.Volts), "amp", $"{Units.Text(facts.Horsepower!.Value, "horsepower")}, {Units.Text(pair.Volts, "volt")}, {facts.Phases ?? 3} ph");
            var statement = facts.Phases == 1 ? Statement.Of("nameplate.imin-peak") : Statement.Of("nameplate.imin");
            return new PlateFinding("PC-IMIN", statement.With("least", least).With("amps", Units.Text(pair.Amps, "amp")).With("volts", Units.Text(pair.Volts, "volt")), "impossible");
        }

        return null;
    }

    /// <summary>Plate amps against the code table's for the same size.</summary>
    private static PlateFinding? Table(PlateFacts facts)
    {
        if (facts.Phases is not { } phases || facts.Watts is not { } watts || facts.Plate.Number("serviceFactor") > facts.Knowledge.Rules["pc-irange"]["most-service-factor"])
        {
            return null;
        }

        var rule = facts.Knowledge.Rules["pc-irange"];
        var (least, most) = phases == 3 ? (rule["three-phase-least"], rule["three-phase-most"]) : (rule["single-phase-least"], rule["single-phase-most"]);
        var iec = facts.Region == Region.Iec;
        foreach (var pair in facts.Pairs)
        {
            var table = (iec, phases) switch
            {
                (true, 3) => "iec-current-three-phase",
                (true, _) => "iec-current-single-phase",
                (false, 3) => "nec-430-250",
                _ => "nec-430-248",
            };
            var found = CurrentTable.Find(facts.Knowledge, table, iec ? watts / 1000 : facts.Horsepower!.Value, pair.Volts);
            if (!found.IsGiven || found.Value.Between)
            {
                continue;
            }

            var ratio = pair.Amps / found.Value.Amps.Value!.Value;
            if (ratio >= least && ratio <= most)
            {
                continue;
            }

            var quoted = rule.Quote(ratio, "ratio", $"{Units.Text(pair.Amps, "amp")} / {found.Value.Amps.Text}");
            return new PlateFinding("PC-IRANGE", Misread(rule, ratio, phases)
                .With("ratio", quoted).With("table", found.Value.Amps).With("amps", Units.Text(pair.Amps, "amp")).With("volts", Units.Text(pair.Volts, "volt")), "doubtful");
        }

        return null;
    }

    /// <summary>The likeliest misreading behind a ratio of plate to table.</summary>
    private static Statement Misread(TradeRule rule, double ratio, int phases) =>
        ratio >= rule["double-least"] && ratio <= rule["double-most"] ? Statement.Of("nameplate.irange-double")
        : ratio > 1 && ratio < rule["double-least"] ? Statement.Of("nameplate.irange-high")
        : ratio < 1 && phases == 1 ? Statement.Of("nameplate.irange-peak")
        : ratio >= rule["half-least"] && ratio < 1 ? Statement.Of("nameplate.irange-half")
        : Statement.Of("nameplate.irange-other");

    /// <summary>The efficiency that power, volts, amps and power factor amount to.</summary>
    private static PlateFinding? Efficiency(PlateFacts facts)
    {
        if (facts.PowerFactor is not { } powerFactor || facts.Watts is not { } watts || facts.Phases is null || facts.Pairs.Count == 0)
        {
            return null;
        }

        var rule = facts.Knowledge.Rules["pc-eff"];
        var pair = facts.Pairs[0];
        var efficiency = watts / (facts.Root * pair.Volts * pair.Amps * powerFactor);
        var marked = facts.Efficiency;
        if (efficiency >= rule["least"] && efficiency <= rule["most"] && (marked is not { } said || Math.Abs(efficiency / said - 1) <= rule["band"]))
        {
            return null;
        }

        var quoted = rule.Quote(efficiency * 100, "percent",
            $"{Units.Text(watts, "watt", 4)}, {Units.Text(pair.Volts, "volt")}, {Units.Text(pair.Amps, "amp")}, power factor {Units.Number(powerFactor)}, {facts.Phases} ph");
        return new PlateFinding("PC-EFF", (efficiency <= rule["most"] && efficiency >= rule["least"]
            ? Statement.Of("nameplate.efficiency-other", ("marked", Units.Text(100 * marked!.Value, "percent")))
            : Statement.Of("nameplate.efficiency-impossible")).With("efficiency", quoted), efficiency > 1 ? "impossible" : "doubtful");
    }

    /// <summary>Locked-rotor amps of the code letter, or as marked, against the plate's amps.</summary>
    private static PlateFinding? Starting(PlateFacts facts)
    {
        if (facts.Plate.Text("codeLetter") is not { } letter)
        {
            return null;
        }

        var table = facts.Knowledge.Tables["nec-430-7-b"];
        if (table.Row(letter.Trim()) is null)
        {
            return new PlateFinding("PC-CODE", Statement.Of("nameplate.code-unknown", ("letter", letter), ("letters", string.Join(' ', table.Rows.Select(row => row.Key)))), "doubtful");
        }

        if (facts.Horsepower is not { } horsepower || facts.Pairs.Count == 0 || facts.Phases is not { } phases)
        {
            return null;
        }

        var rule = facts.Knowledge.Rules["pc-code"];
        var pair = facts.Pairs[0];
        var range = LockedRotor.FromCodeLetter(facts.Knowledge, letter, horsepower, pair.Volts, phases)!;
        var (low, high) = (range.Low!.Value!.Value / pair.Amps, (range.High ?? range.Low).Value!.Value / pair.Amps);
        if (high >= rule["least"] && low <= rule["most"])
        {
            return null;
        }

        var quoted = rule.Quote(high < rule["least"] ? high : low, "ratio", $"code {letter.Trim()}, {Units.Text(horsepower, "horsepower")}, {Units.Text(pair.Volts, "volt")}, {Units.Text(pair.Amps, "amp")}");
        return new PlateFinding("PC-CODE", Statement.Of("nameplate.code-ratio", ("letter", letter.Trim().ToUpperInvariant())).With("ratio", quoted), "doubtful");
    }
}
