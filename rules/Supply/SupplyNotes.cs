using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>What stands beside the figures: who decides, and where a figure is not the whole truth.</summary>
internal static class SupplyNotes
{
    public static IEnumerable<Statement> American(
        TradeKnowledge knowledge, SupplyInput input, TableCurrent table, ConductorChoice? conductor, ProtectionChoice device, VoltageDropReport? drop) =>
        new[]
        {
            [Statement.Of("supply.who-decides")],
            Suitability(knowledge, input),
            PlateAmps(knowledge, input, table),
            Drop(knowledge.Rules["voltage-drop-percent"], drop),
            input.PlateAmps is null ? [Statement.Of("supply.overload-needs-plate")] : [],
            table.Between ? [Statement.Of("supply.next-row", ("row", $"{table.RowKey} hp"))] : [],
            conductor?.CelsiusColumn.Value > knowledge.Rules["nec-terminal"]["unmarked-celsius"] ? [Statement.Of("supply.terminals").With("column", conductor.CelsiusColumn)] : [],
            conductor is null ? [] : SmallConductor(knowledge, conductor, device),
            device.Device is "instantaneous-trip-breaker" ? [Statement.Of("supply.instantaneous")] : [],
            input.Phases == 3 ? [Statement.Of("supply.lost-line")] : [],
            input.CordConnected ? Cord(knowledge, table) : [],
        }.SelectMany(notes => notes);

    public static IEnumerable<Statement> International(
        TradeKnowledge knowledge, SupplyInput input, TableCurrent? table, ProtectionChoice device, ConductorChoice cable, VoltageDropReport? drop, Quoted? loop, EarthChoice earth, int year)
    {
        var scope = knowledge.Rules.In("iec-final-circuit", year);
        return new[]
        {
            [Statement.Of("supply.who-decides")],
            Suitability(knowledge, input),
            table is null ? [] : PlateAmps(knowledge, input, table),
            Drop(knowledge.Rules["iec-voltage-drop-percent"], drop),
            input.PlateAmps is null ? [Statement.Of("supply.overload-needs-plate")] : [],
            table is { Between: true } ? [Statement.Of("supply.next-row", ("row", $"{table.RowKey} kW"))] : [],
            loop is null ? [] : [(device.Device is "circuit-breaker-d" ? Statement.Of("supply.loop-d") : Statement.Of("supply.loop")).With("loop", loop)],
            device.Device is "fuse-gg" ? [Statement.Of("supply.fuse-short-circuit-only").With("fuse", device.StandardAmps).With("cable", cable.AmpacityAmps)] : [],
            input.Phases == 1 && device.Device is "motor-protection-breaker" ? [Statement.Of("supply.three-poles-in-series")] : [],
            [Statement.Of("supply.disconnection").With("fixed", scope.Quote(scope["fixed-amps"], "amp", "fixed")).With("socket", scope.Quote(scope["socket-amps"], "amp", "socket outlets"))],
            earth.FaultSize is { } least && least.Value > earth.Size.Value ? [Statement.Of("supply.earth-by-fault").With("least", least).With("size", earth.Size)] : [],
            input.Earthing is "tt" ? [Statement.Of("supply.tt-needs-rcd")] : [],
            input.Phases == 3 ? [Statement.Of("supply.lost-line")] : [],
            input.InsulationCelsius > knowledge.Rules["iec-cable-ambient"]["insulation-celsius"] ? [Statement.Of("supply.pvc-table")] : [],
        }.SelectMany(notes => notes);
    }

