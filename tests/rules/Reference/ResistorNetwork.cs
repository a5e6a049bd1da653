using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Reference;

/// <summary>Ohms between two joints by elimination, for coils of one ohm; a capacitor in the way blocks.</summary>
internal static class ResistorNetwork
{
    public static double Ohms(Layout layout, IReadOnlyDictionary<string, string> joints, string from, string to)
    {
        var nodes = new List<string> { from, to };
        var edges = new List<(int, int)>();
        int Node(string name)
        {
            var joint = joints.GetValueOrDefault(name, name);
            var at = nodes.IndexOf(joint);
            if (at < 0)
            {
                nodes.Add(joint);
                at = nodes.Count - 1;
            }

            return at;
        }

        edges.AddRange(layout.Coils.Select(coil => (Node(coil.From), Node(coil.To))));
        var size = nodes.Count;
        var rows = new double[size, size + 1];
        foreach (var (a, b) in edges)
        {
            rows[a, a]++;
            rows[b, b]++;
            rows[a, b]--;
            rows[b, a]--;
        }

        for (var node = 0; node < size; node++)
        {
            rows[node, node] += 1e-9; // keeps what hangs loose from making the matrix singular
        }

        rows[0, size] = 1;
        rows[1, size] = -1;
        for (var pivot = 0; pivot < size; pivot++)
        {
            for (var row = 0; row < size; row++)
            {
                if (row == pivot)
                {
                    continue;
                }

                var factor = rows[row, pivot] / rows[pivot, pivot];
                for (var column = pivot; column <= size; column++)
                {
                    rows[row, column] -= factor * rows[pivot, column];
                }
            }
        }

        return (rows[0, size] / rows[0, 0]) - (rows[1, size] / rows[1, 1]);
    }
}
