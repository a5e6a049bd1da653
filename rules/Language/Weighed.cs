using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>What the phrases of one message tell, weighed against how likely its words are to tell it.</summary>
internal sealed class Weighed
{
    private const int MostOffered = 3;
    private const int FewestWords = 2;
    private const int FewestTelling = 4;
    private const string Unmarked = "leads-unmarked";
    private const string AsksStraight = "asks-straight";
    private const string Swollen = "capacitor-swollen";
    private const string Smoke = "smoke-or-burnt-smell";
    private const string AtOnce = "trips-at-once";
    private const string TooFast = "runs-fast";
    private const string TooSlow = "runs-slow";
    private const string LowVolts = "low-voltage-at-motor";
    private static readonly string[] ByFigures = [RunFacts.HighCurrent, LowVolts, RunFacts.Unequals];
    private static readonly string[] Elsewhere = ["cap-there", "plug-lies", "figure-wanders", "goes-where", "hot-other", "trip-other", "turned-off", "felt-warm"];
    private readonly Likeness _likeness;
    private readonly Scene _scene;
    private readonly double[] _chances;
    private readonly List<string> _phrases;
    private readonly List<int> _free;
    private readonly List<(IReadOnlyList<int> Places, double[] Chances)> _weighed = [];

    public Weighed(Likeness likeness, Scene scene, List<Conclusion> concluded)
    {
        (_likeness, _scene, Concluded) = (likeness, scene, concluded);
        _phrases = Likeness.Phrases(concluded);
        _free = [.. Enumerable.Range(0, scene.Tokens.Count).Where(at => !scene.Tokens[at].Used)];
        _chances = Chances(Telling());
        Concluded = concluded.ConvertAll(one => one with { Doubtful = IsDoubtful(one) });
    }

    /// <summary>The conclusions, those marked that the words around them make unlikely.</summary>
    public List<Conclusion> Concluded { get; }

    /// <summary>
    /// Adds the symptoms that are as good as told or as denied though no phrase tells them; where nothing at all was heard, what the words may mean is left to be asked.
    /// That something is not so has to be surer than that it is, and of what stops all work it is never taken from likeness.
    /// </summary>
    public IReadOnlyList<HeardSymptom> Add(bool heardNothing)
    {
        var words = Enumerable.Range(0, _scene.Tokens.Count).Count(at => _scene.Tokens[at].Kind == TokenKind.Word && !_scene.IsWord(at, "and", "or"));
        if (_scene.Asked is { About: not ("symptom" or "goal") } || words < FewestWords || words <= _scene.Tokens.Count(token => token.Kind == TokenKind.Number))
        {
            return [];
        }

        var settled = Settled();
        var unsettled = Enumerable.Range(0, _chances.Length).Where(row => !settled.Contains(Likeness.Symptom(_likeness.Names[row])) && !IsReckoned(_likeness.Names[row]) && !IsAgainstSpeed(_likeness.Names[row])).ToList();
        var likely = Likely(unsettled);
        var open = unsettled.OrderByDescending(row => likely[row]).ToLookup(row => Likeness.IsDenial(_likeness.Names[row]));
        var taken = open[false].TakeWhile(row => likely[row] > _likeness.Limit("taken")).Select(Taken).ToList();
        taken.AddRange(open[true].TakeWhile(row => likely[row] > _likeness.Limit("denied")).Where(row => _likeness.MayDeny(row) && !taken.Exists(one => one.Id == Likeness.Symptom(_likeness.Names[row]))).Select(Taken).ToList());
        if (taken.Count == 0 && heardNothing && open[false].First() is var nearest && likely[nearest] > _likeness.Limit("asked"))
        {
            Leave(nearest, [.. open[false].TakeWhile(row => likely[row] > _likeness.Limit("conceivable")).Take(MostOffered).Select(row => "maybe/" + _likeness.Names[row])]);
        }

        return taken;
    }

