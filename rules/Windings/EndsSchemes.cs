using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Builds the ways in which the windings can lie, from their roles, their groups and the layout.</summary>
internal static class EndsSchemes
{
    private static readonly string[] OnOneAxis = ["run", "start", "armature", "series-field", "shunt-field"];

    /// <summary>The scheme, or what does not fit.</summary>
    public static Answer<EndsScheme> Of(EndsInput input, TradeKnowledge knowledge)
    {
        var windings = input.Windings.Where(winding => winding.Role is not ("protector" or "other")).ToList();
        if (windings.Count == 0)
        {
            return Wrong("windings", Statement.Of("problem.ends-no-windings"));
        }

        if (windings.TrueForAll(winding => winding.Role == "phase"))
        {
            return EndsPhases.Of(windings, input, knowledge);
        }

        return windings.TrueForAll(winding => OnOneAxis.Contains(winding.Role, StringComparer.Ordinal) && winding.Leads.Count == 2)
            ? OneAxis(windings, input, knowledge)
            : Wrong("windings", Statement.Of("problem.ends-not-these-windings"));
    }

    /// <summary>A refusal.</summary>
    internal static Problem Wrong(string field, Statement advice) => new("invalid-fact", field, advice);

    /// <summary>The forms that may give the markings: of the layout named, or of every layout, the commonest first.</summary>
    internal static IEnumerable<Layout> Forms(EndsInput input, TradeKnowledge knowledge) => knowledge.Layouts.Values
        .Where(layout => input.Layout is null || layout.Id == input.Layout)
        .SelectMany(layout => layout.Forms())
        .OrderByDescending(form => form.Weight).ThenBy(form => form.Id, StringComparer.Ordinal).ThenBy(form => form.Form, StringComparer.Ordinal);

    /// <summary>Two leads of a protector or another pair that is no winding, marked as the form marks such a pair.</summary>
    internal static Dictionary<string, string> Beside(EndsInput input, Layout? form)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        var parts = form?.Parts.Where(part => part.Kind == "protector").ToList() ?? [];
        foreach (var (winding, part) in input.Windings.Where(winding => winding.Role == "protector" && winding.Leads.Count == 2).Zip(parts))
        {
            found[part.From] = winding.Leads[0];
            found[part.To] = winding.Leads[1];
        }

        return found;
    }

    private static Answer<EndsScheme> OneAxis(List<EndsWinding> windings, EndsInput input, TradeKnowledge knowledge)
    {
        var coils = windings.Select(winding => new EndsCoil(winding.Role, winding.Leads[0], winding.Leads[1])).ToList();
        List<IReadOnlyList<int>> related = [];
        foreach (var group in new[] { new[] { "run" }, ["start"], ["shunt-field", "series-field"] })
        {
            var alike = Enumerable.Range(0, coils.Count).Where(coil => group.Contains(coils[coil].Role, StringComparer.Ordinal))
                .OrderBy(coil => Array.IndexOf(group, coils[coil].Role)).ToList();
            if (alike.Count > 1)
            {
                related.Add(alike);
            }
        }

        var form = Forms(input, knowledge).FirstOrDefault(form => Fits(form, windings));
        if (form is null && input.Layout is not null)
        {
            return Wrong("windings", Statement.Of("problem.ends-other-layout", ("layout", input.Layout)));
        }

        var start = coils.Select(coil => coil.Role is "start" or "armature" ? 90 : 0).ToArray();
        var turning = related.SelectMany(group => group.Skip(1)).ToList();
        return new EndsScheme
        {
            Coils = coils,
            Ways = [.. Enumerable.Range(0, 1 << turning.Count).Select(bits => Turned(start, turning, bits))],
            Related = related,
            Drives = [.. related.Select(group => (coils[group[0]].From, coils[group[0]].To))],
            Reads = [.. related.SelectMany(group => group.Skip(1)).Select(coil => (coils[coil].From, coils[coil].To))],
            Phases = false,
            Form = form,
            Fixed = Beside(input, form),
            DirectionUnproved = coils.Exists(coil => coil.Role is "start" or "armature"),
            CanRunOnHalf = coils.Count(coil => coil.Role == "run") == 2,
        };
    }

    /// <summary>Whether the form has just these windings, each between two leads that nothing else of it shares.</summary>
    private static bool Fits(Layout form, List<EndsWinding> windings)
    {
        var vectors = EndsLayout.Vectors(form).ToList();
        var tiedInside = vectors.Where(vector => vectors.Exists(other => other != vector && other.From == vector.From && vector.Role == "start")).ToList();
        vectors.RemoveAll(tiedInside.Contains);
        return vectors.TrueForAll(vector => vector.To is not null && form.Parts.All(part => part.Kind != "protector-heater"))
            && vectors.SelectMany(vector => new[] { vector.From, vector.To }).Distinct(StringComparer.Ordinal).Count() == vectors.Count * 2
            && vectors.Select(vector => vector.Role).Order(StringComparer.Ordinal).SequenceEqual(windings.Select(winding => winding.Role).Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    private static int[] Turned(int[] start, List<int> turning, int bits)
    {
        var way = (int[])start.Clone();
        for (var at = 0; at < turning.Count; at++)
        {
            way[turning[at]] += (bits >> at & 1) * 180;
        }

        return way;
    }
}
