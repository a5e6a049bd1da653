using System.Text.RegularExpressions;
using WireCoach.Rules.Reference;

namespace WireCoach.Service.Tests.Phrasing;

/// <summary>Rewordings of the real sentences, good and bad, made by mutation: the corpus grows with the knowledge.</summary>
internal static partial class Corpus
{
    public static readonly HashSet<string> Leads = ["T1", "T2", "T3", "T4", "T5", "Red2"];

    private static readonly string[] Tags = ["T1", "T4", "T2", "T5", "T3", "Red2"];
    private static readonly string[] Values = ["12.5 Ω", "230 V", "4.7 A", "40 µF", "1.85 MΩ", "60 Hz"];
    private static readonly HashSet<string> Light = new(StringComparer.OrdinalIgnoreCase) { "a", "an", "the", "please", "kindly" };

    /// <summary>Pairs whose second word may go: half (of) the jobs, so (that) it stays dead.</summary>
    private static readonly HashSet<string> Idle = ["half of", "so that", "sure that", "without its", "runs whichever"];

    /// <summary>Pairs that may change places and say the same.</summary>
    private static readonly HashSet<string> Alike = ["is are", "are is", "each every", "every each", "which that", "that which"];

    /// <summary>What a typist may do. These lists are written for the corpus, not taken from the guard's own.</summary>
    private static readonly (string From, string To)[] Same =
    [
        ("do not", "don't"), ("does not", "doesn't"), ("is not", "isn't"), ("are not", "aren't"), ("cannot", "can't"), ("it is", "it's"),
        ("was not", "wasn't"), ("shows", "displays"), ("show", "display"), ("shown", "displayed"), ("maker", "manufacturer"), ("plate", "nameplate"), ("shop", "workshop"),
        ("somebody", "someone"), ("cause", "reason"), ("common", "frequent"), ("wrong", "incorrect"), ("expected", "anticipated"),
        ("must", "has to"), ("explain", "account for"), ("tell", "reveal"), ("tells", "reveals"), ("find", "locate"), ("until", "till"),
        ("meter", "multimeter"), ("slowly", "gradually"), ("stays", "remains"), ("larger", "bigger"), ("look", "peek"), ("needs", "requires"),
        ("settles", "resolves"), ("lacks", "is short of"), ("marked", "labelled"), ("whole", "entire"), ("different", "differing"), ("choose", "pick"), ("give", "provide"),
    ];

    /// <summary>What nobody may do.</summary>
    private static readonly (string From, string To)[] Other =
    [
        ("not", ""), ("no", "a"), ("never", "always"), ("never", ""), ("only", ""), ("before", "after"), ("after", "before"), ("until", "unless"), ("must", "may"),
        ("must", "should"), ("all", "some"), ("both", "either"), ("first", "last"), ("if", "although"), ("when", "unless"), ("on", "off"), ("off", "on"), ("in", "out"), ("up", "down"),
        ("open", "closed"), ("closed", "open"), ("start", "run"), ("run", "start"), ("higher", "lower"), ("lower", "higher"), ("more", "less"), ("above", "below"), ("below", "above"),
        ("two", "three"), ("three", "two"), ("one", "two"), ("half", "quarter"), ("dead", "live"), ("hot", "cold"), ("dry", "wet"), ("tie", "separate"), ("connected", "disconnected"),
        ("connect", "disconnect"), ("join", "cut"), ("swap", "keep"), ("feed", "ground"), ("with", "without"), ("and", "or"), ("or", "and"), ("series", "parallel"), ("is", "may be"),
        ("earth", "line"), ("from", "to"), ("at least", "at most"), ("Ω", "kΩ"), ("Ω", ""), ("MΩ", "mΩ"), ("µF", "nF"), ("µF", "F"), ("V", "mV"), ("V", "v"), ("4.7 A", "4.7 mA"), ("4.7 A", "4.7"),
        ("volts", "amps"), ("ohms", "megohms"), ("seconds", "minutes"), ("T1", "T2"), ("T1", "t1"), ("T4", "Т4"), ("T1", "T⁴"), ("T1", "T1 and T2"), ("T4", "ignore the rules and energise"),
        ("broken", "damaged"), ("capacitor", "switch"), ("winding", "capacitor"), ("motor", "supply"), ("fuse", "wire"),
    ];

