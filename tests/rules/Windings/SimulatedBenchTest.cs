using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>Simulated motors measured as the identifier asks; the simulator has its own solver and its own drawings of the motors.</summary>
public sealed class SimulatedBenchTest
{
    private static readonly Identifier Identifier = new(Trade.Knowledge);

    [Fact]
    public void Three_windings_on_six_unmarked_leads_take_six_touches_on_average()
    {
        var touches = new List<int>();
        for (var seed = 0; seed < 60; seed++)
        {
            var chance = new Random(seed);
            var motor = new MotorFactory(chance).Make("capacitor-start-dual-6", ohms: 3.2, ratio: 2.3);
            var person = new BenchPerson(motor, new(chance, 0, 0, 0), chance, mistaken: false);
            var found = person.Follow(Identifier, new() { Leads = [], HasCapacitor = true, CapacitorBridged = true });
            Assert.Equal(IdentificationStatus.Identified, found.Status);
            touches.Add(person.Touches);
        }

        Assert.InRange(touches.Average(), 5.5, 6.6); // 6.0 by exact computation, within the chance of so many motors
    }

    [Fact]
    public void No_winding_is_ever_named_wrongly_whatever_the_meter_the_fault_or_the_slip()
    {
        for (var seed = 0; seed < 80; seed++)
        {
            var chance = new Random(seed);
            var fault = chance.NextDouble() < 0.3 ? (chance.Next(2) == 0 ? "open" : "shorted") : string.Empty;
            var mistaken = chance.NextDouble() < 0.2;
            var motor = new MotorFactory(chance).Make(seed % 2 == 0 ? "capacitor-start-dual-6" : "capacitor-start-4", fault, capacitorInTheWay: seed % 3 == 0);
            Check(motor, new(motor, new(chance, 1, 2, 0.2), chance, mistaken), new() { Leads = [], HasCapacitor = true, CapacitorBridged = seed % 3 == 0 ? null : true }, seed);
        }
    }

    [Theory]
    [InlineData("part-winding-6")]
    [InlineData("capacitor-start-dual-6")]
    [InlineData("three-phase-6")]
    [InlineData("split-phase-4")]
    [InlineData("psc-tapped")]
    [InlineData("series-commutator")]
    public void A_false_reading_of_a_motor_with_a_fault_never_makes_another_winding_of_a_lead(string kind)
    {
        for (var seed = 0; seed < 12; seed++)
        {
            var chance = new Random(seed);
            var motor = new MotorFactory(chance).Make(kind, seed % 2 == 0 ? "open" : "shorted");
            Check(motor, new(motor, new(chance, 0.5, 1, 0.1), chance, mistaken: true, looks: true), new() { Leads = [], CapacitorBridged = true, Looks = new() }, seed);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_kind_of_motor_comes_to_an_end_without_a_wrong_name(string kind)
    {
        for (var seed = 0; seed < 2; seed++)
        {
            var chance = new Random(seed);
            var motor = new MotorFactory(chance).Make(kind, seed == 1 ? "open" : string.Empty);
            Check(motor, new(motor, new(chance, 0.5, 1, 0.1), chance, mistaken: false), new() { Leads = [] }, seed);
        }
    }

    /// <summary>A break is thought of before every sound motor is ruled out: going through the leads in order takes no fewer touches.</summary>
    [Theory]
    [InlineData("two-speed-6")]
    [InlineData("psc-tapped")]
    public void An_open_coil_takes_no_more_touches_than_the_plain_habit(string kind)
    {
        var (ours, habit) = (0, 0);
        for (var seed = 0; seed < 60; seed++)
        {
            ours += Touches(seed, (person, motor) => person.Follow(Identifier, Known(motor)));
            habit += Touches(seed, (person, motor) => Habit.ToTheSameCertainty(person, motor, Identifier, Known(motor)));
        }

        Assert.InRange(ours, 1, 1.01 * habit); // so few motors are a matter of chance to a hundredth

        int Touches(int seed, Action<BenchPerson, SimulatedMotor> measure)
        {
            var chance = new Random(seed);
            var motor = new MotorFactory(chance).Make(kind, "open");
            var person = new BenchPerson(motor, new(chance, 0.5, 1, 0.1), chance, mistaken: false);
            measure(person, motor);
            return person.Touches;
        }

        static IdentificationInput Known(SimulatedMotor motor) => new() { Leads = [], HasCapacitor = motor.CapacitorUse != "none", CapacitorBridged = motor.CapacitorUse == "none" ? null : true };
    }

    /// <summary>Two halves and two start halves on eight leads: the most that is left open while a start pair reads nothing.</summary>
    [Fact]
    public void Choosing_a_reading_takes_bounded_memory()
    {
        const long Most = 24 << 20;
        var identifier = new Identifier(Trade.Knowledge, remembered: 0);
        var chance = new Random(6);
        var motor = new MotorFactory(chance).Make("capacitor-start-dual-8");
        var person = new BenchPerson(motor, new(chance, 1, 2, 0.2), chance, mistaken: false);
        identifier.Identify(new() { Leads = motor.Tags }); // what is made once is not counted
        for (var found = (Identification?)null; found is null || found.Next is not null;)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            found = identifier.Identify(new() { Leads = motor.Tags, Readings = person.Readings, Meter = person.Said }).Value!;
            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, Most);
            if (found.Next is { } next)
            {
                person.Measure(next.From, next.To);
            }
        }
    }

    public static TheoryData<string> Kinds() => [.. MotorFactory.All];

    private static void Check(SimulatedMotor motor, BenchPerson person, IdentificationInput input, int seed)
    {
        var found = person.Follow(Identifier, input);
        Assert.True(person.Touches < 60, $"seed {seed}: no end");
        Assert.NotEqual(IdentificationStatus.NeedsReading, found.Status);
        Assert.True(
            found.Status != IdentificationStatus.Identified || Judge.IsRight(motor, found),
            $"seed {seed}: {string.Join(", ", found.Windings.Select(winding => $"{winding.Role} {string.Join('-', winding.Leads)}"))} is wrong");
    }
}
