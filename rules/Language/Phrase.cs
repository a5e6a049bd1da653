using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>A word or several words that stand for a concept.</summary>
internal sealed class Phrase
{
    private const int WidestGap = 4;
    private const int MostFillers = 2;

    private readonly (string[] Stems, bool Gap)[] _parts;

    public Phrase(string concept, Swallowing swallows, string written)
    {
        Concept = concept;
        Swallows = swallows;
        var words = written.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var parts = new List<(string[], bool)>(words.Length);
        var gap = false;
        foreach (var word in words)
        {
            if (word == "*")
            {
                gap = true;
                continue;
            }

            parts.Add((word.Split('|', StringSplitOptions.RemoveEmptyEntries).Select(Key).ToArray(), gap));
            gap = false;
        }

        _parts = [.. parts];
    }

    public string Concept { get; }

    public Swallowing Swallows { get; }

    /// <summary>How many words it has.</summary>
    public int Length => _parts.Length;

    /// <summary>The keys of its first word.</summary>
    public IReadOnlyList<string> Firsts => _parts[0].Stems;

    /// <summary>The key under which a written word is found: its stem, or <c>=</c> and the very word.</summary>
    public static string Key(string word) => word[0] == '=' ? word : Stem.Of(Letters(word));

    /// <summary>Without apostrophes, as tokens are.</summary>
    public static string Letters(string word) => word.Replace("'", string.Empty, StringComparison.Ordinal);

    /// <summary>The places of its words when it starts at <paramref name="first"/>; <see langword="null"/> when it does not stand there. No gap reaches over a "not": "it was never wet" does not say "was wet".</summary>
    public int[]? At(IReadOnlyList<Token> tokens, int first, HashSet<string> fillers, HashSet<string> denials)
    {
        if (_parts.Length == 1)
        {
            return [first];
        }

        var places = new int[_parts.Length];
        places[0] = first;
        return Rest(tokens, 1, places, fillers, denials) ? places : null;
    }

    public static bool Fits(string key, Token token) => key[0] == '=' ? token.Text.AsSpan().SequenceEqual(key.AsSpan(1)) : token.Stem == key;

    private bool Rest(IReadOnlyList<Token> tokens, int part, int[] places, HashSet<string> fillers, HashSet<string> denials)
    {
        if (part == _parts.Length)
        {
            return true;
        }

        var (stems, gap) = _parts[part];
        var reach = gap ? WidestGap : MostFillers;
        for (int at = places[part - 1] + 1, skipped = 0; at < tokens.Count && skipped <= reach; at++, skipped++)
        {
            var token = tokens[at];
            if (token.Sentence != tokens[places[0]].Sentence)
            {
                return false;
            }

            foreach (var stem in stems)
            {
                if (Fits(stem, token))
                {
                    places[part] = at;
                    if (Rest(tokens, part + 1, places, fillers, denials))
                    {
                        return true;
                    }
                }
            }

            if (!(gap ? (token.Kind != TokenKind.Mark || token.Is("-")) && !denials.Contains(token.Text) : token.Is("-") || fillers.Contains(token.Text)))
            {
                return false;
            }
        }

        return false;
    }
}

/// <summary>A concept found in a text.</summary>
/// <param name="Concept">The concept's id.</param>
/// <param name="Places">The tokens that say it, in order.</param>
/// <param name="Denied">A "not" before it reaches it.</param>
internal sealed record Hit(string Concept, int[] Places, bool Denied)
{
    public int First => Places[0];

    /// <summary>Where it starts with the "not" that reaches it.</summary>
    public int Start { get; init; } = Places[0];

    public int Last => Places[^1];
}
