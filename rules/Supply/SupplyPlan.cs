using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>Planning figures for the supply of one motor. The adopted code and the inspector decide.</summary>
public sealed record SupplyPlan
{
    /// <summary>Full-load current of the code's table.</summary>
    public Quoted? TableAmps { get; init; }

    /// <summary>Current that the conductors must carry.</summary>
    public required Quoted ConductorAmps { get; init; }

    /// <summary>The conductor; <see langword="null"/> where none of the table carries the current.</summary>
    public ConductorChoice? Conductor { get; init; }

    /// <summary>Most that the overload device may be set to at first; <see langword="null"/> without the plate's amps.</summary>
    public Quoted? OverloadAmps { get; init; }

    /// <summary>Setting to start from.</summary>
    public Quoted? OverloadStartAmps { get; init; }

    /// <summary>Ceiling where it does not start or carry its load.</summary>
    public Quoted? OverloadCeilingAmps { get; init; }

    /// <summary>The short-circuit device.</summary>
    public required ProtectionChoice Protection { get; init; }

    /// <summary>The earth conductor.</summary>
    public required EarthChoice EarthConductor { get; init; }

    /// <summary>Voltage drop along the line; <see langword="null"/> without a length.</summary>
    public VoltageDropReport? VoltageDrop { get; init; }

    /// <summary>The larger conductor that the voltage drop recommends; <see langword="null"/> where it is small enough or no size is large enough.</summary>
    public LargerConductorChoice? LargerConductor { get; init; }

    /// <summary>Ampere rating of the disconnect.</summary>
    public Quoted? DisconnectAmps { get; init; }

    /// <summary>Most trip current of a built-in thermal protector.</summary>
    public Quoted? ThermalProtectorAmps { get; init; }

    /// <summary>Starting current.</summary>
    public Quoted? StartingAmps { get; init; }

    /// <summary>Current of the two live lines when the third is lost.</summary>
    public Quoted? LostLineAmps { get; init; }

    /// <summary>Conductors between a star-delta starter and the motor.</summary>
    public Quoted? WindingLeadAmps { get; init; }

    /// <summary>Dial range of a motor protection device.</summary>
    public QuotedRange? DialRange { get; init; }

    /// <summary>Most impedance of the fault loop in Ω.</summary>
    public Quoted? LoopOhms { get; init; }

    /// <summary>Time within which a fault must be cut, in s.</summary>
    public Quoted? DisconnectionSeconds { get; init; }

    /// <summary>Rated residual current of the additional protection, in mA.</summary>
    public Quoted? ResidualMilliamps { get; init; }

    /// <summary>Most resistance of the earth electrode in Ω, in a TT system.</summary>
    public Quoted? EarthElectrodeOhms { get; init; }

    /// <summary>Several motors on one feeder.</summary>
    public FeederReport? Feeder { get; init; }

    /// <summary>How it starts, and what it would take on one phase.</summary>
    public StartFigures? Start { get; init; }

    /// <summary>The adopted edition that was taken.</summary>
    public required string Edition { get; init; }

    /// <summary>What else there is to say, the weightiest first.</summary>
    public IReadOnlyList<Statement> Notes { get; init; } = [];
}

/// <summary>A conductor.</summary>
/// <param name="Size">Its size.</param>
/// <param name="CelsiusColumn">The temperature column that it was taken from.</param>
/// <param name="AmpacityAmps">What it carries where it lies.</param>
public sealed record ConductorChoice(Quoted Size, Quoted CelsiusColumn, Quoted AmpacityAmps);

/// <summary>A short-circuit device.</summary>
/// <param name="Device">Its kind.</param>
/// <param name="Amps">What the rule gives before any rounding.</param>
/// <param name="StandardAmps">The standard rating.</param>
/// <param name="CeilingAmps">The most that a motor which does not start may have.</param>
public sealed record ProtectionChoice(string Device, Quoted Amps, Quoted StandardAmps, Quoted? CeilingAmps);

/// <summary>An earth conductor.</summary>
/// <param name="Size">Its size, copper.</param>
/// <param name="AluminiumSize">Its size in aluminium, where the table has one.</param>
/// <param name="FaultSize">The least by the fault that it carries, where that was said.</param>
public sealed record EarthChoice(Quoted Size, Quoted? AluminiumSize = null, Quoted? FaultSize = null);

/// <summary>A conductor that was made larger for the voltage drop.</summary>
/// <param name="Size">Its size.</param>
/// <param name="EarthSize">The earth conductor that grows with it.</param>
/// <param name="Percent">The voltage drop that is left, in percent.</param>
public sealed record LargerConductorChoice(Quoted Size, Quoted EarthSize, Quoted Percent);

/// <summary>What is lost along the line.</summary>
/// <param name="Volts">Volts lost at full load.</param>
/// <param name="Percent">The same in percent of the supply.</param>
/// <param name="StartingVolts">Volts lost while starting.</param>
/// <param name="StartingPercent">The same in percent of the supply.</param>
/// <param name="StartingVoltsAtMotor">Volts left at the motor while starting.</param>
/// <param name="StartingTorque">Starting torque that is left, in percent.</param>
public sealed record VoltageDropReport(
    Quoted Volts, Quoted Percent, Quoted? StartingVolts, Quoted? StartingPercent, Quoted? StartingVoltsAtMotor, Quoted? StartingTorque);

/// <summary>A feeder of several motors.</summary>
/// <param name="ConductorAmps">What its conductors must carry.</param>
/// <param name="DeviceAmps">The most that the device ahead of it may be rated, given this motor's branch device as the largest.</param>
public sealed record FeederReport(Quoted ConductorAmps, Quoted DeviceAmps);
