namespace WireCoach.Service.Phrasing;

/// <summary>
/// Brings a text into its usual shape: a condition or a place behind what it governs, sentences apart that a
/// semicolon or an "and" had joined. Only where that cannot bind a word to another one; all else stays as it was said.
/// </summary>
internal static class Clauses
{
    private const int LongestPlace = 6;
    private const int ShortestPart = 3;

    private static readonly Atom Stop = new(Atom.Mark, ".");

    private static readonly HashSet<string> Conditions =
        ["if", "when", "whenever", "unless", "until", "before", "after", "because", "while", "although", "though"];

    private static readonly HashSet<string> Places = ["in", "on", "with", "for", "at"];
    private static readonly HashSet<string> Joiners = ["and", "or", "but"];

    /// <summary>Words that take their meaning from a neighbour; a clause with one of them stays where it is.</summary>
    private static readonly HashSet<string> Pointing =
        ["it", "its", "they", "them", "their", "this", "that", "these", "those", "he", "she", "one", "such", "there", "which", "who", "what"];

    public static List<Atom> Usual(List<Atom> atoms)
    {
        var shaped = new List<Atom>(atoms.Count + 1);
        foreach (var (sentence, end) in Sentences(atoms))
        {
            shaped.AddRange(Shaped(sentence));
            shaped.Add(end);
        }

        return shaped;
    }

    private static IEnumerable<(List<Atom> Sentence, Atom End)> Sentences(List<Atom> atoms)
    {
        var sentence = new List<Atom>();
        for (var at = 0; at < atoms.Count; at++)
        {
            if (atoms[at] is { Class: Atom.Mark, Text: "." or "?" or "!" or ";" } mark)
            {
                yield return (sentence, mark.Text == ";" && !ReachesOver(sentence) ? Stop : mark);
                sentence = [];
            }
            else if (atoms[at].Text == "," && at + 1 < atoms.Count && Joins(sentence, atoms, at + 1))
            {
                yield return (sentence, Stop);
                sentence = [];
                at += atoms[at + 1].Text == "and" ? 1 : 0;
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

    /// <summary>Whether a comma with the word after it only strings two plain statements together.</summary>
    private static bool Joins(List<Atom> before, List<Atom> atoms, int at)
    {
        if (atoms[at].Text is not ("and" or "but"))
        {
            return false;
        }

        var end = atoms.FindIndex(at + 1, atom => atom.Class == Atom.Mark && atom.Text is not ",");
        var after = atoms.GetRange(at + 1, (end < 0 ? atoms.Count : end) - at - 1);
        return IsPlain(before) && IsPlain(after)
            && before.TrueForAll(atom => atom.Class != Atom.Mark) && after.TrueForAll(atom => atom.Class != Atom.Mark);
    }

    private static bool IsPlain(List<Atom> part) =>
        part.Count >= ShortestPart && !Reaches(part) && part.TrueForAll(atom => atom.Class is not ("verb" or "order" or "quantifier" or Atom.Lead));

    /// <summary>Whether a word in it may reach beyond its own end.</summary>
    private static bool Reaches(List<Atom> part) => part.Exists(atom => atom.Class is "condition" or "negation" or "modality");

    private static bool ReachesOver(List<Atom> part) =>
        part.Exists(atom => atom.Class == "condition") || (Reaches(part) && part.Exists(atom => atom.Text == ":"));

    private static List<Atom> Shaped(List<Atom> sentence)
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

        return CanFollow(second, first) && !second.Exists(atom => Pointing.Contains(atom.Text)) ? [.. second, .. first]
            : CanFollow(first, second) && Conditions.Contains(second[0].Text) ? [.. first, .. second] // only the comma goes
            : [.. first, sentence[comma], .. second];
    }

    /// <summary>Whether a condition or a place, wherever it stands in the sentence, belongs to the whole of the statement.</summary>
    private static bool CanFollow(List<Atom> statement, List<Atom> part)
    {
        if (statement.Count < 2 || part.Count < 2 || statement.Concat(part).Any(atom => Joiners.Contains(atom.Text)))
        {
            return false;
        }

        return Places.Contains(part[0].Text)
            ? part.Count <= LongestPlace && statement.Concat(part[1..]).All(atom => atom.Class is Atom.Word or "grammar" && atom.Text != part[0].Text)
            : Conditions.Contains(part[0].Text)
                && statement.Concat(part[1..]).All(atom => atom.Class is not ("condition" or "order"))
                && !Leans(statement[^1])
                && !(part[0].Text is "because" or "although" or "though" && statement.Exists(atom => atom.Class == "negation"));
    }

    /// <summary>Whether a word, standing last, would take hold of the condition behind it: only if, not before, shortly after.</summary>
    private static bool Leans(Atom last) =>
        last.Class is not (Atom.Word or "state" or "verb" or "hazard" or "grammar" or Atom.Lead) || last.Text.EndsWith("ly", StringComparison.Ordinal)
        || last.Text is "long" or "well" or "right" or "straight" or "as" or "back" or "but" or "except" or "to" or "from" or "by" or "of" or "for" or "at" or "with" or "than";
}
