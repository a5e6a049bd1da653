using WireCoach.Rules.Heat;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>Planning figures by the IEC standards.</summary>
internal static class InternationalSupply
{
    public static Answer<SupplyPlan> Plan(TradeKnowledge knowledge, SupplyInput input)
    {
        var year = input.Edition ?? (int)knowledge.Rules["iec-edition"]["year"];
        var table = knowledge.Tables[input.Phases == 3 ? "iec-current-three-phase" : "iec-current-single-phase"];
        var found = Table(knowledge, input, table);
        if (found is { IsGiven: false })
        {
            return Answer<SupplyPlan>.Refused(found.Problems);
        }

        var current = found?.Value;
        var design = Design(knowledge, input, current);
        var row = current is null ? null : table.Row(current.RowKey);
        var device = InternationalProtection.Choose(knowledge, input, design, row, current?.Column);
        if (!device.IsGiven)
        {
            return Answer<SupplyPlan>.Refused(device.Problems);
        }

        var range = InternationalProtection.Range(knowledge, design);
        var required = Required(knowledge, design, device.Value, range);
        var cable = InternationalCable.Choose(knowledge, input, required);
        if (!cable.IsGiven)
        {
            return Answer<SupplyPlan>.Refused(cable.Problems);
        }

        var size = cable.Value.Size.Value!.Value;
        var starting = Starting(knowledge, input, design);
        var powerFactor = input.PowerFactor ?? (row is not null && input.Phases == 3 ? table.Number(row, "power-factor") : null) ?? 1;
        var drop = VoltageDrop.International(knowledge, input, design, starting, Units.Number(size, 4), powerFactor);
        var earth = InternationalCable.Earth(knowledge, size) with
        {
            FaultSize = input is { FaultAmps: { } fault, FaultSeconds: { } seconds } ? InternationalCable.Adiabatic(knowledge, fault, seconds, separate: false) : null,
        };
        var rcd = knowledge.Rules.In("iec-rcd", year);
        var overload = Overload(knowledge, input);
        var loop = InternationalProtection.LoopOhms(knowledge, input, device.Value);
        return new SupplyPlan
        {
            TableAmps = current?.Amps,
            ConductorAmps = required,
            Conductor = cable.Value,
            OverloadAmps = overload,
            OverloadStartAmps = overload,
            OverloadCeilingAmps = overload,
            Protection = device.Value with { CeilingAmps = Ceiling(knowledge, device.Value, cable.Value) },
            EarthConductor = earth,
            VoltageDrop = drop,
            LargerConductor = LargerConductor.International(knowledge, input, design, Units.Number(size, 4), powerFactor),
            StartingAmps = starting,
            LostLineAmps = input.Phases == 3 ? LostLine.Running(knowledge, input.PlateAmps ?? design.Value!.Value) : null,
            DialRange = range,
            LoopOhms = loop,
            DisconnectionSeconds = Disconnection(knowledge, input),
            ResidualMilliamps = rcd.Quote(rcd["milliamps"], "milliamp", $"socket circuits up to {Units.Text(rcd["socket-amps"], "amp")}"),
            EarthElectrodeOhms = input.Earthing is "tt" ? ElectrodeOhms(knowledge, rcd["milliamps"]) : null,
            Edition = $"IEC 60364, {year}",
            Notes = [.. SupplyNotes.International(knowledge, input, current, device.Value, cable.Value, drop, loop, earth, year)],
        };
    }

    /// <summary>The most resistance of the earth electrode behind a residual-current device.</summary>
    public static Quoted ElectrodeOhms(TradeKnowledge knowledge, double milliamps)
    {
        var rule = knowledge.Rules["iec-tt-earth"];
        return rule.Quote(rule["touch-volts"] * rule["milliamps-per-amp"] / milliamps, "ohm", Units.Text(milliamps, "milliamp"));
    }

    /// <summary>Current from shaft power, power factor and efficiency.</summary>
    public static Quoted PowerAmps(TradeKnowledge knowledge, int phases, double watts, double volts, double powerFactor, double efficiency) =>
        knowledge.Rules["iec-power-current"].Quote(watts / (LockedRotor.PhaseFactor(phases) * volts * powerFactor * efficiency), "amp",
            $"{Units.Text(watts, "watt", 5)}, {Units.Text(volts, "volt")}, pf {Units.Number(powerFactor)}, efficiency {Units.Number(efficiency)}, {phases} ph");

