using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What is wrong, as far as it can be told, and what to do next.</summary>
public sealed record FaultReport
{
    /// <summary>
    /// <c>settled</c>: one instruction is sure enough; <c>two-remain</c>: the next test decides between two; <c>testing</c>: more than two
    /// remain; <c>refer</c>: no test that is open here would change what is done.
    /// </summary>
    public required string Status { get; init; }

    /// <summary>The causes by falling probability; those with next to none are left out.</summary>
    public required IReadOnlyList<RankedCause> Causes { get; init; }

    /// <summary>The test to make next; <see langword="null"/> where none would change what is done.</summary>
    public NextTest? Next { get; init; }

    /// <summary>How it ends or goes on: this is it, two remain, take it to somebody.</summary>
    public required IReadOnlyList<Statement> Say { get; init; }

    /// <summary>The instruction that the likeliest causes lead to, as a decision id.</summary>
    public required string Decision { get; init; }

    /// <summary>How likely that instruction is the right one, 0 to 1.</summary>
    public required double Certainty { get; init; }

    /// <summary>Who has to take it over, where that is how it ends.</summary>
    public string? ReferTo { get; init; }

    /// <summary>Tests whose values could not be judged, because plate, supply or capacitor marks are not known.</summary>
    public IReadOnlyList<string> Unjudged { get; init; } = [];

    /// <summary>The cautions of the next test and of what is to be done, as caution ids.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}

/// <summary>A cause with what speaks for and against it.</summary>
/// <param name="Id">A cause id of the contract.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Probability">0 to 1; several causes may hold at once, so these can add up to more than 1.</param>
/// <param name="For">What speaks for it, the strongest first.</param>
/// <param name="Against">What speaks against it, the strongest first.</param>
/// <param name="Repair">What is to be done if it is the cause.</param>
public sealed record RankedCause(
    string Id, Statement Name, double Probability, IReadOnlyList<Statement> For, IReadOnlyList<Statement> Against, Statement Repair);

/// <summary>The test to make next.</summary>
public sealed record NextTest
{
    /// <summary>A test id of the contract.</summary>
    public required string Test { get; init; }

    /// <summary>What it is called.</summary>
    public required Statement Name { get; init; }

    /// <summary>Why this one.</summary>
    public required Statement Why { get; init; }

    /// <summary>The task that it belongs to.</summary>
    public required string Task { get; init; }

    /// <summary>What has to be confirmed before it, as confirmation ids.</summary>
    public required IReadOnlyList<string> Needs { get; init; }

    /// <summary>Seconds that it takes with all that comes before it, its risk counted in.</summary>
    public required double Cost { get; init; }

    /// <summary>How much it is expected to settle, in bits.</summary>
    public required double Bits { get; init; }

    /// <summary>How it is done, step by step.</summary>
    public required IReadOnlyList<Statement> How { get; init; }

    /// <summary>What it can show and what follows.</summary>
    public required IReadOnlyList<NextOutcome> Outcomes { get; init; }

    /// <summary>The unit of a measured value, where there is one.</summary>
    public string? Unit { get; init; }
}

/// <summary>One outcome of the next test.</summary>
/// <param name="Id">The outcome's id, which may be sent back.</param>
/// <param name="Reading">What the person would see or read.</param>
/// <param name="Means">What it would mean.</param>
/// <param name="Then">What would then be likeliest.</param>
/// <param name="Cause">The id of that cause.</param>
public sealed record NextOutcome(string Id, Statement Reading, Statement Means, Statement Then, string Cause);