    /// <summary>Plate amps that could not carry the power even without a loss, or far from what the table has for it.</summary>
    private static IEnumerable<Statement> PlateAmps(TradeKnowledge knowledge, SupplyInput input, TableCurrent table)
    {
        if (input.PlateAmps is not { } amps || PlatePower.Watts(knowledge, input.Kilowatts is null ? input.Horsepower : null, input.Kilowatts) is not { } watts)
        {
            yield break;
        }

        var volts = input.PlateVolts ?? input.Volts * (1 + knowledge.Rules["supply-deviation"]["most-percent"] / 100);
        var least = knowledge.Rules["pc-imin"].Quote(watts / (LockedRotor.PhaseFactor(input.Phases) * volts), "amp", $"{Units.Text(watts, "watt", 4)}, {Units.Text(volts, "volt")}, {Units.Number(input.Phases)} ph");
        var rule = knowledge.Rules["pc-irange"];
        var phases = input.Phases == 3 ? "three-phase" : "single-phase";
        var share = rule.Quote(amps / table.Amps.Value!.Value, "ratio", $"{Units.Text(amps, "amp")} / {table.Amps.Text}");
        if (amps < least.Value)
        {
            yield return Statement.Of("supply.amps-impossible", ("amps", Units.Text(amps, "amp")), ("power", input.Kilowatts is { } kilowatts ? Units.Text(kilowatts, "kilowatt") : Units.Text(input.Horsepower!.Value, "horsepower"))).With("least", least);
        }
        else if (share.Value < rule[$"{phases}-least"] || share.Value > rule[$"{phases}-most"])
        {
            yield return Statement.Of("supply.amps-doubtful", ("amps", Units.Text(amps, "amp"))).With("ratio", share).With("table", table.Amps);
        }
    }

    /// <summary>Plate against supply: volts, and volts per hertz.</summary>
    private static IEnumerable<Statement> Suitability(TradeKnowledge knowledge, SupplyInput input)
    {
        if (input.PlateVolts is not { } plate)
        {
            yield break;
        }

        yield return SupplyMatch.Volts(knowledge, plate, input.Volts).Why;
        var frequencies = knowledge.Rules["supply-frequencies"];
        var hertz = input.Hertz ?? frequencies[input.Region == Region.Iec ? "iec-hertz" : "na-hertz"];
        if (input.PlateHertz is { } plateHertz && !plateHertz.Equals(hertz))
        {
            yield return SupplyMatch.VoltsPerHertz(knowledge, input.Volts, hertz, plate, plateHertz).Why;
            if (input.Phases == 1)
            {
                yield return Statement.Of("supply.hertz-single-phase");
            }
        }
    }

    private static IEnumerable<Statement> Drop(TradeRule rule, VoltageDropReport? drop)
    {
        if (drop is null)
        {
            yield break;
        }

        if (drop.Percent.Value > rule["branch-percent"])
        {
            yield return Statement.Of("supply.drop-high").With("percent", drop.Percent).With("most", rule.Quote(rule["branch-percent"], "percent", "recommended"));
        }

        if (drop is { StartingPercent: { } starting, StartingVoltsAtMotor: { } left, StartingTorque: { } torque } && 100 - starting.Value < rule["start-least-percent"])
        {
            yield return (100 - starting.Value < rule["start-stop-percent"] ? Statement.Of("supply.start-stop") : Statement.Of("supply.start-low"))
                .With("left", left).With("percent", starting).With("torque", torque);
        }
    }

    private static IEnumerable<Statement> SmallConductor(TradeKnowledge knowledge, ConductorChoice conductor, ProtectionChoice device)
    {
        var table = knowledge.Tables["nec-small-conductors"];
        var size = conductor.Size.Text.Split(' ')[0];
        if (table.Row(size) is { } row && device.StandardAmps.Value > table.Number(row, "copper"))
        {
            yield return Statement.Of("supply.small-conductor").With("size", conductor.Size).With("device", device.StandardAmps)
                .With("most", table.Quote(table.Number(row, "copper")!.Value, "amp", $"{size} AWG"));
        }
    }

    private static IEnumerable<Statement> Cord(TradeKnowledge knowledge, TableCurrent table)
    {
        var rule = knowledge.Rules["nec-cord"];
        var (small, large) = (rule["small-receptacle-amps"] * rule["one-load-percent"] / 100, rule["large-receptacle-amps"] * rule["one-load-percent"] / 100);
        var amps = table.Amps.Value;
        var limit = rule.Quote(amps <= small ? small : large, "amp", $"{Units.Text(rule["one-load-percent"], "percent")} of a circuit with several outlets");
        yield return (amps <= large ? Statement.Of("supply.cord") : Statement.Of("supply.cord-too-much")).With("amps", table.Amps).With("limit", limit);
        if (Fractions.Read(table.RowKey) > rule["plug-is-controller-horsepower"])
        {
            yield return Statement.Of("supply.plug-rated");
        }
    }
}