    private static Answer<TableCurrent>? Table(TradeKnowledge knowledge, SupplyInput input, TradeTable table) =>
        PlatePower.Watts(knowledge, input.Kilowatts is null ? input.Horsepower : null, input.Kilowatts) is { } watts
            ? CurrentTable.Find(knowledge, Large(knowledge, table, watts / 1000) ?? table.Id, watts / 1000, input.Volts)
            : null;

    /// <summary>The table that goes on where the fuse guide ends.</summary>
    private static string? Large(TradeKnowledge knowledge, TradeTable table, double kilowatts) =>
        table.Id == "iec-current-three-phase" && kilowatts > table.Rows[^1].Size() * (1 + knowledge.Rules["size-rounding"]["share"]) ? "iec-current-large" : null;

    /// <summary>Ib: the largest of table, plate, and power factor with efficiency.</summary>
    private static Quoted Design(TradeKnowledge knowledge, SupplyInput input, TableCurrent? table)
    {
        var rule = knowledge.Rules["iec-design-current"];
        var candidates = new List<Quoted>();
        if (table is not null)
        {
            candidates.Add(table.Amps);
        }

        if (input.PlateAmps is { } plate)
        {
            candidates.Add(rule.Quote(plate, "amp", "plate"));
        }

        if (input is { PowerFactor: { } powerFactor, Efficiency: { } efficiency } && PlatePower.Watts(knowledge, input.Kilowatts is null ? input.Horsepower : null, input.Kilowatts) is { } watts)
        {
            candidates.Add(PowerAmps(knowledge, input.Phases, watts, input.Volts, powerFactor, efficiency));
        }

        var largest = candidates.MaxBy(one => one.Value)!;
        return rule.Quote(largest.Value!.Value, "amp", string.Join(", ", candidates.Select(one => one.Text)), null, largest.Trail);
    }

    /// <summary>What the cable must carry: the breaker's rating, or the end of the dial range where a dial guards it.</summary>
    private static Quoted Required(TradeKnowledge knowledge, Quoted design, ProtectionChoice device, QuotedRange? range)
    {
        var dial = device.Device is "fuse-gg" or "motor-protection-breaker";
        var amps = dial ? range?.High?.Value ?? device.StandardAmps.Value!.Value : device.StandardAmps.Value!.Value;
        return knowledge.Rules["iec-coordination"].Quote(amps, "amp",
            dial && range is not null ? $"end of the dial range for {design.Text}" : $"{device.Device} {device.StandardAmps.Text}", null, design.Trail);
    }

    private static Quoted? Overload(TradeKnowledge knowledge, SupplyInput input)
    {
        if (input.PlateAmps is not { } plate)
        {
            return null;
        }

        var rule = knowledge.Rules["iec-motor-dial"];
        var share = input.Starter is "star-delta" ? rule["star-delta-share"] : 1;
        return rule.Quote(share * plate, "amp", $"plate {Units.Text(plate, "amp")}{(share < 1 ? ", in the phase leads of the star-delta starter" : string.Empty)}");
    }

    private static Quoted Ceiling(TradeKnowledge knowledge, ProtectionChoice device, ConductorChoice cable)
    {
        if (!device.Device.StartsWith("circuit-breaker-", StringComparison.Ordinal))
        {
            return device.CeilingAmps!;
        }

        var ratings = knowledge.Tables["iec-breaker-ratings"];
        var most = ratings.Rows.Last(row => row.Size() <= cable.AmpacityAmps.Value);
        return knowledge.Rules["iec-coordination"].Quote(most.Size(), "amp", $"In ≤ Iz = {cable.AmpacityAmps.Text}", null, cable.AmpacityAmps.Trail);
    }

    private static Quoted Starting(TradeKnowledge knowledge, SupplyInput input, Quoted design)
    {
        var rule = knowledge.Rules["iec-breaker-start"];
        var multiple = rule["start-multiple"] * (input.Starter is "star-delta" ? 1.0 / 3 : 1);
        return knowledge.Rules["iec-fuse-guide"].Quote(multiple * design.Value!.Value, "amp", $"{Units.Number(multiple)} × {design.Text}", null, design.Trail);
    }

    private static Quoted Disconnection(TradeKnowledge knowledge, SupplyInput input)
    {
        var rule = knowledge.Rules["iec-disconnection-time"];
        return input.Earthing is "tt" ? rule.Quote(rule["tt-seconds"], "second", "TT") : rule.Quote(rule["tn-seconds"], "second", "TN");
    }
}
