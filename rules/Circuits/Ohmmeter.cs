namespace WireCoach.Rules.Circuits;

/// <summary>A path for direct current between two nodes.</summary>
/// <param name="From">One node.</param>
/// <param name="To">The other node.</param>
/// <param name="Ohms">Zero or more; <see langword="null"/> when it is open.</param>
public readonly record struct Wire(string From, string To, double? Ohms);

/// <summary>What an ideal ohmmeter reads on a dead network of wires and joints.</summary>
/// <remarks>
/// Nodes are taken out one by one (star to mesh). The method only adds, multiplies and divides positive numbers, so that no digit
/// is lost however far the resistances lie apart; a reading of many parallel paths is as exact as one of a single wire.
/// </remarks>
public sealed class Ohmmeter
{
    private readonly Dictionary<string, int> _groups = new(StringComparer.Ordinal);
    private readonly double[,] _siemens;

    /// <summary>A network to be read.</summary>
    /// <param name="wires">The coils and other paths.</param>
    /// <param name="joins">Nodes that are tied together.</param>
    /// <exception cref="ArgumentException">A resistance is negative or not a number.</exception>
    public Ohmmeter(IEnumerable<Wire> wires, IEnumerable<IReadOnlyList<string>>? joins = null)
    {
        var all = wires.ToList();
        var ties = new Ties();
        foreach (var wire in all)
        {
            ties.Add(wire.From);
            ties.Add(wire.To);
            if (wire.Ohms == 0)
            {
                ties.Tie(wire.From, wire.To);
            }
            else if (wire.Ohms is < 0 or double.NaN)
            {
                throw new ArgumentException($"A resistance is zero or more; between {wire.From} and {wire.To} it is {wire.Ohms}.", nameof(wires));
            }
        }

        foreach (var join in joins ?? [])
        {
            ties.TieAll(join);
        }

        _siemens = Siemens(ties, all);
    }

    /// <summary>Ohms of each pair, in the order asked.</summary>
    /// <param name="wires">The coils and other paths.</param>
    /// <param name="joins">Nodes that are tied together.</param>
    /// <param name="pairs">Pairs of nodes.</param>
    /// <returns>Ohms, 0 where the pair is tied together, <see langword="null"/> where no path exists.</returns>
    public static IReadOnlyList<double?> Read(
        IEnumerable<Wire> wires, IEnumerable<IReadOnlyList<string>>? joins, IEnumerable<(string From, string To)> pairs)
    {
        var meter = new Ohmmeter(wires, joins);
        return [.. pairs.Select(pair => meter.Between(pair.From, pair.To))];
    }

    /// <summary>Ohms between two nodes.</summary>
    /// <param name="from">One node; a name that is in no wire and no joint is open to all others.</param>
    /// <param name="to">The other node.</param>
    /// <returns>Ohms, 0 where the pair is tied together, <see langword="null"/> where no path exists.</returns>
    public double? Between(string from, string to)
    {
        if (string.Equals(from, to, StringComparison.Ordinal))
        {
            return 0;
        }

        if (!_groups.TryGetValue(from, out var first) || !_groups.TryGetValue(to, out var second))
        {
            return null;
        }

        return first == second ? 0 : Reduced(first, second) is > 0 and var siemens ? 1 / siemens : null;
    }

    private double[,] Siemens(Ties ties, List<Wire> wires)
    {
        foreach (var node in ties.Nodes)
        {
            _groups[node] = ties.GroupOf(node);
        }

        var siemens = new double[ties.Groups, ties.Groups];
        foreach (var wire in wires)
        {
            var (from, to) = (_groups[wire.From], _groups[wire.To]);
            if (from != to && wire.Ohms is { } ohms)
            {
                siemens[from, to] += 1 / ohms;
                siemens[to, from] = siemens[from, to];
            }
        }

        return siemens;
    }

    /// <summary>Takes out every node but two and returns the conductance that is left between them.</summary>
    private double Reduced(int first, int second)
    {
        var siemens = (double[,])_siemens.Clone();
        var size = siemens.GetLength(0);
        for (var node = 0; node < size; node++)
        {
            if (node != first && node != second)
            {
                TakeOut(siemens, node);
            }
        }

        return siemens[first, second];
    }

    private static void TakeOut(double[,] siemens, int node)
    {
        var size = siemens.GetLength(0);
        double sum = 0;
        for (var other = 0; other < size; other++)
        {
            sum += siemens[node, other];
        }

        for (var one = 0; sum > 0 && one < size; one++)
        {
            if (siemens[node, one] == 0)
            {
                continue;
            }

            var share = siemens[node, one] / sum;
            for (var other = 0; other < size; other++)
            {
                if (other != one && other != node && one != node)
                {
                    siemens[one, other] += share * siemens[node, other];
                }
            }
        }

        for (var other = 0; other < size; other++)
        {
            siemens[node, other] = 0;
            siemens[other, node] = 0;
        }
    }
}
