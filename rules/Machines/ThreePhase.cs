using System.Numerics;
using MathNet.Numerics.RootFinding;

namespace WireCoach.Rules.Machines;

/// <summary>A three-phase machine by the T circuit of one phase in star, on any three line voltages.</summary>
/// <remarks>Source: per-phase equivalent circuit and symmetrical components, as in the common textbooks of electric machinery.</remarks>
public static class ThreePhase
{
    private static readonly Complex Turn = Complex.FromPolarCoordinates(1, 2 * Math.PI / 3);

    /// <summary>What it does at one slip on a balanced supply.</summary>
    /// <param name="circuit">One phase of the machine as a star.</param>
    /// <param name="feed">The supply, volts between lines.</param>
    /// <param name="slip">Slip, 0 to 2.</param>
    /// <param name="losses">Losses outside the circuit.</param>
    public static OperatingPoint At(MachineCircuit circuit, Feed feed, double slip, Losses losses)
    {
        var phase = feed.Volts / Math.Sqrt(3);
        var field = circuit.Field(slip);
        var amps = phase / (circuit.Stator + field);
        var squared = OperatingPoint.Squared(amps);
        var copper = 3 * squared * circuit.R1;
        return OperatingPoint.Of(feed, slip, amps, 3 * phase * amps.Real, (GapWatts(circuit, amps, slip), 0), copper, losses);
    }

    /// <summary>Amps of the rotor referred to the stator.</summary>
    /// <param name="circuit">One phase of the machine as a star.</param>
    /// <param name="feed">The supply, volts between lines.</param>
    /// <param name="slip">Slip, above 0.</param>
    public static double RotorAmps(MachineCircuit circuit, Feed feed, double slip) =>
        Rotor(circuit, feed.Volts / Math.Sqrt(3) / (circuit.Stator + circuit.Field(slip)), slip).Magnitude;

    /// <summary>The greatest torque and where it lies, by the equivalent source seen from the rotor.</summary>
    /// <param name="circuit">One phase of the machine as a star.</param>
    /// <param name="feed">The supply, volts between lines.</param>
    public static Breakdown Breakdown(MachineCircuit circuit, Feed feed)
    {
        var magnetising = circuit.Field(0);
        var share = magnetising / (circuit.Stator + magnetising);
        var inner = circuit.Stator * share;
        var volts = feed.Volts / Math.Sqrt(3) * share.Magnitude;
        var size = Math.Sqrt(Math.Pow(inner.Real, 2) + Math.Pow(inner.Imaginary + circuit.X2, 2));
        var torque = 3 * volts * volts / (2 * feed.SynchronousOmega * (inner.Real + size));
        return new Breakdown(circuit.R2 / size, torque, feed.SynchronousRpm * (1 - (circuit.R2 / size)), volts, inner);
    }

    /// <summary>What it does on three line voltages that differ.</summary>
    /// <param name="circuit">One phase of the machine as a star.</param>
    /// <param name="feed">Frequency and poles; its volts are not used.</param>
    /// <param name="slip">Slip, 0 to 2.</param>
    /// <param name="ab">Volts between lines A and B; with <paramref name="bc"/> and <paramref name="ca"/> they must close a triangle.</param>
    /// <param name="bc">Volts between lines B and C.</param>
    /// <param name="ca">Volts between lines C and A.</param>
    /// <param name="losses">Losses outside the circuit.</param>
    public static ThreeLines Unbalanced(MachineCircuit circuit, Feed feed, double slip, double ab, double bc, double ca, Losses losses)
    {
        // BC lies opposite AB and CA: the triangle of the three gives their angles.
        var angle = Math.Acos(Math.Clamp(((ab * ab) + (ca * ca) - (bc * bc)) / (2 * ab * ca), -1, 1));
        Complex abVolts = ab;
        var caVolts = Complex.FromPolarCoordinates(ca, Math.PI - angle);
        var bcVolts = -abVolts - caVolts;
        var (positive, negative) = Sequences(abVolts, bcVolts, caVolts);
        var star = Complex.FromPolarCoordinates(1 / Math.Sqrt(3), -Math.PI / 6);
        return Lines(circuit, feed, slip, positive * star, negative * Complex.Conjugate(star), losses);
    }

    /// <summary>What it does with line A lost and full volts between B and C.</summary>
    /// <param name="circuit">One phase of the machine as a star.</param>
    /// <param name="feed">The supply, volts between lines.</param>
    /// <param name="slip">Slip, 0 to 2.</param>
    /// <param name="losses">Losses outside the circuit.</param>
    public static ThreeLines LineOpen(MachineCircuit circuit, Feed feed, double slip, Losses losses)
    {
        var (forward, backward) = (circuit.Stator + circuit.Field(slip), circuit.Stator + circuit.Field(2 - slip));
        // IA = 0 makes the sequence currents opposite; VBC = (turn² − turn)(V1 − V2) fixes their size.
        var amps = feed.Volts / ((Turn * Turn) - Turn) / (forward + backward);
        return Lines(circuit, feed, slip, amps * forward, -amps * backward, losses);
    }

