using WireCoach.Knowledge;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

public sealed class WordsTest
{
    /// <summary>Concepts whose words are taken as they are written and not by their stems.</summary>
    private static readonly HashSet<string> AsWritten = ["filler", "pronoun", "sense", "small-talk", "ordinary"];

    [Fact]
    public void No_phrase_stands_twice_in_a_concept()
    {
        var twice = KnowledgeFolder.Load(KnowledgeFolder.Beside).Words.Concepts.Values.Where(concept => !AsWritten.Contains(concept.Id))
            .SelectMany(concept => concept.Words.GroupBy(Keys, StringComparer.Ordinal).Where(same => same.Count() > 1).Select(same => $"{concept.Id}: {string.Join(" = ", same)}"));
        Assert.Empty(twice);
    }

    /// <summary>What a phrase is found by: its words without their endings, in any order where they stand for each other.</summary>
    private static string Keys(string phrase) => string.Join(' ', phrase.Split(' ', StringSplitOptions.RemoveEmptyEntries)
        .Select(word => string.Join('|', word.Split('|', StringSplitOptions.RemoveEmptyEntries).Select(Phrase.Key).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))));
}
