using System.Text.RegularExpressions;

namespace WireCoach.Service.Tests.Phrasing;

/// <summary>What a fluent writer does to a sentence, for good and for ill: clauses moved, sentences joined and parted, words of the same weight.</summary>
internal static class NaturalCorpus
{
    private const string Binding = "if|when|unless|until|before|after|because|while";
    private const string Clause = "[^,.;:?()]+";

    /// <summary>A clause that a pattern can tell from its neighbour: nothing strung together, nothing that hangs on a noun.</summary>
    private const string One = "(?:(?!\\b(?:and|or|which|that|only)\\b)[^,.;:?()])+";

    private static readonly (string Kind, string From, string To)[] Good =
    [
        ("semicolon parted", $"^((?:(?!\\b(?:[Ii]f|[Ww]hen|[Uu]nless|[Ww]hile|so)\\b)[^.;:])+); ([a-z])", "$1. ^$2"),
        ("sentences joined", $"^((?:(?!\\b(?:[Ii]f|[Ww]hen|[Uu]nless|[Ww]hile|so)\\b)[^.;:?])+)\\. ([A-Z])(?=[a-z]* )", "$1; _$2"),
        ("joined by but", @"\. But ", ", but "),
        ("condition to the front", $"^({One}) ({Binding}) ({One})\\.$", "^$2 $3, _$1."),
        ("comma before the condition", $"^({One}) ({Binding}) ({One})\\.$", "$1, $2 $3."),
        ("condition to the end", $"^(If|When|Before|After|Until|While|Unless) ({Clause}), ({Clause})\\.", "^$3 _$1 $2."),
        ("then", $"^(If|When) ({Clause}), ({Clause})\\.", "$1 $2, then $3."),
        ("place to the end", $"^(On|In|With|At) ({Clause}), ({Clause})\\.", "^$3 _$1 $2."),
        ("often", @"\boften\b", "frequently"), ("usually", @"\busually\b", "generally"), ("rarely", @"\brarely\b", "seldom"), ("enough", @"\benough\b", "sufficient"),
        ("almost", @"\balmost\b", "nearly"), ("happens", @"\bhappens\b", "occurs"), ("worth", @"\bworth it\b", "worthwhile"), ("part", @"\bpart\b", "component"),
        ("parts", @"\bparts\b", "components"), ("weak", @"\bweak\b", "feeble"), ("for example", "[Ff]or example", "for instance"), ("maker", @"\bmaker's\b", "manufacturer's"),
        ("it will", @"\bit will\b", "it'll"), ("you have", @"\byou have\b", "you've"), ("what is", @"\b[Ww]hat is\b", "what's"), ("that is", @"\b[Tt]hat is\b", "that's"),
        ("begins", @"\bbegins\b", "commences"), ("helps", @"\bhelps\b", "assists"), ("sort", @"\bkind\b", "sort"), ("easily", @"\beasy\b", "simple"), ("quickly", @"\bquickly\b", "rapidly"),
    ];

    /// <summary>Good rewordings by hand, also such as the guard is known not to follow: they count against it.</summary>
    private static readonly (string Source, string Text)[] ByHand =
    [
        ("If neither runs, the start branch is not working.", "The start branch isn't working if neither runs."),
        ("No power until it is found.", "Until it is found, no power."),
        ("This motor is made for direct current.", "Direct current is what this motor is made for."),
        ("A three-phase motor does not start on one phase; it hums and overheats.", "A three-phase motor doesn't start on one phase. It hums and overheats."),
        ("Turn one half over and try once more; the way that runs quietly is right.", "Turn one half over and try once more. The way that runs silently is right."),
        ("Two tied windings read high when they help each other and low when they oppose.", "Two tied windings read high when they assist each other and low when they oppose."),
        ("The earth-fault device trips because current leaves by the frame.", "Because current leaves by the frame, the earth-fault device trips."),
        ("A motor shop mends it.", "It is mended by a motor shop."),
        ("On some rotary compressors the start winding reads lower than the run winding; compare with the maker's figures.", "On some rotary compressors the start winding reads lower than the run winding. Compare with the manufacturer's figures."),
        ("That is a winding shop's work. With the power on the plate I can say whether it is worth it.", "That's a winding shop's work. With the power on the nameplate I can say whether it's worthwhile."),
        ("The insulation is damp or dirty.", "There is damp or dirt in the insulation."),
        ("It is a common cause with such motors.", "With such motors it's a common reason."),
    ];

