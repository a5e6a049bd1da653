using WireCoach.Rules.Cases;
using WireCoach.Rules.Practice;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Practice;

/// <summary>What the bench answers, held against what coils of a known motor must answer, and what it will not answer.</summary>
public sealed class BenchTest
{
    private const int Seeds = 25;

    private static readonly PracticeMotor Fan = PracticeMotorTest.Motor("psc-3", null, 1);

    private static readonly Dictionary<string, (Func<IReadOnlyList<Problem>> Asked, string Problem)> Wrong = new(StringComparer.Ordinal)
    {
        ["a layout that is not there"] = (() => Make("three-legged", null).Problems, "invalid-fact practice.layout practice.unknown-layout (layout: three-legged)"),
        ["a fault that it cannot have"] = (() => Make("three-phase-6", "start-capacitor-open").Problems, "invalid-fact practice.fault practice.not-this-fault (fault: start-capacitor-open, layout: three-phase-6)"),
        ["a fault that nothing has"] = (() => Make(null, "gremlins").Problems, "invalid-fact practice.fault practice.not-this-fault (fault: gremlins, layout: )"),
        ["a meter that is not there"] = (() => Make("psc-3", null, "gilded").Problems, "invalid-fact meter practice.no-such-meter (meters: good, fair, cheap)"),
        ["a lead that is not there"] = (() => Fan.Touch("9", "frame").Problems, "unknown-lead from problem.unknown-lead (lead: 9, leads: 1, 2, 3)"),
        ["a lead that is not there, held with another"] = (() => Fan.Touch("1", "2", ["8"]).Problems, "unknown-lead from problem.unknown-lead (lead: 8, leads: 1, 2, 3)"),
        ["a joint with a lead that is not there"] = (() => Fan.Joined([["1", "7"]], "1", "2").Problems, "unknown-lead from problem.unknown-lead (lead: 7, leads: 1, 2, 3)"),
        ["a lead against itself"] = (() => Fan.Touch("1", "1").Problems, "invalid-fact to problem.same-lead (lead: 1)"),
        ["a test on a lead that is not there"] = (() => Asked("series-voltage", ["1", "6"], [], ["1", "2"]), "unknown-lead setup problem.unknown-lead (lead: 6, leads: 1, 2, 3)"),
        ["a test that ties a lead that is not there"] = (() => Asked("series-voltage", ["1", "2"], [["3", "5"]], ["1", "2"]), "unknown-lead setup problem.unknown-lead (lead: 5, leads: 1, 2, 3)"),
        ["a test that reads a lead that is not there"] = (() => Asked("series-impedance", [], [], ["1", "4"]), "unknown-lead setup problem.unknown-lead (lead: 4, leads: 1, 2, 3)"),
        ["a test that feeds nothing"] = (() => Asked("induced-voltage", [], [], ["1", "2"]), "invalid-fact setup practice.setup"),
        ["a test that reads nothing"] = (() => Asked("battery-flick", ["1", "2"], [], ["1"]), "invalid-fact setup practice.setup"),
        ["a start that feeds nothing"] = (() => Asked("soft-first-run", ["1"], [], ["1", "2"]), "invalid-fact setup practice.setup"),
        ["a test that nobody knows"] = (() => Asked("tickle", ["1", "2"], [], ["1", "3"]), "invalid-fact test practice.no-such-test (test: tickle)"),
    };

    public static TheoryData<string> Questions() => [.. Wrong.Keys];

    [Theory]
    [MemberData(nameof(Questions))]
    public void What_cannot_be_asked_is_named(string asked)
    {
        var problem = Spoken.Whole(Assert.Single(Wrong[asked].Asked()));
        Assert.Equal(Wrong[asked].Problem, $"{problem.Id} {problem.Field} {problem.Advice}");
    }

