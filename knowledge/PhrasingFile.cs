using WireCoach.Rules.Reference;

namespace WireCoach.Knowledge;

/// <summary>Reads the words of the guard; a synonym may never reach from one class of meaning into another.</summary>
internal static class PhrasingFile
{
    private const string Path = "phrasing/words.yaml";

    public static PhrasingWords Load(Sections sections)
    {
        var words = sections.File<PhrasingWords>(Path);
        var classes = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, members) in words.Classes)
        {
            foreach (var member in members)
            {
                if (!classes.TryAdd(member, name))
                {
                    throw new KnowledgeException($"{Path}: '{member}' stands twice, in {classes[member]} and in {name}.");
                }
            }
        }

        Check(words, classes);
        return words;
    }

    private static void Check(PhrasingWords words, Dictionary<string, string> classes)
    {
        foreach (var filler in words.Fillers.Where(classes.ContainsKey))
        {
            throw new KnowledgeException($"{Path}: the filler '{filler}' carries meaning as {classes[filler]}.");
        }

        Groups(words.Synonyms, words, classes);
        Groups(words.Phrases, words, classes);
        foreach (var group in words.Synonyms)
        {
            var meaning = Weighty(group[0], classes);
            foreach (var writing in group.Where(writing => Weighty(writing, classes) != meaning))
            {
                throw new KnowledgeException($"{Path}: '{writing}' carries another kind of meaning ({Weighty(writing, classes)}) than '{group[0]}' ({meaning}).");
            }
        }
    }

    private static void Groups(IReadOnlyList<IReadOnlyList<string>> groups, PhrasingWords words, Dictionary<string, string> classes)
    {
        var grouped = new HashSet<string>(StringComparer.Ordinal);
        foreach (var group in groups)
        {
            if (group.Count < 2 || group.Any(writing => !grouped.Add(writing) || words.Fillers.Contains(writing)))
            {
                throw new KnowledgeException($"{Path}: the group of '{(group.Count == 0 ? "" : group[0])}' needs two writings or more that stand nowhere else.");
            }

            foreach (var writing in group.Where(writing => Negations(writing, classes) != Negations(group[0], classes)))
            {
                throw new KnowledgeException($"{Path}: '{writing}' denies otherwise than '{group[0]}'.");
            }
        }
    }

    private static int Negations(string writing, Dictionary<string, string> classes) => classes.TryGetValue(writing, out var whole)
        ? whole == "negation" ? 1 : 0
        : writing.Split(' ').Count(word => classes.GetValueOrDefault(word) == "negation");

    /// <summary>The classes that a writing touches, other than words of plain grammar.</summary>
    private static string Weighty(string writing, Dictionary<string, string> classes) => classes.TryGetValue(writing, out var whole)
        ? whole
        : string.Join(' ', writing.Split(' ').Select(word => classes.GetValueOrDefault(word)).Where(name => name is not (null or "state" or "grammar")).Distinct().Order(StringComparer.Ordinal));
}