    private static readonly (string Kind, string From, string To)[] Bad =
    [
        ("condition and statement exchanged", $"^({Clause}) ({Binding}) ({Clause})\\.", "^$3 $2 _$1."),
        ("condition in front flipped", $"^({Clause}) ({Binding}) ({Clause})\\.", "^$2 _$1, $3."),
        ("condition kept, the wrong way about", $"^(If|When|Before|After|Until|While|Unless) ({Clause}), ({Clause})\\.", "^$2 _$1 $3."),
        ("if to unless, moved", $"^({Clause}) (?:if|when) ({Clause})\\.", "Unless $2, _$1."),
        ("until to when, moved", $"^({Clause}) until ({Clause})\\.", "When $2, _$1."),
        ("before to after, moved", $"^({Clause}) before ({Clause})\\.", "After $2, _$1."),
        ("after to before, moved", $"^({Clause}) after ({Clause})\\.", "Before $2, _$1."),
        ("only before the condition", $"^({Clause}) ({Binding}) ({Clause})\\.", "$1 only $2 $3."),
        ("not before the condition", $"^({Clause}) ({Binding}) ({Clause})\\.", "$1 not $2 $3."),
        ("condition stretched", $"\\b(If|if|when|When) ([^.;:?]+)\\. ([A-Z])", "$1 $2 and _$3"),
        ("condition stretched by a semicolon", $"\\b(If|if|when|When) ([^.;:?]+)\\. ([A-Z])", "$1 $2; _$3"),
        ("condition handed on", $"^(If|When) ({Clause}), ({Clause})\\. ([A-Z][^.]+)\\.", "^$3. $1 $2, _$4."),
        ("condition lost", $"^({Clause}) ({Binding}) ({Clause})\\.", "$1."),
        ("sentences exchanged", @"^([A-Z][^.?]+)\. ([A-Z][^.?]+)\.", "$2. $1."),
        ("halves exchanged", "^([^.;:?]+); ([^.;:?]+)\\.", "^$2; _$1."),
        ("not handed on", @"^([^.;]*?) (?:does|do) not ([a-z]+)([^.;]*)([.;]) (.*?)\b(is|are|has)\b", "$1 $2$3$4 $5$6 not"),
        ("not into the other sentence", @"^([^.;]*?)\bnot ([^.;]*)([.;]) ([^.;]*?) (is|are|has|can|must) ", "$1$2$3 $4 $5 not "),
        ("pair turned", @"T1 (to|and) T4", "T4 $1 T1"), ("pairs crossed", "T1 to T4(.*)T2 to T5", "T1 to T5$1T2 to T4"),
        ("compared the other way", @"\b([a-z]+) (lower|higher|more|less) than ([a-z]+)\b", "$3 $2 than $1"),
        ("joined by advice", @"\.$", "; bypass the switch."), ("joined by and advice", @"\.$", ", and you can touch it."), ("joined reassurance", @"\.$", ", but it is harmless."),
        ("in words", "12\\.5", "twelve and a half"), ("in words, whole", @"\b230 V", "two hundred and thirty volts"), ("prefix and number", "12\\.5 Ω", "12500 mΩ"), ("prefix alone", "40 µF", "40 mF"),
        ("leads by homoglyph", "T1", "\u03a41"), ("zero width in a lead", "T1", "T\u200b1"), ("bidi around a lead", "T1", "\u202e1T\u202c"), ("soft hyphen", "(?<=[a-z])(?=[a-z])", "\u00ad"),
        ("must to may", @"\bmust\b", "may"), ("must to need not", @"\bmust\b", "need not"), ("must to can", @"\bhas to\b", "can"), ("never softened", "[Nn]ever", "preferably not"), ("not softened", @"\bnot\b", "seldom"),
        ("only moved", @"\b([Oo]nly) (\w+) (\w+)", "$2 $3 only"), ("who does it", "licensed electrician", "handy person"), ("who decides", "qualified person", "person"), ("shop left out", "motor shop", "neighbour"),
        ("and to or, parted", @", and ", ". Or "), ("but to and", @", but ", ", and "), ("because to although", "because", "although"), ("subject exchanged", @"\bstart winding\b", "run winding"), ("subject exchanged back", @"\brun winding\b", "start winding"),
        ("capacitors exchanged", @"\bstart capacitor\b", "run capacitor"), ("lines for leads", @"\bline\b", "lead"), ("frame for earth", @"\bframe\b", "earth"),
    ];

    public static IEnumerable<(string Kind, string Source, string Text)> Faithful(IReadOnlyList<string> sources) =>
        Made(Good, sources).Concat(ByHand.Select(pair => ("by hand", pair.Source, pair.Text)));

    public static IEnumerable<(string Kind, string Source, string Text)> Unfaithful(IReadOnlyList<string> sources) => Made(Bad, sources);

    private static IEnumerable<(string Kind, string Source, string Text)> Made((string Kind, string From, string To)[] patterns, IReadOnlyList<string> sources) =>
        from pattern in patterns
        let find = new Regex(pattern.From, RegexOptions.None, TimeSpan.FromSeconds(1))
        from source in sources
        where find.IsMatch(source)
        let text = Cased(find.Replace(source, pattern.To, 1))
        where text != source
        select (pattern.Kind, source, text);

    /// <summary>Carries out the signs of a pattern: ^ begins the next word large, _ small, unless it is a name.</summary>
    private static string Cased(string text)
    {
        var large = Regex.Replace(text, @"\^(\w)", found => found.Groups[1].Value.ToUpperInvariant(), RegexOptions.None, TimeSpan.FromSeconds(1));
        return Regex.Replace(large, "_([A-Z])(?=[a-z ])", found => found.Groups[1].Value.ToLowerInvariant(), RegexOptions.None, TimeSpan.FromSeconds(1)).Replace("_", "", StringComparison.Ordinal);
    }
}
