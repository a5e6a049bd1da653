using System.Text.RegularExpressions;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests;

/// <summary>Ids in code exist in knowledge, and the reverse.</summary>
public sealed partial class SentencesTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    [Fact]
    public void Every_sentence_that_the_rules_say_is_written_in_knowledge() =>
        Assert.Empty(Said().Except(Knowledge.Sentences.Ids, StringComparer.Ordinal));

    [Fact]
    public void Every_gap_is_closed() =>
        Assert.All(Knowledge.Sentences.Ids, id => Assert.Equal(Knowledge.Sentences[id].Text.Count('{'), Knowledge.Sentences[id].Text.Count('}')));

    [Fact]
    public void A_question_that_the_rules_answer_has_no_other_answer_that_is_never_given() =>
        Assert.Empty(Faq.Questions.Select(question => $"asked.{question}").Intersect(Knowledge.Sentences.Ids, StringComparer.Ordinal));

    private static IEnumerable<string> Said() => Directory
        .EnumerateFiles(Path.Combine(Repository.Root, "rules"), "*.cs", SearchOption.AllDirectories)
        .SelectMany(file => StatementId().Matches(File.ReadAllText(file)).Select(match => match.Groups[1].Value));

    [GeneratedRegex("Statement\\.Of\\(\\s*\"([^\"]+)\"", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex StatementId();
}
