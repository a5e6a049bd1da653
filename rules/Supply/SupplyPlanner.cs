using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>Planning figures for the supply of one motor, by the region's code.</summary>
public static class SupplyPlanner
{
    /// <summary>The figures, or what is wrong with the question.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="input">The motor and the supply.</param>
    public static Answer<SupplyPlan> Plan(TradeKnowledge knowledge, SupplyInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var problems = SupplyProblems.Of(knowledge, input).ToList();
        if (problems.Count > 0)
        {
            return Answer<SupplyPlan>.Refused(problems);
        }

        var answer = input.Region == Region.Iec ? InternationalSupply.Plan(knowledge, input) : AmericanSupply.Plan(knowledge, input);
        return answer.IsGiven
            ? StartFigures.Beside(knowledge, input, answer.Value)
            : Answer<SupplyPlan>.Refused([.. answer.Problems.Select(problem => SizeAdvice.Of(knowledge, input, problem))]);
    }
}
