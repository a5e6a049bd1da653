using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>What each pair of terminals reads, as sums of a few unknown resistances.</summary>
/// <remarks>
/// The ohms of coils are not known beforehand, only that coils of one group are alike and how groups stand to each other. In a tree a
/// reading is a plain sum. In a ring of like coils it is a fixed multiple of one coil. Where unlike coils lie side by side the ratio is
/// taken from the middle of its range, and where only two leads come out the whole counts as one unknown.
/// </remarks>
internal sealed class FormulaBook(Layout layout, IdentificationFigures figures, PatternNetwork network, Condition condition, double leastOhms, double mostOhms)
{
    private const double WholeTail = 0.05;

    /// <summary>A protector beside coils of which only the whole can be seen: next to nothing.</summary>
    private const double ProtectorShare = 0.02;

    private readonly Dictionary<int, KnownRatio> _wholes = [];
    private readonly List<string> _unknowns = [];
    private readonly List<Dictionary<int, double>> _formulas = [];
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);

    /// <summary>The index of the formula of a pair.</summary>
    public int Of(int first, int second)
    {
        var (from, to) = (network.Terminals[Math.Min(first, second)], network.Terminals[Math.Max(first, second)]);
        var sums = Sums(from, to);
        var key = string.Join('+', sums.Select(one => $"{_unknowns[one.Key]}*{one.Value:R}").Order(StringComparer.Ordinal));
        if (!_ids.TryGetValue(key, out var id))
        {
            id = _formulas.Count;
            _ids.Add(key, id);
            _formulas.Add(sums);
        }

        return id;
    }

    public string[] Names() => [.. _ids.OrderBy(one => one.Value).Select(one => one.Key)];

    public double[][] Rows() => [.. _formulas.Select(sums => Enumerable.Range(0, _unknowns.Count).Select(unknown => sums.GetValueOrDefault(unknown)).ToArray())];

    public Unknown[] Unknowns() => [.. _unknowns.Select((name, at) => Of(name) with { LnMost = LnMost(name, at) })];

    public KnownRatio[] Ratios()
    {
        var ratios = new List<KnownRatio>();
        foreach (var ratio in layout.Ratios)
        {
            var (of, to) = (_unknowns.IndexOf(ratio.Of), _unknowns.IndexOf(ratio.To));
            if (of >= 0 && to >= 0)
            {
                ratios.Add(new(of, to, Math.Log(ratio.Low), Math.Log(ratio.High), figures.RatioTail.Value));
            }
        }

        for (var unknown = 0; unknown < _unknowns.Count; unknown++)
        {
            var healthy = _unknowns[unknown].EndsWith(PatternNetwork.Shorted, StringComparison.Ordinal)
                ? _unknowns.IndexOf(_unknowns[unknown][..^PatternNetwork.Shorted.Length])
                : -1;
            if (healthy >= 0)
            {
                ratios.Add(new(unknown, healthy, Math.Log(figures.ShortedLeft.Low), Math.Log(figures.ShortedLeft.High), figures.ShortedTail.Value));
            }
        }

        return [.. ratios, .. _wholes.Values];
    }

    private Unknown Of(string name)
    {
        var group = name.Split('~')[0];
        if (name == PatternNetwork.Protector)
        {
            return new(name, Math.Log(figures.ProtectorOhms.Low), Math.Log(figures.ProtectorOhms.High), figures.RatioTail.Value);
        }

        return Window(group) is { } usual && group == name
            ? new(name, Math.Log(usual.Low), Math.Log(usual.High), 2 * figures.RatioTail.Value)
            : new(name, Math.Log(leastOhms), Math.Log(mostOhms), figures.RatioTail.Value);
    }

    private double LnMost(string name, int at)
    {
        if (_wholes.GetValueOrDefault(at) is { } whole)
        {
            return whole.LnHigh + LnMost(_unknowns[whole.To], whole.To);
        }

        var group = name.Split('~')[0];
        return name == PatternNetwork.Protector ? Math.Log(figures.ProtectorOhms.High)
            : Window(group) is { } own ? Math.Log(own.High)
            : layout.Ratios.FirstOrDefault(ratio => ratio.Of == group && Window(ratio.To) is not null) is { } above ? Math.Log(above.High * Window(above.To)!.High)
            : layout.Ratios.FirstOrDefault(ratio => ratio.To == group && Window(ratio.Of) is not null) is { } below ? Math.Log(Window(below.Of)!.High / below.Low)
            : Math.Log(mostOhms);
    }

    private OhmsWindow? Window(string group) => layout.Ohms.FirstOrDefault(window => window.Of == group);

    private Dictionary<int, double> Sums(int from, int to)
    {
        if (from == to)
        {
            return [];
        }

        var edges = network.Edges.Where(edge => network.Component[edge.From] == network.Component[from]).ToList();
        var nodes = edges.SelectMany(edge => new[] { edge.From, edge.To }).Distinct().Count();
        var leads = network.Terminals.Where(node => network.Component[node] == network.Component[from]).Distinct().Count();
        var names = Names(edges);
        if (leads == 2 && Names(Between(edges, from, to)) is { Count: > 1 } inside)
        {
            return new() { [Whole(from, to, inside)] = 1 };
        }

        if (edges.Count == nodes - 1)
        {
            return network.Path(from, to).ToDictionary(one => Index(one.Key), one => one.Value);
        }

        var unit = Unit(names);
        return new() { [Index(unit)] = Math.Round(network.Between(from, to, edge => Share(edge.Unknown, unit, Middle)), 9) };
    }

    private static List<string> Names(IEnumerable<PatternNetwork.Edge> edges) => [.. edges.Select(edge => edge.Unknown).Distinct(StringComparer.Ordinal)];

    /// <summary>What lies on a way from one node to the other; coils that end in the air do not.</summary>
    private static List<PatternNetwork.Edge> Between(List<PatternNetwork.Edge> edges, int from, int to)
    {
        var left = edges;
        for (var before = 0; left.Count != before;)
        {
            before = left.Count;
            var ends = left.SelectMany(edge => new[] { edge.From, edge.To }).CountBy(node => node).Where(node => node.Value == 1 && node.Key != from && node.Key != to).Select(node => node.Key).ToHashSet();
            left = left.FindAll(edge => !ends.Contains(edge.From) && !ends.Contains(edge.To));
        }

        return left;
    }

    /// <summary>All that lies between the only two leads of a group, as one unknown that stands to a plain coil as the ratios allow.</summary>
    private int Whole(int from, int to, List<string> names)
    {
        var unit = Unit(names);
        var whole = Index("whole~" + string.Join('~', names));
        if (!_wholes.ContainsKey(whole))
        {
            var low = network.Between(from, to, edge => Share(edge.Unknown, unit, range => range.Low));
            var high = network.Between(from, to, edge => Share(edge.Unknown, unit, range => range.High));
            _wholes.Add(whole, new(whole, Index(unit), Math.Log(Math.Min(low, high)), Math.Log(Math.Max(low, high)), WholeTail));
        }

        return whole;
    }

    /// <summary>The group in whose ohms others are counted: the one that others are compared with.</summary>
    private string Unit(List<string> names)
    {
        var plain = names.Select(name => name.Split('~')[0]).Where(name => name.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        return plain.Find(name => layout.Ratios.Any(ratio => ratio.To == name)) ?? plain[0];
    }

    private static double Middle((double Low, double High) range) => Math.Sqrt(range.Low * range.High);

    /// <summary>A coil's ohms in units of another group's, from somewhere in the known range.</summary>
    private double Share(string name, string unit, Func<(double Low, double High), double> pick)
    {
        if (name.EndsWith(PatternNetwork.Shorted, StringComparison.Ordinal))
        {
            var left = condition.Factor < 1 ? condition.Factor : pick((figures.ShortedLeft.Low, figures.ShortedLeft.High));
            return left * Share(name[..^PatternNetwork.Shorted.Length], unit, pick);
        }

        return name == unit ? 1
            : name == PatternNetwork.Protector ? ProtectorShare
            : layout.Ratios.FirstOrDefault(ratio => ratio.Of == name && ratio.To == unit) is { } above ? pick((above.Low, above.High))
            : layout.Ratios.FirstOrDefault(ratio => ratio.Of == unit && ratio.To == name) is { } below ? 1 / pick((below.Low, below.High))
            : 1;
    }

    private int Index(string name)
    {
        var at = _unknowns.IndexOf(name);
        if (at < 0)
        {
            at = _unknowns.Count;
            _unknowns.Add(name);
        }

        return at;
    }
}
