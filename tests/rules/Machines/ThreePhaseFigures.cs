using System.Text.Json;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Machines;
using static WireCoach.Rules.Tests.Machines.MachineVectorsTest;

namespace WireCoach.Rules.Tests.Machines;

/// <summary>The figures of the three-phase vectors by their names in the file.</summary>
internal static class ThreePhaseFigures
{
    public static Dictionary<string, double> Of(JsonElement inputs)
    {
        var (circuit, feed) = Machine(inputs);
        var slip = Number(inputs, "slip", 1);
        var point = ThreePhase.At(circuit, feed, slip, new Losses(0, Number(inputs, "P_rot")));
        var most = ThreePhase.Breakdown(circuit, feed);
        return SinglePhaseFigures.Common(point).Concat(new Dictionary<string, double>
        {
            ["I1"] = point.Amps,
            ["I1_angle_deg"] = point.AngleDegrees,
            ["I2"] = ThreePhase.RotorAmps(circuit, feed, slip),
            ["Vth"] = most.SourceVolts,
            ["Rth"] = most.SourceOhms.Real,
            ["Xth"] = most.SourceOhms.Imaginary,
            ["s_max"] = most.Slip,
            ["T_max"] = most.Torque,
            ["n_at_Tmax"] = most.Rpm,
            ["T_start"] = ThreePhase.At(circuit, feed, 1, new Losses()).Torque,
            ["I2_start"] = ThreePhase.RotorAmps(circuit, feed, 1),
        }).ToDictionary();
    }

    /// <summary>The same watts over two lines instead of three.</summary>
    public static Dictionary<string, double> PowerBalance(JsonElement inputs)
    {
        var balanced = Number(inputs, "P_in") / (Math.Sqrt(3) * Number(inputs, "V_LL") * Number(inputs, "pf"));
        var open = LostLine.Running(CsvFile.Knowledge, balanced).Value!.Value;
        return new()
        {
            ["I_line_balanced"] = balanced,
            ["I_line_open_same_pf"] = open,
            ["I_line_open_pf82"] = open * Number(inputs, "pf") / Number(inputs, "pf_single"),
            ["ratio"] = open / balanced,
        };
    }

    public static Dictionary<string, double> UnequalVolts(JsonElement inputs)
    {
        var volts = inputs.GetProperty("V").EnumerateArray().Select(one => one.GetDouble()).ToList();
        var report = Unbalance.OfVolts(CsvFile.Knowledge, volts).Value!;
        var (rise, percent) = (Number(inputs, "T_rise"), report.Percent.Value!.Value);
        var hotter = rise * report.ExtraRisePercent!.Value!.Value / 100;
        return new()
        {
            ["V_avg"] = volts.Average(),
            ["max_dev"] = percent * volts.Average() / 100,
            ["unbalance_pct"] = percent,
            ["temp_rise"] = rise + hotter,
            ["life_years_of_20"] = 20 * WindingHeat.Life(CsvFile.Knowledge, hotter).Value!.Value,
        };
    }

    public static Dictionary<string, double> Tests(JsonElement inputs)
    {
        var tested = BenchTests.ThreePhase(
            Reading(inputs, "noload"), Reading(inputs, "blocked15Hz"), Number(inputs, "R1"), Number(inputs, "x1_over_x2"), 60 / 15.0);
        var circuit = tested.Circuit;
        return new()
        {
            ["P_rot"] = tested.RotationalWatts,
            ["Xnl"] = circuit.X1 + circuit.Xm,
            ["Xbl"] = circuit.X1 + (circuit.X2 * circuit.Xm / (circuit.X2 + circuit.Xm)),
            ["X1"] = circuit.X1,
            ["X2"] = circuit.X2,
            ["Xm"] = circuit.Xm,
            ["R2"] = circuit.R2,
            ["T_start"] = BenchTests.StartingTorque(Reading(inputs, "blocked60Hz"), Number(inputs, "R1"), new Feed(220, 60, 4)),
        };
    }

