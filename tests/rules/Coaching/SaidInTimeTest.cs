using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Practice;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>What is asked and said at each place of a whole job: nothing that is known, nothing that cannot be yet, and no hand on a motor that may be live.</summary>
public sealed class SaidInTimeTest
{
    private static readonly Coach Coach = new(Trade.Knowledge);
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("hummed")]
    [InlineData("tripped")]
    [InlineData("nothing")]
    [InlineData("slow")]
    public void After_a_start_that_went_wrong_it_is_made_safe_before_anything_else(string outcome)
    {
        var turns = Job("split-phase-4", "first-start", outcome);
        var start = turns.FindIndex(turn => turn.Asked == "first-start");
        Assert.Equal("isolated", turns[start + 1].Asked);
        Assert.StartsWith("test.", turns[start + 2].Asked == "shaft-free-guarded" ? turns[start + 3].Asked : turns[start + 2].Asked, StringComparison.Ordinal);
    }

    /// <summary>Each of two capacitors that were measured is judged, and of one that was measured twice the last.</summary>
    [Fact]
    public void Each_capacitor_that_was_measured_is_judged()
    {
        Fact.Capacitor start = new() { Microfarads = 88, MicrofaradsTo = 108, MeasuredMicrofarads = 61, Use = "start" }, run = new() { Microfarads = 30, MeasuredMicrofarads = 20, Use = "run" };
        Assert.Equal(["capacitors.good", "capacitors.weak"], Judged(start, run, run with { MeasuredMicrofarads = 29 }));
        Assert.Equal(["capacitors.good"], Judged(start, run, new Fact.BenchTest { Test = "capacitance", Value = 29, Unit = "microfarad" }));

        static IEnumerable<string> Judged(params Fact[] facts) => Coach.Assess(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [new Fact.Goal { Id = "diagnose" }, new Fact.Symptom { Id = "hums-no-start" }, .. facts]))
            .Say.Select(one => one.Id).Where(id => id.StartsWith("capacitors.", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
    }

    /// <summary>A test that is done live puts power on; a look at the motor after it waits for isolation once more.</summary>
    [Fact]
    public void No_hand_goes_to_the_shaft_while_power_may_be_on()
    {
        var live = Trade.Knowledge.Tests.Values.Where(test => Trade.Knowledge.GateTasks[test.Task].Group == "powered").Select(test => $"test.{test.Id}").ToHashSet();
        var turns = Job("three-phase-9-star", "first-start", "hummed").SkipWhile(turn => turn.Asked != "first-start").ToList();
        Assert.Contains(turns, turn => live.Contains(turn.Asked));
        var isOn = false;
        foreach (var turn in turns)
        {
            Assert.False(isOn && turn.Asked.StartsWith("test.", StringComparison.Ordinal) && !live.Contains(turn.Asked), turn.Asked);
            isOn = turn.Asked != "isolated" && (isOn || turn.Asked == "first-start" || live.Contains(turn.Asked));
        }
    }

    [Fact]
    public void What_a_job_has_shown_is_not_asked_for_again_when_its_start_goes_wrong()
    {
        string[] shown = ["test.resistance", "test.plate", "test.uncouple-load", "test.starts-per-hour", "test.series-voltage", "test.line-currents", "test.frame-heat"];
        Assert.Empty(Job("three-phase-9-star", "first-start", "hummed").Select(turn => turn.Asked).Intersect(shown));

        var complaint = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [new Fact.Goal { Id = "diagnose" }, new Fact.Plate { Field = "phases", Value = PlateValue.Of(3) }, new Fact.Symptom { Id = "hums-no-start" }]);
        Assert.Superset(shown[..2].ToHashSet(), Asked(complaint));
    }

    [Fact]
    public void The_kind_of_motor_that_a_job_found_is_the_kind_whose_faults_are_looked_for()
    {
        var causes = Job("split-phase-4", "first-start", "hummed").Last().Assessed.Causes.SelectMany(cause => Trade.Knowledge.Causes[cause.Id].Families.Keys.Contains("split-phase") ? Array.Empty<string>() : [cause.Id]);
        Assert.Empty(causes);
        Assert.DoesNotContain(Job("split-phase-4", "first-start", "hummed").Last().Assessed.Causes, cause => cause.Id == "run-half-reversed");
    }

    [Fact]
    public void A_start_that_hummed_tells_what_it_does()
    {
        var said = Job("three-phase-3", "first-start", "hummed").First(turn => turn.Asked == "isolated" && turn.Assessed.Causes.Count > 0).Assessed;
        Assert.Equal("heat.run-hummed", said.Say[0].Id);
    }

    [Theory]
    [InlineData("psc-tapped", true)]
    [InlineData("split-phase-4", false)]
    [InlineData("three-phase-9-star", false)]
    public void Every_lead_of_the_motor_stands_in_the_line_of_the_plan(string layout, bool caps)
    {
        var planned = Job(layout).Last().Assessed;
        var line = planned.Say.Single(said => said.Id == "coach.plan").Gaps["joints"];
        Assert.All(planned.Plan!.Joints.SelectMany(joint => joint.Leads).Concat(planned.Plan.Capped), lead => Assert.Contains($" {lead}", line, StringComparison.Ordinal));
        Assert.Equal(caps, line.Contains("capped alone", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("na-dc-180", true)]
    [InlineData("na-dc-90", false)]
    public void A_motor_for_direct_current_gets_its_plan_from_the_supplies_that_it_is_offered(string supply, bool suits)
    {
        var turns = Job("dc-shunt", "supply", supply);
        var told = turns[turns.FindIndex(turn => turn.Asked == "supply") + 1].Assessed;
        Assert.Equal(suits, told.Plan is not null);
        Assert.DoesNotContain(told.Say, said => said.Id == "connections.phases");
    }

    [Fact]
    public void The_joints_of_a_winding_with_taps_are_read_before_power() =>
        Assert.Contains(Job("psc-tapped"), turn => turn.Asked.StartsWith("joint-ohms.", StringComparison.Ordinal));

    [Fact]
    public void What_is_not_at_hand_is_said_once_it_was_asked_for()
    {
        var turns = Job("three-phase-6", "ends-instrument", "none");
        var asked = turns.FindIndex(turn => turn.Asked == "ends-instrument");
        Assert.DoesNotContain(turns[asked].Assessed.Say, said => said.Id == "ends.needs-instrument");
        Assert.Contains(turns[asked + 1].Assessed.Say, said => said.Id == "ends.needs-instrument");
    }

    [Theory]
    [InlineData("two-speed-6", false)]
    [InlineData("three-phase-6", true)]
    public void An_instrument_is_asked_for_only_where_one_would_help(string layout, bool asked) =>
        Assert.Equal(asked, Job(layout).Exists(turn => turn.Asked == "ends-instrument"));

    [Fact]
    public void What_has_to_be_done_to_a_motor_that_turns_wrongly_comes_before_the_new_plan()
    {
        var said = Job("split-phase-4", "run-direction", "wrong").First(turn => turn.Assessed.Say.Any(one => one.Id == "coach.turn-round")).Assessed.Say.Select(one => one.Id).ToList();
        Assert.InRange(said.IndexOf("heat.run-direction-wrong"), 0, said.IndexOf("coach.plan"));
        Assert.InRange(said.IndexOf("coach.turn-round"), 0, said.IndexOf("coach.plan"));
    }

    [Theory]
    [InlineData("?", true)]
    [InlineData("right", false)]
    public void A_direction_that_nobody_saw_keeps_the_load_off(string seen, bool said) =>
        Assert.Equal(said, Job("split-phase-4", "run-direction", seen).Last().Assessed.Say.Any(one => one.Id == "coach.direction-unseen"));

    /// <summary>A clip between wires that both end at measured leads would tie those leads together.</summary>
    [Theory]
    [InlineData("psc-3", "capacitor-off", "capacitor-bridged")]
    [InlineData("capacitor-start-4", "capacitor-bridged", "capacitor-off")]
    public void A_capacitor_is_bridged_only_where_its_wires_go_into_the_motor(string layout, string asked, string never)
    {
        var turns = Job(layout);
        Assert.Contains(turns, turn => turn.Asked == asked);
        Assert.DoesNotContain(turns, turn => turn.Asked == never);
    }

    [Fact]
    public void Wires_that_were_left_apart_are_not_asked_about_again_once_it_shows_where_they_end()
    {
        CaseFile File(string option) => CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica),
            [
                new Fact.Goal { Id = "identify-leads" }, new Fact.Plate { Field = "phases", Value = PlateValue.Of(1) }, new Fact.Confirm { Id = "isolated" }, new Fact.Capacitor(),
                new Fact.Confirm { Id = "capacitor-discharged" }, new Fact.Choice { Question = "capacitor-bridged", Option = option }, new Fact.Choice { Question = "capacitor-wires", Option = "outside" },
            ]);
        Assert.Equal("leads", Coach.Assess(File("off")).Next?.Id);
        Assert.Equal("capacitor-off", Coach.Assess(File("bridged")).Next?.Id);
    }

    private static HashSet<string> Asked(CaseFile file)
    {
        HashSet<string> asked = [];
        for (var turn = 0; turn < 60 && Coach.Assess(file).Next is { } next; turn++)
        {
            asked.Add(next.Id);
            file = PracticeAnswers.Add(file, next.Kind == QuestionKind.Confirm ? [new Fact.Confirm { Id = next.Id }] : [new Fact.Unknown { Question = next.Id }]);
        }

        return asked;
    }

    /// <summary>Each question of a whole job with what was said beside it; one of them is answered otherwise.</summary>
    private static List<(string Asked, Assessment Assessed)> Job(string layout, string but = "", string other = "")
    {
        var motor = PracticeMotor.Make(Trade.Knowledge, layout, null, 4).Value!;
        var file = PracticeAnswers.Add(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), []), [.. motor.Opening(), .. Listener.Understand("which wire goes where, help me hook it up").Facts]);
        List<(string, Assessment)> turns = [];
        while (turns.Count < 80)
        {
            var assessed = Coach.Assess(file);
            turns.Add((assessed.Next?.Id ?? "", assessed));
            if (assessed.Next is not { } next)
            {
                break;
            }

            var given = next.Id == but && !turns.SkipLast(1).Any(turn => turn.Item1 == but) ? PracticeAnswers.Of(file, next, other) : PracticeAnswers.Of(file, next, motor);
            file = PracticeAnswers.Add(file, given.Count > 0 ? given : [new Fact.Unknown { Question = next.Id }]);
        }

        return turns;
    }
}
