namespace WireCoach.Rules.Language;

/// <summary>What of a stretch of a message counts for its likeness to what people told.</summary>
/// <param name="Words">Its words, what they stand for, each two that stand together, and that something is asked; each once.</param>
/// <param name="InOrder">Its words and marks as they follow each other, without greetings, thanks, and signs around them.</param>
internal sealed record CountedWords(IReadOnlyList<string> Words, IReadOnlyList<CountedWord> InOrder)
{
    public const string Asking = "?";
    private const string Term = "term.";
    private const string Greeting = "greeting";
    private const string Courtesy = "courtesy";
    private const string Figure = "#";
    private const string Tag = "#tag";
    private const string Aside = "aside";
    private const string Denied = "denied";
    private const char Beside = '+';
    private static readonly HashSet<string> Empty = ["filler", "ordinary", "pronoun", "small-talk"];

    /// <summary>What counts of a stretch of words.</summary>
    public static CountedWords Of(Scene scene, IReadOnlyCollection<int> places)
    {
        var open = places.Except(scene.Places(Greeting)).ToList();
        return new(
            [.. open.SelectMany(at => Counting(scene, at)).Concat(Pairs(scene, open)).Distinct(StringComparer.Ordinal)],
            [.. WithoutThanks(scene, open).Select(at => new CountedWord(Name(scene.Tokens[at]), [.. Meant(scene, at), .. scene.Tokens[at].Aside ? [Aside] : Array.Empty<string>(), .. scene.Tokens[at].Denied ? [Denied] : Array.Empty<string>()]))]);
    }

    /// <summary>What is left without sentences that only thank, and without the signs around the whole: they tell nothing.</summary>
    private static List<int> WithoutThanks(Scene scene, List<int> open)
    {
        var polite = scene.Places(Courtesy);
        var thanks = open.GroupBy(at => scene.Tokens[at].Sentence).Where(sentence => sentence.All(at => polite.Contains(at) || scene.Tokens[at].Kind == TokenKind.Mark)).SelectMany(sentence => sentence).ToHashSet();
        var told = open.FindAll(at => !thanks.Contains(at));
        var (first, last) = (told.FindIndex(at => !IsSign(scene, at)), told.FindLastIndex(at => !IsSign(scene, at)));
        return first < 0 ? [] : told.GetRange(first, last - first + 1);
    }

    private static bool IsSign(Scene scene, int at) => scene.Tokens[at].Kind == TokenKind.Mark && !scene.IsWord(at, Asking);

    /// <summary>Whether it is the name of two words that stand together.</summary>
    public static bool IsPair(string counted) => counted.Contains(Beside, StringComparison.Ordinal);

    private static IEnumerable<string> Counting(Scene scene, int at) => (scene.Tokens[at].Aside ? [] : Meant(scene, at))
        .Concat(scene.Tokens[at].Kind == TokenKind.Word ? [scene.Tokens[at].Stem] : IsAsking(scene, at) ? [Asking] : []);

    private static IEnumerable<string> Meant(Scene scene, int at) =>
        scene.StartingAt(at).Where(hit => !Empty.Contains(hit.Concept) && !hit.Concept.StartsWith(Term, StringComparison.Ordinal)).Select(hit => (hit.Denied ? "-@" : "@") + hit.Concept).Distinct(StringComparer.Ordinal);

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

    private static string Name(Token token) => token.Kind switch
    {
        TokenKind.Word => token.Stem,
        TokenKind.Number => Figure,
        TokenKind.Tag => Tag,
        _ => token.Text,
    };
}

/// <summary>One word of a message: its stem or sign, and what it stands for.</summary>
internal sealed record CountedWord(string Name, IReadOnlyList<string> Meanings);
