using WireCoach.Rules.Machines;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Machines;

/// <summary>A question about a machine is answered whole, or refused by the member that is wrong.</summary>
public sealed class MachineQuestionTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    private static readonly MachineQuestion Single = new()
    {
        Kind = "single-phase", R1 = 2.02, X1 = 2.79, R2 = 4.12, X2 = 2.12, Xm = 66.8, Volts = 110, Hertz = 60, Poles = 4, Slip = 0.05, CoreWatts = 24, RotationalWatts = 13,
    };

    private static readonly MachineQuestion Two = new()
    {
        Kind = "two-winding", R1 = 34.14, X1 = 35.9, StartR = 149.78, StartX = 107.44511, R2 = 23.25, X2 = 29.32, Xm = 248.59, TurnsRatio = 1.73, Microfarads = 4, Volts = 230, Hertz = 50, Poles = 6, Rpm = 940,
        CoreWatts = 19.88, RotationalWatts = 1.9, Curve = 11,
    };

    private static readonly MachineQuestion Still = new() { Kind = "two-winding", R1 = 4.5, X1 = 3.7, StartR = 9.5, StartX = 3.5, Microfarads = 176.2038568, Volts = 120, Hertz = 60 };

    private static readonly MachineQuestion Three = new()
    {
        Kind = "three-phase", R1 = 0.294, X1 = 0.503, R2 = 0.144, X2 = 0.209, Xm = 13.25, Volts = 220, Hertz = 60, Poles = 6, Slip = 0.02,
    };

    public static TheoryData<string, MachineQuestion, string> Wrong() => new()
    {
        { "kind", Single with { Kind = "linear" }, "machines.kind" },
        { "r1", Single with { R1 = null }, "problem.missing" },
        { "r1", Single with { R1 = -1 }, "machines.out-of-range" },
        { "r1", Single with { R1 = 2e9 }, "machines.out-of-range" },
        { "x1", Single with { X1 = null }, "problem.missing" },
        { "r2", Single with { R2 = 0 }, "machines.out-of-range" },
        { "r2", Single with { R2 = null }, "problem.missing" },
        { "x2", Single with { X2 = null }, "problem.missing" },
        { "xm", Single with { Xm = 0 }, "machines.out-of-range" },
        { "rc", Single with { Rc = 0 }, "machines.out-of-range" },
        { "main.r", Two with { R1 = null }, "problem.missing" },
        { "main.x", Two with { X1 = -1 }, "machines.out-of-range" },
        { "start.r", Two with { StartR = null }, "problem.missing" },
        { "start.x", Two with { StartX = null }, "problem.missing" },
        { "turnsRatio", Two with { TurnsRatio = null }, "problem.missing" },
        { "turnsRatio", Two with { TurnsRatio = 0 }, "machines.out-of-range" },
        { "microfarads", Two with { Microfarads = 0 }, "machines.out-of-range" },
        { "startVolts", Two with { StartVolts = -1 }, "machines.out-of-range" },
        { "main.r", Still with { R1 = 0 }, "machines.out-of-range" },
        { "hertz", Still with { Hertz = null }, "problem.missing" },
        { "plate.amps", Three with { PlateAmps = -3 }, "machines.out-of-range" },
        { "plate.volts", Three with { PlateVolts = 0 }, "machines.out-of-range" },
        { "volts", Single with { Volts = null }, "problem.missing" },
        { "hertz", Single with { Hertz = 0 }, "machines.out-of-range" },
        { "coreWatts", Single with { CoreWatts = -1 }, "machines.out-of-range" },
        { "rotationalWatts", Single with { RotationalWatts = -1 }, "machines.out-of-range" },
        { "poles", Single with { Poles = null }, "problem.missing" },
        { "poles", Single with { Poles = 5 }, "machines.poles" },
        { "poles", Single with { Poles = 98 }, "machines.poles" },
        { "lineVolts", Three with { LineVolts = [10, 20, 40] }, "machines.no-triangle" },
        { "lineVolts", Three with { LineVolts = [10, 20] }, "machines.no-triangle" },
        { "lineVolts", Three with { LineVolts = [0, 20, 20] }, "machines.no-triangle" },
        { "openLine", Three with { OpenLine = "d" }, "machines.open-line" },
        { "coreBooking", Single with { CoreBooking = "elsewhere" }, "machines.core-booking" },
        { "curve", Single with { Curve = 1 }, "machines.curve" },
        { "curve", Single with { Curve = 2.5 }, "machines.curve" },
        { "curve", Single with { Curve = 2001 }, "machines.curve" },
        { "rpm", Single with { Rpm = 1710 }, "machines.slip-and-rpm" },
        { "slip", Single with { Slip = null }, "problem.missing" },
        { "slip", Single with { Slip = 7 }, "machines.slip-out-of-range" },
        { "rpm", Single with { Slip = null, Rpm = 4000 }, "machines.slip-out-of-range" },
        { "r2", Still with { Poles = 4, Slip = 0.5 }, "machines.rotor-needed" },
        { "tests", Single with { R1 = null, X1 = null, R2 = null, X2 = null, Xm = null, Volts = 220, Hertz = 50, Tests = new(new(220, 6.5, 360), new(125, 15, 600), 5, 1, null) }, "machines.tests-contradict" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_wrong_question_is_refused_by_its_member(string field, MachineQuestion question, string advice)
    {
        var problems = MachineAnswers.Of(question, Knowledge).Problems;
        var problem = Assert.Single(problems);
        Assert.Equal((field, advice), (problem.Field, problem.Advice.Id));
        Assert.NotEmpty(Spoken.Lines(problem));
    }

    public static TheoryData<string, MachineQuestion> Edges() => new()
    {
        { "a standstill has no speed", Still },
        { "no capacitor needs no hertz", Still with { Microfarads = null, Hertz = null } },
        { "a start winding without reactance", Two with { StartX = 0 } },
        { "a rotor without reactance", Single with { X2 = 0 } },
        { "two poles", Single with { Poles = 2 } },
        { "as many poles as there are", Single with { Poles = 96 } },
        { "two points", Single with { Curve = 2 } },
        { "many points", Single with { Curve = 2000 } },
        { "a curve without a slip", Single with { Slip = null, Curve = 5 } },
        { "braking", Single with { Slip = 2 } },
        { "generating", Single with { Slip = -1 } },
        { "a flat triangle", Three with { LineVolts = [10, 20, 30] } },
        { "lines instead of volts", Three with { Volts = null, LineVolts = [220, 220, 220] } },
        { "volts on the start winding that are none", Two with { StartVolts = 0 } },
    };

    [Theory]
    [MemberData(nameof(Edges))]
    public void What_is_at_its_edge_is_answered(string edge, MachineQuestion question) => Assert.True(MachineAnswers.Of(question, Knowledge).IsGiven, edge);

    [Fact]
    public void A_single_phase_motor_is_answered_whole()
    {
        var answer = Of(Single);
        Assert.Equal([3.60486096, -51.62637525, 0.6207869527, 246.1635715], new[] { answer.Amps, answer.AngleDegrees, answer.PowerFactor, answer.InputWatts }.Select(one => one!.Value), (one, other) => Math.Abs(one - other) < 1e-4);
        Assert.Equal([1.098324175, 0.06835384559, 194.1448333, 147.4375916, 0.8233481231, 0.5989415522], new[] { answer.ForwardTorque, answer.BackwardTorque, answer.AirGapWatts, answer.OutputWatts, answer.ShaftTorque, answer.Efficiency }.Select(one => one!.Value), (one, other) => Math.Abs(one - other) < 1e-4);
        Assert.Equal((1800, 1710, 0.05, 0, "circuit"), (answer.SynchronousRpm, Math.Round(answer.Rpm, 6), answer.Slip, answer.StartingTorque, answer.Basis));
        var booked = Of(Single with { Slip = null, Rpm = 1710, CoreBooking = "to-input" });
        Assert.Equal(answer.InputWatts!.Value + 24, booked.InputWatts!.Value, 1e-6);
        Assert.Equal(answer.OutputWatts!.Value + 24, booked.OutputWatts!.Value, 1e-6);
        Assert.Contains(booked.Trail, step => step.Formula.StartsWith("Pin", StringComparison.Ordinal));
    }

    [Fact]
    public void A_motor_with_two_windings_runs_and_starts_on_both()
    {
        var answer = Of(Two);
        Assert.Equal([1.206691426, 0.9043342624, 0.5587842778, 1.48752098, 0.5752078314, 0.5204151955], new[] { answer.Amps, answer.MainAmps, answer.StartAmps, answer.ShaftTorque, answer.Efficiency, answer.StartingTorque }.Select(one => one!.Value), (one, other) => Math.Abs(one - other) < 1e-5);
        Assert.Equal(444.6663997, answer.CapacitorVolts!.Value, 1e-3);
        Assert.Equal(2.784588207, answer.Starting!.MainAmps, 1e-5);
        Assert.Equal(11, answer.Curve!.Count);
        Assert.Equal(1.403825, answer.Curve[5].Torque, 1e-5);
        Assert.Null(Of(Two with { Microfarads = null }).CapacitorVolts);
    }

    [Fact]
    public void At_standstill_the_capacitors_follow_from_the_windings()
    {
        var answer = Of(Still);
        Assert.Equal([176.2038568, 332.0788095, 90, 22.10513024], new[] { answer.MicrofaradsFor90Degrees, answer.MicrofaradsForGreatestTorque, answer.BetweenDegrees, answer.Amps }.Select(one => one!.Value), (one, other) => Math.Abs(one - other) < 1e-4);
        Assert.Equal((1, 0, 0, null), (answer.Slip, answer.Rpm, answer.OutputWatts, answer.SynchronousRpm));
        Assert.Equal(1800, Of(Still with { Poles = 4 }).SynchronousRpm);
        Assert.Null(Of(Still with { Microfarads = null }).CapacitorVolts);
    }

    [Fact]
    public void Three_phases_run_lose_a_line_and_meet_unequal_volts()
    {
        var whole = Of(Three with { RotationalWatts = 403 });
        Assert.Equal([18.77819387, 5221.602737, 174.5643087], new[] { whole.Amps, whole.OutputWatts, whole.BreakdownTorque }.Select(one => one!.Value), (one, other) => Math.Abs(one - other) < 1e-2);
        Assert.Null(whole.LineAmps);
        var lost = new[] { "a", "b", "c" }.Select(line => Of(Three with { OpenLine = line })).ToList();
        Assert.All(lost.Select((answer, at) => (answer, at)), one =>
        {
            Assert.Equal(29.4832828, one.answer.Amps!.Value, 1e-5);
            Assert.Equal(0, one.answer.LineAmps![one.at], 1e-9); // the line that is open, and no other
            Assert.All(Enumerable.Range(0, 3).Where(line => line != one.at), line => Assert.Equal(29.4832828, one.answer.LineAmps[line], 1e-5));
            Assert.Equal(220, one.answer.TerminalVolts![(one.at + 1) % 3], 1e-6); // between the two that are left
            Assert.True(one.answer.BreakdownTorque < whole.BreakdownTorque);
        });
        var unequal = Of(Three with { LineVolts = [230, 220, 210] });
        Assert.Equal(10.40116485, unequal.LineAmps![2], 1e-5);
        Assert.Null(unequal.BreakdownTorque);
    }

    [Fact]
    public void Bench_tests_may_stand_in_for_the_circuit()
    {
        var tests = new MachineTests(new(220, 6.5, 360), new(125, 15, 600), 1.2, 1, null);
        var answer = Of(new() { Kind = "single-phase", Volts = 220, Hertz = 50, Poles = 4, Slip = 0.05, Tests = tests });
        Assert.Equal(("tests", 12.73368809, 53.66940571), (answer.Basis, Math.Round((double)answer.Amps!, 8), Math.Round((double)answer.Circuit!.Xm!, 8)));
        var three = new MachineTests(new(220, 5, 400), new(60, 15, 700), 0.3, 1, 15);
        Assert.True(Of(new() { Kind = "three-phase", Volts = 220, Hertz = 60, Poles = 6, Slip = 0.02, Tests = three }).Circuit!.X1 > Of(new() { Kind = "three-phase", Volts = 220, Hertz = 60, Poles = 6, Slip = 0.02, Tests = three with { BlockedHertz = null } }).Circuit!.X1); // at a quarter of the hertz the same volts mean four times the reactance
    }

    [Theory]
    [InlineData("single-phase", 115, 9.8)]
    [InlineData("two-winding", 115, 9.8)]
    [InlineData("three-phase", 230, 9.6)]
    public void A_plate_alone_gives_an_estimate_between_its_ends(string kind, double volts, double amps)
    {
        var answer = Of(new() { Kind = kind, PlateAmps = amps, Microfarads = kind == "two-winding" ? 400 : null, Volts = volts, Hertz = 60, Poles = 4, Slip = 0.04, Curve = 5 });
        Assert.Equal("estimate", answer.Basis);
        var figures = typeof(MachineAnswer).GetProperties().ToDictionary(member => char.ToLowerInvariant(member.Name[0]) + member.Name[1..], member => member.GetValue(answer), StringComparer.Ordinal);
        Assert.Contains("powerFactor", answer.Estimates!.Select(one => one.Name));
        Assert.All(answer.Estimates!, one => Assert.InRange((double)figures[one.Name]!, one.Low - 1e-9, one.High + 1e-9));
        Assert.All(answer.Curve!, point => Assert.InRange(point.Torque, point.Torques!.Low - 1e-9, point.Torques.High + 1e-9));
        Assert.InRange(answer.StartingAmps!.Value / amps, 3, 9);
    }

    [Fact]
    public void Every_step_of_the_trail_says_what_it_rests_on()
    {
        foreach (var question in new[] { Single, Single with { CoreBooking = "to-input" }, Two, Still, Three, Three with { OpenLine = "a" }, Three with { LineVolts = [230, 220, 210] } })
        {
            Assert.All(Of(question).Trail, step => Assert.All([step.Step, step.Formula, step.Inputs, step.Result], Assert.NotEmpty));
        }

        var trail = Of(Two).Trail;
        Assert.Contains(trail, step => step.Inputs == "a = 1.73");
        Assert.Contains(trail, step => step.Inputs == "50 Hz, 6 poles");
        Assert.Contains(Of(Single).Trail, step => step.Inputs == "core 24 W, friction and windage 13 W");
        Assert.Contains(Of(Single).Trail, step => step.Result.StartsWith("3.605 A", StringComparison.Ordinal));
    }

    private static MachineAnswer Of(MachineQuestion question) => MachineAnswers.Of(question, Knowledge).Value!;
}
