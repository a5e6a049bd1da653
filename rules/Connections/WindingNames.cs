using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>What a person calls a winding or a connection: its kind, and the tags at its ends.</summary>
/// <param name="words">The sentences, which hold the words.</param>
public sealed class WindingNames(SentenceBook words)
{
    /// <summary>A winding, for example "run half 1–2"; a part in series belongs to it, so that its ends are leads where it can be.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="coil">One of its coils.</param>
    /// <param name="tags">The person's tag of each lead, by marking; a marking without a tag stands for itself.</param>
    public string Of(Layout layout, LayoutCoil coil, IReadOnlyDictionary<string, string> tags)
    {
        string[] ends = [.. new[] { coil.From, coil.To }.Select(node => LeadAt(layout, node)).OfType<string>().Distinct(StringComparer.Ordinal)
            .Order(Comparer<string>.Create((one, other) => Place(layout, one) - Place(layout, other))).Select(marking => tags.GetValueOrDefault(marking, marking))];
        return words.Render(Kind(layout, coil).With("ends", string.Join('–', ends))).Trim();
    }

    /// <summary>What a connection is for, for example "higher voltage, star".</summary>
    /// <param name="row">A row of a layout's table.</param>
    public string Use(LayoutConnection row) =>
        words[words.Ids.Contains($"term.connection.{row.Id}") ? $"term.connection.{row.Id}" : $"term.connection.{row.For}"].Text;

    /// <summary>The word for a kind of connection, for example "higher voltage"; a kind without a word stands for itself.</summary>
    /// <param name="kind">What a row is for, or a part of that.</param>
    public string Use(string kind) => words.Ids.Contains($"term.connection.{kind}") ? words[$"term.connection.{kind}"].Text : kind;

    /// <summary>A connection, for example "higher voltage, counterclockwise".</summary>
    /// <param name="row">A row of a layout's table.</param>
    public string Of(LayoutConnection row)
    {
        var use = Use(row);
        var started = row.Starting ? words.Render(Statement.Of("connections.name-starting", ("use", use))) : use;
        return row.Rotation is null ? started : words.Render(Statement.Of("connections.name-turning", ("use", started), ("rotation", row.Rotation)));
    }

    private static Statement Kind(Layout layout, LayoutCoil coil) => (coil.Role, Halves: layout.Coils.Count(other => other.Group == coil.Group && other.Axis == coil.Axis) > 1) switch
    {
        ("run", true) => Statement.Of("connections.name-run-half"),
        ("run", _) => Statement.Of("connections.name-run"),
        ("start", true) => Statement.Of("connections.name-start-half"),
        ("start", _) => Statement.Of("connections.name-start"),
        ("phase", true) => Statement.Of("connections.name-phase-half"),
        ("speed-tap", _) => Statement.Of("connections.name-speed-tap"),
        ("armature", _) => Statement.Of("connections.name-armature"),
        ("series-field", _) => Statement.Of("connections.name-series-field"),
        ("shunt-field", _) => Statement.Of("connections.name-shunt-field"),
        _ => Statement.Of("connections.name-winding"),
    };

    private static int Place(Layout layout, string marking) => layout.Leads.Select(lead => lead.Marking).ToList().IndexOf(marking);

    /// <summary>The lead at a node, or behind the parts that lead on from it.</summary>
    private static string? LeadAt(Layout layout, string node)
    {
        var seen = new List<string> { node };
        for (var at = 0; at < seen.Count; at++)
        {
            if (layout.Leads.FirstOrDefault(lead => layout.NodeOf(lead.Marking) == seen[at]) is { } lead)
            {
                return lead.Marking;
            }

            seen.AddRange(layout.Parts.Where(part => part.From == seen[at] || part.To == seen[at])
                .Select(part => part.From == seen[at] ? part.To : part.From).Except(seen, StringComparer.Ordinal));
        }

        return null;
    }
}
