using WireCoach.Rules.Reference;

namespace WireCoach.Knowledge;

/// <summary>What no type can say of a layout: every name it uses stands for something.</summary>
internal static class LayoutCheck
{
    private static readonly string[] Roles =
        ["run", "start", "phase", "rotor", "armature", "series-field", "shunt-field", "speed-tap", "protector", "other"];

    private static readonly string[] PartKinds = ["switch", "start-capacitor", "run-capacitor", "protector", "protector-heater"];

    public static void Whole(Sections sections, TradeKnowledge knowledge)
    {
        foreach (var layout in knowledge.Layouts.Values)
        {
            var wrong = layout.Forms().SelectMany(form => Wrongs(form, knowledge)).Concat(Twice(layout.Variants, variant => variant.Id, "variant"));
            foreach (var (name, what) in wrong)
            {
                throw sections.Wrong("layouts", layout.Id, name, what);
            }
        }

        foreach (var machine in knowledge.PracticeMachines.Values)
        {
            foreach (var layout in machine.Layouts.Where(layout => !knowledge.Layouts.ContainsKey(layout)))
            {
                throw sections.Wrong("practice", machine.Id, layout, "there is no such layout");
            }
        }

        foreach (var accessory in knowledge.Accessories.Values)
        {
            foreach (var sentence in new[] { accessory.Tell, accessory.Hazard }.Except(knowledge.Sentences.Ids, StringComparer.Ordinal))
            {
                throw sections.Wrong("accessories", accessory.Id, sentence, "there is no such sentence");
            }
        }
    }

    private static IEnumerable<(string Name, string What)> Wrongs(Layout layout, TradeKnowledge knowledge) =>
        [
            .. Twice(layout.Coils, coil => coil.Id, "coil"),
            .. Twice(layout.Parts, part => part.Id, "part"),
            .. Twice(layout.Leads, lead => lead.Marking, "lead"),
            .. Twice(layout.Connections, connection => connection.Id, "connection"),
            .. layout.Coils.Where(coil => !Roles.Contains(coil.Role)).Select(coil => (coil.Role, "this is no winding role")),
            .. layout.Parts.Where(part => !PartKinds.Contains(part.Kind)).Select(part => (part.Kind, "this is no kind of part")),
            .. Nodes(layout),
            .. Groups(layout),
            .. layout.Connections.SelectMany(connection => Joined(layout, connection)),
            .. layout.Warnings.Append(layout.NotReversible).Append(layout.NotConnected).OfType<string>()
                .Except(knowledge.Sentences.Ids, StringComparer.Ordinal).Select(id => (id, "there is no such sentence")),
            .. layout.Connections.Count == 0 && layout.NotConnected is null
                ? [(layout.Id, "without connections it needs not-connected, which says why")]
                : Array.Empty<(string, string)>(),
        ];

    private static IEnumerable<(string, string)> Nodes(Layout layout)
    {
        var ends = layout.Coils.SelectMany(coil => new[] { coil.From, coil.To })
            .Concat(layout.Parts.SelectMany(part => new[] { part.From, part.To })).ToList();
        var leads = layout.Leads.Select(lead => lead.Node ?? lead.Marking).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. layout.Leads.Where(lead => !ends.Contains(lead.Node ?? lead.Marking, StringComparer.Ordinal))
                .Select(lead => (lead.Marking, "nothing ends at this lead's node")),
            .. ends.Distinct(StringComparer.Ordinal).Where(node => !leads.Contains(node) && ends.Count(end => end == node) < 2)
                .Select(node => (node, "only one thing ends at this node, and no lead comes out of it")),
        ];
    }

    private static IEnumerable<(string, string)> Groups(Layout layout)
    {
        var groups = layout.Coils.Select(coil => coil.Group).ToHashSet(StringComparer.Ordinal);
        return layout.Ratios.SelectMany(ratio => new[] { ratio.Of, ratio.To })
            .Concat(layout.Ohms.Select(window => window.Of))
            .Concat(layout.Connections.SelectMany(connection => connection.RatedShares.Keys))
            .Where(group => !groups.Contains(group)).Select(group => (group, "no coil is of this group"))
            .Concat(layout.Ratios.Where(ratio => ratio.Low <= 0 || ratio.High < ratio.Low).Select(ratio => (ratio.Of, "the ratio's low is above zero and not above its high")))
            .Concat(layout.Ohms.Where(window => window.Low <= 0 || window.High < window.Low).Select(window => (window.Of, "the window's low is above zero and not above its high")));
    }

    private static IEnumerable<(string, string)> Joined(Layout layout, LayoutConnection row)
    {
        var leads = layout.Leads.Select(lead => lead.Marking).ToHashSet(StringComparer.Ordinal);
        var used = row.Lines.Values.Concat(row.Joints).SelectMany(joint => joint).Concat(row.Capped).ToList();
        if (row.OuterPart is { } part)
        {
            used.AddRange(new[] { part.From, part.To }.Where(lead => !used.Contains(lead, StringComparer.Ordinal)));
        }

        return
        [
            .. used.Concat(row.ReverseSwap.SelectMany(pair => pair)).Where(lead => !leads.Contains(lead)).Select(lead => (lead, $"the row {row.Id} names a lead that does not come out")),
            .. leads.Where(lead => !used.Contains(lead, StringComparer.Ordinal)).Select(lead => (row.Id, $"the row leaves the lead {lead} lying open")),
            .. Twice(used, lead => lead, $"place in the row {row.Id} of lead"),
            .. row.ReverseSwap.Where(pair => pair.Count != 2).Select(_ => (row.Id, "an exchange has two leads")),
            .. row.ReverseLines.Where(line => !row.Lines.ContainsKey(line)).Select(line => (line, $"the row {row.Id} has no such line")),
            .. row.Rotation is null == row.SeenFrom is null ? [] : new[] { (row.Id, "a direction needs the end that it is seen from") },
        ];
    }

    private static IEnumerable<(string, string)> Twice<T>(IEnumerable<T> items, Func<T, string> id, string what) =>
        items.GroupBy(id, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => (group.Key, $"the {what} stands twice"));
}
