using System.Numerics;

namespace WireCoach.Rules.Machines;

/// <summary>A machine that runs on one winding: two fields of half the size turn against each other.</summary>
/// <remarks>Source: double-revolving-field theory as in the common textbooks of electric machinery, single-phase chapters.</remarks>
public static class SinglePhase
{
    /// <summary>What it does at one slip.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="feed">The supply.</param>
    /// <param name="slip">Forward slip, 0 to 2.</param>
    /// <param name="losses">Losses outside the circuit.</param>
    public static OperatingPoint At(MachineCircuit circuit, Feed feed, double slip, Losses losses)
    {
        var (forward, backward) = circuit.Halves(slip);
        var amps = feed.Volts / (circuit.Stator + forward + backward);
        var squared = OperatingPoint.Squared(amps);
        return OperatingPoint.Of(
            feed, slip, amps, feed.Volts * amps.Real, (squared * forward.Real, squared * backward.Real), squared * circuit.R1, losses);
    }

    /// <summary>What it does at one slip by the approximate circuit, in which the magnetising branch of each half lies at its terminals.</summary>
    /// <param name="circuit">The circuit; stator and rotor ohms are halved together.</param>
    /// <param name="feed">The supply.</param>
    /// <param name="slip">Forward slip, above 0 and below 2.</param>
    /// <param name="losses">Losses outside the circuit.</param>
    public static OperatingPoint AtApproximately(MachineCircuit circuit, Feed feed, double slip, Losses losses)
    {
        Complex Series(double against) => new Complex(circuit.R1 + (circuit.R2 / against), circuit.X1 + circuit.X2) / 2;
        Complex Half(Complex series) => 1 / ((1 / series) + (2 / new Complex(0, circuit.Xm)));
        var (forward, backward) = (Series(slip), Series(2 - slip));
        var amps = feed.Volts / (Half(forward) + Half(backward));
        var (ahead, behind) = (amps * Half(forward) / forward, amps * Half(backward) / backward);
        var copper = (OperatingPoint.Squared(ahead) + OperatingPoint.Squared(behind)) * circuit.R1 / 2;
        return OperatingPoint.Of(
            feed, slip, amps, feed.Volts * amps.Real,
            (OperatingPoint.Squared(ahead) * circuit.R2 / (2 * slip), OperatingPoint.Squared(behind) * circuit.R2 / (2 * (2 - slip))), copper, losses);
    }
}
