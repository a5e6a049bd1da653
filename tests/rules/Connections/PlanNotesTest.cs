using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Tests.Connections;

public sealed class PlanNotesTest
{
    [Theory]
    [InlineData("psc-4", 230.0, "230", "start", 330.0, "connections.start-capacitor-for-run")]
    [InlineData("capacitor-start-4", 230.0, "230", "start", 125.0, "connections.capacitor-volts-too-low")]
    [InlineData("capacitor-start-dual-6", 240.0, "115/230", "start", 100.0, "connections.capacitor-volts-too-low")]
    [InlineData("psc-4", 230.0, "230", "run", 250.0, "connections.run-capacitor-volts-too-low")]
    [InlineData("psc-3", 240.0, "230", "unknown", 330.0, "connections.run-capacitor-volts-too-low")]
    public void A_capacitor_that_would_burst_gives_no_plan(string layout, double volts, string plate, string use, double rating, string reason)
    {
        var request = Motors.Marked(layout, plate, volts, 1, 60) with { Capacitor = new Fact.Capacitor { Use = use, Volts = rating } };
        var problem = Assert.Single(Motors.Planner.Plan(request).Problems);
        Assert.Equal((reason, "not-ready", "capacitor"), (problem.Advice.Id, problem.Id, Assert.Single(problem.Missing)));
        Assert.Equal(reason == "connections.start-capacitor-for-run" ? "capacitor.use" : "capacitor.volts", problem.Field);
        Assert.DoesNotContain('{', Motors.Knowledge.Sentences.Render(problem.Advice));
    }

    /// <summary>One that stays in circuit is made for more than the line.</summary>
    [Theory]
    [InlineData("capacitor-start-4", "start", 1, true)]
    [InlineData("capacitor-start-4", "start", 0.999, false)]
    [InlineData("psc-4", "run", 1, true)]
    [InlineData("psc-4", "run", 0.999, false)]
    public void The_least_volts_of_a_capacitor_are_enough_and_less_is_not(string layout, string use, double share, bool planned)
    {
        var figures = Motors.Knowledge.Connections;
        var rating = share * (use == "run" ? figures.RunCapacitorVolts : figures.CapacitorVolts).Value * 230;
        Assert.Equal(planned, Motors.Planner.Plan(Motors.Marked(layout, "230", 230, 1, 60) with { Capacitor = new Fact.Capacitor { Use = use, Volts = rating } }).IsGiven);
    }

    [Theory]
    [InlineData("split-phase-4", true)]
    [InlineData("split-phase-3", false)]
    [InlineData("capacitor-start-4", false)]
    public void A_capacitor_at_a_motor_that_has_none_is_left_out_and_said(string layout, bool said)
    {
        var request = Motors.Marked(layout, "230", 230, 1, 60);
        var plan = Motors.Planned(request with { Capacitor = new Fact.Capacitor { Use = "start", Volts = layout == "capacitor-start-4" ? 250 : 50 } });
        Assert.Equal(said, plan.Notes.Any(note => note.Id == "connections.note-no-capacitor"));
        Assert.Equal(Motors.Joints(Motors.Planned(request)), Motors.Joints(plan));
    }

    [Fact]
    public void A_run_capacitor_at_a_motor_that_starts_on_one_is_said() => Assert.Contains(
        Motors.Planned(Motors.Marked("capacitor-start-4", "230", 230, 1, 60) with { Capacitor = new Fact.Capacitor { Use = "run", Volts = 440 } }).Notes, note => note.Id == "connections.note-run-capacitor-for-start");

    [Fact]
    public void On_the_midpoint_a_capacitor_for_half_the_line_is_enough() =>
        Assert.True(Motors.Planner.Plan(Motors.Marked("capacitor-start-dual-6", "115/230", 240, 1, 60) with { Capacitor = new Fact.Capacitor { Use = "start", Volts = 125 } }).IsGiven);

    [Fact]
    public void Insides_that_no_reading_tells_apart_are_named()
    {
        var request = Motors.Marked("two-speed-6", "460", 480, 3, 60);
        var plan = Motors.Planned(request);
        var note = Assert.Single(plan.Notes, note => note.Id == "connections.note-form");
        Assert.Contains("constant power", Motors.Knowledge.Sentences.Render(note), StringComparison.Ordinal);
        Assert.DoesNotContain(Motors.Planned(request with { Form = "constant-power" }).Notes, one => one.Id == "connections.note-form");
        Assert.DoesNotContain(Motors.Planned(Motors.Marked("capacitor-start-4", "115", 115, 1, 60)).Notes, one => one.Id == "connections.note-form");
    }

    [Fact]
    public void Every_sentence_of_every_plan_is_whole()
    {
        foreach (var form in Motors.Knowledge.Layouts.Values.SelectMany(layout => layout.Forms()).Where(form => form.NotConnected is null))
        {
            var plate = string.Join('/', form.Connections.Select(row => Math.Round(230 * row.VoltsShare)).Distinct().Order());
            foreach (var row in form.Connections)
            {
                var direct = form.Id.StartsWith("dc-", StringComparison.Ordinal);
                var request = Motors.Marked(form, plate, Math.Round(230 * row.VoltsShare), form.Family == "three-phase" ? 3 : 1, direct ? 0 : 60) with { Connection = row.Id };
                var plan = Motors.Planned(request);
                Assert.All(
                    [.. plan.Steps, .. plan.Why, .. plan.Notes, plan.Reverse.Why, .. plan.ExpectedOhms.Select(one => one.Note), .. plan.Cautions.Select(one => one.Text)],
                    statement => Assert.Matches(@"^[A-Z0-9][^{}]*\.$", Motors.Knowledge.Sentences.Render(statement)));
            }
        }
    }
}
