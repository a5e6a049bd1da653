using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>However a winding is drawn, its plan is the same; and circuits that no table of the trade has obey the same laws.</summary>
public sealed class DrawnOtherwiseTest
{
    private const double Volts = 230;

    private static readonly List<(Layout Form, LayoutConnection Row)> Rows =
    [
        .. from form in Motors.Knowledge.Layouts.Values.OrderBy(layout => layout.Id, StringComparer.Ordinal).SelectMany(layout => layout.Forms())
           from row in form.Connections
           select (form with { Form = null, Variants = [] }, row),
    ];

    [Fact]
    public void A_coil_drawn_from_its_finish_to_its_start_gets_the_same_volts_the_other_way()
    {
        foreach (var (form, row) in Rows)
        {
            var expected = Planned(form, row).Windings;
            foreach (var turned in form.Coils)
            {
                var got = Planned(form with { Coils = [.. form.Coils.Select(coil => coil == turned ? coil with { From = coil.To, To = coil.From } : coil)] }, row).Windings;
                Assert.Equal(expected.Select(Figures), got.Select(Figures));
                foreach (var (before, after) in expected.Zip(got))
                {
                    Assert.Equal(Angle(before), Angle(after) + (before.Coils.Count == 1 && before.Coil == turned.Id ? 180 : before.Leads.SequenceEqual(after.Leads) ? 0 : 180), Degrees.Same);
                }
            }
        }
    }

