using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;
using WireCoach.WebUi.Shell;
using WireCoach.WebUi.Tests.Diagrams;

namespace WireCoach.WebUi.Tests.Desk;

/// <summary>The checks before power of a plan.</summary>
public sealed class PlanChecksTest
{
    private static readonly PageWords Words = new(Plans.Knowledge.Sentences);

    [Fact]
    public void Joints_to_the_frame_have_an_expected_figure_before_anything_was_measured()
    {
        var frame = Assert.Single(Lines(), line => line.Name == "Joints to frame");
        Assert.Equal(("at least 5 MΩ", ""), (frame.Expect, frame.Got));
    }

    [Fact]
    public void What_was_measured_to_the_frame_stands_in_the_line_of_the_plan()
    {
        var frame = Assert.Single(Lines(Done("joints-to-frame", "over-range")), line => line.Name == "Joints to frame");
        Assert.Equal("over-range", frame.Got);
        Assert.NotEmpty(frame.Notes);
    }

    [Fact]
    public void A_limit_says_on_which_side_of_it_a_good_reading_lies()
    {
        var lines = Lines(Done("insulation", "210 MΩ") with { Expect = "20 MΩ" }, Done("earth-continuity", "0.2 Ω") with { Expect = "0.5 Ω" });
        Assert.Equal(["at least 20 MΩ", "at most 0.5 Ω"], lines.TakeLast(2).Select(line => line.Expect));
    }

    [Theory]
    [InlineData(Region.NorthAmerica, "at most 0.5 Ω")]
    [InlineData(Region.Iec, "at most 0.3 Ω")]
    public void What_has_to_be_read_stands_there_before_anybody_has_read_it(Region region, string earth)
    {
        var lines = PlanChecks.Of(Plans.Of("capacitor-start-dual-6", "115/230", 230), [], region, Words, Plans.Knowledge);
        Assert.Equal([("at least 20 MΩ", ""), (earth, "")], lines.TakeLast(2).Select(line => (line.Expect, line.Got)));
    }

    [Fact]
    public void A_check_that_no_plan_names_stands_once_and_those_still_to_be_made_are_left_to_write()
    {
        var lines = Lines(Done("insulation", "210 MΩ"));
        Assert.Equal("210 MΩ", Assert.Single(lines, line => line.Name == Words.Term("check", "insulation")).Got);
        Assert.Empty(Assert.Single(lines, line => line.Name == Words.Term("check", "earth-continuity")).Got);
    }

    [Fact]
    public void An_insulation_reading_has_what_it_comes_to_and_how_it_moved_below_it()
    {
        var check = Done("insulation", "20 MΩ (20 °C)") with { Says = Statement.Of("coach.frame-open", ("got", "judged")), Also = Statement.Of("coach.frame-open", ("got", "moved")) };
        var line = Assert.Single(Lines(check), line => line.Name == Words.Term("check", "insulation"));
        Assert.Equal([check.Says, check.Also], line.Notes);
    }

    [Theory]
    [InlineData("J1-J2", "J1 – J2")]
    [InlineData("joints-to-frame", "Joints to frame")]
    [InlineData("earth-continuity", "Frame to earth")]
    public void A_reading_that_did_not_pass_says_so_below_it_and_one_that_did_needs_no_word(string id, string name)
    {
        var failed = Done(id, "3 Ω") with { Verdict = "fail" };
        Assert.Equal(failed.Says, Assert.Single(Lines(failed), line => line.Name == name).Notes[^1]);
        Assert.DoesNotContain(failed.Says, Assert.Single(Lines(failed with { Verdict = "pass" }), line => line.Name == name).Notes);
    }

    private static IReadOnlyList<PlanCheck> Lines(params Check[] checks) => PlanChecks.Of(Plans.Of("capacitor-start-dual-6", "115/230", 230), checks, Region.NorthAmerica, Words, Plans.Knowledge);

    private static Check Done(string id, string got) => new(id, "5 MΩ", got, "pass", Statement.Of("coach.frame-open", ("got", got)));
}
