using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Windings;

/// <summary>A coil as it is found: between two tags, or between a tag and a point that does not come out.</summary>
/// <param name="Role">A winding role.</param>
/// <param name="From">A tag, or the corner of a delta group.</param>
/// <param name="To">A tag, or the name of an inner point.</param>
internal sealed record EndsCoil(string Role, string From, string To);

/// <summary>What coupled coils on known axes read in a set-up, at a given coupling.</summary>
/// <param name="coils">The coils; together with the ties of a set-up they form no loop that matters.</param>
internal sealed class EndsPhysics(IReadOnlyList<EndsCoil> coils)
{
    /// <summary>The coils passed from one lead to another: index, and +1 from start to end or −1; <see langword="null"/> where there is no way.</summary>
    public IReadOnlyList<(int Coil, int Sign)>? Way(string from, string to, IReadOnlyList<IReadOnlyList<string>> ties)
    {
        var open = new Queue<(string Node, IReadOnlyList<(int, int)> Way)>([(from, [])]);
        var seen = new HashSet<string>([from], StringComparer.Ordinal);
        while (open.TryDequeue(out var at))
        {
            if (at.Node == to)
            {
                return at.Way;
            }

            foreach (var (node, step) in Steps(at.Node, ties))
            {
                if (seen.Add(node))
                {
                    open.Enqueue((node, step is { } taken ? [.. at.Way, taken] : at.Way));
                }
            }
        }

        return null;
    }

    /// <summary>Volts read over volts applied, with its sign, for coils that lie at these angles.</summary>
    /// <param name="setup">The set-up.</param>
    /// <param name="degrees">The direction of each coil from its start to its end.</param>
    /// <param name="coupling">Volts induced in a like coil on the same axis, over the volts applied.</param>
    public double Ratio(TestSetup setup, IReadOnlyList<int> degrees, double coupling) =>
        Ratio(Way(setup.Drive[0], setup.Drive[1], [])!, Way(setup.Read[0], setup.Read[1], setup.Tie)!, degrees, coupling);

    /// <summary>As above, with the ways already found.</summary>
    public static double Ratio(
        IReadOnlyList<(int Coil, int Sign)> driven, IReadOnlyList<(int Coil, int Sign)> read, IReadOnlyList<int> degrees, double coupling)
    {
        double Volts(int coil) => driven.Sum(fed => fed.Sign * Mutual(coil, fed.Coil));
        double Mutual(int one, int other) => one == other ? 1 : coupling * Math.Cos((degrees[one] - degrees[other]) * Math.PI / 180);
        var applied = driven.Sum(fed => fed.Sign * Volts(fed.Coil));
        return read.Sum(step => step.Sign * Volts(step.Coil)) / applied;
    }

    private IEnumerable<(string Node, (int, int)? Step)> Steps(string node, IReadOnlyList<IReadOnlyList<string>> ties)
    {
        for (var coil = 0; coil < coils.Count; coil++)
        {
            if (coils[coil].From == node)
            {
                yield return (coils[coil].To, (coil, 1));
            }

            if (coils[coil].To == node)
            {
                yield return (coils[coil].From, (coil, -1));
            }
        }

        foreach (var tied in ties.Where(tie => tie.Contains(node, StringComparer.Ordinal)).SelectMany(tie => tie))
        {
            yield return (tied, null);
        }
    }
}
