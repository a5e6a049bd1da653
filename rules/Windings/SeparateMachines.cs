using WireCoach.Rules.Circuits;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>Whether a motor that is taken for a broken one may be two sound ones in one box: a break between taps leaves groups that read like motors of their own.</summary>
internal static class SeparateMachines
{
    private const int FewestLeads = 2;

    /// <summary>The kind that is believed to be broken, and the kinds that each group of leads would be by itself; none where it is one motor.</summary>
    /// <param name="bench">The leads.</param>
    /// <param name="readings">The readings.</param>
    /// <param name="best">What is believed.</param>
    public static IReadOnlyList<string> Of(Bench bench, IReadOnlyList<Measured> readings, Leaf best)
    {
        var one = best.Pattern.Layout;
        if (!best.Pattern.Condition.IsBreak || bench.HasMarkings || (Looks.HasSpeeds(one) && bench.Input.Looks?.Speeds == true))
        {
            return [];
        }

        var groups = Groups(bench.Leads, readings);
        if (groups.Count < 2 || groups.Any(group => group.Length < FewestLeads))
        {
            return [];
        }

        var kinds = groups.Select(group => Sound(bench.Part(group, readings))).ToList();
        return kinds.Contains(null) ? [] : [.. kinds.OfType<string>().Prepend(one.Id).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>The likeliest sound motor that has these leads and no others; <see langword="null"/> where none reads so.</summary>
    private static string? Sound(Bench part)
    {
        var sound = Explanations.Of(part, part.Readings, faults: false, everyLead: true);
        return sound.Any && sound.Best!.Worst < part.Figures.SoundFits.Value ? sound.Best.Pattern.Layout.Id : null;
    }

    private static IReadOnlyList<int[]> Groups(IReadOnlyList<string> leads, IReadOnlyList<Measured> readings)
    {
        var ties = new Ties();
        foreach (var lead in leads)
        {
            ties.Add(lead);
        }

        foreach (var reading in readings.Where(reading => reading.Conducts))
        {
            ties.Tie(leads[reading.First], leads[reading.Second]);
        }

        return [.. Enumerable.Range(0, leads.Count).GroupBy(lead => ties.GroupOf(leads[lead])).Select(group => group.ToArray())];
    }
}
