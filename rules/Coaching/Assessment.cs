using WireCoach.Rules.Connections;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Safety;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching;

/// <summary>Everything that the rules say of a case.</summary>
public sealed record Assessment
{
    /// <summary>Where the job stands: <c>open</c>, <c>ready</c>, <c>verified</c>, <c>referred</c>, <c>closed</c>.</summary>
    public required string Status { get; init; }

    /// <summary>What the person wants, as a goal id.</summary>
    public string? Goal { get; init; }

    /// <summary>What the person may do, and what closes the rest.</summary>
    public required Gate Gate { get; init; }

    /// <summary>What the readings say of the leads; <see langword="null"/> before there are leads.</summary>
    public Identification? Identification { get; init; }

    /// <summary>Which ends are alike; <see langword="null"/> before the windings are identified.</summary>
    public EndsFinding? Ends { get; init; }

    /// <summary>The plan; <see langword="null"/> while something is missing.</summary>
    public Plan? Plan { get; init; }

    /// <summary>What the joints as found amount to; <see langword="null"/> while too little is known.</summary>
    public CheckResult? Found { get; init; }

    /// <summary>The likely causes, where a fault is looked for.</summary>
    public IReadOnlyList<RankedCause> Causes { get; init; } = [];

    /// <summary>The checks that were made.</summary>
    public IReadOnlyList<Check> Checks { get; init; } = [];

    /// <summary>The one thing to ask next; <see langword="null"/> when there is nothing left to ask.</summary>
    public Question? Next { get; init; }

    /// <summary>What the engine has to say of the case as it stands, in order of weight.</summary>
    public IReadOnlyList<Statement> Say { get; init; } = [];

    /// <summary>What stands between here and a plan.</summary>
    public IReadOnlyList<string> PlanMissing { get; init; } = [];

    /// <summary>Why a motor of this kind is given no plan, however much is known; <see langword="null"/> where one may still follow.</summary>
    public Statement? NoPlan { get; init; }

    /// <summary>The cautions that apply, the weightiest first.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];
}

/// <summary>One check before or after power: what was expected, what was read, and how they compare.</summary>
/// <param name="Id">The check's id, for example <c>insulation</c> or <c>J1-J2</c>.</param>
/// <param name="Expect">What was expected.</param>
/// <param name="Got">What was read.</param>
/// <param name="Verdict"><c>pass</c>, <c>marginal</c> or <c>fail</c>.</param>
/// <param name="Says">The same in a sentence.</param>
public sealed record Check(string Id, string Expect, string Got, string Verdict, Statement Says)
{
    /// <summary>What to do about it.</summary>
    public IReadOnlyList<Statement> DoNext { get; init; } = [];

    /// <summary>What else the same readings say: how insulation moved since earlier sessions, how equal three volts are.</summary>
    public Statement? Also { get; init; }
}