    /// <summary>Symptoms that are not left to likeness: a phrase tells them, or what was said decides otherwise.</summary>
    private HashSet<string> Settled()
    {
        var settled = Concluded.Where(one => one is { Kind: "symptom", Aside: false, Doubtful: false }).Select(one => one.Id).ToHashSet(StringComparer.Ordinal);
        if (_scene.Facts.Any(fact => fact.Fact is Fact.Choice { Question: Fact.Choice.LeadCount } or Fact.Lead or Fact.Reading))
        {
            settled.Add(Unmarked); // how many wires there are, of which colour, and what was measured between them says nothing of their marks
        }

        if (_scene.Places("cap-gone", "capacitor-need").Count > 0)
        {
            settled.Add(Swollen); // one that is gone, dead, or wanted need not bulge
        }

        if (_scene.Places("smell-of-gas").Count > 0)
        {
            settled.Add(Smoke); // what smells of gas does not burn yet
        }

        if (_scene.Places("tool-bites").Count > 0)
        {
            settled.Add(AtOnce); // what trips as the tool bites has run before
        }

        return settled;
    }

    /// <summary>Whether a row is told by figures that were heard: "the voltage at the motor is 238". Two volts told against each other may say that they are low before anything to judge them by is known.</summary>
    private bool IsReckoned(string row)
    {
        var symptom = Likeness.Symptom(row);
        var figures = ByFigures.Contains(symptom) ? _scene.Tokens.Count(token => token.Kind == TokenKind.Number) : 0;
        return figures == 1 || (figures > 1 && symptom switch
        {
            LowVolts => Likeness.IsDenial(row) && Has(fact => fact is Fact.Running { Volts: not null } or Fact.BenchTest { Test: "supply-voltage" or "voltage-at-motor" }),
            RunFacts.Unequals => Has(IsAmps) || _scene.Places("reading-open").Count > 0, // "black and white 3.2, red and blue 8.9, rest open" are ohms
            _ => Has(IsAmps) && (Likeness.IsDenial(row) || Has(fact => fact is Fact.Plate { Field: "amps" })),
        });

        bool Has(Predicate<Fact> told) => _scene.Facts.Any(fact => told(fact.Fact));
        static bool IsAmps(Fact fact) => fact is Fact.Running { Amps: not null } or Fact.BenchTest { Test: "line-currents" };
    }

    /// <summary>"The plate says 1725 and it's doing 1140" is not too fast, whatever its words are like.</summary>
    private bool IsAgainstSpeed(string row) => row is TooFast or TooSlow
        && _scene.Facts.Select(fact => fact.Fact).OfType<Fact.Running>().FirstOrDefault(run => run.Rpm is not null)?.Rpm is { } speed
        && _scene.Facts.Select(fact => fact.Fact).OfType<Fact.Plate>().FirstOrDefault(plate => plate is { Field: "rpm", Of: null, Value.Numbers.Count: 1 })?.Value.Numbers[0] is { } rated
        && (row == TooFast ? speed <= rated : speed >= rated);

    /// <summary>How likely each row is that no phrase tells: also by the words alone of which nothing else was made, for the names of leads and the figures of a plate speak of no symptom, nor does what is said of another thing than the motor or of what goes where, or what is only asked, what was read is judged by its figure, and what is wanted has not been done. Where something is told beside all that, the whole may be sure enough.</summary>
    /// <param name="open">The rows that are neither told nor settled: where the whole message is sure or finds them unlikely, its parts need not be weighed.</param>
    private double[] Likely(List<int> open)
    {
        var symptoms = Places("symptom");
        var figures = Enumerable.Range(0, _scene.Tokens.Count).Where(at => _scene.Tokens[at] is { Used: true, Kind: TokenKind.Number or TokenKind.Tag } && !symptoms.Contains(at)).Select(Clause).ToHashSet();
        var wished = Places("goal").Select(Clause).ToHashSet();
        var elsewhere = _scene.Places(Elsewhere);
        var asked = Asked();
        var speaking = Enumerable.Range(0, _scene.Tokens.Count).Where(at => !_scene.Tokens[at].Aside && !elsewhere.Contains(at) && !figures.Contains(Clause(at)) && !wished.Contains(Clause(at)) && !asked.Contains(Sentence(at))).ToList();
        var free = speaking.Intersect(_free).ToList();
        var talks = speaking.Count == _scene.Tokens.Count || speaking.Count(at => _scene.Tokens[at].Kind == TokenKind.Word) >= FewestTelling;
        return open.TrueForAll(row => IsSure(_chances[row]) || _chances[row] <= _likeness.Limit("asked")) ? _chances
            : [.. _chances.Zip(Chances(free), (whole, part) => IsSure(whole) ? whole : Math.Min(whole, part))];

        bool IsSure(double whole) => talks && whole > _likeness.Limit("sure");
    }

