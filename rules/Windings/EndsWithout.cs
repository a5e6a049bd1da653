using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Motors whose ends no test has to tell apart, and those of which no test at rest can.</summary>
internal static class EndsWithout
{
    /// <summary>The finding, or <see langword="null"/> where ends have to be told apart.</summary>
    public static EndsFinding? Find(EndsInput input, TradeKnowledge knowledge)
    {
        var windings = input.Windings.Where(winding => winding.Role is not ("protector" or "other")).ToList();
        if (input.Layout is "two-speed-6" || windings is [{ Leads.Count: 6 }])
        {
            return new() { Status = EndsStatus.CannotTell, Layout = input.Layout, Notes = [Statement.Of("ends.ring-by-trial")] };
        }

        var leads = windings.SelectMany(winding => winding.Leads.Concat(winding.Taps.Except(winding.Leads, StringComparer.Ordinal))).ToList();
        var shared = leads.Distinct(StringComparer.Ordinal).Count() < leads.Count;
        var alone = windings.Count == 1 && windings[0].Leads.Count is 3 or 4;
        var rings = windings.Exists(winding => winding.Role == "rotor") && windings.TrueForAll(winding => winding.Leads.Count == 3);
        if (input.Layout != "two-speed-two-winding-6" && !shared && !alone && !rings)
        {
            return null;
        }

        var marked = Tapped(windings, input, knowledge) ?? windings.Where(winding => winding.Markings.Count == winding.Leads.Count)
            .SelectMany(winding => winding.Markings.Zip(winding.Leads)).DistinctBy(pair => pair.First, StringComparer.Ordinal)
            .ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal);
        var forms = EndsSchemes.Forms(input, knowledge).Where(form => form.Leads.Count == leads.Distinct(StringComparer.Ordinal).Count()).ToList();
        var form = forms.Find(form => form.Leads.All(lead => marked.ContainsKey(lead.Marking))) ?? forms.FirstOrDefault();
        if (input.Layout is "two-speed-two-winding-6" or "three-phase-3" && form is not null && marked.Count == 0)
        {
            marked = form.Leads.Zip(leads).ToDictionary(pair => pair.First.Marking, pair => pair.Second, StringComparer.Ordinal);
        }

        return new()
        {
            Status = EndsStatus.Settled,
            Layout = input.Layout,
            Assignment = form is not null && form.Leads.All(lead => marked.ContainsKey(lead.Marking)) ? marked : null,
            DirectionUnproved = form?.Family == "three-phase",
            Notes = [Statement.Of("ends.nothing-to-tell")],
        };
    }

    /// <summary>A winding with taps, marked lead by lead from its common end; the taps of the layout come in the same order.</summary>
    private static Dictionary<string, string>? Tapped(List<EndsWinding> windings, EndsInput input, TradeKnowledge knowledge)
    {
        if (windings.FirstOrDefault(winding => winding is { Junction: false, Leads.Count: 2, Taps.Count: > 0, Markings.Count: 2 }) is not { } tapped)
        {
            return null;
        }

        foreach (var form in EndsSchemes.Forms(input, knowledge))
        {
            var steps = form.Coils.Where(coil => coil.Role is "run" or "speed-tap").ToList();
            var way = new List<string> { tapped.Markings[0] };
            while (way[^1] != tapped.Markings[1] && steps.Find(coil => coil.From == way[^1] && !way.Contains(coil.To, StringComparer.Ordinal)) is { } step)
            {
                way.Add(step.To);
            }

            if (way.Count == tapped.Taps.Count + 2 && way[^1] == tapped.Markings[1])
            {
                string[] tags = [tapped.Leads[0], .. tapped.Taps, tapped.Leads[1]];
                return way.Zip(tags).Concat(windings.Where(winding => winding != tapped && winding.Markings.Count == winding.Leads.Count).SelectMany(winding => winding.Markings.Zip(winding.Leads)))
                    .DistinctBy(pair => pair.First, StringComparer.Ordinal).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal);
            }
        }

        return null;
    }
}
