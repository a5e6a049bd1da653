namespace WireCoach.Rules.Windings;

/// <summary>Windings as groups of leads: coils of a phase that meet at a lead are one group with that lead as its corner.</summary>
internal static class EndsGroups
{
    /// <summary>The windings, with coils of separate phase groups put together.</summary>
    public static IReadOnlyList<EndsWinding> Of(IReadOnlyList<EndsWinding> windings)
    {
        var groups = new List<List<EndsWinding>>();
        foreach (var winding in windings.Where(winding => winding is { Role: "phase", Leads.Count: 2 }))
        {
            var touching = groups.Where(group => group.Exists(one => one.Leads.Intersect(winding.Leads, StringComparer.Ordinal).Any())).ToList();
            groups.RemoveAll(touching.Contains);
            groups.Add([.. touching.SelectMany(group => group), winding]);
        }

        return groups.Count < 2 ? windings
            : [.. windings.Where(winding => winding is not { Role: "phase", Leads.Count: 2 }), .. groups.SelectMany(Together)];
    }

    /// <summary>Two coils that share a lead as one group, three that meet in a lead as one with its point out; any other group as it was.</summary>
    private static IEnumerable<EndsWinding> Together(List<EndsWinding> group)
    {
        if (group.Count == 3 && group[0].Leads.FirstOrDefault(lead => group.TrueForAll(coil => coil.Leads.Contains(lead, StringComparer.Ordinal))) is { } point)
        {
            return [new EndsWinding("phase", [.. group.SelectMany(coil => coil.Leads).Where(lead => lead != point)]) { Junction = true, Point = point }];
        }

        if (group is not [var one, var other] || one.Leads.Intersect(other.Leads, StringComparer.Ordinal).ToList() is not [var corner])
        {
            return group;
        }

        var marks = one.Leads.Zip(one.Markings).Concat(other.Leads.Zip(other.Markings)).DistinctBy(pair => pair.First, StringComparer.Ordinal).ToList();
        return
        [
            new EndsWinding("phase", [.. one.Leads.Union(other.Leads, StringComparer.Ordinal)])
            {
                Junction = true,
                Taps = [corner],
                Markings = marks.Count == 3 ? marks.ConvertAll(pair => pair.Second) : [],
            },
        ];
    }
}
