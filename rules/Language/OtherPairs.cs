using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads "1-2 is 3 ohms, everything else open": each pair of leads that the message does not name showed nothing. Of leads that nothing names it tells nothing; where there is no other pair it is said back.</summary>
internal sealed class OtherPairs(Scene scene, ReadingGrammar readings, LeadReader leads)
{
    private const string Others = "other-pairs";
    private const int MostLeads = 24;
    private const int Between = 2;
    private (int First, int Last)? _said;
    private HashSet<(string From, string To)> _unread = [];

    /// <summary>Its words are no answer for the one pair that is asked after.</summary>
    public void Claim()
    {
        var open = scene.Hits.Where(hit => hit.Concept == Others && !IsDenied(hit) && Array.TrueForAll(hit.Places, place => !scene.Tokens[place].Used)).Select(Open).FirstOrDefault(span => span is not null);
        if (open is var (first, last) && (Named().Count > 0 || scene.Asked?.Kind == QuestionKind.Reading || (scene.Leads.Count > 0 && scene.Hits.Exists(IsPlain))))
        {
            _said = open;
            _unread = Unread();
            scene.Use(first, last);
        }
    }

    /// <summary>Files the pairs, once the leads that the message names are read too.</summary>
    public void File()
    {
        if (_said is not var (first, last))
        {
            return;
        }

        var named = Named();
        string[] all = [.. scene.Leads.Concat(scene.Facts.Select(fact => fact.Fact).OfType<Fact.Lead>().Select(lead => lead.Tag)).Concat(named.SelectMany(pair => new[] { pair.From, pair.To })).Distinct(StringComparer.OrdinalIgnoreCase)];
        named.UnionWith(_unread);
        var pairs = (all.Length > MostLeads ? [] : all.SelectMany((from, at) => all.Skip(at + 1).Select(to => (From: from, To: to)))).Where(pair => !named.Contains(pair) && !named.Contains((pair.To, pair.From))).ToList();
        foreach (var (from, to) in pairs)
        {
            scene.Note(first, last, new Fact.Reading { From = from, To = to, Open = true });
        }

        if (pairs.Count == 0)
        {
            scene.Unsettled.Add(new Leftover(scene.Span(first, last)));
        }
    }

    /// <summary>The pairs among facts that it told: what is known of one by a reading of its own stands.</summary>
    public IReadOnlyList<Fact> Of(List<Fact> facts) => _said is not var (first, last) ? [] : [.. facts.OfType<Fact.Reading>().Where(reading => reading.Span == scene.Span(first, last))];

    /// <summary>"2-3 keeps jumping, everything else open": a pair that is named is none of the others, whatever was said of it; "leads 1 to 6" names no pair.</summary>
    private HashSet<(string From, string To)> Unread()
    {
        var pairs = new HashSet<(string, string)>();
        for (var at = 0; at < scene.Tokens.Count; at++)
        {
            if (leads.At(at) is var (from, last) && scene.IsWord(last + 1, "to", "and", "with", "against", "-", "/", "&") && leads.At(last + 2) is var (to, _)
                && !scene.Hits.Exists(hit => hit.Concept == "lead-noun" && at - hit.First is >= 0 and <= 2))
            {
                pairs.Add((from, to));
            }
        }

        return pairs;
    }

    private HashSet<(string From, string To)> Named() =>
        [.. scene.Facts.Select(fact => fact.Fact).OfType<Fact.Reading>().Where(reading => reading is { Together.Count: 0, To: not (Fact.Reading.Frame or Fact.Reading.Earth) }).Select(reading => (reading.From, reading.To))];

    /// <summary>"All other pairs" says by itself what it speaks of; "the rest" needs a reading beside it.</summary>
    private bool IsPlain(Hit hit) => hit.Concept == Others && scene.IsWord(hit.Last, "else", "pair", "pairs", "combination", "combinations", "readings");

    /// <summary>"Not everything else is open"; the "nothing" of "nothing on everything else" is itself what was read.</summary>
    private bool IsDenied(Hit others) => others.Denied && readings.ValueAt(others.Start, true) is not { Open: true };

    /// <summary>"everything else reads open" and "open on all the others"; what is measured against the frame is another matter.</summary>
    private (int First, int Last)? Open(Hit others)
    {
        if (ToFrame(others.Last + 1) || leads.At(others.First - 1) is not null || (scene.IsWord(others.First - 1, "to", "and", "with", "against", "-") && leads.At(others.First - 2) is not null))
        {
            return null;
        }

        if (readings.After(others.Last + 1, true) is { Open: true, Kick: false } behind)
        {
            return ToFrame(behind.Last + 1) ? null : (others.First, behind.Last);
        }

        for (var at = others.First - 1; at >= Math.Max(0, others.First - 1 - Between - Between); at--)
        {
            if (readings.ValueAt(at, true) is { Open: true, Kick: false } before && others.First - before.Last <= Between + 1)
            {
                return (before.First, others.Last);
            }
        }

        return null;
    }

    private bool ToFrame(int at) => leads.Frame(scene.IsWord(at, "to", "against", "and", "-", "on") ? at + 1 : at) is not null;
}
