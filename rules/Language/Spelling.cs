namespace WireCoach.Rules.Language;

/// <summary>Finds the known word that a mistyped one stands for: one slip from five letters on, two from eight on, the first letter right.</summary>
/// <remarks>Lead tags, numbers and units never come here. An index of shortened words makes a look-up independent of the size of the vocabulary.</remarks>
internal sealed class Spelling
{
    private const int OneSlip = 5;
    private const int TwoSlips = 8;
    private readonly HashSet<string> _known;
    private readonly Dictionary<string, List<string>> _shortened = new(StringComparer.Ordinal);

    /// <param name="words">Words in all their listed writings.</param>
    /// <param name="ordinary">Ordinary words that are right as they are.</param>
    public Spelling(IEnumerable<string> words, IEnumerable<string> ordinary)
    {
        var listed = words.Where(word => word.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        _known = [.. listed.Select(Stem.Of), .. ordinary.Select(Stem.Of)];
        foreach (var word in listed.Where(word => word.Length >= OneSlip))
        {
            foreach (var shortened in Shortened(word, word.Length >= TwoSlips ? 2 : 1))
            {
                (_shortened.TryGetValue(shortened, out var whole) ? whole : _shortened[shortened] = []).Add(word);
            }
        }
    }

    /// <summary>The stem of the word, or of the known word that it most likely stands for.</summary>
    public string StemOf(string word)
    {
        var stem = Stem.Of(word);
        if (word.Length < OneSlip || word.Length > 24 || _known.Contains(stem))
        {
            return stem;
        }

        if (word.EndsWith("in", StringComparison.Ordinal) && Stem.Of(word + "g") is var spoken && _known.Contains(spoken))
        {
            return spoken; // "runnin", "sparkin"
        }

        var slips = word.Length >= TwoSlips ? 2 : 1;
        var (best, least) = (stem, slips + 1);
        foreach (var shortened in Shortened(word, slips))
        {
            if (!_shortened.TryGetValue(shortened, out var whole))
            {
                continue;
            }

            foreach (var candidate in whole)
            {
                var distance = candidate[0] == word[0] ? Distance(word, candidate) : int.MaxValue;
                if (distance < least && (distance < 2 || candidate.Length >= TwoSlips))
                {
                    (best, least) = (Stem.Of(candidate), distance);
                }
            }
        }

        return best;
    }

    private static IEnumerable<string> Shortened(string word, int slips)
    {
        yield return word;
        for (var at = 0; at < word.Length; at++)
        {
            var once = word.Remove(at, 1);
            yield return once;
            for (var again = at; slips > 1 && again < once.Length; again++)
            {
                yield return once.Remove(again, 1);
            }
        }
    }

    /// <summary>Letters added, left out, changed, or exchanged with their neighbour.</summary>
    private static int Distance(string left, string right)
    {
        var width = right.Length + 1;
        Span<int> rows = stackalloc int[3 * 32];
        var before = rows[..32];
        var last = rows[32..64];
        var now = rows[64..];
        if (width > 32)
        {
            return int.MaxValue;
        }

        for (var column = 0; column < width; column++)
        {
            last[column] = column;
        }

        for (var row = 1; row <= left.Length; row++)
        {
            now[0] = row;
            for (var column = 1; column < width; column++)
            {
                var change = left[row - 1] == right[column - 1] ? 0 : 1;
                var least = Math.Min(Math.Min(last[column] + 1, now[column - 1] + 1), last[column - 1] + change);
                now[column] = row > 1 && column > 1 && left[row - 1] == right[column - 2] && left[row - 2] == right[column - 1]
                    ? Math.Min(least, before[column - 2] + 1)
                    : least;
            }

            var spare = before;
            before = last;
            last = now;
            now = spare;
        }

        return last[width - 1];
    }
}
