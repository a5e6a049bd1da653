namespace WireCoach.Rules.Language;

/// <summary>What of a message counts for its likeness to what people told: its words, what they stand for, each two that stand together, and that something is asked.</summary>
internal static class CountedWords
{
    public const string Asking = "?";
    private const string Term = "term.";
    private const string Greeting = "greeting";
    private const string Figure = "#";
    private const char Beside = '+';
    private static readonly HashSet<string> Empty = ["filler", "ordinary", "pronoun", "small-talk"];

    /// <summary>What counts of a stretch of words.</summary>
    public static IEnumerable<string> Of(Scene scene, IReadOnlyCollection<int> places)
    {
        var open = places.Except(scene.Hits.Where(hit => hit.Concept == Greeting).SelectMany(hit => hit.Places)).ToList();
        return open.SelectMany(at => Meant(scene, at)).Concat(Pairs(scene, open)).Distinct(StringComparer.Ordinal);
    }

    /// <summary>Whether it is the name of two words that stand together.</summary>
    public static bool IsPair(string counted) => counted.Contains(Beside, StringComparison.Ordinal);

    private static IEnumerable<string> Meant(Scene scene, int at) =>
        scene.StartingAt(at).Where(hit => !scene.Tokens[at].Aside && !Empty.Contains(hit.Concept) && !hit.Concept.StartsWith(Term, StringComparison.Ordinal)).Select(hit => (hit.Denied ? "-@" : "@") + hit.Concept)
            .Concat(scene.Tokens[at].Kind == TokenKind.Word ? [scene.Tokens[at].Stem] : IsAsking(scene, at) ? [Asking] : []);

    /// <summary>The sign that a whole sentence is asked: of "it hums, do I need 240?" one clause is told.</summary>
    private static bool IsAsking(Scene scene, int at) => scene.IsWord(at, Asking)
        && (at == 0 || scene.Tokens.Where(token => token.Sentence == scene.Tokens[at - 1].Sentence).DistinctBy(token => token.Clause).Count() == 1);

    /// <summary>Each two words of a sentence with at most signs between them: "not hum" tells another thing than the two apart. A figure stands for any.</summary>
    private static IEnumerable<string> Pairs(Scene scene, List<int> open)
    {
        var words = Enumerable.Range(0, scene.Tokens.Count).Where(at => scene.Tokens[at].Kind is TokenKind.Word or TokenKind.Number).ToList();
        var counted = open.ToHashSet();
        return words.Zip(words.Skip(1))
            .Where(two => counted.Contains(two.First) && counted.Contains(two.Second) && scene.Tokens[two.First].Sentence == scene.Tokens[two.Second].Sentence)
            .Select(two => Name(scene.Tokens[two.First]) + Beside + Name(scene.Tokens[two.Second]));
    }

    private static string Name(Token token) => token.Kind == TokenKind.Word ? token.Stem : Figure;
}
