using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Safety;

/// <summary>What is said to somebody who asks whether they may do it.</summary>
public static class OpenWork
{
    /// <summary>The gap of a sentence that names what has to be so first.</summary>
    internal const string Needs = "needs";

    /// <summary>What is open to the person, what opens once something is so, and what stays closed.</summary>
    /// <param name="gate">What the gate says of the case.</param>
    /// <param name="knowledge">The facts of the trade.</param>
    public static IReadOnlyList<Statement> Say(Gate gate, TradeKnowledge knowledge)
    {
        ArgumentNullException.ThrowIfNull(gate);
        ArgumentNullException.ThrowIfNull(knowledge);
        var waiting = gate.Conditions.GroupBy(condition => string.Join(' ', condition.Needs), StringComparer.Ordinal);
        return
        [
            .. Named("asked.may-now", gate.Allowed, knowledge),
            .. waiting.SelectMany(same => Named("asked.may-once", same.Select(condition => condition.Task), knowledge).Select(said => said.With(Needs, same.First().Text.Parts[Needs]))),
            .. Named("asked.may-not", gate.Closed.Select(closed => closed.Task).Where(task => !gate.CouldOpen(task)), knowledge),
        ];
    }

    private static IEnumerable<Statement> Named(string sentence, IEnumerable<string> tasks, TradeKnowledge knowledge) =>
        string.Join("; ", tasks.Select(task => knowledge.GateTasks[task].Name)) is { Length: > 0 } named ? [Statement.Of(sentence, ("tasks", named))] : [];
}
