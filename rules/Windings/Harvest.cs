namespace WireCoach.Rules.Windings;

/// <summary>Gathers the explanations of a search and knows how weak one may be before it need not be looked at.</summary>
/// <param name="bench">The patterns in question.</param>
/// <param name="most">More explanations than this are not kept: the memory stays bounded.</param>
/// <param name="least">ln of the weight below which an explanation is of no use.</param>
/// <param name="found">Explanations that were found before.</param>
/// <param name="far">Explanations so much weaker than the best are dropped: a natural logarithm.</param>
internal sealed class Harvest(Bench bench, int most, double least, IReadOnlyList<Leaf> found, double far = Harvest.Far)
{
    /// <summary>How weak an explanation may be.</summary>
    public const double Far = 18;

    private double _best = found.Select(leaf => leaf.LogWeight).DefaultIfEmpty(double.NegativeInfinity).Max();

    public List<Leaf> Leaves { get; } = [.. found];

    /// <summary>Whether there were more than could be kept.</summary>
    public bool Overflow { get; private set; }

    /// <summary>Whether an explanation of at most this weight will be dropped in any case.</summary>
    public bool Drops(double logWeight) => logWeight < least || logWeight < _best - far;

    /// <summary>Keeps an explanation; <see langword="false"/> when there is no room for more.</summary>
    public bool Add(Leaf leaf)
    {
        var extra = bench.Outside(leaf);
        var weighed = extra == 0 ? leaf : leaf with { LogWeight = leaf.LogWeight + extra };
        if (!Drops(weighed.LogWeight))
        {
            _best = Math.Max(_best, weighed.LogWeight);
            Leaves.Add(weighed);
        }

        Overflow |= Leaves.Count >= most;
        return !Overflow;
    }

    /// <summary>The kept explanations that are not far behind the best.</summary>
    public IReadOnlyList<Leaf> Near() => Leaves.TrueForAll(leaf => leaf.LogWeight > _best - Far) ? Leaves : [.. Leaves.Where(leaf => leaf.LogWeight > _best - Far)];
}
