using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>"400 between two of them and 230 with the third": volts of the pairs of three lines, told in two figures.</summary>
internal static class PairVolts
{
    private const int Beside = 6;
    private const int ToItsOther = 2;
    private const int WithThird = 2;

    /// <summary>Files the figure of the one pair and twice that of the two with the third line; answers the quantities that were used.</summary>
    public static IReadOnlyList<Quantity> Read(Scene scene, List<Quantity> sentence)
    {
        List<Quantity> volts = [.. sentence.Where(q => RunFigures.IsOfLineVolts(q) && q.UnitId is "" or "volt").OrderBy(q => q.First)];
        if (volts.Count != 2 || scene.InSentence("plate-cue", volts[0].First) || !scene.Near(volts[0], Beside, "two-lines") || !scene.Near(volts[1], Beside, "third-line") || NamesPair(scene, volts[0].Last))
        {
            return [];
        }

        File(scene, volts[0]);
        for (var pair = 0; pair < WithThird; pair++)
        {
            File(scene, volts[1]);
        }

        foreach (var line in scene.Hits.Where(hit => hit.Concept is "two-lines" or "third-line"))
        {
            scene.Use(line);
        }

        return volts;
    }

    /// <summary>"L1-L2 462, L2-L3 460": the second figure has its own pair, and the third is not told.</summary>
    private static bool NamesPair(Scene scene, int behind) => scene.Hits.Exists(hit => hit.Concept is "conductor.l1" or "conductor.l2" && hit.First > behind
        && scene.Hits.Exists(third => third.Concept == "conductor.l3" && third.First > hit.Last && third.First - hit.Last <= ToItsOther));

    private static void File(Scene scene, Quantity q)
    {
        scene.Use(q.First, q.Last);
        scene.Note(q.First, q.Last, new Fact.BenchTest { Test = "supply-voltage", Value = q.Values[0], Unit = "volt" });
    }
}
