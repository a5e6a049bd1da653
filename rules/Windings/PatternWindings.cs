using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>The windings of a layout as a person would name them: between two leads, from a common lead over taps, or meeting in a point inside.</summary>
internal static class PatternWindings
{
    public static IReadOnlyList<PatternWinding> Of(Layout layout)
    {
        var outside = layout.Leads.Select((lead, index) => (Node: lead.Node ?? lead.Marking, index))
            .GroupBy(lead => lead.Node, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.First().index, StringComparer.Ordinal);
        var spans = layout.Coils.Select(coil => new Span(coil.Role, coil.Group, coil.From, coil.To, [coil.Id])).ToList();
        foreach (var part in layout.Parts)
        {
            if (outside.ContainsKey(part.From) && outside.ContainsKey(part.To))
            {
                spans.Add(new("protector", PatternNetwork.Protector, part.From, part.To, [part.Id]));
            }
        }

        // What stands in the way of a winding belongs to it: its two sides count as one point.
        var inTheWay = layout.Parts.Where(part => !outside.ContainsKey(part.From) || !outside.ContainsKey(part.To)).ToList();
        var tied = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var part in inTheWay)
        {
            var (kept, gone) = outside.ContainsKey(Name(part.From)) ? (Name(part.From), Name(part.To)) : (Name(part.To), Name(part.From));
            spans = [.. spans.Select(span => span with { From = span.From == gone ? kept : span.From, To = span.To == gone ? kept : span.To })];
            tied[gone] = kept;
        }

        Contract(spans, outside);
        // A start branch across a run winding needs no leads of its own.
        spans.RemoveAll(span => span.Role == "start" && spans.Exists(other => other.Role == "run" && other.Ends.Order(StringComparer.Ordinal).SequenceEqual(span.Ends.Order(StringComparer.Ordinal))));
        return [.. Taps([.. ThreeAlike(spans, outside), .. Junctions(spans, outside)])];

        string Name(string node) => tied.TryGetValue(node, out var other) && other != node ? Name(other) : node;
    }

    /// <summary>Joins what lies in a row at a point that does not come out and where nothing branches off.</summary>
    private static void Contract(List<Span> spans, Dictionary<string, int> outside)
    {
        for (var again = true; again;)
        {
            again = false;
            var inner = spans.SelectMany(span => span.Ends).Where(node => !outside.ContainsKey(node)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
            foreach (var node in inner.ToList())
            {
                if (spans.FindAll(span => span.Ends.Contains(node)) is [var first, var second] && first.Other(node) != second.Other(node))
                {
                    spans[spans.IndexOf(first)] = first.Joined(second, node);
                    spans.Remove(second);
                    again = true;
                    break;
                }
            }
        }
    }

    /// <summary>Three alike phases in a ring of three leads look from outside like three that meet in a point, so they are named as one group too.</summary>
    private static List<PatternWinding> ThreeAlike(List<Span> edges, Dictionary<string, int> outside)
    {
        var found = new List<PatternWinding>();
        foreach (var span in edges.Where(span => span.Role == "phase").ToList())
        {
            var third = edges.Select(other => other.Ends.Except(span.Ends, StringComparer.Ordinal).ToList())
                .FirstOrDefault(rest => rest.Count == 1 && span.Ends.All(end => edges.Exists(other => other.Ends.Contains(end) && other.Ends.Contains(rest[0]))));
            string[] corners = third is null ? [] : [.. span.Ends, third[0]];
            var ring = edges.Where(other => other.Ends.Any(corners.Contains)).ToList();
            if (ring.Count == 3 && ring.TrueForAll(other => other.Group == span.Group) && corners.All(outside.ContainsKey))
            {
                found.Add(new("phase", span.Group, [.. corners.Select(corner => outside[corner]).Order()], Junction: true, [.. ring.SelectMany(other => other.Coils)]));
                edges.RemoveAll(ring.Contains);
            }
        }

        return found;
    }

    private static IEnumerable<PatternWinding> Junctions(List<Span> edges, Dictionary<string, int> outside)
    {
        foreach (var span in edges.Where(span => outside.ContainsKey(span.From) && outside.ContainsKey(span.To)))
        {
            yield return new(span.Role, span.Group, [outside[span.From], outside[span.To]], Junction: false, span.Coils);
        }

        var points = edges.SelectMany(span => new[] { span.From, span.To }).Where(node => !outside.ContainsKey(node)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
        foreach (var point in points)
        {
            var arms = edges.Where(span => (span.From == point && outside.ContainsKey(span.To)) || (span.To == point && outside.ContainsKey(span.From))).ToList();
            yield return new(
                arms[0].Role, arms[0].Group, [.. arms.Select(span => outside[span.Other(point)]).Order()], Junction: true, [.. arms.SelectMany(span => span.Coils)]);
        }
    }

    /// <summary>A run winding and the speed sections in series with it become one winding with taps.</summary>
    private static IEnumerable<PatternWinding> Taps(IReadOnlyList<PatternWinding> windings)
    {
        var sections = windings.Where(winding => winding.Role == "speed-tap").ToList();
        foreach (var winding in windings.Where(winding => winding.Role != "speed-tap"))
        {
            var end = winding.Terminals[^1];
            var taps = new List<int>();
            var coils = winding.Coils.ToList();
            while (winding.Role == "run" && sections.Find(section => section.Terminals[0] == end) is { } section)
            {
                taps.Add(end);
                coils.AddRange(section.Coils);
                end = section.Terminals[^1];
                sections.Remove(section);
            }

            yield return taps.Count == 0 ? winding : winding with { Terminals = [winding.Terminals[0], end], Taps = taps, Coils = coils };
        }
    }

    private sealed record Span(string Role, string Group, string From, string To, IReadOnlyList<string> Coils)
    {
        public string[] Ends => [From, To];

        public string Other(string node) => From == node ? To : From;

        public Span Joined(Span next, string node) => new(
            Role.Length > 0 ? Role : next.Role, Group.Length > 0 ? Group : next.Group, Other(node), next.Other(node), [.. Coils, .. next.Coils]);
    }
}
