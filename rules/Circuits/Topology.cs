using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Circuits;

/// <summary>Numbers the nodes, and finds what no figures could mend: loops without resistance, and parts that float.</summary>
internal sealed class Topology
{
    private Topology(Dictionary<string, int> nodes, bool[] isZero) => (Nodes, IsZero) = (nodes, isZero);

    /// <summary>The number of each node.</summary>
    public Dictionary<string, int> Nodes { get; }

    /// <summary>Whether a node's volts are zero by choice: the ground node, and one node of each island.</summary>
    public bool[] IsZero { get; }

    /// <summary>Why the network has no single answer.</summary>
    public Problem? Problem { get; private init; }

    public static Topology Of(Network network)
    {
        var nodes = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var element in network.Elements)
        {
            nodes.TryAdd(element.From, nodes.Count);
            nodes.TryAdd(element.To, nodes.Count);
        }

        if (!nodes.ContainsKey(network.Ground))
        {
            return Refused("ground", Statement.Of("circuits.ground-in-no-element", ("ground", network.Ground)));
        }

        return Loop(network, nodes) ?? Islands(network, nodes);
    }

    /// <summary>A loop of parts that fix volts or have no resistance leaves the current round it undetermined, or without limit.</summary>
    private static Topology? Loop(Network network, Dictionary<string, int> nodes)
    {
        var stiff = new Groups(nodes.Count);
        for (var index = 0; index < network.Elements.Count; index++)
        {
            var element = network.Elements[index];
            if (IsStiff(element, network.Hertz) && !stiff.Tie(nodes[element.From], nodes[element.To]))
            {
                return Refused($"elements[{index}]", Statement.Of("circuits.loop-without-resistance", ("element", element.Id)));
            }
        }

        return null;
    }

    private static Topology Islands(Network network, Dictionary<string, int> nodes)
    {
        var islands = new Groups(nodes.Count);
        foreach (var element in network.Elements.Where(element => Conducts(element, network.Hertz)))
        {
            islands.Tie(nodes[element.From], nodes[element.To]);
        }

        var isZero = new bool[nodes.Count];
        var ground = islands.Root(nodes[network.Ground]);
        isZero[nodes[network.Ground]] = true;
        var floating = new List<string>();
        foreach (var (name, node) in nodes)
        {
            if (islands.Root(node) != ground)
            {
                floating.Add(name);
                isZero[node] = islands.Root(node) == node;
            }
        }

        return floating.Count == 0 || network.IslandsAllowed
            ? new Topology(nodes, isZero)
            : Refused("ground", Statement.Of("circuits.floating", ("nodes", string.Join(", ", floating.Order(StringComparer.Ordinal)))));
    }

    private static bool IsStiff(Element element, double hertz) => element switch
    {
        Element.Source => true,
        Element.Switch { Closed: true } => true,
        Element.Resistor { Ohms: 0 } => true,
        Element.Inductor { Ohms: 0 } => hertz == 0,
        _ => false,
    };

    private static bool Conducts(Element element, double hertz) => element switch
    {
        Element.Switch contact => contact.Closed,
        Element.Capacitor => hertz > 0,
        Element.Resistor resistor => resistor.Ohms is not null,
        _ => true,
    };

    private static Topology Refused(string field, Statement why) =>
        new([], []) { Problem = new Problem("impossible-network", field, why) };

    /// <summary>Groups of node numbers; the root of a group is its lowest number.</summary>
    private sealed class Groups(int size)
    {
        private readonly int[] _root = [.. Enumerable.Range(0, size)];

        public int Root(int node)
        {
            while (_root[node] != node)
            {
                node = _root[node] = _root[_root[node]];
            }

            return node;
        }

        public bool Tie(int one, int other)
        {
            var (first, second) = (Root(one), Root(other));
            _root[Math.Max(first, second)] = Math.Min(first, second);
            return first != second;
        }
    }
}
