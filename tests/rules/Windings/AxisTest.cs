using WireCoach.Rules.Cases;
using WireCoach.Rules.Practice;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>What ohms leave open and low volts on one winding tell: halves on one axis, phases, a right angle.</summary>
public sealed class AxisTest
{
    private const double Applied = 12;

    private static readonly IdentificationInput Four = new()
    {
        Leads = ["1", "2", "3", "4"],
        HasCapacitor = false,
        Looks = new() { Brushes = false, Speeds = false, BothWays = false },
        TestsAllowed = [AxisEvidence.ByVolts, AxisEvidence.ByFlick],
    };

    private static readonly IdentificationInput Six = Four with { Leads = ["1", "2", "3", "4", "5", "6"] };

    /// <summary>One half has a start winding across it inside: 2.0 Ω and 1.45 Ω are as good as a run and a start winding.</summary>
    private static readonly IdentificationInput Halves = Read(Four, ("1-2", 2.0), ("3-4", 1.45));

    private static readonly IdentificationInput Phases = Read(Six, ("1-2", 6.0), ("3-4", 6.0), ("5-6", 6.0));

    [Fact]
    public void Unequal_pairs_are_two_run_halves_once_each_shows_the_other()
    {
        var asked = IdentifierTest.Give(Halves);
        Assert.Equal((IdentificationStatus.NeedsReading, AxisEvidence.ByVolts), (asked.Status, asked.Next?.Kind));
        Assert.Equal(["3", "4"], asked.Next!.Setup!.Drive); // what lies across the other half would take of its volts
        Assert.Equal(["1", "2"], asked.Next.Setup.Read);

        var once = IdentifierTest.Give(Halves with { Tests = [Test(asked.Next, 6.1)] });
        Assert.Equal((IdentificationStatus.NeedsReading, "windings.axis-once-more"), (once.Status, once.Next?.Why.Id));
        Assert.Equal(["1", "2"], once.Next!.Setup!.Drive);

        var twice = IdentifierTest.Give(Halves with { Tests = [Test(asked.Next, 6.1), Test(once.Next, 5.2)] });
        Assert.Equal(IdentificationStatus.Identified, twice.Status);
        Assert.Equal(["run 1-2", "run 3-4"], twice.Windings.Select(winding => $"{winding.Role} {string.Join('-', winding.Leads)}"));
        Assert.Equal("dual-voltage-4", twice.Layouts[0].Id);
    }

    [Theory]
    [InlineData(0.2, 0.1)]
    [InlineData(6.1, 0.2)]
    [InlineData(6.1, 1.0)]
    public void Halves_that_do_not_both_show_are_not_called_halves(double first, double second)
    {
        var asked = IdentifierTest.Give(Halves).Next!;
        var exchanged = new Fact.BenchTest { Test = asked.Kind, Drive = asked.Setup!.Read, Read = asked.Setup.Drive, AppliedVolts = Applied, Value = second, Unit = "volt" };
        var found = IdentifierTest.Give(Halves with { Tests = [Test(asked, first), exchanged] });
        Assert.False(found.Status == IdentificationStatus.Identified && found.Windings.Any(winding => winding.Role == "start" && Math.Max(first, second) > 4));
        Assert.False(found.Status == IdentificationStatus.Identified && found.Windings.All(winding => winding.Role == "run"));
    }

    /// <summary>Phases that meet in a lead: fed and read would have it in common, and such a test says nothing, however often it is done.</summary>
    [Fact]
    public void Windings_that_share_a_lead_are_not_tested_against_each_other()
    {
        var input = Four with { Readings = [IdentifierTest.Ohms("1-2", 3), IdentifierTest.Ohms("1-3", 3), IdentifierTest.Ohms("1-4", 3), IdentifierTest.Ohms("2-3", 6), IdentifierTest.Ohms("2-4", 6), IdentifierTest.Ohms("3-4", 6)] };
        var meter = new MeterModel(Trade.Knowledge.Identification, input.Meter);
        Measured[] readings = [.. input.Readings.Select((reading, at) => meter.Measure(at, int.Parse(reading.From, null) - 1, int.Parse(reading.To, null) - 1, reading))];
        var bench = new Bench(input, Trade.Knowledge.Identification, new PatternBook(Trade.Knowledge), readings, AxisEvidence.Of(input, Trade.Knowledge), Applied);
        var all = Explanations.Of(bench, readings, faults: false);
        Assert.Equal("three-phase-4", all.Best!.Pattern.Layout.Id);
        Assert.Null(new AxisChoice(bench, readings, (_, _) => true).Wanted(all, all.Best, input.TestsAllowed));
    }

