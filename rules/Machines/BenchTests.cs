using System.Numerics;

namespace WireCoach.Rules.Machines;

/// <summary>Volts, amps and watts of a no-load or blocked-rotor test.</summary>
/// <param name="Volts">Volts at the winding, or between lines.</param>
/// <param name="Amps">Amps of the winding, or of a line.</param>
/// <param name="Watts">Watts of the whole machine.</param>
public sealed record BenchReading(double Volts, double Amps, double Watts);

/// <summary>A circuit found from bench tests.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="RotationalWatts">Core, friction and windage in one figure, as the no-load test measures them.</param>
public sealed record TestedCircuit(MachineCircuit Circuit, double RotationalWatts);

/// <summary>The circuit from a no-load and a blocked-rotor test.</summary>
/// <remarks>Source: the usual no-load and blocked-rotor method of the textbooks of electric machinery.</remarks>
public static class BenchTests
{
    /// <summary>A single-phase machine, its start winding open; leakage is halved between stator and rotor.</summary>
    /// <param name="noLoad">No load at rated volts.</param>
    /// <param name="blocked">Blocked rotor at reduced volts, rated frequency.</param>
    /// <param name="r1">Resistance of the main winding in ohms.</param>
    public static TestedCircuit SinglePhase(BenchReading noLoad, BenchReading blocked, double r1)
    {
        var (locked, idle) = (Impedance(blocked, 1), Impedance(noLoad, 1));
        var (r2, x) = (locked.Real - r1, locked.Imaginary / 2);
        var circuit = new MachineCircuit(r1, x, r2, x, (2 * idle.Imaginary) - (3 * x));
        return new TestedCircuit(circuit, noLoad.Watts - (noLoad.Amps * noLoad.Amps * (r1 + (r2 / 4))));
    }

    /// <summary>A single-phase machine by the approximate circuit: the magnetising branch at the terminals.</summary>
    /// <param name="noLoad">No load at rated volts.</param>
    /// <param name="blocked">Blocked rotor at reduced volts, rated frequency.</param>
    /// <param name="r1">Resistance of the main winding in ohms.</param>
    public static TestedCircuit SinglePhaseApproximate(BenchReading noLoad, BenchReading blocked, double r1)
    {
        var xm = 2 * noLoad.Volts / noLoad.Amps;
        var series = 1 / ((1 / Impedance(blocked, 1)) - (1 / new Complex(0, xm)));
        return new TestedCircuit(
            new MachineCircuit(r1, series.Imaginary / 2, series.Real - r1, series.Imaginary / 2, xm), noLoad.Watts);
    }

    /// <summary>Turns of the start winding over those of the main winding, from its own blocked-rotor test.</summary>
    /// <param name="blocked">Blocked rotor, the start winding fed.</param>
    /// <param name="startR">Resistance of the start winding in ohms.</param>
    /// <param name="r2">Rotor resistance referred to the main winding in ohms.</param>
    public static double TurnsRatio(BenchReading blocked, double startR, double r2) =>
        Math.Sqrt(((blocked.Watts / (blocked.Amps * blocked.Amps)) - startR) / r2);

    /// <summary>A three-phase machine; all readings are of the line.</summary>
    /// <param name="noLoad">No load at rated volts and frequency.</param>
    /// <param name="blocked">Blocked rotor, often at reduced frequency.</param>
    /// <param name="r1">Resistance of one phase as a star, in ohms.</param>
    /// <param name="leakageRatio">Stator leakage over rotor leakage.</param>
    /// <param name="hertzRatio">Rated frequency over that of the blocked-rotor test.</param>
    public static TestedCircuit ThreePhase(BenchReading noLoad, BenchReading blocked, double r1, double leakageRatio, double hertzRatio)
    {
        var (idle, locked) = (Impedance(noLoad, 3), Impedance(blocked, 3));
        var (all, blockedX) = (idle.Imaginary, locked.Imaginary * hertzRatio);
        // short = x1 + x2·xm/(x2 + xm) with xm = all − x1 and x1 = ratio·x2: settle x2 by repeated substitution, it converges fast for xm ≫ x2.
        var x2 = blockedX / (1 + leakageRatio);
        for (var again = 0; again < 200; again++)
        {
            var xm = all - (leakageRatio * x2);
            x2 = blockedX / (leakageRatio + (xm / (x2 + xm)));
        }

        var magnetising = all - (leakageRatio * x2);
        var r2 = (locked.Real - r1) * Math.Pow((x2 + magnetising) / magnetising, 2);
        return new TestedCircuit(
            new MachineCircuit(r1, leakageRatio * x2, r2, x2, magnetising), noLoad.Watts - (3 * noLoad.Amps * noLoad.Amps * r1));
    }

    /// <summary>Starting torque in N·m from a blocked-rotor test at rated volts and frequency.</summary>
    /// <param name="blocked">The readings of the line.</param>
    /// <param name="r1">Resistance of one phase as a star, in ohms.</param>
    /// <param name="feed">Frequency and poles.</param>
    public static double StartingTorque(BenchReading blocked, double r1, Feed feed) =>
        (blocked.Watts - (3 * blocked.Amps * blocked.Amps * r1)) / feed.SynchronousOmega;

    private static Complex Impedance(BenchReading reading, int phases)
    {
        var size = reading.Volts / Math.Sqrt(phases) / reading.Amps;
        var real = reading.Watts / (phases * reading.Amps * reading.Amps);
        return new Complex(real, Math.Sqrt(Math.Max(0, (size * size) - (real * real))));
    }
}
