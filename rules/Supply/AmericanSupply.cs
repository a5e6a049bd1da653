using WireCoach.Rules.Cases;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>Planning figures by the North American code.</summary>
internal static class AmericanSupply
{
    public static Answer<SupplyPlan> Plan(TradeKnowledge knowledge, SupplyInput input)
    {
        var year = input.Edition ?? (int)knowledge.Rules["nec-edition"]["year"];
        var table = TableOf(input);
        var found = Table(knowledge, input, table, year);
        if (!found.IsGiven)
        {
            return Answer<SupplyPlan>.Refused(found.Problems);
        }

        var full = FullLoad(knowledge, input, found.Value, year);
        if (full is null)
        {
            return new Problem("invalid-fact", "plateAmps", Statement.Of("supply.plate-amps-needed"));
        }

        var required = Conductor(knowledge, input, full, year);
        var chosen = AmericanConductor.Choose(knowledge, input, required, year);
        var (conductor, size) = (chosen.Value, chosen.Value?.Size.Text.Split(' ')[0]);
        var device = ShortCircuitDevice.Choose(knowledge, ShortCircuitDevice.Names[input.Protection ?? "inverse-time-breaker"], MotorRow(input), full, year);
        if (conductor is null && !AmericanConductor.HasEarth(knowledge, device.StandardAmps))
        {
            return Answer<SupplyPlan>.Refused(chosen.Problems);
        }

        var starting = Starting(knowledge, input, found.Value, year);
        var earth = AmericanConductor.Earth(knowledge, device.StandardAmps, size, year);
        var drop = size is null ? null : VoltageDrop.American(knowledge, input, full, starting, size, year);
        return new SupplyPlan
        {
            TableAmps = found.Value.Amps,
            ConductorAmps = required,
            Conductor = conductor,
            OverloadAmps = Overload(knowledge, input, "nec-overload", year),
            OverloadStartAmps = input.PlateAmps is { } plate
                ? knowledge.Rules["nec-overload-start"].Quote(knowledge.Rules["nec-overload-start"]["percent"] / 100 * plate, "amp", $"plate {Units.Text(plate, "amp")}") : null,
            OverloadCeilingAmps = Overload(knowledge, input, "nec-overload-ceiling", year),
            Protection = device,
            EarthConductor = earth,
            VoltageDrop = drop,
            LargerConductor = size is null ? null : LargerConductor.American(knowledge, input, full, size, earth, year),
            DisconnectAmps = Times(knowledge, "nec-disconnect", full, year),
            ThermalProtectorAmps = ThermalProtector(knowledge, full, year),
            StartingAmps = starting,
            LostLineAmps = input.Phases == 3 ? LostLine.Running(knowledge, input.PlateAmps ?? full.Value!.Value) : null,
            WindingLeadAmps = input.Starter is "star-delta" ? Times(knowledge, "nec-star-delta-leads", full, year) : null,
            Feeder = input.OtherMotorAmps.Count > 0 ? Feeder.Of(knowledge, full, device, input.OtherMotorAmps, year) : null,
            Edition = $"NEC {year}",
            Notes = [.. SupplyNotes.American(knowledge, input, found.Value, conductor, device, drop), .. chosen.Problems.Select(beyond => beyond.Advice)],
        };
    }

    private static string TableOf(SupplyInput input) => input.MotorType is "dc" ? "nec-430-247" : input.Phases == 3 ? "nec-430-250" : "nec-430-248";

    private static string MotorRow(SupplyInput input) => input.MotorType ?? (input.Phases == 3 ? "squirrel-cage" : "single-phase");

