using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Reads the ohms of a winding that stand beside what they should be: "start winding 0.9 ohm, the book says 5.5".</summary>
internal sealed class WindingFigures(Scene scene)
{
    private const double FarBelow = 0.7;
    private const int RightBefore = 4;

    /// <summary>Files what they show; answers the quantities that were used.</summary>
    public IReadOnlySet<Quantity> Read(List<Quantity> open)
    {
        var taken = new HashSet<Quantity>(ReferenceEqualityComparer.Instance);
        foreach (var read in open.Where(q => q.UnitId == "ohm" && q.Values.Count == 1).ToList())
        {
            if (Winding(read) is { } winding && open.Find(q => IsExpected(q, read)) is { } expected)
            {
                scene.Use(read.First, read.Last);
                scene.Use(expected.First, expected.Last);
                taken.UnionWith([read, expected]);
                if (read.Values[0] < FarBelow * expected.Values[0])
                {
                    scene.Note(read.First, expected.Last, new Fact.BenchTest { Test = "resistance", Outcome = winding + "-low" });
                }
            }
        }

        return taken;
    }

    private string? Winding(Quantity read) =>
        scene.Hits.FindLast(hit => hit.Concept is "start-winding" or "run-winding" && hit.Last < read.First && scene.Tokens[hit.First].Sentence == scene.Tokens[read.First].Sentence)?.Concept switch
        {
            "start-winding" => "start",
            "run-winding" => "run",
            _ => null,
        };

    private bool IsExpected(Quantity q, Quantity read) => !ReferenceEquals(q, read) && q.First > read.Last && q.Values.Count == 1 && (q.Unit is null || q.UnitId == "ohm")
        && scene.Tokens[q.First].Sentence == scene.Tokens[read.First].Sentence
        && scene.Hits.Exists(hit => hit.Concept == "should-be" && hit.First > read.Last && hit.Last < q.First && q.First - hit.Last <= RightBefore);
}
