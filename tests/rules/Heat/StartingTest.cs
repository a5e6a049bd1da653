using WireCoach.Rules.Heat;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Heat;

public sealed class StartingTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    [Fact]
    public void Inertia_speed_and_torque_give_the_time_to_run_up()
    {
        Assert.Equal(14.205, Starting.RunUpPounds(Knowledge, 50, 1750, 20).Value!.Value, 0.005);
        // 1 lb·ft² is 0.0421401 kg·m² and 1 lb·ft is 1.355818 N·m: the two formulas differ by the trade's rounding only.
        Assert.Equal(14.205 * 308 / 307.2, Starting.RunUp(Knowledge, 50 * 0.0421401, 1750, 20 * 1.355818).Value!.Value, 0.01);
        Assert.Equal(11.454, Starting.RunUp(Knowledge, 0.5, 1750, 8).Value!.Value, 0.005);
    }

    [Theory]
    [InlineData(25, 4, 50, 2.44)]
    [InlineData(10, 2, 5, 2.20)]
    [InlineData(10, 2, 1, 6.2)]
    public void Heavier_loads_start_less_often(double horsepower, int poles, double inertia, double starts) =>
        Assert.Equal(starts, Starting.PerHour(Knowledge, horsepower, poles, inertia).Value!.Starts.Value!.Value, 0.005);

    [Theory]
    [InlineData(0.5, 4)]
    [InlineData(300, 4)]
    [InlineData(10, 8)]
    public void Nothing_is_worked_out_beyond_the_table(double horsepower, int poles) =>
        Assert.Single(Starting.PerHour(Knowledge, horsepower, poles, null).Problems);

    [Fact]
    public void A_lost_line_loads_the_others()
    {
        Assert.Equal(24.249, LostLine.Running(Knowledge, 14).Value!.Value, 0.005);
        Assert.Equal(70.15, LostLine.AtStandstill(Knowledge, 81).Value!.Value, 0.02);
        Assert.Equal(9.333, LostLine.HottestDeltaWinding(Knowledge, 14).Value!.Value, 0.01);
        Assert.Equal(1.155, LostLine.HottestDeltaShare(Knowledge, 14, 14).Value!.Value, 0.001);
        Assert.Equal(2.0, LostLine.HottestDeltaShare(Knowledge, 14 * Math.Sqrt(3), 14).Value!.Value, 0.001);
    }

    [Fact]
    public void A_reduced_start_draws_less_and_pulls_less()
    {
        Assert.Equal(2.0, 6.0 * Starting.StarDelta(Knowledge).Current.Value!.Value, 1e-9);
        Assert.Equal(1.0 / 3, Starting.StarDelta(Knowledge).Torque.Value!.Value, 1e-9);
        Assert.Equal(2.535, 6.0 * Starting.Autotransformer(Knowledge, 0.65).Current.Value!.Value, 0.001);
        Assert.Equal(0.4225, Starting.Autotransformer(Knowledge, 0.65).Torque.Value!.Value, 0.001);
        Assert.Equal((0.5, 0.25), (Starting.SoftStarter(Knowledge, 0.5).Current.Value!.Value, Starting.SoftStarter(Knowledge, 0.5).Torque.Value!.Value));
    }

    [Theory]
    [InlineData(1000, 230, 50, 69.48)]
    [InlineData(746, 230, 60, 43.19)]
    public void A_capacitor_makes_a_poor_third_phase(double watts, double volts, double hertz, double microfarads) =>
        Assert.Equal(microfarads, OnOnePhase.Capacitor(Knowledge, watts, volts, hertz).Value!.Value, 0.02);

    [Theory]
    [InlineData(1000, 400, "plateVolts")]
    [InlineData(3000, 230, "kilowatts")]
    public void Only_a_small_motor_made_for_the_line_in_delta_may(double watts, double windingVolts, string field) =>
        Assert.Equal(field, Assert.Single(OnOnePhase.Estimate(Knowledge, watts, windingVolts, 230, 50).Problems).Field);

    [Fact]
    public void A_drive_from_one_phase_draws_more() => Assert.Equal(11.74, OnOnePhase.DriveInput(Knowledge, 2, 230, 0.85, 0.65).Value!.Value, 0.01);
}
