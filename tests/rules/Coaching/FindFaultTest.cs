using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>How the search for a fault ends where no test that is left tells more.</summary>
public sealed class FindFaultTest
{
    private static readonly Coach Coach = new(Trade.Knowledge);

    [Fact]
    public void A_test_of_several_readings_is_answered_by_what_they_show_and_not_by_one_figure()
    {
        var asked = Walk(Complaint("hums-no-start"), "test.resistance");
        Assert.Equal((QuestionKind.Choice, null), (asked.Kind, asked.Unit));
        Assert.Contains(asked.Options, option => option.Id == "start-open");
    }

    [Fact]
    public void An_earth_that_failed_is_asked_for_again_once_it_is_mended()
    {
        var file = Complaint("hums-no-start").With(new Fact.Symptom { Id = "shock-from-frame" }).With(new Fact.Confirm { Id = "isolated" })
            .With(new Fact.Insulation { Megohms = 200, Celsius = 20 }).With(new Fact.BenchTest { Test = "earth-continuity", Value = 90, Unit = "ohm" });
        Assert.Equal("earth-continuity", Walk(file, "earth-continuity").Id);
    }

    /// <summary>Somebody at home who can tell nothing else is asked for everything that may be looked at, but not whether a motor that hums has power.</summary>
    [Theory]
    [InlineData("hums-no-start", false)]
    [InlineData("silent-no-start", true)]
    public void What_the_complaint_shows_already_is_not_asked_for(string symptom, bool asked)
    {
        var file = CaseFile.From(new CaseOpening(Role.Homeowner, Region.NorthAmerica), [new Fact.Goal { Id = "diagnose" }, new Fact.Symptom { Id = symptom }]);
        List<string> questions = [];
        while (Coach.Assess(file).Next is { } next)
        {
            Assert.DoesNotContain(next.Id, questions);
            questions.Add(next.Id);
            QuestionAnswer answer = next.Kind == QuestionKind.Confirm ? new() { QuestionId = next.Id, Confirmed = true } : new() { QuestionId = next.Id, Unknown = true };
            file = Coach.Read(file, next, answer).Value!.Aggregate(file, (known, fact) => known.With(fact));
        }

        Assert.Equal(asked, questions.Contains("test.lamp-in-socket"));
    }

