using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Parts;

namespace WireCoach.WebUi.Tests.Parts;

/// <summary>What comes back from the form of a question.</summary>
public sealed class AskFormTest
{
    [Theory]
    [InlineData("1.7", "ohm", 1.7)]
    [InlineData("1,7", "kilohm", 1700.0)]
    [InlineData("20", "megohm", 20e6)]
    [InlineData(" 0.3 ", null, 0.3)]
    public void A_reading_is_taken_in_its_unit(string value, string? shown, double ohms) =>
        Assert.Equal(ohms, new AskForm { Value = value, Shown = shown }.Answer(Asked(QuestionKind.Reading))!.Reading!.Ohms);

    [Theory]
    [InlineData("open", true, null)]
    [InlineData("kick", null, true)]
    public void Over_range_is_an_answer_without_a_figure(string shown, bool? open, bool? kick)
    {
        var reading = new AskForm { Shown = shown, Value = " " }.Answer(Asked(QuestionKind.Reading))!.Reading!;
        Assert.Equal((null, open, kick), (reading.Ohms, reading.Open, reading.Kick));
    }

    [Theory]
    [InlineData("OL", "ohm")]
    [InlineData("ol ", "megohm")]
    [InlineData("O.L", null)]
    [InlineData("0L", "open")]
    public void What_the_meter_shows_over_range_may_be_typed_as_it_stands_there(string value, string? shown)
    {
        var reading = new AskForm { Shown = shown, Value = value }.Answer(Asked(QuestionKind.Reading))!.Reading!;
        Assert.Equal((null, true, null), (reading.Ohms, reading.Open, reading.Kick));
    }

    [Theory]
    [InlineData("OL", null, true)]
    [InlineData("", "open", true)]
    [InlineData("0.2", "ohm", false)]
    public void A_way_to_earth_may_be_open_and_a_figure_alike(string value, string? shown, bool open)
    {
        var answer = new AskForm { Shown = shown, Value = value }.Answer(Asked(QuestionKind.Quantity) with { Unit = "ohm", CanBeOpen = true })!;
        Assert.Equal((open ? true : null, open ? null : 0.2), (answer.Reading?.Open, answer.Quantity?.Value));
    }

    [Fact]
    public void A_figure_beside_over_range_is_no_way_to_earth() =>
        Assert.Null(new AskForm { Shown = "open", Value = "0.2" }.Answer(Asked(QuestionKind.Quantity) with { Unit = "ohm", CanBeOpen = true }));

    [Theory]
    [InlineData(">550", "megohm", 550.0)]
    [InlineData(" > 550", "megohm", 550.0)]
    [InlineData("20", "megohm", 20.0)]
    [InlineData(">550", "volt", null)]
    public void The_end_of_an_insulation_testers_range_is_a_figure_and_that_of_no_other_meter(string value, string unit, double? taken) =>
        Assert.Equal(taken, new AskForm { Value = value }.Answer(Asked(QuestionKind.Quantity) with { Unit = unit })?.Quantity?.Value);

    [Theory]
    [InlineData("open")]
    [InlineData("kick")]
    public void A_figure_beside_over_range_is_no_answer(string shown)
    {
        var form = new AskForm { Shown = shown, Value = "1.7" };
        Assert.True(form.IsTwofold);
        Assert.Null(form.Answer(Asked(QuestionKind.Reading)));
    }

    [Theory]
    [InlineData(QuestionKind.Choice)]
    [InlineData(QuestionKind.Confirm)]
    [InlineData(QuestionKind.Quantity)]
    [InlineData(QuestionKind.Reading)]
    [InlineData(QuestionKind.Text)]
    public void An_empty_form_is_no_answer_and_saying_so_is_one_for_every_kind(QuestionKind kind)
    {
        Assert.Null(new AskForm { Value = "much", Text = "  " }.Answer(Asked(kind)));
        Assert.True(new AskForm { CannotTell = "yes", Choice = "a", Value = "3" }.Answer(Asked(kind))!.Unknown);
    }

    [Theory]
    [InlineData(QuestionKind.Choice, "volt", null, "page.choose-one")]
    [InlineData(QuestionKind.Confirm, "volt", null, "page.choose-one")]
    [InlineData(QuestionKind.Quantity, "volt", null, "page.fill-in")]
    [InlineData(QuestionKind.Quantity, "megohm", null, "page.fill-in-megohms")]
    [InlineData(QuestionKind.Reading, "ohm", null, "page.fill-in-reading")]
    [InlineData(QuestionKind.Reading, "ohm", "open", "page.figure-or-open")]
    [InlineData(QuestionKind.Text, "volt", null, "page.fill-in-words")]
    public void What_is_missing_is_said_for_what_was_asked(QuestionKind kind, string unit, string? shown, string said)
    {
        var form = new AskForm { Value = "much", Shown = shown };
        Assert.Null(form.Answer(Asked(kind) with { Unit = unit }));
        Assert.Equal(said, form.Lacks(Asked(kind) with { Unit = unit }));
    }

    [Fact]
    public void The_question_that_was_seen_is_the_one_that_is_answered() =>
        Assert.Equal("seen", new AskForm { QuestionId = "seen", Choice = "yes" }.Answer(Asked(QuestionKind.Confirm))!.QuestionId);

    private static Question Asked(QuestionKind kind) => new() { Id = "open-now", Kind = kind, Text = Statement.Named("x"), Why = Statement.Named("x"), About = "x", Task = "look", Unit = "volt" };
}
