using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Supply;

namespace WireCoach.Rules.Tests.Supply;

/// <summary>What must hold whatever the motor: more load never asks for less, and the same power in another unit for the same.</summary>
public sealed class SupplyLawsTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    private static readonly string[] Wires = [.. Knowledge.Tables["nec-chapter-9"].Rows.Select(row => row.Key)];

    [Fact]
    public void A_larger_motor_never_gets_a_smaller_wire_device_or_earth() => Gen.Select(Gen.Double[0.5, 20], Gen.Double[1, 2]).Sample((horsepower, times) =>
    {
        var (small, large) = (American(horsepower, 230), American(Math.Min(horsepower * times, 20), 230));
        return Wire(small.Conductor!.Size.Text) <= Wire(large.Conductor!.Size.Text)
            && small.Protection.StandardAmps.Value <= large.Protection.StandardAmps.Value
            && Wire(small.EarthConductor.Size.Text) <= Wire(large.EarthConductor.Size.Text);
    });

    [Fact]
    public void A_warmer_place_or_a_longer_way_never_asks_for_less() => Gen.Select(Gen.Double[0, 50], Gen.Double[1, 400]).Sample((ambient, metres) =>
    {
        var (cool, warm) = (American(5, 230, ambient: ambient * 0.8, metres: metres), American(5, 230, ambient: ambient, metres: metres));
        return Wire(cool.Conductor!.Size.Text) <= Wire(warm.Conductor!.Size.Text)
            && American(5, 230, metres: metres).VoltageDrop!.Volts.Value <= American(5, 230, metres: metres * 1.1).VoltageDrop!.Volts.Value;
    });

    [Fact]
    public void Horsepower_and_the_same_power_in_kilowatts_give_the_same_plan() => Gen.Int[0, 7].Select(at => new[] { 0.5, 1, 1.5, 2, 3, 5, 7.5, 10 }[at]).Sample(horsepower =>
    {
        var said = American(horsepower, 230);
        var converted = SupplyPlanner.Plan(Knowledge, new() { Region = Region.NorthAmerica, Phases = 3, Volts = 230, Kilowatts = horsepower * 0.7457 }).Value!;
        return said.TableAmps!.Value == converted.TableAmps!.Value && said.Conductor!.Size.Text == converted.Conductor!.Size.Text;
    });

    [Fact]
    public void A_larger_conductor_keeps_the_drop_and_its_earth_grows_in_proportion() => Gen.Select(Gen.Int[0, 3].Select(at => new[] { 1.0, 3, 5, 10 }[at]), Gen.Double[30, 300]).Sample((horsepower, metres) =>
    {
        var plan = American(horsepower, 230, metres: metres);
        if (plan.LargerConductor is not { } larger)
        {
            return plan.VoltageDrop!.Percent.Value <= 3 || American(horsepower, 230, metres: metres).Notes.Any(note => note.Id == "supply.drop-high");
        }

        var grown = Mils(larger.Size.Text) / Mils(plan.Conductor!.Size.Text);
        return plan.VoltageDrop!.Percent.Value > 3 && larger.Percent.Value <= 3 && grown > 1
            && Mils(larger.EarthSize.Text) >= Math.Min(Mils(plan.EarthConductor.Size.Text) * grown, Mils(larger.Size.Text)) - 1e-6
            && Wire(larger.EarthSize.Text) <= Wire(larger.Size.Text);
    });

    [Fact]
    public void The_earth_conductor_grows_with_conductors_that_a_long_way_made_larger()
    {
        // 20 hp, 230 V: 54 A, 4 AWG, 150 A breaker, earth 6 AWG. 100 m of it lose 4.1 %, of 3 AWG 3.3 %, of 2 AWG 2.6 %.
        var plan = American(20, 230, metres: 100);
        Assert.Equal(("4 AWG", "6 AWG"), (plan.Conductor!.Size.Text, plan.EarthConductor.Size.Text));
        Assert.Equal(("2 AWG", "4 AWG"), (plan.LargerConductor!.Size.Text, plan.LargerConductor.EarthSize.Text));
        Assert.Null(American(20, 230, metres: 70).LargerConductor);
    }

    [Fact]
    public void A_protective_conductor_must_carry_the_fault()
    {
        var plan = International(new() { Kilowatts = 1.1, Volts = 400, Phases = 3, FaultAmps = 800, FaultSeconds = 0.4 });
        Assert.Equal(4.400, plan.EarthConductor.FaultSize!.Value!.Value, 0.005);
        Assert.Contains(plan.Notes, note => note.Id == "supply.earth-by-fault");
        Assert.Null(International(new() { Kilowatts = 1.1, Volts = 400, Phases = 3 }).EarthConductor.FaultSize);
        Assert.Equal("faultSeconds", Assert.Single(SupplyPlanner.Plan(Knowledge, new() { Region = Region.Iec, Kilowatts = 1.1, Volts = 400, Phases = 3, FaultAmps = 800 }).Problems).Field);
        Assert.Equal("faultAmps", Assert.Single(SupplyPlanner.Plan(Knowledge, new() { Horsepower = 1, Volts = 230, Phases = 3, FaultAmps = 800, FaultSeconds = 1 }).Problems).Field);
    }

    [Theory]
    [InlineData(15, 29.3)]
    [InlineData(16, 35)]
    [InlineData(18.5, 35)]
    [InlineData(22, 41)]
    public void The_guide_currents_go_on_above_the_fuse_guide(double kilowatts, double amps) =>
        Assert.Equal(amps, International(new() { Kilowatts = kilowatts, Volts = 400, Phases = 3, Protection = "motor-protection-breaker" }).TableAmps!.Value);

    [Fact]
    public void Nothing_is_reckoned_beyond_the_last_row()
    {
        var problem = Assert.Single(SupplyPlanner.Plan(Knowledge, new() { Region = Region.Iec, Kilowatts = 30, Volts = 400, Phases = 3 }).Problems);
        Assert.Equal("kilowatts", problem.Field);
        Assert.Contains("22 kW", Knowledge.Sentences.Render(problem.Advice), StringComparison.Ordinal);
    }

    private static SupplyPlan American(double horsepower, double volts, double? ambient = null, double? metres = null) => SupplyPlanner.Plan(Knowledge, new()
    {
        Region = Region.NorthAmerica,
        Phases = 3,
        Volts = volts,
        Horsepower = horsepower,
        AmbientCelsius = ambient,
        LengthMetres = metres,
    }).Value!;

    private static SupplyPlan International(SupplyInput input) => SupplyPlanner.Plan(Knowledge, input with { Region = Region.Iec }).Value!;

    private static int Wire(string size) => Array.IndexOf(Wires, size.Split(' ')[0]);

    private static double Mils(string size) => Knowledge.Tables["nec-chapter-9"].Number(Knowledge.Tables["nec-chapter-9"].Row(size.Split(' ')[0])!, "circular-mils")!.Value;
}
