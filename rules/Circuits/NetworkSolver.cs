using System.Numerics;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Circuits;

/// <summary>Solves a network by modified nodal analysis: Kirchhoff's laws at the nodes, Ohm's and the induction law along each element.</summary>
/// <remarks>
/// Every element keeps its own current as an unknown. That is larger than plain nodal analysis, but coils that share all of
/// their flux, wires without resistance and sources need no special case, and a milliohm in series with a megohm loses no digits.
/// </remarks>
public static class NetworkSolver
{
    /// <summary>The most elements of one network.</summary>
    public const int MostElements = 200;

    /// <summary>Checks a network and solves it.</summary>
    /// <param name="network">The network; each wrong member is named in the refusal.</param>
    /// <returns>The solution, or <c>invalid-fact</c>, <c>too-large</c> or <c>impossible-network</c>.</returns>
    public static Answer<Solution> Solve(Network network)
    {
        var problems = NetworkCheck.Of(network);
        return problems.Count > 0 ? Answer<Solution>.Refused(problems) : SolveChecked(network);
    }

    /// <summary>What an ohmmeter reads on the network while it is dead: coils are their wire, capacitors are open.</summary>
    /// <param name="network">The network; frequency other than zero, or a source, is refused.</param>
    /// <param name="pairs">The pairs of nodes to read.</param>
    /// <returns>Ohms in the order asked; <see langword="null"/> is open.</returns>
    public static Answer<IReadOnlyList<double?>> Read(Network network, IReadOnlyList<(string From, string To)> pairs)
    {
        var problems = NetworkCheck.OfDead(network);
        if (problems.Count > 0)
        {
            return Answer<IReadOnlyList<double?>>.Refused(problems);
        }

        var meter = new Ohmmeter(network.Elements.Select(element => new Wire(element.From, element.To, element switch
        {
            Element.Resistor resistor => resistor.Ohms,
            Element.Inductor coil => coil.Ohms,
            Element.Switch { Closed: true } => 0,
            _ => null,
        })));
        return Answer<IReadOnlyList<double?>>.Given([.. pairs.Select(pair => meter.Between(pair.From, pair.To))]);
    }

    /// <summary>Solves a network whose figures are known to be sound; loops and islands are still found.</summary>
    internal static Answer<Solution> SolveChecked(Network network)
    {
        var topology = Topology.Of(network);
        if (topology.Problem is { } wrong)
        {
            return wrong;
        }

        var equations = new Equations(network, topology);
        return equations.Solve() is { } unknowns && Read(network, topology, equations, unknowns) is var solution && solution.Elements.Values.All(IsFinite)
            ? solution
            : new Problem("impossible-network", "elements", Statement.Of("circuits.no-single-solution"));
    }

    private static Solution Read(Network network, Topology topology, Equations equations, Complex[] unknowns)
    {
        var nodes = new Dictionary<string, Complex>(topology.Nodes.Count, StringComparer.Ordinal);
        foreach (var (name, node) in topology.Nodes)
        {
            nodes.Add(name, equations.NodeVolts(unknowns, node));
        }

        var elements = new Dictionary<string, Branch>(network.Elements.Count, StringComparer.Ordinal);
        for (var index = 0; index < network.Elements.Count; index++)
        {
            elements.Add(network.Elements[index].Id, equations.Branch(unknowns, index));
        }

        return new Solution(nodes, elements);
    }

    private static bool IsFinite(Branch branch) => Complex.IsFinite(branch.Volts) && Complex.IsFinite(branch.Amps);
}
