using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Rules.Tests.Windings;

public sealed class EndsPhasesTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly EndsFinder Finder = new(Knowledge);
    private static readonly string[] Bench = ["multimeter", "low-voltage-ac"];

    [Fact]
    public void The_same_reading_means_the_opposite_on_two_phases()
    {
        // Like ends tied read 1.2 to 1.33 of the applied volts on two phases; on one axis that reading would be inconclusive or unlike.
        EndsInput Phases(double volts) => new()
        {
            Layout = "three-phase-6",
            Windings = [new("phase", ["1", "2"]), new("phase", ["3", "4"]), new("phase", ["5", "6"])],
            Instruments = Bench,
            Results = [new() { Test = "series-voltage", Drive = ["1", "2"], Tie = [["2", "3"]], Read = ["1", "4"], AppliedVolts = 12, Value = volts }],
        };
        Assert.Contains(Find(Phases(15.2)).Alike, pair => pair.Order().SequenceEqual(["1", "4"]));
        Assert.Contains(Find(Phases(8.6)).Alike, pair => pair.Order().SequenceEqual(["1", "3"]));
        Assert.DoesNotContain(Find(Phases(12.6)).Alike, pair => pair.Contains("3"));
    }

    [Theory]
    [InlineData("three-phase-6", 1.2, 1.33, 0.67, 0.8)]
    public void The_readings_to_expect_are_those_of_the_bench(string layout, double likeLow, double likeHigh, double unlikeLow, double unlikeHigh)
    {
        var next = Find(new() { Layout = layout, Windings = [new("phase", ["1", "2"]), new("phase", ["3", "4"]), new("phase", ["5", "6"])], Instruments = Bench }).Next!;
        Assert.Equal("series-voltage", next.Test);
        Assert.Equal([likeLow, likeHigh], next.Expect[0].When.Quotes.Select(quote => Math.Round(quote.Value!.Value / 12, 2)));
        Assert.Equal("ends.means-tied-like", next.Expect[0].Means.Id);
        Assert.Equal([unlikeLow, unlikeHigh], next.Expect[1].When.Quotes.Select(quote => Math.Round(quote.Value!.Value / 12, 2)));
        Assert.Equal("ends.means-tied-unlike", next.Expect[1].Means.Id);
    }

    [Theory]
    [InlineData("three-phase-6")]
    [InlineData("three-phase-9-star")]
    [InlineData("three-phase-9-star+neutral-out")]
    [InlineData("three-phase-9-delta")]
    [InlineData("three-phase-12")]
    [InlineData("part-winding-6")]
    [InlineData("capacitor-start-dual-8")]
    [InlineData("dual-voltage-4")]
    public void Unmarked_leads_are_numbered_so_that_the_coils_lie_as_the_layout_says(string layout)
    {
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[1.9, 5.2], Gen.Double[0.3, 1.2]).Sample((seed, rotor, ohms) =>
        {
            var k = CoupledCoils.Coupling(rotor);
            var bench = new EndsBench(Knowledge, layout, seed, rotor, ohms);
            var (found, tests) = bench.Follow(Finder, Bench);
            Assert.True(k is < 0.40 or > 0.66 || found.Status == EndsStatus.Settled, $"{layout} k {k:0.00}: {found.Status}");
            Assert.True(tests <= 14, $"{layout} took {tests} tests");
            if (found.Status == EndsStatus.Settled)
            {
                Assert.True(bench.Lies(found.Assignment!), string.Join(' ', found.Assignment!));
            }
        }, iter: 12);
    }

    [Theory]
    [InlineData("three-phase-6")]
    [InlineData("three-phase-9-star")]
    public void A_cell_settles_phases_as_well(string layout)
    {
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[1.9, 5.2]).Sample((seed, rotor) =>
        {
            var bench = new EndsBench(Knowledge, layout, seed, rotor);
            var (found, _) = bench.Follow(Finder, "multimeter", "battery");
            Assert.NotEqual(EndsStatus.Contradiction, found.Status);
            if (found.Status == EndsStatus.Settled)
            {
                Assert.True(bench.Lies(found.Assignment!), string.Join(' ', found.Assignment!));
            }
        }, iter: 10);
    }

    [Theory]
    [InlineData("three-phase-9-star")]
    [InlineData("three-phase-9-delta")]
    [InlineData("three-phase-12")]
    [InlineData("part-winding-6")]
    [InlineData("capacitor-start-dual-8")]
    public void Coils_on_their_own_poles_are_never_numbered_wrong(string layout)
    {
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[1.0, 6], Gen.Double[0, 0.05]).Sample((seed, rotor, stray) =>
        {
            var bench = new EndsBench(Knowledge, layout, seed, rotor, ownPoles: true, stray: stray);
            var (found, _) = bench.Follow(Finder, Bench);
            if (found.Status == EndsStatus.Settled)
            {
                Assert.True(bench.Lies(found.Assignment!), string.Join(' ', found.Assignment!));
            }
        }, iter: 10);
    }

    [Fact]
    public void Without_its_corners_a_nine_lead_delta_asks_for_ohms_first()
    {
        var refused = Finder.Find(new()
        {
            Layout = "three-phase-9-delta",
            Windings = [new("phase", ["1", "2", "3"]), new("phase", ["4", "5", "6"]), new("phase", ["7", "8", "9"])],
        });
        var problem = refused.Problems.Single();
        Assert.Equal("not-ready", problem.Id);
        Assert.Contains("resistance 1 to 2", problem.Missing);
    }

    [Fact]
    public void A_nine_lead_delta_given_coil_by_coil_is_tested_like_one_given_by_its_groups()
    {
        var found = Find(new()
        {
            Layout = "three-phase-9-delta",
            Windings = [new("phase", ["1", "3"]), new("phase", ["2", "3"]), new("phase", ["4", "8"]), new("phase", ["5", "7"]), new("phase", ["5", "9"]), new("phase", ["6", "8"])],
            Instruments = Bench,
        });
        Assert.Equal(EndsStatus.NeedsTest, found.Status);
        Assert.Null(found.Assignment);
        Assert.Equal("low-voltage-test", found.Next!.Task);
    }

    [Fact]
    public void Compound_fields_are_told_by_a_cell_only_and_never_by_low_ac()
    {
        var input = new EndsInput
        {
            Layout = "dc-compound",
            Windings = [new("armature", ["1", "2"]), new("series-field", ["3", "4"]), new("shunt-field", ["5", "6"])],
            Instruments = ["multimeter", "low-voltage-ac", "battery"],
        };
        var next = Find(input).Next!;
        Assert.Equal("battery-flick", next.Test);
        Assert.Equal(["5", "6"], next.Setup.Drive);
        Assert.Equal(["3", "4"], next.Setup.Read);
        var found = Find(input with { Results = [new() { Test = next.Test, Drive = next.Setup.Drive, Read = next.Setup.Read, Outcome = "down-on-make" }] });
        Assert.Equal("4", found.Assignment!["S1"]);
        Assert.Equal("5", found.Assignment["F1"]);
        Assert.Null(Find(input with { Instruments = ["multimeter", "low-voltage-ac"] }).Next);
    }

    [Theory]
    [InlineData("dc-shunt", new[] { "armature", "shunt-field" })]
    [InlineData("series-commutator", new[] { "armature", "series-field" })]
    [InlineData("dc-permanent-magnet", new[] { "armature" })]
    [InlineData("capacitor-start-4", new[] { "run", "start" })]
    [InlineData("psc-4", new[] { "run", "start" })]
    public void Where_ends_only_set_the_direction_they_are_marked_at_once_and_left_to_a_trial(string layout, string[] roles)
    {
        var found = Find(new() { Layout = layout, Windings = [.. roles.Select((role, at) => new EndsWinding(role, [$"{(2 * at) + 1}", $"{(2 * at) + 2}"]))] });
        Assert.Equal(EndsStatus.Settled, found.Status);
        Assert.True(found.DirectionUnproved);
        Assert.Equal(Knowledge.Layouts[layout].Leads.Count, found.Assignment!.Count);
    }

    [Fact]
    public void A_two_speed_ring_is_left_to_a_motor_shop()
    {
        var found = Find(new() { Layout = "two-speed-6", Windings = [new("phase", ["1", "2", "3", "4", "5", "6"]) { Junction = true }], Instruments = Bench });
        Assert.Equal(EndsStatus.CannotTell, found.Status);
        Assert.Equal("ends.ring-by-trial", found.Notes.Single().Id);
    }

    private static EndsFinding Find(EndsInput input) => Finder.Find(input).Value!;
}
