using WireCoach.Rules.Connections;

namespace WireCoach.WebUi.Diagrams;

/// <summary>Where everything of a circuit goes: nodes are rails one below the other, strands are columns between them.</summary>
internal sealed class Ladder
{
    private const int MostForTrying = 7;

    private readonly PlanCircuit _circuit;

    public Ladder(PlanCircuit circuit)
    {
        _circuit = circuit;
        var strands = Strand.Of(circuit);
        var nodes = circuit.Nodes.Where(node => strands.Any(strand => strand.Top == node.Id || strand.Bottom == node.Id)).ToList();
        Rows = RowsOf(nodes, strands);
        Strands = [.. strands.Select(strand => Rows[strand.Top] <= Rows[strand.Bottom] ? strand : strand.Turned())];
        Columns = Ordered(Stacked(Strands));
    }

    /// <summary>The row of each node, counted from the top; all capped leads share one.</summary>
    public IReadOnlyDictionary<string, int> Rows { get; }

    public IReadOnlyList<Strand> Strands { get; }

    /// <summary>The column of each strand, in the order of <see cref="Strands"/>.</summary>
    public IReadOnlyList<int> Columns { get; }

    public int ColumnCount => Columns.Count == 0 ? 0 : Columns.Max() + 1;

    public int RowCount => Rows.Count == 0 ? 0 : Rows.Values.Max() + 1;

    /// <summary>The leftmost and the rightmost column that a node's rail reaches; a line conductor comes in from the left.</summary>
    public (int First, int Last) Reach(string node) => Reach(node, Columns);

    /// <summary>Whether a strand passes a rail without touching it.</summary>
    public bool Crosses(int strand, string node) => Crosses(strand, node, Columns);

    private (int First, int Last) Reach(string node, IReadOnlyList<int> columns)
    {
        var touching = Enumerable.Range(0, Strands.Count).Where(at => Strands[at].Top == node || Strands[at].Bottom == node).Select(at => columns[at]).ToList();
        var line = _circuit.Nodes.First(one => one.Id == node).Conductor is not null;
        return (line ? -1 : touching.Min(), touching.Max());
    }

    private bool Crosses(int strand, string node, IReadOnlyList<int> columns)
    {
        var (first, last) = Reach(node, columns);
        var row = Rows[node];
        return !IsCapped(node) && Rows[Strands[strand].Top] < row && row < Rows[Strands[strand].Bottom] && columns[strand] >= first && columns[strand] <= last;
    }

    private bool IsCapped(string node) => _circuit.Nodes.First(one => one.Id == node).Kind == "capped";

    /// <summary>L1 on top and the return at the bottom where there are two lines; three lines on top; what lies between in the order of its way from the upper lines.</summary>
    private static Dictionary<string, int> RowsOf(List<PlanNode> nodes, IReadOnlyList<Strand> strands)
    {
        var lines = nodes.Where(node => node.Conductor is not null).ToList();
        var last = lines.Count == 2 ? lines[1] : null;
        var tops = lines.Where(line => line != last).Select(line => line.Id).DefaultIfEmpty(nodes[0].Id).ToList();
        var order = lines.Where(line => line != last)
            .Concat(nodes.Where(node => node is { Conductor: null, Kind: not "capped" })
                .OrderBy(node => tops.Min(top => Steps(strands, top, node.Id)) - (last is null ? 0 : Steps(strands, last.Id, node.Id))).ThenBy(node => node.Kind == "inside"))
            .Select(node => node.Id).ToList();
        var rows = order.Select((node, row) => (node, row)).ToDictionary(one => one.node, one => one.row, StringComparer.Ordinal);
        var capped = nodes.Where(node => node.Kind == "capped").ToList();
        foreach (var node in capped)
        {
            rows[node.Id] = order.Count;
        }

        if (last is not null)
        {
            rows[last.Id] = order.Count + (capped.Count > 0 ? 1 : 0);
        }

        return rows;
    }

