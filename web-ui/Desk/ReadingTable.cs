using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Parts;

namespace WireCoach.WebUi.Desk;

/// <summary>Two points of a motor and what was read between them.</summary>
/// <param name="Field">The row's name in the form.</param>
/// <param name="From">A lead's tag.</param>
/// <param name="To">Another lead's tag, or the frame.</param>
/// <param name="Taken">The reading that counts now; <see langword="null"/> before there is one.</param>
public sealed record ReadingRow(string Field, string From, string To, Fact.Reading? Taken)
{
    /// <summary>Both ends, as people write it.</summary>
    public string Pair => $"{From}–{To}";
}

/// <summary>Every pair of leads and every lead to the frame, to be filled in in any order.</summary>
public sealed class ReadingTable
{
    /// <summary>The box of a row that is ticked for over-range.</summary>
    public const string Open = "open";

    private static readonly Dictionary<string, double> Times = new(StringComparer.Ordinal) { ["ohm"] = 1, ["kilohm"] = 1e3, ["megohm"] = 1e6 };

    /// <summary>The rows of a case, a group for each lead, the frame last.</summary>
    /// <param name="file">The case.</param>
    public ReadingTable(CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var tags = file.Leads.Select(lead => lead.Tag).ToList();
        Groups =
        [
            .. tags.Take(Math.Max(0, tags.Count - 1)).Select((from, at) => (IReadOnlyList<ReadingRow>)[.. tags.Skip(at + 1).Select((to, on) => Row(file, Name(at, at + 1 + on), from, to))]),
            .. tags.Count > 0 ? [(IReadOnlyList<ReadingRow>)[.. tags.Select((tag, at) => Row(file, Name(at, null), tag, Fact.Reading.Frame))]] : Array.Empty<IReadOnlyList<ReadingRow>>(),
        ];
        Leads = string.Join('\n', tags);
    }

    /// <summary>The units of a figure.</summary>
    public static IReadOnlyCollection<string> Units => Times.Keys;

    /// <summary>The rows by their first lead; the last group is to the frame.</summary>
    public IReadOnlyList<IReadOnlyList<ReadingRow>> Groups { get; }

    /// <summary>The leads that the rows stand for; a form that was made for others is not read.</summary>
    public string Leads { get; }

    /// <summary>The rows that were filled in, as facts; a problem names its row.</summary>
    /// <param name="field">What stands in a field of the form.</param>
    /// <param name="unit">The unit of all figures.</param>
    public Answer<IReadOnlyList<Fact>> Read(Func<string, string?> field, string? unit)
    {
        ArgumentNullException.ThrowIfNull(field);
        var (facts, problems) = (new List<Fact>(), new List<Problem>());
        foreach (var row in Groups.SelectMany(group => group))
        {
            var (text, open) = (field(row.Field)?.Trim() ?? string.Empty, field($"{row.Field}.{Open}") is not null);
            if (text.Length == 0 && !open)
            {
                continue;
            }

            if (text.Length > 0 && open)
            {
                problems.Add(new("invalid-fact", row.Field, Statement.Of("page.row-twofold", ("pair", row.Pair))));
            }
            else if (!open && (AskForm.Number(text) is not { } figure || figure < 0))
            {
                problems.Add(new("unreadable-quantity", row.Field, Statement.Of("page.row-figure", ("pair", row.Pair), ("given", text.Length > 20 ? text[..20] : text))));
            }
            else
            {
                facts.Add(new Fact.Reading
                {
                    From = row.From,
                    To = row.To,
                    Open = open,
                    Ohms = open ? null : AskForm.Number(text) * Times.GetValueOrDefault(unit ?? "ohm", 1),
                    Replaces = row.Taken?.FactId,
                    How = FactEntry.Form,
                });
            }
        }

        return problems.Count > 0 ? Answer<IReadOnlyList<Fact>>.Refused(problems) : facts;
    }

    private static string Name(int from, int? to) => string.Create(CultureInfo.InvariantCulture, $"r{from}-{(to is { } other ? other : "f")}");

    private static ReadingRow Row(CaseFile file, string field, string from, string to) => new(field, from, to, file.Readings.FindLast(reading =>
        reading.Together.Count == 0 && ((reading.From == from && reading.To == to) || (reading.From == to && reading.To == from))));
}
