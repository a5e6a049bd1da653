using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>"137 where it is supposed to be 120": volts that were measured beside those that there should be.</summary>
internal static class DueVolts
{
    private const int Beside = 3;
    private const int Named = 2;
    private static readonly string[] Both = ["and", "&"]; // "I have 110 and 220 outlets"

    /// <summary>Files both, the one as measured, unless it was read while the motor starts, and the other as what the supply is meant to be; answers the quantities that were used.</summary>
    public static IReadOnlyList<Quantity> Read(Scene scene, List<Quantity> sentence, Func<Quantity, bool> starting)
    {
        List<Quantity> volts = sentence.FindAll(RunFigures.IsBareOrVolts);
        if (volts.Count != 2 || !(scene.InSentence("measured", volts[0].First) || scene.InSentence("volts-read", volts[0].First)))
        {
            return [];
        }

        if (scene.AreJoined(volts[0], volts[1], Both) || Meant(scene, volts) is not { } meant || OfPlate(scene, meant))
        {
            return [];
        }

        var read = volts.Find(q => !ReferenceEquals(q, meant))!;
        scene.Add(meant.First, meant.Last, new Fact.Supply { Volts = meant.Values[0] });
        if (!starting(read))
        {
            scene.Add(read.First, read.Last, Measured(scene, read));
        }

        return volts;
    }

    /// <summary>Volts that were read: at the motor those that it runs on, elsewhere those of the supply.</summary>
    public static Fact Measured(Scene scene, Quantity read) => scene.Near(read, Beside, "at-the-motor")
        ? new Fact.Running { Volts = read.Values[0] } : new Fact.BenchTest { Test = "supply-voltage", Value = read.Values[0], Unit = "volt" };

    /// <summary>Those that are said to be due, or that name the supply: "198 on a 230 supply".</summary>
    private static Quantity? Meant(Scene scene, List<Quantity> volts) =>
        volts.FindAll(q => scene.Before(q.First, Beside, "due")) is [var due] ? due
        : volts.FindAll(q => scene.IsNominalVolts(q) && (scene.Near(q, 1, "supply-noun") || (scene.IsWord(q.First - 1, "is", "was") && scene.Before(q.First, Named, "supply-noun")))) is [var named] ? named : null;

    /// <summary>Whether the sentence speaks of the plate in other words than those of what should be.</summary>
    private static bool OfPlate(Scene scene, Quantity meant) => scene.Hits.Exists(hit => hit.Concept == "plate-cue" && scene.Tokens[hit.First].Sentence == scene.Tokens[meant.First].Sentence
        && scene.At(hit.First, "due") is null);
}
