using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>One message while it is being read: tokens, concepts, and what was made of them so far.</summary>
internal sealed class Scene
{
    private const int FarthestJoined = 5;
    private const int FarthestWish = 12;
    private readonly List<Hit>[] _starts;
    private readonly HashSet<(string Concept, int Clause)> _clauses = [];
    private readonly HashSet<(string Concept, int Sentence)> _sentences = [];
    private readonly List<(int At, Fact Fact)> _facts = [];

    public Scene(string text, List<Token> tokens, List<Hit> hits, IReadOnlyDictionary<string, SupplyWords> supplies, Hearing hearing)
    {
        (Text, Tokens, Hits, Supplies, Leads, Asked, Region) = (text, tokens, hits, supplies, hearing.Leads, hearing.Asked, hearing.Region);
        _starts = new List<Hit>[tokens.Count];
        foreach (var hit in hits)
        {
            (_starts[hit.First] ??= []).Add(hit);
            _clauses.Add((hit.Concept, tokens[hit.First].Clause));
            _sentences.Add((hit.Concept, tokens[hit.First].Sentence));
        }
    }

    public string Text { get; }

    public List<Token> Tokens { get; }

    public List<Hit> Hits { get; }

    public IReadOnlyDictionary<string, SupplyWords> Supplies { get; }

    public IReadOnlyList<string> Leads { get; }

    public OpenQuestion? Asked { get; }

    public Region? Region { get; }

    public List<Leftover> Unsettled { get; } = [];

    /// <summary>The facts in the order of the words that they were read from.</summary>
    public IReadOnlyList<(int At, Fact Fact)> Facts => [.. _facts.OrderBy(fact => fact.At)];

    public bool HasFacts => _facts.Count > 0;

    public Token? this[int at] => at >= 0 && at < Tokens.Count ? Tokens[at] : null;

    /// <summary>The words from one token to another, as the person wrote them.</summary>
    public string Span(int first, int last) => Text[Tokens[first].Start..Tokens[last].End];

    public void Add(int first, int last, Fact fact)
    {
        Use(first, last);
        Note(first, last, fact);
    }

    /// <summary>Files a fact without claiming all the words between.</summary>
    public void Note(int first, int last, Fact fact) => _facts.Add((first, fact with { Span = Span(first, last) }));

    /// <summary>Adds to a fact what was read later in the same message.</summary>
    public void Amend<TFact>(Func<TFact, bool> which, Func<TFact, TFact> change)
        where TFact : Fact => Amend<TFact>((fact, _) => which(fact), change);

    /// <summary>The same, where the place of the fact's words counts.</summary>
    public void Amend<TFact>(Func<TFact, int, bool> which, Func<TFact, TFact> change)
        where TFact : Fact
    {
        for (var at = 0; at < _facts.Count; at++)
        {
            if (_facts[at].Fact is TFact fact && which(fact, _facts[at].At))
            {
                _facts[at] = (_facts[at].At, change(fact));
            }
        }
    }

    public void Use(int first, int last)
    {
        for (var at = first; at <= last; at++)
        {
            Tokens[at].Used = true;
        }
    }

    public void Use(Hit hit)
    {
        foreach (var place in hit.Places)
        {
            Tokens[place].Used = true;
        }
    }

    public IReadOnlyList<Hit> StartingAt(int at) => at >= 0 && at < _starts.Length && _starts[at] is { } hits ? hits : [];

    /// <summary>The places of the words that mean one of these.</summary>
    public HashSet<int> Places(params string[] concepts) => [.. Hits.Where(hit => concepts.Contains(hit.Concept)).SelectMany(hit => hit.Places)];

    /// <summary>The longest hit of a concept that starts here.</summary>
    public Hit? At(int at, string concept)
    {
        Hit? longest = null;
        foreach (var hit in StartingAt(at))
        {
            longest = hit.Concept == concept && hit.Last > (longest?.Last ?? -1) ? hit : longest;
        }

        return longest;
    }

    /// <summary>The longest hit here of a concept whose id starts so.</summary>
    public Hit? Like(int at, string prefix)
    {
        Hit? longest = null;
        foreach (var hit in StartingAt(at))
        {
            longest = hit.Concept.StartsWith(prefix, StringComparison.Ordinal) && hit.Last > (longest?.Last ?? -1) ? hit : longest;
        }

        return longest;
    }

    public bool InClause(string concept, int at) => _clauses.Contains((concept, Tokens[at].Clause));

    public bool InSentence(string concept, int at) => _sentences.Contains((concept, Tokens[at].Sentence));

    /// <summary>Whether a concept stands within some tokens of the quantity, in its sentence.</summary>
    public bool Near(Quantity q, int reach, string concept)
    {
        for (var at = Math.Max(0, q.First - reach - 2); at <= q.Last + reach; at++)
        {
            if (At(at, concept) is { } hit && Tokens[hit.First].Sentence == Tokens[q.First].Sentence && q.First - hit.Last <= reach)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a concept stands before the token, its last word no farther away than this.</summary>
    public bool Before(int at, int reach, string concept) => Hits.Exists(hit => hit.Concept == concept && hit.Last < at && at - hit.Last <= reach);

    /// <summary>Whether all its numbers are voltages of the trade: 115, 208, 230, 400, 480.</summary>
    public bool IsNominalVolts(Quantity q) =>
        Enumerable.Range(q.First, q.Last - q.First + 1).Where(at => Tokens[at].Kind == TokenKind.Number).All(at => At(at, "nominal-volts") is not null);

    /// <summary>"Want it on 230": volts that are wished for.</summary>
    public bool IsWished(Quantity q) => q.Values.Count == 1 && EndsIn(q, "wished-volts");

    /// <summary>"Will it work on 230": volts of a supply that is asked about.</summary>
    public bool IsOfferedSupply(Quantity q) => q.Values.Count == 1 && EndsIn(q, "run-on-volts") && InSentence("ask", q.First);

    /// <summary>"Do I need 230": volts that are only asked about.</summary>
    public bool IsAskedAbout(Quantity q) => EndsIn(q, "asked-volts");

    /// <summary>"120 or 240, I don't know": two figures with such a word between them and nothing else that counts.</summary>
    public bool AreJoined(Quantity one, Quantity next, string[] joints) =>
        next.First - one.Last is > 1 and <= FarthestJoined && one.Values[0] != next.Values[0] && AreJoints(one.Last + 1, next.First - 1, joints);

    private bool AreJoints(int first, int last, string[] joints)
    {
        int[] between = [.. Enumerable.Range(first, last - first + 1)];
        return Array.Exists(between, at => IsWord(at, joints)) && Array.TrueForAll(between, at => IsWord(at, [.. joints, "also", "either", "maybe", "perhaps", "possibly"]));
    }

    private bool EndsIn(Quantity q, string concept)
    {
        for (var at = q.First - 1; at >= 0 && at >= q.First - FarthestWish; at--)
        {
            if (At(at, concept) is { } hit && hit.Last == q.First)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Steps over signs.</summary>
    public void SkipSigns(ref int at, params ReadOnlySpan<string> signs)
    {
        while (IsWord(at, signs))
        {
            at++;
        }
    }

    public bool IsWord(int at, params ReadOnlySpan<string> words) => this[at] is { } token && words.Contains(token.Text);
}

/// <summary>What is known beside the words.</summary>
/// <param name="Leads">The leads' tags, as far as they are known.</param>
/// <param name="Asked">The open question.</param>
/// <param name="Region">The region, where it is known.</param>
internal sealed record Hearing(IReadOnlyList<string> Leads, OpenQuestion? Asked, Region? Region);