    private HashSet<int> Places(string kind) => [.. Concluded.FindAll(one => one.Kind == kind).SelectMany(one => one.Hits.Concat(one.Again)).SelectMany(hit => hit.Places)];

    /// <summary>All words but those of clauses and sentences that only ask, where others tell something.</summary>
    private List<int> Telling()
    {
        var all = Enumerable.Range(0, _scene.Tokens.Count).ToList();
        var told = Concluded.FindAll(one => one is { Kind: "symptom", Aside: false }).ConvertAll(one => one.First);
        var clauses = Places("question").Select(Clause).Except(told.Select(Clause)).ToHashSet();
        var sentences = Asked().Except(told.Select(Sentence)).ToHashSet();
        return told.Count == 0 ? all : all.FindAll(at => !clauses.Contains(Clause(at)) && !sentences.Contains(Sentence(at)));
    }

    /// <summary>The sentences that ask, by their sign or by how they begin: "does it turn left or right".</summary>
    private HashSet<int> Asked() => [.. Enumerable.Range(0, _scene.Tokens.Count).Where(at => _scene.IsWord(at, CountedWords.Asking) || (IsFirst(at) && _scene.StartingAt(at).Any(hit => hit.Concept == AsksStraight))).Select(Sentence)];

    private bool IsFirst(int at) => at == 0 || _scene.Tokens[at - 1].Sentence != _scene.Tokens[at].Sentence;

    /// <summary>The sentence that it stands in, or that it ends.</summary>
    private int Sentence(int at) => _scene.Tokens[_scene.IsWord(at, CountedWords.Asking) && at > 0 ? at - 1 : at].Sentence;

    private int Clause(int at) => _scene.Tokens[at].Clause;

    /// <summary>Of what stops all work a doubt warns and stops as well as its telling does; it is asked after only where the words all but rule it out.</summary>
    private bool IsDoubtful(Conclusion one) =>
        one is { Kind: "symptom", Aside: false } && _likeness.Row(one) is var row and >= 0 && _chances[row] < _likeness.Limit(_likeness.IsCertain(one) ? "ruled-out" : "left");

    /// <summary>How likely each row is by some of the words; the same words are weighed once.</summary>
    private double[] Chances(IReadOnlyList<int> places)
    {
        var known = _weighed.Find(one => one.Places.SequenceEqual(places)).Chances;
        if (known is null)
        {
            known = _likeness.Chances(CountedWords.Of(_scene, [.. places]), _phrases);
            _weighed.Add((places, known));
        }

        return known;
    }

    private HeardSymptom Taken(int row)
    {
        var (id, present) = (Likeness.Symptom(_likeness.Names[row]), !Likeness.IsDenial(_likeness.Names[row]));
        var (first, last) = Leave(row, [(present ? "likely/" : "likely-not/") + id]);
        _scene.Note(first, last, new Fact.Symptom { Id = id, Present = present });
        return new HeardSymptom(id, present, _scene.Span(first, last));
    }

    private (int First, int Last) Leave(int row, IReadOnlyList<string> reads)
    {
        var (first, last) = Speaking(row);
        _scene.Unsettled.Add(new Leftover(_scene.Span(first, last), reads));
        _scene.Use(first, last);
        return (first, last);
    }

    /// <summary>The sentence that speaks most for a row, without its marks.</summary>
    private (int First, int Last) Speaking(int row)
    {
        var sentence = Enumerable.Range(0, _scene.Tokens.Count).Where(at => _scene.Tokens[at].Kind != TokenKind.Mark).GroupBy(at => _scene.Tokens[at].Sentence)
            .MaxBy(places => CountedWords.Of(_scene, [.. places]).Words.Sum(word => _likeness.Weight(word, row)))!;
        return (sentence.First(), sentence.Last());
    }
}
