using System.Text.Json;
using WireCoach.Rules.Machines;
using static WireCoach.Rules.Tests.Machines.MachineVectorsTest;

namespace WireCoach.Rules.Tests.Machines;

/// <summary>The figures of the single-phase vectors by their names in the file.</summary>
internal static class SinglePhaseFigures
{
    public static Dictionary<string, double> Of(JsonElement inputs)
    {
        var circuit = new MachineCircuit(
            Number(inputs, "R1"), Number(inputs, "X1"), Number(inputs, "R2"), Number(inputs, "X2"), Number(inputs, "Xm"));
        var feed = new Feed(Number(inputs, "V"), Number(inputs, "f"), (int)Number(inputs, "poles"));
        var slip = Number(inputs, "slip");
        var point = SinglePhase.At(circuit, feed, slip, new Losses(Number(inputs, "P_core"), Number(inputs, "P_friction_windage")));
        var (forward, backward) = circuit.Halves(slip);
        var whole = circuit.Stator + forward + backward;
        return Common(point).Concat(new Dictionary<string, double>
        {
            ["Zf.re"] = forward.Real,
            ["Zf.im"] = forward.Imaginary,
            ["Zb.re"] = backward.Real,
            ["Zb.im"] = backward.Imaginary,
            ["Zin.re"] = whole.Real,
            ["Zin.im"] = whole.Imaginary,
        }).ToDictionary();
    }

    public static Dictionary<string, double> Approximate(JsonElement inputs)
    {
        var tested = BenchTests.SinglePhaseApproximate(Reading(inputs, "noload"), Reading(inputs, "blocked"), Number(inputs, "R1"));
        var feed = new Feed(215, 50, 4);
        // The published example runs on with the rotor's half rounded to the figure it states.
        var rounded = tested.Circuit with { R2 = 2 * Number(inputs, "R2_half_used") };
        var point = SinglePhase.AtApproximately(rounded, feed, Number(inputs, "slip"), new Losses(0, tested.RotationalWatts));
        return Common(point).Concat(new Dictionary<string, double>
        {
            ["X_mag_full"] = tested.Circuit.Xm,
            ["R2"] = tested.Circuit.R2,
            ["X1_plus_X2"] = tested.Circuit.X1 + tested.Circuit.X2,
        }).ToDictionary();
    }

    public static Dictionary<string, double> Tests(JsonElement inputs)
    {
        var tested = BenchTests.SinglePhase(Reading(inputs, "noload"), Reading(inputs, "blocked"), Number(inputs, "R1"));
        var got = new Dictionary<string, double>
        {
            ["X1"] = tested.Circuit.X1,
            ["X2"] = tested.Circuit.X2,
            ["R2"] = tested.Circuit.R2,
            ["Xm"] = tested.Circuit.Xm,
            ["P_rot"] = tested.RotationalWatts,
        };
        if (inputs.TryGetProperty("aux_blocked", out _))
        {
            got["alpha"] = BenchTests.TurnsRatio(Reading(inputs, "aux_blocked"), Number(inputs, "Ra"), tested.Circuit.R2);
        }

        return got;
    }

    internal static Dictionary<string, double> Common(OperatingPoint point) => new()
    {
        ["I"] = point.Amps,
        ["I_angle_deg"] = point.AngleDegrees,
        ["pf"] = point.PowerFactor,
        ["Pin"] = point.InputWatts,
        ["Pag_f"] = point.ForwardWatts,
        ["Pag_b"] = point.BackwardWatts,
        ["Pag"] = point.AirGapWatts,
        ["T_f"] = point.ForwardTorque,
        ["T_b"] = point.BackwardTorque,
        ["T_dev"] = point.Torque,
        ["Pconv"] = point.ConvertedWatts,
        ["Pout"] = point.OutputWatts,
        ["T_shaft"] = point.ShaftTorque,
        ["eff"] = point.Efficiency ?? double.NaN,
        ["n_rpm"] = point.Rpm,
        ["stator_cu"] = point.StatorCopperWatts,
        ["rotor_cu"] = point.RotorCopperWatts,
    };
}
