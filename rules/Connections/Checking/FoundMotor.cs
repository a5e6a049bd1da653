using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>A motor of a known layout with the joints that were found on it.</summary>
public static class FoundMotor
{
    /// <summary>The connection to check.</summary>
    /// <param name="names">What its windings are called.</param>
    /// <param name="layout">The layout, as the form that the leads fit.</param>
    /// <param name="tags">The person's tag of each lead, by marking; a marking without a tag stands for itself.</param>
    /// <param name="lowVolts">The plate's lowest voltage, by which the coils are rated.</param>
    /// <param name="joints">What was found, in the person's tags.</param>
    /// <param name="supplyVolts">Volts between the line conductors.</param>
    /// <param name="phases">1 or 3.</param>
    /// <param name="row">The row that was meant, where it is known: its shares rate the coils, and what it caps may rest.</param>
    /// <param name="coilOhms">Measured ohms by coil id.</param>
    public static FoundConnection Of(
        WindingNames names, Layout layout, IReadOnlyDictionary<string, string> tags, double lowVolts, IReadOnlyList<FoundJoint> joints, double supplyVolts, int phases,
        LayoutConnection? row = null, IReadOnlyDictionary<string, double>? coilOhms = null)
    {
        var named = Names(layout, tags);
        var parts = row?.OuterPart is { } outer
            ? [.. layout.Parts, outer with { From = layout.NodeOf(outer.From), To = layout.NodeOf(outer.To) }]
            : layout.Parts;
        return new FoundConnection
        {
            Coils =
            [
                .. layout.Coils.Select(coil => new FoundCoil(
                    coil.Id, named(coil.From), named(coil.To), coil.Role,
                    lowVolts * (row?.RatedShares.GetValueOrDefault(coil.Group, coil.RatedShare) ?? coil.RatedShare), AxisOf(layout, coil),
                    coilOhms?.TryGetValue(coil.Id, out var ohms) == true ? ohms : null, row is not null && MayRest(layout, row, coil))
                {
                    Called = names.Of(layout, coil, tags),
                }),
            ],
            Joints = joints,
            SupplyVolts = supplyVolts,
            Phases = phases,
            Capacitors = [.. parts.Where(part => part.IsCapacitor).Select(part => new FoundCapacitor(named(part.From), named(part.To)))],
            Switches = [.. parts.Where(part => part.Kind == "switch").Select(part => new FoundSwitch(named(part.From), named(part.To)))],
            Protectors = [.. parts.Where(part => part.Kind.StartsWith("protector", StringComparison.Ordinal)).Select(part => (IReadOnlyList<string>)[named(part.From), named(part.To)])],
            Inside = [.. layout.Leads.Select(lead => (IReadOnlyList<string>)[TagOf(lead.Marking, tags), named(layout.NodeOf(lead.Marking))])],
        };
    }

    /// <summary>The joints of a row in the person's tags.</summary>
    /// <param name="row">A row of the layout's table.</param>
    /// <param name="tags">The person's tag of each lead, by marking.</param>
    public static IReadOnlyList<FoundJoint> JointsOf(LayoutConnection row, IReadOnlyDictionary<string, string> tags) =>
    [
        .. row.Lines.Select(line => new FoundJoint([.. line.Value.Select(marking => TagOf(marking, tags))], line.Key)),
        .. row.Joints.Select(joint => new FoundJoint([.. joint.Select(marking => TagOf(marking, tags))])),
        .. row.Capped.Select(marking => new FoundJoint([TagOf(marking, tags)])),
    ];

    /// <summary>The row that was meant, where the joints are those of one: conductors of the same kind may stand in another order, which changes the direction only.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="tags">The person's tag of each lead, by marking.</param>
    /// <param name="joints">What was found.</param>
    /// <returns>The row; <see langword="null"/> where the joints are those of none, or of a step that serves the start alone.</returns>
    public static LayoutConnection? RowOf(
        Layout layout, IReadOnlyDictionary<string, string> tags, IReadOnlyList<FoundJoint> joints)
    {
        var found = Groups(joints);
        return layout.Connections.FirstOrDefault(row => !row.Starting && Groups(JointsOf(row, tags)).SetEquals(found));
    }

    /// <summary>What is together, in any order, and whether a line conductor is on it; a lead alone counts for nothing.</summary>
    private static HashSet<string> Groups(IReadOnlyList<FoundJoint> joints) =>
    [
        .. joints.GroupBy(joint => joint.Conductor ?? $"\u0001{string.Join(' ', joint.Leads)}", StringComparer.Ordinal)
            .Select(group => (Line: group.First().Conductor is not null, Leads: group.SelectMany(joint => joint.Leads).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList()))
            .Where(group => group.Line || group.Leads.Count > 1)
            .Select(group => $"{(group.Line ? "line" : "joint")} {string.Join(' ', group.Leads)}"),
    ];

    private static string TagOf(string marking, IReadOnlyDictionary<string, string> tags) => tags.GetValueOrDefault(marking, marking);

    /// <summary>A node goes by the tag of its only or first lead; one without a lead by a name that no tag can have.</summary>
    private static Func<string, string> Names(Layout layout, IReadOnlyDictionary<string, string> tags)
    {
        var first = layout.Leads.GroupBy(lead => lead.Node ?? lead.Marking, StringComparer.Ordinal)
            .ToDictionary(node => node.Key, node => TagOf(node.First().Marking, tags), StringComparer.Ordinal);
        return node => first.GetValueOrDefault(node, $"inside {node}");
    }

    private static string AxisOf(Layout layout, LayoutCoil coil) => layout.Family == "three-phase"
        ? coil.Axis switch { 120 => "b", 240 => "c", _ => "a" }
        : coil.Axis == 90 ? "start" : "main";

    private static bool MayRest(Layout layout, LayoutConnection row, LayoutCoil coil) => row.Capped.Any(marking =>
        layout.NodeOf(marking) is var node && (node == coil.From || node == coil.To));
}
