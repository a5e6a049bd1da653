using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>The rows of the standards, by hand.</summary>
public sealed class PlannerTest
{
    [Theory]
    [InlineData("capacitor-start-dual-6", "115/230", 240, null, "J1:T1->L1 J2:T4+T5->L2 J3:T2+T3+T8")]
    [InlineData("capacitor-start-dual-6", "115/230", 240, "clockwise", "J1:T1->L1 J2:T4+T8->L2 J3:T2+T3+T5")]
    [InlineData("capacitor-start-dual-6", "115/230", 120, "counterclockwise", "J1:T1+T3+T8->L1 J2:T2+T4+T5->L2")]
    [InlineData("capacitor-start-dual-6", "115/230", 120, "clockwise", "J1:T1+T3+T5->L1 J2:T2+T4+T8->L2")]
    [InlineData("capacitor-start-4", "115", 120, null, "J1:T1+T8->L1 J2:T4+T5->L2")]
    [InlineData("capacitor-start-4", "115", 115, "clockwise", "J1:T1+T5->L1 J2:T4+T8->L2")]
    [InlineData("capacitor-start-dual-8", "115/230", 230, null, "J1:T1+T8->L1 J2:T4+T5->L2 J3:T2+T3 J4:T6+T7")]
    [InlineData("capacitor-start-dual-8", "115/230", 115, "clockwise", "J1:T1+T3+T5+T7->L1 J2:T2+T4+T6+T8->L2")]
    public void Single_phase_rows_are_those_of_the_standard(string layout, string plate, double volts, string? rotation, string joints) =>
        Assert.Equal(joints, Motors.Joints(Motors.Planned(Motors.Marked(layout, plate, volts, 1, 60, rotation))));

    [Theory]
    [InlineData("three-phase-6", "230/400", 400, "J1:T1->L1 J2:T2->L2 J3:T3->L3 J4:T4+T5+T6")]
    [InlineData("three-phase-6", "230/400", 230, "J1:T1+T6->L1 J2:T2+T4->L2 J3:T3+T5->L3")]
    [InlineData("three-phase-6", "400/690", 400, "J1:T1+T6->L1 J2:T2+T4->L2 J3:T3+T5->L3")]
    [InlineData("three-phase-9-star", "230/460", 480, "J1:T1->L1 J2:T2->L2 J3:T3->L3 J4:T4+T7 J5:T5+T8 J6:T6+T9")]
    [InlineData("three-phase-9-star", "230/460", 240, "J1:T1+T7->L1 J2:T2+T8->L2 J3:T3+T9->L3 J4:T4+T5+T6")]
    [InlineData("three-phase-9-delta", "230/460", 240, "J1:T1+T6+T7->L1 J2:T2+T4+T8->L2 J3:T3+T5+T9->L3")]
    [InlineData("three-phase-9-delta", "208-230/460", 208, "J1:T1+T6+T7->L1 J2:T2+T4+T8->L2 J3:T3+T5+T9->L3")]
    [InlineData("three-phase-12", "230/460", 240, "J1:T1+T12+T6+T7->L1 J2:T10+T2+T4+T8->L2 J3:T11+T3+T5+T9->L3")]
    [InlineData("three-phase-12", "230/400/460/800", 400, "J1:T1+T7->L1 J2:T2+T8->L2 J3:T3+T9->L3 J4:T4+T5+T6 J5:T10+T11+T12")]
    [InlineData("three-phase-12", "230/400/460/800", 460, "J1:T1+T12->L1 J2:T10+T2->L2 J3:T11+T3->L3 J4:T4+T7 J5:T5+T8 J6:T6+T9")]
    [InlineData("three-phase-12", "230/400/460/800", 480, "J1:T1+T12->L1 J2:T10+T2->L2 J3:T11+T3->L3 J4:T4+T7 J5:T5+T8 J6:T6+T9")]
    [InlineData("three-phase-12", "220-240/380-415/440-480", 480, "J1:T1+T12->L1 J2:T10+T2->L2 J3:T11+T3->L3 J4:T4+T7 J5:T5+T8 J6:T6+T9")]
    [InlineData("three-phase-12", "220-240/380-415/440-480", 415, "J1:T1+T7->L1 J2:T2+T8->L2 J3:T3+T9->L3 J4:T4+T5+T6 J5:T10+T11+T12")]
    [InlineData("part-winding-6", "460", 480, "J1:T1+T7->L1 J2:T2+T8->L2 J3:T3+T9->L3")]
    [InlineData("two-speed-6", "460", 480, "J1:T1->L1 J2:T2->L2 J3:T3->L3")]
    public void Three_phase_rows_are_those_of_the_standard(string layout, string plate, double volts, string joints) =>
        Assert.Equal(joints, Motors.Joints(Motors.Planned(Motors.Marked(layout, plate, volts, 3, 60))));

