using System.Text.RegularExpressions;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Knowledge;

/// <summary>Reads the words and checks that they fit each other.</summary>
internal static partial class VocabularyFolder
{
    private const string Anywhere = "*:";

    public static Vocabulary Load(Sections sections)
    {
        var classes = sections.Lists<WordClass>("words/classes", words => words.Id);
        var words = new Vocabulary
        {
            Concepts = sections.Lists<WordConcept>("words/concepts", concept => concept.Id).ToDictionary(one => one.Key, one => one.Value with { Words = [.. one.Value.Words.Select(phrase => Written(phrase, classes, one.Key))] }, StringComparer.Ordinal),
            Rules = sections.Lists<WordRule>("words/rules", rule => rule.Id),
            Units = sections.Lists<UnitWords>("words/units", unit => unit.Id),
            Supplies = sections.Lists<SupplyWords>("words/supplies", supply => supply.Id),
            Glossary = sections.Lists<GlossaryTerm>("glossary", term => term.Id),
            Told = sections.Lists<ToldWords>("words/told", told => told.Id),
            Order = sections.Lists<ToldOrder>("words/order", order => order.Id),
            Beside = sections.Lists<ToldBeside>("words/beside", beside => beside.Id),
        };
        Check(words);
        return words;
    }

    /// <summary>A phrase with the words of each class that it names in the place of <c>&lt;class&gt;</c>.</summary>
    private static string Written(string phrase, IReadOnlyDictionary<string, WordClass> classes, string concept) =>
        Class().Replace(phrase, named => classes.TryGetValue(named.Groups[1].Value, out var found)
            ? string.Join('|', found.Words)
            : throw new KnowledgeException($"words/concepts: '{concept}' names the class '{named.Groups[1].Value}', which does not stand in words/classes."));

    [GeneratedRegex("<([a-z-]+)>", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Class();

    private static void Check(Vocabulary words)
    {
        foreach (var rule in words.Rules.Values)
        {
            foreach (var concept in rule.Said.Concat(rule.Denied).SelectMany(Concepts).Where(concept => !words.Concepts.ContainsKey(concept)))
            {
                throw new KnowledgeException($"words/rules: '{rule.Id}' speaks of the concept '{concept}', which no file in words/concepts explains.");
            }

            if (!rule.Id.Contains('/', StringComparison.Ordinal))
            {
                throw new KnowledgeException($"words/rules: '{rule.Id}' must be written kind/id, for example symptom/runs-hot.");
            }
        }

        foreach (var name in words.Beside.Values.SelectMany(one => WordWeights.Of(one.Others).Select(other => other.Word).Prepend(one.Id)).Where(name => !words.Told.ContainsKey(name)))
        {
            throw new KnowledgeException($"words/beside: '{name}' stands for nothing in words/told.");
        }

        foreach (var unit in words.Units.Values.Where(unit => !Units.Ids.Contains(unit.Unit)))
        {
            throw new KnowledgeException($"words/units: '{unit.Id}' leads to '{unit.Unit}', which is not a unit of the contract.");
        }
    }

    private static IEnumerable<string> Concepts(string line) =>
        line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(atom => atom != Anywhere).Select(atom => atom.TrimStart('!', '-', '~'));
}

/// <summary>Single words that can stand in each other's place in a phrase: what a motor drives, what people cut with it.</summary>
internal sealed record WordClass
{
    public required string Id { get; init; }

    public required IReadOnlyList<string> Words { get; init; }
}
