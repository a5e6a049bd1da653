using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>All three figures told at once where one was asked for: the amps of the lines, the volts of their pairs.</summary>
internal static class ThreeLines
{
    private const int All = 3;

    /// <summary>Files them and marks their words as used, where there are just three.</summary>
    public static void Read(Scene scene, IReadOnlyList<Quantity> quantities)
    {
        var (test, unit) = scene.Asked is { Kind: QuestionKind.Quantity, About: var about } ? about switch
        {
            "run-current" or "line-currents" => ("line-currents", "amp"),
            "supply-voltage" => ("supply-voltage", "volt"),
            _ => (null, null),
        } : (null, null);
        List<Quantity> figures = test is null || scene.Hits.Exists(hit => hit.Concept == "plate-cue")
            ? [] : [.. quantities.Where(q => !scene.Tokens[q.First].Used && (q.Unit is null || q.UnitId == unit))];
        if (figures.Sum(q => q.Values.Count) != All)
        {
            return;
        }

        Note(scene, figures, test!, unit!);
        foreach (var line in scene.Hits.Where(hit => hit.Concept.StartsWith("conductor.", StringComparison.Ordinal)))
        {
            scene.Use(line);
        }
    }

    /// <summary>One fact for each figure, in their order.</summary>
    private static void Note(Scene scene, IEnumerable<Quantity> figures, string test, string unit)
    {
        foreach (var q in figures.OrderBy(q => q.First))
        {
            scene.Use(q.First, q.Last);
            foreach (var value in q.Values)
            {
                scene.Note(q.First, q.Last, new Fact.BenchTest { Test = test, Value = value, Unit = unit });
            }
        }
    }
}
