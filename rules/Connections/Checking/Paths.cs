using WireCoach.Rules.Circuits;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Which two-ended things a current could flow through at all: they lie on a way from one conductor of the supply to another.</summary>
internal static class Paths
{
    /// <summary>A current below this share of the greatest is rounding.</summary>
    private const double Rounding = 1e-9;

    /// <summary>The ids of what could carry current.</summary>
    /// <remarks>Every thing gets a resistance and every conductor a potential that stand in no simple ratio, so that no bridge is in balance by chance.</remarks>
    /// <param name="things">Coils and parts that conduct.</param>
    /// <param name="held">The nodes that the supply holds.</param>
    public static HashSet<string> Carrying(IReadOnlyList<Ended> things, IReadOnlyCollection<int> held)
    {
        if (held.Count == 0)
        {
            return [];
        }

        var elements = held.Order().Select((node, index) => (Element)new Element.Source($"line {node}", $"{node}", "middle", Math.Sqrt(index + 2)))
            .Concat(things.Select((thing, index) => new Element.Resistor(thing.Id, $"{thing.From}", $"{thing.To}", Math.Cbrt(index + 2)))).ToList();
        var solved = NetworkSolver.SolveChecked(new Network { Elements = elements, Hertz = 50, Ground = "middle", IslandsAllowed = true }).Value
            ?? throw new InvalidOperationException("A network of sources on different nodes and resistors has a solution.");
        return things.Where(thing => solved.Elements[thing.Id].Amps.Magnitude > Rounding).Select(thing => thing.Id).ToHashSet(StringComparer.Ordinal);
    }
}
