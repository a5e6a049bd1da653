using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>"137 where it is supposed to be 120": volts that were measured beside those that there should be.</summary>
internal static class DueVolts
{
    private const int Beside = 3;

    /// <summary>Files both, the one as measured and the other as what the supply is meant to be; answers the quantities that were used.</summary>
    public static IReadOnlyList<Quantity> Read(Scene scene, List<Quantity> sentence)
    {
        List<Quantity> volts = sentence.FindAll(q => RunFigures.IsOfLineVolts(q) && q.UnitId is "" or "volt");
        if (volts.Count != 2 || !(scene.InSentence("measured", volts[0].First) || scene.InSentence("volts-read", volts[0].First)))
        {
            return [];
        }

        List<Quantity> due = volts.FindAll(q => scene.Before(q.First, Beside, "due"));
        if (due is not [var meant] || OfPlate(scene, meant))
        {
            return [];
        }

        var read = volts.Find(q => !ReferenceEquals(q, meant))!;
        scene.Add(meant.First, meant.Last, new Fact.Supply { Volts = meant.Values[0] });
        scene.Add(read.First, read.Last, new Fact.BenchTest { Test = "supply-voltage", Value = read.Values[0], Unit = "volt" });
        return volts;
    }

    /// <summary>Whether the sentence speaks of the plate in other words than those of what should be.</summary>
    private static bool OfPlate(Scene scene, Quantity meant) => scene.Hits.Exists(hit => hit.Concept == "plate-cue" && scene.Tokens[hit.First].Sentence == scene.Tokens[meant.First].Sentence
        && scene.At(hit.First, "due") is null);
}
