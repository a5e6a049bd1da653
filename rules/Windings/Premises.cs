namespace WireCoach.Rules.Windings;

/// <summary>What an explanation still rests on without a measurement.</summary>
internal static class Premises
{
    /// <summary>Pairs of leads that must still be read before every winding of an explanation rests on a measurement, the most direct first.</summary>
    /// <param name="leaf">An explanation in which every lead has a place.</param>
    /// <param name="readings">The readings.</param>
    public static IReadOnlyList<(int First, int Second)> Missing(Leaf leaf, IReadOnlyList<Measured> readings)
    {
        var leadOf = new int[leaf.Pattern.Count];
        for (var lead = 0; lead < leadOf.Length; lead++)
        {
            leadOf[leaf.TerminalOf[lead]] = lead;
        }

        var missing = new List<(int, int)>();
        foreach (var group in leaf.Pattern.Groups)
        {
            missing.AddRange(Missing(leaf.Pattern, [.. group.Terminals.Select(terminal => leadOf[terminal])], group.Spans, leaf, readings));
        }

        missing.AddRange(AcrossTheBreak(leaf, leadOf, readings));
        return missing;
    }

    /// <summary>Ends of a winding between which nothing reads: they must have been read against each other.</summary>
    private static IEnumerable<(int, int)> AcrossTheBreak(Leaf leaf, int[] leadOf, IReadOnlyList<Measured> readings) => leaf.Pattern.Breaks
        .Select(ends => (leadOf[ends.First], leadOf[ends.Last]))
        .Where(pair => !readings.Any(reading => reading.Touches(pair.Item1) && reading.Touches(pair.Item2)));

    /// <summary>All terminals of a pattern in groups between which there are no ohms.</summary>
    public static IReadOnlyList<CoilGroup> Groups(Pattern pattern) =>
        [.. pattern.Blocks.SelectMany(block => Groups(pattern, block)).Select(group => new CoilGroup(group, Spans(pattern, group)))];

    private static IEnumerable<int[]> Groups(Pattern pattern, Block block)
    {
        var left = block.Terminals.ToList();
        while (left.Count > 0)
        {
            var group = left.Where(terminal => terminal == left[0] || pattern.Links[left[0]][terminal] == Link.Ohms).ToArray();
            left.RemoveAll(group.Contains);
            yield return group;
        }
    }

    /// <summary>How many coils the readings of a group must settle.</summary>
    private static int Spans(Pattern pattern, int[] group)
    {
        var spans = pattern.Windings.Sum(winding => !winding.Terminals.All(group.Contains) ? 0
            : winding.Junction ? winding.Terminals.Count
            : 1 + winding.Taps.Count);
        return Math.Clamp(spans, group.Length - 1, group.Length * (group.Length - 1) / 2);
    }

    private static IEnumerable<(int, int)> Missing(Pattern pattern, int[] leads, int spans, Leaf leaf, IReadOnlyList<Measured> readings)
    {
        if (leads.Length < 2)
        {
            return [];
        }

        var part = leads.ToDictionary(lead => lead, lead => lead);
        var read = new HashSet<(int, int)>();
        foreach (var reading in readings.Where(reading => reading.Showed == Showed.Ohms && part.ContainsKey(reading.First) && part.ContainsKey(reading.Second)))
        {
            read.Add((reading.First, reading.Second));
            var (keep, drop) = (part[reading.First], part[reading.Second]);
            foreach (var lead in leads)
            {
                part[lead] = part[lead] == drop ? keep : part[lead];
            }
        }

        var whole = leads.All(lead => part[lead] == part[leads[0]]);
        if (whole && read.Count >= spans)
        {
            return [];
        }

        return Pairs(leads)
            .Where(pair => !read.Contains(pair) && (whole || part[pair.First] != part[pair.Second]))
            .OrderBy(pair => pattern.Windings.Any(winding => Spans(winding, leaf, pair)) ? 0 : 1)
            .Select(pair => (pair.First, pair.Second));
    }

    private static bool Spans(PatternWinding winding, Leaf leaf, (int First, int Second) pair) =>
        winding.Terminals.Contains(leaf.TerminalOf[pair.First]) && winding.Terminals.Contains(leaf.TerminalOf[pair.Second]);

    private static IEnumerable<(int First, int Second)> Pairs(int[] leads) =>
        from first in leads from second in leads where first < second select (first, second);
}

/// <summary>Terminals between which there are ohms.</summary>
/// <param name="Terminals">The terminals.</param>
/// <param name="Spans">How many readings it takes at least before all of its coils rest on one.</param>
internal sealed record CoilGroup(int[] Terminals, int Spans)
{
    /// <summary>The terminals as bits.</summary>
    public int Bits { get; } = Terminals.Aggregate(0, (bits, terminal) => bits | (1 << terminal));

    /// <summary>Whether a terminal is one of them; −1 is none.</summary>
    public bool Holds(int terminal) => terminal >= 0 && (Bits & (1 << terminal)) != 0;
}
