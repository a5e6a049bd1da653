using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Capacitors;

/// <summary>What a capacitor amounts to: its health, what may replace it, and how it is made safe.</summary>
public sealed record CapacitorReport
{
    /// <summary>Measured µF; <see langword="null"/> where nothing was measured.</summary>
    public Quoted? MeasuredMicrofarads { get; init; }

    /// <summary>The band in which it is good, in µF; <see langword="null"/> where no µF is marked.</summary>
    public QuotedRange? Band { get; init; }

    /// <summary><c>good</c>, <c>weak</c>, <c>over</c>, <c>open</c>, <c>shorted</c> or <c>unknown</c>.</summary>
    public required string Verdict { get; init; }

    /// <summary>Why.</summary>
    public required Statement Why { get; init; }

    /// <summary>Each candidate, allowed or not.</summary>
    public IReadOnlyList<CapacitorReplacement> Replacements { get; init; } = [];

    /// <summary>µF of the parts in series or in parallel.</summary>
    public Quoted? CombinedMicrofarads { get; init; }

    /// <summary>Volts AC that the combination stands.</summary>
    public Quoted? CombinedVolts { get; init; }

    /// <summary>Energy held in J.</summary>
    public Quoted? EnergyJoules { get; init; }

    /// <summary>Seconds through the resistor.</summary>
    public Quoted? BleedSeconds { get; init; }

    /// <summary>Watts in the resistor at the first moment.</summary>
    public Quoted? BleedWatts { get; init; }

    /// <summary>The resistor for a given time, in kΩ.</summary>
    public Quoted? BleedKilohms { get; init; }

    /// <summary>Volts across a run capacitor while the motor runs.</summary>
    public Quoted? RunVolts { get; init; }

    /// <summary>µF that are usual for the motor's power; <see langword="null"/> where it is not said or no table holds it.</summary>
    public QuotedRange? UsualMicrofarads { get; init; }

    /// <summary>How it is discharged by hand before it is touched or measured.</summary>
    public Discharge? Discharge { get; init; }

    /// <summary>What else there is to say.</summary>
    public IReadOnlyList<Statement> Notes { get; init; } = [];

    /// <summary>What an ohmmeter shows on it, discharged and taken off.</summary>
    public IReadOnlyList<Expectation> Meter { get; init; } = [];
}

/// <summary>A part that might take its place.</summary>
/// <param name="Candidate">The part.</param>
/// <param name="Allowed">Whether it may.</param>
/// <param name="Why">The weightiest reason.</param>
/// <param name="Reasons">All reasons against it; empty where it may.</param>
public sealed record CapacitorReplacement(CapacitorPart Candidate, bool Allowed, Statement Why, IReadOnlyList<Statement> Reasons);

/// <summary>How a capacitor is discharged by hand.</summary>
/// <param name="Resistor">The resistor in kΩ.</param>
/// <param name="Watts">The least watts that it is rated for.</param>
/// <param name="HoldSeconds">How long it is held, in s.</param>
/// <param name="SafeVolts">Direct volts below which it may be touched.</param>
/// <param name="WorstVolts">Direct volts that can stand on it at first.</param>
/// <param name="Steps">What to do, in order.</param>
public sealed record Discharge(Quoted Resistor, Quoted Watts, Quoted HoldSeconds, Quoted SafeVolts, Quoted WorstVolts, IReadOnlyList<Statement> Steps);
