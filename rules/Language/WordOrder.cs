using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>What was learnt of words in their order, for the words of a message.</summary>
internal sealed class WordOrder
{
    /// <summary>Of a very long message the words count without their order too, and that has to do for its end.</summary>
    private const int Longest = 300;
    private readonly Dictionary<string, int> _words;
    private readonly Dictionary<string, int> _meanings;
    private readonly WordNetwork[] _networks;

    /// <param name="learnt">What was learnt.</param>
    /// <param name="rows">How many symptoms and denials it tells.</param>
    public WordOrder(ToldOrder learnt, int rows)
    {
        (_words, _meanings) = (Numbered(learnt.Words.Split(' ')), Numbered(learnt.Meanings.Split(' ')));
        var shape = new NetworkShape(_words.Count, _meanings.Count, rows, learnt.Size, learnt.Filters);
        _networks = [.. learnt.Weights.Select(weights => WordNetwork.Read(shape, weights))];
    }

    /// <summary>The logarithm of the odds of each row: the mean of what the networks make of it.</summary>
    public double[] Odds(IReadOnlyList<CountedWord> said)
    {
        (int, int[])[] numbered = [.. said.Take(Longest).Select(word => Numbered(word, _words, _meanings))];
        double[][] odds = [.. _networks.Select(network => network.Odds(numbered))];
        return [.. odds[0].Select((_, row) => odds.Average(one => one[row]))];
    }

    /// <summary>The numbers by which a network knows a word and what it stands for.</summary>
    public static (int Word, int[] Meanings) Numbered(CountedWord said, Dictionary<string, int> words, Dictionary<string, int> meanings) =>
        (words.GetValueOrDefault(said.Name, words.Count), [.. said.Meanings.Where(meanings.ContainsKey).Select(meaning => meanings[meaning])]);

    /// <summary>Names in a row, each with its number.</summary>
    public static Dictionary<string, int> Numbered(IEnumerable<string> names) =>
        names.Select((name, at) => (name, at)).ToDictionary(one => one.name, one => one.at, StringComparer.Ordinal);
}
