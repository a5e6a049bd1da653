using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>Which way the field turns, what the lines carry, and the sentence that goes with a finding.</summary>
public sealed class FieldSenseTest
{
    [Theory]
    [InlineData("L1:1 L2:2 L3:3 ~:4,5,6", "a-b-c")]
    [InlineData("L1:2 L2:3 L3:1 ~:4,5,6", "a-b-c")] // all lines moved on by one
    [InlineData("L1:2 L2:1 L3:3 ~:4,5,6", "a-c-b")] // two lines exchanged
    [InlineData("L1:1 L2:2 ~:3 ~:4,5,6", "none")]
    [InlineData("L1:1 L2:1 L3:3 ~:4,5,6", "none")] // a short turns nothing
    public void Two_lines_exchanged_turn_three_phases_round(string joints, string order) =>
        Assert.Equal(order, Connected.Checked(Connected.Of(Connected.Star, joints, phases: 3)).PhaseOrder);

    [Fact]
    public void A_start_winding_turned_round_turns_the_field_round()
    {
        CheckResult Of(string joints) => Connected.Checked(Connected.Of(Connected.Split, joints, phases: 1));
        var (one, other) = (Of("L1:M1,A1 L2:M2,A2"), Of("L1:M1,A2 L2:M2,A1"));
        Assert.Equal([FieldRotation.StartFollowsMain, FieldRotation.MainFollowsStart], new[] { one.Rotation!.Value, other.Rotation!.Value }.Order());
        Assert.Equal(FieldRotation.None, Of("L1:M1,A1 L2:M2").Rotation);
        Assert.Null(one.PhaseOrder);
        Assert.Null(Connected.Checked(Connected.Of(Connected.Star, "L1:1 L2:2 L3:3 ~:4,5,6")).Rotation);
    }

    [Fact]
    public void A_line_carries_the_amps_of_its_coil_in_star_and_root_three_of_them_in_delta()
    {
        CheckResult Of(string joints, double volts, double? ohms) =>
            Connected.Checked(Connected.Of([.. Connected.Star.Select(coil => coil with { RatedVolts = volts, Ohms = ohms })], joints));
        var (star, delta) = (Of("L1:1 L2:2 L3:3 ~:4,5,6", 133, 5), Of("L1:1,6 L2:2,4 L3:3,5", 230, 5));
        Assert.Equal(1, star.LineAmps!.Value / star.Coils[0].Amps!.Value, 1e-6);
        Assert.Equal(Math.Sqrt(3), delta.LineAmps!.Value / delta.Coils[0].Amps!.Value, 1e-6);
        var unread = Of("L1:1 L2:2 L3:3 ~:4,5,6", 133, null);
        Assert.Null(unread.LineAmps);
        Assert.All(unread.Coils, coil => Assert.Null(coil.Amps));
    }

    [Theory]
    [InlineData("+:S1 ~:S2,A1 ~:A2,S4 -:S3", 230, "check.halves-opposed")]
    [InlineData("+:A1 -:S1 ~:A2,S2,S3", 400, "check.over-volts")]
    [InlineData("+:S1 ~:S2,A1 ~:A2,S3 -:S4", 100, "check.brushed-under-volts")]
    public void A_finding_on_a_motor_with_brushes_has_its_own_sentence(string joints, double volts, string sentence) =>
        Assert.Equal(sentence, Connected.Checked(Connected.Of(Connected.TwoSeries, joints, volts, hertz: 0)).Findings[0].Why.Id);

    [Fact]
    public void Fields_against_each_other_are_told_apart_from_halves_of_one() => Assert.Equal(
        "check.fields-opposed", Connected.Checked(Connected.Of(Connected.Compound, "+:A1,F1 -:S1,F2 ~:A2,S2", hertz: 0)).Findings[0].Why.Id);

    [Fact]
    public void A_winding_without_volts_is_told_with_its_leads() => Assert.Contains(
        "A1, A2", Trade.Knowledge.Sentences.Render(Connected.Checked(Connected.Of(Connected.Shunt, "+:A1,F1 -:F2", hertz: 0)).Findings[0].Why), StringComparison.Ordinal);

    [Fact]
    public void The_neutral_lies_in_the_middle_of_two_lines_and_at_the_end_of_one()
    {
        IReadOnlyList<FoundCoil> coils = [.. Connected.Halves.Select(coil => coil.Role == "run" ? coil with { RatedVolts = 115 } : coil)];
        var both = Connected.Checked(Connected.Of(coils, "L1:1,8 N:2,3 L2:4,5", phases: 1));
        Assert.Equal(string.Empty, Connected.Told(both));
        Assert.Equal([115d, 115d, 230d], both.Coils.Select(coil => Math.Round(coil.Volts!.Value, 6)));
        Assert.Contains("halves-opposed", Connected.Told(Connected.Checked(Connected.Of(coils, "L1:1,8 N:2,4 L2:3,5", phases: 1))), StringComparison.Ordinal);
        Assert.Equal(string.Empty, Connected.Told(Connected.Checked(Connected.Of(Connected.Split, "L1:M1,A1 N:M2,A2", phases: 1))));
    }