    [Fact]
    public void A_half_with_a_start_winding_across_it_shows_less_and_still_bears_it_out()
    {
        var asked = IdentifierTest.Give(Halves).Next!;
        var once = Halves with { Tests = [Test(asked, 5.0)] };
        Assert.Equal(IdentificationStatus.Identified, IdentifierTest.Give(once with { Tests = [.. once.Tests, Test(IdentifierTest.Give(once).Next!, 2.6)] }).Status);
    }

    [Fact]
    public void Nobody_who_may_not_test_is_asked_to_and_what_would_tell_is_said()
    {
        var found = IdentifierTest.Give(Halves with { TestsAllowed = [] });
        Assert.Equal((IdentificationStatus.CannotTell, null), (found.Status, found.Next));
        var note = Assert.Single(found.Notes, note => note.Id == "windings.axis-would-tell");
        Assert.Equal("3–4", note.Gaps["fed"]);
        Assert.Equal("1–2", note.Gaps["read"]);
    }

    [Fact]
    public void A_main_and_a_capacitor_winding_that_may_change_places_are_not_tested_in_vain()
    {
        var found = IdentifierTest.Give(Read(Four, ("1-2", 20), ("3-4", 21)) with { HasCapacitor = true, CapacitorUse = "run", Looks = new() { Brushes = false, Speeds = false, BothWays = false, CapacitorOutside = true } });
        Assert.Equal((IdentificationStatus.CannotTell, null), (found.Status, found.Next));
        Assert.Equal("1–2", Assert.Single(found.Notes, note => note.Id == "windings.either-way-round").Gaps["one"]);
    }

    /// <summary>A cell has the volts that it has.</summary>
    [Theory]
    [InlineData(AxisEvidence.ByFlick, null)]
    [InlineData(AxisEvidence.ByVolts, Applied)]
    public void The_test_that_is_at_hand_is_asked_for_with_the_volts_that_can_be_set(string test, double? volts)
    {
        var asked = IdentifierTest.Give(Halves with { TestsAllowed = [test] }).Next;
        Assert.Equal((test, volts), (asked?.Kind, asked?.Setup?.AppliedVolts));
    }

    public static TheoryData<string, Fact.BenchTest> NoTests() => new()
    {
        { "nothing is said of the leads", new() { Test = AxisEvidence.ByVolts, Value = 6.1 } },
        { "nothing is read", new() { Test = AxisEvidence.ByVolts, Drive = ["3", "4"], AppliedVolts = Applied, Value = 6.1 } },
        { "nothing is fed", new() { Test = AxisEvidence.ByVolts, Read = ["1", "2"], AppliedVolts = Applied, Value = 6.1 } },
        { "one lead is read", new() { Test = AxisEvidence.ByVolts, Drive = ["3", "4"], Read = ["1"], AppliedVolts = Applied, Value = 6.1 } },
        { "ends are tied", new() { Test = AxisEvidence.ByVolts, Drive = ["3", "4"], Tie = [["4", "1"]], Read = ["1", "2"], AppliedVolts = Applied, Value = 6.1 } },
        { "a lead is fed and read", new() { Test = AxisEvidence.ByVolts, Drive = ["3", "4"], Read = ["4", "1"], AppliedVolts = Applied, Value = 6.1 } },
        { "a lead is not there", new() { Test = AxisEvidence.ByVolts, Drive = ["3", "4"], Read = ["1", "9"], AppliedVolts = Applied, Value = 6.1 } },
        { "nothing was shown", new() { Test = AxisEvidence.ByVolts, Drive = ["3", "4"], Read = ["1", "2"], AppliedVolts = Applied } },
        { "another test", new() { Test = "insulation", Drive = ["3", "4"], Read = ["1", "2"], AppliedVolts = Applied, Value = 6.1 } },
    };

    [Theory]
    [MemberData(nameof(NoTests))]
    public void What_is_no_test_of_one_winding_against_another_tells_nothing(string why, Fact.BenchTest test)
    {
        var (without, with) = (IdentifierTest.Give(Halves), IdentifierTest.Give(Halves with { Tests = [test] }));
        Assert.True((without.Status, without.Next!.Why.Id) == (with.Status, with.Next?.Why.Id), $"{why}: {with.Status} {with.Next?.Why.Id}");
        Assert.Equal(without.Next.Setup!.Drive, with.Next!.Setup!.Drive);
    }

