using WireCoach.Rules.Practice;
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

    [Fact]
    public void A_wish_that_no_motor_fulfils_draws_none() =>
        Assert.Null(PracticeDraw.Draw(Plans.Knowledge, new PracticeWish { Family = "three-phase", Fault = "start-capacitor-open" }));

    [Theory]
    [InlineData("capacitor-start-dual-6", null)]
    [InlineData("split-phase-3", null)]
    [InlineData("split-phase-4", "open-run-winding")]
    public void The_rules_find_what_the_motor_hides_and_count_their_touches(string layout, string? fault)
    {
        var score = PracticeScore.Of(Plans.Knowledge, new PracticeChoice(layout, fault, 7))!;
        Assert.Equal((layout, fault), (score.Truth.Layout, score.Truth.Fault));
        Assert.InRange(score.EngineTouches, 2, score.Truth.Leads.Count * score.Truth.Leads.Count);
        Assert.Contains(layout, score.EngineLayouts);
        Assert.Equal(fault is null, score.EngineFaults.Count == 0);
    }
}
