using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>Motors with brushes, joined right and wrong.</summary>
public sealed class BrushedTest
{
    [Theory]
    [InlineData("shunt", "+:A1,F1 -:A2,F2", "", "right")]
    [InlineData("shunt", "+:A2,F1 -:A1,F2", "", "right")] // turns the other way
    [InlineData("shunt", "+:A1,F1 -:A2", "field-open Danger shunt", "runaway")]
    [InlineData("shunt", "+:A1,F1 -:F2", "winding-not-fed Open armature", "dead")] // a shunt field alone makes nothing turn
    [InlineData("shunt", "+:A1 -:F2 ~:A2,F1", "armature-behind-field Wrong armature", "dead")] // almost no current: it does not even hum
    [InlineData("shunt", "+:A1,F1 ~:A2,F2", "supply-missing Open +; winding-not-fed Open armature; winding-not-fed Open shunt", "dead")]
    [InlineData("shunt", "+:A1,F1 -:F1,A2,F2", "line-shorted Danger +,-,A1,A2,F1,F2", "short")]
    [InlineData("shunt", "+:A1,F1 -:A2 PE:F2", "lead-on-earth Danger F2; field-open Danger shunt", "short")]
    [InlineData("series", "+:A1 -:S2 ~:A2,S1", "", "right")]
    [InlineData("series", "+:A1 -:S1 ~:A2,S2", "", "right")]
    [InlineData("series", "+:A1,S1 -:A2,S2", "series-field-across Danger series", "short")]
    [InlineData("series", "+:A1 -:A2", "field-open Danger series; winding-not-fed Open series", "runaway")]
    [InlineData("series", "+:A1 -:S2", "winding-not-fed Open armature; winding-not-fed Open series", "dead")]
    [InlineData("compound", "+:A1,F1 -:S2,F2 ~:A2,S1", "", "right")]
    [InlineData("compound", "+:A1,F1 -:S1,F2 ~:A2,S2", "fields-opposed Wrong series,shunt", "differential")]
    [InlineData("compound", "+:A1,S1 -:A2,F2 ~:S2,F1", "series-field-apart Wrong series", "weak")]
    [InlineData("compound", "+:A1 -:S2 ~:A2,S1", "field-open Danger shunt", "runaway")]
    [InlineData("two series", "+:S1 ~:S2,A1 ~:A2,S3 -:S4", "", "right")]
    [InlineData("two series", "+:S1 ~:S2,A1 ~:A2,S4 -:S3", "halves-opposed Wrong series,other", "weak")]
    public void A_motor_with_brushes_is_told_by_what_is_wrong(string motor, string joints, string told, string seen)
    {
        var result = Connected.Checked(Connected.Of(Coils(motor), joints, hertz: 0));
        Assert.Equal(told, Connected.Told(result));
        Assert.Equal(seen, Connected.Seen(result));
    }

    [Theory]
    [InlineData(0.885, "", "right")]
    [InlineData(1.115, "", "right")]
    [InlineData(0.875, "under-volts Wrong armature; under-volts Wrong shunt", "weak")]
    [InlineData(1.125, "over-volts Wrong armature; over-volts Wrong shunt", "over-volts")]
    [InlineData(1.49, "over-volts Wrong armature; over-volts Wrong shunt", "over-volts")]
    [InlineData(1.51, "over-volts Danger armature; over-volts Danger shunt", "over-volts")]
    public void Volts_are_told_where_they_leave_what_the_motor_takes(double share, string told, string seen)
    {
        var result = Connected.Checked(Connected.Of(Connected.Shunt, "+:A2,F1 -:A1,F2", 230 * share, hertz: 0));
        Assert.Equal(told, Connected.Told(result));
        Assert.Equal(seen, Connected.Seen(result));
        Assert.All(result.Coils, coil => Assert.Equal(100 * share, coil.PercentOfRated!.Value, 1e-6));
        Assert.All(result.Coils, coil => Assert.Equal(230 * share, coil.Volts!.Value, 1e-6));
        Assert.Equal([180d, 0d], result.Coils.Select(coil => coil.AngleDegrees!.Value));
        Assert.All(result.Findings, finding => Assert.Equal(100 * share, Assert.Single(finding.Why.Quotes).Value!.Value, 1e-6));
    }

    [Theory]
    [InlineData("shunt", "L1:A1,F1 L2:A2,F2", "direct-current-only Wrong")]
    [InlineData("compound", "L1:A1,F1 L2:S2,F2 ~:A2,S1", "direct-current-only Wrong")]
    [InlineData("magnet", "L1:A1 L2:A2", "direct-current-only Wrong")]
    [InlineData("series", "L1:A1 L2:S2 ~:A2,S1", "")] // armature and field change sign together
    public void Only_a_series_motor_runs_on_alternating_current(string motor, string joints, string told) =>
        Assert.Equal(told, Connected.Told(Connected.Checked(Connected.Of(Coils(motor), joints))));

    [Theory]
    [InlineData("shunt", "L1:F1 L2:F2", "weak")] // the field alone hums
    [InlineData("series", "L1:A1 L2:S2", "dead")]
    public void On_alternating_current_only_a_motor_without_any_current_is_silent(string motor, string joints, string seen) =>
        Assert.Equal(seen, Connected.Seen(Connected.Checked(Connected.Of(Coils(motor), joints))));

    [Fact]
    public void No_volts_are_told_of_a_series_field_that_carries_the_load_nor_on_a_short()
    {
        var running = Connected.Checked(Connected.Of(Connected.Series, "+:A1 -:S2 ~:A2,S1", hertz: 0)).Coils;
        Assert.Equal((230d, null), (Math.Round(running[0].Volts!.Value, 1), running[1].Volts));
        Assert.Equal(0, Connected.Checked(Connected.Of(Connected.Series, "+:A1 -:A2", hertz: 0)).Coils[1].Volts!.Value, 1e-6);
        Assert.All(Connected.Checked(Connected.Of(Connected.Shunt, "+:A1,F1 -:F1,A2,F2", hertz: 0)).Coils, coil => Assert.Null(coil.Volts));
    }

    [Fact]
    public void The_smallest_change_turns_the_field_that_pulls_against_the_other()
    {
        var change = Connected.Checked(Connected.Of(Connected.Compound, "+:A1,F1 -:S1,F2 ~:A2,S2", hertz: 0)).Change!;
        Assert.Equal(Verdict.Correct, Connected.Checked(new() { Coils = Connected.Compound, Joints = change.Joints, SupplyVolts = 230, Hertz = 0 }).Verdict);
        Assert.Null(Connected.Checked(Connected.Of(Connected.Compound, "+:A1,F1 -:S2,F2 ~:A2,S1", hertz: 0)).Change);
    }

    private static IReadOnlyList<FoundCoil> Coils(string motor) => motor switch
    {
        "shunt" => Connected.Shunt, "series" => Connected.Series, "compound" => Connected.Compound, "magnet" => [Connected.Shunt[0]], _ => Connected.TwoSeries,
    };
}
