using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>
/// A second reading of a sentence in which no phrase told a symptom: which symptom people have told in the like words.
/// Each word and each concept speaks for a symptom by how much oftener it was told with it than without it.
/// It only ever adds a symptom that is there: that something is not so is never taken from likeness.
/// </summary>
internal sealed class Likeness
{
    /// <summary>Of the development sets, each read by what the others told, more than nine in ten that are as likely as this were meant.</summary>
    private const double Sure = 0.9;

    /// <summary>Where nothing is as likely as this, it is not asked which of several is meant; among those asked after, each is at least conceivable, while that nothing was told is not.</summary>
    private const double WorthAsking = 0.5;
    private const double Conceivable = 0.05;
    private const double Inconceivable = 0.02;
    private const int MostOffered = 3;

    /// <summary>A logarithm of odds: what people tell of a symptom so seldom in such words that a phrase in them most likely means something else.</summary>
    private const double Unlikely = -18;
    private const int Around = 8;
    private const int FewestWords = 2;
    private const int Seldom = 2;

    /// <summary>As if each word had been told so often as the share of all messages that hold it.</summary>
    private const double Smoothing = 3;

    /// <summary>Words of one sentence say the same thing several times over: their logarithms count a third.</summary>
    private const double Overlap = 3;
    private const string Term = "term.";
    private static readonly HashSet<string> Empty = ["filler", "ordinary", "pronoun", "small-talk"];
    private readonly HashSet<string> _certain;
    private readonly string[] _names;
    private readonly double[] _before;
    private readonly Dictionary<string, double[]> _weights = new(StringComparer.Ordinal);

    /// <param name="told">How often each word was told with each symptom.</param>
    /// <param name="certain">Symptoms that a phrase tells whatever stands around it: what warns of danger is not doubted.</param>
    public Likeness(IReadOnlyDictionary<string, ToldWords> told, IEnumerable<string> certain)
    {
        _certain = [.. certain];
        _names = [.. told.Keys.Where(id => id != ToldWords.All).Order(StringComparer.Ordinal)];
        var all = told[ToldWords.All];
        _before = [.. _names.Select(name => Math.Log((told[name].Messages + 1.0) / all.Messages))];
        var counts = _names.Select(name => Counted(told[name])).ToList();
        foreach (var (word, times) in Counted(all).Where(word => word.Value >= Seldom))
        {
            var share = Smoothing * times / all.Messages;
            _weights[word] = [.. _names.Select((name, at) => (With: counts[at].GetValueOrDefault(word), Messages: told[name].Messages)).Select(one =>
                Math.Log((one.With + share) / (one.Messages + Smoothing)) - Math.Log((times - one.With + share) / (all.Messages - one.Messages + Smoothing)))];
        }
    }

    /// <summary>What of a stretch of words counts: the words themselves and what they stand for.</summary>
    internal static IEnumerable<string> Telling(Scene scene, IEnumerable<int> places) =>
        places.SelectMany(at => scene.StartingAt(at).Where(hit => !scene.Tokens[at].Aside && !Empty.Contains(hit.Concept) && !hit.Concept.StartsWith(Term, StringComparison.Ordinal)).Select(hit => (hit.Denied ? "-@" : "@") + hit.Concept)
            .Concat(scene.Tokens[at].Kind == TokenKind.Word ? [scene.Tokens[at].Stem] : []))
            .Distinct(StringComparer.Ordinal);

    /// <summary>The conclusions, those marked whose symptom people tell in quite other words than stand around it here.</summary>
    public List<Conclusion> Doubted(Scene scene, List<Conclusion> concluded) => concluded.ConvertAll(one => one with { Doubtful = IsDoubtful(scene, one) });

    private bool IsDoubtful(Scene scene, Conclusion one)
    {
        var sentence = scene.Tokens[one.Hits[0].First].Sentence;
        return one is { Kind: "symptom", Said: true, Aside: false } && !_certain.Contains(one.Id) && Array.IndexOf(_names, one.Id) is var at and >= 0
            && one.Hits.TrueForAll(hit => scene.Tokens[hit.First].Sentence == sentence) && Scores(scene, Near(scene, one, sentence))[at] < Unlikely;
    }

    /// <summary>The words around a conclusion, as far as its sentence goes.</summary>
    private static IEnumerable<int> Near(Scene scene, Conclusion one, int sentence)
    {
        var (from, to) = (Math.Max(0, one.Hits.Min(hit => hit.First) - Around), Math.Min(scene.Tokens.Count - 1, one.Hits.Max(hit => hit.Last) + Around));
        return Enumerable.Range(from, to - from + 1).Where(at => scene.Tokens[at].Sentence == sentence);
    }

