namespace WireCoach.Service.Phrasing;

/// <summary>Signs that weigh nothing, and writings of the same sense that only their neighbours make the same.</summary>
internal sealed class Signs(Binding binding)
{
    private const string Pause = ":";

    /// <summary>A colon that begins a statement of its own is a semicolon; a comma before "and" that parts nothing goes.</summary>
    public List<Atom> Plain(List<Atom> atoms)
    {
        var plain = new List<Atom>(atoms.Count);
        var begin = 0;
        for (var at = 0; at < atoms.Count; at++)
        {
            var (before, next) = (plain.GetRange(begin, plain.Count - begin), at + 1 < atoms.Count ? atoms[at + 1] : default);
            if (Opens(before) && atoms[at] is { Class: Atom.Mark, Text: ":" or "," })
            {
                if (before[0].Text == "no")
                {
                    plain.Add(new Atom(Atom.Mark, Pause)); // "no, power stays" is not "no power stays"
                }
            }
            else if (atoms[at] is { Class: Atom.Mark, Text: ":" } && (!before.Exists(atom => atom.Reaches) || binding.IsSubject(next)))
            {
                plain.Add(new Atom(Atom.Mark, ";"));
            }
            else if (!(atoms[at].Text == "," && PartsNothing(before, next, Restated(atoms, at + 2)) && !Clauses.Joins(before, atoms, at + 1)))
            {
                plain.Add(atoms[at]);
            }

            begin = plain is [.., { Class: Atom.Mark, Text: "." or ";" or "?" or "!" }] ? plain.Count : begin;
        }

        return plain;
    }

    /// <summary>Within one sentence: not before is not until, once something is so is when it is so, what has been done is done.</summary>
    public List<Atom> Bare(List<Atom> sentence)
    {
        var bare = new List<Atom>(sentence.Count);
        var (denied, time) = (false, false);
        for (var at = 0; at < sentence.Count; at++)
        {
            var (last, next) = (bare.Count > 0 ? bare[^1] : default, at + 1 < sentence.Count ? sentence[at + 1] : default);
            var atom = IsWhen(last, sentence[at], next) ? new Atom(Atom.Condition, "when") : sentence[at];
            denied = atom.Class == Atom.Negation || (denied && !((binding.IsJoiner(last) || last.Text == ",") && atom.Text is not ("before" or "or")) && atom.Text is not "and");
            time |= atom.Text is "until" or "before" or "after" or "when";
            if (time && atom.Text == "been" && last.Text is "has" or "have")
            {
                bare[^1] = new Atom(Atom.Grammar, "is");
                continue;
            }

            bare.Add(denied && atom.Text == "before" ? new Atom(Atom.Condition, "until") : atom);
        }

        return Sure(AtValue(OnlyValue(bare)));
    }

    /// <summary>"50 Hz only" is "only 50 Hz".</summary>
    private static List<Atom> OnlyValue(List<Atom> sentence)
    {
        var only = sentence.FindIndex(atom => atom.Text == "only");
        if (only < 1 || sentence[only - 1].Class != Atom.Quantity || sentence.FindLastIndex(atom => atom.Text == "only") != only || (only + 1 < sentence.Count && sentence[only + 1].Class != Atom.Mark))
        {
            return sentence;
        }

        var value = only;
        while (value > 0 && sentence[value - 1].Class == Atom.Quantity)
        {
            value--;
        }

        return [.. sentence[..value], sentence[only], .. sentence[value..only], .. sentence[(only + 1)..]];
    }

    /// <summary>How sure or how often the whole of a plain sentence holds may be said in front or inside.</summary>
    private List<Atom> Sure(List<Atom> sentence)
    {
        var at = sentence.FindIndex(atom => atom.Text is "likely" or "usually" or "often");
        var begin = at > 0 && sentence[at - 1].Text == "most" ? at - 1 : at;
        var others = sentence.Where((_, place) => place < begin || place > at);
        return begin <= 0 || sentence[begin - 1].Text is "how" or "very" || others.Any(atom => atom.Class is Atom.Mark or Atom.Negation or Atom.Condition or Atom.Modality or Atom.Quantifier or Atom.Order || binding.IsJoiner(atom))
            ? sentence
            : [.. sentence[begin..(at + 1)], .. sentence[..begin], .. sentence[(at + 1)..]];
    }

