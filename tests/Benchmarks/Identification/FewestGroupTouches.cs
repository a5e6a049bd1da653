using System.Numerics;

namespace WireCoach.Benchmarks.Identification;

/// <summary>The least mean number of touches after which leads are known in groups of given sizes, each group hung together by readings: by search through all ways of measuring.</summary>
/// <remarks>
/// What is known is a graph: parts of groups that readings have joined, with edges where they are known to be apart. Graphs that differ only in the
/// names of the leads count once. Where the leads of one group meet in a point a figure is twice that of a plain coil, so that it tells the size of its
/// group; which figure is which the search knows beforehand, and whoever measures does not: what it gives is then less than anybody can reach. Every reading that joins must be taken in the end, so that only those that find nothing are to be made few.
/// </remarks>
internal sealed class FewestGroupTouches
{
    private readonly int[] _sizes;
    private readonly int _leads;
    private readonly int _words;
    private readonly ulong[][] _together;
    private readonly ulong[][][] _ofSize;
    private readonly Dictionary<(ulong Edges, ulong Sizes), double> _known = [];

    /// <param name="figuresTell">Whether a figure tells how many leads its group has.</param>
    /// <param name="sizes">How many leads each group has.</param>
    public FewestGroupTouches(bool figuresTell, params int[] sizes)
    {
        _sizes = sizes;
        _leads = sizes.Sum();
        var partitions = new List<int[]>();
        Lay(new int[_leads], 0, [.. sizes], partitions);
        _words = (partitions.Count + 63) / 64;
        _together = [.. Enumerable.Range(0, _leads * _leads).Select(_ => new ulong[_words])];
        for (var partition = 0; partition < partitions.Count; partition++)
        {
            foreach (var (one, other) in from one in Enumerable.Range(0, _leads) from other in Enumerable.Range(0, _leads) where partitions[partition][one] == partitions[partition][other] select (one, other))
            {
                _together[(one * _leads) + other][partition / 64] |= 1UL << (partition % 64);
            }
        }

        int[] told = figuresTell ? [.. sizes.Distinct()] : [0];
        _ofSize = [.. Enumerable.Range(0, _leads).Select(lead => Array.ConvertAll(told, size => Partitions(partition => size == 0 || partition.Count(group => group == partition[lead]) == size)))];

        ulong[] Partitions(Func<int[], bool> holds)
        {
            var bits = new ulong[_words];
            for (var partition = 0; partition < partitions.Count; partition++)
            {
                bits[partition / 64] |= holds(partitions[partition]) ? 1UL << (partition % 64) : 0;
            }

            return bits;
        }

        Everything = new ulong[_words];
        for (var partition = 0; partition < partitions.Count; partition++)
        {
            Everything[partition / 64] |= 1UL << (partition % 64);
        }
    }

    /// <summary>How many different states of knowledge were looked at.</summary>
    public int States => _known.Count;

    private ulong[] Everything { get; }

    /// <summary>The least mean number of touches.</summary>
    public double Mean() => _sizes.Sum(size => size - 1) + Wasted(Everything, [.. Enumerable.Range(0, _leads)]);

    /// <summary>All ways to lay the leads in groups; groups of one size are not told apart.</summary>
    private static void Lay(int[] groupOf, int lead, List<int> left, List<int[]> found)
    {
        if (lead == groupOf.Length)
        {
            found.Add([.. groupOf]);
            return;
        }

        for (var group = 0; group < left.Count; group++)
        {
            var begun = groupOf.AsSpan(0, lead).Contains(group + 1);
            var size = left[group] + groupOf.AsSpan(0, lead).Count(group + 1);
            var earlier = Enumerable.Range(0, group).Any(other => !groupOf.AsSpan(0, lead).Contains(other + 1) && left[other] == size);
            if (left[group] > 0 && (begun || !earlier))
            {
                left[group]--;
                groupOf[lead] = group + 1;
                Lay(groupOf, lead + 1, left, found);
                groupOf[lead] = 0;
                left[group]++;
            }
        }
    }

