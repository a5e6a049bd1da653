using WireCoach.Rules.Circuits;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections;

/// <summary>A layout with one row of its table made: which nodes have become one, and which way the current has.</summary>
internal sealed class Wiring
{
    private readonly Layout _layout;
    private readonly LayoutConnection _row;

    public Wiring(Layout layout, LayoutConnection row)
    {
        (_layout, _row) = (layout, row);
        Joints = JointsOf(row);
        foreach (var node in layout.Coils.SelectMany(coil => new[] { coil.From, coil.To }))
        {
            Live.Add(node);
        }

        foreach (var joint in Joints)
        {
            foreach (var marking in joint.Markings)
            {
                Dead.Tie(joint.Name, layout.NodeOf(marking));
                Live.Tie(joint.Name, layout.NodeOf(marking));
            }
        }

        foreach (var part in Parts)
        {
            if (IsProtector(part))
            {
                Dead.Tie(part.From, part.To);
            }
        }
    }

    /// <summary>The joints: line conductors in their order, then what is joined with nothing else, then leads that only carry an outer part.</summary>
    public IReadOnlyList<WiredJoint> Joints { get; }

    /// <summary>The parts of the layout and the one that the row adds, with the nodes of its leads.</summary>
    public IReadOnlyList<LayoutPart> Parts => _row.OuterPart is { } outer
        ? [.. _layout.Parts, outer with { From = _layout.NodeOf(outer.From), To = _layout.NodeOf(outer.To) }]
        : _layout.Parts;

    /// <summary>Nodes that are one with joints and protectors made: what a meter finds, but for switches.</summary>
    private Ties Dead { get; } = new();

    /// <summary>The same, to which all parts are added as paths of the current.</summary>
    private Ties Live { get; } = new();

    /// <summary>Volts across each coil by id, as a share of the line volts; a coil without current is left out.</summary>
    /// <param name="phases">1 or 3.</param>
    public IReadOnlyList<WiredChain> Chains(int phases)
    {
        var weak = _layout.Coils.Where(IsWeak).Select(coil => coil.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var part in Parts)
        {
            Live.Tie(part.From, part.To);
        }

        var lines = new Dictionary<int, string>();
        foreach (var joint in Joints.Where(joint => joint.Conductor is not null))
        {
            if (!lines.TryAdd(Live.GroupOf(joint.Name), joint.Conductor!))
            {
                throw new InvalidOperationException($"The row '{_row.Id}' of {_layout.Id} joins two lines with each other.");
            }
        }

        return new ChainSolver(_layout, _row, Live, lines, weak, phases).Solve();
    }

    /// <summary>A meter on the joints: switches at rest closed, capacitors open, what lies outside left off.</summary>
    /// <param name="ohms">Ohms of a coil; <see langword="null"/> for a coil that is open.</param>
    /// <param name="bridged">Capacitors are shorted or bridged.</param>
    public Ohmmeter Meter(Func<LayoutCoil, double?> ohms, bool bridged = false)
    {
        var wires = _layout.Coils.Select(coil => new Wire(coil.From, coil.To, ohms(coil)))
            .Concat((bridged ? Parts.Where(part => part.IsCapacitor) : []).Concat(_layout.Parts.Where(part => IsProtector(part) || part.Kind == "switch"))
                .Select(part => new Wire(part.From, part.To, 0)));
        return new Ohmmeter(wires, Joints.Select(joint => (IReadOnlyList<string>)[joint.Name, .. joint.Markings.Select(_layout.NodeOf)]));
    }

    /// <summary>A start winding, or a coil whose only way on from one end is a capacitor or a switch: it does not set the volts of others.</summary>
    private bool IsWeak(LayoutCoil coil) => coil.Role == "start" || Blocked(coil.From, coil) || Blocked(coil.To, coil);

    private bool Blocked(string node, LayoutCoil coil)
    {
        if (Joints.Any(joint => joint.Conductor is not null && Dead.Together(joint.Name, node)))
        {
            return false;
        }

        var blocking = Parts.Where(part => !IsProtector(part));
        return blocking.Any(part => Touches(part.From, part.To, node))
            && !_layout.Coils.Any(other => other.Id != coil.Id && Touches(other.From, other.To, node));
    }

    private static bool IsProtector(LayoutPart part) => part.Kind.StartsWith("protector", StringComparison.Ordinal);

    private bool Touches(string from, string to, string node) => Dead.Together(from, node) || Dead.Together(to, node);

    private static List<WiredJoint> JointsOf(LayoutConnection row)
    {
        var groups = row.Lines.OrderBy(line => LineOrder(line.Key)).Select(line => (Conductor: (string?)line.Key, Markings: line.Value))
            .Concat(row.Joints.Select(joint => (Conductor: (string?)null, Markings: joint))).ToList();
        if (row.OuterPart is { } outer)
        {
            foreach (var end in new[] { outer.From, outer.To })
            {
                if (!groups.Exists(group => group.Markings.Contains(end)))
                {
                    groups.Add((null, [end]));
                }
            }
        }

        return [.. groups.Select((group, index) => new WiredJoint($"J{index + 1}", group.Markings, group.Conductor))];
    }

    private static int LineOrder(string conductor) => conductor switch { "L1" or "+" => 1, "L2" => 2, "L3" => 3, _ => 4 };
}

/// <summary>A joint by the markings of its leads.</summary>
internal sealed record WiredJoint(string Name, IReadOnlyList<string> Markings, string? Conductor);
