using WireCoach.Rules.Choosing;

namespace WireCoach.Rules.Tests.Choosing;

/// <summary>What evidence does to a belief, by hand: what is expected of tests in a row, which piece is a slip, which one speaks.</summary>
public sealed class EvidenceTest
{
    [Fact]
    public void A_belief_of_nothing_possible_is_no_belief() =>
        Assert.Throws<ArgumentException>("hypotheses", () => Belief<int>.Of([(1, double.NegativeInfinity), (2, double.NegativeInfinity)]));

    [Fact]
    public void Tests_in_a_row_are_weighed_by_how_often_the_second_is_needed()
    {
        var boxes = Belief<int>.Of(Enumerable.Range(0, 4).Select(box => (box, 0.0)));
        string Half(int box) => box < 2 ? "left" : "right";
        IReadOnlyList<Trial<int>> trials = [Is("first", 1, box => box == 0), Is("left", 2, box => box < 2), Is("left-dear", 9, box => box < 2)];
        var first = Chooser.Ranked(boxes, Half, trials, depth: 2).Single(choice => choice.Trial.Id == "first");
        // One box in four settles it at once; else one bit is made whole by a test of 2: 1 / (1 + 3/4 × 2).
        Assert.Equal(0.4, first.BitsPerCost, 9);
        Assert.Equal(1 - 0.75 * 0.918295834054, first.Bits, 9);
    }

    [Fact]
    public void The_only_piece_that_nothing_allows_is_the_slip_and_two_of_them_are_none()
    {
        Assert.Equal(("x", double.PositiveInfinity), Slip(("x", double.NegativeInfinity), ("y", -1)));
        Assert.Null(Slip(("x", double.NegativeInfinity), ("y", double.NegativeInfinity)));
        Assert.Null(Slip());
    }

    [Fact]
    public void A_slip_has_to_explain_more_than_it_costs()
    {
        Assert.Equal(("y", 1.5), Slip(("x", -0.1), ("y", -3.5)));
        Assert.Null(Slip(("x", -2)));
        var found = Slips.Best([("weak", -3.0), ("strong", -1.0)], ["x", "y"], (who, what) => (who, what) switch { ("weak", "x") => -5, ("strong", _) => -20, _ => -0.5 }, logSlip: -2)!;
        Assert.Equal("x", found.Evidence);
        Assert.Equal(3, found.LogGain, 12); // −3 − 0.5 − 2 against −3 − 5 − 0.5
    }

    [Fact]
    public void A_piece_that_both_allow_alike_says_nothing()
    {
        var reasons = Reasons.Of("top", "rival", ["never", "not-top", "not-rival", "for", "alike", "hardly"], (who, what) => (who, what) switch
        {
            (_, "never") or ("top", "not-top") or ("rival", "not-rival") => double.NegativeInfinity, ("top", "for") => -1, ("rival", "for") => -3, ("rival", "hardly") => -0.05, _ => 0,
        });
        Assert.Equal([("not-rival", double.PositiveInfinity, true), ("for", 2, true), ("not-top", double.NegativeInfinity, false)], reasons.Select(reason => (reason.Evidence, reason.LogRatio, reason.SpeaksFor)));
    }

    [Fact]
    public void What_tells_nothing_speaks_for_nobody() =>
        Assert.Equal([true, false, false], new[] { 0.1, 0, -0.1 }.Select(ratio => new Reason<string>("x", ratio).SpeaksFor));

    [Fact]
    public void Weights_too_small_for_a_number_are_summed_by_their_logarithms()
    {
        Assert.Equal(-1000 + Math.Log(3), Weights.LogSum([-1000, -1000 + Math.Log(2)]), 12);
        Assert.Equal(double.NegativeInfinity, Weights.LogSum([double.NegativeInfinity, double.NegativeInfinity]));
        Assert.Equal([0.25, 0.75, 0], Weights.Normalized([-2000, -2000 + Math.Log(3), double.NegativeInfinity]).Select(one => Math.Round(Math.Exp(one), 12)));
    }

    private static (string, double)? Slip(params IReadOnlyList<(string Evidence, double LogLikelihood)> each) =>
        Slips.Best([("only", 0.0)], [.. each.Select(one => one.Evidence)], (_, what) => each.Single(one => one.Evidence == what).LogLikelihood, logSlip: -2) is { } slip ? (slip.Evidence, Math.Round(slip.LogGain, 9)) : null;

    private static Trial<int> Is(string id, double cost, Func<int, bool> holds) =>
        new() { Id = id, Cost = cost, Outcomes = ["yes", "no"], Probability = (box, outcome) => holds(box) == (outcome == 0) ? 1 : 0 };
}
