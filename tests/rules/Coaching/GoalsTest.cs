using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>The jobs that people bring beside a fault, from their words to the end: settled, handed on, or in what is missing.</summary>
public sealed class GoalsTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Coach Coach = new(Knowledge);
    private static readonly Listener Listener = new(Knowledge);
    private static readonly SafetyGate Gate = new(Knowledge);

    [Theory]
    [InlineData("connect", "just-rewired", "leads-unmarked")]
    [InlineData("connect", "supply-changed", "just-rewired")]
    [InlineData("diagnose", "just-rewired", "hums-no-start")]
    [InlineData("diagnose", "just-rewired")]
    [InlineData("diagnose", "stood-unused")]
    public void What_happened_before_does_not_turn_a_wiring_job_into_a_search_for_a_fault(string goal, params string[] told) =>
        Assert.Equal(goal, Coach.GoalOf(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), told.Select(id => new Fact.Symptom { Id = id }))));

    [Theory]
    [InlineData("stirrer: nine leads, plate 208-230/460 V 2 hp, want it on 230", "connect")]
    [InlineData("six wires, going on 240", "connect")]
    [InlineData("six wires, 240 V, it hums", "diagnose")]
    [InlineData("six wires, plate 115/230 V", null)]
    [InlineData("240 V here", null)]
    [InlineData("six leads 1 to 6, it hums and does not start", "diagnose")]
    [InlineData("six leads 1 to 6", "connect")]
    [InlineData("it stops after an hour and after a coffee it works again", "diagnose")]
    public void Leads_and_a_supply_without_a_complaint_are_to_be_connected(string said, string? goal) => Assert.Equal(goal, Coach.GoalOf(CaseFile.From(
        new CaseOpening(Role.Technician, Region.NorthAmerica), Listener.Hear(said, region: Region.NorthAmerica).Value!.Facts)));

    [Theory]
    [InlineData("nine leads numbered 1 to 9, plate 460 V", null)]
    [InlineData("the numbers on the plate", "check-numbers")]
    [InlineData("the plate", "check-numbers")]
    public void Leads_that_are_numbered_are_no_numbers_to_check(string said, string? goal)
    {
        var asked = Coach.Assess(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [])).Next!;
        var heard = Listener.Hear(said, [], new OpenQuestion { Id = asked.Id, Kind = asked.Kind, About = asked.About, Options = [.. asked.Options.Select(option => new OpenOption(option.Id, Knowledge.Sentences.Render(option.Text)))] }, Region.NorthAmerica).Value!;
        Assert.Equal(goal, heard.Answer?.Choice ?? heard.Facts.OfType<Fact.Goal>().LastOrDefault()?.Id);
    }

    [Theory]
    [InlineData(Role.Technician, "which capacitor do I need for the brine pump, the start cap is gone", "start cap 161-193 uF 250 VAC", "ready")]
    [InlineData(Role.Homeowner, "which capacitor do I need for my grinder", "161-193 uF 250 VAC start", "referred")]
    [InlineData(Role.Technician, "which capacitor do I need for the brine pump", "I can't read it", "referred")]
    [InlineData(Role.Homeowner, "which capacitor do I need for my grinder", "I can't read it", "referred")]
    public void A_capacitor_is_replaced_by_its_marks_or_not_at_all(Role role, string said, string marks, string end)
    {
        var (file, assessed) = Talk(role, said, new() { ["capacitor"] = "one", ["capacitor.marks"] = marks });
        Assert.Equal("replace-capacitor", assessed.Goal);
        Assert.Equal(end, assessed.Status);
        var says = Ids(assessed);
        Assert.Equal(marks.StartsWith('I'), says.Contains("coach.capacitor-unreadable"));
        Assert.Equal(!marks.StartsWith('I'), says.Contains("faq.capacitor-range"));
        Assert.Equal(!marks.StartsWith('I'), file.Capacitors.Exists(capacitor => capacitor.Microfarads is not null));
    }

    [Theory]
    [InlineData(Role.Technician, "the ground prong has been cut off the plug", "", "referred")]
    [InlineData(Role.Homeowner, "the ground prong has been cut off the plug", "", "referred")]
    [InlineData(Role.Technician, "check the earth of the stirrer", "0.2", "ready")]
    [InlineData(Role.Homeowner, "check the earth of the stirrer", "0.2", "ready")]
    [InlineData(Role.Technician, "check the earth of the stirrer", "14", "referred")]
    [InlineData(Role.Homeowner, "check the earth of the stirrer", "not sure", "referred")]
    public void An_earth_is_whole_or_the_motor_stays_off(Role role, string said, string ohms, string end)
    {
        var (_, assessed) = Talk(role, said, new() { ["capacitor"] = "none", ["earth-continuity"] = ohms });
        Assert.Equal("earth-check", assessed.Goal);
        Assert.True(end == assessed.Status, $"{assessed.Status}: {string.Join(", ", Ids(assessed))}; {string.Join(", ", assessed.Gate.Closed.Select(closed => $"{closed.Task} {closed.Reason.Id}"))}");
        Assert.Contains("coach.earth-first", Ids(assessed));
    }

    /// <summary>In the middle of a connection: the earth is made good and read, or nobody can read it; then the connection goes on without being asked for again.</summary>
    [Theory]
    [InlineData("0.2")]
    [InlineData(null)]
    public void A_missing_earth_in_the_middle_of_a_job_is_dealt_with_and_the_job_goes_on(string? ohms)
    {
        var file = Add(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), []), [.. Listener.Understand("six leads, which goes where?").Facts]);
        Dictionary<string, string> script = new() { ["capacitor"] = "none", ["plate"] = "1/2 hp 115 V 7.8 A 1725 rpm 60 Hz single phase" };
        for (var before = Coach.Assess(file).Next!; before.Id != "leads-numbered"; before = Coach.Assess(file).Next!)
        {
            var answer = Answer(file, before, script);
            Assert.True(answer.Count > 0, before.Id);
            file = Add(file, answer);
        }

        var heard = Listener.Hear("there is no earth wire", [.. file.SpokenLeads]).Value!;
        file = Add(file, [.. heard.Facts, .. heard.Dangers.Select(danger => SafetyGate.Heard(danger.Id, danger.Span))]);
        var broken = Coach.Assess(file);
        Assert.Equal(("earth-check", "earth-continuity", "open"), (broken.Goal, broken.Next?.Id, broken.Status));
        Assert.Contains("cause.missing-earth.repair", Ids(broken));
        Assert.Contains("coach.earth-then", Ids(broken));
        if (ohms is not null)
        {
            file = Add(file, Answer(file, broken.Next!, new() { ["earth-continuity"] = "14" }));
            Assert.Equal(("earth-check", "earth-continuity"), (Coach.Assess(file).Goal, Coach.Assess(file).Next?.Id));
        }

        file = Add(file, Answer(file, broken.Next!, ohms is null ? [] : new() { ["earth-continuity"] = ohms }));
        var after = Coach.Assess(file);
        Assert.Equal(("connect", "leads-numbered"), (after.Goal, after.Next?.Id));
        Assert.DoesNotContain("coach.earth-first", Ids(after));
    }

    [Theory]
    [InlineData(Role.Technician)]
    [InlineData(Role.Homeowner)]
    public void Whether_it_is_worth_repairing_follows_from_the_fault_and_the_power(Role role)
    {
        var (_, assessed) = Talk(role, "is it worth repairing? it smoked, stinks of burnt varnish and the fuse blew", new() { ["plate"] = "3/4 hp 115/230 V 10.4/5.2 A 1140 rpm 60 Hz single phase" });
        Assert.Equal("worth-repairing", assessed.Goal);
        Assert.True(Ids(assessed).Contains("faq.worth-replace") || Ids(assessed).Contains("faq.worth-part"));
        Assert.NotEqual("open", assessed.Next is null ? assessed.Status : "asked");
    }

    [Theory]
    [InlineData("is it worth repairing? it hums and wont start", "worth-repairing")]
    [InlineData("worth repairing? how do I reverse it", "reverse")]
    [InlineData("how do I reverse it? find out what is wrong with it", "diagnose")]
    public void To_look_for_the_fault_does_not_end_the_question_whether_it_is_worth_it(string said, string goal) => Assert.Equal(goal, Talk(Role.Technician, said, []).Assessed.Goal);

    [Theory]
    [InlineData(Role.Technician, "fit-replacement", "the new motor has different wires than the old one, how do I hook it up", "coach.replacement-compare")]
    [InlineData(Role.Homeowner, "fit-replacement", "the new motor has different wires than the old one, how do I hook it up", "coach.replacement-compare")]
    [InlineData(Role.Technician, "change-voltage", "how do I change it over from 115 to 230", "coach.one-voltage")]
    [InlineData(Role.Homeowner, "change-voltage", "how do I change it over from 115 to 230", "coach.one-voltage")]
    [InlineData(Role.Technician, "reverse", "I need it to spin the other way, it is a shaded pole motor", "faq.reverse-never")]
    [InlineData(Role.Homeowner, "reverse", "I need it to spin the other way, it is a shaded pole motor", "faq.reverse-never")]
    [InlineData(Role.Technician, "check-numbers", "check the numbers on the plate, do they agree", "coach.numbers-agree")]
    [InlineData(Role.Homeowner, "check-numbers", "check the numbers on the plate, do they agree", "coach.numbers-agree")]
    [InlineData(Role.Technician, "connect", "which wire goes where on the three speed fan motor, there are capacitor leads too", null)]
    [InlineData(Role.Homeowner, "connect", "which wire goes where on the three speed fan motor, there are capacitor leads too", null)]
    public void Every_other_job_says_what_it_comes_to_and_ends_in_what_is_missing(Role role, string goal, string said, string? sentence)
    {
        var (_, assessed) = Talk(role, said, new() { ["plate"] = "1/2 hp 115 V 7.8 A 1725 rpm 60 Hz single phase", ["plate.phases"] = "1", ["capacitor"] = "one" });
        Assert.Equal(goal, assessed.Goal);
        if (sentence is not null)
        {
            Assert.Contains(sentence, Ids(assessed));
        }

        Assert.True(assessed.Next is not null || assessed.Status is "ready" or "referred" or "verified" || assessed.PlanMissing.Count > 0, $"{assessed.Status} without a question");
    }

    [Theory]
    [InlineData(Role.Technician)]
    [InlineData(Role.Homeowner)]
    public void A_replacement_is_held_against_the_old_motor_plate_by_plate(Role role)
    {
        var (_, assessed) = Talk(role, "I want to fit a new motor on the bandsaw", new()
        {
            ["plate-new"] = "1 hp 3450 rpm 115/230 V 12/6 A single phase 60 Hz frame 56", ["plate-old"] = "1 hp 1725 rpm 115/230 V 12/6 A single phase 60 Hz frame 56", ["capacitor"] = "none",
        });
        Assert.Equal("fit-replacement", assessed.Goal);
        Assert.Contains("nameplate.replacement-faster", Ids(assessed));
        Assert.DoesNotContain("coach.replacement-compare", Ids(assessed));
    }

    [Fact]
    public void A_motor_for_direct_current_is_offered_direct_current_alone_and_comes_to_its_plan()
    {
        var (file, assessed) = Talk(Role.Technician, "dc shunt motor on the old slicer, A1 A2 F1 F2", new()
        {
            ["plate"] = "1/2 hp 180 V 2.5 A 1750 rpm", ["probe-zero"] = "0.1", ["frame.A1.frame"] = "open", ["reading.A1.A2"] = "1.3", ["reading.F1.F2"] = "610",
            ["turn-shaft.A1.A2"] = "jumps", ["reading.A1.F1"] = "open", ["supply"] = "na-dc-180",
        });
        Assert.Equal((180, 0), (file.Supply?.Volts, file.Supply?.Hertz));
        Assert.NotNull(assessed.Plan);
        Assert.Equal("dc-shunt", assessed.Plan.Layout.Id);
        Assert.DoesNotContain("capacitor", file.Unknowns);
    }

    private static List<string> Ids(Assessment assessed) => [.. assessed.Say.Select(said => said.Id)];

    /// <summary>Answers what is scripted, confirms what is to be confirmed, and does not know the rest, until nothing is asked any more.</summary>
    private static (CaseFile File, Assessment Assessed) Talk(Role role, string said, Dictionary<string, string> script)
    {
        var file = Add(CaseFile.From(new CaseOpening(role, Region.NorthAmerica), []), [.. Listener.Understand(said).Facts]);
        for (var turn = 0; turn < 60; turn++)
        {
            var assessed = Spoken.Whole(Coach.Assess(file));
            if (assessed.Next is not { } asked)
            {
                return (file, assessed);
            }

            Assert.True(Gate.Judge(file).Opens(asked.Task) || asked.Id == "isolated", asked.Id);
            var facts = Answer(file, asked, script);
            if (facts.Count == 0)
            {
                return (file, assessed);
            }

            file = Add(file, facts);
        }

        return (file, Coach.Assess(file));
    }

    private static IReadOnlyList<Fact> Answer(CaseFile file, Question asked, Dictionary<string, string> script)
    {
        QuestionAnswer given = new() { QuestionId = asked.Id };
        if (asked.Kind == QuestionKind.Confirm)
        {
            return Coach.Read(file, asked, given with { Confirmed = true }).Value!;
        }

        if (!script.TryGetValue(asked.Id, out var words))
        {
            return asked.CanBeUnknown ? [new Fact.Unknown { Question = asked.Id }] : [];
        }

        if (asked.Kind == QuestionKind.Choice)
        {
            return Coach.Read(file, asked, given with { Choice = words }).Value ?? [];
        }

        var open = new OpenQuestion { Id = asked.Id, Kind = asked.Kind, About = asked.About, Unit = asked.Unit, Between = asked.Between };
        return [.. Listener.Understand(words, asked: open).Facts];
    }

    private static CaseFile Add(CaseFile file, IReadOnlyList<Fact> facts)
    {
        var number = file.Facts.Count;
        return CaseFile.From(file.Opening, [.. file.Facts, .. facts.Select(fact => fact with { FactId = $"f{++number}" })]);
    }
}
