using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>What a person reads of the tests that tell the ends apart, and what is said of input that cannot be.</summary>
public sealed class EndsWordsTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    private static readonly EndsInput Dual = new()
    {
        Layout = "capacitor-start-dual-6",
        Windings = [new("run", ["1", "4"]), new("run", ["2", "6"]), new("start", ["3", "5"])],
        Instruments = ["multimeter", "low-voltage-ac"],
    };

    private static readonly EndsInput Six = new()
    {
        Layout = "three-phase-6",
        Windings = [new("phase", ["1", "2"]), new("phase", ["3", "4"]), new("phase", ["5", "6"])],
        Instruments = ["multimeter", "low-voltage-ac"],
    };

    [Theory]
    [InlineData("capacitor-start-dual-6")]
    [InlineData("capacitor-start-dual-8")]
    [InlineData("dual-voltage-4")]
    [InlineData("three-phase-6")]
    [InlineData("three-phase-9-star")]
    [InlineData("three-phase-9-delta")]
    [InlineData("three-phase-12")]
    [InlineData("part-winding-6")]
    [InlineData("dc-compound")]
    public void All_that_is_said_on_the_way_to_the_ends_can_be_read_out(string layout)
    {
        foreach (var tool in new[] { "low-voltage-ac", "battery", "lcr-meter" })
        {
            var bench = new EndsBench(Knowledge, layout, seed: 1, rotor: 3);
            EndsBench.Follow(found => Spoken.Whole(found), new EndsFinder(Knowledge), bench.Input with { Instruments = ["multimeter", tool] }, bench.Motor);
        }
    }

    [Fact]
    public void A_tie_of_two_halves_is_fed_and_read_step_by_step() => Assert.Equal(
        [
            "why", "tie 4 and 2", "feed 1 and 4 with 12 V", "start winding left open", "read 1 and 6",
        ],
        Steps(Find(Dual).Next!));

    [Fact]
    public void A_torch_cell_tells_by_the_way_the_needle_kicks()
    {
        var next = Find(Dual with { Instruments = ["multimeter", "battery"] }).Next!;
        Assert.Equal(("battery-flick", "low-voltage-test"), (next.Test, next.Task));
        Assert.Equal(["ends.when-up", "ends.when-down", "ends.when-no-kick"], next.Expect.Select(one => one.When.Id));
        Assert.Equal(["ends.means-like", "ends.means-like", "ends.means-cannot-tell"], next.Expect.Select(one => one.Means.Id));
        Assert.Equal([next.Setup.Read[0], next.Setup.Read[1]], next.Expect.Take(2).Select(one => one.Means.Gaps["b"]));
        Assert.All(next.Expect.Take(2), one => Assert.Equal(next.Setup.Drive[0], one.Means.Gaps["a"]));
    }

    [Fact]
    public void Series_impedances_are_compared_and_near_ones_tell_nothing()
    {
        var next = Find(Dual with { Instruments = ["lcr-meter"] }).Next!;
        Assert.Equal(("series-impedance", "ohm", "measure-dead"), (next.Test, next.Unit, next.Task));
        Assert.Equal(["ends.means-impedance-halves", "ends.means-cannot-tell"], next.Expect.Select(one => one.Means.Id));
        Assert.All(next.Expect, one => Assert.NotNull(Assert.Single(one.When.Quotes).Value));
    }

    [Fact]
    public void The_motor_turning_on_one_half_is_expected_above_or_below_the_volts_it_is_fed_with()
    {
        var next = Spoken.Whole(Find(Dual with { LowVolts = 115, Results = [new() { Test = "series-voltage", Read = ["1", "6"], Value = 12 }] })).Next!;
        var rule = Knowledge.Rules["ends-running"];
        Assert.Equal(("half-run", "volt", "measure-live"), (next.Test, next.Unit, next.Task));
        Assert.Equal([rule["aiding"] * 115, rule["opposing"] * 115, rule["opposing"] * 115, rule["aiding"] * 115], next.Expect.SelectMany(one => one.When.Quotes).Select(quote => quote.Value!.Value));
        Assert.Equal(["ends.means-tied-unlike", "ends.means-tied-like", "ends.means-cannot-tell"], next.Expect.Select(one => one.Means.Id));
        Assert.Equal((1 + rule["high"]) * 115, next.How.Single(step => step.Id == "ends.how-half-run-open").Quotes[0].Value!.Value, 1e-9);
        Assert.All(next.How.Concat(next.Expect.Select(one => one.When)).SelectMany(one => one.Quotes), quote => Assert.Contains("115 V", quote.Trail[^1].Inputs, StringComparison.Ordinal));
    }

    /// <summary>What helps on one axis opposes among phases; a cell and an impedance tell the same another way.</summary>
    [Theory]
    [InlineData(
        "three-phase-6", "low-voltage-ac", "series-voltage in volt by low-voltage-test",
        "About 14.4 V to 16 V: 4 and 2 are like ends: both starts or both finishes.",
        "About 8.04 V to 9.6 V: 4 and 2 are unlike ends: the finish of one and the start of the other.",
        "Between 10.6 V and 13.4 V: It cannot tell; there is another test.")]
    [InlineData(
        "three-phase-6", "battery", "battery-flick in nothing by low-voltage-test",
        "Up as the cell is touched on: 5 and 6 are like ends: both starts or both finishes.",
        "Down as the cell is touched on: 5 and 2 are like ends: both starts or both finishes.",
        "It hardly moves: It cannot tell; there is another test.")]
    [InlineData(
        "three-phase-6", "lcr-meter", "series-impedance in ohm by measure-dead",
        "The greater of the two ways of tying is at least 1.5 times the smaller: The ends tied at the greater reading are alike.",
        "Less than 1.5 times: It cannot tell; there is another test.")]
    [InlineData(
        "part-winding-6", "low-voltage-ac", "induced-voltage in volt by low-voltage-test",
        "About 6 V to 8.93 V: It leaves fewer ways; the next test narrows it further.",
        "About 3 V to 4.47 V: It leaves fewer ways; the next test narrows it further.")]
    [InlineData(
        "dc-compound", "battery", "battery-flick in nothing by low-voltage-test",
        "Up as the cell is touched on: 5 and 4 are like ends: both starts or both finishes.",
        "Down as the cell is touched on: 5 and 6 are like ends: both starts or both finishes.",
        "It hardly moves: It cannot tell; there is another test.")]
    public void Each_test_says_what_its_outcomes_mean(string layout, string tool, string test, params string[] outcomes)
    {
        var next = Find(new EndsBench(Knowledge, layout, seed: 1, rotor: 3).Input with { Instruments = ["multimeter", tool] }).Next!;
        Assert.Equal(test, $"{next.Test} in {next.Unit ?? "nothing"} by {next.Task}");
        Assert.Equal(outcomes, next.Expect.Select(one => $"{Knowledge.Sentences.Render(one.When)}: {Knowledge.Sentences.Render(one.Means)}"));
    }

    [Fact]
    public void A_soft_run_has_three_outcomes_of_which_a_growl_is_one()
    {
        var next = Find(Dual with { Instruments = [], LowVolts = 115 }).Next!;
        Assert.Equal(("soft-first-run", "first-start"), (next.Test, next.Task));
        Assert.Equal(["ran", "hummed", "growled"], next.Outcomes);
        Assert.Equal(next.Setup.Tie.Count, next.How.Count(step => step.Id == "ends.how-soft-joint"));
    }

    [Fact]
    public void Where_all_is_settled_but_the_direction_that_is_said()
    {
        var halves = Find(Dual with { Results = [new() { Test = "series-voltage", Read = ["1", "6"], Value = 18.4 }] });
        Assert.Equal(["ends.direction-by-trial"], halves.Notes.Select(note => note.Id));
        EndsFinding? last = null;
        var bench = new EndsBench(Knowledge, "three-phase-6", seed: 1, rotor: 3);
        EndsBench.Follow(found => last = found, new EndsFinder(Knowledge), bench.Input with { Instruments = ["multimeter", "low-voltage-ac"] }, bench.Motor);
        Assert.Equal(["ends.order-chosen"], last!.Notes.Select(note => note.Id));
    }

    [Theory]
    [InlineData("windings[0].leads", "problem.ends-two-leads", "one lead")]
    [InlineData("windings[0].leads", "problem.ends-two-leads", "the same lead twice")]
    [InlineData("results[0].test", "problem.ends-unknown-test", "an unknown test")]
    [InlineData("results[0].between", "problem.unknown-lead", "an unknown lead")]
    [InlineData("results[0].between", "problem.unknown-lead", "an unknown tie")]
    [InlineData("results[0].value", "problem.ends-negative", "a value below nothing")]
    [InlineData("results[0].value", "problem.ends-negative", "a value that is none")]
    [InlineData("results[0].appliedVolts", "problem.not-positive", "no volts applied")]
    [InlineData("layout", "problem.ends-unknown-layout", "an unknown layout")]
    public void Input_that_cannot_be_is_refused_with_its_field_and_a_word_of_advice(string field, string advice, string slip)
    {
        EndsResult One(string read = "2", double? value = 5, double? applied = 12, string test = "series-voltage", string tie = "4") => new() { Test = test, Drive = ["1", "4"], Tie = [[tie, "6"]], Read = ["1", read], AppliedVolts = applied, Value = value };
        var wrong = slip switch
        {
            "one lead" => Dual with { Windings = [new("run", ["1"]), .. Dual.Windings.Skip(1)] },
            "the same lead twice" => Dual with { Windings = [new("run", ["1", "1"]), .. Dual.Windings.Skip(1)] },
            "an unknown test" => Dual with { Results = [One(test: "shake")] },
            "an unknown lead" => Dual with { Results = [One(read: "9")] },
            "an unknown tie" => Dual with { Results = [One(tie: "9")] },
            "a value below nothing" => Dual with { Results = [One(value: -1)] },
            "a value that is none" => Dual with { Results = [One(value: double.NaN)] },
            "no volts applied" => Dual with { Results = [One(applied: 0)] },
            _ => Dual with { Layout = "none-such" },
        };
        var problem = Assert.Single(new EndsFinder(Knowledge).Find(wrong).Problems);
        Assert.Equal((field, advice), (problem.Field, problem.Advice.Id));
        Assert.NotEmpty(Knowledge.Sentences.Render(problem.Advice));
    }

    [Fact]
    public void Three_windings_tell_only_that_two_coils_lie_across_each_other()
    {
        var next = Spoken.Whole(Find(Six)).Next!;
        Assert.All(next.Expect, one => Assert.NotEmpty(one.When.Id));
        Assert.All(next.How, step => Assert.DoesNotContain("start", step.Id, StringComparison.Ordinal)); // no start winding, none to leave open
    }

    public static TheoryData<string, string, string?, EndsWinding[]> Unfit() => new()
    {
        { "nothing but a protector", "problem.ends-no-windings", null, [new("protector", ["1", "2"]), new("other", ["3", "4"])] },
        { "a phase beside a run winding", "problem.ends-not-these-windings", null, [new("phase", ["1", "2"]), new("run", ["3", "4"])] },
        { "a run winding of three leads", "problem.ends-not-these-windings", null, [new("run", ["1", "2", "3"]), new("run", ["4", "5"])] },
        { "two phases", "problem.ends-not-these-windings", null, [new("phase", ["1", "2"]), new("phase", ["3", "4"])] },
        { "three phases and one that is none", "problem.ends-not-these-windings", null, [.. Six.Windings, new("phase", ["7", "8", "9", "10"])] },
        { "three phases of a motor that has more", "problem.ends-other-layout", "three-phase-12", [.. Six.Windings] },
        { "two halves of a motor that has none", "problem.ends-other-layout", "split-phase-4", [new("run", ["1", "4"]), new("run", ["2", "6"])] },
        { "three groups whose corner nobody read", "problem.ends-corner", null, [.. new[] { "1", "2", "3" }.Select(at => new EndsWinding("phase", [$"{at}a", $"{at}b", $"{at}c"]) { Junction = true })] },
    };

    [Theory]
    [MemberData(nameof(Unfit))]
    public void Windings_that_no_motor_has_are_refused(string unfit, string advice, string? layout, EndsWinding[] windings)
    {
        var problem = Assert.Single(new EndsFinder(Knowledge).Find(Dual with { Layout = layout, Windings = windings }).Problems);
        Assert.True(("windings", advice) == (problem.Field, problem.Advice.Id), $"{unfit}: {problem.Advice}");
        Assert.NotEmpty(Knowledge.Sentences.Render(problem.Advice));
        Assert.Equal(advice == "problem.ends-corner" ? ["resistance 1a to 1b", "resistance 1b to 1c", "resistance 1c to 1a"] : Array.Empty<string>(), problem.Missing);
    }

    [Fact]
    public void A_reading_between_ends_that_no_tie_joins_says_which() =>
        Assert.Contains("1, 4", Knowledge.Sentences.Render(Assert.Single(new EndsFinder(Knowledge).Find(Dual with { Results = [new() { Test = "series-voltage", Read = ["1", "4"], Value = 5 }] }).Problems).Advice), StringComparison.Ordinal);

    [Theory]
    [InlineData(Role.Homeowner, false, "ends.not-for-homeowner")]
    [InlineData(Role.Manager, false, "ends.not-at-the-bench")]
    [InlineData(Role.Manager, true, "ends.not-at-the-bench")]
    [InlineData(Role.Apprentice, true, "ends.with-a-technician")]
    [InlineData(Role.Technician, true, "ends.nothing-left")]
    public void Who_cannot_go_on_hears_why(Role role, bool tested, string why) =>
        Assert.Equal(why, Find(Dual with { Role = role, Instruments = ["multimeter", "low-voltage-ac"], Barred = ["induced-voltage", "series-voltage"], Results = tested ? [new() { Test = "series-voltage", Read = ["1", "6"], Value = 12 }] : [] }).Notes.Single().Id);

    [Fact]
    public void A_strong_coupling_is_tied_the_other_way_round_only_where_that_may_be_done()
    {
        EndsResult[] strong = [new() { Test = "series-voltage", Read = ["1", "6"], Value = 22.5 }];
        Assert.Equal("ends.why-crossed", Find(Dual with { Results = strong }).Next?.Why.Id);
        Assert.Equal(EndsStatus.Settled, Find(Dual with { Results = strong, Barred = ["series-voltage"] }).Status);
        Assert.Equal(EndsStatus.Settled, Find(Dual with { Results = strong, Instruments = ["multimeter"] }).Status);
        Assert.All(new[] { Role.Homeowner, Role.Manager }, role => Assert.Equal(EndsStatus.Settled, Find(Dual with { Results = strong, Role = role }).Status));
    }

    /// <summary>On the same volts the greater impedance lets the fewer amps through.</summary>
    [Theory]
    [InlineData(1 / 12.0, 1 / 4.25, "2")]
    [InlineData(1 / 4.25, 1 / 12.0, "6")]
    public void Amps_tell_the_impedances_the_other_way_round(double first, double second, string third)
    {
        var input = Dual with { Instruments = ["lcr-meter"] };
        foreach (var amps in new[] { first, second })
        {
            var next = Find(input).Next!;
            input = input with { Results = [.. input.Results, new() { Test = next.Test, Drive = next.Setup.Drive, Tie = next.Setup.Tie, Read = next.Setup.Read, Value = amps, Unit = "amp" }] };
        }

        Assert.Equal(third, Find(input).Assignment!["T3"]);
    }

    [Theory]
    [InlineData(0.4, "2")]
    [InlineData(-0.4, "6")]
    public void A_kick_may_be_told_by_the_sign_of_what_was_read(double value, string third)
    {
        var next = Find(Dual with { Instruments = ["multimeter", "battery"] }).Next!;
        Assert.Equal(third, Find(Dual with { Results = [new() { Test = next.Test, Drive = next.Setup.Drive, Read = next.Setup.Read, Value = value }] }).Assignment!["T3"]);
    }

    [Fact]
    public void What_was_run_on_one_half_and_told_nothing_is_not_run_again()
    {
        var input = Dual with { LowVolts = 115, Results = [new() { Test = "series-voltage", Read = ["1", "6"], Value = 12 }] };
        var run = Find(input).Next!;
        var again = Find(input with { Results = [.. input.Results, new() { Test = run.Test, Drive = run.Setup.Drive, Tie = run.Setup.Tie, Read = run.Setup.Read, AppliedVolts = 115, Value = 115 }] });
        Assert.NotEqual("half-run", again.Next?.Test);
        Assert.NotEqual("half-run", Find(input with { Barred = ["half-run"] }).Next?.Test);
        Assert.NotEqual("half-run", Find(input with { Role = Role.Apprentice }).Next?.Test);
    }

    [Theory]
    [InlineData("three-phase-3", EndsStatus.Settled, "ends.nothing-to-tell")]
    [InlineData("two-speed-6", EndsStatus.CannotTell, "ends.ring-by-trial")]
    [InlineData("two-speed-two-winding-6", EndsStatus.Settled, "ends.nothing-to-tell")]
    public void Where_no_ends_are_to_be_told_apart_that_is_said(string layout, EndsStatus status, string note)
    {
        EndsWinding[] windings = layout switch
        {
            "three-phase-3" => [new("phase", ["1", "2", "3"]) { Junction = true }],
            "two-speed-6" => [new("phase", ["1", "2", "3", "4", "5", "6"]) { Junction = true }],
            _ => [new("phase", ["1", "2", "3"]) { Junction = true }, new("phase", ["4", "5", "6"]) { Junction = true }],
        };
        var found = Find(new() { Layout = layout, Windings = windings });
        Assert.Equal((status, note), (found.Status, found.Notes.Single().Id));
        Assert.Equal(status == EndsStatus.Settled ? windings.Sum(winding => winding.Leads.Count) : null, found.Assignment?.Count);
        Assert.Equal(status == EndsStatus.Settled, found.DirectionUnproved);
    }

    [Theory]
    [InlineData(AxisEvidence.ByVolts)]
    [InlineData(AxisEvidence.ByFlick)]
    public void What_two_windings_show_each_other_is_told_in_words(string kind)
    {
        var setup = new TestSetup(["1", "2"], [], ["3", "4"], 12);
        var next = Spoken.Whole(AxisWords.Of(new() { From = "1", To = "2", Kind = kind, Setup = setup, Why = Statement.Of("windings.axis-tells"), ExpectedTellings = 1 }, Knowledge));
        var flick = kind == AxisEvidence.ByFlick;
        Assert.Equal((flick ? null : "volt", flick ? 3 : 0, flick ? 3 : 4), (next.Unit, next.Outcomes.Count, next.Expect.Count));
        var rule = Knowledge.Rules["ends-induced"];
        Assert.Equal(flick ? [] : [rule["same-axis"] * 12, rule["phases"] * 12, rule["same-axis"] * 12, rule["null"] * 12, rule["null"] * 12, rule["phases"] * 12], next.Expect.SelectMany(one => one.When.Quotes).Select(quote => quote.Value!.Value));
        Assert.All(next.Expect.SelectMany(one => one.When.Quotes), quote => Assert.Contains("12 V", quote.Trail[^1].Inputs, StringComparison.Ordinal));
    }

    private static EndsFinding Find(EndsInput input) => Spoken.Whole(new EndsFinder(Knowledge).Find(input).Value!);

    private static IEnumerable<string> Steps(NextTest next) => next.How.Prepend(next.Why).Select(step => step.Id switch
    {
        "ends.why-series" => "why",
        "ends.how-tie" => $"tie {step.Gaps["a"]} and {step.Gaps["b"]}",
        "ends.how-start-open" => "start winding left open",
        "ends.how-read" => $"read {step.Gaps["a"]} and {step.Gaps["b"]}",
        _ => $"feed {step.Gaps["a"]} and {step.Gaps["b"]} with {step.Gaps["volts"]}",
    });
}
