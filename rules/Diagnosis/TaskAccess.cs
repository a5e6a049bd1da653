using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What the gate says of one task.</summary>
/// <param name="Refused">Not open to this person in this case.</param>
/// <param name="Needs">The confirmations that it still waits for; empty where it is open or refused.</param>
public sealed record TaskAccess(bool Refused, IReadOnlyList<string> Needs)
{
    /// <summary>Open at once.</summary>
    public static TaskAccess Open { get; } = new(false, []);

    /// <summary>The same of every task.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="access">What the gate says of each.</param>
    public static IReadOnlyDictionary<string, TaskAccess> Everywhere(TradeKnowledge knowledge, TaskAccess access) =>
        knowledge.GateTasks.Keys.ToDictionary(task => task, _ => access, StringComparer.Ordinal);
}
