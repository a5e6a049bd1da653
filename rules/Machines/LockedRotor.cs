using System.Numerics;
using MathNet.Numerics.RootFinding;

namespace WireCoach.Rules.Machines;

/// <summary>Main and start winding at standstill, as impedances in ohms, without the capacitor.</summary>
/// <param name="Main">The main winding with the locked rotor in it.</param>
/// <param name="Start">The start winding with the locked rotor in it.</param>
public sealed record LockedRotor(Complex Main, Complex Start)
{
    private const double Precision = 1e-12;

    /// <summary>The impedance of a capacitor.</summary>
    /// <param name="microfarads">Above zero.</param>
    /// <param name="hertz">Above zero.</param>
    internal static Complex OfCapacitor(double microfarads, double hertz) => new(0, -1e6 / (2 * Math.PI * hertz * microfarads));

    /// <summary>The currents at standstill.</summary>
    /// <param name="volts">Volts across both branches.</param>
    /// <param name="hertz">Frequency in hertz.</param>
    /// <param name="microfarads">Capacitor in the start branch; <see langword="null"/> without.</param>
    /// <param name="extraOhms">Resistance added to the start branch.</param>
    public StartCurrents At(double volts, double hertz, double? microfarads, double extraOhms = 0)
    {
        var series = (microfarads is { } c ? OfCapacitor(c, hertz) : Complex.Zero) + extraOhms;
        return new StartCurrents(volts / Main, volts / (Start + series), volts);
    }

    /// <summary>The capacitance that sets the two currents at right angles, in microfarads; <see langword="null"/> where none does.</summary>
    /// <param name="hertz">Frequency in hertz.</param>
    public double? MicrofaradsForRightAngle(double hertz) => Microfarads(Start.Imaginary + (Start.Real * Main.Real / Main.Imaginary), hertz);

    /// <summary>The capacitance for the greatest starting torque, in microfarads.</summary>
    /// <param name="hertz">Frequency in hertz.</param>
    public double? MicrofaradsForGreatestTorque(double hertz) =>
        Microfarads(Start.Imaginary + (Start.Real * (Main.Magnitude - Main.Imaginary) / Main.Real), hertz);

    /// <summary>The capacitance for the greatest starting torque for each ampere of the line, in microfarads.</summary>
    /// <param name="hertz">Frequency in hertz.</param>
    public double? MicrofaradsForGreatestTorquePerAmp(double hertz)
    {
        // The slope of log(torque / line amps) over the reactance x of the start branch; it falls through zero between 90 degrees lead and no torque.
        double Slope(double x) =>
            -(Main.Real / ((Start.Real * Main.Imaginary) - (x * Main.Real)))
            - (x / ((Start.Real * Start.Real) + (x * x)))
            - ((Main.Imaginary + x) / (Math.Pow(Main.Real + Start.Real, 2) + Math.Pow(Main.Imaginary + x, 2)));
        var none = Start.Real * Main.Imaginary / Main.Real;
        var far = -100 * (Main.Magnitude + Start.Magnitude);
        return Brent.TryFindRoot(Slope, far, none - (1e-9 * (none - far)), Precision * Start.Magnitude, 200, out var x)
            ? Microfarads(Start.Imaginary - x, hertz)
            : null;
    }

    /// <summary>The resistance to add to a start branch without capacitor for a given angle between the currents, in ohms; <see langword="null"/> where none does.</summary>
    /// <param name="degrees">The angle, above zero and below that of the main winding.</param>
    public double? OhmsForAngle(double degrees)
    {
        var tangent = Math.Tan(Main.Phase - (degrees * Math.PI / 180));
        return tangent > 0 ? (Start.Imaginary / tangent) - Start.Real : null;
    }

    /// <summary>The whole resistance of a start branch without capacitor for the greatest starting torque, in ohms.</summary>
    public double OhmsForGreatestTorque() => Start.Imaginary * (Main.Real + Main.Magnitude) / Main.Imaginary;

    private static double? Microfarads(double reactance, double hertz) =>
        reactance > 0 && double.IsFinite(reactance) ? 1e6 / (2 * Math.PI * hertz * reactance) : null;
}

/// <summary>The currents of both windings at standstill.</summary>
/// <param name="Main">Main winding.</param>
/// <param name="Start">Start winding.</param>
/// <param name="Volts">The supply they are counted against.</param>
public sealed record StartCurrents(Complex Main, Complex Start, double Volts)
{
    /// <summary>The line current.</summary>
    public Complex Line => Main + Start;

    /// <summary>The angle by which the start current leads the main current, in degrees.</summary>
    public double BetweenDegrees => OperatingPoint.Degrees(Start / Main);

    /// <summary>Product of both currents and the sine of the angle between them, in A²: starting torque but for a constant of the machine.</summary>
    public double TorqueFactor => (Complex.Conjugate(Main) * Start).Imaginary;
}
