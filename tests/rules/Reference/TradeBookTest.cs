using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Reference;

/// <summary>Facts are found by their id and by the edition that has been adopted, and what is not there is no fact.</summary>
public sealed class TradeBookTest
{
    private static readonly Source Code = new() { Title = "a code", Place = "table 9", Basis = SourceBasis.Primary };

    private static readonly TradeBook<TradeRule> Book = new(
        [Of("gap-old", "gap", 0, 2017, 3), Of("gap-new", "gap", 2017, int.MaxValue, 4), Of("alone", null, 2011, 2020, 5)],
        rule => rule.Id, rule => rule.Of, rule => (rule.Since, rule.Until));

    [Theory]
    [InlineData("gap", 2016, 3.0)]
    [InlineData("gap", 2017, 4.0)]
    [InlineData("alone", 2011, 5.0)]
    [InlineData("alone", 2019, 5.0)]
    [InlineData("alone", 2010, null)]
    [InlineData("alone", 2020, null)]
    [InlineData("none", 2020, null)]
    public void The_adopted_edition_is_the_one_that_counts(string of, int year, double? figure)
    {
        if (figure is null)
        {
            Assert.Contains($"'{of}' covers {year}", Assert.Throws<KeyNotFoundException>(() => Book.In(of, year)).Message, StringComparison.Ordinal);
            return;
        }

        Assert.Equal(figure, Book.In(of, year)["millimetres"]);
    }

    [Fact]
    public void What_is_not_there_is_named()
    {
        Assert.Equal(["gap-old", "gap-new"], Book.Editions("gap").Select(rule => rule.Id));
        Assert.Equal("alone", Book["alone"].Id);
        Assert.Contains("'gap'", Assert.Throws<KeyNotFoundException>(() => Book["gap"]).Message, StringComparison.Ordinal);
        Assert.Contains("'alone' has no figure 'inches'", Assert.Throws<KeyNotFoundException>(() => Book["alone"]["inches"]).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "a code, table 9")]
    [InlineData(2010, "a code, table 9 (edition 2010)")]
    [InlineData(2014, "a code, table 12 (edition 2014)")]
    [InlineData(2021, "a code, table 14 (edition 2021)")]
    public void A_figure_is_quoted_from_where_the_adopted_edition_has_it(int? year, string source)
    {
        var rule = Of("gap", null, 0, int.MaxValue, 3) with { Places = [new() { Since = 2014, Place = "table 12" }, new() { Since = 2020, Place = "table 14" }] };
        Assert.Equal([source, source], [$"{rule.Quote(3, "metre", "a gap", year).Source}", $"{rule.Name("wide", "awg", "a gap", year).Source}"]);
        Assert.Equal(new TrailStep("how wide", "", "a gap", "3 m"), Assert.Single(rule.Quote(3, "metre", "a gap", year).Trail));
    }

    [Fact]
    public void A_source_that_has_its_edition_keeps_it() => Assert.Equal(
        "a code, table 9 (third)", $"{(Of("gap", null, 0, int.MaxValue, 3) with { Source = Code with { Edition = "third" } }).Quote(3, "metre", "a gap", 2021).Source}");

    [Theory]
    [InlineData("stop-get-qualified-person", "now", 4, true)]
    [InlineData("stop-and-fix", "now", 3, false)]
    [InlineData("stop-get-qualified-person", "before-use", 2, false)]
    [InlineData("stop-and-fix", "before-use", 1, false)]
    [InlineData("take-care", "now", 0, false)]
    public void A_danger_that_is_there_now_is_said_first(string level, string soon, int weight, bool danger)
    {
        var caution = Caution with { Level = level, HowSoon = soon };
        Assert.Equal((weight, danger), (caution.Weight, caution.IsDangerNow));
    }

    [Theory]
    [InlineData(null, null, null)]
    [InlineData("Leave it.", null, "Leave it. It bites.")]
    [InlineData(null, "It hurts.", "Stop. It hurts.")]
    [InlineData("Leave it.", "It hurts.", "Leave it. It hurts.")]
    public void A_caution_is_said_at_home_in_the_words_for_it(string? what, string? why, string? said)
    {
        var sentence = (Caution with { Homeowner = what, HomeownerWhy = why }).Sentence();
        Assert.Equal(("caution.bites", "Stop. It bites.", said), (sentence.Id, sentence.Text, sentence.Homeowner));
    }

    [Fact]
    public void A_question_brings_all_its_words()
    {
        var card = new QuestionCard
        {
            Id = "turns", Kind = "choice", About = "shaft", Task = "look", Text = "Does it turn?", Homeowner = "Can you turn it?", Why = "A seized one does not.", How = ["Hold it.", "Turn it."],
            Options = [new() { Id = "yes", Text = "Yes" }], Expect = [new() { When = "It turns.", Means = "It is free." }, new() { When = "It sticks.", Means = "It is seized." }],
        };
        Assert.True(card.CanBeUnknown);
        Assert.Equal(
        [
            "question.turns.text Does it turn? Can you turn it?", "question.turns.why A seized one does not. ", "question.turns.how-1 Hold it. ", "question.turns.how-2 Turn it. ", "question.turns.option-yes Yes ",
            "question.turns.when-1 It turns. ", "question.turns.means-1 It is free. ", "question.turns.when-2 It sticks. ", "question.turns.means-2 It is seized. ",
        ], card.Sentences().Select(one => $"{one.Id} {one.Text} {one.Homeowner}"));
    }

    private static CautionNote Caution => new() { Id = "bites", Level = "take-care", What = "Stop.", Why = "It bites.", Who = "anybody", HowSoon = "now", Source = Code };

    private static TradeRule Of(string id, string? of, int since, int until, double figure) =>
        new() { Id = id, Of = of, States = "how wide", Since = since, Until = until, Figures = new Dictionary<string, double>(StringComparer.Ordinal) { ["millimetres"] = figure }, Source = Code };
}
