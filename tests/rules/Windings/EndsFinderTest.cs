using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Rules.Tests.Windings;

public sealed class EndsFinderTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly EndsFinder Finder = new(Knowledge);

    private static readonly EndsInput Dual = new()
    {
        Layout = "capacitor-start-dual-6",
        Windings = [new("run", ["1", "4"]), new("run", ["2", "6"]), new("start", ["3", "5"])],
        Instruments = ["multimeter", "low-voltage-ac"],
    };

    [Fact]
    public void Two_run_halves_are_tested_by_twelve_volts_on_one_and_a_tie_to_the_other()
    {
        var next = Find(Dual).Next!;
        Assert.Equal("series-voltage", next.Test);
        Assert.Equal(["1", "4"], next.Setup.Drive);
        Assert.Equal(["4", "2"], next.Setup.Tie.Single());
        Assert.Equal(["1", "6"], next.Setup.Read);
        Assert.Equal(12, next.Setup.AppliedVolts);
        Assert.Equal(
            [
                "About 16.8 V to 19.9 V: 4 and 2 are unlike ends: the finish of one and the start of the other.",
                "About 4.08 V to 7.2 V: 4 and 2 are like ends: both starts or both finishes.",
                "Between 9.6 V and 15 V: It cannot tell; there is another test.",
            ],
            next.Expect.Select(expect => $"{Knowledge.Sentences.Render(expect.When)}: {Knowledge.Sentences.Render(expect.Means)}"));
    }

    [Theory]
    [InlineData(18.4, "1", "4", "2", "6")]
    [InlineData(15.0, "1", "4", "2", "6")]
    [InlineData(9.6, "1", "4", "6", "2")]
    [InlineData(5.8, "1", "4", "6", "2")]
    public void The_reading_free_to_free_settles_the_halves(double volts, string t1, string t2, string t3, string t4)
    {
        var found = Find(Dual with { Results = [Series(volts)] });
        Assert.Equal(EndsStatus.Settled, found.Status);
        Assert.Equal([t1, t2, t3, t4], new[] { "T1", "T2", "T3", "T4" }.Select(mark => found.Assignment![mark]));
        Assert.True(found.DirectionUnproved);
        Assert.Equal([t1, t3], found.Alike[0]);
    }

    /// <summary>1.84 for 18.4: a slipped decimal point makes unlike ends look alike.</summary>
    [Theory]
    [InlineData(1.84, 5.6, EndsStatus.Contradiction)]
    [InlineData(1.84, 22.0, EndsStatus.Settled)]
    [InlineData(22.5, 1.5, EndsStatus.Settled)]
    public void A_coupling_stronger_than_any_at_rest_settles_only_with_the_other_end_tied(double volts, double crossed, EndsStatus status)
    {
        var once = Find(Dual with { Results = [Series(volts)] });
        Assert.Equal((EndsStatus.NeedsTest, "ends.why-crossed"), (once.Status, once.Next?.Why.Id));
        Assert.Equal(["4", "6"], once.Next!.Setup.Tie.Single());
        Assert.Equal(["1", "2"], once.Next.Setup.Read);
        var twice = Find(Dual with { Results = [Series(volts), new() { Test = "series-voltage", Drive = once.Next.Setup.Drive, Tie = once.Next.Setup.Tie, Read = once.Next.Setup.Read, AppliedVolts = 12, Value = crossed }] });
        Assert.Equal(status, twice.Status);
        Assert.Equal(EndsStatus.Settled, Find(Dual with { Results = [Series(4.0)] }).Status);
    }

    [Theory]
    [InlineData(9.7)]
    [InlineData(12.0)]
    [InlineData(14.9)]
    public void Between_the_bands_nothing_is_settled_and_another_test_follows(double volts)
    {
        var found = Find(Dual with { Results = [Series(volts)], LowVolts = 115 });
        Assert.Equal(EndsStatus.NeedsTest, found.Status);
        Assert.Empty(found.Alike);
        Assert.Equal("half-run", found.Next!.Test);
        Assert.Equal(115, found.Next.Setup.AppliedVolts);
    }

    [Theory]
    [InlineData(215, "2")]
    [InlineData(15, "6")]
    public void The_motor_turning_on_one_half_settles_what_no_test_at_rest_could(double volts, string third)
    {
        var run = new EndsResult { Test = "half-run", Drive = ["1", "4"], Tie = [["4", "2"]], Read = ["1", "6"], AppliedVolts = 115, Value = volts };
        Assert.Equal(third, Find(Dual with { Results = [Series(12), run] }).Assignment!["T3"]);
    }

    [Fact]
    public void Halves_that_help_each_other_both_ways_round_are_a_contradiction() =>
        Assert.Equal(EndsStatus.Contradiction, Find(Dual with { Results = [Series(18), Series(18) with { Read = ["1", "2"] }] }).Status);

    [Theory]
    [InlineData("up-on-make", "2")]
    [InlineData("down-on-make", "6")]
    public void A_kick_upward_shows_like_ends_at_the_two_plus_sides(string outcome, string third)
    {
        var input = Dual with { Instruments = ["multimeter", "battery"] };
        var next = Find(input).Next!;
        Assert.Equal("battery-flick", next.Test);
        var result = new EndsResult { Test = next.Test, Drive = next.Setup.Drive, Read = next.Setup.Read, Outcome = outcome };
        Assert.Equal(third, Find(input with { Results = [result] }).Assignment!["T3"]);
    }

    [Theory]
    [InlineData(12.0, 4.25, "2")]
    [InlineData(4.25, 12.0, "6")]
    [InlineData(5.0, 4.0, null)]
    public void The_greater_series_impedance_shows_the_unlike_tie_only_when_it_is_clearly_greater(double first, double second, string? third)
    {
        var input = Dual with { Instruments = ["lcr-meter"] };
        var one = Find(input).Next!;
        Assert.Equal("series-impedance", one.Test);
        input = input with { Results = [Answer(one, first)] };
        var other = Find(input).Next!;
        var found = Find(input with { Results = [.. input.Results, Answer(other, second)] });
        Assert.Equal(third, found.Assignment?["T3"]);
    }

    [Fact]
    public void A_hum_alone_proves_nothing_and_a_quiet_run_proves_its_joints()
    {
        var input = Dual with { Instruments = [], LowVolts = 115 };
        var one = Find(input).Next!;
        Assert.Equal("soft-first-run", one.Test);
        input = input with { Results = [new() { Test = one.Test, Drive = one.Setup.Drive, Tie = one.Setup.Tie, Read = [], Outcome = "hummed" }] };
        var hummed = Find(input);
        Assert.Equal(EndsStatus.NeedsTest, hummed.Status);
        var other = hummed.Next!;
        Assert.NotEqual(one.Setup.Tie[0], other.Setup.Tie[0]);
        var ran = Find(input with { Results = [.. input.Results, new() { Test = other.Test, Drive = other.Setup.Drive, Tie = other.Setup.Tie, Read = [], Outcome = "ran" }] });
        Assert.Equal(EndsStatus.Settled, ran.Status);
        Assert.Contains(ran.Assignment!["T3"], other.Setup.Tie[0]);
        Assert.Contains(ran.Assignment["T2"], other.Setup.Tie[0]);
    }

    [Fact]
    public void A_homeowner_never_feeds_a_winding()
    {
        var found = Find(Dual with { Role = Role.Homeowner, Instruments = ["multimeter", "low-voltage-ac", "battery", "lcr-meter"], LowVolts = 115 });
        Assert.Equal(EndsStatus.CannotTell, found.Status);
        Assert.Null(found.Next);
        Assert.Equal("ends.not-for-homeowner", found.Notes.Single().Id);
    }

    [Fact]
    public void Printed_marks_settle_the_ends_without_a_test()
    {
        var printed = new Dictionary<string, string> { ["1"] = "T3", ["4"] = "T4", ["2"] = "T2", ["6"] = "T1", ["3"] = "T5", ["5"] = "T8" };
        var found = Find(Dual with { Printed = printed });
        Assert.Equal(EndsStatus.Settled, found.Status);
        Assert.False(found.DirectionUnproved);
        Assert.All(printed, mark => Assert.Equal(mark.Key, found.Assignment![mark.Value]));
    }

    [Fact]
    public void Without_any_instrument_it_says_what_would_tell() =>
        Assert.Equal("ends.needs-instrument", Find(Dual with { Instruments = ["multimeter"] }).Notes.Single().Id);

    /// <summary>Never what is at hand already, nor what tells nothing of these windings.</summary>
    [Theory]
    [InlineData("dc-compound", "low-voltage-ac", "a torch cell with a meter that shows a kick.")]
    [InlineData("dc-compound", "lcr-meter", "a torch cell with a meter that shows a kick.")]
    [InlineData("three-phase-12", "lcr-meter", "a fused isolating transformer of 6 to 24 V, a torch cell with a meter that shows a kick.")]
    [InlineData("capacitor-start-dual-6", "multimeter", "a fused isolating transformer of 6 to 24 V, an LCR meter, a torch cell with a meter that shows a kick.")]
    public void What_would_tell_is_not_at_hand_and_tells(string layout, string instrument, string wanted)
    {
        var found = Find(new EndsBench(Knowledge, layout, seed: 1, rotor: 3).Input with { Instruments = ["multimeter", instrument] });
        Assert.Equal("ends.needs-instrument", found.Notes.Single().Id);
        Assert.EndsWith($"not at hand: {wanted}", Knowledge.Sentences.Render(found.Notes[0]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_that_no_coupling_changes_is_told_as_one_figure()
    {
        var input = new EndsBench(Knowledge, "three-phase-9-star", seed: 1, rotor: 3).Input with { Instruments = ["multimeter", "low-voltage-ac"] };
        List<string> expected = [];
        EndsBench.Follow(found => expected.AddRange(found.Next?.Expect.Select(expect => Knowledge.Sentences.Render(expect.When)) ?? []), Finder, input, new EndsBench(Knowledge, "three-phase-9-star", seed: 1, rotor: 3).Motor);
        Assert.Contains("About 12 V", expected);
        Assert.DoesNotContain("About 12 V to 12 V", expected);
    }

    [Fact]
    public void Halves_in_all_slots_are_never_told_wrong_whatever_the_cage()
    {
        Gen.Select(Gen.Double[0.5, 40], Gen.Double[0.2, 6], Gen.Bool, Gen.Bool).Sample((rotor, ohms, turned, flick) =>
        {
            var coils = new CoupledCoils([("1", "4", 0), turned ? ("6", "2", 0) : ("2", "6", 0), ("3", "5", 90)], rotor, ohms);
            var found = EndsBench.Follow(Finder, Dual with { Instruments = flick ? ["battery", "multimeter"] : ["low-voltage-ac", "multimeter"] }, coils).Found;
            var k = CoupledCoils.Coupling(rotor);
            Assert.True(found.Status is EndsStatus.Settled or EndsStatus.CannotTell, $"k {k}: {found.Status}");
            Assert.True(found.Status is EndsStatus.Settled || k is < 0.40 or > 0.66 || ohms > 3, $"k {k}, {ohms} Ω left open");
            if (found.Status is EndsStatus.Settled)
            {
                Assert.Equal(turned ? "6" : "2", found.Assignment!["T3"]);
            }
        }, iter: 150);
    }

    [Fact]
    public void Halves_on_their_own_poles_are_told_right_or_not_at_all()
    {
        Gen.Select(Gen.Double[0.5, 10], Gen.Double[0, 0.15], Gen.Bool, Gen.OneOf(Gen.Const("low-voltage-ac"), Gen.Const("lcr-meter"), Gen.Const("battery"))).Sample((rotor, stray, turned, tool) =>
        {
            var coils = new CoupledCoils([("1", "4", 0), turned ? ("6", "2", 0) : ("2", "6", 0)], rotor, ownPoles: true, stray: stray);
            var found = EndsBench.Follow(Finder, Dual with { Instruments = ["multimeter", tool] }, coils).Found;
            Assert.True(found.Status is EndsStatus.CannotTell or EndsStatus.Settled);
            if (found.Status is EndsStatus.Settled)
            {
                Assert.Equal(turned ? "6" : "2", found.Assignment!["T3"]);
            }
        }, iter: 120);
    }

    [Theory]
    [InlineData("series-voltage", 36, 12.0, true)]
    [InlineData("series-voltage", 36, 24.0, false)]
    [InlineData("series-voltage", 23.5, 12.0, false)]
    [InlineData("series-voltage", -1, 12.0, true)]
    public void Volts_that_no_motor_can_give_are_refused_with_their_field(string test, double value, double applied, bool refused)
    {
        var found = new EndsFinder(Knowledge).Find(new()
        {
            Windings = [new("run", ["1", "2"]), new("run", ["3", "4"])],
            Instruments = ["multimeter", "low-voltage-ac"],
            Results = [new() { Test = test, Drive = ["1", "2"], Tie = [["2", "3"]], Read = ["1", "4"], AppliedVolts = applied, Value = value }],
        });
        Assert.Equal(refused ? ["results[0].value"] : Array.Empty<string>(), found.Problems.Select(problem => problem.Field));
    }

    [Fact]
    public void The_readings_to_expect_follow_the_transformer_at_hand()
    {
        EndsInput input = new() { Windings = [new("run", ["1", "2"]), new("run", ["3", "4"])], Instruments = ["multimeter", "low-voltage-ac"] };
        var usual = new EndsFinder(Knowledge).Find(input).Value!.Next!;
        var twice = new EndsFinder(Knowledge).Find(input with { TestVolts = 24 }).Value!.Next!;
        Assert.Equal(24, twice.Setup.AppliedVolts);
        Assert.Equal(
            usual.Expect.SelectMany(expect => expect.When.Quotes).Select(quote => quote.Value * 24 / usual.Setup.AppliedVolts),
            twice.Expect.SelectMany(expect => expect.When.Quotes).Select(quote => quote.Value));
    }

    /// <summary>The volts that were last applied stay set until others are said.</summary>
    [Theory]
    [InlineData(null, null, 12.0)]
    [InlineData(24.0, null, 24.0)]
    [InlineData(24.0, 6.0, 6.0)]
    public void The_next_test_is_fed_with_the_volts_that_are_set(double? last, double? said, double next)
    {
        EndsInput input = new() { Layout = "three-phase-6", Windings = [new("phase", ["1", "2"]), new("phase", ["3", "4"]), new("phase", ["5", "6"])], Instruments = ["multimeter", "low-voltage-ac"], TestVolts = said };
        var asked = Find(input).Next!;
        var result = new EndsResult { Test = asked.Test, Drive = asked.Setup.Drive, Tie = asked.Setup.Tie, Read = asked.Setup.Read, AppliedVolts = last, Value = 0.9 * (last ?? 12) };
        Assert.Equal(next, Find(input with { Results = last is null ? [] : [result] }).Next!.Setup.AppliedVolts);
    }

    [Fact]
    public void A_layout_that_nobody_named_is_given_once_one_way_is_left()
    {
        var unnamed = Dual with { Layout = null };
        Assert.Null(Find(unnamed).Layout);
        Assert.Equal("capacitor-start-dual-6", Find(unnamed with { Results = [Series(18.4)] }).Layout);
    }

    private static EndsFinding Find(EndsInput input)
    {
        var answer = Finder.Find(input);
        return answer.Value ?? throw new InvalidOperationException(string.Join("; ", answer.Problems.Select(problem => $"{problem.Field}: {Knowledge.Sentences.Render(problem.Advice)}")));
    }

    private static EndsResult Series(double volts) => new() { Test = "series-voltage", Read = ["1", "6"], Value = volts };

    private static EndsResult Answer(NextTest next, double value) =>
        new() { Test = next.Test, Drive = next.Setup.Drive, Tie = next.Setup.Tie, Read = next.Setup.Read, Value = value };
}
