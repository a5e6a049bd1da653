using System.Globalization;
using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads which leads there are: "marked T1 T2 T3 T8", "red, blue, two yellow", "six wires".</summary>
internal sealed class LeadNames(Scene scene, LeadReader leads, UnitBook units)
{
    private const int MostLeads = 48;

    public void Read()
    {
        var asked = scene.Asked?.About == "lead";
        for (var at = 0; at < scene.Tokens.Count; at++)
        {
            if (!scene.Tokens[at].Used)
            {
                at = Count(at) is var (last, number) ? ByTheirNumber(last + 1, number) ?? last : List(at, asked || (scene.Asked?.Unit != "microfarad" && scene.InSentence("tagged", at))) ?? at;
            }
        }
    }

    /// <summary>"six leads 1 to 6": as many names behind the count as were counted are theirs, even bare numbers.</summary>
    private int? ByTheirNumber(int at, int number)
    {
        scene.SkipSigns(ref at, ",", ":", "(", "-", "called", "are");
        return Names(at) is var names && names.Count == number ? Add(names) : null;
    }

    /// <summary>"six wires", "9 leads": the last word and the number.</summary>
    private (int Last, int Number)? Count(int at)
    {
        var number = Number(at);
        var noun = at + 1;
        while (scene.At(noun, "look-of-lead") is { } look)
        {
            noun = look.Last + 1;
        }

        if (number is null or < 2)
        {
            return null; // "not one tag" counts nothing
        }

        if (scene.At(noun, "lead-noun") is not { } found)
        {
            return OwnAnswer(at, number.Value) ?? OfThem(at, number.Value);
        }

        scene.Add(at, found.Last, new Fact.Choice { Question = Fact.Choice.LeadCount, Option = number.Value.ToString(CultureInfo.InvariantCulture) });
        return (found.Last, number.Value);
    }

    /// <summary>"How many wires does it have? Six."</summary>
    private (int Last, int Number)? OwnAnswer(int at, int number)
    {
        if (scene.Hits.FindLast(hit => hit.Concept == "how-many-leads" && hit.Last < at) is not { } asked || !scene.IsWord(at - 1, "?", ":", "=") || scene.Tokens[at].Sentence - scene.Tokens[asked.First].Sentence > 1
            || scene[at + 1] is { Kind: not TokenKind.Mark })
        {
            return null;
        }

        scene.Use(asked);
        scene.Add(at, at, new Fact.Choice { Question = Fact.Choice.LeadCount, Option = number.ToString(CultureInfo.InvariantCulture) });
        return (at, number);
    }

    /// <summary>"The wires have no marks. There are eight of them."</summary>
    private (int Last, int Number)? OfThem(int at, int number)
    {
        if (!scene.IsWord(at + 1, "of") || !scene.IsWord(at + 2, "them", "em", "those", "these") || number < 2
            || scene.Hits.FindLast(hit => hit.Concept == "lead-noun" && hit.Last < at) is not { } noun || scene.Tokens[at].Sentence - scene.Tokens[noun.First].Sentence > 1
            || scene.At(at - 1, "all-leads") is not null)
        {
            return null;
        }

        scene.Add(at, at + 2, new Fact.Choice { Question = Fact.Choice.LeadCount, Option = number.ToString(CultureInfo.InvariantCulture) });
        return (at + 2, number);
    }