    public static Dictionary<string, double> LineOpen(JsonElement inputs)
    {
        var (circuit, feed) = Machine(inputs);
        var (open, balanced) = (ThreePhase.LineOpen(circuit, feed, Number(inputs, "slip"), new Losses()), ThreePhase.At(circuit, feed, Number(inputs, "slip"), new Losses()));
        var most = ThreePhase.GreatestWithLineOpen(circuit, feed);
        var slip = ThreePhase.SlipWithLineOpen(circuit, feed, balanced.Torque)!.Value;
        var same = ThreePhase.LineOpen(circuit, feed, slip, new Losses()).Line.Amps;
        return new()
        {
            ["I_seq"] = open.PositiveAmps.Magnitude,
            ["I_line"] = open.Line.Amps,
            ["IA"] = open.Amps[0].Magnitude,
            ["IC"] = open.Amps[2].Magnitude,
            ["T_pos"] = open.Line.ForwardTorque,
            ["T_neg"] = open.Line.BackwardTorque,
            ["T"] = open.Line.Torque,
            ["V_phase_open"] = open.Volts[0].Magnitude,
            ["V_AB"] = (open.Volts[0] - open.Volts[1]).Magnitude,
            ["V_CA"] = (open.Volts[2] - open.Volts[0]).Magnitude,
            ["V_BC"] = (open.Volts[1] - open.Volts[2]).Magnitude,
            ["Pin"] = open.Line.InputWatts,
            ["line_pf"] = open.Line.InputWatts / (feed.Volts * open.Line.Amps),
            ["I1_balanced_same_slip"] = balanced.Amps,
            ["T_balanced_same_slip"] = balanced.Torque,
            ["T_max_single_phasing"] = most.Torque,
            ["s_at_T_max_single_phasing"] = most.Slip,
            ["slip_for_same_torque"] = slip,
            ["I_line_for_same_torque"] = same,
            ["I_ratio_for_same_torque"] = same / balanced.Amps,
        };
    }

    public static Dictionary<string, double> Unbalanced(JsonElement inputs)
    {
        var (circuit, feed) = Machine(inputs);
        double[] volts = [Number(inputs, "V_AB"), Number(inputs, "V_BC"), Number(inputs, "V_CA")];
        var point = ThreePhase.Unbalanced(circuit, feed, Number(inputs, "slip"), volts[0], volts[1], volts[2], new Losses());
        double[] amps = [.. point.Amps.Select(line => line.Magnitude)];
        return new()
        {
            ["Vavg"] = volts.Average(),
            ["nema_unbalance_pct"] = Spread(volts),
            ["VUF_pct"] = 100 * point.NegativeVolts.Magnitude / point.PositiveVolts.Magnitude,
            ["V1_LL"] = point.PositiveVolts.Magnitude * Math.Sqrt(3),
            ["V2_LL"] = point.NegativeVolts.Magnitude * Math.Sqrt(3),
            ["I_A"] = amps[0],
            ["I_B"] = amps[1],
            ["I_C"] = amps[2],
            ["I_pos"] = point.PositiveAmps.Magnitude,
            ["I_neg"] = point.NegativeAmps.Magnitude,
            ["current_unbalance_pct"] = Spread(amps),
            ["T_pos"] = point.Line.ForwardTorque,
            ["T_neg"] = point.Line.BackwardTorque,
            ["T"] = point.Line.Torque,
            ["stator_cu"] = point.Line.StatorCopperWatts,
            ["I_balanced_at_Vavg"] = ThreePhase.At(circuit, feed with { Volts = volts.Average() }, Number(inputs, "slip"), new Losses()).Amps,
        };
    }

    private static (MachineCircuit Circuit, Feed Feed) Machine(JsonElement inputs) => (
        new MachineCircuit(Number(inputs, "R1"), Number(inputs, "X1"), Number(inputs, "R2"), Number(inputs, "X2"), Number(inputs, "Xm")),
        new Feed(Number(inputs, "V_LL", 220), Number(inputs, "f"), (int)Number(inputs, "poles", 4)));

    private static double Spread(double[] values) => 100 * values.Max(value => Math.Abs(value - values.Average())) / values.Average();
}