    [Fact]
    public void Where_there_may_be_brushes_nothing_is_fed()
    {
        var found = IdentifierTest.Give(Halves with { Looks = new(), HasCapacitor = null });
        Assert.Null(found.Next?.Setup);
        Assert.DoesNotContain(found.Notes, note => note.Id == "windings.axis-would-tell");
    }

    [Theory]
    [InlineData(3.1, "phase")]
    [InlineData(0.1, "start")]
    public void Three_like_pairs_are_phases_where_each_shows_a_quarter_of_the_other(double volts, string role)
    {
        var input = Phases;
        for (var tests = 0; tests < 4 && IdentifierTest.Give(input) is { Next: { Setup: not null } next }; tests++)
        {
            input = input with { Tests = [.. input.Tests, Test(next, volts)] };
        }

        var found = IdentifierTest.Give(input);
        Assert.NotEmpty(input.Tests);
        Assert.Equal(role == "phase", found.Status == IdentificationStatus.Identified);
        Assert.Equal(role == "phase", found.Layouts[0].Id == "three-phase-6");
    }

    [Fact]
    public void Nothing_seen_twice_says_no_more_than_nothing_seen_once()
    {
        var asked = IdentifierTest.Give(Halves).Next!;
        var exchanged = new Fact.BenchTest { Test = asked.Kind, Drive = asked.Setup!.Read, Read = asked.Setup.Drive, AppliedVolts = Applied, Value = 0.1, Unit = "volt" };
        double Dual(params Fact.BenchTest[] tests) => IdentifierTest.Give(Halves with { TestsAllowed = [], Tests = tests }).Layouts.Single(layout => layout.Id == "dual-voltage-4").Probability;
        var (none, once, twice) = (Dual(), Dual(Test(asked, 0.1)), Dual(Test(asked, 0.1), exchanged));
        Assert.True(once < none);
        Assert.True(twice > once / 2.5, $"{none} {once} {twice}");
    }

    [Fact]
    public void Volts_between_nothing_and_something_say_nothing()
    {
        var asked = IdentifierTest.Give(Halves).Next!;
        Assert.Equal(IdentifierTest.Give(Halves).Layouts, IdentifierTest.Give(Halves with { Tests = [Test(asked, 1.0)] }).Layouts);
    }

    /// <summary>The practice motor's coils and cage are worked out as a network of their own, its start winding across one half.</summary>
    [Fact]
    public void Practice_motors_with_a_start_winding_across_one_half_are_told_by_what_they_show()
    {
        var (told, tested) = (0, 0);
        for (var seed = 1; seed <= 60; seed++)
        {
            var motor = PracticeMotor.Make(Trade.Knowledge, "dual-voltage-4", null, seed, "good").Value!;
            if (motor.Truth.Form != "no-capacitor")
            {
                continue;
            }

            var input = Four with { Leads = motor.Tags, Meter = new() { TestLeadOhms = motor.Probes().Value, Zeroed = false } };
            for (var turn = 0; turn < 20 && IdentifierTest.Give(input) is { Next: { } next, Status: IdentificationStatus.NeedsReading }; turn++)
            {
                input = next.Setup is { } setup ? input with { Tests = [.. input.Tests, motor.Test(next.Kind, setup).Value!] }
                    : input with { Readings = [.. input.Readings, motor.Touch(next.From, next.To, take: turn).Value!] };
            }

            var found = IdentifierTest.Give(input);
            Assert.NotEqual(IdentificationStatus.NeedsReading, found.Status);
            Assert.False(found.Status == IdentificationStatus.Identified && found.Windings.Any(winding => winding.Role == "start"), $"{seed}");
            tested += input.Tests.Count > 0 ? 1 : 0;
            told += found.Status == IdentificationStatus.Identified && input.Tests.Count > 0 ? 1 : 0;
        }

        Assert.True(tested > 5 && told > tested / 2, $"{told} of {tested}");
    }

    private static IdentificationInput Read(IdentificationInput input, params (string Pair, double Ohms)[] windings) =>
        input with { Readings = [.. IdentifierTest.All(input, windings), .. windings.Select(winding => IdentifierTest.Ohms(winding.Pair, winding.Ohms))] };

    private static Fact.BenchTest Test(NextReading asked, double volts) =>
        new() { Test = asked.Kind, Drive = asked.Setup!.Drive, Read = asked.Setup.Read, AppliedVolts = Applied, Value = volts, Unit = "volt" };
}
