using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Statements;

/// <summary>How a statement becomes a sentence, and what is said where that cannot be.</summary>
public sealed class SentenceBookTest
{
    private static readonly SentenceBook Book = new(
    [
        new() { Id = "plain", Text = "It runs.", Homeowner = "It turns." },
        new() { Id = "gap", Text = "{who} reads {what}, again {what}." },
        new() { Id = "end", Text = "At the end {what}" },
        new() { Id = "word", Text = "The brine pump" },
        new() { Id = "letters", Text = "RCD tripped" },
        new() { Id = "letter", Text = "A" },
    ]);

    [Fact]
    public void A_sentence_is_read_with_its_gaps_filled_and_in_the_words_of_who_reads_it()
    {
        Assert.Equal(("It runs.", "It turns.", "It runs."), (Book.Render(Statement.Of("plain")), Book.Render(Statement.Of("plain"), Role.Homeowner), Book.Render(Statement.Of("plain"), Role.Apprentice)));
        Assert.Equal("She reads ohms, again ohms.", Book.Render(Statement.Of("gap", ("who", "She"), ("what", "ohms"))));
        Assert.Equal("At the end ohms", Book.Render(Statement.Of("end", ("what", "ohms"))));
        Assert.Equal(["plain", "gap", "end", "word", "letters", "letter"], Book.Ids);
    }

    [Fact]
    public void What_stands_within_a_sentence_begins_small_unless_it_is_letters() => Assert.Equal(
        "At the end the brine pump, RCD tripped, A, volts, ",
        Book.Render(Statement.Of("end").With("what", Statement.Named("word"), Statement.Named("letters"), Statement.Named("letter"), Statement.Word("Volts"), Statement.Word(string.Empty))));

    [Fact]
    public void A_word_that_the_book_has_not_is_said_as_it_was_spoken()
    {
        Assert.Equal("wave meter", Book.Render(Statement.Word("wave meter", "term.none", "term.neither")));
        Assert.Equal("The brine pump", Book.Render(Statement.Word("pump", "term.none", "word")));
        Assert.Equal("wave meter", Book.Render(Statement.Word("wave meter")));
        Assert.Equal(("term.none", "wave meter"), (Statement.Word("pump", "term.none").Id, Statement.Word("wave meter").Id));
    }

    [Fact]
    public void What_is_missing_is_named()
    {
        Assert.Contains("'none'", Assert.Throws<KeyNotFoundException>(() => Book.Render(Statement.Of("none"))).Message, StringComparison.Ordinal);
        var gap = Assert.Throws<KeyNotFoundException>(() => Book.Render(Statement.Of("gap", ("who", "She")))).Message;
        Assert.Contains("'gap'", gap, StringComparison.Ordinal);
        Assert.Contains("'what'", gap, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new SentenceBook([new() { Id = "twice", Text = "a" }, new() { Id = "twice", Text = "b" }]));
    }

    [Fact]
    public void Steps_are_numbered_from_one_each_with_its_own_words_at_home() => Assert.Equal(
        [("test.x.how-1", "Isolate.", "Unplug it."), ("test.x.how-2", "Read.", null)],
        Sentence.Steps("test.x", ["Isolate.", "Read."], ["Unplug it."]).Select(step => (step.Id, step.Text, step.Homeowner)));

    [Fact]
    public void An_answer_goes_on_only_where_it_was_given()
    {
        var refused = new Answer<string>[] { Problem.NotGiven("volts") }[0];
        Assert.Equal(("invalid-fact", "volts", "problem.missing", "volts"), (refused.Problems[0].Id, refused.Problems[0].Field, refused.Problems[0].Advice.Id, refused.Problems[0].Advice.Gaps["field"]));
        Assert.Equal(refused.Problems, refused.Then(value => value).Problems);
        Assert.False(refused.Then(value => value).IsGiven);
        Assert.Equal("7 V", Answer<string>.Given("7").Then(value => $"{value} V").Value);
    }
}