    [Fact]
    public void A_phase_winding_waits_for_its_third_line_where_nobody_named_the_phases() =>
        Assert.StartsWith("line-not-used Open L3", Connected.Told(Connected.Checked(Connected.Of(Connected.Star, "L1:1 L2:2 ~:3 ~:4,5,6"))), StringComparison.Ordinal);

    [Theory]
    [InlineData("L1:1,3,4,8 L2:2,5", "check.coil-shorted", "3 + 4")] // the other half feeds it like a transformer
    [InlineData("L1:1,2,3,4,8 L2:5", "check.coil-on-one-point", "1 + 2")]
    [InlineData("L1:1,3,8 L2:2,5", "check.lead-open", "4 goes")]
    [InlineData("L1:1,3,8 L2:2,4", "check.start-branch-open", "(5)")]
    public void An_unfed_winding_is_told_with_its_reason_and_leads(string joints, string sentence, string leads)
    {
        var why = Connected.Checked(Connected.Of(Connected.Halves, joints, phases: 1)).Findings[0].Why;
        Assert.Equal(sentence, why.Id);
        Assert.Contains(leads, Trade.Knowledge.Sentences.Render(why), StringComparison.Ordinal);
    }

    [Fact]
    public void A_half_that_lies_open_has_volts_on_its_ends_all_the_same()
    {
        var open = Connected.Checked(Connected.Of(Connected.Halves, "L1:1,8 L2:2,5 ~:3 ~:4", phases: 1)).Coils[1];
        Assert.InRange(open.PercentOfRated!.Value, 30, 60); // what the other half induces in it at rest
    }

    [Theory]
    [InlineData("halves", "L1:2 L2:4,5 ~:1,3,8", "first,second")] // the start winding stands on one of them
    [InlineData("all halves", "L1:1 L2:4,5,8 ~:2,3,6,7", "first,second")]
    [InlineData("nine", "L1:1 L2:2 L3:3 ~:4,8 ~:5,9 ~:6,7", "a 1-4,a 7-n")]
    [InlineData("star", "L1:4 L2:2 L3:3 ~:1,5,6", "a 1-4,b 2-5")]
    [InlineData("delta", "L1:1,2 L2:4 L3:3 ~:5,6", "b 2-5,c 3-6")]
    public void Windings_in_series_that_work_against_each_other_do_not_share_the_volts_by_their_ratings(string motor, string joints, string unlike)
    {
        var coils = Connected.Checked(Connected.Of(Coils(motor), joints, phases: motor.Contains("halves", StringComparison.Ordinal) ? 1 : 3)).Coils;
        var percent = unlike.Split(',').Select(id => coils.Single(coil => coil.Id == id).PercentOfRated!.Value).ToList();
        Assert.True(Math.Abs(percent[0] - percent[1]) > 5, string.Join(" and ", percent));
    }

    [Fact]
    public void Halves_that_work_together_share_the_volts_evenly_while_running_and_the_start_winding_loads_one_of_them_at_rest()
    {
        var right = Connected.Of(Coils("halves"), "L1:1 L2:4,5 ~:2,3,8", phases: 1);
        Assert.All(Connected.Checked(right).Coils, coil => Assert.Equal(100, coil.PercentOfRated!.Value, 1e-3));
        var rest = Connected.Checked(right with { Slip = 1 }).Coils;
        Assert.True(rest[0].PercentOfRated > 110 && rest[1].PercentOfRated < 90);
        Assert.Equal(100, rest[2].PercentOfRated!.Value, 1e-3);
    }

    private static IReadOnlyList<FoundCoil> Coils(string motor) => motor switch
    {
        "halves" => [.. Connected.Halves.Select(coil => coil with { RatedVolts = 115 })],
        "all halves" => [.. Connected.AllHalves.Select(coil => coil with { RatedVolts = 115 })],
        "nine" =>
        [
            Connected.Phase("a", "1", "4", 66.4), Connected.Phase("b", "2", "5", 66.4), Connected.Phase("c", "3", "6", 66.4),
            Connected.Phase("a", "7", "n", 66.4), Connected.Phase("b", "8", "n", 66.4), Connected.Phase("c", "9", "n", 66.4),
        ],
        "delta" => [.. Connected.Star.Select(coil => coil with { RatedVolts = 230 })],
        _ => Connected.Star,
    };
}
