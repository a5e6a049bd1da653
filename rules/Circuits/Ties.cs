namespace WireCoach.Rules.Circuits;

/// <summary>Which nodes are tied together, and in how many groups they fall; groups are numbered in the order in which their first node was added.</summary>
internal sealed class Ties
{
    private readonly Dictionary<string, int> _index = new(StringComparer.Ordinal);
    private readonly List<int> _root = [];
    private int[]? _groups;

    /// <summary>All nodes, in the order in which they were added.</summary>
    public IEnumerable<string> Nodes => _index.Keys;

    /// <summary>How many groups there are.</summary>
    public int Groups => Numbered().Length == 0 ? 0 : Numbered().Max() + 1;

    /// <summary>The number of a node's group, from zero.</summary>
    public int GroupOf(string node) => Numbered()[_index[node]];

    /// <summary>Whether the node was added.</summary>
    public bool Knows(string node) => _index.ContainsKey(node);

    /// <summary>Adds a node where it is new.</summary>
    public int Add(string node)
    {
        if (_index.TryGetValue(node, out var known))
        {
            return known;
        }

        _groups = null;
        _index.Add(node, _root.Count);
        _root.Add(_root.Count);
        return _root.Count - 1;
    }

    /// <summary>Ties two nodes.</summary>
    public void Tie(string one, string other)
    {
        var (first, second) = (Root(Add(one)), Root(Add(other)));
        if (first != second)
        {
            _groups = null;
            _root[Math.Max(first, second)] = Math.Min(first, second);
        }
    }

    /// <summary>Ties all nodes of a joint.</summary>
    public void TieAll(IReadOnlyList<string> joint)
    {
        foreach (var node in joint)
        {
            Tie(joint[0], node);
        }
    }

    /// <summary>Whether two nodes are tied together.</summary>
    public bool Together(string one, string other) =>
        string.Equals(one, other, StringComparison.Ordinal)
        || (_index.TryGetValue(one, out var first) && _index.TryGetValue(other, out var second) && Root(first) == Root(second));

    private int[] Numbered()
    {
        if (_groups is null)
        {
            var numbers = new Dictionary<int, int>();
            _groups = new int[_root.Count];
            for (var node = 0; node < _groups.Length; node++)
            {
                var root = Root(node);
                if (!numbers.TryGetValue(root, out var number))
                {
                    numbers.Add(root, number = numbers.Count);
                }

                _groups[node] = number;
            }
        }

        return _groups;
    }

    private int Root(int node)
    {
        while (_root[node] != node)
        {
            _root[node] = _root[_root[node]];
            node = _root[node];
        }

        return node;
    }
}
