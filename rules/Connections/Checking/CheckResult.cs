using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>What a check says of a connection.</summary>
public sealed record CheckResult
{
    /// <summary>The verdict: the worst of the findings.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>What each coil sees.</summary>
    public required IReadOnlyList<CheckedCoil> Coils { get; init; }

    /// <summary>Amps in the line that carries most; <see langword="null"/> without any measured ohms, or on a shorted supply.</summary>
    public double? LineAmps { get; init; }

    /// <summary>What was found: what would burn or trip at once, then what the rest follows from, then the rest, the worst first.</summary>
    public required IReadOnlyList<CheckFinding> Findings { get; init; }

    /// <summary>Which way the field turns at standstill; <see langword="null"/> for a three-phase motor, see <see cref="PhaseOrder"/>.</summary>
    public FieldRotation? Rotation { get; init; }

    /// <summary>The order in which the field of a three-phase motor passes its axes: <c>a-b-c</c>, <c>a-c-b</c> or <c>none</c>.</summary>
    public string? PhaseOrder { get; init; }

    /// <summary>What a person would see and hear at switch-on.</summary>
    public IReadOnlyList<Statement> Seen { get; init; } = [];

    /// <summary>The smallest change that makes it right; <see langword="null"/> where one change does not.</summary>
    public Change? Change { get; init; }

    /// <summary>What the winding that is worst off draws at standstill against the right connection on the same volts, a ratio, 1 for a right connection; <see langword="null"/> where it cannot be told.</summary>
    public double? StartingTimes { get; init; }

    /// <summary>How it was worked out.</summary>
    public IReadOnlyList<TrailStep> Trail { get; init; } = [];
}

/// <summary>The verdict on a connection.</summary>
public enum Verdict
{
    /// <summary>Every winding sees its volts with the right sense.</summary>
    Correct,

    /// <summary>Nothing is wrong yet, but something is not joined.</summary>
    Incomplete,

    /// <summary>It would not run as it should.</summary>
    Wrong,

    /// <summary>It would trip, burn or put a person at risk at once.</summary>
    Dangerous,
}

/// <summary>Which winding the field reaches last.</summary>
public enum FieldRotation
{
    /// <summary>It does not turn.</summary>
    None,

    /// <summary>From the main axis to the start axis.</summary>
    StartFollowsMain,

    /// <summary>From the start axis to the main axis.</summary>
    MainFollowsStart,
}

/// <summary>What a coil sees.</summary>
/// <param name="Id">The coil.</param>
/// <param name="Volts">Volts across it; of a start coil across its whole branch. <see langword="null"/> on a shorted supply.</param>
/// <param name="AngleDegrees">Their phase from its start to its finish, in degrees.</param>
/// <param name="PercentOfRated">Volts as percent of rated.</param>
/// <param name="Amps">Amps through it; <see langword="null"/> without any measured ohms.</param>
public sealed record CheckedCoil(string Id, double? Volts, double? AngleDegrees, double? PercentOfRated, double? Amps);

/// <summary>Something found.</summary>
/// <param name="Rule">The rule that found it.</param>
/// <param name="Severity">How bad it is.</param>
/// <param name="About">Coils, leads, joints or conductors.</param>
/// <param name="Why">Why.</param>
public sealed record CheckFinding(string Rule, Severity Severity, IReadOnlyList<string> About, Statement Why);

/// <summary>How bad a finding is.</summary>
public enum Severity
{
    /// <summary>Good to know.</summary>
    Note,

    /// <summary>Something is not joined.</summary>
    Open,

    /// <summary>Wrong.</summary>
    Wrong,

    /// <summary>Dangerous.</summary>
    Danger,
}

/// <summary>A change to the joints.</summary>
/// <param name="What">What to do.</param>
/// <param name="Joints">The joints after it.</param>
public sealed record Change(Statement What, IReadOnlyList<FoundJoint> Joints);
