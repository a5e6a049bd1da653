using WireCoach.Knowledge;
using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Insulation;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Supply;
using WireCoach.WebUi.Desk;

namespace WireCoach.WebUi.Tests.Calculators;

/// <summary>Whatever a calculator can answer has a word on its page.</summary>
public sealed class AnswerWordsTest
{
    private static readonly IReadOnlyCollection<string> Ids = [.. KnowledgeFolder.Load(KnowledgeFolder.Beside).Sentences.Ids];

    [Theory]
    [InlineData(typeof(PlateReport))]
    [InlineData(typeof(SupplyPlan))]
    [InlineData(typeof(CapacitorReport))]
    [InlineData(typeof(InsulationReport))]
    [InlineData(typeof(EarthReport))]
    [InlineData(typeof(HeatReport))]
    [InlineData(typeof(UnbalanceReport))]
    public void Every_member_of_an_answer_has_a_word(Type answer)
    {
        var names = Names(answer).Distinct(StringComparer.Ordinal).ToList();
        Assert.NotEmpty(names);
        Assert.DoesNotContain(names, name => !Ids.Contains($"term.figure.{name}", StringComparer.Ordinal));
    }

    private static IEnumerable<string> Names(Type answer) => AnswerLine.Members(answer)
        .SelectMany(member => Inner(member.PropertyType) is { } inner ? Names(inner).Append(AnswerLine.Kebab(member.Name)) : [AnswerLine.Kebab(member.Name)]);

    /// <summary>The record that a member holds, alone or in a list.</summary>
    private static Type? Inner(Type type)
    {
        var held = type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) ? type.GetGenericArguments()[0] : type;
        return held.IsClass && held.Namespace?.StartsWith("WireCoach.Rules", StringComparison.Ordinal) is true && held != typeof(Quoted) && held != typeof(QuotedRange) && held != typeof(Statement) && held != typeof(Expectation)
            ? held : null;
    }
}
