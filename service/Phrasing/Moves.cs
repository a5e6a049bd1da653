namespace WireCoach.Service.Phrasing;

/// <summary>A condition or a place that stands in front in one text and behind in the other.</summary>
internal sealed class Moves(Binding binding)
{
    private const int LongestPlace = 6;

    /// <summary>Whether one of two sentences is the other with its first clause moved behind its statement.</summary>
    public bool Join(List<Atom> one, List<Atom> other) => one is [{ Text: "usually" or "often" or "likely" } sure, ..] && other.Count > 0 && other[0] == sure
        ? Join(one[1..], other[1..])
        : FromFront(one, other) || FromFront(other, one) || Owned(one, other) || Owned(other, one);

    /// <summary>Whether a condition or a place, wherever it stands in the sentence, belongs to the whole of the statement.</summary>
    public bool CanFollow(List<Atom> statement, List<Atom> part)
    {
        if (part.Count < 2 || statement.Count < (binding.IsCondition(part[0]) && statement is [{ Class: Atom.Verb }] ? 1 : 2) || statement.Concat(part).Any(binding.IsJoiner))
        {
            return false;
        }

        return binding.IsPlace(part[0])
            ? part.Count <= LongestPlace && statement.Concat(part[1..]).All(atom => Stays(atom) && atom.Text != part[0].Text)
            : binding.IsCondition(part[0])
                && statement.Concat(part[1..]).All(atom => atom.Class is not (Atom.Condition or Atom.Order))
                && !Leans(statement[^1], part[0])
                && !(part[0].Text is "because" or "although" && statement.Exists(atom => atom.Class == Atom.Negation));
    }

    private bool FromFront(List<Atom> front, List<Atom> behind)
    {
        if (front.Count == 0 || !(binding.IsPlace(front[0]) || binding.IsCondition(front[0])) || behind.IndexOf(front[0]) is not (> 0 and var start))
        {
            return false;
        }

        var statement = behind[..start];
        for (var length = 2; start + length <= behind.Count; length++)
        {
            var (part, rest) = (behind.GetRange(start, length), behind[(start + length)..]);
            if ((rest.Count == 0 || rest[0].Class == Atom.Mark || binding.IsCondition(part[0])) && Is(front, part, statement, rest))
            {
                return CanFollow([.. statement, .. rest.TakeWhile(atom => atom.Class != Atom.Mark)], part) && !Leans(statement[^1], part[0])
                    && (binding.IsPlace(part[0]) || !statement.Exists(binding.Points));
            }
        }

        return false;
    }

    /// <summary>The meter's small current is the small current of the meter.</summary>
    private static bool Owned(List<Atom> one, List<Atom> other)
    {
        if (other.Count != one.Count + 1)
        {
            return false;
        }

        for (var at = 0; at < one.Count; at++)
        {
            if (one[at].Class != Atom.Word || !one[at].Text.EndsWith("'s", StringComparison.Ordinal))
            {
                continue;
            }

            for (var begin = at; begin >= Math.Max(0, at - 1); begin--)
            {
                // The whole of what is owned has to go: nothing that could belong to it may stand behind.
                foreach (var end in Enumerable.Range(at + 2, 3).Where(end => end <= one.Count && (end == one.Count || one[end].Class != Atom.Word)))
                {
                    List<Atom> turned =
                    [
                        .. one[..begin], .. one.GetRange(at + 1, end - at - 1), new Atom(Atom.Grammar, "of"), .. one.GetRange(begin, at - begin),
                        one[at] with { Text = one[at].Text[..^2] }, .. one[end..],
                    ];
                    if (turned.Select(atom => atom.Text).SequenceEqual(other.Select(atom => atom.Text)))
                    {
                        return true;
                    }
                }
            }
        }

        return false;
    }

    private static bool Is(List<Atom> front, List<Atom> part, List<Atom> statement, List<Atom> rest) =>
        front.SequenceEqual([.. part, .. statement, .. rest]) || front.SequenceEqual([.. part, new Atom(Atom.Mark, ","), .. statement, .. rest]);

    /// <summary>A word that means the same wherever a place stands beside it.</summary>
    private bool Stays(Atom atom) =>
        atom.Class is Atom.Word or Atom.Grammar or Atom.Quantity or Atom.Number or Atom.Modality or Atom.State or Atom.Quantifier && !binding.IsFocus(atom);

    /// <summary>Whether a word, standing last, would take hold of what comes behind it: only if, not before, shortly after, 5 s before.</summary>
    private bool Leans(Atom last, Atom part) =>
        (last.Class is Atom.Quantity or Atom.Number ? part.Text is "before" or "after" or "until" : last.Class is not (Atom.Word or Atom.State or Atom.Verb or Atom.Hazard or Atom.Grammar or Atom.Lead))
        || binding.IsLeaning(last);
}
