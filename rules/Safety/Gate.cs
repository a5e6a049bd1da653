using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Safety;

/// <summary>What the person may do of this case, and what closes the rest.</summary>
public sealed record Gate
{
    /// <summary>The tasks that are open now, as task ids.</summary>
    public required IReadOnlyList<string> Allowed { get; init; }

    /// <summary>The tasks that are closed now, each with its reason.</summary>
    public required IReadOnlyList<ClosedTask> Closed { get; init; }

    /// <summary>Whether somebody else has to take the case over.</summary>
    public bool ReferOut { get; init; }

    /// <summary>Who: <c>licensed-electrician</c>, <c>motor-shop</c>, <c>refrigeration-technician</c>, <c>equipment-service-firm</c>, …</summary>
    public string? ReferTo { get; init; }

    /// <summary>The weightiest reason; <see langword="null"/> where nothing stands in the way.</summary>
    public Statement? Reason { get; init; }

    /// <summary>Whether everything stops until the machine is isolated anew.</summary>
    public bool Stop { get; init; }

    /// <summary>Who has to see the machine before this person touches anything more of it; <see langword="null"/> where nothing keeps them off.</summary>
    public string? KeptFor { get; init; }

    /// <summary>The cautions that apply, the weightiest first.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    /// <summary>The tasks that open once something is confirmed.</summary>
    public IReadOnlyList<TaskCondition> Conditions { get; init; } = [];

    /// <summary>The conditions that hold, as condition ids in order of weight.</summary>
    public IReadOnlyList<string> Holding { get; init; } = [];

    /// <summary>The lines of the card that goes with the motor to whoever takes over.</summary>
    public IReadOnlyList<Statement> TellThem { get; init; } = [];

    /// <summary>Whether the machine was isolated and nothing has put power on since.</summary>
    internal bool IsIsolated { get; init; }

    /// <summary>Symptoms whose danger still counts though it was denied since.</summary>
    internal IReadOnlyList<string> DeniedSince { get; init; } = [];

    /// <summary>Whether a task is open now.</summary>
    /// <param name="task">A task id.</param>
    public bool Opens(string task) => Allowed.Contains(task, StringComparer.Ordinal);

    /// <summary>Whether a task is open now or would be once its confirmations are given.</summary>
    /// <param name="task">A task id.</param>
    public bool CouldOpen(string task) => Opens(task) || Conditions.Any(condition => condition.Task == task);

    /// <summary>What a task still waits for; empty where it is open or refused.</summary>
    /// <param name="task">A task id.</param>
    public IReadOnlyList<string> WaitsFor(string task) => Conditions.FirstOrDefault(condition => condition.Task == task)?.Needs ?? [];
}

/// <summary>A closed task.</summary>
/// <param name="Task">The task id.</param>
/// <param name="Reason">Why it is closed.</param>
public sealed record ClosedTask(string Task, Statement Reason);

/// <summary>A task that opens once something is confirmed.</summary>
/// <param name="Task">The task id.</param>
/// <param name="Needs">The confirmations that are still missing, in the order in which they are asked.</param>
/// <param name="Text">The same in a sentence.</param>
public sealed record TaskCondition(string Task, IReadOnlyList<string> Needs, Statement Text);
