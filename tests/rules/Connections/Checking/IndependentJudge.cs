namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>
/// Judges a connection on its own: exact nodal analysis with fractions, then the fields of all coils are added up. It shares no code with the
/// checker and asks another question: do all coils work at their volts, and do their fields add to the greatest sum that they can have?
/// </summary>
internal static class IndependentJudge
{
    /// <summary>Whether the connection is right.</summary>
    /// <param name="motor">The motor.</param>
    /// <param name="net">The net of each name; the lines have nets of their own names.</param>
    public static bool IsRight(BenchMotor motor, IReadOnlyDictionary<string, int> net)
    {
        var lines = motor.ThreePhase ? new[] { "L1", "L2", "L3" } : ["L1", "L2"];
        if (lines.Select(line => net[line]).Distinct().Count() < lines.Length)
        {
            return false;
        }

        Turned[] held = motor.ThreePhase ? [Turned.One, Turned.W2, Turned.W] : [Turned.One, Turned.Zero];
        var potential = Potentials(motor, net, lines.Select((line, index) => (net[line], held[index])).ToDictionary());
        Turned? Volts(BenchCoil coil) => potential.TryGetValue(net[coil.From], out var from) && potential.TryGetValue(net[coil.To], out var to) ? from - to : null;
        var run = motor.Coils.Where(coil => !coil.Start).ToList();
        var start = motor.Coils.Where(coil => coil.Start).ToList();
        return motor.ThreePhase
            ? run.All(coil => Volts(coil)?.Square == motor.RatedSquare) && IsOneField(run, coil => Volts(coil)!.Value)
            : run.All(coil => Volts(coil)?.Square == motor.RatedSquare) && run.Select(Volts).Distinct().Count() == 1
                && StartIsRight(motor, net, start, potential);
    }

    private static bool StartIsRight(BenchMotor motor, IReadOnlyDictionary<string, int> net, List<BenchCoil> start, Dictionary<int, Turned> potential)
    {
        if (start.Count == 1)
        {
            return potential.TryGetValue(net[start[0].From], out var from) && potential.TryGetValue(net[start[0].To], out var to) && (from - to).Square == motor.StartSquare;
        }

        // Two start halves: side by side on the same two nets with like ends together, or in one string whose inner point touches nothing else.
        var (one, other) = (start[0], start[1]);
        if (net[one.From] == net[other.From] && net[one.To] == net[other.To])
        {
            return potential.TryGetValue(net[one.From], out var a) && potential.TryGetValue(net[one.To], out var b) && (a - b).Square == motor.StartSquare;
        }

        var (head, middle, tail) = net[one.To] == net[other.From] ? (one.From, one.To, other.To) : (other.From, other.To, one.To);
        return net[one.To] == net[other.From] != (net[other.To] == net[one.From]) && net.Count(name => name.Value == net[middle]) == 2
            && potential.TryGetValue(net[head], out var high) && potential.TryGetValue(net[tail], out var low) && (high - low).Square == 4 * motor.StartSquare;
    }

    /// <summary>The coils' fields, each turned by its axis, add up to the sum of their sizes forward and to nothing backward, or the reverse.</summary>
    private static bool IsOneField(List<BenchCoil> coils, Func<BenchCoil, Turned> volts)
    {
        Turned Sum(Func<int, Turned> turn) => coils.Aggregate(Turned.Zero, (sum, coil) => sum + (volts(coil) * turn(coil.Axis)));
        var (forward, backward) = (Sum(Axis), Sum(axis => Axis((3 - axis) % 3)));
        var whole = coils.Count * coils.Count * volts(coils[0]).Square;
        return (forward.Square == whole && backward == Turned.Zero) || (backward.Square == whole && forward == Turned.Zero);
    }

    private static Turned Axis(int axis) => axis switch { 0 => Turned.One, 1 => Turned.W, _ => Turned.W2 };

    /// <summary>Potentials of all nets that the lines reach through run coils, by elimination; run coils are alike.</summary>
    private static Dictionary<int, Turned> Potentials(BenchMotor motor, IReadOnlyDictionary<string, int> net, Dictionary<int, Turned> held)
    {
        var edges = motor.Coils.Where(coil => !coil.Start).Select(coil => (From: net[coil.From], To: net[coil.To])).Where(edge => edge.From != edge.To).ToList();
        var reached = held.Keys.ToHashSet();
        while (edges.Exists(edge => reached.Contains(edge.From) != reached.Contains(edge.To)))
        {
            foreach (var (from, to) in edges.Where(edge => reached.Contains(edge.From) || reached.Contains(edge.To)))
            {
                reached.Add(from);
                reached.Add(to);
            }
        }

        var free = reached.Where(node => !held.ContainsKey(node)).ToList();
        var rows = free.Select(node =>
        {
            var row = new Ratio[free.Count];
            Array.Fill(row, 0);
            var right = Turned.Zero;
            foreach (var (from, to) in edges.Where(edge => edge.From == node || edge.To == node))
            {
                var other = from == node ? to : from;
                row[free.IndexOf(node)] += 1;
                if (held.TryGetValue(other, out var given))
                {
                    right += given;
                }
                else
                {
                    row[free.IndexOf(other)] -= 1;
                }
            }

            return (Row: row, Right: right);
        }).ToArray();
        Eliminate(rows);
        return free.Select((node, index) => (node, rows[index].Right)).Concat(held.Select(line => (line.Key, line.Value))).ToDictionary();
    }

    private static void Eliminate((Ratio[] Row, Turned Right)[] rows)
    {
        for (var pivot = 0; pivot < rows.Length; pivot++)
        {
            var swap = Array.FindIndex(rows, pivot, row => row.Row[pivot].Top != 0);
            (rows[pivot], rows[swap]) = (rows[swap], rows[pivot]);
            var scale = 1 / rows[pivot].Row[pivot];
            rows[pivot] = ([.. rows[pivot].Row.Select(cell => cell * scale)], rows[pivot].Right * new Turned(scale, 0));
            for (var other = 0; other < rows.Length; other++)
            {
                if (other != pivot && rows[other].Row[pivot].Top != 0)
                {
                    var factor = rows[other].Row[pivot];
                    rows[other] = (
                        [.. rows[other].Row.Select((cell, column) => cell - (factor * rows[pivot].Row[column]))],
                        rows[other].Right - (rows[pivot].Right * new Turned(factor, 0)));
                }
            }
        }
    }
}
