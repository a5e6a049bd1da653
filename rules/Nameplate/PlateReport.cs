using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>What a plate says beyond its letters: what follows from it, and where it disagrees with itself.</summary>
public sealed record PlateReport
{
    /// <summary>Number of poles; <see langword="null"/> where the speed settles none.</summary>
    public Quoted? Poles { get; init; }

    /// <summary>Speed of the field in rpm.</summary>
    public Quoted? SynchronousRpm { get; init; }

    /// <summary>Slip at the marked speed in percent.</summary>
    public Quoted? SlipPercent { get; init; }

    /// <summary>Torque at rated power and speed in N·m.</summary>
    public Quoted? RatedTorque { get; init; }

    /// <summary>The same torque in lb·ft.</summary>
    public Quoted? RatedTorquePoundFeet { get; init; }

    /// <summary>Power drawn at full load in watts.</summary>
    public QuotedRange? InputWatts { get; init; }

    /// <summary>Current with the rotor held in amps, at the first marked volts.</summary>
    public QuotedRange? LockedRotorAmps { get; init; }

    /// <summary>Where the plate disagrees with itself or with what motors are; empty where nothing does.</summary>
    public IReadOnlyList<PlateFinding> Findings { get; init; } = [];

    /// <summary>Missing fields as ranges, each marked as taken from what is usual.</summary>
    public IReadOnlyList<PlateEstimate> Estimates { get; init; } = [];
}

/// <summary>A disagreement.</summary>
/// <param name="Id">The check, for example <c>PC-DUAL</c>.</param>
/// <param name="Why">What disagrees, and the likeliest misreading.</param>
/// <param name="Severity"><c>impossible</c>, <c>doubtful</c> or <c>mind</c>.</param>
public sealed record PlateFinding(string Id, Statement Why, string Severity)
{
    /// <summary>The values that the finding rests on.</summary>
    public IReadOnlyList<Quoted> Values => Why.Quotes;
}

/// <summary>A field that is not marked, as a range of what is usual.</summary>
/// <param name="Field">The field's name in camelCase.</param>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
/// <param name="Why">What it was taken from.</param>
public sealed record PlateEstimate(string Field, Quoted Low, Quoted High, Statement Why);
