namespace WireCoach.Rules.Language;

/// <summary>"400 between two of them and 230 with the third": volts of the pairs of three lines, told in two figures.</summary>
internal static class PairVolts
{
    private const int Beside = 6;
    private const int ToItsOther = 2;

    /// <summary>The figure of the one pair, and twice that of the two with the third line; none where it is not told so.</summary>
    public static List<Quantity> Of(Scene scene, List<Quantity> sentence)
    {
        List<Quantity> volts = [.. sentence.Where(RunFigures.IsBareOrVolts).OrderBy(q => q.First)];
        if (volts.Count != 2 || scene.InSentence("plate-cue", volts[0].First) || !scene.Near(volts[0], Beside, "two-lines") || !scene.Near(volts[1], Beside, "third-line") || NamesPair(scene, volts[0].Last))
        {
            return [];
        }

        foreach (var line in scene.Hits.Where(hit => hit.Concept is "two-lines" or "third-line"))
        {
            scene.Use(line);
        }

        return [volts[0], volts[1], volts[1]];
    }

    /// <summary>"L1-L2 462, L2-L3 460": the second figure has its own pair, and the third is not told.</summary>
    private static bool NamesPair(Scene scene, int behind) => scene.Hits.Exists(hit => hit.Concept is "conductor.l1" or "conductor.l2" && hit.First > behind
        && scene.Hits.Exists(third => third.Concept == "conductor.l3" && third.First > hit.Last && third.First - hit.Last <= ToItsOther));
}
