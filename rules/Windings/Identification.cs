using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>What the readings say of the leads: as much as they prove, and what would prove more.</summary>
public sealed record Identification
{
    /// <summary>How far it is.</summary>
    public required IdentificationStatus Status { get; init; }

    /// <summary>The windings as far as they are settled; with <see cref="IdentificationStatus.Identified"/> all of them.</summary>
    public IReadOnlyList<Winding> Windings { get; init; } = [];

    /// <summary>The layouts that fit, the likeliest first.</summary>
    public IReadOnlyList<RankedLayout> Layouts { get; init; } = [];

    /// <summary>Kinds of motor between which it cannot be told, sound or with something the matter; empty where that is not what stands in the way.</summary>
    public IReadOnlyList<string> Undecided { get; init; } = [];

    /// <summary>Winding faults that the readings show.</summary>
    public IReadOnlyList<WindingFault> Faults { get; init; } = [];

    /// <summary>Readings that do not go together.</summary>
    public IReadOnlyList<Contradiction> Contradictions { get; init; } = [];

    /// <summary>The reading or test that tells most for its trouble; <see langword="null"/> when none would.</summary>
    public NextReading? Next { get; init; }

    /// <summary>Touches of the meter so far.</summary>
    public required int TouchesSoFar { get; init; }

    /// <summary>Touches still to be expected on average; 0 when nothing is left to measure.</summary>
    public required double ExpectedTouchesLeft { get; init; }

    /// <summary>What must be said with it: what ohms never tell, why it cannot be told, what would tell.</summary>
    public IReadOnlyList<Statement> Notes { get; init; } = [];
}

/// <summary>How far an identification is.</summary>
public enum IdentificationStatus
{
    /// <summary>Every winding and its role rests on a measurement.</summary>
    Identified,

    /// <summary>One more reading is worth taking.</summary>
    NeedsReading,

    /// <summary>Two readings cannot both be right.</summary>
    Contradiction,

    /// <summary>A winding is broken, shorted or grounded.</summary>
    Faulty,

    /// <summary>No reading in ohms decides.</summary>
    CannotTell,
}

/// <summary>A winding, or a group of leads joined inside the motor.</summary>
public sealed record Winding
{
    /// <summary>A winding role of the contract: <c>run</c>, <c>start</c>, <c>phase</c>, …</summary>
    public required string Role { get; init; }

    /// <summary>The two leads by tag; of a junction or a tapped winding, all leads of the group in question.</summary>
    public required IReadOnlyList<string> Leads { get; init; }

    /// <summary>Ohms between the leads without the probes, of a junction between any two of its leads; <see langword="null"/> when it does not read steady ohms.</summary>
    public double? Ohms { get; init; }

    /// <summary>Taps by tag, from the first lead to the last.</summary>
    public IReadOnlyList<string>? Taps { get; init; }

    /// <summary>Whether the leads meet in a point that does not come out.</summary>
    public bool Junction { get; init; }

    /// <summary>The markings of the layout that belong to <see cref="Leads"/>, in their order; which of two ends is which is not settled by ohms.</summary>
    public IReadOnlyList<string> Markings { get; init; } = [];
}

/// <summary>A layout and how likely it is.</summary>
/// <param name="Id">A layout id of the contract.</param>
/// <param name="Probability">0 to 1.</param>
public sealed record RankedLayout(string Id, double Probability);

/// <summary>A fault that the readings show.</summary>
/// <param name="Id">A cause id of the contract, for example <c>open-run-winding</c>.</param>
/// <param name="Leads">The leads of the winding, by tag.</param>
/// <param name="Why">Which readings show it.</param>
public sealed record WindingFault(string Id, IReadOnlyList<string> Leads, Statement Why);

/// <summary>Readings that cannot all be right.</summary>
/// <param name="Readings">The readings to take again; none where that was done and settled nothing.</param>
/// <param name="Why">What does not fit.</param>
public sealed record Contradiction(IReadOnlyList<DoubtfulReading> Readings, Statement Why);

/// <summary>A reading that is doubted.</summary>
/// <param name="From">A lead by tag.</param>
/// <param name="To">Another lead by tag, or <c>frame</c>.</param>
/// <param name="Ohms">The figure as read; <see langword="null"/> when it was over-range.</param>
public sealed record DoubtfulReading(string From, string To, double? Ohms)
{
    /// <summary>Further leads that were held together with the first.</summary>
    public IReadOnlyList<string> Together { get; init; } = [];
}

/// <summary>What to measure next.</summary>
public sealed record NextReading
{
    /// <summary>A test id of the contract: <c>resistance</c>, or the bench test that tells more than ohms can.</summary>
    public required string Kind { get; init; }

    /// <summary>A lead by tag.</summary>
    public required string From { get; init; }

    /// <summary>Another lead by tag, or <c>frame</c>.</summary>
    public required string To { get; init; }

    /// <summary>Further leads to hold together with <c>from</c>; empty unless shortcuts are wanted.</summary>
    public IReadOnlyList<string> Together { get; init; } = [];

    /// <summary>What is fed and what is read, where one winding is tested against another; <see langword="null"/> for a reading in ohms.</summary>
    public TestSetup? Setup { get; init; }

    /// <summary>Why this one.</summary>
    public required Statement Why { get; init; }

    /// <summary>How much it is expected to tell of what to do next, in bits.</summary>
    public required double ExpectedTellings { get; init; }
}
