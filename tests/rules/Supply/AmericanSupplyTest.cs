using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Supply;

namespace WireCoach.Rules.Tests.Supply;

public sealed class AmericanSupplyTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    [Theory]
    [InlineData("SC1", 1.5, 115, 1)]
    [InlineData("SC3", 3, 208, 3)]
    [InlineData("SC6", 125, 460, 3)]
    public void Conductor_and_short_circuit_device_follow_from_the_table(string id, double horsepower, double volts, int phases)
    {
        var row = CsvFile.Vectors("short-circuit")[id];
        var breaker = Plan(new() { Horsepower = horsepower, Volts = volts, Phases = phases, InsulationCelsius = 75, Protection = "inverse-time-breaker" });
        var fuse = Plan(new() { Horsepower = horsepower, Volts = volts, Phases = phases, InsulationCelsius = 75, Protection = "dual-element-fuse" });
        Assert.Equal(row.Number("FLC"), breaker.TableAmps!.Value!.Value);
        Assert.Equal(row.Number("cond_min_A"), breaker.ConductorAmps.Value!.Value, 1e-9);
        Assert.Equal((row.Number("itcb_calc"), row.Number("itcb"), row.Number("itcb_ex2_cap_down")), Of(breaker.Protection));
        Assert.Equal((row.Number("dual_fuse_calc"), row.Number("dual_fuse"), row.Number("dual_ex2_cap_down")), Of(fuse.Protection));
    }

    [Theory]
    [InlineData("inverse-time-breaker", 2020, 5.5, 15, 15)]
    [InlineData("inverse-time-breaker", 2023, 5.5, 10, 10)]
    [InlineData("dual-element-fuse", 2023, 3.85, 6, 6)]
    public void A_ceiling_below_the_smallest_rating_does_not_undercut_it(string device, int edition, double calculated, double standard, double ceiling) =>
        Assert.Equal((calculated, standard, ceiling), Of(Plan(new() { Horsepower = 0.5, Volts = 230, Phases = 3, Protection = device, Edition = edition }).Protection));

    [Theory]
    [InlineData(28, 110, 60)] // 4.00 × 28 = 112, 2.25 × 28 = 63
    public void Ceilings_are_rounded_down(double amps, double breaker, double fuse)
    {
        var motor = new SupplyInput { Horsepower = 10, Volts = 230, Phases = 3 };
        Assert.Equal(amps, Plan(motor).TableAmps!.Value);
        Assert.Equal(breaker, Plan(motor with { Protection = "inverse-time-breaker" }).Protection.CeilingAmps!.Value);
        Assert.Equal(fuse, Plan(motor with { Protection = "dual-element-fuse" }).Protection.CeilingAmps!.Value);
    }

    [Theory]
    [InlineData("squirrel-cage", 8.0, 13.0)]
    [InlineData("design-b", 11.0, 17.0)]
    [InlineData("wound-rotor", 8.0, 13.0)]
    public void An_instantaneous_trip_has_its_own_percentages(string motor, double first, double most)
    {
        var device = Plan(new() { Horsepower = 10, Volts = 230, Phases = 3, MotorType = motor, Protection = "instantaneous-trip-breaker" }).Protection;
        Assert.Equal(28 * first, device.Amps.Value!.Value, 1e-9);
        Assert.Equal(28 * most, device.CeilingAmps!.Value!.Value, 1e-9);
    }

    public static TheoryData<string> Overloads() => CsvFile.Ids("overload");

    [Theory]
    [MemberData(nameof(Overloads))]
    public void The_overload_goes_by_the_plate(string id)
    {
        var row = CsvFile.Vectors("overload")[id];
        var plan = Plan(new()
        {
            Horsepower = 5, Volts = 230, Phases = 3, PlateAmps = row.Number("FLA"),
            ServiceFactor = row["SF"].Length > 0 ? row.Number("SF") : null, TemperatureRise = row["rise_C"].Length > 0 ? row.Number("rise_C") : null,
        });
        Assert.Equal(row.Number("OL_max_A"), plan.OverloadAmps!.Value!.Value, row.Number("tol"));
        Assert.Equal(row.Number("OL_ceiling_C_A"), plan.OverloadCeilingAmps!.Value!.Value, row.Number("tol"));
        Assert.Equal(1.15 * row.Number("FLA"), plan.OverloadStartAmps!.Value!.Value, 1e-9);
        // The table's current is the same whatever the plate says.
        Assert.Equal(15.2, plan.TableAmps!.Value);
    }

    [Fact]
    public void Without_the_plate_there_is_no_overload_setting() => Assert.Null(Plan(new() { Horsepower = 5, Volts = 230, Phases = 3 }).OverloadAmps);

    [Theory]
    [InlineData(2, 115, 1, 60, null, "10 AWG")] // 30 A
    [InlineData(1.5, 115, 1, 60, null, "10 AWG")] // AMP1: 25 A
    [InlineData(10, 230, 3, 60, null, "8 AWG")] // AMP3: 35 A
    [InlineData(10, 230, 3, 75, null, "10 AWG")] // AMP4: 35 A
    [InlineData(125, 460, 3, 75, null, "3/0 AWG")] // AMP6: 195 A
    [InlineData(1.5, 115, 1, 75, 45.0, "10 AWG")] // AMP7: 25 A at 45 °C
    [InlineData(1.5, 115, 1, 75, null, "12 AWG")]
    public void The_smallest_conductor_that_carries_it_is_taken(double horsepower, double volts, int phases, double column, double? ambient, string size)
    {
        var conductor = Plan(new() { Horsepower = horsepower, Volts = volts, Phases = phases, InsulationCelsius = column, AmbientCelsius = ambient }).Conductor;
        Assert.Equal(size, conductor!.Size.Text);
        Assert.Equal(column, conductor.CelsiusColumn.Value);
    }

    [Fact]
    public void Small_sizes_carried_more_before_2011()
    {
        var motor = new SupplyInput { Horsepower = 0.75, Volts = 115, Phases = 1, InsulationCelsius = 60 }; // 17.25 A
        Assert.Equal("14 AWG", Plan(motor with { Edition = 2008 }).Conductor!.Size.Text);
        Assert.Equal("12 AWG", Plan(motor with { Edition = 2011 }).Conductor!.Size.Text);
    }

    [Fact]
    public void Ninety_degree_insulation_only_starts_the_derating()
    {
        // 35 A: 90 °C copper would allow 10 AWG at 40 A, but 75 °C terminals hold 35 A there; in 50 °C surroundings 10 AWG keeps 32.7 A.
        Assert.Equal("10 AWG", Plan(new() { Horsepower = 10, Volts = 230, Phases = 3, InsulationCelsius = 90 }).Conductor!.Size.Text);
        Assert.Equal("8 AWG", Plan(new() { Horsepower = 10, Volts = 230, Phases = 3, InsulationCelsius = 90, TerminalCelsius = 60 }).Conductor!.Size.Text);
        Assert.Equal("8 AWG", Plan(new() { Horsepower = 10, Volts = 230, Phases = 3, InsulationCelsius = 90, AmbientCelsius = 50 }).Conductor!.Size.Text);
    }

    [Theory]
    [InlineData(45, 0.8165)]
    [InlineData(40, 0.8819)]
    [InlineData(30, 1)]
    public void Warm_surroundings_take_from_the_ampacity(double ambient, double factor) => Assert.Equal(factor, AmericanConductor.Ambient(Knowledge, 75, ambient), 0.0005);

    [Theory]
    [InlineData(30, "10", "10 AWG")]
    [InlineData(70, "4", "8 AWG")]
    [InlineData(110, "2", "6 AWG")]
    [InlineData(15, "14", "14 AWG")]
    [InlineData(30, "14", "14 AWG")]
    [InlineData(60, "4", "10 AWG")]
    [InlineData(61, "4", "8 AWG")]
    public void The_earth_conductor_goes_by_the_device_but_never_above_the_circuit(double device, string conductor, string size) =>
        Assert.Equal(size, AmericanConductor.Earth(Knowledge, Knowledge.Rules["nec-next-size"].Quote(device, "amp", string.Empty), conductor, 2023).Size.Text);

    [Fact]
    public void Volts_are_lost_along_the_line()
    {
        var plain = Plan(new() { Horsepower = 1, Volts = 115, Phases = 1, InsulationCelsius = 60, LengthMetres = 30.48 }).VoltageDrop!;
        Assert.Equal((6.336, 5.51), (plain.Volts.Value!.Value, plain.Percent.Value!.Value), new Near(0.01));
        // Starting with 96 A leaves 77 V and 45 % of the torque: it will not start on such a line.
        Assert.Equal((77.0, 44.8), (plain.StartingVoltsAtMotor!.Value!.Value, plain.StartingTorque!.Value!.Value), new Near(0.02));
        var three = Plan(new() { Horsepower = 10, Volts = 230, Phases = 3, InsulationCelsius = 60, LengthMetres = 45.72, PowerFactor = 0.85 }).VoltageDrop!;
        Assert.Equal((5.072, 2.205), (three.Volts.Value!.Value, three.Percent.Value!.Value), new Near(0.01));
        var one = Plan(new() { Horsepower = 1, Volts = 115, Phases = 1, InsulationCelsius = 60, LengthMetres = 30.48, PowerFactor = 0.70 }).VoltageDrop!;
        Assert.Equal((4.635, 4.031), (one.Volts.Value!.Value, one.Percent.Value!.Value), new Near(0.01));
    }

    [Theory]
    [InlineData(1, 8.0, 13.60)]
    [InlineData(1.5, 10.0, 15.60)]
    [InlineData(5, 28.0, 39.20)]
    public void A_built_in_protector_trips_by_its_table(double horsepower, double amps, double trip)
    {
        var plan = Plan(new() { Horsepower = horsepower, Volts = 230, Phases = 1 });
        Assert.Equal(amps, plan.TableAmps!.Value);
        Assert.Equal(trip, plan.ThermalProtectorAmps!.Value!.Value, 0.01);
    }

    [Fact]
    public void Feeders_disconnects_and_special_leads_have_their_factors()
    {
        Assert.Equal(126.0, Feeder.Conductor(Knowledge, [52, 40, 21], 2023).Value!.Value, 0.01);
        Assert.Equal(57.0, Feeder.Conductor(Knowledge, [28, 14, 8], 2023).Value!.Value, 0.01);
        Assert.Equal(90, Feeder.Device(Knowledge, 70, [14, 8], "inverse-time-breaker", 2023).Value);
        var motor = Plan(new() { Horsepower = 10, Volts = 230, Phases = 3, Starter = "star-delta", OtherMotorAmps = [14, 8] });
        Assert.Equal(20.16, motor.WindingLeadAmps!.Value!.Value, 0.01);
        Assert.Equal(32.2, motor.DisconnectAmps!.Value!.Value, 0.01);
        Assert.Equal((57.0, 90.0), (motor.Feeder!.ConductorAmps.Value!.Value, motor.Feeder.DeviceAmps.Value!.Value), new Near(0.01));
        Assert.Equal(48.5, motor.LostLineAmps!.Value!.Value, 0.01);
        Assert.Equal(18.05, Plan(new() { Horsepower = 1, Volts = 120, Phases = 1, MotorType = "dc", Rectifier = "half-wave" }).ConductorAmps.Value!.Value, 0.01);
        Assert.Equal(11.27, Plan(new() { Horsepower = 0.5, Volts = 115, Phases = 1 }).DisconnectAmps!.Value!.Value, 0.01);
    }

    [Theory]
    [InlineData(0.3, 115, 1, 7.2, true)] // next row up: 1/3
    [InlineData(0.33, 115, 1, 7.2, false)]
    [InlineData(4, 230, 3, 15.2, true)]
    public void A_size_between_rows_takes_the_next_one_up(double horsepower, double volts, int phases, double amps, bool said)
    {
        var plan = Plan(new() { Horsepower = horsepower, Volts = volts, Phases = phases });
        Assert.Equal(amps, plan.TableAmps!.Value);
        Assert.Equal(said, plan.Notes.Any(note => note.Id == "supply.next-row"));
    }

    [Fact]
    public void Slow_motors_go_by_the_plate()
    {
        Assert.Equal(1.25 * 3.6, Plan(new() { Horsepower = 0.75, Volts = 230, Phases = 3, Rpm = 850, PlateAmps = 3.6 }).ConductorAmps.Value!.Value, 1e-9);
        Assert.Equal("plateAmps", Assert.Single(SupplyPlanner.Plan(Knowledge, new() { Horsepower = 0.75, Volts = 230, Phases = 3, Rpm = 850 }).Problems).Field);
    }

    [Fact]
    public void A_motor_marked_in_amps_alone_finds_its_row() => Assert.Equal(9.8, Plan(new() { Volts = 115, Phases = 1, PlateAmps = 8.8 }).TableAmps!.Value);

    [Theory]
    [InlineData(15.0, 115, 1, "horsepower")]
    [InlineData(300.0, 460, 3, "horsepower")]
    [InlineData(0.1, 115, 1, "horsepower")]
    [InlineData(3.0, 115, 3, "horsepower")]
    [InlineData(3.0, 400, 3, "volts")]
    [InlineData(3.0, 277, 1, "volts")]
    public void Nothing_is_worked_out_beyond_the_table(double horsepower, double volts, int phases, string field)
    {
        var answer = SupplyPlanner.Plan(Knowledge, new() { Horsepower = horsepower, Volts = volts, Phases = phases });
        Assert.Equal(field, Assert.Single(answer.Problems).Field);
        Assert.Contains("nearest", CsvFile.Knowledge.Sentences.Render(answer.Problems[0].Advice), StringComparison.Ordinal);
    }

    [Fact]
    public void A_larger_motor_never_needs_less() => Gen.Select(Gen.Int[0, 10], Gen.Int[0, 10], Gen.OneOf(Gen.Const(115.0), Gen.Const(208.0), Gen.Const(230.0)), Gen.OneOf(Gen.Const(60.0), Gen.Const(75.0))).Sample((first, second, volts, column) =>
    {
        double[] sizes = [1 / 6.0, 0.25, 1 / 3.0, 0.5, 0.75, 1, 1.5, 2, 3, 5, 7.5];
        var (low, high) = (Math.Min(first, second), Math.Max(first, second));
        var (small, large) = (Plan(Motor(sizes[low])), Plan(Motor(sizes[high])));
        return small.ConductorAmps.Value <= large.ConductorAmps.Value && small.Protection.StandardAmps.Value <= large.Protection.StandardAmps.Value
            && small.Protection.CeilingAmps!.Value <= large.Protection.CeilingAmps!.Value && small.Conductor!.AmpacityAmps.Value <= large.Conductor!.AmpacityAmps.Value;

        SupplyInput Motor(double horsepower) => new() { Horsepower = horsepower, Volts = volts, Phases = 1, InsulationCelsius = column };
    }, iter: 300);

    [Fact]
    public void The_conductor_always_carries_what_it_must_and_the_device_is_never_above_its_ceiling() => Gen.Select(
        Gen.OneOf(Gen.Const("1/2"), Gen.Const("3"), Gen.Const("7.5"), Gen.Const("25"), Gen.Const("60"), Gen.Const("100")), Gen.OneOf(Gen.Const(208.0), Gen.Const(230.0), Gen.Const(460.0)), Gen.OneOf(Gen.Const(60.0), Gen.Const(75.0), Gen.Const(90.0)), Gen.Double[-10, 55],
        Gen.OneOf(Gen.Const("inverse-time-breaker"), Gen.Const("dual-element-fuse"), Gen.Const("non-time-delay-fuse"))).Sample((size, volts, column, ambient, device) =>
    {
        var answer = SupplyPlanner.Plan(Knowledge, new()
        {
            Horsepower = Fractions.Read(size), Volts = volts, Phases = 3, InsulationCelsius = column, AmbientCelsius = ambient, Protection = device,
        });
        return !answer.IsGiven || ((answer.Value.Conductor is not { } conductor || conductor.AmpacityAmps.Value >= answer.Value.ConductorAmps.Value - 1e-9)
            && answer.Value.Protection.StandardAmps.Value <= answer.Value.Protection.CeilingAmps!.Value);
    }, iter: 300);

    [Fact]
    public void Kilowatts_and_horsepower_of_one_motor_give_one_plan()
    {
        var (metric, imperial) = (Plan(new() { Kilowatts = 7.457, Volts = 230, Phases = 3 }), Plan(new() { Horsepower = 10, Volts = 230, Phases = 3 }));
        Assert.Equal(imperial.TableAmps!.Value, metric.TableAmps!.Value);
        Assert.Equal(imperial.Conductor!.Size.Text, metric.Conductor!.Size.Text);
    }

    [Fact]
    public void Every_figure_names_the_edition_and_leaves_the_decision_to_the_code()
    {
        var plan = Plan(new() { Horsepower = 10, Volts = 230, Phases = 3, PlateAmps = 25, LengthMetres = 30, Edition = 2020 });
        Quoted[] all = [plan.TableAmps!, plan.ConductorAmps, plan.Conductor!.Size, plan.OverloadAmps!, plan.OverloadCeilingAmps!, plan.Protection.Amps, plan.Protection.StandardAmps, plan.EarthConductor.Size, plan.VoltageDrop!.Volts];
        Assert.All(all, quoted =>
        {
            Assert.Equal(Quoted.CodeDeferral, quoted.Caution);
            Assert.Contains("2020", quoted.Source.ToString(), StringComparison.Ordinal);
            Assert.NotEmpty(quoted.Trail);
        });
        Assert.Equal("NEC 2020", plan.Edition);
    }

    private static SupplyPlan Plan(SupplyInput input) => SupplyPlanner.Plan(Knowledge, input with { Region = Region.NorthAmerica }).Value!;

    private static (double Amps, double Standard, double Ceiling) Of(ProtectionChoice device) =>
        (Math.Round(device.Amps.Value!.Value, 9), device.StandardAmps.Value!.Value, device.CeilingAmps!.Value!.Value);

    private sealed class Near(double tolerance) : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) => Math.Abs(x.Item1 - y.Item1) <= tolerance && Math.Abs(x.Item2 - y.Item2) <= tolerance;

        public int GetHashCode((double, double) obj) => 0;
    }
}
