using System.Numerics;

namespace WireCoach.Rules.Machines;

/// <summary>What a machine does at one slip.</summary>
public sealed record OperatingPoint
{
    /// <summary>Forward slip, a ratio; 1 at standstill.</summary>
    public required double Slip { get; init; }

    /// <summary>Shaft speed in revolutions a minute.</summary>
    public required double Rpm { get; init; }

    /// <summary>Speed of the field in revolutions a minute.</summary>
    public required double SynchronousRpm { get; init; }

    /// <summary>RMS amps in the line.</summary>
    public required double Amps { get; init; }

    /// <summary>Angle of the line current against the supply volts in degrees; negative lags.</summary>
    public required double AngleDegrees { get; init; }

    /// <summary>Power factor, a ratio.</summary>
    public required double PowerFactor { get; init; }

    /// <summary>Watts from the line.</summary>
    public required double InputWatts { get; init; }

    /// <summary>Watts across the air gap with the forward field.</summary>
    public required double ForwardWatts { get; init; }

    /// <summary>Watts across the air gap with the backward field.</summary>
    public required double BackwardWatts { get; init; }

    /// <summary>Torque of the forward field in N·m.</summary>
    public required double ForwardTorque { get; init; }

    /// <summary>Torque of the backward field in N·m; it works against the forward one.</summary>
    public required double BackwardTorque { get; init; }

    /// <summary>Forward less backward watts across the air gap.</summary>
    public required double AirGapWatts { get; init; }

    /// <summary>Torque before friction in N·m.</summary>
    public required double Torque { get; init; }

    /// <summary>Watts turned from electric to mechanical.</summary>
    public required double ConvertedWatts { get; init; }

    /// <summary>Watts at the shaft; 0 at standstill.</summary>
    public required double OutputWatts { get; init; }

    /// <summary>Torque at the shaft in N·m.</summary>
    public required double ShaftTorque { get; init; }

    /// <summary>Output over input, a ratio; <see langword="null"/> where the shaft is driven instead of driving.</summary>
    public required double? Efficiency { get; init; }

    /// <summary>Heat in the stator windings in watts.</summary>
    public required double StatorCopperWatts { get; init; }

    /// <summary>Heat in the rotor in watts.</summary>
    public required double RotorCopperWatts { get; init; }

    /// <summary>Books the watts of one slip.</summary>
    /// <param name="feed">The supply.</param>
    /// <param name="slip">Forward slip.</param>
    /// <param name="amps">The line current against the supply volts.</param>
    /// <param name="inputWatts">Watts into the circuit.</param>
    /// <param name="gap">Forward and backward watts across the gap.</param>
    /// <param name="statorWatts">Heat in the stator windings.</param>
    /// <param name="losses">Losses outside the circuit.</param>
    internal static OperatingPoint Of(
        Feed feed, double slip, Complex amps, double inputWatts, (double Forward, double Backward) gap, double statorWatts, Losses losses)
    {
        var (omega, net, turns) = (feed.SynchronousOmega, gap.Forward - gap.Backward, slip != 1);
        var converted = net * (1 - slip);
        var drawn = inputWatts + (losses.Booking == CoreBooking.ToInput ? losses.CoreWatts : 0);
        var output = turns ? converted - losses.RotationalWatts - (losses.Booking == CoreBooking.FromOutput ? losses.CoreWatts : 0) : 0;
        return new OperatingPoint
        {
            Slip = slip,
            Rpm = feed.SynchronousRpm * (1 - slip),
            SynchronousRpm = feed.SynchronousRpm,
            Amps = amps.Magnitude,
            AngleDegrees = Degrees(amps),
            PowerFactor = amps == Complex.Zero ? 0 : Math.Cos(amps.Phase),
            InputWatts = drawn,
            ForwardWatts = gap.Forward,
            BackwardWatts = gap.Backward,
            ForwardTorque = gap.Forward / omega,
            BackwardTorque = gap.Backward / omega,
            AirGapWatts = net,
            Torque = net / omega,
            ConvertedWatts = converted,
            OutputWatts = output,
            ShaftTorque = turns ? output / (omega * (1 - slip)) : net / omega,
            Efficiency = output >= 0 && drawn > 0 ? output / drawn : null,
            StatorCopperWatts = statorWatts,
            RotorCopperWatts = (slip * gap.Forward) + ((2 - slip) * gap.Backward),
        };
    }

    /// <summary>The angle of a phasor in degrees.</summary>
    internal static double Degrees(Complex phasor) => phasor.Phase * 180 / Math.PI;

    /// <summary>The squared size of a phasor.</summary>
    internal static double Squared(Complex phasor) => (phasor.Real * phasor.Real) + (phasor.Imaginary * phasor.Imaginary);
}
