using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Supply;

namespace WireCoach.Rules.Tests.Supply;

public sealed class InternationalSupplyTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    public static TheoryData<string> Currents() => CsvFile.Ids("iec-current");

    [Theory]
    [MemberData(nameof(Currents))]
    public void Power_power_factor_and_efficiency_give_the_current(string id)
    {
        var row = CsvFile.Vectors("iec-current")[id];
        Assert.Equal(row.Number("expect_A"),
            InternationalSupply.PowerAmps(Knowledge, (int)row.Number("phase"), row.Number("P_W"), row.Number("U"), row.Number("pf"), row.Number("eff")).Value!.Value, row.Number("tol"));
    }

    [Fact]
    public void Volts_are_lost_along_a_cable()
    {
        var row = CsvFile.Vectors("iec-voltage-drop")["IVD1"];
        var ohms = 0.0225 * row.Number("L_m") / row.Number("S");
        Assert.Equal(row.Number("expect_dU"), VoltageDrop.Volts(1, row.Number("I"), ohms, 0.08e-3 * row.Number("L_m"), row.Number("cosphi")), row.Number("tol"));
        // A 1.1 kW motor on 230 V: table 9.6 A at 220 V, so the cable sees 9.6 A.
        var drop = Plan(new() { Kilowatts = 1.1, Volts = 230, Phases = 1, LengthMetres = 30, PowerFactor = 0.9, Protection = "motor-protection-breaker" });
        Assert.Equal("1.5 mm²", drop.Conductor!.Size.Text);
        Assert.Equal(2 * 9.6 * (0.0225 * 30 / 1.5 * 0.9 + 0.0024 * Math.Sqrt(1 - 0.81)), drop.VoltageDrop!.Volts.Value!.Value, 0.001);
    }

    [Theory]
    [InlineData("c", 16, false, 1.4375)]
    [InlineData("d", 16, false, 0.7188)]
    [InlineData("b", 16, false, 2.875)]
    [InlineData("c", 16, true, 1.3656)]
    public void The_fault_loop_must_trip_the_breaker(string letter, double amps, bool unitedKingdom, double ohms) =>
        Assert.Equal(ohms, InternationalProtection.LoopOhms(Knowledge, letter, amps, unitedKingdom).Value!.Value, 0.0005);

    [Fact]
    public void The_electrode_of_a_tt_system_has_its_most() => Assert.Equal(1666.7, InternationalSupply.ElectrodeOhms(Knowledge, 30).Value!.Value, 0.1);

    [Theory]
    [InlineData(4, 4)]
    [InlineData(16, 16)]
    [InlineData(25, 16)]
    [InlineData(35, 16)]
    [InlineData(70, 35)]
    public void The_protective_conductor_goes_by_the_line_conductor(double line, double earth) => Assert.Equal(earth, InternationalCable.Earth(Knowledge, line).Size.Value);

    [Theory]
    [InlineData(1500, 0.1, true, 3.32, 0.01)]
    [InlineData(800, 0.4, false, 4.400, 0.005)]
    public void The_protective_conductor_stands_the_fault(double amps, double seconds, bool separate, double size, double tolerance) =>
        Assert.Equal(size, InternationalCable.Adiabatic(Knowledge, amps, seconds, separate).Value!.Value, tolerance);

    [Theory]
    [InlineData(50, 0.7071)]
    [InlineData(35, 0.94)]
    [InlineData(55, 0.61)]
    public void Warm_surroundings_take_from_the_cable(double ambient, double factor) => Assert.Equal(factor, InternationalCable.Ambient(Knowledge, ambient), 0.005);

    [Fact]
    public void Four_kilowatts_on_400_volts_are_planned()
    {
        var fuse = Plan(new() { Kilowatts = 4, Volts = 400, Phases = 3, PlateAmps = 8.5, Protection = "fuse-gg" });
        Assert.Equal(8.5, fuse.TableAmps!.Value);
        Assert.Equal(8.5, fuse.OverloadAmps!.Value);
        Assert.Equal((6.0, 10.0), (fuse.DialRange!.Low!.Value!.Value, fuse.DialRange.High!.Value!.Value));
        Assert.Equal("1.5 mm²", fuse.Conductor!.Size.Text);
        Assert.Equal(15, fuse.Conductor!.AmpacityAmps.Value);
        Assert.Equal(20, fuse.Protection.StandardAmps.Value);
        Assert.Contains(fuse.Notes, note => note.Id == "supply.fuse-short-circuit-only");
        Assert.Equal(10, Plan(new() { Kilowatts = 4, Volts = 400, Phases = 3, Protection = "fuse-gg", Starter = "star-delta" }).Protection.StandardAmps.Value);
    }

    [Theory]
    [InlineData("circuit-breaker-b")]
    [InlineData("circuit-breaker-c")]
    [InlineData("circuit-breaker-d")]
    public void Design_current_breaker_and_cable_stand_in_order(string device)
    {
        foreach (var kilowatts in (double[])[0.37, 0.75, 1.5, 3, 4])
        {
            var answer = SupplyPlanner.Plan(Knowledge, new() { Region = Region.Iec, Kilowatts = kilowatts, Volts = 400, Phases = 3, Protection = device });
            if (answer.Value is { } plan)
            {
                Assert.True(plan.TableAmps!.Value <= plan.Protection.StandardAmps.Value && plan.Protection.StandardAmps.Value <= plan.Conductor!.AmpacityAmps.Value);
                Assert.True(plan.Protection.StandardAmps.Value <= plan.Protection.CeilingAmps!.Value);
            }
        }
    }

    [Fact]
    public void A_star_delta_dial_in_the_phase_leads_is_set_lower() =>
        Assert.Equal(0.58 * 15.2, Plan(new() { Kilowatts = 7.5, Volts = 400, Phases = 3, PlateAmps = 15.2, Starter = "star-delta", Protection = "fuse-gg" }).OverloadAmps!.Value!.Value, 1e-9);

    [Theory]
    [InlineData(40, "1.5 mm²", 13)]
    [InlineData(50, "1.5 mm²", 11)]
    public void The_tables_own_columns_are_taken_for_warm_surroundings(double ambient, string size, double amps)
    {
        var conductor = Plan(new() { Kilowatts = 3, Volts = 400, Phases = 3, AmbientCelsius = ambient, Protection = "motor-protection-breaker" }).Conductor;
        Assert.Equal((size, amps), (conductor!.Size.Text, conductor.AmpacityAmps.Value!.Value));
    }

    [Theory]
    [InlineData(2010, 20)]
    [InlineData(2020, 32)]
    public void The_edition_settles_which_sockets_need_a_residual_current_device(int edition, double amps) =>
        Assert.Contains($"{amps} A", Plan(new() { Kilowatts = 1.5, Volts = 230, Phases = 1, Edition = edition }).ResidualMilliamps!.Trail[^1].Inputs, StringComparison.Ordinal);

    [Fact]
    public void Without_the_plate_there_is_no_dial_setting_but_a_range()
    {
        var plan = Plan(new() { Kilowatts = 4, Volts = 400, Phases = 3 });
        Assert.Null(plan.OverloadAmps);
        Assert.NotNull(plan.DialRange);
    }

    [Theory]
    [InlineData(30.0, 400, 3, "circuit-breaker-c", "kilowatts")]
    [InlineData(0.02, 400, 3, "circuit-breaker-c", "kilowatts")]
    [InlineData(4.0, 480, 3, "circuit-breaker-c", "volts")]
    [InlineData(4.0, 120, 1, "circuit-breaker-c", "volts")]
    [InlineData(1.5, 230, 1, "fuse-gg", "protection")]
    [InlineData(15.0, 400, 3, "circuit-breaker-b", "protection")]
    [InlineData(4.0, 400, 3, "inverse-time-breaker", "protection")]
    public void Nothing_is_worked_out_beyond_the_tables(double kilowatts, double volts, int phases, string device, string field) => Assert.Equal(
        field, Assert.Single(SupplyPlanner.Plan(Knowledge, new() { Region = Region.Iec, Kilowatts = kilowatts, Volts = volts, Phases = phases, Protection = device }).Problems).Field);

    [Fact]
    public void Another_frequency_and_other_volts_are_said()
    {
        var plan = Plan(new() { Kilowatts = 4, Volts = 400, Phases = 3, PlateVolts = 400, PlateHertz = 60, Hertz = 50 });
        Assert.Contains(plan.Notes, note => note.Id == "nameplate.flux-stop");
    }

    private static SupplyPlan Plan(SupplyInput input) => SupplyPlanner.Plan(Knowledge, input with { Region = Region.Iec }).Value!;
}
