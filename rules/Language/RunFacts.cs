using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Language;

/// <summary>What follows when all figures of a message are read: one run told in several sentences, a current above the plate's, and lines whose currents differ.</summary>
internal static class RunFacts
{
    public const string HighCurrent = "high-current";
    public const string Unequals = "unequal-phase-currents";
    private const int AllLines = 3;
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

    /// <summary>"Drawing 5.6 A, nameplate 4.4 A": too much current or no more than is due, though nobody says so; of two plate currents only more than the greater is too much, and only less than the smaller is not.</summary>
    /// <param name="facts">What was heard.</param>
    /// <param name="percent">Share of the plate's amps that is no more than usual.</param>
    public static Fact.Symptom? AgainstPlate(List<Fact> facts, double percent)
    {
        var run = facts.OfType<Fact.Running>().FirstOrDefault(run => run.Amps is not null);
        var lines = Lines(facts);
        var plate = facts.OfType<Fact.Plate>().Where(fact => fact is { Field: "amps", Of: null } && fact.Value.Numbers.Count > 0).ToList();
        if (plate is not [var rated] || (run is null && lines.Count == 0) || facts.Exists(fact => fact is Fact.Symptom { Id: HighCurrent }))
        {
            return null;
        }

        var (drawn, span) = (Math.Max(run?.Amps ?? 0, lines.Max(line => line.Value) ?? 0), run?.Span ?? lines[0].Span);
        return 100 * drawn > percent * rated.Value.Numbers.Max() ? new Fact.Symptom { Id = HighCurrent, Present = true, Span = span }
            : drawn <= rated.Value.Numbers.Min() ? new Fact.Symptom { Id = HighCurrent, Present = false, Span = span }
            : null;
    }

    /// <summary>"One phase at 2.1 amps, the others at 5.6 and 5.9": unequal or equal by the rule, though nobody says which; two figures do where it is told that they are those of all lines. Those that were asked for are the test's.</summary>
    /// <param name="scene">The message.</param>
    /// <param name="facts">What was heard.</param>
    /// <param name="rule">From how many percent of their mean currents are unequal, and up to how many they are equal.</param>
    public static Fact.Symptom? Unequal(Scene scene, List<Fact> facts, TradeRule rule)
    {
        var lines = Lines(facts);
        var amps = lines.ConvertAll(line => line.Value!.Value);
        if (scene.Asked is { Kind: QuestionKind.Quantity } || facts.Exists(fact => fact is Fact.Symptom { Id: Unequals }) || !(amps.Count == AllLines || (amps.Count == AllLines - 1 && Enumerable.Range(0, scene.Tokens.Count).Any(at => scene.IsWord(at, "other", "others", "rest")))))
        {
            return null;
        }

        double[][] all = amps.Count == AllLines ? [[.. amps]] : [.. amps.Select(twice => (double[])[.. amps, twice])];
        var percents = all.Select(Spread.Percent).ToList();
        return percents.Min() > rule["investigate-percent"] ? new Fact.Symptom { Id = Unequals, Present = true, Span = lines[0].Span }
            : percents.Max() <= rule["note-percent"] ? new Fact.Symptom { Id = Unequals, Present = false, Span = lines[0].Span }
            : null;
    }

    private static List<Fact.BenchTest> Lines(List<Fact> facts) => [.. facts.OfType<Fact.BenchTest>().Where(test => test is { Test: "line-currents", Value: not null })];

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
