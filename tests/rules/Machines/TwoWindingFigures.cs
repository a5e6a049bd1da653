using System.Numerics;
using System.Text.Json;
using WireCoach.Rules.Machines;
using static WireCoach.Rules.Tests.Machines.MachineVectorsTest;

namespace WireCoach.Rules.Tests.Machines;

/// <summary>The figures of the two-winding vectors by their names in the file.</summary>
internal static class TwoWindingFigures
{
    public static Dictionary<string, double> Locked(JsonElement inputs)
    {
        var windings = new LockedRotor(Pair(inputs, "Z_main"), Pair(inputs, "Z_aux"));
        var (volts, hertz) = (Number(inputs, "V"), Number(inputs, "f"));
        var figures = new Dictionary<string, double>();
        var right = windings.MicrofaradsForRightAngle(Math.Max(hertz, 1));
        var most = windings.MicrofaradsForGreatestTorque(Math.Max(hertz, 1));
        if (hertz > 0)
        {
            figures["C_uF"] = figures["C_uF_90deg"] = right!.Value;
            figures["C_uF_max_torque"] = most!.Value;
            figures["C_uF_max_torque_per_amp"] = windings.MicrofaradsForGreatestTorquePerAmp(hertz) ?? double.NaN;
            figures["Xc"] = figures["Xc_90deg"] = Ohms(right.Value, hertz);
            figures["Xc_max_torque"] = Ohms(most.Value, hertz);
            figures["Xc_max_torque_per_amp"] = Ohms(figures["C_uF_max_torque_per_amp"], hertz);
        }

        // The vectors with resistance against capacitance state the plain currents, the others those at 90 degrees.
        var resistance = windings.OhmsForAngle(30);
        var plain = hertz == 0 || (windings.Main == new Complex(1.5, 4));
        var currents = windings.At(volts, Math.Max(hertz, 1), plain ? null : right);
        figures["R_aux_total_max_torque"] = windings.OhmsForGreatestTorque();
        figures["R_external"] = windings.OhmsForGreatestTorque() - windings.Start.Real;
        if (resistance is { } ohms)
        {
            var better = windings.At(volts, Math.Max(hertz, 1), null, ohms);
            figures["Rx_for_30deg"] = ohms;
            figures["T_over_K_30deg"] = better.TorqueFactor;
            figures["increase_pct"] = 100 * ((better.TorqueFactor / currents.TorqueFactor) - 1);
            figures["I_aux_30deg"] = better.Start.Magnitude;
        }

        return figures.Concat(Currents(currents)).ToDictionary();
    }

    public static Dictionary<string, double> Sum(JsonElement inputs)
    {
        var (run, start, capacitor) = (Polar(inputs, "I_run"), Polar(inputs, "I_start"), Polar(inputs, "I_start_cap"));
        var (plain, better) = (new StartCurrents(run, start, 110), new StartCurrents(run, capacitor, 110));
        return new()
        {
            ["I_total"] = plain.Line.Magnitude,
            ["I_total_angle_deg"] = Angle(plain.Line),
            ["pf"] = Math.Cos(plain.Line.Phase),
            ["I_total_cap"] = better.Line.Magnitude,
            ["I_total_cap_angle_deg"] = Angle(better.Line),
            ["pf_cap"] = Math.Cos(better.Line.Phase),
            ["torque_ratio"] = better.TorqueFactor / plain.TorqueFactor,
        };
    }

    public static (TwoWinding Machine, Feed Feed) Machine(JsonElement inputs) => (
        new TwoWinding
        {
            Main = new(Number(inputs, "R1"), Number(inputs, "X1"), Number(inputs, "R2"), Number(inputs, "X2"), Number(inputs, "Xm")),
            StartR = Number(inputs, "R_aux", Number(inputs, "R1")),
            StartX = Number(inputs, "X_aux_leak", Number(inputs, "X1")),
            TurnsRatio = Number(inputs, "turns_ratio_a", 1),
            Microfarads = inputs.TryGetProperty("C_uF", out var c) ? c.GetDouble() : null,
            StartVolts = inputs.TryGetProperty("V_beta", out _) ? Pair(inputs, "V_beta") : null,
        },
        new Feed(Pair(inputs, inputs.TryGetProperty("V_alpha", out _) ? "V_alpha" : "V_main").Magnitude, Number(inputs, "f"), (int)Number(inputs, "poles")));