    /// <summary>The least mean number of readings that find nothing.</summary>
    /// <param name="possible">The partitions that are left.</param>
    /// <param name="partOf">By lead the first lead of the part to which readings have joined it.</param>
    private double Wasted(ulong[] possible, int[] partOf)
    {
        var all = Count(possible);
        if (all == 1)
        {
            return 0;
        }

        var parts = partOf.Distinct().ToArray();
        var edges = new ulong[parts.Length];
        var shares = new List<(int One, int Other, double Joined)>();
        for (var one = 0; one < parts.Length; one++)
        {
            for (var other = one + 1; other < parts.Length; other++)
            {
                var joined = Count(possible, _together[(parts[one] * _leads) + parts[other]]);
                if (joined == 0)
                {
                    edges[one] |= 1UL << other;
                    edges[other] |= 1UL << one;
                }
                else if (joined < all)
                {
                    shares.Add((parts[one], parts[other], (double)joined / all));
                }
            }
        }

        var key = new CanonicalGraph(edges, [.. parts.Select(part => partOf.Count(other => other == part))]).Key;
        if (!_known.TryGetValue(key, out var best))
        {
            best = double.PositiveInfinity;
            foreach (var (one, other, joined) in shares.OrderByDescending(share => share.Joined))
            {
                // A reading that finds nothing is one, whatever comes after it.
                if (1 - joined < best)
                {
                    var together = _together[(one * _leads) + other];
                    var apart = (1 - joined) * (1 + Wasted([.. possible.Zip(together, (all, some) => all & ~some)], partOf));
                    best = apart < best
                        ? Math.Min(best, apart + Joined([.. possible.Zip(together, (all, some) => all & some)], all, one, Array.ConvertAll(partOf, part => part == other ? one : part)))
                        : best;
                }
            }

            _known[key] = best;
        }

        return best;
    }

    /// <summary>What is wasted after a reading that found something, by what its figure told.</summary>
    private double Joined(ulong[] possible, int all, int lead, int[] partOf)
    {
        var sum = 0.0;
        foreach (var size in _ofSize[lead])
        {
            var count = Count(possible, size);
            sum += count == 0 ? 0 : (double)count / all * Wasted([.. possible.Zip(size, (left, some) => left & some)], partOf);
        }

        return sum;
    }

    private static int Count(ulong[] possible) => possible.Sum(BitOperations.PopCount);

    private static int Count(ulong[] possible, ulong[] among)
    {
        var count = 0;
        for (var word = 0; word < possible.Length; word++)
        {
            count += BitOperations.PopCount(possible[word] & among[word]);
        }

        return count;
    }
}

/// <summary>A small graph of parts with sizes under a name that does not depend on their order.</summary>
internal sealed class CanonicalGraph
{
    private const int SizeBits = 3;
    private const int CountBits = 4;

    private readonly ulong[] _edges;
    private readonly int[] _sizes;

    public CanonicalGraph(ulong[] edges, int[] sizes)
    {
        (_edges, _sizes) = (edges, sizes);
        Key = (ulong.MaxValue, ulong.MaxValue);
        Settle(Ranked([.. sizes.Select(size => (ulong)size)]));
    }

    /// <summary>The least of all writings of the graph.</summary>
    public (ulong Edges, ulong Sizes) Key { get; private set; }

    /// <summary>Parts of one color are told apart by trying which of them comes first; those that can be exchanged without any edge changing need no trial.</summary>
    private void Settle(int[] colors)
    {
        for (var before = 0; colors.Distinct().Count() is var now && now != before; before = now)
        {
            colors = Ranked([.. colors.Select((color, part) => ((ulong)color << (CountBits * _sizes.Length)) | Around(part, colors))]);
        }

        var open = colors.GroupBy(color => color).Where(color => color.Count() > 1).Select(color => color.Key).DefaultIfEmpty(-1).Min();
        if (open < 0)
        {
            var key = Written([.. Enumerable.Range(0, colors.Length).OrderBy(part => colors[part])]);
            Key = key.CompareTo(Key) < 0 ? key : Key;
            return;
        }

        var tried = new List<int>();
        foreach (var part in Enumerable.Range(0, colors.Length).Where(part => colors[part] == open))
        {
            if (!tried.Exists(other => AreTwins(part, other)))
            {
                tried.Add(part);
                Settle(Ranked([.. colors.Select((color, other) => (2UL * (ulong)color) + (color == open && other != part ? 1UL : 0))]));
            }
        }
    }

    private bool AreTwins(int one, int other) => (_edges[one] & ~(1UL << other)) == (_edges[other] & ~(1UL << one));

    /// <summary>How many neighbors of each color a part has.</summary>
    private ulong Around(int part, int[] colors)
    {
        var counts = 0UL;
        for (var other = 0; other < colors.Length; other++)
        {
            counts += (_edges[part] >> other & 1) << (CountBits * colors[other]);
        }

        return counts;
    }

    private static int[] Ranked(ulong[] values)
    {
        ulong[] order = [.. values.Distinct().Order()];
        return Array.ConvertAll(values, value => Array.BinarySearch(order, value));
    }

    private (ulong, ulong) Written(int[] order)
    {
        var (edges, sizes) = (0UL, 0UL);
        for (var row = 0; row < order.Length; row++)
        {
            sizes = (sizes << SizeBits) | (uint)_sizes[order[row]];
            for (var column = 0; column < row; column++)
            {
                edges = (edges << 1) | (_edges[order[row]] >> order[column] & 1);
            }
        }

        return (edges, sizes);
    }
}
