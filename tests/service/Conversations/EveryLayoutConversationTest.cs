using System.Numerics;
using System.Text.Json;

namespace WireCoach.Service.Tests.Conversations;

/// <summary>From unmarked leads to a verified first run for every layout, held through HTTP; the joints are judged by circuit laws.</summary>
public sealed class EveryLayoutConversationTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Six = "phase T1 T4 6 0; phase T2 T5 6 120; phase T3 T6 6 240";
    private const string NineStar = "phase T1 T4 1.5 0; phase T2 T5 1.5 120; phase T3 T6 1.5 240; phase T7 n 1.5 0; phase T8 n 1.5 120; phase T9 n 1.5 240";
    private const string NineDelta = "phase T1 T4 4 0; phase T7 T2 4 0; phase T2 T5 4 120; phase T8 T3 4 120; phase T3 T6 4 240; phase T9 T1 4 240";
    private const string Twelve = "phase T1 T4 4 0; phase T7 T10 4 0; phase T2 T5 4 120; phase T8 T11 4 120; phase T3 T6 4 240; phase T9 T12 4 240";
    private const string Eight = "run T1 T2 1.5 0; run T3 T4 1.5 0; start T6 T5 4.2 90; start T8 T7 4.2 90";

    /// <summary>Coils, plate volts, supply, and the volts that each coil then has over the line volts.</summary>
    public static TheoryData<string, string, double[], double, double> ThreePhase() => new()
    {
        { "six in star", Six, [230, 400], 400, 1 / Math.Sqrt(3) },
        { "six in delta", Six, [230, 400], 230, 1 },
        { "nine star low", NineStar, [230, 460], 230, 1 / Math.Sqrt(3) },
        { "nine star high", NineStar, [230, 460], 460, 0.5 / Math.Sqrt(3) },
        { "nine delta low", NineDelta, [230, 460], 230, 1 },
        { "nine delta high", NineDelta, [230, 460], 460, 0.5 },
        { "twelve", Twelve, [230, 460], 460, 0.5 },
    };

    [Theory]
    [MemberData(nameof(ThreePhase))]
    public async Task Three_phase_leads_without_marks_are_told_and_every_coil_gets_its_volts_in_its_phase(string name, string coils, double[] plate, double supply, double share)
    {
        for (var seed = 1; seed <= 3; seed++)
        {
            var motor = new WoundBench(coils, seed, capacitor: false);
            var client = await Held(motor, plate, supply, phases: 3);
            Assert.True(client.Status == "verified", $"{name} {seed}: {client.Status} {client.Assessment.GetProperty("planMissing")} {string.Join(", ", client.Asked.TakeLast(6))}");
            AssertThreePhase(motor.Powered(Joints(client.Plan)), share);
        }
    }

    [Theory]
    [InlineData(230, 0.5)]
    [InlineData(115, 1.0)]
    public async Task Two_run_halves_and_two_start_halves_all_help_each_other(double supply, double share)
    {
        var motor = new WoundBench(Eight, 5, capacitor: true);
        var client = await Held(motor, [115, 230], supply, phases: 1);
        Assert.Equal("verified", client.Status);
        AssertAiding(motor.Powered(Joints(client.Plan)), share);
    }

    /// <summary>Coils, plate and supply volts of motors whose ends only set the direction, or that have one winding each.</summary>
    public static TheoryData<string, string, double, int, bool> OneVoltage() => new()
    {
        { "fan with three speeds", "run C HI 14 0; run HI MED 4 0; run MED LO 4 0; start C CAP 30 90", 230, 1, false },
        { "three leads", "phase T1 n 3 0; phase T2 n 3 120; phase T3 n 3 240", 230, 3, false },
        { "two windings for two speeds", "phase T1 n 4 0; phase T2 n 4 120; phase T3 n 4 240; phase T11 m 9 0; phase T12 m 9 120; phase T13 m 9 240", 460, 3, false },
        { "part winding", "phase T1 n 3 0; phase T2 n 3 120; phase T3 n 3 240; phase T7 m 3 0; phase T8 m 3 120; phase T9 m 3 240", 460, 3, false },
        { "compound", "armature A1 A2 1.4 90; series-field S1 S2 0.5 0; shunt-field F1 F2 300 0", 180, 0, false },
        { "series", "armature A1 A2 2.4 90; series-field S1 S2 1.1 0", 120, 1, false },
    };

    [Theory]
    [MemberData(nameof(OneVoltage))]
    public async Task Motors_for_one_voltage_come_to_a_plan_that_feeds_every_winding(string name, string coils, double volts, int phases, bool capacitor)
    {
        var motor = new WoundBench(coils, 5, capacitor);
        var client = await Held(motor, [volts], volts, phases, instrument: phases == 3 ? "low-voltage-ac" : "battery");
        Assert.True(client.Plan.ValueKind == JsonValueKind.Object, $"{name}: {client.Status} {client.Assessment.GetProperty("planMissing")} {client.Assessment.GetProperty("identification")} {client.Assessment.GetProperty("ends")} {string.Join(", ", client.Asked.TakeLast(6))}");
        Assert.Equal("verified", client.Status);
        AssertFed(motor.Powered(Joints(client.Plan)), phases);
    }

    /// <summary>Motors of which a look tells what ohms do not: a second pair beside an armature may be a field or a brake, two windings with a common lead two like ones or a main and a capacitor winding.</summary>
    [Theory]
    [InlineData("armature A1 A2 1.4 90; shunt-field F1 F2 300 0", 180, 0, false, "shaft-drag")]
    [InlineData("run C X 40 0; run C Y 40 90", 115, 1, true, "both-ways")]
    public async Task What_a_look_tells_leads_to_a_plan(string coils, double volts, int phases, bool bothWays, string look)
    {
        var motor = new WoundBench(coils, 5, capacitor: bothWays) { BothWays = bothWays, CapacitorOutside = bothWays };
        var client = await Held(motor, [volts], volts, phases, instrument: "battery");
        Assert.Contains(look, client.Asked);
        Assert.True(client.Plan.ValueKind == JsonValueKind.Object, $"{client.Status} {client.Assessment.GetProperty("planMissing")} {client.Assessment.GetProperty("identification")} {string.Join(", ", client.Asked.TakeLast(6))}");
        Assert.Equal("verified", client.Status);
        AssertFed(motor.Powered(Joints(client.Plan)), phases);
    }

    /// <summary>One half reads lower because a start winding lies across it inside: to the ohmmeter a run and a start winding. Low volts on one pair, and then on the other, tell.</summary>
    [Theory]
    [InlineData("low-voltage-ac", "induced-voltage")]
    [InlineData("battery", "battery-flick")]
    public async Task Halves_that_ohms_leave_open_are_told_by_what_they_show_of_each_other(string instrument, string test)
    {
        var motor = new WoundBench("run T1 T2 2 0; run T3 T4 2 0; start T3 T4 5 90", 5, capacitor: false);
        var client = await Held(motor, [115, 230], 230, phases: 1, instrument: instrument);
        Assert.Contains(client.Asked, asked => asked.StartsWith($"ends.{test}.", StringComparison.Ordinal));
        Assert.True(client.Plan.ValueKind == JsonValueKind.Object, $"{client.Status} {client.Assessment.GetProperty("planMissing")} {client.Assessment.GetProperty("identification")} {client.Assessment.GetProperty("ends")} {string.Join(", ", client.Asked.TakeLast(6))}");
        Assert.Equal("dual-voltage-4", client.Assessment.GetProperty("identification").GetProperty("layouts")[0].GetProperty("id").GetString());
        AssertAiding(motor.Powered(Joints(client.Plan)), 0.5);
    }

    /// <summary>Two groups of three leads of which one comes from slip rings: told by looking, and never connected without the diagram of the starter.</summary>
    [Fact]
    public async Task A_rotor_with_slip_rings_is_told_by_looking_and_goes_on_no_line()
    {
        var client = await Held(new WoundBench("phase T1 n 3 0; phase T2 n 3 120; phase T3 n 3 240; rotor K m 1.1 0; rotor L m 1.1 120; rotor M m 1.1 240", 5, capacitor: false), [460], 460, phases: 3);
        Assert.Contains(client.Asked, asked => asked.StartsWith("ring-leads.", StringComparison.Ordinal));
        var identification = client.Assessment.GetProperty("identification");
        Assert.Equal(("identified", "wound-rotor-6"), (identification.GetProperty("status").GetString(), identification.GetProperty("layouts")[0].GetProperty("id").GetString()));
        Assert.Single(identification.GetProperty("windings").EnumerateArray(), winding => winding.GetProperty("role").GetString() == "rotor");
        Assert.Equal(("open", JsonValueKind.Null), (client.Status, client.Plan.ValueKind));
        Assert.Equal("layout", client.Assessment.GetProperty("planMissing")[0].GetString());
        Assert.Contains("resistors and never on the mains", client.Assessment.GetProperty("say").ToString(), StringComparison.Ordinal);
        Assert.Contains("starter's resistors", client.Assessment.GetProperty("noPlan").GetString(), StringComparison.Ordinal);
    }

    /// <summary>Kinds that neither ohms nor a look tell.</summary>
    [Theory]
    [InlineData("phase T1 T6 4 0; phase T6 T2 4 0; phase T2 T5 4 120; phase T5 T3 4 120; phase T3 T4 4 240; phase T4 T1 4 240", 460, 3)]
    [InlineData("run T1 T4 14 0; start T5 T8 25 90", 230, 1, true)]
    public async Task What_no_reading_tells_is_said_and_never_connected(string coils, double volts, int phases, bool capacitor = false)
    {
        var client = await Held(new WoundBench(coils, 5, capacitor), [volts], volts, phases, instrument: "battery");
        Assert.Equal(("referred", JsonValueKind.Null), (client.Status, client.Plan.ValueKind));
        Assert.NotEmpty(client.Assessment.GetProperty("identification").GetProperty("windings").EnumerateArray());
    }

    private async Task<MemberClient> Held(WoundBench motor, double[] plate, double supply, int phases, string instrument = "low-voltage-ac", double horsepower = 1, double[]? amps = null)
    {
        var client = new MemberClient(service.Client, new WoundAnswers(motor) { SupplyVolts = supply, SupplyPhases = phases, Instrument = instrument });
        var motorPlate = new Dictionary<string, object> { ["horsepower"] = horsepower, ["volts"] = plate, ["amps"] = amps ?? [.. plate.Select(volts => 3000 / volts)], ["rpm"] = 1740 };
        if (phases > 0)
        {
            (motorPlate["hertz"], motorPlate["phases"]) = (60, phases);
        }

        await client.Hold(new { role = "technician", region = "na", instruments = new[] { "multimeter", "insulation-tester", "clamp-meter", instrument }, motorTag = "bench", motor = motorPlate });
        return client;
    }

    /// <summary>All coils have the wanted volts, and lie in the circuit as they lie in the iron, one way round or the other.</summary>
    private static void AssertThreePhase(IReadOnlyList<(string Role, Complex Volts, int Degrees)> coils, double share)
    {
        Assert.All(coils, coil => Assert.Equal(share, coil.Volts.Magnitude, 3));
        bool Lies(int turn) => coils.Select(coil => coil.Volts * Complex.FromPolarCoordinates(1, turn * coil.Degrees * Math.PI / 180))
            .All(volts => (volts - (coils[0].Volts * Complex.FromPolarCoordinates(1, turn * coils[0].Degrees * Math.PI / 180))).Magnitude < 1e-3);
        Assert.True(Lies(1) || Lies(-1), string.Join("; ", coils.Select(coil => $"{coil.Degrees}: {coil.Volts.Phase * 180 / Math.PI:0}°")));
    }

    /// <summary>Coils of one role push the same way, run coils with the wanted volts; the start branch is fed.</summary>
    private static void AssertAiding(IReadOnlyList<(string Role, Complex Volts, int Degrees)> coils, double share)
    {
        foreach (var role in coils.GroupBy(coil => coil.Role))
        {
            Assert.All(role, coil => Assert.Equal(role.First().Volts.Real, coil.Volts.Real, 3));
            Assert.Equal(share, Math.Abs(role.First().Volts.Real), 3);
        }
    }

    /// <summary>A motor of one voltage: main windings stand at the line, a start winding is fed past its capacitor, fields and armature lie in the order of their kind.</summary>
    private static void AssertFed(IReadOnlyList<(string Role, Complex Volts, int Degrees)> coils, int phases)
    {
        if (phases == 3)
        {
            var fed = coils.Where(coil => coil.Volts.Magnitude > 1e-6).ToList();
            Assert.True(fed.Count >= 3);
            AssertThreePhase(fed, 1 / Math.Sqrt(3));
            return;
        }

        var runs = coils.Where(coil => coil.Role == "run").ToList();
        Assert.True(runs.Count == 0 || Math.Abs(runs.Sum(coil => coil.Volts.Real)) > 0.999, "the run winding");
        foreach (var field in coils.Where(coil => coil.Role == "shunt-field"))
        {
            Assert.Equal(1, Math.Abs(field.Volts.Real), 3);
        }

        var (armature, series) = (coils.Where(coil => coil.Role == "armature").ToList(), coils.Where(coil => coil.Role == "series-field").ToList());
        Assert.All(armature, coil => Assert.True(Math.Abs(coil.Volts.Real) > 0.99));
        foreach (var (one, other) in series.Zip(coils.Where(coil => coil.Role == "shunt-field")))
        {
            Assert.True(one.Volts.Real * other.Volts.Real > 0, "the series field works against the shunt field");
        }

        Assert.All(series, coil => Assert.True(Math.Abs(coil.Volts.Real) > 1e-5, "the series field carries no current"));
    }

    private static IReadOnlyList<(string[] Leads, string? Line)> Joints(JsonElement plan) =>
    [
        .. plan.GetProperty("joints").EnumerateArray().Select(joint => (
            joint.GetProperty("leads").EnumerateArray().Select(lead => lead.GetString()!).ToArray(),
            joint.GetProperty("conductor") is { ValueKind: JsonValueKind.String } line ? line.GetString() : null)),
    ];
}
