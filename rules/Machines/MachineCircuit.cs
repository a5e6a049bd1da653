using System.Numerics;

namespace WireCoach.Rules.Machines;

/// <summary>The equivalent circuit of an induction machine, in ohms at the stated frequency, the rotor referred to the stator (the main winding).</summary>
/// <param name="R1">Stator resistance in ohms, zero or more.</param>
/// <param name="X1">Stator leakage reactance in ohms, zero or more.</param>
/// <param name="R2">Rotor resistance in ohms, above zero; of a single-phase machine that of the whole, each field takes half.</param>
/// <param name="X2">Rotor leakage reactance in ohms, zero or more; halved in the same way.</param>
/// <param name="Xm">Magnetising reactance in ohms, above zero; halved in the same way.</param>
/// <param name="Rc">Core-loss resistance beside <paramref name="Xm"/> in ohms, or <see langword="null"/> where the core loss is booked as watts.</param>
public sealed record MachineCircuit(double R1, double X1, double R2, double X2, double Xm, double? Rc = null)
{
    /// <summary>Below this a slip is none.</summary>
    internal const double NoSlip = 1e-12;

    /// <summary>Resistance and leakage of the stator.</summary>
    internal Complex Stator => new(R1, X1);

    /// <summary>What the stator sees of a field that turns with the given slip; at no slip the rotor carries nothing.</summary>
    /// <param name="slip">Slip against that field.</param>
    internal Complex Field(double slip)
    {
        var magnetising = 1 / new Complex(0, Xm) + (Rc is { } core ? 1 / core : 0);
        return 1 / (magnetising + (Math.Abs(slip) < NoSlip ? 0 : 1 / new Complex(R2 / slip, X2)));
    }

    /// <summary>The forward and the backward half of a single-phase machine.</summary>
    /// <param name="slip">Forward slip.</param>
    internal (Complex Forward, Complex Backward) Halves(double slip) => (Field(slip) / 2, Field(2 - slip) / 2);
}

/// <summary>What feeds the machine.</summary>
/// <param name="Volts">RMS volts: across the winding, or between lines of a three-phase machine.</param>
/// <param name="Hertz">Frequency in hertz, above zero.</param>
/// <param name="Poles">An even number of poles.</param>
public sealed record Feed(double Volts, double Hertz, int Poles)
{
    /// <summary>The speed of the field in revolutions a minute.</summary>
    public double SynchronousRpm => 120 * Hertz / Poles;

    /// <summary>The speed of the field in radians a second.</summary>
    public double SynchronousOmega => 4 * Math.PI * Hertz / Poles;

    /// <summary>The slip at a shaft speed.</summary>
    /// <param name="rpm">Shaft speed in revolutions a minute.</param>
    public double SlipAt(double rpm) => 1 - (rpm / SynchronousRpm);
}

/// <summary>Losses that the circuit itself does not hold.</summary>
/// <param name="CoreWatts">Core loss in watts.</param>
/// <param name="RotationalWatts">Friction and windage in watts.</param>
/// <param name="Booking">Where the core loss is booked.</param>
public sealed record Losses(double CoreWatts = 0, double RotationalWatts = 0, CoreBooking Booking = CoreBooking.FromOutput);

/// <summary>Where the core loss is booked.</summary>
/// <remarks>
/// Textbooks take it off the converted power together with friction and windage, since the no-load test measures the two in one figure
/// and the shaft then balances with the test: that is the default. The core is in truth fed by the line, which the other way says;
/// it leaves the shaft power higher and the input higher by the same watts.
/// </remarks>
public enum CoreBooking
{
    /// <summary>Taken off the converted power, with friction and windage.</summary>
    FromOutput,

    /// <summary>Added to the power from the line.</summary>
    ToInput,
}
