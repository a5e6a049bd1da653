using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Readings from leads to the frame: on a dead, dry motor none of them shows ohms.</summary>
internal sealed class FrameReadings
{
    private readonly List<(int Lead, double Ohms)> _grounded = [];
    private readonly List<(IReadOnlyList<int> Leads, Fact.Reading Reading, double Ohms)> _together = [];
    private readonly HashSet<int> _clear = [];
    private readonly HashSet<int> _alone = [];

    private FrameReadings()
    {
    }

    /// <summary>Whether any lead was read to the frame.</summary>
    public bool Any => _grounded.Count + _together.Count + _clear.Count > 0;

    public static FrameReadings Of(IdentificationInput input, MeterModel meter)
    {
        var found = new FrameReadings();
        foreach (var reading in input.Readings)
        {
            var (from, to) = (InputCheck.Lead(input.Leads, reading.From), InputCheck.Lead(input.Leads, reading.To));
            var lead = Math.Max(from, to);
            if (Math.Min(from, to) != -1 || lead < 0)
            {
                continue;
            }

            var leads = reading.Together.Select(tag => InputCheck.Lead(input.Leads, tag)).Where(other => other >= 0).Append(lead).Distinct().Order().ToList();
            found.Add(leads, reading, meter.Corrected(reading.Ohms ?? 0));
        }

        return found;
    }

    /// <summary>The path that leads held together showed although other readings show each of them open: it is taken again, and the second time it is for a megohmmeter.</summary>
    /// <param name="bench">The leads.</param>
    /// <returns><see langword="null"/> where the readings to the frame go together.</returns>
    public Contradiction? Denied(Bench bench)
    {
        if (Unplaced() is not { Leads: var leads, Reading: var reading, Ohms: var ohms } || !leads.All(_clear.Contains))
        {
            return null;
        }

        var again = _together.Count(one => one.Leads.SequenceEqual(leads)) > 1;
        return new(
            again ? [] : [new(reading.From, reading.To, reading.Ohms) { Together = reading.Together }],
            Said(again ? "windings.frame-path-again" : "windings.frame-path-denied", bench, leads, ohms));
    }

    /// <summary>Of leads that showed a path only while they were held together, the first that was not read alone; −1 where none is left to read.</summary>
    /// <param name="readable">Whether a lead can be read to the frame.</param>
    public int Unread(Func<int, bool> readable) =>
        Unplaced()?.Leads.Where(lead => !_alone.Contains(lead) && readable(lead)).Append(-1).First() ?? -1;

    /// <summary>That one of several leads may be grounded, and none can be named; <see langword="null"/> where no path is left that belongs to no lead.</summary>
    /// <param name="bench">The leads.</param>
    public Statement? Possible(Bench bench) =>
        Unplaced() is { Leads: var leads, Ohms: var ohms } ? Said("windings.frame-path-somewhere", bench, leads, ohms) : null;

    /// <summary>The grounded windings: of each group that shows ohms to the frame the leads nearest to the fault.</summary>
    /// <param name="bench">The leads.</param>
    /// <param name="windings">The windings as far as they are known.</param>
    public IEnumerable<WindingFault> Faults(Bench bench, IReadOnlyList<Winding> windings)
    {
        var left = _grounded.OrderBy(one => one.Ohms).ThenBy(one => one.Lead).ToList();
        while (left.Count > 0)
        {
            var (lead, ohms) = left[0];
            var tag = bench.Leads[lead];
            var own = windings.Where(winding => winding.Leads.Contains(tag))
                .OrderBy(winding => winding.Leads.Sum(other => left.Find(one => bench.Leads[one.Lead] == other) is { Ohms: var seen } found && found != default ? seen : 1e6))
                .FirstOrDefault();
            IReadOnlyList<string> leads = own is null || own.Junction ? Nearest(bench, left, own) : own.Leads;
            var text = Quantities.Units.Text(ohms, "ohm");
            yield return new("grounded-winding", leads, Statement.Of("windings.grounded", ("lead", tag), ("ohms", text)));
            var reached = new HashSet<string>(windings.Where(winding => winding.Leads.Contains(tag)).SelectMany(winding => winding.Leads).Append(tag).Concat(leads), StringComparer.Ordinal);
            left.RemoveAll(one => reached.Contains(bench.Leads[one.Lead]) || Conducts(bench, one.Lead, lead));
        }
    }

    /// <summary>The latest path of leads held together that none of them shows alone.</summary>
    private (IReadOnlyList<int> Leads, Fact.Reading Reading, double Ohms)? Unplaced() =>
        _together.FindLastIndex(one => !_grounded.Exists(single => one.Leads.Contains(single.Lead))) is var at and >= 0 ? _together[at] : null;

    /// <summary>Ohms of several leads together are of none of them; open is open of each, and undoes an earlier path of the same leads.</summary>
    private void Add(List<int> leads, Fact.Reading reading, double ohms)
    {
        if (reading.Ohms is null && !reading.Short)
        {
            if (reading.Open)
            {
                _clear.UnionWith(leads);
                _together.RemoveAll(one => one.Leads.All(leads.Contains));
            }
        }
        else if (leads.Count > 1)
        {
            _together.Add((leads, reading, ohms));
        }
        else
        {
            _grounded.Add((leads[0], ohms));
        }

        if (leads.Count == 1)
        {
            _alone.Add(leads[0]);
        }
    }

    private static Statement Said(string id, Bench bench, IReadOnlyList<int> leads, double ohms) =>
        Statement.Of(id, ("leads", string.Join(" + ", leads.Select(lead => bench.Leads[lead]))), ("ohms", Quantities.Units.Text(ohms, "ohm")));

    private static bool Conducts(Bench bench, int first, int second) =>
        bench.Readings.Any(reading => reading.Conducts && reading.Touches(first) && reading.Touches(second));

    /// <summary>In a group that meets inside, the leads that read lowest to the frame alike lie on either side of the fault.</summary>
    private static List<string> Nearest(Bench bench, List<(int Lead, double Ohms)> grounded, Winding? group)
    {
        var within = grounded.Where(one => group is null || group.Leads.Contains(bench.Leads[one.Lead])).ToList();
        var lowest = within[0];
        return [.. within.Where(one => one.Ohms - lowest.Ohms <= bench.Meter.CannotTell(one.Ohms, lowest.Ohms)).Select(one => bench.Leads[one.Lead])];
    }
}

/// <summary>Readings of one lead against several held together.</summary>
internal static class GroupReadings
{
    /// <summary>Open against a handful means open against each; anything else only says that one of them answers, and is asked again singly.</summary>
    public static IEnumerable<Measured> Opens(IdentificationInput input, MeterModel meter)
    {
        for (var index = 0; index < input.Readings.Count; index++)
        {
            var reading = input.Readings[index];
            var to = InputCheck.Lead(input.Leads, reading.To);
            if (reading.Together.Count == 0 || to < 0 || reading.Ohms is not null || reading.Short || reading.Kick)
            {
                continue;
            }

            foreach (var from in reading.Together.Append(reading.From).Select(tag => InputCheck.Lead(input.Leads, tag)).Where(from => from >= 0 && from != to))
            {
                yield return meter.Measure(index, from, to, reading);
            }
        }
    }
}
