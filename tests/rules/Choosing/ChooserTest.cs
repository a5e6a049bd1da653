using WireCoach.Rules.Choosing;

namespace WireCoach.Rules.Tests.Choosing;

public sealed class ChooserTest
{
    /// <summary>Eight boxes, one holds the coin; the owner only cares whether it is in the first four.</summary>
    private static readonly Belief<int> Boxes = Belief<int>.Of(Enumerable.Range(0, 8).Select(box => (box, 0.0)));

    private static string Half(int box) => box < 4 ? "left" : "right";

    [Fact]
    public void Eight_equal_hypotheses_in_eight_classes_hold_three_bits() =>
        Assert.Equal(3, Boxes.Entropy(box => $"{box}"), 12);

    [Fact]
    public void A_test_that_splits_only_within_a_class_is_never_chosen()
    {
        var within = Is("odd", 1, box => box % 2 == 1);
        Assert.Null(Chooser.Best(Boxes, Half, [within], depth: 1));
    }

    [Fact]
    public void The_test_that_decides_beats_the_one_that_only_tells_more_about_the_boxes()
    {
        var decides = Is("left", 2, box => box < 4);
        var single = Is("first", 1, box => box == 0);
        var chosen = Chooser.Best(Boxes, Half, [single, decides], depth: 1)!;
        Assert.Equal("left", chosen.Trial.Id);
        Assert.Equal(1, chosen.Bits, 12);
        Assert.Equal(0.5, chosen.BitsPerCost, 12);
    }

    [Fact]
    public void Looking_two_steps_ahead_finds_a_pair_of_tests_that_tell_nothing_alone()
    {
        var parity = Belief<int>.Of(Enumerable.Range(0, 4).Select(box => (box, 0.0)));
        string Same(int box) => (box & 1) == (box >> 1) ? "same" : "other";
        IReadOnlyList<Trial<int>> trials = [Is("low-bit", 1, box => (box & 1) == 1), Is("high-bit", 1, box => box > 1)];
        Assert.Null(Chooser.Best(parity, Same, trials, depth: 1));
        Assert.Equal("high-bit", Chooser.Best(parity, Same, trials, depth: 2)!.Trial.Id);
    }

    /// <summary>The same pair of tests among many boxes of which only four can hold the coin: what is ruled out counts as a hypothesis all the same.</summary>
    [Theory]
    [InlineData(Chooser.FewHypotheses, true)]
    [InlineData(Chooser.FewHypotheses + 1, false)]
    public void It_looks_ahead_only_where_few_hypotheses_remain(int boxes, bool ahead)
    {
        var belief = Belief<int>.Of(Enumerable.Range(0, boxes).Select(box => (box, box < 4 ? 0 : double.NegativeInfinity)));
        string Same(int box) => (box & 1) == ((box >> 1) & 1) ? "same" : "other";
        IReadOnlyList<Trial<int>> trials = [Is("low-bit", 1, box => (box & 1) == 1), Is("high-bit", 1, box => (box & 2) == 2)];
        Assert.Equal(ahead, Chooser.Best(belief, Same, trials, depth: 3) is not null);
    }

    [Fact]
    public void No_test_is_asked_what_it_would_show_of_what_is_ruled_out()
    {
        var belief = Belief<int>.Of([(0, 0), (5, 0), (9, double.NegativeInfinity)]);
        var trial = Is("left", 1, box => box < 9 ? box < 4 : throw new InvalidOperationException($"There is no box {box}."));
        Assert.Equal(1, Chooser.Best(belief, Half, [trial])!.Bits, 12);
    }

    [Fact]
    public void Of_equal_tests_the_one_with_the_lower_order_goes_first_and_then_the_ordinal_id()
    {
        var chosen = Chooser.Ranked(Boxes, Half, [Is("b", 1, box => box < 4), Is("a", 1, box => box < 4), Is("c", 1, box => box < 4) with { Order = -1 }]);
        Assert.Equal(["c", "a", "b"], chosen.Select(one => one.Trial.Id));
    }

    [Fact]
    public void Evidence_multiplies_the_weights()
    {
        // Bayes by hand: 1 % prior, 90 % hit, 5 % false alarm.
        var belief = Belief<bool>.Of([(true, Math.Log(0.01)), (false, Math.Log(0.99))]);
        var after = belief.Given(ill => Math.Log(ill ? 0.9 : 0.05))!;
        Assert.Equal(0.009 / (0.009 + 0.0495), after.Probability(ill => ill), 12);
    }

    [Fact]
    public void Evidence_that_no_hypothesis_allows_leaves_no_belief() =>
        Assert.Null(Boxes.Given(_ => double.NegativeInfinity));

    [Fact]
    public void It_is_settled_when_one_class_holds_nearly_all()
    {
        var sure = Belief<int>.Of([(0, Math.Log(0.997)), (7, Math.Log(0.003))]);
        Assert.True(Chooser.Settled(sure, Half));
        Assert.False(Chooser.Settled(Boxes, Half));
        Assert.True(Chooser.Settled(Boxes, Half, enough: 0.5));
    }

    [Fact]
    public void Instructions_that_are_equally_likely_stand_in_the_order_of_their_letters() =>
        Assert.Equal(["a", "b", "c", "d"], Boxes.Classes(box => "dbca"[box % 4].ToString()).Select(one => one.Decision));

    [Fact]
    public void The_piece_of_evidence_that_stands_alone_is_the_slip()
    {
        IReadOnlyList<(string, double)> coins = [("heads", 0), ("tails", 0)];
        IReadOnlyList<string> seen = ["heads", "heads", "tails", "heads"];
        var slip = Slips.Best(coins, seen, (coin, face) => coin == face ? Math.Log(0.999) : Math.Log(0.001), Math.Log(0.01))!;
        Assert.Equal("tails", slip.Evidence);
    }

    [Fact]
    public void Nothing_is_called_a_slip_when_all_goes_together() =>
        Assert.Null(Slips.Best([("heads", 0.0)], (string[])["heads", "heads"], (_, _) => Math.Log(0.999), Math.Log(0.01)));

    [Fact]
    public void What_speaks_for_a_cause_comes_first_and_what_speaks_against_it_last()
    {
        var likely = new Dictionary<(string, string), double> { [("a", "hum")] = 0.9, [("b", "hum")] = 0.1, [("a", "hot")] = 0.2, [("b", "hot")] = 0.6, [("a", "old")] = 0.5, [("b", "old")] = 0.5 };
        var reasons = Reasons.Of("a", "b", (string[])["hot", "old", "hum"], (cause, sign) => Math.Log(likely[(cause, sign)]));
        Assert.Equal(["hum", "hot"], reasons.Select(one => one.Evidence));
        Assert.Equal(Math.Log(9), reasons[0].LogRatio, 12);
        Assert.False(reasons[1].SpeaksFor);
    }

    private static Trial<int> Is(string id, double cost, Func<int, bool> holds) => new()
    {
        Id = id,
        Cost = cost,
        Outcomes = ["yes", "no"],
        Probability = (box, outcome) => holds(box) == (outcome == 0) ? 1 : 0,
    };
}
