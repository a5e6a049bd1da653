using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>What symptoms make of each other: who tells that it trips at once does not mean by the same words that it trips after a while.</summary>
internal sealed class Beside
{
    private readonly double[] _own;
    private readonly (int Row, double Weight)[][] _others;

    /// <param name="learnt">What was learnt of each row.</param>
    /// <param name="names">The rows in their order; of one that nothing was learnt of nothing is added.</param>
    public Beside(IReadOnlyDictionary<string, ToldBeside> learnt, IReadOnlyList<string> names)
    {
        var rows = names.Select((name, at) => (name, at)).ToDictionary(one => one.name, one => one.at, StringComparer.Ordinal);
        _own = [.. names.Select(name => learnt.TryGetValue(name, out var one) ? one.Own : 0)];
        _others = [.. names.Select(name => learnt.TryGetValue(name, out var one)
            ? WordWeights.Of(one.Others).Select(other => (rows[other.Word], other.Weight)).ToArray()
            : [])];
    }

    /// <summary>How likely each row is, from the logarithm of the odds that the words give each.</summary>
    public double[] Chances(IReadOnlyList<double> odds)
    {
        double[] alone = [.. odds.Select(Chance)];
        return [.. odds.Select((own, row) => Chance(own + _own[row] + _others[row].Sum(other => other.Weight * alone[other.Row])))];
    }

    /// <summary>The chance that belongs to the logarithm of odds.</summary>
    public static double Chance(double odds) => 1 / (1 + Math.Exp(-odds));
}