    [Fact]
    public void The_order_in_which_coils_are_written_changes_nothing()
    {
        foreach (var (form, row) in Rows)
        {
            var (expected, got) = (Planned(form, row), Planned(form with { Coils = [.. form.Coils.Reverse()] }, row));
            Assert.Equal(Ohms(expected), Ohms(got));
            Assert.Equal(
                expected.Windings.Where(winding => winding.Coils.Count == 1).Select(Figures).Order(StringComparer.Ordinal),
                got.Windings.Where(winding => winding.Coils.Count == 1).Select(Figures).Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void The_order_in_which_a_row_names_its_lines_changes_nothing()
    {
        var star = Motors.Knowledge.Layouts["three-phase-4"] with { Variants = [] };
        var neutral = star.Connections[0] with { Lines = new Dictionary<string, IReadOnlyList<string>>(star.Connections[0].Lines) { ["N"] = ["T0"] }, Capped = [] };
        foreach (var (form, row) in Rows.Append((star, neutral)))
        {
            var (expected, got) = (Planned(form, row), Planned(form, row with { Lines = row.Lines.Reverse().ToDictionary(StringComparer.Ordinal) }));
            Assert.Equal(Motors.Joints(expected), Motors.Joints(got));
            Assert.Equal(Ohms(expected), Ohms(got));
        }
    }

    [Fact]
    public void A_switch_elsewhere_in_the_motor_leaves_the_winding_behind_the_capacitor_a_branch()
    {
        var motor = Motors.Knowledge.Layouts["psc-reversible-3"] with { Form = null, Variants = [] };
        var heated = motor with
        {
            Coils = [.. motor.Coils, Coil("heater", "run", "H1", "h") with { Group = "heater" }],
            Parts = [.. motor.Parts, new() { Id = "thermostat", Kind = "switch", From = "h", To = "H2" }],
            Leads = [.. motor.Leads, new() { Marking = "H1" }, new() { Marking = "H2" }],
        };
        foreach (var row in motor.Connections)
        {
            Assert.Equal(Planned(motor, row).Windings.Select(Figures), Planned(heated, row).Windings.Select(Figures));
            Assert.Single(Planned(heated, row).Windings, winding => winding.Branch);
        }
    }

    [Fact]
    public void The_names_of_the_nodes_inside_change_nothing()
    {
        foreach (var (form, row) in Rows)
        {
            var named = form with
            {
                Coils = [.. form.Coils.Select(coil => coil with { From = $"~{coil.From}", To = $"~{coil.To}" })],
                Parts = [.. form.Parts.Select(part => part with { From = $"~{part.From}", To = $"~{part.To}" })],
                Leads = [.. form.Leads.Select(lead => lead with { Node = $"~{lead.Marking}" })],
            };
            var (expected, got) = (Planned(form, row), Planned(named, row));
            Assert.Equal(Motors.Joints(expected), Motors.Joints(got));
            Assert.Equal(expected.Windings.Select(Figures), got.Windings.Select(winding => Figures(winding).Replace("~", "", StringComparison.Ordinal)));
            Assert.Equal(Ohms(expected), Ohms(got));
            Assert.Equal(expected.Circuit.Elements.Select(Drawn), got.Circuit.Elements.Select(element => Drawn(element).Replace("~", "", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void Two_leads_on_one_end_of_a_winding_are_both_drawn_to_it()
    {
        var layout = Motor([Coil("run", "run", "T1", "T2")]) with { Leads = [new() { Marking = "T1" }, new() { Marking = "T2" }, new() { Marking = "T9", Node = "T2" }] };
        var plan = Planned(layout, layout.Connections[0] with { Lines = new Dictionary<string, IReadOnlyList<string>> { ["L1"] = ["T1"], ["L2"] = ["T2", "T9"] } });
        Assert.Equal(["run J1-inside T2", "T2 inside T2-J2", "T9 inside T2-J2"], plan.Circuit.Elements.Select(Drawn));
    }

    [Fact]
    public void The_order_of_a_table_decides_neither_the_direction_nor_that_a_row_is_for_starting_only()
    {
        foreach (var form in Motors.Knowledge.Layouts.Values.SelectMany(layout => layout.Forms()).Where(form => form.Connections.Any(row => row.Rotation is not null || row.Starting)))
        {
            var turned = form with { Form = null, Variants = [], Connections = [.. form.Connections.Reverse()] };
            var request = Request(turned, turned.Connections[^1]) with { Connection = null };
            var plan = Planned(turned, turned.Connections[0], request);
            Assert.False(plan.Row.Starting);
            Assert.Contains(plan.Row.Rotation, new[] { null, "counterclockwise" });
            Assert.All(["clockwise", "counterclockwise"], rotation => Assert.Equal(
                plan.Row.Rotation is null ? null : rotation, Planned(turned, turned.Connections[0], request with { Rotation = rotation, SeenFrom = plan.Row.SeenFrom }).Row.Rotation));
        }
    }

    [Fact]
    public void A_row_that_was_named_comes_alone()
    {
        var request = Motors.Marked("part-winding-6", "460", 480, 3, 60);
        Assert.Single(Motors.Planned(request).Others);
        Assert.Empty(Motors.Planned(request with { Connection = "only" }).Others);
    }

    [Fact]
    public void A_winding_that_hangs_free_reads_open_and_behind_a_capacitor_the_meter_kicks()
    {
        var layout = Motor([Coil("run", "run", "T1", "T2"), Coil("heater", "run", "H1", "H2") with { Group = "heater" }]);
        layout = layout with { Leads = [.. layout.Leads, new() { Marking = "H1" }, new() { Marking = "H2" }] };
        var row = layout.Connections[0] with { Joints = [["H1"], ["H2"]] };
        Assert.Equal("connections.expect-open", Planned(layout, row).ExpectedOhms.First(one => one.Between.SequenceEqual(["J1", "J3"])).Note.Id);
        Assert.Equal("connections.expect-kick", Planned(layout with { Capacitor = "run" }, row).ExpectedOhms.First(one => one.Between.SequenceEqual(["J1", "J3"])).Note.Id);
    }

    [Fact]
    public void Only_a_closed_contact_reads_next_to_nothing_whether_or_not_the_windings_were_measured()
    {
        var layout = Motor([Coil("run", "run", "P", "T2")]) with
        {
            Leads = [new() { Marking = "T1" }, new() { Marking = "T2" }, new() { Marking = "P" }],
            Parts = [new() { Id = "protector", Kind = "protector", From = "T1", To = "P" }],
        };
        var row = layout.Connections[0] with { Joints = [["P"]] };
        var request = Request(layout, row);
        Assert.All([request, request with { CoilOhms = new Dictionary<string, double> { ["run"] = 1.5 } }], one => Assert.Equal(
            "connections.expect-nothing", Planned(layout, row, one).ExpectedOhms.First(reading => reading.Between.SequenceEqual(["J1", "J3"])).Note.Id));
    }

    [Fact]
    public void A_capacitor_across_the_lines_of_a_motor_without_a_start_winding_is_no_reason_to_refuse()
    {
        var layout = Motor([Coil("run", "run", "T1", "T2")]) with { Capacitor = "run" };
        Assert.Single(Planned(layout, layout.Connections[0], Request(layout, layout.Connections[0]) with { Capacitor = new Fact.Capacitor { Use = "run", Volts = 100 } }).Windings);
    }

    [Fact]
    public void A_form_with_one_lead_more_is_known_by_it()
    {
        var layout = Motor([Coil("run", "run", "T1", "T2")]);
        layout = layout with { Variants = [new() { Id = "more", Name = "more", Weight = 1, Leads = [.. layout.Leads, new() { Marking = "P1", Node = "T1" }] }] };
        Assert.Equal([null, "more"], new[] { layout, layout.Forms()[1] }.Select(form => LeadTags.FormOf(layout, Request(form, layout.Connections[0]) with { Form = null }).Form));
    }

    [Fact]
    public void All_insides_with_the_same_leads_and_another_table_are_named()
    {
        var layout = Motor([Coil("run", "run", "T1", "T2")]);
        LayoutVariant Other(string name) => new() { Id = name, Name = name, Weight = 1, Connections = [layout.Connections[0] with { For = name }] };
        var note = Assert.Single(Planned(layout with { Variants = [Other("one"), Other("two")] }, layout.Connections[0]).Notes, note => note.Id == "connections.note-form");
        Assert.Contains("one; two", note.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_direction_turns_by_what_the_table_has_and_is_not_promised_where_it_has_nothing()
    {
        var magnets = Motors.Knowledge.Layouts["dc-permanent-magnet"] with { Variants = [] };
        var turned = Planned(magnets, magnets.Connections[0] with { ReverseSwap = [] }).Reverse;
        Assert.Equal((true, "+ -", "connections.reverse-polarity"), (turned.Possible, string.Join(' ', turned.Swap.Single()), turned.Why.Id));
        var layout = Motor([Coil("run", "run", "T1", "T2")]) with { NotReversible = null };
        var fixedOne = Planned(layout, layout.Connections[0]).Reverse;
        Assert.Equal((false, 0, "connections.reverse-not-known"), (fixedOne.Possible, fixedOne.Swap.Count, fixedOne.Why.Id));
    }

    [Fact]
    public void Four_pairs_in_series_share_the_line_alike_however_deep_they_lie()
    {
        string[] nodes = ["T1", "p", "q", "r", "T2"];
        var layout = Motor([.. new[] { 1, 2, 0, 3 }.SelectMany(at => new[] { 1, 2 }.Select(half => Coil($"w{at}{half}", "run", nodes[at], nodes[at + 1])))]);
        var plan = Planned(layout, layout.Connections[0]);
        Assert.Equal(8, plan.Windings.Count);
        Assert.All(plan.Windings, winding => Assert.Equal(Volts / 4, winding.Volts.Value!.Value, 1e-9));
    }

    [Fact]
    public void Four_alike_in_series_share_the_line_and_each_carries_all_of_its_amps()
    {
        string[] nodes = ["T1", "p", "q", "r", "T2"];
        var layout = Motor([.. new[] { 1, 3, 0, 2 }.Select(at => Coil($"w{at}", "run", nodes[at], nodes[at + 1]))]);
        var request = Request(layout, layout.Connections[0]);
        var plan = Planned(layout, layout.Connections[0], request with { Plate = request.Plate.With("amps", PlateValue.Of(6)) });
        Assert.All(plan.Windings, winding => Assert.Equal((Volts / 4, 6.0, 0.0), (winding.Volts.Value!.Value, winding.Amps!.Value!.Value, winding.AngleDegrees)));
    }

    [Fact]
    public void Two_alike_in_series_carry_half_the_amps_of_one_alone_beside_them()
    {
        var layout = Motor([Coil("a", "run", "T1", "p"), Coil("b", "run", "p", "T2"), Coil("c", "run", "T1", "T2")]);
        var request = Request(layout, layout.Connections[0]);
        var plan = Planned(layout, layout.Connections[0], request with { Plate = request.Plate.With("amps", PlateValue.Of(6)) });
        Assert.Equal([2.0, 2, 4], plan.Windings.Select(winding => Math.Round(winding.Amps!.Value!.Value, 9)));
    }

    [Fact]
    public void A_start_winding_with_a_speed_section_in_series_is_one_branch()
    {
        var layout = Motor([Coil("run", "run", "T1", "T2"), Coil("tap", "speed-tap", "T1", "m") with { Group = "tap" }, Coil("start", "start", "m", "T2") with { Group = "start" }]);
        var branch = Planned(layout, layout.Connections[0]).Windings.Single(winding => winding.Coils.Count == 2);
        Assert.True(branch.Branch);
        Assert.Equal(Volts, branch.Volts.Value!.Value, 1e-9);
    }

    [Fact]
    public void A_neutral_on_the_star_point_changes_no_volts_and_is_metered_from_the_first_line()
    {
        var layout = Motors.Knowledge.Layouts["three-phase-4"];
        var row = layout.Connections[0];
        var (open, tied) = (Planned(layout, row), Planned(layout, row with { Lines = new Dictionary<string, IReadOnlyList<string>>(row.Lines) { ["N"] = ["T0"] }, Capped = [] }));
        Assert.Equal(open.Windings.Select(Figures), tied.Windings.Select(Figures));
        Assert.Equal("N", tied.Joints[^1].Conductor);
        Assert.Equal(["J1-J2", "J1-J3", "J2-J3", "J1-J4", "J1-frame"], tied.ExpectedOhms.Select(one => string.Join('-', one.Between)));
    }

    [Fact]
    public void A_table_that_joins_two_lines_is_never_made_into_a_plan()
    {
        var layout = Motors.Knowledge.Layouts["three-phase-3"];
        var row = layout.Connections[0] with { Lines = new Dictionary<string, IReadOnlyList<string>> { ["L1"] = ["T1", "T3"], ["L2"] = ["T2"], ["L3"] = ["T3"] } };
        Assert.Contains($"'{row.Id}' of three-phase-3", Assert.Throws<InvalidOperationException>(() => Planned(layout, row)).Message, StringComparison.Ordinal);
    }

    private static string Figures(PlannedWinding winding) =>
        $"{winding.Coil} [{string.Join(' ', winding.Coils.Order(StringComparer.Ordinal))}] {string.Join('-', winding.Leads.Order(StringComparer.Ordinal))} {winding.Volts.Text} {winding.PercentOfRated.Text} {winding.Branch} {winding.Amps?.Text}";

    private static IEnumerable<string> Ohms(Plan plan) => plan.ExpectedOhms.Select(one => $"{string.Join('-', one.Between)} {one.Ohms?.Text} {one.Note.Id}");

    private static string Drawn(PlanElement element) => $"{element.Id} {element.From.Node}-{element.To.Node}";

    private static double Angle(PlannedWinding winding) => winding.AngleDegrees;

    private static LayoutCoil Coil(string id, string role, string from, string to) => new() { Id = id, Role = role, From = from, To = to, Group = "run" };

    private static Layout Motor(IReadOnlyList<LayoutCoil> coils) => Motors.Knowledge.Layouts["split-phase-2"] with
    {
        Id = "drawn",
        Variants = [],
        Parts = [],
        Coils = coils,
        Leads = [new() { Marking = "T1" }, new() { Marking = "T2" }],
        Connections = [new() { Id = "only", For = "only", Lines = new Dictionary<string, IReadOnlyList<string>> { ["L1"] = ["T1"], ["L2"] = ["T2"] } }],
    };

    private static PlanRequest Request(Layout form, LayoutConnection row)
    {
        var plate = string.Join('/', form.Connections.Select(one => Math.Round(Volts * one.VoltsShare)).Distinct().Order());
        var direct = form.Id.StartsWith("dc-", StringComparison.Ordinal);
        return Motors.Marked(form, plate, Math.Round(Volts * row.VoltsShare), form.Family == "three-phase" ? 3 : 1, direct ? 0 : 60) with { Connection = row.Id };
    }

    private static Plan Planned(Layout form, LayoutConnection row, PlanRequest? request = null)
    {
        var drawn = form with { Connections = [.. form.Connections.Select(one => one.Id == row.Id ? row : one)] };
        var knowledge = Motors.Knowledge with { Layouts = new Dictionary<string, Layout>(Motors.Knowledge.Layouts, StringComparer.Ordinal) { [form.Id] = drawn } };
        var answer = new Planner(knowledge).Plan(request ?? Request(drawn, row));
        Assert.True(answer.IsGiven, string.Join("; ", answer.Problems.Select(problem => $"{form.Id} {row.Id} {problem.Field}: {problem.Advice.Id}")));
        return answer.Value;
    }

    /// <summary>Angles that differ by whole turns are one.</summary>
    private sealed class Degrees : IEqualityComparer<double>
    {
        public static Degrees Same { get; } = new();

        public bool Equals(double x, double y) => Math.Abs(Math.IEEERemainder(x - y, 360)) < 1e-6;

        public int GetHashCode(double obj) => 0;
    }
}