    private static int Steps(IReadOnlyList<Strand> strands, string from, string to)
    {
        var reached = new Dictionary<string, int>(StringComparer.Ordinal) { [from] = 0 };
        for (var step = 0; step <= strands.Count && !reached.ContainsKey(to); step++)
        {
            foreach (var strand in strands)
            {
                Extend(reached, strand.Top, strand.Bottom, step);
                Extend(reached, strand.Bottom, strand.Top, step);
            }
        }

        return reached.GetValueOrDefault(to, strands.Count);
    }

    private static void Extend(Dictionary<string, int> reached, string from, string to, int step)
    {
        if (reached.TryGetValue(from, out var steps) && steps == step)
        {
            _ = reached.TryAdd(to, step + 1);
        }
    }

    /// <summary>A strand that goes on where another ends shares its column.</summary>
    private int[] Stacked(IReadOnlyList<Strand> strands)
    {
        var columns = new int[strands.Count];
        var ends = new List<string>();
        foreach (var at in Enumerable.Range(0, strands.Count).OrderBy(at => Rows[strands[at].Top]).ThenBy(at => at))
        {
            var column = IsCapped(strands[at].Top) ? -1 : ends.IndexOf(strands[at].Top);
            if (column < 0)
            {
                column = ends.Count;
                ends.Add(string.Empty);
            }

            ends[column] = strands[at].Bottom;
            columns[at] = column;
        }

        return columns;
    }

    /// <summary>The order of columns with the fewest crossings, then the shortest rails; the first such order.</summary>
    private int[] Ordered(int[] stacked)
    {
        var count = stacked.Length == 0 ? 0 : stacked.Max() + 1;
        if (count > MostForTrying)
        {
            return stacked;
        }

        var rails = RailTouches();
        var best = stacked;
        var least = Cost(stacked, rails);
        foreach (var order in Orders([.. Enumerable.Range(0, count)], 0))
        {
            int[] columns = [.. stacked.Select(column => order[column])];
            var cost = Cost(columns, rails);
            if (cost < least)
            {
                (best, least) = (columns, cost);
            }
        }

        return best;
    }

    /// <summary>A hundred for each crossing, one for each column that a rail spans.</summary>
    private static int Cost(int[] columns, IReadOnlyList<RailTouch> rails)
    {
        var cost = 0;
        foreach (var rail in rails)
        {
            var (first, last) = (rail.Line ? -1 : int.MaxValue, -1);
            foreach (var strand in rail.Touching)
            {
                first = Math.Min(first, columns[strand]);
                last = Math.Max(last, columns[strand]);
            }

            cost += last - first;
            foreach (var strand in rail.Passing)
            {
                cost += columns[strand] >= first && columns[strand] <= last ? 100 : 0;
            }
        }

        return cost;
    }

    /// <summary>The strands that end at a rail and those that pass its row.</summary>
    private List<RailTouch> RailTouches() => [.. Rows.Keys.Where(node => !IsCapped(node)).Select(node => new RailTouch(
        _circuit.Nodes.First(one => one.Id == node).Conductor is not null,
        [.. Enumerable.Range(0, Strands.Count).Where(at => Strands[at].Top == node || Strands[at].Bottom == node)],
        [.. Enumerable.Range(0, Strands.Count).Where(at => Rows[Strands[at].Top] < Rows[node] && Rows[node] < Rows[Strands[at].Bottom])]))];

    private sealed record RailTouch(bool Line, int[] Touching, int[] Passing);

    private static IEnumerable<int[]> Orders(int[] order, int at)
    {
        if (at >= order.Length - 1)
        {
            yield return order;
            yield break;
        }

        for (var other = at; other < order.Length; other++)
        {
            int[] next = [.. order];
            (next[at], next[other]) = (order[other], order[at]);
            foreach (var rest in Orders(next, at + 1))
            {
                yield return rest;
            }
        }
    }
}