    [Fact]
    public void A_check_that_failed_is_said_before_the_plan_and_what_went_well()
    {
        CaseFile file = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [
            new Fact.Goal { Id = "connect" }, new Fact.Plate { Field = "volts", Value = PlateValue.Of([115, 230]) }, new Fact.Plate { Field = "phases", Value = PlateValue.Of(1) },
            new Fact.Supply { Volts = 230, Phases = 1, Hertz = 60 }, .. new[] { "T1", "T2", "T3", "T4", "T5", "T8" }.Select(mark => new Fact.Lead { Tag = mark, Marking = mark }),
            new Fact.Insulation { Megohms = 200, Celsius = 20 }, new Fact.BenchTest { Test = "earth-continuity", Value = 90, Unit = "ohm" }]);
        var said = Coach.Assess(file).Say.Select(one => one.Id).ToList();
        Assert.Equal("insulation.earth-fail", said[0]);
        Assert.Contains(said, id => id == "insulation.pass");
    }

    private static CaseFile Complaint(string symptom) => CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [new Fact.Goal { Id = "diagnose" }, new Fact.Symptom { Id = symptom }]);

    /// <summary>The question, come to by somebody who makes everything safe and good and cannot tell anything else.</summary>
    private static Question Walk(CaseFile file, string question)
    {
        for (var turn = 0; turn < 60 && Spoken.Whole(Coach.Assess(file)).Next is { } asked; turn++)
        {
            if (asked.Id == question)
            {
                return asked;
            }

            var answer = asked.Kind == QuestionKind.Confirm ? new QuestionAnswer { QuestionId = asked.Id, Confirmed = true }
                : asked.Options.Any(option => option.Id == "done") ? new QuestionAnswer { QuestionId = asked.Id, Choice = "done" }
                : new QuestionAnswer { QuestionId = asked.Id, Unknown = true };
            file = Coach.Read(file, asked, answer).Value!.Aggregate(file, (known, fact) => known.With(fact));
        }

        throw new InvalidOperationException($"'{question}' was not asked: {Coach.Assess(file).Status}.");
    }

    [Fact]
    public void Two_causes_that_the_phases_tell_apart_are_not_handed_on_before_those_are_asked_for()
    {
        var assessed = Coach.Assess(Undecided(Role.Technician));
        Assert.Equal("plate.phases", assessed.Next?.Id);
        Assert.Equal("open", assessed.Status);
        var ids = assessed.Say.Select(said => said.Id).ToList();
        Assert.Contains("diagnosis.phases-decide", ids);
        Assert.DoesNotContain("diagnosis.cannot-tell", ids);
        Assert.DoesNotContain(ids, id => id.StartsWith("safety.card-", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1, "start-leads-swapped")]
    [InlineData(3, "phase-order")]
    public void The_phases_settle_it(int phases, string cause)
    {
        var file = Undecided(Role.Technician);
        var told = Coach.Read(file, Coach.Assess(file).Next!, new() { QuestionId = "plate.phases", Choice = phases.ToString(System.Globalization.CultureInfo.InvariantCulture) });
        var assessed = Coach.Assess(told.Value!.Aggregate(file, (known, fact) => known.With(fact)));
        Assert.Equal(cause, assessed.Causes[0].Id);
        Assert.NotEqual("plate.phases", assessed.Next?.Id);
    }

    [Fact]
    public void Phases_that_nobody_can_tell_hand_it_on()
    {
        var assessed = Coach.Assess(Undecided(Role.Technician).With(new Fact.Unknown { Question = "plate.phases" }));
        Assert.Equal("referred", assessed.Status);
        Assert.Contains(assessed.Say, said => said.Id == "diagnosis.cannot-tell");
    }

    [Theory]
    [InlineData(Role.Homeowner)]
    [InlineData(Role.Manager)]
    public void Whoever_cannot_make_it_good_is_sent_on_without_another_question(Role role)
    {
        var assessed = Coach.Assess(Undecided(role));
        Assert.NotEqual("plate.phases", assessed.Next?.Id);
    }

    [Fact]
    public void What_was_made_good_in_vain_is_not_called_the_cause_again()
    {
        var file = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica),
        [
            new Fact.Goal { Id = "diagnose" },
            .. new[] { "wrong-direction", "just-rewired", "supply-changed", "motor-replaced" }.Select(id => new Fact.Symptom { Id = id }),
            new Fact.Choice { Question = "family", Option = "three-phase" },
        ]);
        Assert.Contains(Coach.Assess(file).Say, said => said.Id == "diagnosis.this-is-it");
        var assessed = Coach.Assess(file
            .With(new Fact.Choice { Question = "repair-made.phase-order", Option = "done" })
            .With(new Fact.Choice { Question = "after-repair.phase-order", Option = "same" }));
        Assert.Equal("phase-order", assessed.Causes[0].Id);
        Assert.Equal("referred", assessed.Status);
        Assert.DoesNotContain(assessed.Say, said => said.Id is "diagnosis.this-is-it" or "cause.phase-order.repair");
        Assert.Contains(assessed.Say, said => said.Id == "diagnosis.not-cured");
        Assert.Contains(assessed.Say, said => said.Id == "diagnosis.take-it-to");
    }

    /// <summary>A motor that stalls and turns the wrong way, of which nothing more can be looked at.</summary>
    private static CaseFile Undecided(Role role) => CaseFile.From(new CaseOpening(role, Region.NorthAmerica),
    [
        new Fact.Goal { Id = "diagnose" },
        new Fact.Symptom { Id = "stalls-under-load" },
        new Fact.Symptom { Id = "wrong-direction" },
        new Fact.Confirm { Id = "isolated" },
        .. Trade.Knowledge.Tests.Keys.Select(test => new Fact.Unknown { Question = $"test.{test}" }),
    ]);
}
