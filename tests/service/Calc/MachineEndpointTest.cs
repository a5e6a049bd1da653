using System.Text.Json;

namespace WireCoach.Service.Tests.Calc;

/// <summary>Expected figures are those of the published machine vectors.</summary>
public sealed class MachineEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/machine";

    [Fact]
    public async Task A_quarter_horsepower_motor_on_its_main_winding()
    {
        var answer = await service.Post(Path, new
        {
            kind = "single-phase", r1 = 2.02, x1 = 2.79, r2 = 4.12, x2 = 2.12, xm = 66.8, volts = 110, hertz = 60, poles = 4, slip = 0.05, coreWatts = 24, rotationalWatts = 13,
        });
        double Of(string member) => answer.GetProperty(member).GetDouble();
        Assert.Equal(3.60486096, Of("amps"), 1e-6);
        Assert.Equal(-51.62637527, Of("angleDegrees"), 1e-5);
        Assert.Equal(0.6207869527, Of("powerFactor"), 1e-6);
        Assert.Equal(246.1635715, Of("inputWatts"), 1e-4);
        Assert.Equal(1.098324175, Of("forwardTorque"), 1e-6);
        Assert.Equal(0.06835384559, Of("backwardTorque"), 1e-6);
        Assert.Equal(194.1448333, Of("airGapWatts"), 1e-4);
        Assert.Equal(147.4375916, Of("outputWatts"), 1e-4);
        Assert.Equal(0.8233481231, Of("shaftTorque"), 1e-6);
        Assert.Equal(0.5989415522, Of("efficiency"), 1e-6);
        Assert.Equal(1800, Of("synchronousRpm"));
        Assert.NotEmpty(answer.GetProperty("trail").EnumerateArray());
    }

    [Fact]
    public async Task The_core_loss_may_be_booked_to_the_input_and_the_speed_given_instead_of_the_slip()
    {
        var answer = await service.Post(Path, new
        {
            kind = "single-phase", R1 = 2.02, X1 = 2.79, R2 = 4.12, X2 = 2.12, Xm = 66.8, volts = 110, hertz = 60, poles = 4, rpm = 1710, coreWatts = 24, rotationalWatts = 13, coreBooking = "to-input",
        });
        Assert.Equal(246.1635715 + 24, answer.GetProperty("inputWatts").GetDouble(), 1e-4);
        Assert.Equal(147.4375916 + 24, answer.GetProperty("outputWatts").GetDouble(), 1e-4);
    }

    [Fact]
    public async Task A_permanent_capacitor_motor_runs_and_starts_on_both_windings()
    {
        var answer = await service.Post(Path, new
        {
            kind = "two-winding", main = new { r = 34.14, x = 35.9 }, start = new { r = 149.78, x = 107.44511 }, r2 = 23.25, x2 = 29.32, xm = 248.59, turnsRatio = 1.73,
            microfarads = 4, volts = 230, hertz = 50, poles = 6, rpm = 940, coreWatts = 19.88, rotationalWatts = 1.9, curve = 11,
        });
        double Of(string member) => answer.GetProperty(member).GetDouble();
        Assert.Equal(1.206691426, Of("amps"), 1e-6);
        Assert.Equal(0.9043342624, Of("mainAmps"), 1e-6);
        Assert.Equal(0.5587842778, Of("startAmps"), 1e-6);
        Assert.Equal(444.6663997, Of("capacitorVolts"), 1e-3);
        Assert.Equal(1.48752098, Of("shaftTorque"), 1e-6);
        Assert.Equal(0.5752078314, Of("efficiency"), 1e-6);
        Assert.Equal(0.5204151955, Of("startingTorque"), 1e-6);
        Assert.Equal(2.784588207, answer.GetProperty("starting").GetProperty("mainAmps").GetDouble(), 1e-6);
        var curve = answer.GetProperty("curve").EnumerateArray().ToList();
        Assert.Equal(11, curve.Count);
        Assert.Equal(1.403825, curve[5].GetProperty("torque").GetDouble(), 1e-5);
    }

    [Fact]
    public async Task The_locked_rotor_alone_gives_the_capacitors_for_a_right_angle_and_for_the_greatest_torque()
    {
        var answer = await service.Post(Path, new
        {
            kind = "two-winding", main = new { r = 4.5, x = 3.7 }, start = new { r = 9.5, x = 3.5 }, microfarads = 176.2038568, volts = 120, hertz = 60,
        });
        Assert.Equal(176.2038568, answer.GetProperty("microfaradsFor90Degrees").GetDouble(), 1e-4);
        Assert.Equal(332.0788095, answer.GetProperty("microfaradsForGreatestTorque").GetDouble(), 1e-4);
        Assert.Equal(90, answer.GetProperty("betweenDegrees").GetDouble(), 1e-5);
        Assert.Equal(22.10513024, answer.GetProperty("amps").GetDouble(), 1e-5);
    }

    [Fact]
    public async Task A_three_phase_motor_runs_loses_a_line_and_meets_unequal_volts()
    {
        object Motor(string? open, double[]? unequal, double losses) => new
        {
            kind = "three-phase", r1 = 0.294, x1 = 0.503, r2 = 0.144, x2 = 0.209, xm = 13.25, volts = 220, hertz = 60, poles = 6, slip = 0.02, rotationalWatts = losses, openLine = open, lineVolts = unequal,
        };
        var whole = await service.Post(Path, Motor(null, null, 403));
        Assert.Equal(18.77819387, whole.GetProperty("amps").GetDouble(), 1e-6);
        Assert.Equal(5221.602737, whole.GetProperty("outputWatts").GetDouble(), 1e-2);
        Assert.Equal(174.5643087, whole.GetProperty("breakdownTorque").GetDouble(), 1e-4);
        var lost = await service.Post(Path, Motor("a", null, 0));
        Assert.Equal(29.4832828, lost.GetProperty("amps").GetDouble(), 1e-5);
        Assert.Equal(179.3342412, lost.GetProperty("terminalVolts")[0].GetDouble(), 1e-4);
        var unequal = await service.Post(Path, Motor(null, [230, 220, 210], 0));
        Assert.Equal(10.40116485, unequal.GetProperty("lineAmps")[2].GetDouble(), 1e-5);
    }

    [Fact]
    public async Task Bench_tests_may_stand_in_for_the_circuit()
    {
        var answer = await service.Post(Path, new
        {
            kind = "single-phase", volts = 220, hertz = 50, poles = 4, slip = 0.05,
            tests = new { noLoad = new { volts = 220, amps = 6.5, watts = 360 }, blocked = new { volts = 125, amps = 15, watts = 600 }, r1 = 1.2 },
        });
        Assert.Equal(12.73368809, answer.GetProperty("amps").GetDouble(), 1e-5);
        Assert.Equal(53.66940571, answer.GetProperty("circuit").GetProperty("xm").GetDouble(), 1e-5);
    }

    [Fact]
    public async Task Common_faults_are_answered_in_percent_of_the_sound_machine()
    {
        static JsonElement Effect(JsonElement answer, string fault) => answer.GetProperty("effects").EnumerateArray().Single(effect => effect.GetProperty("fault").GetString() == fault);
        var three = await service.Post(Path, new
        {
            kind = "three-phase", r1 = 0.294, x1 = 0.503, r2 = 0.144, x2 = 0.209, xm = 13.25, volts = 220, hertz = 60, poles = 6, slip = 0.02,
        });
        Assert.Equal("circuit", three.GetProperty("basis").GetString());
        Assert.Equal(81, Effect(three, "low-supply").GetProperty("startingTorque").GetProperty("low").GetDouble(), 1e-9);
        Assert.Equal(90, Effect(three, "low-supply").GetProperty("amps").GetProperty("high").GetDouble(), 1e-9);
        Assert.Equal(0, Effect(three, "lost-line").GetProperty("startingTorque").GetProperty("high").GetDouble(), 1e-9);
        Assert.Equal(100 * Math.Sqrt(3) / 2, Effect(three, "lost-line").GetProperty("startingAmps").GetProperty("low").GetDouble(), 1e-9);
        Assert.Equal(190.7, Effect(three, "lost-line").GetProperty("ampsAtSameTorque").GetProperty("low").GetDouble(), 0.05);
        var two = await service.Post(Path, new { kind = "two-winding", main = new { r = 4.5, x = 3.7 }, start = new { r = 9.5, x = 3.5 }, microfarads = 176.2, volts = 120, hertz = 60 });
        var weak = Effect(two, "weak-capacitor").GetProperty("startingTorque");
        var (sound, half) = (Torque(176.2), Torque(88.1));
        Assert.Equal(100 * half / sound, weak.GetProperty("low").GetDouble(), 1e-6);

        // By hand: the product of both currents and the sine between them.
        static double Torque(double microfarads)
        {
            var (main, start) = (120 / new System.Numerics.Complex(4.5, 3.7), 120 / new System.Numerics.Complex(9.5, 3.5 - (1e6 / (120 * Math.PI * microfarads))));
            return (start * System.Numerics.Complex.Conjugate(main)).Imaginary;
        }
    }

    [Theory]
    [InlineData("single-phase", 115, 9.8, 0.04)]
    [InlineData("two-winding", 115, 9.8, 0.04)]
    [InlineData("three-phase", 230, 9.6, 0.03)]
    public async Task A_plate_alone_gives_an_estimate_with_a_range(string kind, double volts, double amps, double slip)
    {
        var answer = await service.Post(Path, new { kind, plate = new { amps }, microfarads = kind == "two-winding" ? 400 : (double?)null, volts, hertz = 60, poles = 4, slip, curve = 21 });
        Assert.Equal("estimate", answer.GetProperty("basis").GetString());
        var estimates = answer.GetProperty("estimates").EnumerateArray().ToDictionary(one => one.GetProperty("name").GetString()!);
        foreach (var (name, range) in estimates)
        {
            Assert.InRange(answer.GetProperty(name).GetDouble(), range.GetProperty("low").GetDouble() - 1e-9, range.GetProperty("high").GetDouble() + 1e-9);
        }

        Assert.True(estimates["amps"].GetProperty("low").GetDouble() < estimates["amps"].GetProperty("high").GetDouble());
        Assert.InRange(answer.GetProperty("startingAmps").GetDouble() / amps, 3, 9);
        Assert.All(answer.GetProperty("curve").EnumerateArray(), point => Assert.InRange(
            point.GetProperty("torque").GetDouble(), point.GetProperty("torques").GetProperty("low").GetDouble() - 1e-9, point.GetProperty("torques").GetProperty("high").GetDouble() + 1e-9));
    }

    [Theory]
    [InlineData("""{"kind":"three-phase","plate":{"amps":-3},"volts":230,"hertz":60,"poles":4,"slip":0.03}""", "plate.amps")]
    [InlineData("""{"kind":"single-phase"}""", "r1")]
    [InlineData("""{"kind":"linear"}""", "kind")]
    [InlineData("""{"kind":"single-phase","r1":"two","x1":2,"r2":3,"x2":2,"xm":50,"volts":110,"hertz":60,"poles":4,"slip":0.05}""", "r1")]
    [InlineData("""{"kind":"single-phase","r1":2,"x1":2,"r2":3,"x2":2,"xm":50,"volts":110,"hertz":60,"poles":5,"slip":0.05}""", "poles")]
    [InlineData("""{"kind":"single-phase","r1":2,"x1":2,"r2":0,"x2":2,"xm":50,"volts":110,"hertz":60,"poles":4,"slip":0.05}""", "r2")]
    [InlineData("""{"kind":"single-phase","r1":2,"x1":2,"r2":3,"x2":2,"xm":50,"volts":110,"hertz":60,"poles":4,"slip":7}""", "slip")]
    [InlineData("""{"kind":"single-phase","r1":2,"x1":2,"r2":3,"x2":2,"xm":50,"volts":110,"hertz":60,"poles":4,"slip":0.05,"rpm":1700}""", "rpm")]
    [InlineData("""{"kind":"three-phase","r1":2,"x1":2,"r2":3,"x2":2,"xm":50,"lineVolts":[10,20,40],"hertz":60,"poles":4,"slip":0.05}""", "lineVolts")]
    [InlineData("""{"kind":"two-winding","main":{"r":4,"x":3},"start":{"x":3},"volts":120,"hertz":60}""", "start.r")]
    [InlineData("""{"kind":"single-phase","volts":220,"hertz":50,"poles":4,"slip":0.05,"tests":{"noLoad":{"volts":220,"amps":6.5,"watts":360},"blocked":{"volts":125,"amps":15,"watts":600},"r1":5}}""", "tests")]
    [InlineData("[]", "body")]
    public async Task A_wrong_question_is_refused_by_its_member(string json, string field)
    {
        var (status, problem) = await service.PostText(Path, json);
        Assert.Equal(400, status);
        Assert.Equal("invalid-fact", problem.GetProperty("type").GetString());
        Assert.Contains(field, problem.GetProperty("errors").EnumerateObject().Select(member => member.Name));
    }
}
