using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;

namespace WireCoach.Simulation;

/// <summary>A motor on the bench for studies: its own resistor network, hidden leads, a meter with its errors. Its circuit shares nothing with the rules.</summary>
internal sealed class SimulatedMotor
{
    private readonly List<(string From, string To, double? Ohms)> _edges = [];
    private readonly List<(string From, string To)> _capacitors = [];
    private readonly Dictionary<string, string> _nodeOf = new(StringComparer.Ordinal);

    /// <summary>The kind, by the contract's layout id.</summary>
    public required string Layout { get; init; }

    /// <summary>What is printed on its capacitor: <c>start</c>, <c>run</c>, <c>both</c> for one of each, or <c>none</c>.</summary>
    public string CapacitorUse { get; set; } = "none";

    /// <summary>What a look at it would tell.</summary>
    public Looks Looks { get; set; } = new();

    /// <summary>The tags in the order in which the person named them.</summary>
    public List<string> Tags { get; } = [];

    /// <summary>What is really the matter; empty for a sound motor.</summary>
    public string Fault { get; set; } = string.Empty;

    /// <summary>The true windings: role and tags.</summary>
    public List<(string Role, string[] Tags)> Windings { get; } = [];

    /// <summary>The coils that carry a field, as nodes and electrical degrees, those that are open left out.</summary>
    public List<(string From, string To, int Degrees)> Fields { get; } = [];

    /// <summary>Ohms of the cage, which set how strongly coils couple at rest.</summary>
    public double RotorOhms { get; set; }

    /// <summary>How strongly halves on poles of their own still couple; <see langword="null"/> for halves in the same slots.</summary>
    public double? Stray { get; set; }

    /// <summary>What a test between two windings shows: volts, or a kick.</summary>
    public (double? Volts, string? Outcome) Test(string test, TestSetup setup)
    {
        var coils = new CoupledCoils(Fields, RotorOhms, ownPoles: Stray is not null, stray: Stray ?? 0);
        var inside = new TestSetup([.. setup.Drive.Select(NodeOf)], [], [.. setup.Read.Select(NodeOf)], setup.AppliedVolts);
        return test == "battery-flick" ? (null, coils.Flick(inside)) : (coils.Volts(inside), null);
    }

    public void Coil(string from, string to, double? ohms) => _edges.Add((from, to, ohms));

    public void Capacitor(string from, string to) => _capacitors.Add((from, to));

    /// <summary>Puts a wire across every capacitor.</summary>
    public void BridgeCapacitors()
    {
        _edges.AddRange(_capacitors.Select(capacitor => (capacitor.From, capacitor.To, (double?)1e-6)));
        _capacitors.Clear();
    }

    public void Lead(string tag, string node) => _nodeOf.Add(tag, node);

    public string NodeOf(string tag) => _nodeOf[tag];

    public bool HasNode(string node) => _nodeOf.ContainsValue(node);

    public string TagOf(string node) => _nodeOf.First(pair => pair.Value == node).Key;

    /// <summary>What a perfect meter shows: ohms, or nothing; and whether it kicks.</summary>
    public (double? Ohms, bool Kick) Read(string first, string second)
    {
        var (from, to) = (_nodeOf.GetValueOrDefault(first, first), _nodeOf.GetValueOrDefault(second, second));
        var nodes = Reach(from, withCapacitors: false);
        if (!nodes.Contains(to))
        {
            return (null, Reach(from, withCapacitors: true).Contains(to));
        }

        // Relax node voltages with one ampere in at one lead and out at the other.
        var others = nodes.Where(node => node != to).ToList();
        var size = others.Count;
        var rows = new double[size, size + 1];
        foreach (var (a, b, ohms) in _edges)
        {
            if (ohms is not { } r || !nodes.Contains(a) || a == b)
            {
                continue;
            }

            var (i, j) = (others.IndexOf(a), others.IndexOf(b));
            if (i >= 0)
            {
                rows[i, i] += 1 / r;
            }

            if (j >= 0)
            {
                rows[j, j] += 1 / r;
            }

            if (i >= 0 && j >= 0)
            {
                rows[i, j] -= 1 / r;
                rows[j, i] -= 1 / r;
            }
        }

        rows[others.IndexOf(from), size] = 1;
        for (var k = 0; k < size; k++)
        {
            for (var i = k + 1; i < size; i++)
            {
                var f = rows[i, k] / rows[k, k];
                for (var j = k; j <= size; j++)
                {
                    rows[i, j] -= f * rows[k, j];
                }
            }
        }

        var volts = new double[size];
        for (var i = size - 1; i >= 0; i--)
        {
            var sum = rows[i, size];
            for (var j = i + 1; j < size; j++)
            {
                sum -= rows[i, j] * volts[j];
            }

            volts[i] = sum / rows[i, i];
        }

        return (volts[others.IndexOf(from)], false);
    }

    private HashSet<string> Reach(string from, bool withCapacitors)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { from };
        for (var grew = true; grew;)
        {
            grew = false;
            foreach (var (a, b) in _edges.Where(edge => edge.Ohms is not null).Select(edge => (edge.From, edge.To)).Concat(withCapacitors ? _capacitors : []))
            {
                grew |= (seen.Contains(a) && seen.Add(b)) || (seen.Contains(b) && seen.Add(a));
            }
        }

        return seen;
    }
}

/// <summary>A meter with its errors: percent, counts of a tenth of an ohm, test leads.</summary>
internal sealed class SimulatedMeter(Random chance, double percent, double counts, double leadOhms, double resolution = 0.1)
{
    public double Percent => percent;

    public double Counts => counts;

    public double LeadOhms => leadOhms;

    public double Show(double ohms)
    {
        if (percent == 0 && counts == 0)
        {
            return ohms + leadOhms;
        }

        var seen = (ohms + leadOhms) * (1 + (percent / 100 * Between(-1, 1))) + (counts * resolution * Between(-1, 1));
        return Math.Max(0, Math.Round(seen / resolution) * resolution);
    }

    private double Between(double low, double high) => low + ((high - low) * chance.NextDouble());
}
