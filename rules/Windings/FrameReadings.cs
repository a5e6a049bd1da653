using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Readings from leads to the frame: on a dead, dry motor none of them shows ohms.</summary>
internal sealed class FrameReadings
{
    private readonly List<(int Lead, double Ohms)> _grounded = [];
    private readonly HashSet<int> _clear = [];

    private FrameReadings()
    {
    }

    /// <summary>Whether any lead was read to the frame.</summary>
    public bool Any => _grounded.Count + _clear.Count > 0;

    /// <summary>Whether a lead shows ohms to the frame.</summary>
    public bool Grounded => _grounded.Count > 0;

    /// <summary>Leads that were read open to the frame.</summary>
    public IReadOnlySet<int> Clear => _clear;

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

            if (reading.Ohms is not null || reading.Short)
            {
                found._grounded.Add((lead, meter.Corrected(reading.Ohms ?? 0)));
            }
            else if (reading.Open)
            {
                found._clear.Add(lead);
                found._clear.UnionWith(reading.Together.Select(tag => InputCheck.Lead(input.Leads, tag)).Where(other => other >= 0));
            }
        }

        return found;
    }

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
