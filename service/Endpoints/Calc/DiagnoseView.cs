using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>A trouble report as the contract writes it, in the words of the person's role.</summary>
internal sealed record DiagnoseView(
    string Status, IReadOnlyList<string> Say, GateView Gate, IReadOnlyList<CauseView> Causes, NextView? Next, IReadOnlyList<CautionView> Cautions, IReadOnlyList<string> Unjudged)
{
    public static DiagnoseView Of(TroubleReport report, SentenceBook sentences, Role role)
    {
        var (gate, faults) = (report.Gate, report.Faults);
        return new DiagnoseView(
            faults.Status,
            All(faults.Say),
            new GateView(
                gate.Allowed, [.. gate.Closed.Select(closed => new ClosedView(closed.Task, Say(closed.Reason)))], gate.ReferOut, gate.ReferTo,
                gate.Reason is null ? null : Say(gate.Reason), gate.Stop, [.. gate.Conditions.Select(condition => new ConditionView(condition.Task, condition.Needs, Say(condition.Text)))], All(gate.TellThem)),
            [.. faults.Causes.Select(cause => new CauseView(cause.Id, Say(cause.Name), cause.Probability, All(cause.For), All(cause.Against), Say(cause.Repair)))],
            faults.Next is { } next ? NextOf(next) : null,
            [.. report.Cautions.Select(caution => new CautionView(caution.Id, Say(caution.Text)))],
            faults.Unjudged);

        string Say(Statement statement) => sentences.Render(statement, role);

        IReadOnlyList<string> All(IEnumerable<Statement> statements) => [.. statements.Select(Say)];

        NextView NextOf(NextTest test) => new(
            test.Test, Say(test.Name), Say(test.Why), test.Cost, test.Bits, test.Task, test.Needs, test.Unit, All(test.How),
            [.. test.Outcomes.Select(outcome => new OutcomeView(outcome.Id, Say(outcome.Reading), Say(outcome.Means), Say(outcome.Then), outcome.Cause))]);
    }
}

internal sealed record GateView(
    IReadOnlyList<string> Allowed, IReadOnlyList<ClosedView> Closed, bool ReferOut, string? ReferTo, string? Reason, bool Stop, IReadOnlyList<ConditionView> Conditions, IReadOnlyList<string> TellThem);

internal sealed record ClosedView(string Task, string Reason);

internal sealed record ConditionView(string Task, IReadOnlyList<string> Needs, string Text);

internal sealed record CauseView(string Id, string Name, double Probability, IReadOnlyList<string> For, IReadOnlyList<string> Against, string Repair);

internal sealed record NextView(
    string Test, string Name, string Why, double Cost, double Bits, string Task, IReadOnlyList<string> Needs, string? Unit, IReadOnlyList<string> How, IReadOnlyList<OutcomeView> Outcomes);

internal sealed record OutcomeView(string Id, string Reading, string Means, string Then, string Cause);

internal sealed record CautionView(string Id, string Text);
