using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Diagnosis;

/// <summary>The leads of a case that carry standard marks, and the layouts in which there are leads with these marks.</summary>
internal sealed class MarkedLeads
{
    private const string ThreePhase = "three-phase";

    private readonly CaseFile _file;
    private readonly IReadOnlyList<Layout> _forms;
    private readonly HashSet<string> _marks;

    /// <summary>Reads the marks of a case.</summary>
    /// <param name="model">The kinds of motor and their layouts.</param>
    /// <param name="file">The case.</param>
    public MarkedLeads(CauseModel model, CaseFile file)
    {
        _file = file;
        _forms = model.Forms;
        List<string?> told = [.. Tags().Select(Standard).Distinct(StringComparer.Ordinal)];
        var known = told.OfType<string>().ToHashSet(StringComparer.Ordinal);
        _marks = known.Count == told.Count && _forms.Any(form => form.IsMarkedBy(known)) ? known
            : [.. known.Where(mark => mark.Length > 1)]; // a single letter may be a person's own name for a lead
    }

    /// <summary>Layouts that have all the marks.</summary>
    public IReadOnlyList<Layout> Bearing => [.. _forms.Where(form => _marks.All(mark => form.LeadOf(mark) is not null))];

    /// <summary>The latest reading of each two leads with marks.</summary>
    public IReadOnlyList<MarkedPair> Read()
    {
        var latest = new Dictionary<(string, string), Fact.Reading>();
        foreach (var reading in _file.Readings.Where(reading => reading.Together.Count == 0))
        {
            if (Standard(reading.From) is { } from && Standard(reading.To) is { } to && from != to && _marks.Contains(from) && _marks.Contains(to))
            {
                latest[string.CompareOrdinal(from, to) < 0 ? (from, to) : (to, from)] = reading;
            }
        }

        return [.. latest.Select(one => new MarkedPair(one.Key.Item1, one.Key.Item2, one.Value))];
    }

    private IEnumerable<string> Tags() => _file.Leads.Select(lead => lead.Tag).Concat(_file.ReadLeads);

    /// <summary>The mark as the layouts write it; IEC leaves the digit out where one end of each phase comes out. The names of lines are no marks.</summary>
    private string? Standard(string tag)
    {
        var mark = (_file.Leads.Find(lead => lead.Tag == tag)?.Marking ?? tag).Trim().ToUpperInvariant();
        return _forms.Any(form => form.Connections.Any(connection => connection.Lines.ContainsKey(mark))) ? null
            : _forms.Any(form => form.LeadOf(mark) is not null) ? mark
            : _forms.Any(form => form.Family == ThreePhase && form.LeadOf($"{mark}1") is not null) ? $"{mark}1"
            : null;
    }
}

/// <summary>Two leads with marks and what was read between them.</summary>
/// <param name="From">A mark.</param>
/// <param name="To">Another mark.</param>
/// <param name="Reading">The latest reading.</param>
internal sealed record MarkedPair(string From, string To, Fact.Reading Reading)
{
    /// <summary>The coils between them in a motor, its capacitors bridged as the test of resistances asks; <see langword="null"/> where nothing should read.</summary>
    /// <param name="form">A motor with both marks.</param>
    public IReadOnlyList<LayoutCoil>? Way(Layout form) => form.Way(From, To, bridged: true);
}
