using System.Numerics;
using WireCoach.Rules.Circuits;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections;

/// <summary>The volts of every coil by circuit laws: coils in series form chains, chains form a network, the network is solved.</summary>
/// <remarks>
/// Coils of one group are alike and divide a chain's volts by their shares. Where a chain holds coils of different groups (an armature
/// with its series field, a run winding with its speed taps), ohms do not tell how its volts divide, so the chain is taken as one winding.
/// A start winding or a coil behind a capacitor sees the volts of the nodes that the others set: its branch is judged as a whole.
/// </remarks>
internal sealed class ChainSolver(
    Layout layout, LayoutConnection row, Ties ties, IReadOnlyDictionary<int, string> lines, IReadOnlySet<string> weak, int phases)
{
    public IReadOnlyList<WiredChain> Solve()
    {
        var chains = Chains(Carrying());
        var strong = chains.Where(chain => !chain.Weak).ToList();
        var nodes = Nodes(strong);
        return [.. chains.Select(chain => Placed(chain, nodes)).OfType<WiredChain>()];
    }

    /// <summary>The coils through which current can flow at all: none shorted by a joint, none with a loose end.</summary>
    private List<LayoutCoil> Carrying()
    {
        var coils = layout.Coils.Where(coil => ties.GroupOf(coil.From) != ties.GroupOf(coil.To)).ToList();
        while (coils.RemoveAll(coil => Loose(coil.From, coils) || Loose(coil.To, coils)) > 0)
        {
        }

        return coils;
    }

    private bool Loose(string node, List<LayoutCoil> coils) => !lines.ContainsKey(ties.GroupOf(node)) && Degree(ties.GroupOf(node), coils) < 2;

    private int Degree(int group, List<LayoutCoil> coils) =>
        coils.Count(coil => ties.GroupOf(coil.From) == group || ties.GroupOf(coil.To) == group);

    private List<Chain> Chains(List<LayoutCoil> coils)
    {
        var left = coils.ToList();
        var chains = new List<Chain>();
        while (left.Count > 0)
        {
            var chain = new Chain([new(left[0], false)], ties.GroupOf(left[0].From), ties.GroupOf(left[0].To));
            left.RemoveAt(0);
            while (Inner(chain.To, coils) && Next(chain.To, left) is { } next)
            {
                _ = left.Remove(next.Coil);
                chain = chain with { Links = [.. chain.Links, next], To = next.Reversed ? ties.GroupOf(next.Coil.From) : ties.GroupOf(next.Coil.To) };
            }

            while (Inner(chain.From, coils) && Next(chain.From, left) is { } before)
            {
                _ = left.Remove(before.Coil);
                var turned = before with { Reversed = !before.Reversed };
                chain = chain with { Links = [turned, .. chain.Links], From = turned.Reversed ? ties.GroupOf(turned.Coil.To) : ties.GroupOf(turned.Coil.From) };
            }

            chains.Add(chain with { Weak = chain.Links.Any(link => weak.Contains(link.Coil.Id)) });
        }

        return chains;
    }

    private bool Inner(int group, List<LayoutCoil> coils) => !lines.ContainsKey(group) && Degree(group, coils) == 2;

    private Link? Next(int group, List<LayoutCoil> left)
    {
        var coil = left.Find(one => ties.GroupOf(one.From) == group || ties.GroupOf(one.To) == group);
        return coil is null ? null : new Link(coil, ties.GroupOf(coil.To) == group);
    }

    /// <summary>Node volts for one volt between the lines.</summary>
    private Dictionary<int, Complex> Nodes(List<Chain> strong)
    {
        var elements = lines.Select(line => (Element)new Element.Source(line.Value, Name(line.Key), "middle", LineVolts(line.Value), LineDegrees(line.Value)))
            .Concat(strong.Select((chain, index) => new Element.Resistor($"chain {index}", Name(chain.From), Name(chain.To), Weight(chain))));
        var solved = NetworkSolver.Solve(new Network { Elements = [.. elements], Hertz = 50, Ground = "middle", IslandsAllowed = true }).Value!;
        var reached = Reached(strong);
        return reached.ToDictionary(group => group, group => solved.Nodes[Name(group)]);
    }

    private HashSet<int> Reached(List<Chain> strong)
    {
        var reached = lines.Keys.ToHashSet();
        while (strong.Exists(chain => reached.Contains(chain.From) != reached.Contains(chain.To) && reached.Add(chain.From) | reached.Add(chain.To)))
        {
        }

        return reached;
    }

    private WiredChain? Placed(Chain chain, Dictionary<int, Complex> nodes)
    {
        if (!nodes.TryGetValue(chain.From, out var from) || !nodes.TryGetValue(chain.To, out var to))
        {
            return null;
        }

        var volts = from - to;
        var amps = volts / Weight(chain);
        var groups = chain.Links.Select(link => link.Coil.Group).Distinct(StringComparer.Ordinal).ToList();
        return new WiredChain(chain.Links, volts, amps, chain.Weak, groups, Touching(chain), lines.GetValueOrDefault(chain.From));
    }

    private List<string> Touching(Chain chain) =>
        [.. new[] { chain.From, chain.To }.Where(lines.ContainsKey).Select(group => lines[group])];

    private double Weight(Chain chain) => chain.Links.Sum(link => Share(row, link.Coil));

    internal static double Share(LayoutConnection row, LayoutCoil coil) => row.RatedShares.GetValueOrDefault(coil.Group, coil.RatedShare);

    private double LineVolts(string conductor) => phases == 3 ? (conductor == "N" ? 0 : 1 / Math.Sqrt(3)) : conductor is "L1" or "+" ? 1 : 0;

    private static double LineDegrees(string conductor) => conductor switch { "L2" => -120, "L3" => 120, _ => 0 };

    private static string Name(int group) => $"node {group}";

    private sealed record Chain(IReadOnlyList<Link> Links, int From, int To, bool Weak = false);
}

/// <summary>A coil within a chain.</summary>
/// <param name="Coil">The coil.</param>
/// <param name="Reversed">The chain runs through it from its finish to its start.</param>
internal sealed record Link(LayoutCoil Coil, bool Reversed);

/// <summary>Coils in series with the volts across them.</summary>
/// <param name="Links">The coils from the chain's beginning to its end.</param>
/// <param name="Volts">Volts of the beginning against the end, for one volt between the lines.</param>
/// <param name="Amps">Amps on a scale that all chains share that are not weak; of a weak one they mean nothing.</param>
/// <param name="Weak">A start winding or a coil behind a capacitor or switch.</param>
/// <param name="Groups">The coil groups in it.</param>
/// <param name="Lines">The line conductors at its ends.</param>
/// <param name="Begins">The line conductor at its beginning, if one is there.</param>
internal sealed record WiredChain(
    IReadOnlyList<Link> Links, Complex Volts, Complex Amps, bool Weak, IReadOnlyList<string> Groups, IReadOnlyList<string> Lines, string? Begins);
