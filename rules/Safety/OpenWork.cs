using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Safety;

/// <summary>What is said to somebody who asks whether they may do it.</summary>
public static class OpenWork
{
    /// <summary>The gap of a sentence that names what has to be so first.</summary>
    internal const string Needs = "needs";

    private const string Isolated = "isolated";

    /// <summary>What is open to the person, what opens once something is so, and what stays closed. Nobody is told to lay a hand on a machine that may start: what is only looked at and turned by hand waits for isolation too, and where even the plug is left alone nothing is open.</summary>
    /// <param name="gate">What the gate says of the case.</param>
    /// <param name="knowledge">The facts of the trade.</param>
    public static IReadOnlyList<Statement> Say(Gate gate, TradeKnowledge knowledge)
    {
        ArgumentNullException.ThrowIfNull(gate);
        ArgumentNullException.ThrowIfNull(knowledge);
        if (gate.KeptFor is not null || gate.Cautions.Any(caution => knowledge.Cautions[caution.Id].Alone))
        {
            return [.. Named("asked.may-not", knowledge.GateTasks.Keys, knowledge)];
        }

        var hands = gate.IsIsolated ? [] : gate.Allowed.Where(task => knowledge.GateTasks[task].Group == "look").ToList();
        var isolate = Statement.Named(knowledge.Confirmations[Isolated].FirstId);
        var waiting = hands.Select(task => (Task: task, For: Isolated, First: (IReadOnlyList<Statement>)[isolate]))
            .Concat(gate.Conditions.Select(condition => (condition.Task, For: string.Join(' ', condition.Needs), First: condition.Text.Parts[Needs])));
        return
        [
            .. Named("asked.may-now", gate.Allowed.Except(hands, StringComparer.Ordinal), knowledge),
            .. waiting.GroupBy(one => one.For, StringComparer.Ordinal).SelectMany(same => Named("asked.may-once", same.Select(one => one.Task), knowledge).Select(said => said.With(Needs, same.First().First))),
            .. Named("asked.may-not", gate.Closed.Select(closed => closed.Task).Where(task => !gate.CouldOpen(task)), knowledge),
        ];
    }

    private static IEnumerable<Statement> Named(string sentence, IEnumerable<string> tasks, TradeKnowledge knowledge) =>
        string.Join("; ", tasks.Select(task => knowledge.GateTasks[task].Name)) is { Length: > 0 } named ? [Statement.Of(sentence, ("tasks", named))] : [];
}
