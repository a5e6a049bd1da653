using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Machines;

/// <summary>What the contract answers of a machine; a member that the question does not concern is <see langword="null"/>.</summary>
public sealed record MachineAnswer
{
    /// <summary>Line amps; with unequal lines those of the line that carries most.</summary>
    public double? Amps { get; init; }

    /// <summary>Angle of the line current in degrees, negative lags.</summary>
    public double? AngleDegrees { get; init; }

    /// <summary>Power factor.</summary>
    public double? PowerFactor { get; init; }

    /// <summary>Watts from the line.</summary>
    public double? InputWatts { get; init; }

    /// <summary>Torque of the forward field in N·m.</summary>
    public double? ForwardTorque { get; init; }

    /// <summary>Torque of the backward field in N·m.</summary>
    public double? BackwardTorque { get; init; }

    /// <summary>Forward less backward torque in N·m, before friction.</summary>
    public double? Torque { get; init; }

    /// <summary>Forward less backward watts across the air gap.</summary>
    public double? AirGapWatts { get; init; }

    /// <summary>Watts across the air gap with the forward field.</summary>
    public double? ForwardAirGapWatts { get; init; }

    /// <summary>Watts across the air gap with the backward field.</summary>
    public double? BackwardAirGapWatts { get; init; }

    /// <summary>Watts turned from electric to mechanical.</summary>
    public double? ConvertedWatts { get; init; }

    /// <summary>Watts at the shaft.</summary>
    public double? OutputWatts { get; init; }

    /// <summary>Torque at the shaft in N·m.</summary>
    public double? ShaftTorque { get; init; }

    /// <summary>Output over input.</summary>
    public double? Efficiency { get; init; }

    /// <summary>Heat in the stator windings in watts.</summary>
    public double? StatorCopperWatts { get; init; }

    /// <summary>Heat in the rotor in watts.</summary>
    public double? RotorCopperWatts { get; init; }

    /// <summary>Speed of the field.</summary>
    public double? SynchronousRpm { get; init; }

    /// <summary>Slip that was answered.</summary>
    public required double Slip { get; init; }

    /// <summary>Shaft speed that was answered.</summary>
    public required double Rpm { get; init; }

    /// <summary>Where the core loss was booked.</summary>
    public required string CoreBooking { get; init; }

    /// <summary>Starting torque in N·m.</summary>
    public double? StartingTorque { get; init; }

    /// <summary>Line amps at standstill.</summary>
    public double? StartingAmps { get; init; }

    /// <summary>Greatest torque in N·m.</summary>
    public double? BreakdownTorque { get; init; }

    /// <summary>Slip of the greatest torque.</summary>
    public double? BreakdownSlip { get; init; }

    /// <summary>Amps of the main winding.</summary>
    public double? MainAmps { get; init; }

    /// <summary>Their angle in degrees.</summary>
    public double? MainAngleDegrees { get; init; }

    /// <summary>Amps of the start winding.</summary>
    public double? StartAmps { get; init; }

    /// <summary>Their angle in degrees.</summary>
    public double? StartAngleDegrees { get; init; }

    /// <summary>By how much the start current leads the main current, in degrees.</summary>
    public double? BetweenDegrees { get; init; }

    /// <summary>Volts across the capacitor.</summary>
    public double? CapacitorVolts { get; init; }

    /// <summary>The currents at standstill.</summary>
    public StartingAnswer? Starting { get; init; }

    /// <summary>Microfarads that set the start currents at right angles.</summary>
    public double? MicrofaradsFor90Degrees { get; init; }

    /// <summary>Microfarads for the greatest starting torque.</summary>
    public double? MicrofaradsForGreatestTorque { get; init; }

    /// <summary>Microfarads for the greatest starting torque for each ampere of the line.</summary>
    public double? MicrofaradsForGreatestTorquePerAmp { get; init; }

    /// <summary>Amps of lines A, B and C where they differ.</summary>
    public IReadOnlyList<double>? LineAmps { get; init; }

    /// <summary>Volts at the terminals AB, BC and CA where they differ.</summary>
    public IReadOnlyList<double>? TerminalVolts { get; init; }

    /// <summary>The circuit, where it was found from tests.</summary>
    public MachineCircuit? Circuit { get; init; }

