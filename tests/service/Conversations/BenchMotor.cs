namespace WireCoach.Service.Tests.Conversations;

/// <summary>A capacitor-start motor on a bench as its owner's meter sees it; knows circuit laws and nothing of the rules.</summary>
/// <param name="tags">The tag of each lead, by marking T1 to T5 and T8 (or T1, T4, T5, T8).</param>
/// <param name="runOhms">Ohms of one run half.</param>
/// <param name="startOhms">Ohms of the start winding.</param>
internal sealed class BenchMotor(IReadOnlyDictionary<string, string> tags, double runOhms, double startOhms)
{
    private const double Probes = 0.2;
    private const double Coupling = 0.55;
    private const double TurningCoupling = 0.9;

    private readonly (string From, string To, double Ohms, bool Start)[] _coils = tags.ContainsKey("T2")
        ? [("T1", "T2", runOhms, false), ("T3", "T4", runOhms, false), ("T8", "T5", startOhms, true)]
        : [("T1", "T4", runOhms, false), ("T8", "T5", startOhms, true)];

    private readonly Dictionary<string, string> _markings = tags.ToDictionary(pair => pair.Value, pair => pair.Key, StringComparer.Ordinal);

    /// <summary>The start winding is broken.</summary>
    public bool StartOpen { get; init; }

    /// <summary>Whether the capacitor is bridged for the ohmmeter.</summary>
    public bool Bridged { get; set; }

    public IReadOnlyCollection<string> Tags => _markings.Keys;

    /// <summary>What the meter shows between two leads; <see langword="null"/> is over-range.</summary>
    public double? Ohms(string from, string to, IReadOnlyList<string[]> ties)
    {
        if (from == "frame" || to == "frame")
        {
            return null;
        }

        var coils = _coils.Where(coil => !coil.Start || (Bridged && !StartOpen)).ToList();
        var nodes = _markings.Keys.ToDictionary(tag => tag, tag => ties.FirstOrDefault(tie => tie.Contains(tag))?[0] ?? tag, StringComparer.Ordinal);
        return Resistance(nodes[from], nodes[to], [.. coils.Select(coil => (nodes[tags[coil.From]], nodes[tags[coil.To]], coil.Ohms))]) is { } ohms
            ? Math.Round(ohms + Probes, 1)
            : null;
    }

    /// <summary>Volts between two leads with a low AC voltage on one run half.</summary>
    public double Volts(string[] drive, IReadOnlyList<string[]> ties, string[] read, double applied, bool turning = false)
    {
        // Potentials by walking coils and ties from the driven lead; a coil on the run axis shows the coupled share in the driven direction.
        var (from, to) = (_markings[drive[0]], _markings[drive[1]]);
        var driven = _coils.Single(coil => !coil.Start && ((coil.From == from && coil.To == to) || (coil.From == to && coil.To == from)));
        var sign = driven.From == from ? 1 : -1;
        var potentials = new Dictionary<string, double>(StringComparer.Ordinal) { [drive[0]] = 0 };
        for (var round = 0; round < 12; round++)
        {
            foreach (var coil in _coils)
            {
                var drop = coil.Start ? 0 : sign * applied * (coil == driven ? 1 : turning ? TurningCoupling : Coupling);
                Spread(potentials, tags[coil.From], tags[coil.To], -drop);
            }

            foreach (var tie in ties)
            {
                for (var at = 1; at < tie.Length; at++)
                {
                    Spread(potentials, tie[0], tie[at], 0);
                }
            }
        }

        return potentials.TryGetValue(read[0], out var first) && potentials.TryGetValue(read[1], out var second) ? Math.Abs(first - second) : 0;
    }

    /// <summary>Whether the start winding pushes the same way as the run winding with these joints on the lines, and what each run half sees.</summary>
    public (double[] HalfShares, double StartShare, bool Forward) Connected(IReadOnlyList<(string[] Leads, string? Line)> joints)
    {
        var nodes = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (leads, line) in joints)
        {
            foreach (var lead in leads)
            {
                nodes.Add(lead, line ?? leads[0]);
            }
        }

        // The run halves have equal impedance: solve their divider with the start branch left out, as at speed.
        var runs = _coils.Where(coil => !coil.Start).Select(coil => (From: nodes[tags[coil.From]], To: nodes[tags[coil.To]])).ToList();
        var potential = new Dictionary<string, double>(StringComparer.Ordinal) { ["L1"] = 1, ["L2"] = 0 };
        foreach (var middle in runs.SelectMany(run => new[] { run.From, run.To }).Where(node => node is not ("L1" or "L2")).Distinct())
        {
            potential[middle] = 0.5;
        }

        var start = _coils.Single(coil => coil.Start);
        var startVolts = potential[nodes[tags[start.From]]] - potential[nodes[tags[start.To]]];
        var halves = runs.Select(run => potential[run.From] - potential[run.To]).ToArray();
        return (halves, startVolts, startVolts * halves[0] > 0);
    }

    private static void Spread(Dictionary<string, double> potentials, string from, string to, double rise)
    {
        if (potentials.TryGetValue(from, out var known))
        {
            _ = potentials.TryAdd(to, known + rise);
        }
        else if (potentials.TryGetValue(to, out var other))
        {
            potentials.Add(from, other - rise);
        }
    }

    /// <summary>Series and parallel by elimination of every node but the two that are read (star to mesh).</summary>
    private static double? Resistance(string from, string to, List<(string A, string B, double Ohms)> edges)
    {
        if (from == to)
        {
            return 0;
        }

        while (edges.SelectMany(edge => new[] { edge.A, edge.B }).FirstOrDefault(node => node != from && node != to) is { } inner)
        {
            var star = edges.Where(edge => edge.A != edge.B && (edge.A == inner || edge.B == inner)).Select(edge => (End: edge.A == inner ? edge.B : edge.A, Siemens: 1 / edge.Ohms)).ToList();
            edges.RemoveAll(edge => edge.A == inner || edge.B == inner);
            var sum = star.Sum(arm => arm.Siemens);
            for (var first = 0; first < star.Count; first++)
            {
                for (var second = first + 1; second < star.Count; second++)
                {
                    edges.Add((star[first].End, star[second].End, sum / (star[first].Siemens * star[second].Siemens)));
                }
            }
        }

        var between = edges.Where(edge => edge.A != edge.B).Sum(edge => 1 / edge.Ohms);
        return between == 0 ? null : 1 / between;
    }
}
