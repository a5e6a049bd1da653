using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>What follows when all figures of a message are read: one run told in several sentences, and a current above the plate's.</summary>
internal static class RunFacts
{
    private const string HighCurrent = "high-current";
    private const int JustBehind = 3;
    private static readonly string[] Currents = ["draws", "amps-are", "amps-word", "line-currents"];

    /// <summary>"Tach says 1690, clamp says 6.1 A" is one run; two of them that tell the same member stay two.</summary>
    public static List<Fact> Joined(List<Fact> facts)
    {
        if (facts.OfType<Fact.Running>().ToList() is not [var one, var other] || Clash(one.Volts, other.Volts) || Clash(one.Amps, other.Amps) || Clash(one.Rpm, other.Rpm)
            || Differ(one.Direction, other.Direction))
        {
            return facts;
        }

        var whole = one with { Volts = one.Volts ?? other.Volts, Amps = one.Amps ?? other.Amps, Rpm = one.Rpm ?? other.Rpm, Direction = one.Direction ?? other.Direction, Outcome = one.Outcome ?? other.Outcome };
        return [.. facts.Where(fact => !ReferenceEquals(fact, other)).Select(fact => ReferenceEquals(fact, one) ? whole : fact)];
    }

    /// <summary>"Drawing 5.6 A, nameplate 4.4 A": too much current, though nobody says so; of two plate currents only more than the greater counts.</summary>
    /// <param name="facts">What was heard.</param>
    /// <param name="percent">Share of the plate's amps that is no more than usual.</param>
    public static Fact.Symptom? OverPlate(List<Fact> facts, double percent)
    {
        var drawn = facts.OfType<Fact.Running>().FirstOrDefault(run => run.Amps is not null);
        var plate = facts.OfType<Fact.Plate>().Where(fact => fact is { Field: "amps", Of: null } && fact.Value.Numbers.Count > 0).ToList();
        return drawn is not null && plate is [var rated] && 100 * drawn.Amps > percent * rated.Value.Numbers.Max() && !facts.Exists(fact => fact is Fact.Symptom { Id: HighCurrent })
            ? new Fact.Symptom { Id = HighCurrent, Present = true, Span = drawn.Span }
            : null;
    }

    /// <summary>"Pulling 130 percent of FLA": the share of the plate's amps is told, and neither of the two.</summary>
    /// <param name="scene">The message.</param>
    /// <param name="quantities">Its figures.</param>
    /// <param name="percent">Share of the plate's amps that is no more than usual.</param>
    public static Fact.Symptom? OfPlate(Scene scene, List<Quantity> quantities, double percent)
    {
        var share = quantities.Find(q => q is { Kind: "percent", Values.Count: 1 }
            && scene.Hits.Exists(hit => hit.Concept == "plate-cue" && hit.First > q.Last && hit.First - q.Last <= JustBehind)
            && Currents.Any(concept => scene.InSentence(concept, q.First)));
        return share is null ? null : new Fact.Symptom { Id = HighCurrent, Present = share.Values[0] > percent, Span = scene.Span(share.First, share.Last) };
    }

    private static bool Differ(string? one, string? other) => one is not null && other is not null && one != other;

    private static bool Clash(double? one, double? other) => one is not null && other is not null;
}