    public static Dictionary<string, double> Running(JsonElement inputs)
    {
        var (machine, feed) = Machine(inputs);
        var point = machine.At(feed, Number(inputs, "slip"), new Losses(Number(inputs, "P_core"), Number(inputs, "P_fw")));
        var rest = machine.At(feed, 1, new Losses());
        var perAmp = machine.Standstill().MicrofaradsForGreatestTorquePerAmp(feed.Hertz)!.Value;
        Assert.Equal(rest.Line.Torque, machine.StartingTorque(feed, machine.Standstill().At(feed.Volts, feed.Hertz, machine.Microfarads)), 1e-9);
        return SinglePhaseFigures.Common(point.Line).Concat(Windings(point, rest)).Concat(new Dictionary<string, double>
        {
            ["I_line"] = point.Line.Amps,
            ["I_line_angle_deg"] = point.Line.AngleDegrees,
            ["P_main"] = feed.Volts * point.MainAmps.Real,
            ["P_aux"] = feed.Volts * point.StartAmps.Real,
            ["V_cap"] = point.CapacitorVolts.Magnitude,
            ["V_cap_angle_deg"] = Angle(point.CapacitorVolts),
            ["I_line_start"] = rest.Line.Amps,
            ["C_uF_total_max_torque_per_amp"] = perAmp,
            ["C_uF_additional"] = perAmp - machine.Microfarads!.Value,
        }).ToDictionary();
    }

    public static Dictionary<string, double> TwoPhase(JsonElement inputs)
    {
        var (machine, feed) = Machine(inputs);
        var point = machine.At(feed, Number(inputs, "slip"), new Losses());
        var j = Complex.ImaginaryOne;
        var (forwardVolts, backwardVolts) = ((feed.Volts - (j * machine.StartVolts!.Value)) / 2, (feed.Volts + (j * machine.StartVolts.Value)) / 2);
        var (forward, backward) = ((point.MainAmps - (j * point.StartAmps)) / 2, (point.MainAmps + (j * point.StartAmps)) / 2);
        return SinglePhaseFigures.Common(point.Line).Concat(Windings(point, machine.At(feed, 1, new Losses()))).Concat(new Dictionary<string, double>
        {
            ["V_forward"] = forwardVolts.Magnitude,
            ["V_backward"] = backwardVolts.Magnitude,
            ["Vf_re"] = forwardVolts.Real,
            ["Vf_im"] = forwardVolts.Imaginary,
            ["Vb_re"] = backwardVolts.Real,
            ["Vb_im"] = backwardVolts.Imaginary,
            ["If_re"] = forward.Real,
            ["If_im"] = forward.Imaginary,
            ["Ib_re"] = backward.Real,
            ["Ib_im"] = backward.Imaginary,
            ["Ia_re"] = point.MainAmps.Real,
            ["Ia_im"] = point.MainAmps.Imaginary,
            ["Ibeta_re"] = point.StartAmps.Real,
            ["Ibeta_im"] = point.StartAmps.Imaginary,
        }).ToDictionary();
    }

    private static Dictionary<string, double> Windings(TwoWindingPoint point, TwoWindingPoint rest) => new()
    {
        ["I_main"] = point.MainAmps.Magnitude,
        ["I_main_angle_deg"] = Angle(point.MainAmps),
        ["I_aux"] = point.StartAmps.Magnitude,
        ["I_aux_angle_deg"] = Angle(point.StartAmps),
        ["T_start"] = rest.Line.Torque,
        ["I_main_start"] = rest.MainAmps.Magnitude,
        ["I_aux_start"] = rest.StartAmps.Magnitude,
    };

    private static Dictionary<string, double> Currents(StartCurrents currents) => new()
    {
        ["I_main"] = currents.Main.Magnitude,
        ["I_main_angle_deg"] = Angle(currents.Main),
        ["I_aux"] = currents.Start.Magnitude,
        ["I_aux_angle_deg"] = Angle(currents.Start),
        ["I_line"] = currents.Line.Magnitude,
        ["I_line_angle_deg"] = Angle(currents.Line),
        ["line_pf"] = Math.Cos(currents.Line.Phase),
        ["displacement_deg_"] = currents.BetweenDegrees,
        ["T_over_K"] = currents.TorqueFactor,
    };

    private static double Ohms(double microfarads, double hertz) => 1e6 / (2 * Math.PI * hertz * microfarads);

    private static Complex Polar(JsonElement inputs, string name) =>
        Complex.FromPolarCoordinates(inputs.GetProperty(name)[0].GetDouble(), inputs.GetProperty(name)[1].GetDouble() * Math.PI / 180);
}