    private int? Number(int at) => scene[at] is { IsWhole: true, Value: >= 1 and <= MostLeads } token ? (int)token.Value
        : scene.Like(at, "number.") is { } word && int.TryParse(word.Concept["number.".Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? value : null;

    private int? List(int at, bool cued) => Names(at) is var names && (names.Count < (cued ? 1 : 3) || (!cued && names.TrueForAll(name => name.Tag.All(char.IsAsciiDigit))))
        ? names.Count < 3 ? null : names[^1].Last
        : IsColourOfAll(names) ? names[^1].Last
        : Add(names);

    /// <summary>"The wires are brown": the one colour of many names none of them.</summary>
    private bool IsColourOfAll(List<(string Tag, int First, int Last)> names) => names is [var (_, first, last)] && ColourOf(first, last) is not null
        && scene.IsWord(first - 1, "are", "all") && scene.Tokens[Introduced(first)].Text.EndsWith('s');

    /// <summary>The names that stand in a row.</summary>
    private List<(string Tag, int First, int Last)> Names(int at)
    {
        var names = new List<(string Tag, int First, int Last)>();
        var next = at;
        while (names.Count < MostLeads && Next(next, names))
        {
            next = names[^1].Last + 1;
            while (scene.IsWord(next, ",", "and", "&", "/", "+"))
            {
                next++;
            }
        }

        return names;
    }

    private int Add(List<(string Tag, int First, int Last)> names)
    {
        foreach (var (tag, first, last) in Numbered(names))
        {
            var colour = ColourOf(first, last);
            scene.Use(Introduced(first), last);
            scene.Note(first, last, new Fact.Lead { Tag = tag, Colour = colour, Marking = colour is null && tag.Any(char.IsAsciiDigit) && tag.Any(char.IsAsciiLetter) ? tag : null });
        }

        return names[^1].Last;
    }

    /// <summary>Where the noun before the names stands: "wires: black, brown".</summary>
    private int Introduced(int first)
    {
        var sign = first - 1;
        while (scene.IsWord(sign, ":", "-", "=", "are", "all", "the"))
        {
            sign--;
        }

        return sign < first - 1 && scene.Hits.Exists(hit => hit.Concept == "lead-noun" && hit.Last == sign) ? sign : first;
    }

    /// <summary>"Brown, brown, blue": leads of one colour are as many leads, told apart by a number.</summary>
    private IEnumerable<(string Tag, int First, int Last)> Numbered(List<(string Tag, int First, int Last)> names)
    {
        var met = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (tag, first, last) in names)
        {
            var isOneOfSeveral = ColourOf(first, last) is not null && names.Count(name => name.Tag == tag) > 1;
            yield return (isOneOfSeveral ? $"{tag} {met[tag] = met.GetValueOrDefault(tag) + 1}" : tag, first, last);
        }
    }

    /// <summary>The colour among the words of a name: "wires black" is a black one.</summary>
    private string? ColourOf(int first, int last) =>
        Enumerable.Range(first, last - first + 1).Select(at => scene.Like(at, "colour.")?.Concept["colour.".Length..]).FirstOrDefault(colour => colour is not null);

    private bool Next(int at, List<(string Tag, int First, int Last)> names)
    {
        if (names.Count > 0 && scene.IsWord(at, "a", "an", "one") && scene.Like(at + 1, "colour.") is not null)
        {
            at++; // "and a black"
        }

        if (Number(at) is { } several and > 1 and < 9 && scene.Like(at + 1, "colour.") is not null && scene[at + 1] is { Glued: false } && leads.At(at + 1) is { } coloured)
        {
            names.AddRange(Enumerable.Range(1, several).Select(which => ($"{coloured.Tag} {which}", at, coloured.Last)));
            return true;
        }

        if (leads.At(at, names.Count > 0 || scene.IsWord(at + 1, ",")) is not { } lead || lead.Tag is Fact.Reading.Frame or Fact.Reading.Earth || IsFigure(at))
        {
            return false;
        }

        var to = lead.Last + 1;
        if (scene.IsWord(to, "-", "to", "through", "thru") && leads.At(to + 1) is { } end && Range(lead.Tag, end.Tag) is { } range)
        {
            names.AddRange(range.Select(tag => (tag, at, end.Last)));
            return true;
        }

        names.Add((lead.Tag, at, lead.Last));
        return true;
    }

    /// <summary>The 2 of "2 hp" names no lead.</summary>
    private bool IsFigure(int at) => scene[at] is { Kind: TokenKind.Number } && units.At(scene, at + 1, true) is not null;

    /// <summary>T1 to T9, 1 to 6.</summary>
    private static List<string>? Range(string from, string to)
    {
        var prefix = from.TrimEnd("0123456789".ToCharArray());
        return to.StartsWith(prefix, StringComparison.Ordinal) && int.TryParse(from.AsSpan(prefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var first)
            && int.TryParse(to.AsSpan(prefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var last) && last > first && last - first < MostLeads
            ? [.. Enumerable.Range(first, last - first + 1).Select(number => prefix + number.ToString(CultureInfo.InvariantCulture))]
            : null;
    }
}
