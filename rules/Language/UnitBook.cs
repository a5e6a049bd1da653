using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>Finds a unit behind or before a number. Units are never guessed from a misspelling.</summary>
internal sealed class UnitBook
{
    private readonly Dictionary<string, List<(string[] Words, bool Glued, UnitWords Unit)>> _writings = new(StringComparer.Ordinal);

    public UnitBook(IEnumerable<UnitWords> units)
    {
        foreach (var unit in units)
        {
            foreach (var written in unit.Written)
            {
                Add(written, false, unit);
            }

            foreach (var written in unit.Glued)
            {
                Add(written, true, unit);
            }
        }

        foreach (var writings in _writings.Values)
        {
            writings.Sort((one, other) => other.Words.Length.CompareTo(one.Words.Length));
        }
    }

    /// <summary>The unit that starts at a token, and the last token of it.</summary>
    public (UnitWords Unit, int Last)? At(Scene scene, int at, bool behindNumber)
    {
        if (scene[at] is not { } first || !_writings.TryGetValue(first.Text, out var writings))
        {
            return null;
        }

        foreach (var (words, glued, unit) in writings)
        {
            if ((!glued || (behindNumber && first.Glued)) && Fits(scene, at, words) && !IsSmallWord(scene, at, words) && !IsLead(scene, at, words))
            {
                return (unit, at + words.Length - 1);
            }
        }

        return null;
    }

    /// <summary>"a" and other single letters are units when they hang on the number or are written as signs: "5A", "5 A", never "5 a"; "500 v" and "30 c" are, where no second lead follows.</summary>
    private static bool IsSmallWord(Scene scene, int at, string[] words) =>
        words is [{ Length: 1 } letter] && char.IsAsciiLetter(letter[0]) && !(scene.Tokens[at].Glued && scene[at - 1]?.Kind == TokenKind.Number) && !char.IsAsciiLetterUpper(scene.Text[scene.Tokens[at].Start])
        && !(letter is "v" or "c" && scene[at - 1]?.Kind == TokenKind.Number && !scene.IsWord(at + 1, "to", "-", "and", "/", "&", "+"));

    /// <summary>"C-S 8.1 C-R 3.2": a letter that is tied to another one is a lead.</summary>
    private static bool IsLead(Scene scene, int at, string[] words) =>
        words is [{ Length: 1 }] && scene.IsWord(at + 1, "-") && scene[at + 2] is { Glued: true, Kind: TokenKind.Word, Text.Length: 1 };

    private static bool Fits(Scene scene, int at, string[] words)
    {
        for (var word = 0; word < words.Length; word++)
        {
            if (scene[at + word] is not { } token || token.Text != words[word])
            {
                return false;
            }
        }

        return true;
    }

    private void Add(string written, bool glued, UnitWords unit)
    {
        var words = Tokenizer.Cut(written.ToLowerInvariant()).Select(token => token.Text).ToArray();
        (_writings.TryGetValue(words[0], out var listed) ? listed : _writings[words[0]] = []).Add((words, glued, unit));
    }
}
