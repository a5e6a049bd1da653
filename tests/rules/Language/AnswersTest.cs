using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What a message says in answer to the question that stands open, and what is no answer to it.</summary>
public sealed class AnswersTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    private static readonly OpenQuestion Earth = new() { Id = "test.earth-continuity", Kind = QuestionKind.Quantity, About = "earth-continuity", Unit = "ohm", CanBeOpen = true };

    private static readonly OpenQuestion OfCapacitor = new() { Id = "test.capacitance", Kind = QuestionKind.Quantity, About = "capacitance", Unit = "microfarad" };

    [Theory]
    [InlineData("run-current", "run-current", "amp", "4.2", "bench run-current 4.2")]
    [InlineData("run-current", "running", "amp", "4.2", "running A=4.2")]
    [InlineData("run-speed", "running", "rpm", "1420", "running rpm=1420")]
    [InlineData("run-volts", "running", "volt", "233", "running V=233")]
    [InlineData("supply.volts", "supply", "volt", "233", "supply volts=233")]
    [InlineData("supply.hertz", "supply", "hertz", "50", "supply hertz=50")]
    [InlineData("insulation", "insulation", "megohm", "12", "insulation 12")]
    [InlineData("insulation-temperature", "insulation", "celsius", "21", "bench insulation-temperature 21")]
    [InlineData("test.capacitance", "capacitance", "microfarad", "29.4", "capacitor measured=29.4")]
    [InlineData("capacitor.measured", "capacitor", "microfarad", "29.4", "capacitor measured=29.4")]
    [InlineData("probe-zero", "resistance", "ohm", "0.2", "bench probe-zero 0.2")]
    [InlineData("plate.amps", "plate", "amp", "8.2", "plate amps 8.2")]
    [InlineData("volts", "plate", "volt", "230", "plate volts 230")]
    [InlineData("plate.horsepower", "plate.horsepower", "horsepower", "2", "plate horsepower 2")]
    public void A_bare_figure_is_of_what_was_asked_for(string id, string about, string unit, string text, string brief)
    {
        var heard = Listener.Understand(text, asked: new OpenQuestion { Id = id, Kind = QuestionKind.Quantity, About = about, Unit = unit });
        Assert.Equal([brief], Brief.Of(heard));
        Assert.Equal((id, unit), (heard.Answer?.QuestionId, heard.Answer?.Unit));
        Assert.Equal(heard.Facts, heard.AnswerFacts);
        Assert.Empty(heard.NotUnderstood);
    }

    [Theory]
    [InlineData("is it done", null)]
    [InlineData("is the breaker off and locked", null)]
    [InlineData("should I have done it", null)]
    [InlineData("done", true)]
    [InlineData("it is done", true)]
    public void What_is_asked_back_without_its_sign_confirms_nothing(string text, bool? confirmed) =>
        Assert.Equal(confirmed, Listener.Understand(text, asked: new OpenQuestion { Id = "shaft-free-guarded", Kind = QuestionKind.Confirm, About = "confirm" }).Answer?.Confirmed);

    [Theory]
    [InlineData("isolated, locked and proved dead")]
    [InlineData("isolated and locked out, proved dead")]
    [InlineData("yes, locked off")]
    [InlineData("yes, breaker is off and locked, fuses pulled")]
    public void What_says_its_parts_is_understood_whole(string text)
    {
        var heard = Listener.Understand(text, asked: new OpenQuestion { Id = "isolated", Kind = QuestionKind.Confirm, About = "confirm" });
        Assert.True(heard.Answer?.Confirmed);
        Assert.Empty(heard.NotUnderstood);
    }

    [Theory]
    [InlineData("yes, done")]
    [InlineData("yes it is done")]
    [InlineData("done, yes")]
    public void What_confirms_twice_is_understood_both_times(string text)
    {
        var heard = Listener.Understand(text, asked: new OpenQuestion { Id = "shaft-free-guarded", Kind = QuestionKind.Confirm, About = "confirm" });
        Assert.True(heard.Answer?.Confirmed);
        Assert.Empty(heard.NotUnderstood);
    }

    [Theory]
    [InlineData("with 12 V from the transformer I measured 5.2 V", 5.2)]
    [InlineData("I measured 5.2 V with 12 V from the transformer", 5.2)]
    [InlineData("the transformer gives 12 V", null)]
    public void What_the_transformer_gives_is_not_what_was_measured(string text, double? volts) =>
        Assert.Equal(volts, Listener.Understand(text, asked: new OpenQuestion { Id = "series-voltage", Kind = QuestionKind.Quantity, About = "series-voltage", Unit = "volt" }).Answer?.Value);

    [Fact]
    public void A_plates_watts_are_filed_as_its_kilowatts()
    {
        var plate = Assert.IsType<Fact.Plate>(Assert.Single(Listener.Understand("1100 watts", asked: new OpenQuestion { Id = "plate.kilowatts", Kind = QuestionKind.Quantity, About = "plate", Unit = "kilowatt" }).Facts));
        Assert.Equal(1.1, plate.Value.Number);
    }

    [Theory]
    [InlineData("run-current", "amp", "850 mA", 0.85)]
    [InlineData("insulation", "megohm", "800 kilohm", 0.8)]
    [InlineData("insulation", "megohm", "900000 ohm", 0.9)]
    [InlineData("earth-continuity", "ohm", "0.01 megohm", 10_000)]
    [InlineData("insulation-temperature", "celsius", "68 F", 20)]
    [InlineData("shaft-power", "watt", "1.1 kW", 1100)]
    [InlineData("shaft-power", "kilowatt", "1100 watts", 1.1)]
    [InlineData("run-volts", "volt", "233", 233)]
    public void A_figure_in_another_unit_is_told_in_the_one_that_was_asked_for(string about, string unit, string text, double value)
    {
        var heard = Listener.Understand(text, asked: new OpenQuestion { Id = about, Kind = QuestionKind.Quantity, About = about, Unit = unit });
        Assert.Equal(value, heard.Answer!.Value!.Value, 6);
        Assert.Equal(unit, heard.Answer.Unit);
        Assert.Equal(text, heard.Facts.Single().Span);
    }

    [Theory]
    [InlineData("4.2 ohm", "reading 1 2 4.2")]
    [InlineData("1.2 megohm", "reading 1 2 1200000")]
    public void Ohms_between_two_leads_are_a_reading_of_theirs(string text, string brief) =>
        Assert.Equal([brief], Brief.Of(Listener.Understand(text, ["1", "2"], new OpenQuestion { Id = "winding", Kind = QuestionKind.Quantity, About = "resistance", Unit = "ohm", Between = ["1", "2"] })));

    [Theory]
    [InlineData("OL", "bench earth-continuity open")]
    [InlineData("it shows no continuity", "bench earth-continuity open")]
    [InlineData("wide open circuit", "bench earth-continuity open")]
    [InlineData("0.3", "bench earth-continuity 0.3")]
    [InlineData("OL at first, then 0.3 ohm", "bench earth-continuity 0.3")]
    [InlineData("dead short, 0.1", "bench earth-continuity 0.1")]
    [InlineData("megger reads 0.3 ohm", "bench earth-continuity 0.3")]
    [InlineData("0.01 megohm. later I will use the megger", "bench earth-continuity 10000")]
    [InlineData("I own a megger. 0.01 megohm", "bench earth-continuity 10000")]
    [InlineData("the way to earth reads 2 megohm", "bench earth-continuity 2000000")]
    [InlineData("megger gave 2 megohm", "insulation 2")]
    [InlineData("insulation 2 megohm", "insulation 2")]
    [InlineData("insulation tester gave 2 megohm", "instrument insulation-tester; insulation 2")]
    public void A_way_to_earth_is_a_figure_before_it_is_open_and_no_insulation_test(string text, string brief)
    {
        var heard = Listener.Understand(text, asked: Earth);
        Assert.Equal(brief, string.Join("; ", Brief.Of(heard)));
        Assert.Equal(brief.StartsWith("bench", StringComparison.Ordinal), heard.Answer is not null);
        Assert.Equal(brief.EndsWith("open", StringComparison.Ordinal), heard.Answer?.Reading is { From: Fact.Reading.Frame, To: Fact.Reading.Earth, Open: true });
    }

    [Fact]
    public void Words_for_open_are_said_back_whole() => Assert.Equal("open circuit", Assert.Single(Listener.Understand("it is an open circuit", asked: Earth).Facts).Span);

    [Fact]
    public void What_cannot_be_open_is_not_answered_by_an_open_reading() =>
        Assert.Null(Listener.Understand("OL", asked: new OpenQuestion { Id = "probe-zero", Kind = QuestionKind.Quantity, About = "resistance", Unit = "ohm" }).Answer);

    [Theory]
    [InlineData("marked 30, reads 28.1", 28.1)]
    [InlineData("marked as 30, measured 28.1", 28.1)]
    [InlineData("measured on the one marked 30: 28.1", 28.1)]
    [InlineData("28.1, it is marked 30 uF", 28.1)]
    [InlineData("it reads 180, range 161-193", 180.0)]
    [InlineData("marked 30 uF", null)]
    [InlineData("it has 30 uF printed on it", null)]
    [InlineData("28.1 uF, marked 30", 28.1)]
    [InlineData("161-193", null)]
    public void What_is_printed_on_a_capacitor_was_not_measured(string text, double? measured)
    {
        var heard = Listener.Understand(text, asked: OfCapacitor);
        Assert.Equal(measured, heard.Answer?.Value);
        Assert.Equal(measured, heard.Facts.OfType<Fact.Capacitor>().Select(capacitor => capacitor.MeasuredMicrofarads).FirstOrDefault(value => value is not null));
    }

    [Theory]
    [InlineData("5.2", 5.2)]
    [InlineData("measured 5.2 V with the transformer on", 5.2)]
    [InlineData("swapped 3 and 5, 4.2 V", 4.2)]
    [InlineData("swapped 3 and 5", null)]
    [InlineData("my transformer gives 12 V", null)]
    public void What_a_transformer_gives_and_names_of_leads_are_not_what_the_meter_shows(string text, double? volts) =>
        Assert.Equal(volts, Listener.Understand(text, asked: new OpenQuestion { Id = "ends-volts", Kind = QuestionKind.Quantity, About = "series-voltage", Unit = "volt" }).Answer?.Value);

    [Theory]
    [InlineData("I can't measure that", null)]
    [InlineData("can't reach it", null)]
    [InlineData("no idea", null)]
    [InlineData("I can't reach it well, 4.2", 4.2)]
    [InlineData("not sure, 4.2 A or so", 4.2)]
    [InlineData("850 mA, then 4.2 A", 4.2)]
    public void A_figure_answers_even_beside_a_doubt_and_a_doubt_alone_is_an_answer_too(string text, double? amps)
    {
        var heard = Listener.Understand(text, asked: new OpenQuestion { Id = "run-current", Kind = QuestionKind.Quantity, About = "run-current", Unit = "amp" });
        Assert.Equal((amps, amps is null), (heard.Answer?.Value, heard.Answer!.Unknown));
        Assert.Equal([amps is null ? "unknown run-current" : "bench run-current 4.2"], Brief.Of(heard));
    }

    [Theory]
    [InlineData("4.4", "reading 1 2 4.4")]
    [InlineData("OL", "reading 1 2 open")]
    [InlineData("it beeps", "reading 1 2 short")]
    [InlineData("jumps then OL", "reading 1 2 kick")]
    [InlineData("OL on the 2000 range", "reading 1 2 open")]
    [InlineData("4.4 ohm on the 2000 range", "reading 1 2 4.4")]
    [InlineData("don't know, 4.4", "reading 1 2 4.4")]
    [InlineData("I can't measure that", "unknown reading")]
    [InlineData("swapped 3 and 5", null)]
    public void What_a_meter_shows_is_of_the_leads_that_were_asked_for(string text, string? brief) =>
        Assert.Equal(brief, Brief.Of(Listener.Understand(text, asked: new OpenQuestion { Id = "reading", Kind = QuestionKind.Reading, About = "resistance", Between = ["1", "2"] })).SingleOrDefault());

    [Fact]
    public void A_supply_that_is_dead_was_told_in_words_where_volts_were_asked_for() =>
        Assert.Contains("bench supply-voltage none", Brief.Of(Listener.Understand("it is dead", asked: new OpenQuestion { Id = "test.supply-voltage", Kind = QuestionKind.Quantity, About = "supply-voltage", Unit = "volt" })));

    /// <summary>What was said is said back whole: the words of the answer, not their first one.</summary>
    [Theory]
    [InlineData("can't reach the breaker", false, "can't reach")]
    [InlineData("not sure", false, "not sure")]
    [InlineData("not ok, I cannot reach it", false, "cannot")]
    [InlineData("no and it hums", false, "no")]
    [InlineData("not yes", false, "yes")]
    [InlineData("not ready", false, "ready")]
    [InlineData("it isn't ok", false, "ok")]
    [InlineData("haven't done it", false, "done")]
    [InlineData("not possible right now", false, "not possible")]
    [InlineData("all done", true, "all done")]
    [InlineData("yes, it's unplugged", true, "yes")]
    [InlineData("that is done and dusted", null, null)]
    [InlineData("is it done?", null, null)]
    [InlineData("how do I do that?", null, null)]
    public void What_is_to_be_confirmed_is_confirmed_denied_or_left_open(string text, bool? confirmed, string? span)
    {
        var heard = Listener.Understand(text, asked: new OpenQuestion { Id = "isolated", Kind = QuestionKind.Confirm, About = "confirm" });
        Assert.Equal(confirmed, heard.Answer?.Confirmed);
        Assert.Equal(span, heard.Facts.OfType<Fact.Confirm>().SingleOrDefault()?.Span);
    }

    [Theory]
    [InlineData("wires 3, 4.4 ohm", 4.4)]
    [InlineData("on lead 2, reads 4.4 ohms", 4.4)]
    [InlineData("4.4", 4.4)]
    [InlineData("3 or so", 3.0)]
    public void What_says_that_it_is_ohms_answers_before_a_bare_figure(string text, double ohms)
    {
        var asked = new OpenQuestion { Id = "reading.1.2", Kind = QuestionKind.Reading, About = "resistance", Between = ["1", "2"] };
        Assert.Equal(ohms, Listener.Understand(text, ["1", "2", "3"], asked).Answer?.Reading?.Ohms);
    }

    [Fact]
    public void A_confirmation_is_of_what_the_question_is_about() =>
        Assert.Equal(["confirm guards yes"], Brief.Of(Listener.Understand("yes", asked: new OpenQuestion { Id = "guards-again", Kind = QuestionKind.Confirm, About = "guards" })));

    [Fact]
    public void Words_that_say_too_little_are_understood_all_the_same()
    {
        var heard = Listener.Understand("I pressed the stop button", asked: new OpenQuestion { Id = "isolated", Kind = QuestionKind.Confirm, About = "confirm" });
        Assert.True(heard.Answer is { Less: "confirmation.isolated.short-2", Confirmed: null });
        Assert.Empty(heard.NotUnderstood);
    }

    [Theory]
    [InlineData("no smell", null)]
    [InlineData("no, we have no smell", false)]
    [InlineData("no we have no smell", false)]
    [InlineData("no it has no smell", false)]
    [InlineData("no i hear no hum", false)]
    [InlineData("no way, no hum", false)]
    [InlineData("I do not hear any hum", null)]
    public void A_no_before_a_sentence_of_its_own_is_an_answer_and_one_before_a_noun_is_not(string text, bool? confirmed) =>
        Assert.Equal(confirmed, Listener.Understand(text, asked: new OpenQuestion { Id = "isolated", Kind = QuestionKind.Confirm, About = "confirm" }).Answer?.Confirmed);

    [Theory]
    [InlineData("yes", "several")]
    [InlineData("no", "single")]
    [InlineData("yes and no", null)]
    [InlineData("maybe", null)]
    public void Yes_and_no_choose_among_speeds_and_both_together_nothing(string text, string? option) => Assert.Equal(option, Chosen("several-speeds", text, ("several", "Yes, it has several speeds"), ("single", "No, one speed")));

    [Theory]
    [InlineData("yep", "yes", "yes:It drags", "no:It turns freely")]
    [InlineData("nope", "no", "yes:It drags", "no:It turns freely")]
    [InlineData("nope", "none", "some:Some", "none:Nothing of it")]
    [InlineData("none", "none", "some:Some", "none:Nothing of it")]
    [InlineData("yeah", "drags", "drags:Yes", "free:No")]
    [InlineData("nah", "free", "drags:Yes", "free:No")]
    [InlineData("nah", null, "loud:Noisy", "still:Quiet")]
    [InlineData("NONE", "none", "some:Some", "none:Nothing of it")]
    [InlineData("nothing of it", "none", "some:Some", "none:Nothing of it")]
    public void A_yes_or_no_means_the_option_that_begins_with_it_or_is_called_so(string text, string? option, string one, string other) => Assert.Equal(option, Chosen("drag", text, Pair(one), Pair(other)));

    [Theory]
    [InlineData("steel", null)]
    [InlineData("painted steel", "frame")]
    [InlineData("green rubber", "feet")]
    [InlineData("is painted steel", "frame")]
    [InlineData("not sure, painted steel I think", "frame")]
    [InlineData("not painted steel", null)]
    [InlineData("painted steel, plate 230 V", null)]
    [InlineData("painted steel frame, plate 230 V 2 hp", "frame")]
    public void An_option_is_chosen_by_half_its_own_words_and_among_figures_by_most_of_them(string text, string? option) => Assert.Equal(option, Chosen("stands-on", text, ("feet", "Two green rubber feet"), ("frame", "Painted steel frame")));

    [Theory]
    [InlineData("plate 230 V 2 hp", null)]
    [InlineData("the plate alone", "plate")]
    public void A_word_that_names_a_figure_chooses_nothing(string text, string? option) => Assert.Equal(option, Chosen("tags", text, ("plate", "Plate"), ("wires", "Wires only")));

    /// <summary>Among figures a word by the way is no answer; a short way of saying it, given by the question's card, is one.</summary>
    [Theory]
    [InlineData("first-start", "it ran up and draws 4.2 A", "ran")]
    [InlineData("first-start", "nothing", "nothing")]
    [InlineData("first-start", "nothing happened, the meter at the switch shows 233 V", null)]
    [InlineData("ends-outcome", "goes up, T1 to T4 reads 4.2 ohm", "up-on-make")]
    [InlineData("ends-instrument", "neither, plate is 230 V 2 hp", "none")]
    [InlineData("ends-instrument", "the plate says 230 V and first I measured T1 to T4 as 4.2 ohm", null)]
    public void The_short_ways_of_a_card_answer_where_they_are_most_of_what_is_said(string question, string text, string? option) =>
        Assert.Equal(option, Chosen(question, text, [.. Trade.Knowledge.Questions[question].Options.Select(one => (one.Id, one.Text))]));

    [Theory]
    [InlineData("4", "four")]
    [InlineData("2 or 4", null)]
    public void Two_options_named_alike_are_none(string text, string? option) => Assert.Equal(option, Chosen("poles", text, ("two", "2 poles"), ("four", "4 poles")));

    [Fact]
    public void Who_cannot_tell_which_option_holds_has_answered()
    {
        var heard = Listener.Understand("no idea", asked: new OpenQuestion { Id = "several-speeds", Kind = QuestionKind.Choice, About = "look-and-smell", Options = [new("several", "Yes, it has several speeds"), new("single", "No, one speed")] });
        Assert.True(heard.Answer is { Unknown: true, Choice: null });
        Assert.Equal("no idea", Assert.IsType<Fact.Unknown>(Assert.Single(heard.Facts)).Span);
    }

    [Theory]
    [InlineData("it drags", true)]
    [InlineData("is it meant to drag?", false)]
    [InlineData("are they meant to drag?", false)]
    [InlineData("was it dragging?", false)]
    [InlineData("does it drag?", false)]
    [InlineData("do they drag?", false)]
    [InlineData("did it drag?", false)]
    [InlineData("can it drag?", false)]
    [InlineData("could it drag?", false)]
    [InlineData("should it drag?", false)]
    [InlineData("shall it drag?", false)]
    [InlineData("will it drag?", false)]
    [InlineData("would it drag?", false)]
    [InlineData("may it drag?", false)]
    [InlineData("must it drag?", false)]
    [InlineData("what if it drags?", false)]
    [InlineData("why does it drag?", false)]
    [InlineData("how does it drag?", false)]
    [InlineData("where does it drag?", false)]
    [InlineData("which one drags?", false)]
    [InlineData("who says it drags?", false)]
    [InlineData("when does it drag?", false)]
    public void What_is_asked_back_chooses_nothing(string text, bool drags) => Assert.Equal(drags ? "drags" : null, Chosen("drag", text, ("drags", "It drags"), ("free", "It turns freely")));

    [Fact]
    public void What_is_wanted_may_be_said_as_a_question() =>
        Assert.Equal("reverse", Listener.Understand("can you make it turn the other way?", asked: new OpenQuestion { Id = "goal", Kind = QuestionKind.Choice, About = "goal", Options = [new("connect", "Find out which lead is which"), new("reverse", "Make it turn the other way")] }).Answer?.Choice);

    [Theory]
    [InlineData("the lid is cracked", "the lid is cracked")]
    [InlineData("  the lid is cracked ", "the lid is cracked")]
    [InlineData("why?", null)]
    [InlineData("what is a stator?", null)]
    [InlineData("what does that mean", null)]
    [InlineData("undo", null)]
    [InlineData("plate 230 V", null)]
    [InlineData("don't know", null)]
    public void Free_words_are_kept_as_they_are_but_for_facts_and_questions(string text, string? kept) =>
        Assert.Equal(kept, Listener.Understand(text, asked: new OpenQuestion { Id = "note", Kind = QuestionKind.Text, About = "note" }).Answer?.Text);

    private static string? Chosen(string id, string text, params (string Id, string Text)[] options) =>
        Listener.Understand(text, asked: new OpenQuestion { Id = id, Kind = QuestionKind.Choice, About = id, Options = [.. options.Select(option => new OpenOption(option.Id, option.Text))] }).Answer?.Choice;

    private static (string Id, string Text) Pair(string written) => written.Split(':') is [var id, var text] ? (id, text) : throw new ArgumentException(written, nameof(written));
}
