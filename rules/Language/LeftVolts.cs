using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Volts that are still on something that was switched off.</summary>
internal static class LeftVolts
{
    /// <summary>"3 volts left", "the cap is under 5 V": what is still on a capacitor, or on a frame.</summary>
    public static bool Are(Scene scene, Quantity q) => scene.InClause("left-over", q.First) || scene.InClause("shock-word", q.First)
        || (q.Values.Count == 1 && q.Values[0] < 24 && (scene.InClause("capacitor", q.First) || scene.InSentence("discharged", q.First)));

    public static bool Add(Scene scene, Quantity q)
    {
        var frame = scene.InClause("shock-word", q.First);
        if (!frame && (scene.IsWord(q.First - 1, "under", "below") || scene.IsWord(q.First - 2, "less", "lower")))
        {
            return true; // "under 5 V" is the limit that was asked for, not what the meter showed
        }

        scene.Add(q.First, q.Last, new Fact.BenchTest { Test = frame ? "frame-voltage" : "capacitor-residual", Value = q.Values[0], Unit = "volt" });
        return true;
    }
}