    [Fact]
    public void Leads_stand_in_the_order_of_their_numbers_or_letters()
    {
        string[] numbers = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"], letters = [.. "ABCDEFGHIJKL".Select(letter => $"{letter}")];
        var met = Enumerable.Range(0, Seeds).Select(seed => PracticeMotorTest.Motor("three-phase-12", null, seed).Tags).ToList();
        Assert.All(met, tags => Assert.Equal(tags[0] == "1" ? numbers : letters, tags));
        Assert.Equal(2, met.Select(tags => tags[0]).Distinct(StringComparer.Ordinal).Count());
    }

    /// <summary>The first half is fed and the second read: on one axis it gives the coupling's share, in step with it where the ends that begin both windings are read alike, and a winding at right angles nothing.</summary>
    [Theory]
    [InlineData("capacitor-start-dual-6")]
    [InlineData("capacitor-start-dual-8")]
    public void A_half_that_is_fed_shows_in_the_other_half_and_not_across_the_iron(string layout)
    {
        foreach (var motor in Motors(layout))
        {
            var induced = Value(motor, "induced-voltage", 24, ["T1", "T2"], [], ["T3", "T4"]);
            Assert.InRange(induced / 24, 0.97 * motor.Truth.Coupling, 1.2 * motor.Truth.Coupling);
            Assert.InRange(induced / 24 / Value(motor, "induced-voltage", null, ["T1", "T2"], [], ["T3", "T4"]), 0.8, 1.2);
            Assert.InRange(Value(motor, "induced-voltage", 24, ["T1", "T2"], [], ["T5", "T8"]), 0, 0.1);
            var (help, oppose) = (Value(motor, "series-voltage", 24, ["T1", "T2"], [["T2", "T3"]], ["T1", "T4"]), Value(motor, "series-voltage", 24, ["T1", "T2"], [["T2", "T4"]], ["T1", "T3"]));
            Assert.InRange(help - oppose, 1.2 * induced, 2.1 * induced);
            AssertNear(Math.Sqrt(2 * ((24 * 24) + (induced * induced))), Math.Sqrt((help * help) + (oppose * oppose))); // both diagonals of one parallelogram
            Assert.True(motor.Truth.OnOwnPoles == motor.Truth.Coupling < 0.25, $"{motor.Truth.Coupling}");
            Assert.Equal(("up-on-make", "down-on-make"), (Flick(motor, "T3", "T4"), Flick(motor, "T4", "T3")));
            Assert.Equal("no-kick", Flick(motor, "T5", "T8"));
            Assert.Equal(0, Value(motor, "induced-voltage", 24, ["T1", "T2"], [["T1", "T2"]], ["T3", "T4"])); // the fuse has gone
        }
    }

    /// <summary>A rotor that turns takes no field away: the half that is not fed comes near the volts of the fed one, whatever it showed at rest.</summary>
    [Fact]
    public void While_it_turns_on_one_half_the_other_stands_nearly_at_its_volts()
    {
        foreach (var motor in Motors("capacitor-start-dual-6"))
        {
            Assert.InRange(Value(motor, "half-run", 115, ["T1", "T2"], [], ["T3", "T4"]), 0.85 * 115, 0.95 * 115);
        }
    }

    /// <summary>Ohms against alternating current of two halves one after the other: ω(L1 + L2 ± 2M), so that the two ways add up to four times one half where the halves are alike.</summary>
    [Fact]
    public void Halves_that_help_each_other_hold_back_more_than_halves_that_oppose()
    {
        foreach (var motor in Motors("capacitor-start-dual-6"))
        {
            var (alone, help, oppose) = (Value(motor, "series-impedance", null, [], [], ["T1", "T2"]), Value(motor, "series-impedance", null, [], [["T2", "T3"]], ["T1", "T4"]), Value(motor, "series-impedance", null, [], [["T2", "T4"]], ["T1", "T3"]));
            Assert.True(motor.Truth.OnOwnPoles ? help > 1.9 * alone : help > 2 * oppose, $"{alone} alone, {help}, {oppose}");
            Assert.InRange((help + oppose) / (4 * alone), 0.93, 1.07);
            Assert.Equal(0, Value(motor, "series-impedance", null, [], [], [.. "T1 T5".Split(' ')]));
        }
    }