    /// <summary>The table's current by size; by the plate's amps where no size is marked.</summary>
    private static Answer<TableCurrent> Table(TradeKnowledge knowledge, SupplyInput input, string tableId, int year)
    {
        if (PlatePower.Watts(knowledge, input.Horsepower, input.Kilowatts) is { } watts)
        {
            var horsepower = input.Horsepower ?? PlatePower.Horsepower(knowledge, watts).Value!.Value;
            return CurrentTable.Find(knowledge, tableId, horsepower, input.Volts, year);
        }

        var table = knowledge.Tables[tableId];
        var amps = input.PlateAmps!.Value;
        var row = CurrentTable.VoltsColumn(knowledge, table, input.Volts) is { } column
            ? table.Rows.FirstOrDefault(row => table.Number(row, column) >= amps) ?? table.Rows[^1]
            : table.Rows[0];
        var found = CurrentTable.Find(knowledge, tableId, row.Size(), input.Volts, year);
        return found.IsGiven && found.Value.Amps.Value < amps
            ? new Problem("invalid-fact", "plateAmps", Statement.Of("supply.amps-beyond-table", ("amps", Units.Text(amps, "amp"))).With("largest", found.Value.Amps))
            : found;
    }

    /// <summary>The current for conductors, device and disconnect: the table's, or the plate's for slow and special motors.</summary>
    private static Quoted? FullLoad(TradeKnowledge knowledge, SupplyInput input, TableCurrent found, int year)
    {
        var rule = knowledge.Rules["nec-plate-current"];
        return input.Rpm < rule["below-rpm"]
            ? input.PlateAmps is { } amps ? rule.Quote(amps, "amp", $"{Units.Text(input.Rpm.Value, "rpm", 5)}, plate {Units.Text(amps, "amp")}", year) : null
            : found.Amps;
    }

    private static Quoted Conductor(TradeKnowledge knowledge, SupplyInput input, Quoted full, int year)
    {
        var rule = knowledge.Rules["nec-conductor"];
        var factor = rule[input.Rectifier switch { "half-wave" => "half-wave-factor", "full-wave" => "full-wave-factor", _ => "factor" }];
        return rule.Quote(factor * full.Value!.Value, "amp", $"{Units.Number(factor)} × {full.Text}", year, full.Trail);
    }

    private static Quoted? Overload(TradeKnowledge knowledge, SupplyInput input, string id, int year)
    {
        if (input.PlateAmps is not { } amps)
        {
            return null;
        }

        var (basis, rule) = (knowledge.Rules["nec-overload"], knowledge.Rules[id]);
        var marked = (input.ServiceFactor ?? 1) >= basis["service-factor"] || input.TemperatureRise <= basis["rise-celsius"];
        var percent = rule[marked ? "marked-percent" : "other-percent"];
        return rule.Quote(percent / 100 * amps, "amp",
            $"{Units.Text(percent, "percent")} of plate {Units.Text(amps, "amp")}, service factor {Units.Number(input.ServiceFactor ?? 1)}{(input.TemperatureRise is { } rise ? $", rise {Units.Text(rise, "kelvin")}" : string.Empty)}", year);
    }

    private static Quoted Times(TradeKnowledge knowledge, string id, Quoted full, int year)
    {
        var rule = knowledge.Rules[id];
        return rule.Quote(rule["factor"] * full.Value!.Value, "amp", full.Text, year, full.Trail);
    }

    private static Quoted ThermalProtector(TradeKnowledge knowledge, Quoted full, int year)
    {
        var rule = knowledge.Rules["nec-thermal-protector"];
        var amps = full.Value!.Value;
        var percent = amps <= rule["small-amps"] ? rule["small-percent"] : amps <= rule["middle-amps"] ? rule["middle-percent"] : rule["large-percent"];
        return rule.Quote(percent / 100 * amps, "amp", $"{Units.Text(percent, "percent")} of {full.Text}", year, full.Trail);
    }

    /// <summary>Starting current: the code letter's upper end, else the table of locked-rotor currents.</summary>
    private static Quoted? Starting(TradeKnowledge knowledge, SupplyInput input, TableCurrent found, int year)
    {
        if (input.MotorType is "dc")
        {
            return null;
        }

        var horsepower = Fractions.Read(found.RowKey)!.Value;
        if (input.CodeLetter is { } letter && LockedRotor.FromCodeLetter(knowledge, letter, input.Horsepower ?? horsepower, input.PlateVolts ?? input.Volts, input.Phases)?.High is { } marked)
        {
            return marked;
        }

        var held = CurrentTable.Find(knowledge, input.Phases == 3 ? "nec-430-251-b" : "nec-430-251-a", horsepower, input.Volts, year);
        return held.Value?.Amps;
    }
}