    /// <summary>Adds the symptoms that are as good as told in sentences of which nothing was concluded; where nothing at all was heard, what the words may mean is left to be asked.</summary>
    public IReadOnlyList<HeardSymptom> Add(Scene scene, List<Conclusion> concluded, bool heardNothing)
    {
        if (scene.Asked is { About: not ("symptom" or "goal") })
        {
            return [];
        }

        var known = concluded.Where(one => one is { Kind: "symptom", Aside: false }).Select(one => one.Id).ToHashSet(StringComparer.Ordinal);
        var told = Told(scene, concluded);
        var heard = new List<HeardSymptom>();
        (int First, int Last, List<string> Reads)? asked = null;
        foreach (var sentence in Enumerable.Range(0, scene.Tokens.Count).GroupBy(at => scene.Tokens[at].Sentence).Where(sentence => !told.Contains(sentence.Key)))
        {
            var (first, last) = Words(scene, [.. sentence]);
            if (first < 0 || sentence.Any(at => scene.Tokens[at].Aside))
            {
                continue;
            }

            var likely = Rank(scene, sentence);
            if (likely[0] is { Chance: > Sure } best && IsTold(best))
            {
                if (known.Add(best.Name))
                {
                    heard.Add(new HeardSymptom(best.Name, true, scene.Span(first, last)));
                    scene.Note(first, last, new Fact.Symptom { Id = best.Name, Present = true });
                    scene.Unsettled.Add(new Leftover(scene.Span(first, last), ["likely/" + best.Name]));
                    scene.Use(first, last);
                }
            }
            else if (heardNothing && asked is null && Offer(likely) is { Count: > 1 } reads)
            {
                asked = (first, last, reads);
            }
        }

        if (heard.Count == 0 && asked is var (from, to, doubtful))
        {
            scene.Unsettled.Add(new Leftover(scene.Span(from, to), doubtful));
            scene.Use(from, to);
        }

        return heard;
    }

    /// <summary>The sentences of which something was made: a symptom, a question, a figure. A machine's name or a danger word leaves room for what it does.</summary>
    private static HashSet<int> Told(Scene scene, List<Conclusion> concluded) =>
    [
        .. concluded.Where(one => one is { Kind: "symptom" or "unsettled" or "question" or "how", Aside: false }).SelectMany(one => one.Hits).Select(hit => scene.Tokens[hit.First].Sentence),
        .. Enumerable.Range(1, Math.Max(0, scene.Tokens.Count - 1)).Where(at => scene.IsWord(at, "?")).Select(at => scene.Tokens[at - 1].Sentence),
        .. scene.Tokens.Where(token => token.Kind == TokenKind.Number).Select(token => token.Sentence),
        .. scene.Facts.Where(one => one.Fact is not (Fact.Application or Fact.Choice { Question: not Fact.Choice.LeadCount } or Fact.Goal { Id: "diagnose" })).Select(one => scene.Tokens[one.At].Sentence),
    ];

    private static List<string> Offer(List<(string Name, double Chance)> likely) =>
        likely.Find(one => one.Name == ToldWords.Nothing).Chance > Inconceivable || likely.Find(IsTold).Chance < WorthAsking
            ? [] : [.. likely.Where(one => one.Chance > Conceivable && IsTold(one)).Take(MostOffered).Select(one => "maybe/" + one.Name)];

    private static bool IsTold((string Name, double Chance) one) => one.Name != ToldWords.Nothing && !one.Name.StartsWith(ToldWords.Denied, StringComparison.Ordinal);

    private static (int First, int Last) Words(Scene scene, List<int> sentence) =>
        sentence.FindAll(at => scene.Tokens[at].Kind == TokenKind.Word) is { Count: >= FewestWords } ? (sentence.Find(at => scene.Tokens[at].Kind != TokenKind.Mark), sentence.FindLast(at => scene.Tokens[at].Kind != TokenKind.Mark)) : (-1, -1);

    private List<(string Name, double Chance)> Rank(Scene scene, IEnumerable<int> sentence)
    {
        var scores = Scores(scene, sentence);
        var most = scores.Max();
        var shares = scores.Select(score => Math.Exp((score - most) / Overlap)).ToList();
        var sum = shares.Sum();
        return [.. _names.Select((name, at) => (name, shares[at] / sum)).OrderByDescending(one => one.Item2).ThenBy(one => one.name, StringComparer.Ordinal)];
    }

    /// <summary>The logarithm of the odds of each row, as if no word had anything to do with another.</summary>
    private double[] Scores(Scene scene, IEnumerable<int> places)
    {
        var scores = _before.ToArray();
        foreach (var word in Telling(scene, places))
        {
            if (_weights.TryGetValue(word, out var weights))
            {
                for (var at = 0; at < scores.Length; at++)
                {
                    scores[at] += weights[at];
                }
            }
        }

        return scores;
    }

    /// <summary>The words of a row with how often they were told.</summary>
    private static Dictionary<string, int> Counted(ToldWords told)
    {
        var parts = told.Words.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var counted = new Dictionary<string, int>(parts.Length / 2, StringComparer.Ordinal);
        for (var at = 0; at + 1 < parts.Length; at += 2)
        {
            counted[parts[at]] = int.Parse(parts[at + 1], System.Globalization.CultureInfo.InvariantCulture);
        }

        return counted;
    }
}
