using System.Numerics;

namespace WireCoach.Rules.Machines;

/// <summary>A machine with a main and a start (auxiliary) winding at right angles, both fed.</summary>
public sealed record TwoWinding
{
    /// <summary>The main winding with the rotor referred to it.</summary>
    public required MachineCircuit Main { get; init; }

    /// <summary>Resistance of the start winding in ohms.</summary>
    public required double StartR { get; init; }

    /// <summary>Leakage reactance of the start winding itself in ohms.</summary>
    public required double StartX { get; init; }

    /// <summary>Effective turns of the start winding over those of the main winding.</summary>
    public required double TurnsRatio { get; init; }

    /// <summary>Capacitance in series with the start winding in microfarads; <see langword="null"/> without a capacitor.</summary>
    public double? Microfarads { get; init; }

    /// <summary>Volts across the start branch against those of the main winding, where they are not the same supply.</summary>
    public Complex? StartVolts { get; init; }

    /// <summary>The locked-rotor impedances of both windings: at standstill they do not see each other.</summary>
    public LockedRotor Standstill()
    {
        var (forward, backward) = Main.Halves(1);
        return new LockedRotor(Main.Stator + forward + backward, new Complex(StartR, StartX) + (TurnsRatio * TurnsRatio * (forward + backward)));
    }

    /// <summary>What it does at one slip.</summary>
    /// <param name="feed">The supply of the main winding.</param>
    /// <param name="slip">Forward slip, 0 to 2; forward is from the leading to the lagging winding current.</param>
    /// <param name="losses">Losses outside the circuit.</param>
    public TwoWindingPoint At(Feed feed, double slip, Losses losses)
    {
        var (forward, backward) = Main.Halves(slip);
        var (ratio, turn) = (TurnsRatio, Complex.ImaginaryOne * TurnsRatio);
        var series = Microfarads is { } c ? LockedRotor.OfCapacitor(c, feed.Hertz) : Complex.Zero;
        var z11 = Main.Stator + forward + backward;
        var z12 = -turn * (forward - backward);
        var z22 = new Complex(StartR, StartX) + series + (ratio * ratio * (forward + backward));
        Complex mainVolts = feed.Volts;
        var startVolts = StartVolts ?? mainVolts;
        var determinant = (z11 * z22) + (z12 * z12);
        var main = ((mainVolts * z22) - (z12 * startVolts)) / determinant;
        var start = ((startVolts * z11) + (z12 * mainVolts)) / determinant;
        var ahead = OperatingPoint.Squared(main - (turn * start)) * forward.Real;
        var behind = OperatingPoint.Squared(main + (turn * start)) * backward.Real;
        var input = (mainVolts * Complex.Conjugate(main)).Real + (startVolts * Complex.Conjugate(start)).Real;
        var copper = (OperatingPoint.Squared(main) * Main.R1) + (OperatingPoint.Squared(start) * StartR);
        return new TwoWindingPoint(
            OperatingPoint.Of(feed, slip, main + start, input, (ahead, behind), copper, losses), main, start, series * start);
    }

    /// <summary>Starting torque in N·m for the amps that flow at standstill.</summary>
    /// <param name="feed">The supply.</param>
    /// <param name="currents">The currents at standstill.</param>
    public double StartingTorque(Feed feed, StartCurrents currents) =>
        4 * TurnsRatio * Main.Halves(1).Forward.Real * currents.TorqueFactor / feed.SynchronousOmega;
}

/// <summary>What a two-winding machine does at one slip.</summary>
/// <param name="Line">The machine as the line sees it.</param>
/// <param name="MainAmps">The current of the main winding.</param>
/// <param name="StartAmps">The current of the start winding.</param>
/// <param name="CapacitorVolts">Volts across the capacitor.</param>
public sealed record TwoWindingPoint(OperatingPoint Line, Complex MainAmps, Complex StartAmps, Complex CapacitorVolts);
