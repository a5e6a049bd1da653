using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>Tells the capacitor on the motor from one that is offered in its place: "mine is 30 µF, can I use a 35?".</summary>
internal static class SpareCapacitor
{
    private const string Offer = "offered-part";
    private const string Own = "own-part";
    private const string InPlaceOf = "in-place-of";
    private const int RightBefore = 5;
    private const int JustBefore = 2;
    private const double OtherValue = 1.3;

    /// <summary>"Can I put a 40 µF in": what is offered has not been measured on this motor.</summary>
    public static bool IsOffered(Scene scene, int at) => scene.Before(at, JustBefore, Offer);

    /// <summary>Marks the offered one, where a message asks about one.</summary>
    public static void Tell(Scene scene)
    {
        var marked = scene.Facts.Where(fact => fact.Fact is Fact.Capacitor { Microfarads: not null }).ToList();
        if (marked.Count > 1 && scene.Hits.Exists(hit => hit.Concept is "swapped-in" or InPlaceOf) && !scene.Hits.Exists(hit => hit.Concept == "ask") && Differ(marked))
        {
            scene.Note(marked[0].At, marked[^1].At, new Fact.BenchTest { Test = "capacitor-look", Outcome = "wrong-marks" });
            return;
        }

        if (marked.Count == 0 || !(IsAsked(scene) || AgainstOwn(scene, marked)) || (ForStartAndRun(marked) && !Before(scene, Offer, marked[^1].At)))
        {
            return;
        }

        var offered = Offered(scene, marked);
        scene.Amend<Fact.Capacitor>((capacitor, at) => capacitor.Microfarads is not null && at == offered, capacitor => capacitor with { Spare = true });
    }

    private static bool IsAsked(Scene scene) => scene.Hits.Exists(hit => hit.Concept is "ask" or "bigger-capacitor" or InPlaceOf);

    /// <summary>"I only have a 30 µF, the plate says 25", "mine is 25 µF and I have a 30": one that somebody has, against the motor's own.</summary>
    private static bool AgainstOwn(Scene scene, List<(int At, Fact Fact)> marked) =>
        marked.Count == 2 && marked.Count(one => IsOffered(scene, one.At)) == 1 && marked.Exists(one => !IsOffered(scene, one.At) && IsOwn(scene, one.At));

    private static bool IsOwn(Scene scene, int at) => Before(scene, Own, at) || scene.Before(at, 1, "marked");

    /// <summary>Whether the one that was fitted is another value than the one that came off.</summary>
    private static bool Differ(List<(int At, Fact Fact)> marked)
    {
        List<double> values = [.. marked.Select(one => ((Fact.Capacitor)one.Fact).Microfarads!.Value)];
        return !ForStartAndRun(marked) && values.Max() > OtherValue * values.Min();
    }

    private static bool ForStartAndRun(List<(int At, Fact Fact)> marked) =>
        marked.Select(one => ((Fact.Capacitor)one.Fact).Use).Where(use => use is "start" or "run").Distinct(StringComparer.Ordinal).Count() > 1
        && marked.TrueForAll(one => ((Fact.Capacitor)one.Fact).Use is "start" or "run");

    /// <summary>Where the offered one stands; −1 for none.</summary>
    private static int Offered(Scene scene, List<(int At, Fact Fact)> marked)
    {
        if (scene.Hits.Find(hit => hit.Concept == InPlaceOf) is { } instead)
        {
            return marked.Where(one => one.At < instead.First).Select(one => one.At).LastOrDefault(-1) is var before and >= 0 ? before
                : marked.Count > 1 ? marked[^1].At : -1;
        }

        if (marked.Count == 1)
        {
            return Before(scene, Offer, marked[0].At) ? marked[0].At : -1;
        }

        return IsOwn(scene, marked[^1].At) && !Before(scene, Own, marked[0].At) ? marked[0].At : marked[^1].At;
    }

    private static bool Before(Scene scene, string concept, int at) =>
        scene.Hits.Exists(hit => hit.Concept == concept && hit.Last < at && at - hit.Last <= RightBefore && scene.Tokens[hit.First].Sentence == scene.Tokens[at].Sentence);
}
