using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections;

/// <summary>A planned connection as nodes and elements, as a diagram shows it.</summary>
internal static class CircuitDrawing
{
    public static PlanCircuit Of(
        Layout layout, LayoutConnection row, Wiring wiring, IReadOnlyDictionary<string, string> tags, IReadOnlyList<PlanJoint> joints, IReadOnlyList<string> capped)
    {
        var nodeOfLead = wiring.Joints.SelectMany(joint => joint.Markings.Select(marking => (marking, joint.Name)))
            .Concat(capped.Select(marking => (marking, $"cap {tags[marking]}")))
            .ToDictionary(one => one.marking, one => one.Item2, StringComparer.Ordinal);
        var ends = layout.Coils.SelectMany(coil => new[] { coil.From, coil.To })
            .Concat(layout.Parts.SelectMany(part => new[] { part.From, part.To })).ToList();
        var leadsAt = layout.Leads.ToLookup(lead => lead.Node ?? lead.Marking, StringComparer.Ordinal);

        PlanEnd End(string node)
        {
            var leads = leadsAt[node].ToList();
            return leads.Count == 1 && ends.Count(end => end == node) == 1
                ? new(nodeOfLead[leads[0].Marking], tags[leads[0].Marking], leads[0].Marking)
                : new($"inside {node}");
        }

        var elements = layout.Coils.Select(coil => new PlanElement(coil.Id, "coil", coil.Role, End(coil.From), End(coil.To), ChangesWithShaft: coil.ChangesWithShaft))
            .Concat(layout.Parts.Select(part => new PlanElement(part.Id, part.Kind, string.Empty, End(part.From), End(part.To))))
            .Concat(leadsAt.Where(at => at.Count() > 1 || ends.Count(end => end == at.Key) > 1).SelectMany(at => at.Select(lead =>
                new PlanElement(lead.Marking, "lead", string.Empty, new($"inside {at.Key}"), new(nodeOfLead[lead.Marking], tags[lead.Marking], lead.Marking)))))
            .Concat(row.OuterPart is { } outer
                ? [new PlanElement(outer.Id, outer.Kind, string.Empty, new(nodeOfLead[outer.From]), new(nodeOfLead[outer.To]), Outside: true)]
                : Array.Empty<PlanElement>())
            .ToList();
        var inside = elements.SelectMany(element => new[] { element.From.Node, element.To.Node }).Distinct(StringComparer.Ordinal)
            .Where(node => node.StartsWith("inside ", StringComparison.Ordinal)).Select(node => new PlanNode(node, "inside"));
        return new PlanCircuit(
            [
                .. joints.Select(joint => new PlanNode(joint.Name, "joint", joint.Conductor)),
                .. capped.Select(marking => new PlanNode($"cap {tags[marking]}", "capped")),
                .. inside,
            ],
            elements);
    }
}