    [Fact]
    public void A_sense_seen_from_the_shaft_end_is_the_opposite_seen_from_the_other_end() => Assert.Equal(
        Motors.Joints(Motors.Planned(Motors.Marked("capacitor-start-4", "115", 115, 1, 60, "clockwise", "opposite-end"))),
        Motors.Joints(Motors.Planned(Motors.Marked("capacitor-start-4", "115", 115, 1, 60, "counterclockwise", "shaft-end"))));

    [Theory]
    [InlineData(false, null, "connections.direction-standard")]
    [InlineData(false, "clockwise", "connections.direction-asked")]
    [InlineData(true, null, "connections.direction-first-run")]
    [InlineData(true, "clockwise", "connections.direction-turned")]
    public void No_direction_is_promised_where_the_ends_of_the_start_winding_are_not_told_apart(bool unproved, string? rotation, string said)
    {
        var plan = Motors.Planned(Motors.Marked("capacitor-start-dual-6", "115/230", 240, 1, 60, rotation) with { DirectionUnproved = unproved });
        Assert.Equal(said, plan.Steps[^1].Id);
        Assert.Equal(!unproved, Motors.Knowledge.Sentences.Render(plan.Steps[^1]).Contains("clockwise", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null, "shaft-end", "counterclockwise", "opposite-end")]
    [InlineData("clockwise", null, "clockwise", "opposite-end")]
    [InlineData("clockwise", "shaft-end", "clockwise", "shaft-end")]
    public void The_direction_is_told_as_it_was_asked_and_else_as_the_table_has_it(string? asked, string? from, string told, string toldFrom)
    {
        var plan = Motors.Planned(Motors.Marked("capacitor-start-4", "115", 115, 1, 60, asked, from));
        Assert.Equal((told, toldFrom), (plan.Rotation, plan.SeenFrom));
    }

    [Fact]
    public void A_universal_motor_on_direct_current_goes_to_plus_and_minus() =>
        Assert.Equal(["J1:A1->+ J2:S2->- J3:A2+S1", "J1:L1->+ J2:L2->-"], Motors.Knowledge.Layouts["series-commutator"].Forms().Where(form => form.NotConnected is null).Select(form => Motors.Joints(Motors.Planned(Motors.Marked(form, "230", 230, 1, 0)))));

    [Fact]
    public void Eight_leads_on_low_voltage_take_two_exchanges_to_reverse() => Assert.Equal(
        ["T5-T6", "T7-T8"],
        Motors.Planned(Motors.Marked("capacitor-start-dual-8", "115/230", 115, 1, 60)).Reverse.Swap
            .Select(pair => string.Join('-', pair.Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal));

    [Fact]
    public void Of_alike_windings_those_that_were_measured_tell_the_others()
    {
        Assert.Equal(3.0, Between(Motors.Marked("capacitor-start-dual-6", "115/230", 240, 1, 60) with { Windings = [new("T1", "T2", 1.5)] }, "J1", "J2"));
        Assert.Equal(2.3, Between(Motors.Marked("three-phase-6", "230/400", 400, 3, 50) with { Windings = [new("T1", "T4", 1.0), new("t5 ", " t2", 1.2)] }, "J2", "J3")!.Value, 1e-9);
        Assert.Null(Between(Motors.Marked("capacitor-start-dual-6", "115/230", 240, 1, 60) with { Windings = [new("T5", "T8", 3.4)] }, "J1", "J2"));
    }

    [Fact]
    public void Windings_that_share_a_lead_keep_their_own_ohms()
    {
        var request = Motors.Marked("split-phase-3", "230", 230, 1, 60) with { Windings = [new("C", "R", 3), new("C", "S", 9)] };
        Assert.Equal((3, 12), (Between(request, "J1", "J2"), Between(request, "J1", "J3")));
    }

    [Fact]
    public void What_a_bridged_capacitor_would_read_is_said_only_where_its_winding_was_measured()
    {
        var request = Motors.Marked("capacitor-start-4", "115", 115, 1, 60) with { Windings = [new("T1", "T4", 1.5)] };
        Assert.Equal(["connections.expect-measured", "connections.expect-frame"], Motors.Planned(request).ExpectedOhms.Select(one => one.Note.Id));
        Assert.Equal("connections.expect-capacitor-blocks", Motors.Planned(request with { Windings = [.. request.Windings, new("T5", "T8", 3.4)] }).ExpectedOhms[0].Note.Id);
    }

    private static double? Between(PlanRequest request, string one, string other) =>
        Motors.Planned(request).ExpectedOhms.First(reading => reading.Between.SequenceEqual([one, other])).Ohms?.Value;

    [Fact]
    public void The_brine_pump_of_the_sketch_is_planned_with_its_own_tags()
    {
        var request = Motors.Marked("capacitor-start-dual-6", "115/230", 240, 1, 60) with
        {
            Leads = new Dictionary<string, string> { ["T1"] = "1", ["T2"] = "4", ["T3"] = "2", ["T4"] = "6", ["T5"] = "5", ["T8"] = "3" },
            Windings = [new("1", "4", 1.5), new("2", "6", 1.5), new("3", "5", 3.4)],
        };
        request = request with { Plate = request.Plate.With("amps", PlateValue.Parse("10.4/5.2")) };
        var plan = Motors.Planned(request);
        Assert.Equal("J1:1->L1 J2:5+6->L2 J3:2+3+4", Motors.Joints(plan));
        Assert.All(plan.Windings.SelectMany(winding => new[] { winding.Volts, winding.PercentOfRated }).Concat(plan.ExpectedOhms.Select(one => one.Ohms).OfType<Rules.Quantities.Quoted>()), quote =>
            Assert.Equal(("circuit laws", true), (quote.Source.Title, quote.Source.Place!.EndsWith("over the joints of this plan", StringComparison.Ordinal))));
        Assert.Equal([120.0, 120.0, 120.0], plan.Windings.Select(winding => winding.Volts.Value!.Value));
        Assert.All(plan.Windings, winding => Assert.Equal(104.35, winding.PercentOfRated.Value!.Value, 0.01));
        Assert.Equal(5.2, plan.LineAmps!.Value);
        Assert.Equal([5.2, 5.2, null], plan.Windings.Select(winding => winding.Amps?.Value));
        Assert.Equal(3.0, plan.ExpectedOhms.First(one => one.Between.SequenceEqual(["J1", "J2"])).Ohms!.Value!.Value, 1e-9);
        Assert.Equal(1.5, plan.ExpectedOhms.First(one => one.Between.SequenceEqual(["J1", "J3"])).Ohms!.Value!.Value, 1e-9);
        // A bridge left in: 1.5 Ω and, beside the other half, 1.5 ∥ 3.4 Ω.
        Assert.Contains("2.54 Ω", Motors.Knowledge.Sentences.Render(plan.ExpectedOhms[0].Note), StringComparison.Ordinal);
        Assert.Equal("3-5", string.Join(" ", plan.Reverse.Swap.Select(pair => string.Join("-", pair.Order(StringComparer.Ordinal)))));
    }
}
