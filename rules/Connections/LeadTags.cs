using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections;

/// <summary>Which form of a layout has the leads that were named, and which tag each of them carries.</summary>
internal static class LeadTags
{
    /// <summary>The form with exactly these leads; where there is none, the one that comes nearest, the layout as it stands before its variants.</summary>
    public static Layout FormOf(Layout layout, PlanRequest request)
    {
        var forms = layout.Forms();
        if (request.Form is not null)
        {
            return forms.First(form => form.Form == request.Form);
        }

        return forms.MinBy(form => form.Leads.Count(lead => !request.Leads.Keys.Any(key => Names(lead, key)))
            + request.Leads.Keys.Count(key => !form.Leads.Any(lead => Names(lead, key))))!;
    }

    /// <summary>The tags by NEMA marking.</summary>
    public static IReadOnlyDictionary<string, string> ByMarking(Layout layout, IReadOnlyDictionary<string, string> leads)
    {
        var tags = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var lead in layout.Leads)
        {
            if (leads.FirstOrDefault(named => Names(lead, named.Key)) is { Value: { } tag } && !string.IsNullOrWhiteSpace(tag))
            {
                tags.Add(lead.Marking, tag.Trim());
            }
        }

        return tags;
    }

    /// <summary>Whether a marking names this lead.</summary>
    public static bool Names(LayoutLead lead, string marking) => lead.Bears(marking.Trim());
}
