using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>How many leads there are and what they are called.</summary>
public sealed class LeadNamesTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);
    private static readonly OpenQuestion Names = new() { Id = "leads", Kind = QuestionKind.Text, About = "lead" };

    [Theory]
    [InlineData("six leads: T1 to T6", "6", "T1 T2 T3 T4 T5 T6")]
    [InlineData("6 leads T1-T6", "6", "T1 T2 T3 T4 T5 T6")]
    [InlineData("four leads T1 thru T4", "4", "T1 T2 T3 T4")]
    [InlineData("six leads called 1 to 6", "6", "1 2 3 4 5 6")]
    [InlineData("six leads are 1 to 6", "6", "1 2 3 4 5 6")]
    [InlineData("six leads (1 to 6)", "6", "1 2 3 4 5 6")]
    [InlineData("six leads - 1 to 6", "6", "1 2 3 4 5 6")]
    [InlineData("six leads, 1 to 5", "6", "")]
    [InlineData("three wires: red, blue", "3", "")]
    [InlineData("two thick wires", "2", "")]
    [InlineData("two long thick wires", "2", "")]
    [InlineData("48 wires", "48", "")]
    [InlineData("50 wires", null, "")]
    [InlineData("one wire", null, "")]
    [InlineData("1 lead", null, "")]
    [InlineData("not one tag", null, "")]
    [InlineData("marked T1 T2 T3 T8", null, "T1 T2 T3 T8")]
    [InlineData("tagged 1 2 3", null, "1 2 3")]
    [InlineData("tagged T1", null, "T1")]
    [InlineData("the wires are brown", null, "")]
    [InlineData("the wires are all brown", null, "")]
    [InlineData("leads are brown and blue", null, "brown blue")]
    [InlineData("red blue white", null, "red blue white")]
    [InlineData("red & blue & white", null, "red blue white")]
    [InlineData("red + blue + white", null, "red blue white")]
    [InlineData("wires: red, blue, white", null, "red blue white")]
    [InlineData("wires are the red, the blue and the white", null, "red blue white")]
    [InlineData("leads a, b, c", null, "a b c")]
    [InlineData("red blue", null, "")]
    [InlineData("3rd shift, it hums", null, "")]
    [InlineData("1 2 3", null, "")]
    public void Leads_are_counted_and_named_unasked_where_it_is_plain(string text, string? count, string names)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(count, heard.Facts.OfType<Fact.Choice>().FirstOrDefault(choice => choice.Question == Fact.Choice.LeadCount)?.Option);
        Assert.Equal(names, string.Join(' ', heard.Facts.OfType<Fact.Lead>().Select(lead => lead.Tag)));
    }

    [Theory]
    [InlineData("the wires have no marks. There are eight of them.", "8")]
    [InlineData("the wires have no marks. There are eight of those", "8")]
    [InlineData("the wires have no marks. There are eight of these", "8")]
    [InlineData("the wires have no marks. There are eight of em", "8")]
    [InlineData("the wires have no marks. There are two of them", "2")]
    [InlineData("the bolts hold it. Somebody cut the wires off. The wires have no marks. There are eight of them", "8")]
    [InlineData("there are eight of them", null)]
    [InlineData("the wires have no marks. It is old. There are eight of them.", null)]
    [InlineData("the wires have no marks. There is one of them.", null)]
    [InlineData("the wires are brown. Take all three of them to the frame", null)]
    [InlineData("the wires are brown. eight of the screws are loose", null)]
    public void So_many_of_them_are_the_leads_that_were_spoken_of_right_before(string text, string? count) => Assert.Equal(count, Count(text));

    [Theory]
    [InlineData("how many wires does it have? six", "6")]
    [InlineData("how many wires: six", "6")]
    [InlineData("how many wires = six", "6")]
    [InlineData("it hums. it is old. how many wires does it have? six.", "6")]
    [InlineData("how many wires does it have. six", null)]
    [InlineData("how many wires does it have? six amps", null)]
    [InlineData("how many wires does it have? I do not know. it is old. six", null)]
    public void Ones_own_question_is_answered_right_behind_it(string text, string? count) => Assert.Equal(count, Count(text));

    [Theory]
    [InlineData("red", "red")]
    [InlineData("1-6", "1 2 3 4 5 6")]
    [InlineData("1 to 6", "1 2 3 4 5 6")]
    [InlineData("T1 thru T4", "T1 T2 T3 T4")]
    [InlineData("T1 through T4", "T1 T2 T3 T4")]
    [InlineData("T1 to T60", "T1 T60")]
    [InlineData("T1 to U6", "T1 U6")]
    [InlineData("T4 to T4", "T4")]
    [InlineData("6 to 1", "6 1")]
    [InlineData("red and a black and an orange and one white", "red black orange white")]
    [InlineData("two red and three blue", "red 1 red 2 blue 1 blue 2 blue 3")]
    [InlineData("8 red", "red 1 red 2 red 3 red 4 red 5 red 6 red 7 red 8")]
    [InlineData("nine red", "red")]
    [InlineData("one red", "red")]
    [InlineData("red red blue", "red 1 red 2 blue")]
    [InlineData("T1 T1 T2", "T1 T2")]
    [InlineData("brown wire, blue wire", "brown blue")]
    [InlineData("red, frame, earth", "red")]
    [InlineData("2 hp", "")]
    [InlineData("1, 2, 3 and 230 V", "1 2 3")]
    public void Names_that_were_asked_for_are_taken_as_they_are_told(string text, string names) =>
        Assert.Equal(names, string.Join(' ', Listener.Understand(text, asked: Names).Facts.OfType<Fact.Lead>().Select(lead => lead.Tag).Distinct()));

    [Theory]
    [InlineData("8 red and 2 blue")]
    [InlineData("red and a black and an orange")]
    [InlineData("wires: the red, the blue")]
    [InlineData("leads - red, blue")]
    [InlineData("leads = red, blue")]
    [InlineData("leads are red, blue")]
    public void Nothing_is_left_of_names_that_were_asked_for(string text) => Assert.Empty(Listener.Understand(text, asked: Names).NotUnderstood);

    [Theory]
    [InlineData("T1", null, "T1")]
    [InlineData("red", "red", null)]
    [InlineData("5", null, null)]
    public void A_lead_has_a_colour_or_a_printed_mark(string text, string? colour, string? marking)
    {
        var lead = Assert.Single(Listener.Understand(text, asked: Names).Facts.OfType<Fact.Lead>());
        Assert.Equal((colour, marking), (lead.Colour, lead.Marking));
    }

    [Fact]
    public void What_is_marked_on_a_capacitor_that_is_asked_about_names_no_lead() =>
        Assert.Empty(Listener.Understand("marked as 30, measured 28.1", asked: new OpenQuestion { Id = "test.capacitance", Kind = QuestionKind.Quantity, About = "capacitance", Unit = "microfarad" }).Facts.OfType<Fact.Lead>());

    private static string? Count(string text) => Listener.Understand(text).Facts.OfType<Fact.Choice>().FirstOrDefault(choice => choice.Question == Fact.Choice.LeadCount)?.Option;
}
