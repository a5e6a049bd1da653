using System.Numerics;
using WireCoach.Rules.Circuits;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>The volts that every coil is given by the connection itself: run coils divide them by their ratings, start branches follow.</summary>
/// <remarks>
/// This is the model that the verdict rests on, and it has no parameters. In a right connection every coil of a winding sees the share
/// of the volts that it was made for, with the sense that adds to one field; then the flux linked by the coils is in that proportion too,
/// and the coupled machine settles at the same volts, whatever its leakage or load. Where these volts differ from the ratings in size or
/// sense, no coupling can make the connection right. A start branch is counted as drawing nothing, as it is once the switch has opened:
/// at rest it loads the half it stands on, which is not a fault. Capacitor and switch count as wires: the rated volts of a start coil are
/// those of its whole branch.
/// </remarks>
internal static class DesignVolts
{
    /// <summary>How much lighter than a run coil a start branch is; any large figure gives the same shares.</summary>
    private const double Light = 1e5;

    /// <summary>Volts from start to finish of each coil, in the order of the coils.</summary>
    /// <param name="nodes">The connection.</param>
    /// <param name="weak">Whether a coil belongs to a start branch.</param>
    /// <param name="wires">Capacitor and switch where they count as wires.</param>
    public static IReadOnlyList<Complex> Of(FoundNodes nodes, Func<FoundCoil, bool> weak, IReadOnlyList<Ended> wires) =>
        Of(nodes, coil => coil.RatedVolts * (weak(coil) ? Light : 1), wires);

    /// <summary>The same for coils of any weight.</summary>
    /// <param name="nodes">The connection.</param>
    /// <param name="ohms">The resistance that stands for a coil.</param>
    /// <param name="wires">What counts as a wire.</param>
    public static IReadOnlyList<Complex> Of(FoundNodes nodes, Func<FoundCoil, double> ohms, IReadOnlyList<Ended> wires)
    {
        if (nodes.Held().Count == 0)
        {
            return [.. nodes.Coils.Select(_ => Complex.Zero)];
        }

        var merged = Merged(nodes.Count, wires);
        var elements = new List<Element>();
        foreach (var (node, volts) in nodes.Held().DistinctBy(held => merged[held.Key]))
        {
            elements.Add(new Element.Source($"line {node}", Name(merged[node]), "middle", volts.Magnitude, volts.Phase * 180 / Math.PI));
        }

        foreach (var coil in nodes.Coils)
        {
            elements.Add(new Element.Resistor(
                coil.Id, Name(merged[coil.From]), Name(merged[coil.To]), ohms(coil.Coil!)));
        }

        var solved = NetworkSolver.SolveChecked(new Network { Elements = elements, Hertz = 50, Ground = "middle", IslandsAllowed = true }).Value
            ?? throw new InvalidOperationException("A network of sources on different nodes and resistors has a solution.");
        return [.. nodes.Coils.Select(coil => merged[coil.From] == merged[coil.To] ? Complex.Zero : solved.Elements[coil.Id].Volts)];
    }

    /// <summary>The nodes with both ends of each wire made one; the lowest number stands for all.</summary>
    private static int[] Merged(int count, IReadOnlyList<Ended> wires)
    {
        var merged = Enumerable.Range(0, count).ToArray();
        foreach (var wire in wires)
        {
            var (low, high) = (Math.Min(merged[wire.From], merged[wire.To]), Math.Max(merged[wire.From], merged[wire.To]));
            for (var node = 0; node < count; node++)
            {
                merged[node] = merged[node] == high ? low : merged[node];
            }
        }

        return merged;
    }

    private static string Name(int node) => $"{node}";
}
