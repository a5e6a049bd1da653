namespace WireCoach.Service.Phrasing;

/// <summary>
/// Brings a text into its usual shape: a condition or a place behind what it governs, sentences apart that a
/// semicolon or an "and" had joined. Only where that cannot bind a word to another one; all else stays as it was said.
/// </summary>
internal sealed class Clauses(Binding binding)
{
    private const int ShortestPart = 3;

    private static readonly Atom Stop = new(Atom.Mark, ".");

    private readonly Moves _moves = new(binding);
    private readonly Signs _signs = new(binding);

    /// <summary>Whether two texts say the same, sentence by sentence.</summary>
    public bool Same(List<Atom> first, List<Atom> second)
    {
        var (one, other) = (Usual(first), Usual(second));
        return one.Count == other.Count
            && one.Zip(other).All(pair => pair.First.End == pair.Second.End && (pair.First.Words.SequenceEqual(pair.Second.Words) || _moves.Join(pair.First.Words, pair.Second.Words)));
    }

    private List<(List<Atom> Words, Atom End)> Usual(List<Atom> atoms) =>
        [.. Sentences(_signs.Plain(atoms)).Select(sentence => (_signs.Commas(Shaped(_signs.Bare(sentence.Words))), sentence.End))];

    private static IEnumerable<(List<Atom> Words, Atom End)> Sentences(List<Atom> atoms)
    {
        var sentence = new List<Atom>();
        for (var at = 0; at < atoms.Count; at++)
        {
            if (atoms[at] is { Class: Atom.Mark, Text: "." or "?" or "!" or ";" } mark)
            {
                yield return (sentence, mark.Text == ";" && !ReachesOver(sentence) ? Stop : mark);
                sentence = [];
            }
            else if (atoms[at].Text == "but" && sentence.Count > 0 && sentence.TrueForAll(atom => atom.Class != Atom.Condition))
            {
                yield return (sentence[^1].Text == "," ? sentence[..^1] : sentence, Stop);
                sentence = [atoms[at]];
            }
            else if (atoms[at].Text == "," && at + 1 < atoms.Count && Joins(sentence, atoms, at + 1))
            {
                yield return (sentence, Stop);
                sentence = [];
                at++;
            }
            else
            {
                sentence.Add(atoms[at]);
            }
        }

        if (sentence.Count > 0)
        {
            yield return (sentence, Stop);
        }
    }

    /// <summary>Whether a comma with the "and" after it only strings two plain statements together.</summary>
    internal static bool Joins(List<Atom> before, List<Atom> atoms, int at)
    {
        if (atoms[at].Text != "and")
        {
            return false;
        }

        var end = atoms.FindIndex(at, atom => atom.Class == Atom.Mark && atom.Text is not ",");
        var after = atoms.GetRange(at + 1, (end < 0 ? atoms.Count : end) - at - 1);
        return IsPlain(before) && IsPlain(after)
            && before.TrueForAll(atom => atom.Class != Atom.Mark) && after.TrueForAll(atom => atom.Class != Atom.Mark);
    }

    private static bool IsPlain(List<Atom> part) =>
        part.Count >= ShortestPart && !part.Exists(atom => atom.Reaches) && part.TrueForAll(atom => atom.Class is not (Atom.Verb or Atom.Order or Atom.Quantifier or Atom.Lead));

    private static bool ReachesOver(List<Atom> part) =>
        part.Exists(atom => atom.Class == Atom.Condition && atom.Text != "as") || (part.Exists(atom => atom.Reaches) && part.Exists(atom => atom.Text == ":"));

    private List<Atom> Shaped(List<Atom> sentence)
    {
        if (sentence.Count(atom => atom.Class == Atom.Mark) != 1 || sentence.FindIndex(atom => atom.Text == ",") is not (>= ShortestPart and var comma))
        {
            return sentence;
        }

        var (first, second) = (sentence[..comma], sentence[(comma + 1)..]);
        if (second.Count > 0 && second[0].Text == "then" && first[0].Text is "if" or "when" or "whenever")
        {
            second = second[1..];
        }

        return _moves.CanFollow(first, second) && binding.IsCondition(second[0]) ? [.. first, .. second] // only the comma goes
            : [.. first, sentence[comma], .. second];
    }
}