    /// <summary>Phases 120° apart show half of what two coils on one axis show, the other way round.</summary>
    [Fact]
    public void A_phase_shows_in_the_next_phase_by_half_and_turned_round()
    {
        foreach (var motor in Motors("three-phase-6"))
        {
            Assert.InRange(Value(motor, "induced-voltage", 12, ["T1", "T4"], [], ["T2", "T5"]) / 6, 0.97 * motor.Truth.Coupling, 1.2 * motor.Truth.Coupling);
            Assert.Equal(("down-on-make", "up-on-make"), (Flick(motor, "T2", "T5", ["T1", "T4"]), Flick(motor, "T5", "T2", ["T1", "T4"])));
        }
    }

    [Fact]
    public void On_the_low_supply_the_high_connection_turns_and_one_with_a_half_turned_round_hums()
    {
        foreach (var motor in Motors("capacitor-start-dual-6"))
        {
            string Soft(string from, string to) => motor.Test("soft-first-run", new(Tags(motor, "T1", to), [Tags(motor, "T2", from, "T8"), Tags(motor, to, "T5")], [], 115)).Value!.Outcome!;
            Assert.Equal(("ran", "hummed"), (Soft("T3", "T4"), Soft("T4", "T3")));
        }
    }

    [Fact]
    public void What_is_measured_says_how()
    {
        var (motor, setup) = (PracticeMotorTest.Motor("capacitor-start-dual-6", null, 1), new TestSetup(["1", "2"], [["3", "4"]], ["5", "6"], 24));
        foreach (var (test, unit) in new[] { ("series-voltage", "volt"), ("induced-voltage", "volt"), ("half-run", "volt"), ("series-impedance", "ohm"), ("battery-flick", null), ("soft-first-run", null) })
        {
            var told = motor.Test(test, setup).Value!;
            Assert.Equal((test, unit, unit is null, FactEntry.Probe), (told.Test, told.Unit, told.Outcome is not null, told.How));
            Assert.Equal((setup.Drive, setup.Tie, setup.Read, setup.AppliedVolts), (told.Drive, told.Tie, told.Read, told.AppliedVolts));
        }

        Assert.Equal((1000, 20, 1), (motor.Insulation(1000).TestVolts, motor.Insulation().Celsius, motor.Insulation().AtMinute));
    }

    [Theory]
    [InlineData("good")]
    [InlineData("fair")]
    [InlineData("cheap")]
    public void A_reading_taken_again_differs_by_the_meters_error_and_another_reading_by_more(string meter)
    {
        foreach (var motor in Motors("capacitor-start-dual-6", meter))
        {
            var (from, to, true1) = (motor.Truth.Leads["T1"], motor.Truth.Leads["T2"], motor.Truth.Ohms["run-1"]!.Value);
            var takes = Enumerable.Range(0, 12).Select(take => motor.Touch(from, to, take: take).Value!).ToList();
            Assert.All(takes, one => Assert.All(takes, other => Assert.True(motor.Agree(one, other))));
            Assert.True(meter == "good" || takes.Select(one => one.Ohms).Distinct().Count() > 1);
            // One percent and two counts at worst, a fifth of it at best, a half count of rounding, and the probes.
            Assert.All(takes, one => Assert.InRange(one.Ohms!.Value - true1 - 0.2, -Worst(meter, true1), Worst(meter, true1)));
            Assert.False(motor.Agree(takes[0], takes[0] with { Ohms = takes[0].Ohms + 0.1 + (2.2 * Worst(meter, true1)) }));
            Assert.False(motor.Agree(takes[0] with { Ohms = takes[0].Ohms + 0.1 + (2.2 * Worst(meter, true1)) }, takes[0]));
            var open = motor.Touch(from, motor.Truth.Leads["T3"]).Value!;
            Assert.Equal([false, false, true, false, false], new[] { motor.Agree(open, takes[0]), motor.Agree(takes[0], open), motor.Agree(open, open), motor.Agree(open, open with { Kick = true }), motor.Agree(open with { Kick = true }, open) });
        }
    }

