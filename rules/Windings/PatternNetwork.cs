using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>A layout's inside as a resistor network in one state, with nodes numbered.</summary>
internal sealed class PatternNetwork
{
    private readonly Dictionary<string, int> _nodes = new(StringComparer.Ordinal);
    private readonly List<int> _tied = [];
    private readonly List<(int From, int To)> _capacitors = [];

    public PatternNetwork(Layout layout, Condition condition)
    {
        var outside = layout.Leads.Select(lead => lead.Node ?? lead.Marking).ToHashSet(StringComparer.Ordinal);
        foreach (var part in layout.Parts)
        {
            Place(part, condition, outside);
        }

        foreach (var coil in layout.Coils.Where(coil => condition.Kind != ConditionKind.OpenCoil || coil.Id != condition.Coil!.Id))
        {
            var shorted = condition.Kind == ConditionKind.ShortedCoil && coil.Id == condition.Coil!.Id;
            Edges.Add(new(Node(coil.From), Node(coil.To), shorted ? coil.Group + Shorted : coil.Group, 1));
        }

        Terminals = [.. layout.Leads.Select(lead => Node(lead.Node ?? lead.Marking))];
        for (var edge = 0; edge < Edges.Count; edge++)
        {
            Edges[edge] = Edges[edge] with { From = Root(Edges[edge].From), To = Root(Edges[edge].To) };
        }

        Terminals = Array.ConvertAll(Terminals, Root);
        Component = Components(Edges.Select(edge => (edge.From, edge.To)));
        Reach = Components(Edges.Select(edge => (edge.From, edge.To)).Concat(_capacitors.Select(pair => (Root(pair.From), Root(pair.To)))));
    }

    /// <summary>Marks the unknown of a coil with shorted turns beside that of its group.</summary>
    public const string Shorted = "~shorted";

    /// <summary>The unknown of a protector that can be measured by itself.</summary>
    public const string Protector = "~protector";

    /// <summary>The node of each terminal.</summary>
    public int[] Terminals { get; }

    /// <summary>The coils, and what else reads ohms.</summary>
    public List<Edge> Edges { get; } = [];

    /// <summary>By node: what hangs together through ohms.</summary>
    public int[] Component { get; }

    /// <summary>By node: what hangs together through ohms or capacitors.</summary>
    public int[] Reach { get; }

    public Link LinkOf(int first, int second) =>
        Component[Terminals[first]] == Component[Terminals[second]] ? Link.Ohms
        : Reach[Terminals[first]] == Reach[Terminals[second]] ? Link.Kick
        : Link.Open;

    /// <summary>The coils on the only path between two nodes of a tree, as counts by unknown.</summary>
    public Dictionary<string, double> Path(int from, int to)
    {
        var sums = new Dictionary<string, double>(StringComparer.Ordinal);
        Walk(from, to, -1, sums);
        return sums;
    }

    /// <summary>The resistance between two nodes with each edge at its own ohms.</summary>
    public double Between(int from, int to, Func<Edge, double> ohms)
    {
        var members = Enumerable.Range(0, Component.Length).Where(node => Root(node) == node && Component[node] == Component[from] && node != to).ToArray();
        var place = members.Select((node, index) => (node, index)).ToDictionary(pair => pair.node, pair => pair.index);
        var matrix = new double[members.Length, members.Length + 1];
        foreach (var edge in Edges.Where(edge => Component[edge.From] == Component[from]))
        {
            Stamp(matrix, place.GetValueOrDefault(edge.From, -1), place.GetValueOrDefault(edge.To, -1), 1 / ohms(edge));
        }

        matrix[place[from], members.Length] = 1;
        return Solve(matrix, members.Length, place[from]);
    }

    private static void Stamp(double[,] matrix, int from, int to, double siemens)
    {
        if (from == to)
        {
            return;
        }

        if (from >= 0)
        {
            matrix[from, from] += siemens;
        }

        if (to >= 0)
        {
            matrix[to, to] += siemens;
        }

        if (from >= 0 && to >= 0)
        {
            matrix[from, to] -= siemens;
            matrix[to, from] -= siemens;
        }
    }

    /// <summary>Gaussian elimination; a conductance matrix of a connected network needs no pivoting.</summary>
    private static double Solve(double[,] matrix, int size, int wanted)
    {
        for (var pivot = 0; pivot < size; pivot++)
        {
            for (var row = 0; row < size; row++)
            {
                var factor = row == pivot ? 0 : matrix[row, pivot] / matrix[pivot, pivot];
                for (var column = pivot; factor != 0 && column <= size; column++)
                {
                    matrix[row, column] -= factor * matrix[pivot, column];
                }
            }
        }

        return matrix[wanted, size] / matrix[wanted, wanted];
    }

    private bool Walk(int at, int to, int cameBy, Dictionary<string, double> sums)
    {
        if (at == to)
        {
            return true;
        }

        for (var index = 0; index < Edges.Count; index++)
        {
            var edge = Edges[index];
            var next = edge.From == at ? edge.To : edge.To == at ? edge.From : -1;
            if (index != cameBy && next >= 0 && Walk(next, to, index, sums))
            {
                sums[edge.Unknown] = sums.GetValueOrDefault(edge.Unknown) + 1;
                return true;
            }
        }

        return false;
    }

    private void Place(LayoutPart part, Condition condition, HashSet<string> outside)
    {
        var (from, to) = (Node(part.From), Node(part.To));
        switch (part.Kind)
        {
            case "start-capacitor" or "run-capacitor" when condition.Blocked:
                _capacitors.Add((from, to));
                break;
            case "switch" when condition.Kind == ConditionKind.SwitchOpen:
            case "protector" when condition.Kind == ConditionKind.ProtectorOpen:
                break;
            case "protector" or "protector-heater" when outside.Contains(part.From) && outside.Contains(part.To):
                Edges.Add(new(from, to, Protector, 1));
                break;
            default:
                _tied[Root(from)] = Root(to);
                break;
        }
    }

    private int Node(string name)
    {
        if (!_nodes.TryGetValue(name, out var node))
        {
            node = _tied.Count;
            _nodes.Add(name, node);
            _tied.Add(node);
        }

        return node;
    }

    private int Root(int node) => _tied[node] == node ? node : Root(_tied[node]);

    private int[] Components(IEnumerable<(int From, int To)> edges)
    {
        var component = Enumerable.Range(0, _tied.Count).Select(Root).ToArray();
        foreach (var (from, to) in edges)
        {
            var (keep, drop) = (component[from], component[to]);
            for (var node = 0; node < component.Length; node++)
            {
                component[node] = component[node] == drop ? keep : component[node];
            }
        }

        return component;
    }

    /// <summary>Something that reads ohms between two nodes.</summary>
    internal sealed record Edge(int From, int To, string Unknown, double Factor);
}
