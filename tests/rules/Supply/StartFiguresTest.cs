using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Supply;

namespace WireCoach.Rules.Tests.Supply;

public sealed class StartFiguresTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    [Fact]
    public void A_reduced_start_draws_a_share_of_the_direct_one()
    {
        var motor = new SupplyInput { Horsepower = 10, Volts = 230, Phases = 3 };
        Assert.Null(Plan(motor).Start!.ReducedAmps);
        Assert.Equal(162 / 3.0, Plan(motor with { Starter = "star-delta" }).Start!.ReducedAmps!.Value!.Value, 1e-9);
        var tap = Plan(motor with { Starter = "autotransformer", Tap = 0.65 }).Start!;
        Assert.Equal(162 * 0.4225, tap.ReducedAmps!.Value!.Value, 1e-9);
        Assert.Equal(0.4225, tap.ReducedTorque!.Value!.Value, 1e-9);
    }

    [Fact]
    public void Inertia_limits_the_starts_and_takes_its_time()
    {
        // 10 hp, 2 poles, 5 lb·ft²: 11 / 5 = 2.2 starts an hour.
        var start = Plan(new() { Horsepower = 10, Volts = 230, Phases = 3, Rpm = 3500, LoadKilogramSquareMetres = 5 * 0.0421401, AcceleratingNewtonMetres = 8 }).Start!;
        Assert.Equal(2.20, start.StartsPerHour!.Value!.Value, 0.005);
        Assert.Equal(92, start.RestSeconds!.Value);
        Assert.Equal(5 * 0.0421401 * 2 * Math.PI * 3500 / 60 / 8, start.RunUpSeconds!.Value!.Value, 1e-9);
        Assert.Null(Plan(new() { Horsepower = 10, Volts = 230, Phases = 3 }).Start!.StartsPerHour);
    }

    [Fact]
    public void On_one_phase_only_the_delta_made_for_it_may_run()
    {
        var motor = new SupplyInput { Region = Region.Iec, Kilowatts = 1, Volts = 400, Phases = 3, PlateVolts = 230, SinglePhaseVolts = 230 };
        var plan = SupplyPlanner.Plan(Knowledge, motor).Value!;
        Assert.Equal(69.48, plan.Start!.OnePhase!.Microfarads.Value!.Value, 0.02);
        Assert.Contains(plan.Notes, note => note.Id == "supply.one-phase");
        var star = SupplyPlanner.Plan(Knowledge, motor with { PlateVolts = 400 }).Value!;
        Assert.Null(star.Start!.OnePhase);
        Assert.Contains(star.Notes, note => note.Id == "heat.one-phase-volts");
        Assert.Equal(11.74, Plan(new() { Horsepower = 2, Volts = 230, Phases = 3, SinglePhaseVolts = 230, Efficiency = 0.85, PowerFactor = 0.65 }).Start!.DriveInputAmps!.Value!.Value, 0.02);
    }

    [Theory]
    [InlineData("autotransformer", 3, null, "tap")]
    [InlineData("direct", 1, 230.0, "singlePhaseVolts")]
    public void What_does_not_belong_together_is_refused(string starter, int phases, double? single, string field) => Assert.Equal(field, Assert.Single(SupplyPlanner.Plan(
        Knowledge, new() { Horsepower = 1, Volts = 230, Phases = phases, Starter = starter, SinglePhaseVolts = single }).Problems).Field);

    private static SupplyPlan Plan(SupplyInput input) => SupplyPlanner.Plan(Knowledge, input).Value!;
}
