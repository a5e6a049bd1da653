namespace WireCoach.Rules.Windings;

/// <summary>Whether one mistaken reading could have turned one winding into another, in a sound motor or in one with something the matter, of whatever kind.</summary>
internal sealed class SlipGuard(Bench bench, IReadOnlyList<Measured> readings, Func<int, int, bool> readable)
{
    /// <summary>Of a bound this part is not counted.</summary>
    private const double Nothing = 1e-3;

    /// <summary>The reading that would show most of the mistakes by which the roles may have come about; <see langword="null"/> when they are too unlikely to count.</summary>
    /// <param name="all">The explanations of all readings.</param>
    /// <param name="best">The explanation that is believed.</param>
    /// <remarks>Faults are looked at last: they cost most to search, and what bears out a role in a sound motor mostly does so in a faulty one.</remarks>
    public BearingOut? Wanted(Explanations all, Leaf best) =>
        Wanted(all, best, bench.Sound, (AtTheMotor ? bench.Figures.SlipTurnsRoles : bench.Figures.SlipTurnsTable).Value)
        ?? Wanted(all, best, bench.Faulty, (AtTheMotor ? bench.Figures.SlipAndFaultTurnRoles : bench.Figures.SlipAndFaultTurnTable).Value);

    /// <summary>Who can look at the motor can take a reading again; a table of plain readings is judged by what it says, and only asked of what is doubtful.</summary>
    private bool AtTheMotor => bench.Input.Looks is not null;

    private BearingOut? Wanted(Explanations all, Leaf best, IReadOnlyList<Search> states, double bound)
    {
        var turned = Turned(all, best, states, bound * Nothing);
        var sum = turned.Sum(one => one.Share);
        if (sum <= bound)
        {
            return null;
        }

        return Pairs()
            .Select(pair => (Pair: pair, Shown: turned.Where(one => Shows(one, best, pair)).Sum(one => one.Share)))
            .Where(one => one.Shown > 0)
            .OrderByDescending(one => Math.Round(one.Shown / sum, 6)).ThenByDescending(one => one.Pair.Again)
            .Select(one => one.Pair).FirstOrDefault(BearingOut.Impossible);
    }

    /// <summary>All that the motor may be instead if one reading is a mistake.</summary>
    private List<Mistake> Turned(Explanations all, Leaf best, IReadOnlyList<Search> states, double nothing)
    {
        var role = RoleKeys.Of(best);
        var turned = new List<Mistake>();
        foreach (var slip in Slip.Each(bench, readings, states, all.LogTotal + Math.Log(nothing)))
        {
            var scale = Math.Exp(slip.LogWeight - all.LogTotal);
            for (var index = 0; index < slip.Rest.Leaves.Count; index++)
            {
                if (slip.Rest.Probabilities[index] * scale is var share && share > nothing && RoleKeys.Of(slip.Rest.Leaves[index]) != role)
                {
                    turned.Add(new(slip.Reading, slip.Rest.Leaves[index], share));
                }
            }
        }

        return turned;
    }

    private IEnumerable<BearingOut> Pairs()
    {
        var leads = Enumerable.Range(0, bench.Leads.Count);
        return from first in leads from second in leads where first < second && readable(first, second)
               select new BearingOut(first, second, readings.Any(reading => reading.First == first && reading.Second == second));
    }

    /// <summary>Whether a reading would come out otherwise if there was this mistake; one that was taken before says nothing new but of itself.</summary>
    private bool Shows(Mistake mistake, Leaf best, BearingOut pair)
    {
        var (reading, leaf, _) = mistake;
        if (pair.Again)
        {
            return reading.First == pair.First && reading.Second == pair.Second;
        }

        var (truly, believed) = (leaf.LinkOf(pair.First, pair.Second), best.LinkOf(pair.First, pair.Second));
        return truly != believed
            ? truly == Link.Ohms || believed == Link.Ohms
            : truly == Link.Ohms && leaf.IsKnown(pair.First, pair.Second, [.. readings.Where(other => other != reading)])
                && (Ohms: leaf.OhmsOf(pair.First, pair.Second), Believed: best.OhmsOf(pair.First, pair.Second)) is var figures
                && Math.Abs(figures.Ohms - figures.Believed) > bench.Meter.NotAlike(figures.Ohms, figures.Believed);
    }

    /// <summary>One reading taken for a mistake, and what the motor may be then.</summary>
    private sealed record Mistake(Measured Reading, Leaf Leaf, double Share);
}

/// <summary>A reading that bears out what is believed.</summary>
/// <param name="First">A lead's number; −1 where no reading can.</param>
/// <param name="Second">Another lead's number.</param>
/// <param name="Again">Whether the pair was read before.</param>
internal sealed record BearingOut(int First, int Second, bool Again)
{
    /// <summary>What bears it out cannot be read.</summary>
    public static readonly BearingOut Impossible = new(-1, -1, Again: false);
}
