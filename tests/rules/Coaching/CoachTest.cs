using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>The conversation walked without a person: exhaustively at first, by chance beyond.</summary>
public sealed class CoachTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Coach Coach = new(Knowledge);
    private static readonly SafetyGate Gate = new(Knowledge);
    private static readonly string[] Goals = ["connect", "diagnose", "check-connection", "reverse", "change-voltage", "identify-leads", "fit-replacement", "replace-capacitor", "earth-check", "worth-repairing", "check-numbers"];

    private static readonly string[] Complaints = ["hums-no-start", "trips-at-once", "silent-no-start", "runs-hot", "shock-from-frame", "leads-unmarked"];

    public static TheoryData<Role> Roles() => [.. Enum.GetValues<Role>()];

    [Theory]
    [MemberData(nameof(Roles))]
    public void No_answer_to_the_first_questions_leads_to_a_step_that_the_gate_refuses(Role role)
    {
        foreach (var goal in Goals)
        {
            Walk(Open(role, goal), depth: 4);
        }
    }

    [Fact]
    public void No_conversation_by_chance_leads_to_a_step_that_the_gate_refuses() => Gen.Select(
        Gen.Enum<Role>(), Gen.Int[0, Goals.Length - 1], Gen.Int[0, 99].Array[90], Gen.Int[0, Complaints.Length - 1])
        .Sample((role, goal, chances, complaint) =>
        {
            var file = Open(role, Goals[goal]).With(new Fact.Symptom { Id = Complaints[complaint] });
            foreach (var chance in chances)
            {
                if (Asked(file) is not { } asked)
                {
                    return;
                }

                var answers = Answers(file, asked);
                file = Take(file, asked, answers[chance % answers.Count]);
            }
        }, iter: 150);

    [Fact]
    public void Nothing_that_touches_a_lead_is_asked_before_the_motor_is_isolated()
    {
        var file = Open(Role.Technician, "connect");
        Assert.Equal("isolated", Coach.Assess(file).Next!.Id);
        var denied = file.With(new Fact.Confirm { Id = "isolated", Confirmed = false });
        var assessed = Coach.Assess(denied);
        Assert.Null(assessed.Next);
        Assert.Equal("referred", assessed.Status);
    }

    [Fact]
    public void Nobody_in_training_discharges_a_capacitor_alone()
    {
        var file = Open(Role.Apprentice, "identify-leads").With(new Fact.Confirm { Id = "isolated" }).With(new Fact.Plate { Field = "phases", Value = PlateValue.Of([1]) }).With(new Fact.Capacitor());
        Assert.Equal("competent-person-present", Coach.Assess(file).Next?.Id);
        Assert.Equal("capacitor-discharged", Coach.Assess(file.With(new Fact.Confirm { Id = "competent-person-present" })).Next?.Id);
        Assert.Null(Coach.Assess(file.With(new Fact.Confirm { Id = "competent-person-present", Confirmed = false })).Next);
    }

    [Fact]
    public void The_same_facts_give_the_same_question()
    {
        var file = Open(Role.Technician, "connect").With(new Fact.Confirm { Id = "isolated" });
        Assert.Equal(Coach.Assess(file).Next!.Id, new Coach(Knowledge).Assess(file).Next!.Id);
    }

    [Fact]
    public void What_the_windings_are_is_said_after_the_readings_that_were_left_out()
    {
        var said = Coach.Assess(Shunt(("2", "4", 3), ("2", "4", null), ("2", "4", null))).Say.Select(one => one.Id).ToList();
        Assert.InRange(said.IndexOf("windings.earlier-reading-dropped"), 0, said.FindIndex(id => id.StartsWith("coach.winding", StringComparison.Ordinal)));
    }

    [Fact]
    public void Where_the_ends_cannot_be_told_nobody_is_asked_for_a_supply()
    {
        var tags = new[] { "1", "2", "3", "4", "5", "6" };
        var file = tags.Aggregate(Open(Role.Technician, "connect").With(new Fact.Confirm { Id = "isolated" }).With(new Fact.Plate { Field = "phases", Value = PlateValue.Of([1]) }), (known, tag) => known.With(new Fact.Lead { Tag = tag }));
        var asked = new List<string>();
        for (; Asked(file) is { } question && asked.Count < 60; asked.Add(question.Id))
        {
            var ohms = question.Between is [var from, var to] ? (from + to) switch { "14" or "26" => 1.5, "35" => 3.4, _ => (double?)null } : null;
            file = Take(file, question, question switch
            {
                { Kind: QuestionKind.Confirm } => new() { QuestionId = question.Id, Confirmed = true },
                { Id: "capacitor" } => new() { QuestionId = question.Id, Choice = "one" },
                { Id: "capacitor-bridged" } => new() { QuestionId = question.Id, Choice = "bridged" },
                { Kind: QuestionKind.Reading } => new() { QuestionId = question.Id, Reading = ohms is { } shown ? new() { Ohms = shown } : new() { Open = true } },
                _ => new() { QuestionId = question.Id, Unknown = true },
            });
        }

        Assert.Contains(asked, id => id.StartsWith("ends", StringComparison.Ordinal));
        Assert.DoesNotContain("supply", asked);
        Assert.Equal("open", Coach.Assess(file).Status);
    }

    [Fact]
    public void Leads_that_are_joined_inside_are_no_single_winding()
    {
        string[] tags = ["a", "b", "c"];
        var file = tags.Aggregate(Open(Role.Technician, "identify-leads").With(new Fact.Confirm { Id = "isolated" }).With(new Fact.Plate { Field = "phases", Value = PlateValue.Of([3]) }), (known, tag) => known.With(new Fact.Lead { Tag = tag }));
        file = new[] { ("a", "b"), ("b", "c"), ("a", "c") }.Aggregate(file, (known, pair) => known.With(new Fact.Reading { From = pair.Item1, To = pair.Item2, Ohms = 3.2 }));
        Assert.Contains("a–b–c: phase windings that are joined inside, 3.2 Ω between any two of these leads.", Coach.Assess(file).Say.Select(one => Knowledge.Sentences.Render(one, Role.Technician)));
    }

    [Fact]
    public void A_winding_is_called_by_its_name()
    {
        var said = Coach.Assess(Shunt(("2", "4", null))).Say.Where(one => one.Id.StartsWith("coach.winding", StringComparison.Ordinal)).Select(one => Knowledge.Sentences.Render(one, Role.Technician)).ToList();
        Assert.Contains(said, words => words.StartsWith("1–2: armature", StringComparison.Ordinal) && !words.Contains("winding", StringComparison.Ordinal));
        Assert.Contains(said, words => words.StartsWith("3–4: shunt field, 300 Ω", StringComparison.Ordinal));
    }

    /// <summary>A shunt motor, armature 1–2 and field 3–4, each read twice, so that one slip turns no role.</summary>
    private static CaseFile Shunt(params (string From, string To, double? Ohms)[] more)
    {
        var file = Open(Role.Technician, "identify-leads").With(new Fact.Confirm { Id = "isolated" })
            .With(new Fact.Plate { Field = "phases", Value = PlateValue.Of([0]) });
        string[] tags = ["1", "2", "3", "4"];
        file = tags.Aggregate(file, (known, tag) => known.With(new Fact.Lead { Tag = tag }));
        foreach (var (from, to, ohms) in ((string, string, double?)[])[("1", "2", 1.4), ("3", "4", 300), ("1", "3", null), ("1", "4", null), ("2", "3", null), .. more, ("1", "2", 1.4), ("3", "4", 300)])
        {
            file = file.With(new Fact.Reading { From = from, To = to, Ohms = ohms, Open = ohms is null, ChangesWithShaft = ohms < 2 });
        }

        foreach (var (question, option) in new[] { ("shaft-drag", "same"), ("brushes", "yes"), ("several-speeds", "single") })
        {
            file = file.With(new Fact.Choice { Question = question, Option = option });
        }

        return file;
    }

    [Fact]
    public void What_several_faults_call_for_is_said_once()
    {
        var tags = new[] { "a", "b", "c", "d", "e" };
        var file = tags.Aggregate(Open(Role.Technician, "identify-leads").With(new Fact.Confirm { Id = "isolated" }).With(new Fact.Plate { Field = "phases", Value = PlateValue.Of([1]) }), (known, tag) => known.With(new Fact.Lead { Tag = tag }));
        foreach (var (from, to) in tags.SelectMany((from, at) => tags.Skip(at + 1).Select(to => (from, to))))
        {
            file = file.With(new Fact.Reading { From = from, To = to, Open = (from, to) != ("a", "d"), Ohms = (from, to) == ("a", "d") ? 12 : null });
        }

        var said = Coach.Assess(file).Say.Select(one => one.ToString()).ToList();
        Assert.NotEmpty(said);
        Assert.Equal(said.Distinct(StringComparer.Ordinal), said);
    }

    private static void Walk(CaseFile file, int depth)
    {
        if (depth == 0 || Asked(file) is not { } asked)
        {
            return;
        }

        foreach (var answer in Answers(file, asked))
        {
            Walk(Take(file, asked, answer), depth - 1);
        }
    }

    /// <summary>The open question, checked against the gate on its own.</summary>
    private static Question? Asked(CaseFile file)
    {
        var asked = Coach.Assess(file).Next;
        if (asked is not null)
        {
            var gate = Gate.Judge(file);
            Assert.True(gate.Opens(asked.Task) || asked.Id == "isolated", $"{asked.Id} takes {asked.Task}, which the gate does not open: {string.Join(", ", gate.Allowed)}");
            Assert.Equal(asked.Task, Knowledge.GateTasks[asked.Task].Id);
        }

        return asked;
    }

    private static List<QuestionAnswer> Answers(CaseFile file, Question asked)
    {
        QuestionAnswer Blank() => new() { QuestionId = asked.Id };
        List<QuestionAnswer> answers = asked.Kind switch
        {
            QuestionKind.Confirm => [Blank() with { Confirmed = true }, Blank() with { Confirmed = false }],
            QuestionKind.Choice => [.. asked.Options.Select(option => Blank() with { Choice = option.Id })],
            QuestionKind.Quantity when asked.Setup is { AppliedVolts: { } volts } setup => [.. new[] { 0.02, 0.5, setup.Tie.Count > 0 ? 1.4 : 1 }.Select(share => Blank() with { Quantity = new(share * volts) })],
            QuestionKind.Quantity => [Blank() with { Quantity = new(0.3) }, Blank() with { Quantity = new(18) }, Blank() with { Quantity = new(240) }],
            QuestionKind.Reading => [Blank() with { Reading = new() { Ohms = 1.7 } }, Blank() with { Reading = new() { Open = true } }, Blank() with { Reading = new() { Ohms = 3.6 } }],
            _ => [Blank() with { Text = asked.Id }],
        };
        return asked.CanBeUnknown ? [.. answers, Blank() with { Unknown = true }] : answers;
    }

    private static CaseFile Take(CaseFile file, Question asked, QuestionAnswer answer)
    {
        var read = Coach.Read(file, asked, answer);
        Assert.True(read.IsGiven, $"{asked.Id}: {string.Join(", ", read.Problems.Select(problem => problem.Advice))}");
        var facts = read.Value.Count > 0 ? read.Value : Words(asked);
        var number = file.Facts.Count;
        return CaseFile.From(file.Opening, [.. file.Facts, .. facts.Select(fact => fact with { FactId = $"f{++number}" })]);
    }

    /// <summary>What the listener would make of an answer in free words.</summary>
    private static IReadOnlyList<Fact> Words(Question asked) => asked.Id switch
    {
        "leads" => [.. Enumerable.Range(1, 6).Select(number => new Fact.Lead { Tag = $"{number}" })],
        "plate" or "plate.volts" => [new Fact.Plate { Field = "volts", Value = PlateValue.Of(115, 230) }],
        "plate.amps" => [new Fact.Plate { Field = "amps", Value = PlateValue.Of(10.4, 5.2) }],
        "symptoms" => [new Fact.Symptom { Id = "hums-no-start" }],
        "capacitor.marks" => [new Fact.Capacitor { Microfarads = 161, MicrofaradsTo = 193, Volts = 250, Use = "start" }],
        "joints" => [new Fact.Joint { Leads = ["1", "2"], Conductor = "L1" }],
        _ => [new Fact.Unknown { Question = asked.Id }],
    };

    private static CaseFile Open(Role role, string goal) =>
        CaseFile.From(new CaseOpening(role, Region.NorthAmerica), [new Fact.Goal { Id = goal, FactId = "f0" }]);
}