    [Fact]
    public void Joined_halves_read_as_halves_side_by_side_and_one_after_the_other()
    {
        foreach (var motor in Motors("capacitor-start-dual-6"))
        {
            var (one, other) = (motor.Truth.Ohms["run-1"]!.Value, motor.Truth.Ohms["run-2"]!.Value);
            double Joined(string from, string to, params IReadOnlyList<IReadOnlyList<string>> joints) => motor.Joined([.. joints.Select(joint => Tags(motor, [.. joint]))], motor.Truth.Leads[from], motor.Truth.Leads[to]).Value!.Ohms!.Value;
            AssertNear(0.2 + (1 / ((1 / one) + (1 / other))), Joined("T1", "T2", ["T1", "T3"], ["T2", "T4"]), 0.3);
            AssertNear(0.2 + one + other, Joined("T1", "T4", ["T2", "T3"]), 0.3 + (0.01 * (one + other)));
            Assert.True(motor.Joined([Tags(motor, "T1", "T5"), Tags(motor, "T2", "T8")], motor.Truth.Leads["T3"], motor.Truth.Leads["T5"]).Value!.Open);
            Assert.True(motor.Joined([], motor.Truth.Leads["T5"], motor.Truth.Leads["T8"]).Value is { Open: true, Kick: true });
            Assert.False(motor.Joined([], motor.Truth.Leads["T5"], motor.Truth.Leads["T8"], capacitorsBridged: true).Value!.Open);
        }
    }

    [Fact]
    public void A_protector_that_tripped_passes_once_it_is_reset()
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var motor = PracticeMotorTest.Motor("sealed-compressor-3", "protector-open", seed);
            Assert.True(motor.Touch(motor.Truth.Leads["C"], motor.Truth.Leads["R"]).Value!.Open);
            Assert.False(motor.Touch(motor.Truth.Leads["C"], motor.Truth.Leads["R"], pressOverload: true).Value!.Open);
        }
    }

    private static double Worst(string meter, double ohms) => 0.051 + ((meter switch { "good" => 0.2, "fair" => 0.6, _ => 1.0 }) * ((0.01 * (ohms + 0.2)) + 0.2));

    private static Answer<PracticeMotor> Make(string? layout, string? fault, string? meter = null) => PracticeMotor.Make(Trade.Knowledge, layout, fault, 1, meter);

    private static IReadOnlyList<Problem> Asked(string test, IReadOnlyList<string> drive, IReadOnlyList<IReadOnlyList<string>> tie, IReadOnlyList<string> read) => Fan.Test(test, new(drive, tie, read, 24)).Problems;

    private static IEnumerable<PracticeMotor> Motors(string layout, string? meter = null) => Enumerable.Range(0, Seeds).Select(seed => PracticeMotor.Make(Trade.Knowledge, layout, null, seed, meter).Value!).Where(motor => motor.Truth.Form is null);

    private static IReadOnlyList<string> Tags(PracticeMotor motor, params IReadOnlyList<string> marks) => [.. marks.Select(mark => motor.Truth.Leads[mark])];

    private static double Value(PracticeMotor motor, string test, double? volts, IReadOnlyList<string> drive, IReadOnlyList<IReadOnlyList<string>> tie, IReadOnlyList<string> read) =>
        motor.Test(test, new(Tags(motor, drive), [.. tie.Select(joint => Tags(motor, joint))], Tags(motor, read), volts)).Value!.Value!.Value;

    private static string Flick(PracticeMotor motor, string from, string to, IReadOnlyList<string>? cell = null) =>
        motor.Test("battery-flick", new(Tags(motor, cell ?? ["T1", "T2"]), [], Tags(motor, from, to), null)).Value!.Outcome!;

    /// <summary>Within two percent, the meter's own error and the spread of coils that are meant to be alike.</summary>
    private static void AssertNear(double expected, double shown, double beside = 0) => Assert.InRange(shown, expected - (0.03 * expected) - beside - 0.01, expected + (0.03 * expected) + beside + 0.01);
}
