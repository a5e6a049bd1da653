using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections;

/// <summary>What is known of the ohms of each coil: measured itself, or an alike coil was.</summary>
internal static class CoilOhms
{
    /// <summary>Ohms by coil id; a coil without any measurement of its group is left out.</summary>
    public static IReadOnlyDictionary<string, double> Of(Layout layout, IReadOnlyDictionary<string, string> tags, PlanRequest request)
    {
        var known = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var coil in layout.Coils)
        {
            if (request.CoilOhms.TryGetValue(coil.Id, out var own) || request.CoilOhms.TryGetValue(coil.Group, out own) || Measured(layout, tags, request, coil, out own))
            {
                known[coil.Id] = own;
            }
        }

        foreach (var coil in layout.Coils.Where(coil => !known.ContainsKey(coil.Id)))
        {
            var alike = layout.Coils.Where(other => other.Group == coil.Group && known.ContainsKey(other.Id)).Select(other => known[other.Id]).ToList();
            if (alike.Count > 0)
            {
                known[coil.Id] = alike.Average();
            }
        }

        return known;
    }

    private static bool Measured(Layout layout, IReadOnlyDictionary<string, string> tags, PlanRequest request, LayoutCoil coil, out double ohms)
    {
        var ends = (LeadAt(layout, tags, coil.From), LeadAt(layout, tags, coil.To));
        var winding = request.Windings.FirstOrDefault(one => Same(one.From, one.To, ends.Item1, ends.Item2) || Same(one.To, one.From, ends.Item1, ends.Item2));
        ohms = winding?.Ohms ?? 0;
        return winding is not null;
    }

    private static bool Same(string from, string to, string first, string second) =>
        string.Equals(from.Trim(), first, StringComparison.OrdinalIgnoreCase) && string.Equals(to.Trim(), second, StringComparison.OrdinalIgnoreCase);

    /// <summary>The tag of the lead at a node, or at the far end of the switches and capacitors behind it; the node's own name where none comes out.</summary>
    internal static string LeadAt(Layout layout, IReadOnlyDictionary<string, string> tags, string node)
    {
        var seen = new List<string> { node };
        for (var at = 0; at < seen.Count; at++)
        {
            if (layout.Leads.FirstOrDefault(lead => (lead.Node ?? lead.Marking) == seen[at]) is { } lead)
            {
                return tags[lead.Marking];
            }

            seen.AddRange(layout.Parts.SelectMany(part => new[] { (part.From, part.To), (part.To, part.From) })
                .Where(way => way.Item1 == seen[at] && !seen.Contains(way.Item2)).Select(way => way.Item2));
        }

        return node;
    }
}
