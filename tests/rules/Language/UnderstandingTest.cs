using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What no count can show: dangers, corrections, what is said back, what is never guessed.</summary>
public sealed class UnderstandingTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
    private static readonly Listener Listener = new(Knowledge);

    [Theory]
    [InlineData("I got a tingle from it", "shock-felt")]
    [InlineData("it started smoking", "smoke")]
    [InlineData("someone put foil in the fuse holder", "protection-bypassed")]
    [InlineData("after several resets it runs again", "repeated-resets")]
    [InlineData("the earth pin is missing", "no-earth")]
    public void Words_that_matter_for_safety_are_heard(string text, string danger) =>
        Assert.Contains(Listener.Understand(text).Dangers, heard => heard.Id == danger);

    [Fact]
    public void A_correction_is_marked_and_a_plain_reading_is_not()
    {
        Assert.Single(Listener.Understand("no, red to blue was 5.1").Corrections);
        Assert.Empty(Listener.Understand("red to blue was 5.1").Corrections);
    }

    [Fact]
    public void A_voltage_that_may_be_plate_or_supply_is_not_guessed()
    {
        var heard = Listener.Understand("240 V");
        Assert.Empty(heard.Facts);
        Assert.Equal(["plate/volts", "supply/volts"], heard.NotUnderstood.Single().Reads);
    }

    [Fact]
    public void Will_not_start_is_silence_or_hum_and_is_asked_about()
    {
        var heard = Listener.Understand("the stirrer won't start");
        Assert.Empty(heard.Symptoms);
        Assert.Equal(["symptom/silent-no-start", "symptom/hums-no-start"], heard.NotUnderstood.Single().Reads);
    }

    [Fact]
    public void A_lead_tag_is_never_read_out_of_a_misspelling() =>
        Assert.DoesNotContain(Listener.Understand("rad to blue is 3.2", ["red", "blue"]).Facts, fact => fact is Fact.Reading { From: "red" });

    [Fact]
    public void An_option_is_found_by_its_words()
    {
        var asked = new OpenQuestion
        {
            Id = "first-start", Kind = QuestionKind.Choice, About = "running",
            Options = [new("ran", "It ran up and runs"), new("hummed", "It only hummed and I switched off"), new("tripped", "The protection tripped"), new("nothing", "Nothing at all")],
        };
        Assert.Equal("hummed", Listener.Understand("only hummed, switched it off", asked: asked).Answer?.Choice);
        Assert.Equal("tripped", Listener.Understand("tripped", asked: asked).Answer?.Choice);
    }

    [Fact]
    public void Leads_that_are_asked_for_are_named()
    {
        var asked = new OpenQuestion { Id = "leads", Kind = QuestionKind.Text, About = "lead" };
        string[] Tags(string text) => [.. Listener.Understand(text, asked: asked).Facts.OfType<Fact.Lead>().Select(lead => lead.Tag)];
        Assert.Equal(["1", "2", "3", "4", "5", "6"], Tags("1 2 3 4 5 6"));
        Assert.Equal(["red", "blue", "yellow 1", "yellow 2"], Tags("red, blue, two yellow"));
        Assert.Equal(["T1", "T2", "T3", "T4", "T5", "T8"], Tags("T1 T2 T3 T4 T5 T8"));
    }

    [Fact]
    public void Every_term_of_the_glossary_is_found_when_it_is_asked_for()
    {
        Assert.True(Knowledge.Words.Glossary.Count >= 120);
        Assert.All(Knowledge.Words.Glossary.Values, term => Assert.Contains(Listener.Understand($"what is a {term.Term}?").Questions, question => question.Term == term.Id));
    }

    [Fact]
    public void Every_symptom_that_the_words_lead_to_is_known_to_the_diagnosis() =>
        Assert.Empty(Knowledge.Words.Rules.Keys.Where(rule => rule.StartsWith("symptom/", StringComparison.Ordinal)).Select(rule => rule["symptom/".Length..]).Except(Knowledge.Symptoms.Keys, StringComparer.Ordinal));

    [Fact]
    public void Every_symptom_can_be_said_in_words() =>
        Assert.Empty(Knowledge.Symptoms.Keys.Except(Knowledge.Words.Rules.Keys.Where(rule => rule.StartsWith("symptom/", StringComparison.Ordinal)).Select(rule => rule["symptom/".Length..]), StringComparer.Ordinal));
}