    /// <summary>"40 µF of it at most" is "at most 40 µF of it", where only one value stands.</summary>
    private static List<Atom> AtValue(List<Atom> sentence)
    {
        var bound = sentence.FindIndex(atom => atom.Text is "most" or "least");
        var value = sentence.FindIndex(atom => atom.Class == Atom.Quantity);
        if (value < 0 || bound < value + 2 || sentence[bound - 1].Text != "at" || sentence.GetRange(value, bound - value).Exists(atom => atom.Class == Atom.Mark))
        {
            return sentence;
        }

        var values = sentence.Skip(value).SkipWhile(atom => atom.Class == Atom.Quantity).Any(atom => atom.Class is Atom.Quantity or Atom.Number);
        return values ? sentence : [.. sentence[..value], .. sentence.GetRange(bound - 1, 2), .. sentence[value..(bound - 1)], .. sentence[(bound + 1)..]];
    }

    /// <summary>A comma counts where it could turn the meaning: beside any word that carries meaning by itself.</summary>
    public List<Atom> Commas(List<Atom> atoms)
    {
        var kept = new List<Atom>(atoms.Count);
        for (var at = 0; at < atoms.Count; at++)
        {
            if (atoms[at].Text != "," || Parts(kept, atoms, at) || (at > 0 && atoms[at - 1].Weighs) || (at + 1 < atoms.Count && atoms[at + 1].Weighs))
            {
                kept.Add(atoms[at]);
            }
        }

        return kept;
    }

    /// <summary>A yes, a no or a first of all, which a comma or a colon may follow.</summary>
    private bool Opens(List<Atom> before) => before.Count == 1 && binding.IsOpener(before[0]);

    /// <summary>"Once it stops", other than once more or at once.</summary>
    private bool IsWhen(Atom last, Atom atom, Atom next) =>
        atom.Text == "once" && last.Text is not ("at" or "not" or "than") && next.Class is not (null or Atom.Mark or Atom.Quantity or Atom.Lead or Atom.Number or Atom.Condition) && !binding.IsCounting(next);

    /// <summary>A comma before "and" or "or" that no word in front could reach over, and one between a condition in front and its statement.</summary>
    private bool PartsNothing(List<Atom> before, Atom next, bool restated) =>
        before.Count > 0 && before.TrueForAll(atom => atom.Class != Atom.Lead)
        && (next.Text is "and" or "or"
            ? !GoesOn(before) || restated
            : (before[0].Class == Atom.Condition || binding.IsCondition(before[0])) && (binding.IsSubject(next) || next.Text == "only" || next.Class == Atom.Quantity) && before.TrueForAll(atom => atom.Class != Atom.Mark));

    /// <summary>A comma that ends the reach of a word in front, or makes "which" an aside.</summary>
    private bool Parts(List<Atom> before, List<Atom> atoms, int at)
    {
        if (at + 1 >= atoms.Count || !(atoms[at + 1].Text == "that" || binding.IsJoiner(atoms[at + 1])))
        {
            return false;
        }

        var begin = before.FindLastIndex(atom => atom is { Class: Atom.Mark, Text: ":" }) + 1;
        return atoms[at + 1].Text == "that" || (GoesOn(before[begin..]) && !Restated(atoms, at + 2));
    }

    /// <summary>Whether a word in it may reach over the "and" that follows.</summary>
    private static bool GoesOn(List<Atom> part) => part.Exists(atom => atom.Reaches) || part.Exists(atom => atom.Text is "only" or "just");

    /// <summary>Whether the next part says its own "never" or "only".</summary>
    private static bool Restated(List<Atom> atoms, int at) => at < atoms.Count && (atoms[at].Class == Atom.Negation || atoms[at].Text is "only");
}
