using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>
/// A second reading of a message beside its phrases: which symptoms people have told in the like words.
/// Each word, each concept and each two words together add to the odds of a symptom, networks look at the words in their order, and a phrase that tells it adds to both;
/// how far each is to be believed, and what symptoms make of each other, was learnt from messages of which no phrase was made.
/// </summary>
internal sealed class Likeness
{
    private readonly TradeRule _belief;
    private readonly HashSet<string> _certain;
    private readonly string[] _names;
    private readonly int[] _contrary;
    private readonly double[] _before;
    private readonly Dictionary<string, List<(int Row, double Weight)>> _weights = new(StringComparer.Ordinal);
    private readonly WordOrder _order;
    private readonly Beside _beside;

    /// <param name="words">How strongly each word speaks for each symptom, and what was learnt of their order.</param>
    /// <param name="belief">How far likeness and phrases are believed.</param>
    /// <param name="certain">Symptoms that a phrase tells whatever stands around it: what stops all work is not doubted.</param>
    public Likeness(Vocabulary words, TradeRule belief, IEnumerable<string> certain)
    {
        var told = words.Told;
        (_belief, _certain) = (belief, [.. certain]);
        _names = [.. told.Keys.Order(StringComparer.Ordinal)];
        _contrary = [.. _names.Select(name => Array.IndexOf(_names, Contrary(name)))];
        _before = [.. _names.Select(name => told[name].Before)];
        for (var row = 0; row < _names.Length; row++)
        {
            foreach (var (word, weight) in WordWeights.Of(told[_names[row]].Words))
            {
                var weights = _weights.TryGetValue(word, out var known) ? known : _weights[word] = [];
                weights.Add((row, weight));
            }
        }

        _order = new WordOrder(words.Order.Values.Single(), _names.Length);
        _beside = new Beside(words.Beside, _names);
    }

    /// <summary>What the phrases of a message tell of the motor as it is now, as the rows are named.</summary>
    internal static List<string> Phrases(IEnumerable<Conclusion> concluded) =>
        [.. concluded.Where(one => one is { Kind: "symptom", Aside: false }).Select(Name).Distinct(StringComparer.Ordinal)];

    /// <summary>The symptoms and the denials that can be told, as the rows are named.</summary>
    public IReadOnlyList<string> Names => _names;

    /// <summary>How likely a row has to be for what.</summary>
    public double Limit(string figure) => _belief[figure];

    /// <summary>Whether a phrase is to be taken as it is, whatever its words make of it.</summary>
    public bool IsCertain(Conclusion one) => one.Said && _certain.Contains(one.Id);

    /// <summary>What a word adds to the odds of a row.</summary>
    public double Weight(string word, int row) => _weights.TryGetValue(word, out var weights) ? weights.Find(one => one.Row == row).Weight : 0;

    /// <summary>The place of a conclusion's row; −1 where nobody told it.</summary>
    public int Row(Conclusion one) => Array.IndexOf(_names, Name(one));

    private static string Name(Conclusion one) => one.Said ? one.Id : ToldWords.Denied + one.Id;

    internal static string Contrary(string name) => IsDenial(name) ? Symptom(name) : ToldWords.Denied + name;

    /// <summary>Whether a row says that something is not so.</summary>
    internal static bool IsDenial(string name) => name.StartsWith(ToldWords.Denied, StringComparison.Ordinal);

    /// <summary>The symptom of which a row says that it is so or that it is not.</summary>
    internal static string Symptom(string name) => IsDenial(name) ? name[ToldWords.Denied.Length..] : name;

    /// <summary>Whether that it is not so may be taken from likeness: not of what stops all work.</summary>
    public bool MayDeny(int row) => !_certain.Contains(Symptom(_names[row]));

    /// <summary>The logarithm of the odds of each row by the words alone, without their order and with it.</summary>
    internal IReadOnlyList<(double Apart, double InOrder)> Scores(CountedWords counted)
    {
        var scores = _before.ToArray();
        foreach (var (row, weight) in counted.Words.SelectMany(word => _weights.GetValueOrDefault(word) ?? []))
        {
            scores[row] += weight;
        }

        return [.. scores.Zip(_order.Odds(counted.InOrder))];
    }

    /// <summary>How likely each row is: the words and the phrases taken together, and then what the other rows make of it.</summary>
    public double[] Chances(CountedWords counted, IReadOnlyCollection<string> phrases)
    {
        var scores = Scores(counted);
        return _beside.Chances([.. _names.Select((name, at) => Odds(scores[at], phrases.Contains(name), _contrary[at] >= 0 && phrases.Contains(_names[_contrary[at]]), phrases.Count, IsDenial(name)))]);
    }

    private double Odds((double Apart, double InOrder) scores, bool phrase, bool contrary, int phrases, bool denial) =>
        Inputs(scores, phrase, contrary, phrases, denial).Sum(input => input.Value * _belief[input.Name]);

    /// <summary>What is weighed of one row, as the figures of the belief are named.</summary>
    internal static IEnumerable<(string Name, double Value)> Inputs((double Apart, double InOrder) scores, bool phrase, bool contrary, int phrases, bool denial)
    {
        var likeness = (scores.Apart + scores.InOrder) / 2;
        return
        [
            ("base", 1),
            ("apart", scores.Apart),
            ("in-order", scores.InOrder),
            ("phrase", phrase ? 1 : 0),
            ("phrase-likeness", phrase ? likeness : 0),
            ("contrary", contrary ? 1 : 0),
            ("silent", phrases == 0 ? 1 : 0),
            ("silent-likeness", phrases == 0 ? likeness : 0),
            ("each-phrase", phrases),
            ("denial", denial ? 1 : 0),
        ];
    }
}
