using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What a person wants or asks, told from what looks like it.</summary>
public sealed class WishesTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("connect it for 230 V", "230")]
    [InlineData("wire the motor up for 115", "115")]
    [InlineData("hook it up for 460 volts", "460")]
    [InlineData("link it in star", "star")]
    [InlineData("strap it for the delta", "delta")]
    [InlineData("jumper them as star", "star")]
    [InlineData("connect it on star", "star")]
    [InlineData("connect it to 230 V", null)]
    [InlineData("do not connect it for 230 V", null)]
    [InlineData("connect it for 24 V", null)]
    public void The_connection_that_is_wished_for_is_heard(string text, string? option) =>
        Assert.Equal(option, Listener.Understand(text).Facts.OfType<Fact.Choice>().SingleOrDefault(choice => choice.Question == Fact.Choice.Connection)?.Option);

    [Theory]
    [InlineData("old motor plate 230 V 4.1 A, the new one is 230 V 5 A", true)]
    [InlineData("want to replace the old motor, plate 230 V 4.1 A", true)]
    [InlineData("plate of the old motor says 230 V 4.1 A", false)]
    public void A_plate_is_of_the_old_motor_where_another_takes_its_place(string text, bool old) =>
        Assert.Equal(old, Listener.Understand(text).Facts.OfType<Fact.Plate>().Any(plate => plate.Of == Fact.Plate.Old));

    [Theory]
    [InlineData("is it safe to do alone", true)]
    [InlineData("can I do this myself?", true)]
    [InlineData("am I allowed to measure on it live", true)]
    [InlineData("can I fix it on my own", true)]
    [InlineData("I am doing it on my own", false)]
    [InlineData("it starts by itself", false)]
    [InlineData("they are not allowed near it", false)]
    public void Whether_one_may_do_it_is_asked(string text, bool asked) =>
        Assert.Equal(asked, Listener.Understand(text).Questions.Any(question => question.Id == "may-i"));

    [Theory]
    [InlineData("wired star on 230, is that ok", "check-connection")]
    [InlineData("it's wired in delta on 400, is that right?", "check-connection")]
    [InlineData("it is wired star on 230", null)]
    [InlineData("the bearing is new, is that ok", null)]
    [InlineData("find which is which", "identify-leads")]
    [InlineData("I want to find out which is which", "identify-leads")]
    [InlineData("sort out which wire is which", "identify-leads")]
    [InlineData("which of the two is yours", null)]
    [InlineData("how many wires does it have? six", null)]
    [InlineData("reverse a single phase motor 115/230", "reverse")]
    [InlineData("it runs in reverse", null)]
    [InlineData("need it to turn the other way", "reverse")]
    [InlineData("it turns the other way now", null)]
    [InlineData("change it to 230", "change-voltage")]
    [InlineData("we changed it to 230 last year", null)]
    [InlineData("how should I rewire it for 240?", "change-voltage")]
    [InlineData("can I change it to 240?", "change-voltage")]
    [InlineData("should I switch it to 240?", null)]
    public void A_wish_is_heard_as_the_job(string text, string? goal) => Assert.Equal(goal, Listener.Understand(text).Goal);

    [Theory]
    [InlineData("which wire goes where, help me hook it up", false)]
    [InlineData("help me wire them up", false)]
    [InlineData("he wired it up again and now it hums", true)]
    public void What_is_to_be_wired_has_not_been_wired(string text, bool wired)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(wired, heard.Symptoms.Any(one => one is { Id: "just-rewired", Present: true }));
        Assert.Empty(heard.NotUnderstood);
    }

    [Theory]
    [InlineData("what overload setting do I need", "what-size")]
    [InlineData("what should I set the overload to", "what-size")]
    [InlineData("what is an overload", "what-is")]
    public void A_figure_that_is_asked_for_is_not_explained_as_a_word(string text, string question) => Assert.Equal([question], Listener.Understand(text).Questions.Select(one => one.Id));

    [Theory]
    [InlineData("put a bigger capacitor in, now it runs hot", true, false)]
    [InlineData("we replaced the run capacitor by a bigger one and now it growls", true, false)]
    [InlineData("I put a bigger capacitor in, is that ok?", true, true)]
    [InlineData("can I put a bigger capacitor in", false, true)]
    [InlineData("should we fit a larger capacitor", false, true)]
    [InlineData("we replaced the capacitor", false, false)]
    public void A_bigger_capacitor_that_was_fitted_is_told_from_one_that_is_asked_about(string text, bool fitted, bool asked)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(fitted, heard.Facts.OfType<Fact.BenchTest>().Any(test => test is { Test: "capacitor-look", Outcome: "other-size" }));
        Assert.Equal(asked, heard.Questions.Any(question => question.Id == "bigger-capacitor"));
        Assert.DoesNotContain(heard.Facts.OfType<Fact.BenchTest>(), test => test.Outcome == "wrong-marks");
    }

    [Theory]
    [InlineData("it's running hot, capacitor replaced", true)]
    [InlineData("my capacitor was replaced and the motor runs hot", true)]
    [InlineData("the capacitor gets hot", false)]
    public void A_hot_motor_is_told_from_a_hot_capacitor(string text, bool hot) => Assert.Equal(hot, Listener.Understand(text).Symptoms.Any(one => one is { Id: "runs-hot", Present: true }));

    [Theory]
    [InlineData("the star point is brought out", true)]
    [InlineData("neutral of the windings comes out as well", true)]
    [InlineData("the socket has live and neutral", false)]
    public void A_star_point_that_is_brought_out_makes_it_three_phase(string text, bool three) =>
        Assert.Equal(three, Listener.Understand(text).Facts.OfType<Fact.Choice>().Any(choice => choice is { Question: "family", Option: "three-phase" }));

    [Theory]
    [InlineData("stirrer 2: hums", "stirrer 2")]
    [InlineData("pump 3 hums and won't start", "pump 3")]
    [InlineData("stirrer no. 2 in the vat room hums", "stirrer no. 2")]
    [InlineData("pump 3 hp hums", "pump")]
    [InlineData("pump 2 wires, hums", "pump")]
    [InlineData("stirrer, 2-3 is 4 ohms", "stirrer")]
    public void The_number_of_a_machine_belongs_to_its_name(string text, string machine)
    {
        var heard = Listener.Understand(text, ["1", "2", "3"], new OpenQuestion { Id = "leads", Kind = QuestionKind.Text, About = "lead" });
        Assert.Equal(machine, Assert.Single(heard.Facts.OfType<Fact.Application>()).Text);
        Assert.DoesNotContain(heard.Facts.OfType<Fact.Lead>(), lead => machine.EndsWith(lead.Tag, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("fan, three wires: black, white and red", "3")]
    [InlineData("how many wires does it have? six", "6")]
    [InlineData("how many leads? 9.", "9")]
    [InlineData("how many wires does it have? six volts", null)]
    [InlineData("how many wires should it have?", null)]
    public void Leads_are_counted(string text, string? count)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(count, heard.Facts.OfType<Fact.Choice>().FirstOrDefault(choice => choice.Question == Fact.Choice.LeadCount)?.Option);
        Assert.True(count is null || heard.NotUnderstood.Count == 0, string.Join("; ", heard.NotUnderstood.Select(left => left.Text)));
    }

    [Fact]
    public void A_figure_that_chose_an_option_is_understood()
    {
        var asked = new OpenQuestion { Id = "connection", Kind = QuestionKind.Choice, About = "connection", Options = [new OpenOption("low", "for 115 V"), new OpenOption("high", "for 230 V")] };
        var heard = Listener.Understand("it is 230 volts", asked: asked);
        Assert.Equal("high", heard.Answer?.Choice);
        Assert.Empty(heard.NotUnderstood);
        Assert.NotEmpty(Listener.Understand("it is 230 volts").NotUnderstood);
    }

    /// <summary>What is to be confirmed is confirmed by words that mean it, never by words that speak of something else.</summary>
    [Theory]
    [InlineData("yes", true)]
    [InlineData("ok", true)]
    [InlineData("it is", true)]
    [InlineData("ok, it is done", true)]
    [InlineData("yes, it is 5 years old", true)]
    [InlineData("it is 5 years old", null)]
    [InlineData("they are all black", null)]
    [InlineData("the capacitor looks ok", null)]
    [InlineData("i am sure it is the capacitor", null)]
    [InlineData("had the bearings done last year", null)]
    [InlineData("i have a clamp meter", null)]
    [InlineData("it is not", false)]
    public void Words_about_something_else_confirm_nothing(string text, bool? confirmed)
    {
        var asked = new OpenQuestion { Id = "isolated", Kind = QuestionKind.Confirm, About = "confirm" };
        Assert.Equal(confirmed, Listener.Understand(text, asked: asked).Answer?.Confirmed);
    }

    [Fact]
    public void The_noun_before_the_names_of_leads_is_understood()
    {
        var heard = Listener.Understand("fan from the maturing room, wires: black, brown, white, red");
        Assert.Equal(["black", "brown", "white", "red"], heard.Facts.OfType<Fact.Lead>().Select(lead => lead.Tag));
        Assert.Empty(heard.NotUnderstood);
    }
}