    /// <summary><c>circuit</c> as given, <c>tests</c> or <c>estimate</c>.</summary>
    public string Basis { get; init; } = "circuit";

    /// <summary>Of an estimate, the range of each figure over the circuits that such a motor may have.</summary>
    public IReadOnlyList<EstimatedFigure>? Estimates { get; init; }

    /// <summary>What common faults do to it.</summary>
    public IReadOnlyList<FaultEffect> Effects { get; init; } = [];

    /// <summary>Points over slip, from standstill.</summary>
    public IReadOnlyList<CurvePoint>? Curve { get; init; }

    /// <summary>How it was worked out.</summary>
    public required IReadOnlyList<TrailStep> Trail { get; init; }
}

/// <summary>The currents of a two-winding machine at standstill.</summary>
/// <param name="MainAmps">Amps of the main winding.</param>
/// <param name="MainAngleDegrees">Their angle in degrees.</param>
/// <param name="StartAmps">Amps of the start winding.</param>
/// <param name="StartAngleDegrees">Their angle in degrees.</param>
/// <param name="LineAmps">Amps of the line.</param>
/// <param name="LineAngleDegrees">Their angle in degrees.</param>
/// <param name="BetweenDegrees">By how much the start current leads the main current, in degrees.</param>
/// <param name="Torque">Starting torque in N·m; <see langword="null"/> where the rotor is not known.</param>
/// <param name="TorqueFactor">Amps × amps × sine of the angle between them, in A².</param>
public sealed record StartingAnswer(
    double MainAmps, double MainAngleDegrees, double StartAmps, double StartAngleDegrees, double LineAmps, double LineAngleDegrees,
    double BetweenDegrees, double? Torque, double TorqueFactor);

/// <summary>One point of a curve over slip.</summary>
/// <param name="Slip">Slip.</param>
/// <param name="Rpm">Shaft speed.</param>
/// <param name="Torque">Torque before friction in N·m.</param>
/// <param name="Amps">Line amps.</param>
/// <param name="PowerFactor">Power factor.</param>
/// <param name="Efficiency">Output over input; <see langword="null"/> where the shaft is driven instead of driving.</param>
/// <param name="Torques">Of an estimate, the range of the torque.</param>
/// <param name="AmpsRange">Of an estimate, the range of the amps.</param>
public sealed record CurvePoint(
    double Slip, double Rpm, double Torque, double Amps, double PowerFactor, double? Efficiency, LowHigh? Torques = null, LowHigh? AmpsRange = null);

/// <summary>A range of one figure.</summary>
/// <param name="Low">The least.</param>
/// <param name="High">The greatest.</param>
public sealed record LowHigh(double Low, double High)
{
    /// <summary>The range of some figures; <see langword="null"/> where one of them is not known.</summary>
    internal static LowHigh? Of(IEnumerable<double?> figures) =>
        figures.ToList() is { Count: > 0 } all && all.TrueForAll(figure => figure is { } known && double.IsFinite(known)) ? new(all.Min()!.Value, all.Max()!.Value) : null;
}

/// <summary>The range of one figure of an estimate.</summary>
/// <param name="Name">The member of the answer.</param>
/// <param name="Low">The least.</param>
/// <param name="High">The greatest.</param>
public sealed record EstimatedFigure(string Name, double Low, double High);

/// <summary>What a fault does, in percent of the sound machine; a figure that it does not concern is <see langword="null"/>.</summary>
/// <param name="Fault"><c>low-supply</c>, <c>weak-capacitor</c>, <c>lost-line</c> or <c>reversed-half</c>.</param>
/// <param name="Share">How far it goes: the share of the volts or microfarads that is left.</param>
/// <param name="StartingTorque">Starting torque.</param>
/// <param name="StartingAmps">Starting amps of the line.</param>
/// <param name="Torque">Torque at the slip that was asked.</param>
/// <param name="Amps">Line amps at the slip that was asked.</param>
/// <param name="AmpsAtSameTorque">Line amps once it gives the same torque again.</param>
public sealed record FaultEffect(
    string Fault, double? Share, LowHigh? StartingTorque, LowHigh? StartingAmps, LowHigh? Torque, LowHigh? Amps, LowHigh? AmpsAtSameTorque);
