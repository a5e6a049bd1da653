using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Safety;

/// <summary>Role × task × condition → open, open once confirmed, or refused and referred. The table is knowledge; this reads it. Pure.</summary>
/// <param name="knowledge">The facts of the trade.</param>
public sealed class SafetyGate(TradeKnowledge knowledge)
{
    /// <summary>What the person may do of this case.</summary>
    /// <param name="file">The case.</param>
    /// <remarks>Refusal is stronger than any confirmation, and conditions only ever close: none opens what another refuses.</remarks>
    public Gate Judge(CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var role = RoleOf(file);
        var signs = new CaseSigns(knowledge, file);
        var holding = Holding(signs, role);
        var verdicts = knowledge.GateTasks.Values.Select(task => Decide(task, role, holding, signs)).ToList();
        var away = holding.Exists(held => held.Condition.Cautions.Any(id => knowledge.Cautions[id].Alone)); // where no plug may be touched nobody is asked to isolate
        var stopping = away ? null : holding.Find(held => held.Condition.Stops && !signs.Meets("isolated", held.Position));
        var referring = verdicts.Select(verdict => verdict.Referral).OfType<Referral>().OrderBy(referral => referral.Order).FirstOrDefault();
        var weightiest = stopping ?? holding.Find(held => held.Condition == referring?.Condition) ?? holding.Find(held => held.Condition.Rows.Count > 0);
        return new Gate
        {
            Allowed = [.. verdicts.Where(verdict => verdict.Closed is null).Select(verdict => verdict.Task)],
            Closed = [.. verdicts.Where(verdict => verdict.Closed is not null).Select(verdict => new ClosedTask(verdict.Task, verdict.Closed!))],
            Conditions = [.. verdicts.Where(verdict => verdict.Waits.Count > 0).Select(verdict => new TaskCondition(verdict.Task, verdict.Waits, verdict.Closed!))],
            ReferOut = referring is not null,
            ReferTo = referring?.To,
            Reason = weightiest is null ? null : Statement.Of($"gate.condition.{weightiest.Condition.Id}"),
            Stop = stopping is not null,
            IsIsolated = signs.Meets("isolated", -1),
            KeptFor = holding.Find(held => held.Condition.KeepsOff.Contains(role, StringComparer.Ordinal))?.Condition.Rows.Select(row => row.ReferTo).FirstOrDefault(to => to is not null),
            Holding = [.. holding.Select(held => held.Condition.Id)],
            DeniedSince = [.. holding.SelectMany(held => held.Condition.When.Select(trigger => trigger.Symptom).OfType<string>().Where(symptom => signs.IsDenied(symptom, held.Position)))],
            Cautions = Cautions(holding, verdicts, referring),
            TellThem = ReferralCard.Of(knowledge, file, holding.Select(held => held.Condition)),
        };
    }

    /// <summary>A danger word as a fact of the case, so that it closes work until it is retracted.</summary>
    /// <param name="danger">What was heard, for example <c>shock-felt</c> or <c>panel</c>.</param>
    /// <param name="span">The words.</param>
    public static Fact Heard(string danger, string? span = null) => new Fact.Choice { Question = DangerQuestion(danger), Option = "said", Span = span };

    internal static string DangerQuestion(string danger) => Fact.Choice.Danger + danger;

    /// <summary>The role id that the table is read for: nothing in a practice motor can hurt, so it is worked as a technician would.</summary>
    private static string RoleOf(CaseFile file) => file.Opening.Practice ? RoleId(Role.Technician) : RoleId(file.Role);

    private static string RoleId(Role role) => role switch
    {
        Role.Technician => "technician",
        Role.Homeowner => "homeowner",
        Role.Apprentice => "apprentice",
        Role.Manager => "manager",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "The gate does not know this role."),
    };

    private List<Held> Holding(CaseSigns signs, string role)
    {
        var held = new List<Held>();
        foreach (var condition in knowledge.GateConditions.Values)
        {
            var positions = condition.When.Select(trigger => signs.Position(trigger, role)).OfType<int>().ToList();
            if (positions.Count > 0)
            {
                held.Add(new Held(condition, positions.Max()));
            }
        }

        return held;
    }

    private Verdict Decide(GateTask task, string role, List<Held> holding, CaseSigns signs)
    {
        var needs = new List<string>();
        Statement? refused = null;
        Referral? referral = null;
        for (var order = 0; order < holding.Count; order++)
        {
            var (condition, position) = holding[order];
            foreach (var row in condition.Rows.Where(row => Covers(row, task, role)))
            {
                if (row.Refuse)
                {
                    refused ??= Statement.Of($"gate.condition.{condition.Id}");
                    referral ??= row.ReferTo is null ? null : new Referral(row.ReferTo, condition, order);
                }

                needs.AddRange(row.Needs.Where(need => !signs.Meets(need, condition.Renews ? position : -1)));
            }
        }

        var own = task.Roles[role];
        if (own.Refuse || refused is not null)
        {
            return new Verdict(task.Id, refused ?? Statement.Of($"gate.task.{task.Id}.{role}"), [], referral);
        }

        needs.AddRange(own.Needs.Where(need => !signs.Meets(need, -1)));
        var waits = knowledge.Confirmations.Keys.Where(id => needs.Contains(id, StringComparer.Ordinal)).ToList();
        return waits.Count == 0
            ? new Verdict(task.Id, null, [], null)
            : new Verdict(task.Id, Statement.Of("safety.first").With(OpenWork.Needs, waits.Select(id => Statement.Named(knowledge.Confirmations[id].FirstId)).Aggregate((one, other) => Statement.Of("safety.both").With("one", one).With("other", other))), waits, null);
    }

    private static bool Covers(GateRow row, GateTask task, string role) =>
        (row.Roles.Count == 0 || row.Roles.Contains(role, StringComparer.Ordinal))
        && row.Tasks.Any(name => name == task.Id || name == task.Group);

    private List<Caution> Cautions(List<Held> holding, List<Verdict> verdicts, Referral? referring)
    {
        List<string> ids = [.. holding.SelectMany(held => held.Condition.Cautions)
            .Concat(verdicts.Any(verdict => verdict.Waits.Contains("isolated", StringComparer.Ordinal)) ? ["isolate-and-prove-dead"] : [])
            .Concat(referring is null ? [] : Referred(referring.To))
            .Distinct(StringComparer.Ordinal)];
        var alone = ids.FindAll(id => knowledge.Cautions[id].Alone);
        return [.. (alone.Count > 0 ? alone : ids).OrderByDescending(id => knowledge.Cautions[id].Weight).Select(id => new Caution(id, Statement.Of($"caution.{id}")))];
    }

    private IEnumerable<string> Referred(string to) => new[] { $"call-{to}" }.Where(knowledge.Cautions.ContainsKey);

    private sealed record Held(GateCondition Condition, int Position);

    private sealed record Referral(string To, GateCondition Condition, int Order);

    private sealed record Verdict(string Task, Statement? Closed, IReadOnlyList<string> Waits, Referral? Referral);
}
