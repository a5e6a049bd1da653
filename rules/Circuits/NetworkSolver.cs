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

    /// <summary>Solves a network whose figures are known to be sound; loops and islands are still found.</summary>
    internal static Answer<Solution> SolveChecked(Network network)
    {
        var topology = Topology.Of(network);
        if (topology.Problem is { } wrong)
        {
            return wrong;
        }

        var equations = new Equations(network, topology);
        return equations.Solve() is { } unknowns
            ? Read(network, topology, equations, unknowns)
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
}
