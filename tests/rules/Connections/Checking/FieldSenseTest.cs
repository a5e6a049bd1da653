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
}