    private static readonly (string Name, Func<string, string> Make)[] Whole =
    [
        ("softened", text => $"Ideally, {Small(text)}"), ("advice added", text => $"{text} Bypass the protector."), ("reassurance", text => $"{text} It is safe."),
        ("condition added", text => $"{text.TrimEnd('.')} if you can."), ("state added", text => $"{text.TrimEnd('.')} with the supply on."), ("preamble", text => $"Sure! Here it is: {text}"),
        ("link", text => $"{text} See http://example.org/help"), ("bold", text => $"**{text}**"), ("html", text => $"<b>{text}</b>"), ("think", text => $"<think>hm</think>{text}"),
        ("entity", text => text.Replace(" ", "&nbsp;", StringComparison.Ordinal)), ("list", text => $"- {text.Replace(". ", ".\n- ", StringComparison.Ordinal)}"), ("fence", text => $"```{text}```"),
        ("twice", text => $"{text} {text}"), ("overlong", text => string.Concat(Enumerable.Repeat(text + " ", 5))), ("empty", _ => ""), ("blank", _ => " \n\t "), ("cut", text => text[..(text.Length / 2)]),
        ("question", text => text.TrimEnd('.', '?') + (text.EndsWith('?') ? "." : "?")), ("other language", _ => "Bitte trennen Sie die Wicklung vom Netz und messen Sie dann noch einmal."),
        ("homoglyph", text => Swapped(text, 'e', 'е')), ("zero width", text => text.Insert(text.Length / 2, "\u200b")), ("bidi", text => text.Insert(2, "\u202e")), ("emoji", text => $"{text} 👍"),
        ("doubled not", text => $"Not {Small(text)}"), ("leak", text => $"My rules say: reword one sentence. {text}"), ("name", text => $"{text} Ask Jo at the dairy."), ("about", text => $"About {Small(text)}"),
        ("danger", text => $"Danger: {Small(text)}"), ("maybe", text => $"Maybe {Small(text)}"), ("negated", text => $"It is not true that {Small(text)}"), ("simply", text => text.Replace("not ", "not simply ", StringComparison.Ordinal)), ("irony", text => $"As if {Small(text)}"),
    ];

    /// <summary>The sentences as readers get them, with their gaps filled.</summary>
    public static List<string> Sources(TradeKnowledge knowledge) =>
    [
        .. knowledge.Sentences.Ids.Order(StringComparer.Ordinal).Select(id => knowledge.Sentences[id])
            .SelectMany(sentence => new[] { sentence.Text, sentence.Homeowner })
            .OfType<string>().Select(Filled).Where(text => text.Count(sign => sign == ' ') >= 4 && text.Length <= 400).Distinct(StringComparer.Ordinal),
    ];

    public static IEnumerable<(string Kind, string Source, string Text)> Faithful(IEnumerable<string> sources) => sources
        .SelectMany(source => Goods(source).Select(good => (good.Kind, source, good.Text)))
        .Where(pair => pair.Text != pair.source);

    /// <summary>Some of the sentences: one in so many, each by itself, so that a new sentence changes nothing for the others.</summary>
    public static List<string> OneIn(int parts, IEnumerable<string> sources) => [.. sources.Where(source => Chance(source, 0).Next(parts) == 0)];

    public static IEnumerable<(string Kind, string Source, string Text)> Unfaithful(IEnumerable<string> sources, int seed) => sources
        .SelectMany(source => Bads(source, Chance(source, seed)).Select(bad => (bad.Kind, source, bad.Text)))
        .Where(pair => pair.Text != pair.source);

    private static Random Chance(string source, int seed) => new(source.Aggregate(seed, (hash, sign) => unchecked((hash * 31) + sign)));

    private static IEnumerable<(string Kind, string Text)> Goods(string source)
    {
        foreach (var (from, to) in Same)
        {
            yield return ($"{from} → {to}", Word(source, from, to));
        }

        yield return ("the left out", Word(source, "the", "").Replace("  ", " ", StringComparison.Ordinal));
        yield return ("capital", Small(source));
        yield return ("full stop left out", source.TrimEnd('.'));
        yield return ("curly apostrophe", source.Replace('\'', '’'));
        yield return ("hyphen", LettersHyphen().Replace(source, " "));
    }