    /// <summary>The slip at which it gives a torque with line A lost, on the stable side of its greatest torque; <see langword="null"/> where it cannot.</summary>
    /// <param name="circuit">One phase of the machine as a star.</param>
    /// <param name="feed">The supply, volts between lines.</param>
    /// <param name="torque">Torque in N·m.</param>
    public static double? SlipWithLineOpen(MachineCircuit circuit, Feed feed, double torque)
    {
        double Left(double slip) => LineOpen(circuit, feed, slip, new Losses()).Line.Torque - torque;
        var peak = GreatestWithLineOpen(circuit, feed).Slip;
        return Brent.TryFindRoot(Left, 1e-9, peak, 1e-14, 200, out var found) ? found : null;
    }

    /// <summary>The greatest torque with line A lost.</summary>
    /// <param name="circuit">One phase of the machine as a star.</param>
    /// <param name="feed">The supply, volts between lines.</param>
    public static OperatingPoint GreatestWithLineOpen(MachineCircuit circuit, Feed feed)
    {
        // Golden section over the slip; the torque rises to one peak and falls to zero at standstill.
        var (low, high, part) = (1e-6, 1.0, (Math.Sqrt(5) - 1) / 2);
        double Torque(double slip) => LineOpen(circuit, feed, slip, new Losses()).Line.Torque;
        while (high - low > 1e-10)
        {
            var (left, right) = (high - (part * (high - low)), low + (part * (high - low)));
            (low, high) = Torque(left) > Torque(right) ? (low, right) : (left, high);
        }

        return LineOpen(circuit, feed, (low + high) / 2, new Losses()).Line;
    }

    /// <summary>Positive and negative sequence of three phasors.</summary>
    internal static (Complex Positive, Complex Negative) Sequences(Complex a, Complex b, Complex c) =>
        ((a + (Turn * b) + (Turn * Turn * c)) / 3, (a + (Turn * Turn * b) + (Turn * c)) / 3);

    private static ThreeLines Lines(MachineCircuit circuit, Feed feed, double slip, Complex positive, Complex negative, Losses losses)
    {
        var (ahead, behind) = (positive / (circuit.Stator + circuit.Field(slip)), negative / (circuit.Stator + circuit.Field(2 - slip)));
        Complex[] amps = [ahead + behind, (Turn * Turn * ahead) + (Turn * behind), (Turn * ahead) + (Turn * Turn * behind)];
        Complex[] volts = [positive + negative, (Turn * Turn * positive) + (Turn * negative), (Turn * positive) + (Turn * Turn * negative)];
        var copper = amps.Sum(OperatingPoint.Squared) * circuit.R1;
        var input = volts.Zip(amps, (v, i) => (v * Complex.Conjugate(i)).Real).Sum();
        var worst = amps.MaxBy(line => line.Magnitude);
        var point = OperatingPoint.Of(
            feed, slip, worst, input, (GapWatts(circuit, ahead, slip), GapWatts(circuit, behind, 2 - slip)), copper, losses);
        return new ThreeLines(point, amps, volts, positive, negative, ahead, behind);
    }

    private static double GapWatts(MachineCircuit circuit, Complex amps, double slip) =>
        Math.Abs(slip) < MachineCircuit.NoSlip ? 0 : 3 * OperatingPoint.Squared(Rotor(circuit, amps, slip)) * circuit.R2 / slip;

    private static Complex Rotor(MachineCircuit circuit, Complex amps, double slip) =>
        Math.Abs(slip) < MachineCircuit.NoSlip ? Complex.Zero : amps * circuit.Field(slip) / new Complex(circuit.R2 / slip, circuit.X2);
}

/// <summary>The greatest torque of a three-phase machine.</summary>
/// <param name="Slip">The slip at which it lies.</param>
/// <param name="Torque">The torque in N·m.</param>
/// <param name="Rpm">The speed at which it lies.</param>
/// <param name="SourceVolts">Volts of the equivalent source seen from the rotor.</param>
/// <param name="SourceOhms">Its inner impedance in ohms.</param>
public sealed record Breakdown(double Slip, double Torque, double Rpm, double SourceVolts, Complex SourceOhms);

/// <summary>A three-phase machine whose lines differ.</summary>
/// <param name="Line">The machine; its amps are those of the line that carries most.</param>
/// <param name="Amps">The currents of lines A, B and C.</param>
/// <param name="Volts">The volts of terminals A, B and C against the star point.</param>
/// <param name="PositiveVolts">Volts of the sequence that turns with the shaft.</param>
/// <param name="NegativeVolts">Volts of the sequence that turns against it.</param>
/// <param name="PositiveAmps">Amps of the sequence that turns with the shaft.</param>
/// <param name="NegativeAmps">Amps of the sequence that turns against it.</param>
public sealed record ThreeLines(
    OperatingPoint Line, IReadOnlyList<Complex> Amps, IReadOnlyList<Complex> Volts,
    Complex PositiveVolts, Complex NegativeVolts, Complex PositiveAmps, Complex NegativeAmps);
