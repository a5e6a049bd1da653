using System.Globalization;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Supply;

/// <summary>Volts that are lost along the line, running and starting.</summary>
public static class VoltageDrop
{
    /// <summary>Volts lost over a length of conductor.</summary>
    /// <param name="phases">1 or 3.</param>
    /// <param name="amps">A.</param>
    /// <param name="ohms">Ω of one conductor, one way.</param>
    /// <param name="reactance">Reactance of one conductor, one way, in Ω.</param>
    /// <param name="powerFactor">0 to 1.</param>
    public static double Volts(int phases, double amps, double ohms, double reactance, double powerFactor) =>
        (phases == 3 ? Math.Sqrt(3) : 2) * amps * (ohms * powerFactor + reactance * Math.Sqrt(Math.Max(0, 1 - powerFactor * powerFactor)));

    internal static VoltageDropReport? American(TradeKnowledge knowledge, SupplyInput input, Quoted full, Quoted? starting, string size, int year)
    {
        if (input.LengthMetres is not { } metres)
        {
            return null;
        }

        var rule = knowledge.Rules["voltage-drop"];
        var table = knowledge.Tables["nec-chapter-9"];
        var row = table.Row(size)!;
        var thousands = metres / rule["metres-per-foot"] / rule["feet-per-table"];
        // Without a power factor the plain form: resistance alone, direct current at 75 °C.
        var (ohms, reactance) = input.PowerFactor is null || table.Number(row, "ac-steel") is null
            ? (table.Number(row, "stranded")!.Value * thousands, 0.0)
            : (table.Number(row, "ac-steel")!.Value * thousands, table.Number(row, "reactance-steel")!.Value * thousands);
        var line = new Line(rule, knowledge.Rules["voltage-drop-percent"], ohms, reactance, $"{Units.Text(metres, "metre")} of {size} AWG", year);
        return Report(knowledge, input, line, full, starting, input.PowerFactor ?? 1);
    }

    internal static VoltageDropReport? International(TradeKnowledge knowledge, SupplyInput input, Quoted design, Quoted? starting, string size, double powerFactor)
    {
        if (input.LengthMetres is not { } metres)
        {
            return null;
        }

        var rule = knowledge.Rules["iec-voltage-drop"];
        var ohms = rule["ohm-square-millimetres-per-metre"] * metres / double.Parse(size, CultureInfo.InvariantCulture);
        var reactance = rule["milliohms-per-metre"] / rule["milliohms-per-ohm"] * metres;
        var line = new Line(rule, knowledge.Rules["iec-voltage-drop-percent"], ohms, reactance, $"{Units.Text(metres, "metre")} of {size} mm²", null);
        return Report(knowledge, input, line, design, starting, powerFactor);
    }

    private static VoltageDropReport Report(TradeKnowledge knowledge, SupplyInput input, Line line, Quoted running, Quoted? starting, double powerFactor)
    {
        var volts = Lost(input, line, running, powerFactor);
        var percent = Share(input, line, volts);
        if (starting is null)
        {
            return new(volts, percent, null, null, null, null);
        }

        var rotor = knowledge.Rules["starting-power-factor"];
        var held = line.Reactance == 0
            ? Lost(input, line, starting, 1)
            : new[] { rotor["low"], rotor["high"] }.Select(factor => Lost(input, line, starting, factor)).MaxBy(lost => lost.Value)!;
        var left = Math.Max(0, input.Volts - held.Value!.Value);
        return new(
            volts, percent, held, Share(input, line, held),
            line.Rule.Quote(left, "volt", $"{Units.Text(input.Volts, "volt")} − {held.Text}", line.Year, held.Trail),
            SupplyMatch.Torque(knowledge, input.PlateVolts ?? input.Volts, left));
    }

    private static Quoted Lost(SupplyInput input, Line line, Quoted amps, double powerFactor) => line.Rule.Quote(
        Volts(input.Phases, amps.Value!.Value, line.Ohms, line.Reactance, powerFactor), "volt",
        $"{amps.Text}, {line.What}: R = {Units.Text(line.Ohms, "ohm")}, X = {Units.Text(line.Reactance, "ohm")}, pf {Units.Number(powerFactor)}, {input.Phases} ph", line.Year, amps.Trail);

    private static Quoted Share(SupplyInput input, Line line, Quoted volts) => line.Percent.Quote(
        100 * volts.Value!.Value / input.Volts, "percent", $"{volts.Text} of {Units.Text(input.Volts, "volt")}", line.Year, volts.Trail);

    private sealed record Line(TradeRule Rule, TradeRule Percent, double Ohms, double Reactance, string What, int? Year);
}
