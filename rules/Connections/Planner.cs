using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>Plans the connection of a motor for the supply at hand, or says what is missing or does not suit. Pure.</summary>
/// <param name="knowledge">The facts of the trade.</param>
public sealed class Planner(TradeKnowledge knowledge)
{
    private readonly SupplyJudge _judge = new(knowledge);

    /// <summary>The plan, or why there is none: <c>invalid-fact</c>, <c>unknown-lead</c>, or <c>not-ready</c> with what is missing or does not suit.</summary>
    /// <param name="request">What is known.</param>
    public Answer<Plan> Plan(PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (PlanCheck.Of(request, knowledge) is { Count: > 0 } wrong)
        {
            return Answer<Plan>.Refused(wrong);
        }

        var layout = LeadTags.FormOf(knowledge.Layouts[request.Layout], request);
        var tags = LeadTags.ByMarking(layout, request.Leads);
        if (layout.NotConnected is { } reason)
        {
            return Refused([new Problem("not-ready", "layout", Statement.Of(reason))]);
        }

        if (PlanCheck.Missing(layout, tags, request, _judge) is { Count: > 0 } missing)
        {
            return Refused(missing);
        }

        var suited = _judge.Rows(layout, request);
        if (suited.Problems.Count > 0)
        {
            return Refused(suited.Problems);
        }

        var rows = suited.Value!;
        var chosen = RowChoice.Of(rows, request);
        var others = request.Connection is null ? RowChoice.Others(rows, chosen, request) : [];
        var builder = new PlanBuilder(layout, tags, request);
        var plan = builder.Build(chosen);
        if (PlanNotes.Unfit(plan, request, knowledge.Connections) is { } unfit)
        {
            return Refused([unfit]);
        }

        return plan with { Others = [.. others.Select(builder.Build)] };
    }

    private static Answer<Plan> Refused(IReadOnlyList<Problem> problems)
    {
        if (problems[0].Id != "not-ready")
        {
            return Answer<Plan>.Refused(problems);
        }

        string[] missing = [.. problems.SelectMany(problem => problem.Missing.Count > 0 ? problem.Missing : [problem.Field]).Distinct(StringComparer.Ordinal)];
        return Answer<Plan>.Refused([problems[0] with { Missing = missing }, .. problems.Skip(1)]);
    }
}
