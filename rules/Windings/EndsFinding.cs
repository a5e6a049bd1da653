using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Which ends are alike, as far as that is proved, and the test that would prove more.</summary>
public sealed record EndsFinding
{
    /// <summary>How far it is.</summary>
    public required EndsStatus Status { get; init; }

    /// <summary>The layout it was worked out for; <see langword="null"/> where none was named and the windings fit several.</summary>
    public string? Layout { get; init; }

    /// <summary>Pairs of like ends, by tag: both starts, or both finishes, of two windings that work together.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Alike { get; init; } = [];

    /// <summary>The tag of each marking, once every end is settled; <see langword="null"/> before.</summary>
    public IReadOnlyDictionary<string, string>? Assignment { get; init; }

    /// <summary>Whether the direction of rotation still has to be seen: the marks of the start winding, or the order of the phases, were chosen.</summary>
    public bool DirectionUnproved { get; init; }

    /// <summary>What to test next; <see langword="null"/> when all is settled or nothing is left to test.</summary>
    public NextTest? Next { get; init; }

    /// <summary>What must be said with it.</summary>
    public IReadOnlyList<Statement> Notes { get; init; } = [];

    /// <summary>How each result was judged.</summary>
    public IReadOnlyList<TrailStep> Trail { get; init; } = [];
}

/// <summary>How far the ends are told apart.</summary>
public enum EndsStatus
{
    /// <summary>Every end that matters is settled.</summary>
    Settled,

    /// <summary>A test is worth doing.</summary>
    NeedsTest,

    /// <summary>The results do not go together, or go with no way of winding.</summary>
    Contradiction,

    /// <summary>No test at hand decides; the notes say what would.</summary>
    CannotTell,
}

/// <summary>A test to do, with the reading to expect for each outcome.</summary>
public sealed record NextTest
{
    /// <summary>A test id of the contract.</summary>
    public required string Test { get; init; }

    /// <summary>How the leads are set up.</summary>
    public required TestSetup Setup { get; init; }

    /// <summary>The unit of the reading; <see langword="null"/> where an outcome is seen.</summary>
    public string? Unit { get; init; }

    /// <summary>The outcomes to choose from, where it is seen and not read.</summary>
    public IReadOnlyList<string> Outcomes { get; init; } = [];

    /// <summary>The task that the gate must allow: <c>low-voltage-test</c>, <c>measure-dead</c>, <c>first-start</c>.</summary>
    public required string Task { get; init; }

    /// <summary>Why this test.</summary>
    public required Statement Why { get; init; }

    /// <summary>How it is done.</summary>
    public required IReadOnlyList<Statement> How { get; init; }

    /// <summary>What each outcome means.</summary>
    public required IReadOnlyList<Expectation> Expect { get; init; }
}
