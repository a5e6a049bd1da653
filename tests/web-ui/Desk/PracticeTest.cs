using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Practice;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;
using WireCoach.WebUi.Tests.Diagrams;

namespace WireCoach.WebUi.Tests.Desk;

/// <summary>The practice motor that is drawn, and what the rules find on it.</summary>
public sealed class PracticeTest
{
    [Fact]
    public void Every_motor_that_is_drawn_fits_the_wish_and_can_be_made()
    {
        for (var seed = 1; seed <= 200; seed++)
        {
            var chosen = PracticeDraw.Draw(Plans.Knowledge, new PracticeWish { Family = "single-phase", Fault = PracticeWish.AnyFault, Leads = "some", Seed = seed })!;
            var layout = Plans.Knowledge.Layouts[chosen.Layout!];
            Assert.Equal("single-phase", layout.Family);
            Assert.InRange(layout.Leads.Count, 5, 7);
            Assert.Equal(chosen.Fault, PracticeMotor.Make(Plans.Knowledge, chosen.Layout, chosen.Fault, seed).Value!.Truth.Fault);
        }
    }

    [Fact]
    public void Many_faults_are_drawn_and_the_same_number_draws_the_same()
    {
        var drawn = Enumerable.Range(1, 100).Select(seed => PracticeDraw.Draw(Plans.Knowledge, new PracticeWish { Fault = PracticeWish.AnyFault, Seed = seed })!).ToList();
        Assert.True(drawn.Select(chosen => chosen.Fault).Distinct().Count() > 6);
        Assert.True(drawn.Select(chosen => chosen.Layout).Distinct().Count() > 6);
        Assert.Equal(drawn[30], PracticeDraw.Draw(Plans.Knowledge, new PracticeWish { Fault = PracticeWish.AnyFault, Seed = 31 }));
    }

    [Theory]
    [InlineData("probe-zero", QuestionKind.Quantity, "resistance", true)]
    [InlineData("reading.1.2", QuestionKind.Reading, "resistance", true)]
    [InlineData("joint-ohms.1.6", QuestionKind.Reading, "joint-resistance", true)]
    [InlineData("earth-continuity", QuestionKind.Quantity, "earth-continuity", true)]
    [InlineData("supply-voltage", QuestionKind.Quantity, "supply-voltage", true)]
    [InlineData("supply-voltage.l2-l3", QuestionKind.Quantity, "supply-voltage", true)]
    [InlineData("first-start", QuestionKind.Choice, "running", true)]
    [InlineData("connected", QuestionKind.Confirm, "confirm", false)]
    [InlineData("test.supply-voltage", QuestionKind.Choice, "supply-voltage", false)]
    [InlineData("supply", QuestionKind.Choice, "supply", false)]
    public void What_the_practice_motor_shows_is_offered_as_one_press(string id, QuestionKind kind, string about, bool offered) => Assert.Equal(offered, PracticeMeter.Answers(new Question
    {
        Id = id, Kind = kind, About = about, Task = "measure-dead", Text = Statement.Named("x"), Why = Statement.Named("x"), Between = kind == QuestionKind.Reading ? ["1", "2"] : null,
    }));

    [Fact]
    public void A_wish_that_no_motor_fulfils_draws_none() =>
        Assert.Null(PracticeDraw.Draw(Plans.Knowledge, new PracticeWish { Family = "three-phase", Fault = "start-capacitor-open" }));

    [Theory]
    [InlineData("capacitor-start-dual-6", null)]
    [InlineData("split-phase-3", null)]
    [InlineData("split-phase-4", "open-run-winding")]
    public void The_rules_find_what_the_motor_hides_and_count_their_touches(string layout, string? fault)
    {
        var score = PracticeScore.Of(Plans.Knowledge, new PracticeChoice(layout, fault, 7), [])!;
        Assert.Equal((layout, fault), (score.Truth.Layout, score.Truth.Fault));
        Assert.InRange(score.EngineTouches, 2, score.Truth.Leads.Count * score.Truth.Leads.Count);
        Assert.Contains(layout, score.EngineLayouts);
        Assert.Equal(fault is null, score.EngineFaults.Count == 0);
    }

    [Fact]
    public void The_rules_may_test_with_what_the_person_has()
    {
        Fact[] said = [new Fact.Instrument { Id = "low-voltage-ac", Present = false }, new Fact.Instrument { Id = "battery" }, new Fact.Instrument { Id = "low-voltage-ac" }];
        var tests = PracticeScore.TestsOf(Plans.Knowledge, Role.Technician, said);
        Assert.Equal(["induced-voltage", "battery-flick"], tests);
        Assert.Empty(PracticeScore.TestsOf(Plans.Knowledge, Role.Homeowner, said));
        Assert.Equal(["battery-flick"], PracticeScore.TestsOf(Plans.Knowledge, Role.Apprentice, said[..2]));
        var choice = new PracticeChoice("dual-voltage-4", null, 5); // ohms leave open what its pairs are
        var (ohms, both) = (PracticeScore.Of(Plans.Knowledge, choice, [])!, PracticeScore.Of(Plans.Knowledge, choice, tests)!);
        Assert.Equal(2, both.EngineTouches - ohms.EngineTouches);
    }
}
