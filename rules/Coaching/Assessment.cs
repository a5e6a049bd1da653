using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching;

/// <summary>Everything that the rules say of a case.</summary>
public sealed record Assessment
{
    /// <summary>Where the job stands: <c>open</c>, <c>ready</c>, <c>verified</c>, <c>referred</c>, <c>closed</c>.</summary>
    public required string Status { get; init; }

    /// <summary>What the person wants, as a goal id.</summary>
    public string? Goal { get; init; }

    /// <summary>The one thing to ask next; <see langword="null"/> when there is nothing left to ask.</summary>
    public Question? Next { get; init; }

    /// <summary>What the engine has to say of the case as it stands, in order of weight.</summary>
    public IReadOnlyList<Statement> Say { get; init; } = [];

    /// <summary>What stands between here and a plan.</summary>
    public IReadOnlyList<string> PlanMissing { get; init; } = [];

    /// <summary>The cautions that apply, the weightiest first.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];
}