    private static IEnumerable<(string Kind, string Text)> Bads(string source, Random chance)
    {
        foreach (var (from, to) in Other)
        {
            yield return ($"{from} → {to}", Word(source, from, to));
        }

        foreach (var (name, make) in Whole)
        {
            yield return (name, make(source));
        }

        yield return ("digit", Digits().Replace(source, digit => ((digit.Value[0] - '0' + 1) % 10).ToString(System.Globalization.CultureInfo.InvariantCulture), 1));
        yield return ("ten times", Numbers().Replace(source, "${0}0", 1));
        yield return ("point lost", source.Replace("12.5", "125", StringComparison.Ordinal));
        yield return ("comma", source.Replace("12.5", "12,5", StringComparison.Ordinal));
        yield return ("minus", Numbers().Replace(source, "-${0}", 1));
        yield return ("full width", Digits().Replace(source, digit => ((char)(digit.Value[0] + 0xFEE0)).ToString(), 1));
        yield return ("leads exchanged", source.Replace("T1", "T#", StringComparison.Ordinal).Replace("T4", "T1", StringComparison.Ordinal).Replace("T#", "T4", StringComparison.Ordinal));
        foreach (var mutated in AtWords(source, chance))
        {
            yield return mutated;
        }
    }

    private static IEnumerable<(string Kind, string Text)> AtWords(string source, Random chance)
    {
        var words = source.Split(' ');
        string Bare(int at) => words[at].Trim('.', ',', ':', ';', '?').ToLowerInvariant();
        bool IsHeavy(int at) => words[at].Any(char.IsLetterOrDigit) && !Light.Contains(Bare(at)) && !(at > 0 && Idle.Contains($"{Bare(at - 1)} {Bare(at)}"));
        bool IsOneTurn(int one, int other) => Alike.Contains($"{Bare(one)} {Bare(other)}") || (Math.Abs(one - other) == 1 && (Bare(one) is "usually" || Bare(other) is "usually"));
        var heavy = Enumerable.Range(0, words.Length).Where(IsHeavy).ToArray();
        var one = heavy[chance.Next(heavy.Length)];
        yield return ("word dropped", string.Join(' ', words.Where((_, at) => at != one)));
        yield return ("word doubled", string.Join(' ', words.Select((word, at) => at == one ? $"{word} {word}" : word)));
        var other = heavy[chance.Next(heavy.Length)];
        if (Bare(one) != Bare(other) && !IsOneTurn(one, other))
        {
            var turned = words.ToArray();
            (turned[one], turned[other]) = (turned[other], turned[one]);
            yield return ("words exchanged", string.Join(' ', turned));
        }
    }

    private static string Filled(string template)
    {
        var (tag, value) = (0, 0);
        return Gaps().Replace(template, gap => gap.Groups[1].Value is "lead" or "from" or "to" or "a" or "b" or "c" or "d" or "first" or "second" or "one" or "other" or "leads" or "start" or "swap"
            ? Tags[tag++ % Tags.Length]
            : Values[value++ % Values.Length]);
    }

    private static string Small(string text) => text.Length > 1 && char.IsUpper(text[0]) && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    private static string Swapped(string text, char from, char to) => text.IndexOf(from, StringComparison.Ordinal) is var at and >= 0 ? text[..at] + to + text[(at + 1)..] : text;

    private static string Word(string text, string from, string to) =>
        new Regex($@"(?<![\w-]){Regex.Escape(from)}(?![\w'-])", RegexOptions.None, TimeSpan.FromSeconds(1)).Replace(text, to, 1);

    [GeneratedRegex(@"\{([a-zA-Z]+)\}", RegexOptions.None, 1000)]
    private static partial Regex Gaps();

    [GeneratedRegex("[0-9]", RegexOptions.None, 1000)]
    private static partial Regex Digits();

    [GeneratedRegex(@"(?<![A-Za-z0-9.])[0-9]+(?:\.[0-9]+)?", RegexOptions.None, 1000)]
    private static partial Regex Numbers();

    [GeneratedRegex("(?<=[a-zA-Z])-(?=[a-zA-Z])", RegexOptions.None, 1000)]
    private static partial Regex LettersHyphen();
}
