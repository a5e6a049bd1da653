namespace WireCoach.Rules.Practice;

/// <summary>Numbers that look like chance and are always the same for the same seed (SplitMix64).</summary>
internal sealed class SeededSequence
{
    private ulong _state;

    public SeededSequence(long seed) => _state = unchecked((ulong)seed);

    /// <summary>A sequence that depends on the seed and on a name, so that one reading never shifts another.</summary>
    public SeededSequence(long seed, string name)
        : this(seed)
    {
        foreach (var letter in name)
        {
            _state = (Next() ^ letter) * 0x100000001B3;
        }
    }

    /// <summary>From 0 up to but not including 1.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Evenly between two bounds.</summary>
    public double Between(double low, double high) => low + ((high - low) * Unit());

    /// <summary>Between two bounds above zero, every doubling as likely as the other.</summary>
    public double BetweenRatios(double low, double high) => low * Math.Pow(high / low, Unit());

    /// <summary>One of several.</summary>
    public T One<T>(IReadOnlyList<T> items) => items[(int)(Unit() * items.Count)];

    /// <summary>One of several by weight.</summary>
    public T One<T>(IReadOnlyList<T> items, Func<T, double> weight)
    {
        var left = Unit() * items.Sum(weight);
        foreach (var item in items)
        {
            left -= weight(item);
            if (left < 0)
            {
                return item;
            }
        }

        return items[^1];
    }

    /// <summary>The same items in another order.</summary>
    public IReadOnlyList<T> Shuffled<T>(IEnumerable<T> items)
    {
        var all = items.ToArray();
        for (var at = all.Length - 1; at > 0; at--)
        {
            var other = (int)(Unit() * (at + 1));
            (all[at], all[other]) = (all[other], all[at]);
        }

        return all;
    }

    private ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var mixed = (_state ^ (_state >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            return mixed ^ (mixed >> 31);
        }
    }
}
