using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads what was measured from several leads, held together or one after the other: "1 with 2 to 3 4.2", "red and blue both to frame OL". What may mean either is read as neither.</summary>
internal sealed class SeveralLeads(Scene scene, LeadReader leads, ReadingGrammar readings)
{
    /// <summary>Reads a row of leads that starts at the token.</summary>
    /// <param name="at">The token.</param>
    /// <returns>The last token of the row, also where it is left alone because nobody can say which it means; <see langword="null"/> where none starts here.</returns>
    public int? Line(int at)
    {
        if (Row(at) is not var (row, next, held))
        {
            return null;
        }

        var each = false;
        for (var more = true; more;)
        {
            var tied = scene.At(next, "together");
            each |= scene.IsWord(next, "both", "each");
            held |= tied is not null && Enumerable.Range(tied.First, tied.Last - tied.First + 1).Any(place => scene.IsWord(place, "together", "joined", "bunched", "hand"));
            more = tied is not null || scene.IsWord(next, "both", "each");
            next = more ? (tied?.Last ?? next) + 1 : next;
        }

        if (!scene.IsWord(next, "to", "against", "onto") || leads.At(next + 1) is not { } to || row.Exists(one => one.Tag == to.Tag) || readings.After(to.Last + 1, true) is not { } value)
        {
            return null;
        }

        return held ? readings.Add([new(row[0].Tag, to.Tag, at, to.Last) { Together = [.. row.Skip(1).Select(one => one.Tag)] }], value)
            : each || value.Open ? readings.Add([.. row.Select(one => new ReadingGrammar.Probed(one.Tag, to.Tag, at, to.Last))], value) // what is open together is open one by one
            : value.Last;
    }

    /// <summary>Two or more leads with "and" or "with" before the last; whether that says that they are held together.</summary>
    private (List<(string Tag, int Last)> Leads, int Next, bool Held)? Row(int at)
    {
        var row = leads.Row(at, ",", "and", "&", "with", "+");
        bool AreJoined(params string[] signs) => row.SkipLast(1).Any(lead => scene.IsWord(scene.IsWord(lead.Last + 1, ",") ? lead.Last + 2 : lead.Last + 1, signs));
        return AreJoined("and", "&", "with", "+") ? (row, row[^1].Last + 1, AreJoined("with", "+")) : null;
    }
}
