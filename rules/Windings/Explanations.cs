using WireCoach.Rules.Choosing;

namespace WireCoach.Rules.Windings;

/// <summary>All explanations of a set of readings, with their weights.</summary>
internal sealed class Explanations
{
    /// <summary>More explanations than this are not looked at: the memory stays bounded.</summary>
    private const int Most = 12_000;

    /// <summary>While leads are still untouched so many explanations are enough to choose the next reading from; more cost time and save no touch.</summary>
    private const int ToChooseFrom = 2_000;

    private string[]? _roles;

    private Explanations(Harvest harvest)
        : this(harvest.Near(), harvest.Overflow)
    {
    }

    private Explanations(IReadOnlyList<Leaf> leaves, bool overflow)
    {
        (Leaves, Overflow) = (leaves, overflow);
        if (Leaves.Count == 0)
        {
            (Probabilities, LogTotal) = ([], double.NegativeInfinity);
            return;
        }

        var logs = Leaves.Select(leaf => leaf.LogWeight).ToArray();
        LogTotal = Weights.LogSum(logs);
        Probabilities = Array.ConvertAll(logs, log => Math.Exp(log - LogTotal));
        Best = Leaves[Array.IndexOf(logs, logs.Max())];
    }

    /// <summary>The explanations, none when the readings do not go together.</summary>
    public IReadOnlyList<Leaf> Leaves { get; }

    /// <summary>The probability of each.</summary>
    public double[] Probabilities { get; }

    /// <summary>ln of the weight of all.</summary>
    public double LogTotal { get; }

    /// <summary>Whether there were more than could be looked at.</summary>
    public bool Overflow { get; }

    /// <summary>The likeliest.</summary>
    public Leaf? Best { get; }

    public bool Any => Leaves.Count > 0;

    /// <summary>The explanations of some readings.</summary>
    /// <param name="bench">The patterns in question.</param>
    /// <param name="readings">The readings.</param>
    /// <param name="faults">Whether motors with something the matter are looked at too.</param>
    /// <param name="everyLead">Whether leads that no reading touches are laid out too.</param>
    public static Explanations Of(Bench bench, IReadOnlyList<Measured> readings, bool faults, bool everyLead = false) =>
        Of(bench, readings, faults ? bench.Sound.Concat(bench.Faulty) : bench.Sound, everyLead, double.NegativeInfinity, faults || everyLead ? Most : ToChooseFrom);

    /// <summary>The explanations of some readings by some motors.</summary>
    /// <param name="bench">The patterns in question.</param>
    /// <param name="readings">The readings.</param>
    /// <param name="states">The motors that are looked at.</param>
    /// <param name="everyLead">Whether leads that no reading touches are laid out too.</param>
    /// <param name="least">ln of the weight below which an explanation is of no use.</param>
    /// <param name="most">How many explanations are enough.</param>
    public static Explanations Of(Bench bench, IReadOnlyList<Measured> readings, IEnumerable<Search> states, bool everyLead, double least, int most = Most)
    {
        var plan = new SearchPlan(bench.Leads.Count, readings, everyLead);
        var harvest = new Harvest(bench, most, least, []);
        foreach (var state in states)
        {
            state.Run(plan, bench.Terms, harvest);
        }

        return new(harvest);
    }

    /// <summary>These explanations and those with something the matter.</summary>
    /// <param name="bench">The patterns in question.</param>
    /// <param name="readings">The readings that these are of; they touch every lead.</param>
    public Explanations WithFaults(Bench bench, IReadOnlyList<Measured> readings)
    {
        var plan = new SearchPlan(bench.Leads.Count, readings, everyLead: true);
        var harvest = new Harvest(bench, Most, double.NegativeInfinity, Leaves, Any && Best!.Worst < bench.Figures.SoundFits.Value ? -Math.Log(bench.Figures.FaultCounts.Value) : Harvest.Far);
        foreach (var state in bench.Faulty)
        {
            state.Run(plan, bench.Terms, harvest);
        }

        return new(harvest);
    }

    /// <summary>These explanations by sound motors and those by motors in which something is open, as far as they count beside them.</summary>
    /// <param name="bench">The patterns in question.</param>
    /// <param name="readings">The readings that these are of.</param>
    public Explanations WithBreaks(Bench bench, IReadOnlyList<Measured> readings)
    {
        if (Overflow)
        {
            return this;
        }

        var plan = new SearchPlan(bench.Leads.Count, readings, everyLead: false);
        var harvest = new Harvest(bench, ToChooseFrom, double.NegativeInfinity, Leaves, -Math.Log(bench.Figures.BreakCounts.Value));
        foreach (var state in bench.Broken)
        {
            state.Run(plan, bench.Terms, harvest);
        }

        return new(harvest);
    }

    /// <summary>These explanations, each with so much more or less weight.</summary>
    /// <param name="log">ln of what is added to the weight of each.</param>
    public Explanations Weighed(Func<Leaf, double> log) => new([.. Leaves.Select(leaf => leaf with { LogWeight = leaf.LogWeight + log(leaf) })], Overflow) { _roles = Roles };

    /// <summary>The windings that each explanation comes down to.</summary>
    public string[] Roles => _roles ??= [.. Leaves.Select(RoleKeys.Of)];

    /// <summary>The probability of all explanations that come down to these windings.</summary>
    public double ShareOf(string role)
    {
        var sum = 0.0;
        for (var index = 0; index < Roles.Length; index++)
        {
            sum += Roles[index] == role ? Probabilities[index] : 0;
        }

        return sum;
    }

    /// <summary>The probability of all explanations of which something holds.</summary>
    public double Share(Func<Leaf, bool> holds)
    {
        var sum = 0.0;
        for (var index = 0; index < Leaves.Count; index++)
        {
            sum += holds(Leaves[index]) ? Probabilities[index] : 0;
        }

        return sum;
    }

    /// <summary>The layouts that are at least so likely, the likeliest first.</summary>
    /// <param name="least">The least probability.</param>
    public IReadOnlyList<string> Kinds(double least) => [.. Leaves.Zip(Probabilities).GroupBy(one => one.First.Pattern.Layout.Id, one => one.Second, StringComparer.Ordinal)
        .Select(kind => (Id: kind.Key, Share: Math.Round(kind.Sum(), 9))).Where(kind => kind.Share >= least)
        .OrderByDescending(kind => kind.Share).ThenBy(kind => kind.Id, StringComparer.Ordinal).Select(kind => kind.Id)];

    /// <summary>The layouts by how likely they are.</summary>
    public IReadOnlyList<RankedLayout> Ranked()
    {
        var shares = new Dictionary<string, double>(StringComparer.Ordinal);
        for (var index = 0; index < Leaves.Count; index++)
        {
            var id = Leaves[index].Pattern.Layout.Id;
            shares[id] = shares.GetValueOrDefault(id) + Probabilities[index];
        }

        return [.. shares.Where(one => one.Value >= 0.001).Select(one => new RankedLayout(one.Key, Math.Round(one.Value, 4)))
            .OrderByDescending(one => one.Probability).ThenBy(one => one.Id, StringComparer.Ordinal).Take(8)];
    }
}
