using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What no count can show: dangers, corrections, what is said back, what is never guessed.</summary>
public sealed class UnderstandingTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Listener Listener = new(Knowledge);

    [Theory]
    [InlineData("OL")]
    [InlineData("it reads open")]
    [InlineData("no continuity to the earth pin")]
    [InlineData("nothing")]
    public void A_way_to_earth_that_is_open_is_an_answer(string text)
    {
        var heard = Listener.Understand(text, leads: ["1", "2"], asked: new OpenQuestion { Id = "earth-continuity", Kind = QuestionKind.Quantity, About = "earth-continuity", Unit = "ohm", CanBeOpen = true });
        Assert.True(heard.Facts is [Fact.BenchTest { Test: "earth-continuity", Outcome: "open" }] or [Fact.Reading { From: Fact.Reading.Frame, To: Fact.Reading.Earth, Open: true }], heard.Facts.Count.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("six leads 1 to 6", 6)]
    [InlineData("it just hums. six leads, 1 to 6", 6)]
    [InlineData("it hums, six leads 1 2 3 4 5 6, cap on top", 6)]
    [InlineData("it won't start. nine wires: 1-9", 9)]
    [InlineData("it hums. wires numbered 1-6", 6)]
    public void As_many_numbers_as_leads_were_counted_are_their_names(string text, int leads) =>
        Assert.Equal(Enumerable.Range(1, leads).Select(number => $"{number}"), Listener.Understand(text).Facts.OfType<Fact.Lead>().Select(lead => lead.Tag));

    [Theory]
    [InlineData("six leads, 1 and 4 are joined")]
    [InlineData("six leads and 2 hp")]
    [InlineData("six leads, 1 to 3 reads 4.2")]
    public void Fewer_numbers_behind_a_count_name_no_leads(string text) => Assert.Empty(Listener.Understand(text).Facts.OfType<Fact.Lead>());

    [Theory]
    [InlineData("cap between the start winding and run reads 0 ohms", true)]
    [InlineData("start winding side cap reads 0 ohms", true)]
    [InlineData("the cap on the start winding measures 0 ohms", true)]
    [InlineData("the cap on the start winding is fine and the run winding reads 0 ohms", false)]
    [InlineData("start winding reads 0 ohms, the cap is a 40 uF", false)]
    public void A_shorted_capacitor_is_told_from_the_winding_beside_it(string text, bool shorted) =>
        Assert.Equal(shorted, Listener.Understand(text).Facts.OfType<Fact.BenchTest>().Any(test => test is { Test: "capacitance", Outcome: "shorted" }));

    [Theory]
    [InlineData("it hums, do I need 240?", "needs-volts")]
    [InlineData("it just hums. would I need 230 for it?", "needs-volts")]
    [InlineData("it hums, can I run it on an extension cord?", "extension-cord")]
    [InlineData("it hums and won't start, can I use a bigger capacitor?", "bigger-capacitor")]
    public void A_question_beside_a_complaint_is_heard_with_it(string text, string question)
    {
        var heard = Listener.Understand(text);
        Assert.Contains(heard.Symptoms, one => one is { Id: "hums-no-start", Present: true });
        Assert.Contains(heard.Questions, one => one.Id == question);
        Assert.Empty(heard.Facts.OfType<Fact.Supply>());
    }

    [Theory]
    [InlineData("thanks", true)]
    [InlineData("ok, got it", true)]
    [InlineData("hello", true)]
    [InlineData("ok no", false)]
    [InlineData("ok it hums", false)]
    [InlineData("thanks, squirrels", false)]
    [InlineData("?", false)]
    public void Courtesy_says_nothing_of_the_motor(string text, bool courtesy) => Assert.Equal(courtesy, Listener.Understand(text).IsCourtesy);

    [Theory]
    [InlineData("frame is warm", null)]
    [InlineData("the housing feels warm", null)]
    [InlineData("the frame is hot", true)]
    [InlineData("the casing is very warm", true)]
    [InlineData("too warm to touch", true)]
    [InlineData("it gets warmer than before", true)]
    public void Warm_alone_is_how_a_motor_runs(string text, bool? hot) => Assert.Equal(hot, Listener.Understand(text).Symptoms.FirstOrDefault(one => one.Id == "runs-hot")?.Present);

    [Theory]
    [InlineData("I got a tingle from it", "shock-felt")]
    [InlineData("could it give me a shock if the earth wire is off?", "shock-felt")]
    [InlineData("what if it starts smoking", "smoke")]
    [InlineData("it started smoking", "smoke")]
    [InlineData("there is a smell of gas", "gas-smelled")]
    [InlineData("I smell gas near the boiler pump", "gas-smelled")]
    [InlineData("someone put foil in the fuse holder", "protection-bypassed")]
    [InlineData("after several resets it runs again", "repeated-resets")]
    [InlineData("the earth pin is missing", "no-earth")]
    [InlineData("supply cable has only brown and blue, no green-yellow at all going to the metal housing", "no-earth")]
    public void Words_that_matter_for_safety_are_heard(string text, string danger) =>
        Assert.Contains(Listener.Understand(text).Dangers, heard => heard.Id == danger);

    [Theory]
    [InlineData("could a dead capacitor make it hum and not start?")]
    [InlineData("how hot is a motor allowed to get")]
    [InlineData("it hummed and would not start until we fitted a new capacitor")]
    [InlineData("the stirrer got hot last summer, but a new fan cured that")]
    [InlineData("the fridge hums and trips the breaker")]
    [InlineData("It is new. The old one used to smoke.")]
    [InlineData("I was told to listen for a squeal")]
    [InlineData("I'd like one with a thermal cutout that resets itself")]
    public void What_is_supposed_over_or_of_something_else_is_no_symptom(string text) =>
        Assert.Empty(Listener.Understand(text).Facts.OfType<Fact.Symptom>());

    [Fact]
    public void What_is_supposed_is_said_back_as_that()
    {
        var heard = Listener.Understand("could a dead capacitor make it hum and not start?");
        Assert.Contains(heard.NotUnderstood, left => left.Reads is ["aside/hums-no-start"]);
        Assert.DoesNotContain(Listener.Understand("it hums and won't start").NotUnderstood, left => left.Reads.Any(read => read.StartsWith("aside/", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_is_of_another_motor_but_warns_is_not_said_back_as_an_aside_too()
    {
        var heard = Listener.Understand("It is new. The old one used to smoke.");
        Assert.Contains(heard.Dangers, danger => danger.Id == "smoke");
        Assert.DoesNotContain(heard.NotUnderstood, left => left.Reads.Contains("aside/smoke-or-burnt-smell"));
    }

    [Theory]
    [InlineData("the lead is singed", "hums-no-start")]
    [InlineData("cranked the new belts till they sing", "smoke-or-burnt-smell")]
    [InlineData("it smells like gas", "smoke-or-burnt-smell")]
    public void What_only_looks_alike_is_not_heard(string text, string symptom) =>
        Assert.DoesNotContain(Listener.Understand(text).Facts.OfType<Fact.Symptom>(), heard => heard.Id == symptom);

    [Theory]
    [InlineData("it squealed until we greased it, now it hums and won't turn", "hums-no-start")]
    [InlineData("the radio and the motor: the motor hums and won't turn", "hums-no-start")]
    [InlineData("when the fridge comes on, the lights dim", "lights-dim")]
    [InlineData("I'm going to open it up because it smells burnt", "smoke-or-burnt-smell")]
    public void What_is_told_beside_it_is_heard(string text, string symptom) =>
        Assert.Contains(Listener.Understand(text).Facts.OfType<Fact.Symptom>(), heard => heard.Present && heard.Id == symptom);

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

    [Theory]
    [InlineData("it runs, 241 V, 4.1 amps")]
    [InlineData("runs fine, 4.1 amps")]
    [InlineData("it ran up, draws 5 A")]
    public void Words_that_told_of_a_run_are_not_asked_about_again(string text)
    {
        var heard = Listener.Understand(text);
        Assert.Equal("ran", Assert.IsType<Fact.Running>(Assert.Single(heard.Facts)).Outcome);
        Assert.Empty(heard.NotUnderstood);
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
        Assert.Equal(["brown 1", "brown 2", "blue", "black", "red"], Tags("brown, brown, blue, black, red"));
        Assert.Equal(["brown 1", "brown 2", "blue 1", "blue 2", "black"], Tags("two brown, two blue and a black"));
        Assert.Equal(["a", "b", "c", "d"], Tags("a, b, c, d"));
        Assert.Equal(["T1", "T2", "T3", "T4", "T5", "T8"], Tags("T1 T2 T3 T4 T5 T8"));
    }

    [Theory]
    [InlineData("red blue 21", "red", "blue", 21.0)]
    [InlineData("white black 4.7 ohm", "white", "black", 4.7)]
    [InlineData("red frame 0.4", "red", "frame", 0.4)]
    public void Two_known_leads_and_a_figure_are_a_reading(string text, string from, string to, double ohms)
    {
        var heard = Listener.Understand(text, ["red", "blue", "white", "black"]).Facts;
        var reading = Assert.Single(heard.OfType<Fact.Reading>());
        Assert.Equal((from, to, ohms), (reading.From, reading.To, reading.Ohms));
        Assert.Empty(heard.OfType<Fact.Lead>());
    }

    [Theory]
    [InlineData("1 2 3")]
    [InlineData("red blue white")]
    public void A_row_of_known_leads_is_no_reading(string text) =>
        Assert.Empty(Listener.Understand(text, ["1", "2", "3", "red", "blue", "white"]).Facts.OfType<Fact.Reading>());

    [Theory]
    [InlineData("isolated", "it's off at the wall switch")]
    [InlineData("isolated", "yes, it's switched off")]
    [InlineData("isolated", "I pressed the stop button")]
    [InlineData("isolated", "isolated and locked")]
    [InlineData("isolated", "breaker is off and locked")]
    [InlineData("isolated", "locked off at the isolator, not proved dead yet")]
    [InlineData("capacitor-discharged", "it's been unplugged for a week")]
    [InlineData("capacitor-discharged", "yes, with a screwdriver")]
    [InlineData("capacitor-discharged", "discharged it with a screwdriver")]
    public void Less_than_what_is_asked_for_confirms_nothing(string question, string text)
    {
        var heard = Listener.Understand(text, asked: new OpenQuestion { Id = question, Kind = QuestionKind.Confirm, About = "confirm" });
        Assert.True(heard.Answer is { Less: not null, Confirmed: null });
        Assert.DoesNotContain(heard.Facts, fact => fact is Fact.Confirm);
    }

    [Theory]
    [InlineData("isolated", "switched off and unplugged")]
    [InlineData("isolated", "breaker is off and locked, proved dead")]
    [InlineData("isolated", "yes, locked off")]
    [InlineData("isolated", "locked off and tested dead")]
    [InlineData("capacitor-discharged", "bled through a resistor, waited a minute, under 5 V")]
    [InlineData("capacitor-discharged", "discharged, under 5 V")]
    public void Words_that_confirm_tell_nothing_else(string question, string text) =>
        Assert.True(Listener.Understand(text, asked: new OpenQuestion { Id = question, Kind = QuestionKind.Confirm, About = "confirm" }).Facts is [Fact.Confirm { Confirmed: true }]);

    [Theory]
    [InlineData("an old motor with no plate", true)]
    [InlineData("the label is painted over", true)]
    [InlineData("plate says 230 V", false)]
    public void A_plate_that_cannot_be_read_is_no_mark_of_a_lead(string text, bool gone)
    {
        var facts = Listener.Understand(text).Facts;
        Assert.Equal(gone, facts.OfType<Fact.Unknown>().Any(unknown => unknown.Question == "plate"));
        Assert.DoesNotContain(facts, fact => fact is Fact.Symptom { Id: "leads-unmarked" });
    }

    [Theory]
    [InlineData("the start cap is shorted")]
    [InlineData("run cap reads dead short")]
    [InlineData("the cap is dead")]
    [InlineData("I discharged the cap with a screwdriver")]
    [InlineData("how do I discharge the cap?")]
    [InlineData("should I isolate it first?")]
    [InlineData("stone dead, no hum. left it locked out")]
    [InlineData("I isolated it, locked out and tagged")]
    public void Nothing_is_confirmed_by_words_that_say_something_else(string text) =>
        Assert.DoesNotContain(Listener.Understand(text).Facts, fact => fact is Fact.Confirm);

    [Theory]
    [InlineData("plate: 5,9/3,4A", "plate amps 5.9/3.4")]
    [InlineData("400 V 3 PH 50~ on the plate", "plate hertz 50")]
    [InlineData("U1 U2 is 12 ohms. U1 to Z1 open circuit.", "reading U1 U2 12")]
    [InlineData("5.0 ohm on U-V, 5.1 on V-W", "reading U V 5")]
    [InlineData("cap 8uf 4.1 measured", "capacitor uF=8 measured=4.1")]
    [InlineData("insulation 25 megohm at 500 v", "insulation 25 V=500")]
    [InlineData("put the tach on, plate says 1725 its doing 1140", "running rpm=1140")]
    [InlineData("tach says 3900 on a 3450 motor", "plate rpm 3450")]
    [InlineData("I put a clamp on it. 31 amps and the tag only calls for 22", "plate amps 22")]
    [InlineData("amps on the legs are not even. 14.2 14.5 18.1", "bench line-currents 18.1")]
    [InlineData("L1 was 5.2A and L2 was 5.3A. L3 came to 5.1A.", "bench line-currents 5.1")]
    [InlineData("voltage is low at the motor, 203 while it runs", "running V=203 ran")]
    public void Figures_belong_to_what_the_words_around_them_say(string text, string expected) =>
        Assert.Contains(expected, Brief.Of(Listener.Understand(text)));

    [Theory]
    [InlineData("no meter here", null)]
    [InlineData("no smell", null)]
    [InlineData("no", false)]
    [InlineData("no I can't", false)]
    [InlineData("no, not yet", false)]
    [InlineData("yes", true)]
    public void A_no_that_belongs_to_a_noun_confirms_and_denies_nothing(string text, bool? confirmed) =>
        Assert.Equal(confirmed, Listener.Understand(text, asked: new OpenQuestion { Id = "isolated", Kind = QuestionKind.Confirm, About = "confirm" }).Answer?.Confirmed);

    [Theory]
    [InlineData("lamp-in-socket", "the lamp works in the same socket", "lights")]
    [InlineData("lamp-in-socket", "the lamp does not light either", "dead")]
    [InlineData("lamp-in-socket", "lamp", null)]
    [InlineData("turn-by-hand", "spins fine", "free")]
    [InlineData("turn-by-hand", "it won't budge", "locked")]
    [InlineData("turn-by-hand", "it's a bit stiff to turn but it goes round", "stiff")]
    [InlineData("look-and-smell", "looks fine to me", "nothing")]
    [InlineData("brushes", "brushes are 4 mm long", null)]
    [InlineData("brushes", "nearly gone", "worn")]
    [InlineData("capacitor-look", "it's bulged at the top", "swollen")]
    [InlineData("coast-down-click", "no click", "no-click")]
    public void A_test_is_answered_in_ones_own_words_and_never_by_a_word_that_two_outcomes_share(string test, string text, string? outcome)
    {
        var guide = Knowledge.Tests[test];
        var asked = new OpenQuestion
        {
            Id = TestGuide.QuestionPrefix + test, Kind = QuestionKind.Choice, About = test,
            Options = [.. guide.Outcomes.Select(one => new OpenOption(one.Id, one.Reading))],
        };
        Assert.Equal(outcome, Listener.Understand(text, asked: asked).Answer?.Choice);
    }

    [Theory]
    [InlineData("8.1 8.3 10.9 amps, plate 8.2 at 400")]
    [InlineData("the legs draw 8.1/8.3/10.9 A, plate says 8.2")]
    [InlineData("8.1, 8.3 and 10.9 amps where the plate says 8.2 A")]
    public void Three_amps_in_a_row_are_the_lines_and_never_the_plate(string text)
    {
        var heard = Listener.Understand(text).Facts;
        Assert.Equal([8.1, 8.3, 10.9], heard.OfType<Fact.BenchTest>().Where(test => test.Test == "line-currents").Select(test => test.Value!.Value));
        Assert.Equal([8.2], heard.OfType<Fact.Plate>().Single(plate => plate.Field == "amps").Value.Numbers);
    }

    [Theory]
    [InlineData("conveyor 400V 1.5kW 3.4A trips, L1 3.3 L2 3.4 L3 4.6", 3.3, 3.4, 4.6, 3.4)]
    [InlineData("plate 3.4 A. 3.3 A on L1, 3.4 A on L2 and 4.6 A on L3", 3.3, 3.4, 4.6, 3.4)]
    [InlineData("L1 12.4A L2 12.1A L3 15.9A", 12.4, 12.1, 15.9, null)]
    public void The_figure_beside_each_line_is_of_that_line_and_other_amps_are_the_plates(string text, double one, double two, double three, double? plate)
    {
        var heard = Listener.Understand(text).Facts;
        Assert.Equal([one, two, three], heard.OfType<Fact.BenchTest>().Where(test => test.Test == "line-currents").Select(test => test.Value!.Value));
        Assert.Equal(plate, heard.OfType<Fact.Plate>().SingleOrDefault(field => field.Field == "amps")?.Value.Number);
    }

    [Fact]
    public void Three_volts_that_lie_close_together_are_those_of_the_lines() =>
        Assert.Equal([399, 401, 398], Listener.Understand("399 401 398").Facts.OfType<Fact.BenchTest>().Select(test => test.Value!.Value));

    [Theory]
    [InlineData("capacitor reads 35 uF, marked 40 uF 370 V", 40.0, 370.0, 35.0)]
    [InlineData("motor is 230 V, capacitor reads 35 uF, marked 40 uF 370 V", 40.0, 370.0, 35.0)]
    [InlineData("capacitor is 40 uF 370 V, reads 35 uF", 40.0, 370.0, 35.0)]
    [InlineData("it reads 35 uF on the capacitor, marked 40/370", 40.0, 370.0, 35.0)]
    [InlineData("35 uF measured, 40 uF 370 V printed on the capacitor", 40.0, 370.0, 35.0)]
    [InlineData("7.5 uF, measures 4.1", 7.5, null, 4.1)]
    public void The_volts_of_a_capacitor_stand_beside_its_print_wherever_the_measured_figure_stands(string text, double marked, double? volts, double measured)
    {
        var facts = Listener.Understand(text).Facts;
        var heard = facts.OfType<Fact.Capacitor>().Single();
        Assert.Equal((marked, null, volts, measured), (heard.Microfarads, heard.MicrofaradsTo, heard.Volts, heard.MeasuredMicrofarads));
        Assert.DoesNotContain(facts.OfType<Fact.Plate>(), plate => plate.Value.Number == volts);
    }

    [Theory]
    [InlineData("no, red to blue was 5.1", null)]
    [InlineData("no, red to blue was open", null)]
    [InlineData("no", false)]
    [InlineData("no, not yet", false)]
    [InlineData("I can't, red to blue is still 5.1", false)]
    public void A_no_that_corrects_a_reading_is_no_answer_to_what_is_to_be_confirmed(string text, bool? confirmed)
    {
        var heard = Listener.Understand(text, ["red", "blue"], new OpenQuestion { Id = "isolated", Kind = QuestionKind.Confirm, About = "confirm" });
        Assert.Equal(confirmed, heard.Answer?.Confirmed);
        Assert.Equal(confirmed is null, heard.Corrections.OfType<Fact.Reading>().Any());
    }

    [Fact]
    public void A_figure_on_a_printed_range_is_measured()
    {
        var heard = Listener.Understand("the cap reads 180 on 161-193").Facts.OfType<Fact.Capacitor>().Single();
        Assert.Equal((161, 193, 180), (heard.Microfarads, heard.MicrofaradsTo, heard.MeasuredMicrofarads));
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
