using WireCoach.Rules.Machines;

namespace WireCoach.Rules.Tests.Machines;

public sealed class MachineEffectsTest
{
    private static readonly MachineEffects Effects = new(Trade.Knowledge);

    [Fact]
    public void On_208_volts_a_230_volt_motor_has_nine_tenths_of_its_starting_current() =>
        Assert.Equal(90.4, Effects.StartingAmpsOnSupply(208, 230).Value!.Value, 0.1);

    [Fact]
    public void A_capacitor_of_half_its_microfarads_costs_about_half_of_the_starting_torque()
    {
        var range = Effects.StartingTorqueWithCapacitor(200, 100);
        Assert.InRange(range.Low.Value!.Value, 20, 60);
        Assert.InRange(range.High.Value!.Value, range.Low.Value.Value, 85);
    }

    [Fact]
    public void A_sound_capacitor_costs_nothing()
    {
        var range = Effects.StartingTorqueWithCapacitor(200, 200);
        Assert.Equal((100, 100), (Math.Round(range.Low.Value!.Value, 6), Math.Round(range.High.Value!.Value, 6)));
    }

    [Fact]
    public void A_reversed_half_draws_two_to_four_times_the_starting_current()
    {
        var range = Effects.StartingAmpsWithHalfReversed();
        Assert.InRange(range.Low.Value!.Value, 170, 300);
        Assert.InRange(range.High.Value!.Value, 300, 500);
    }

    [Fact]
    public void A_lost_line_nearly_doubles_the_current_of_the_other_two()
    {
        // The published examples give 1.907 and 1.918.
        var range = Effects.AmpsWithLineLost();
        Assert.InRange(range.Low.Value!.Value, 145, 191);
        Assert.InRange(range.High.Value!.Value, 191, 230);
        Assert.Equal(86.6, Effects.StartingAmpsWithLineLost().Value!.Value, 0.1);
    }
}
