using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Words that sound like something which they do not tell.</summary>
public sealed class MishearingTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    /// <summary>A figure that may be two things is asked about, and a mark of a terminal is no volt.</summary>
    [Theory]
    [InlineData("2 hp pump, just hums, 30 amps", "plate/amps running/amps")]
    [InlineData("45+5 uF 440V", "")]
    [InlineData("dual cap 35/5 uF 370V", "")]
    public void What_may_be_two_things_is_left_open(string text, string reads)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(reads, string.Join(' ', Assert.Single(heard.NotUnderstood).Reads));
        Assert.DoesNotContain(heard.Facts, fact => fact is Fact.Plate { Field: "amps" } or Fact.Capacitor { Microfarads: not null });
    }

    [Theory]
    [InlineData("1 hp 115/230 8.8/4.4 1725 rpm", "8.8/4.4")]
    [InlineData("plate 230/400 V, 8.8/5.1, it hums", "8.8/5.1")]
    [InlineData("115/230 V 4.4/8.8", null)]
    [InlineData("2 hp 12 amps, pump just hums", "12")]
    public void The_pair_behind_the_volts_is_the_amps(string text, string? amps) =>
        Assert.Equal(amps, Listener.Understand(text).Facts.OfType<Fact.Plate>().FirstOrDefault(plate => plate.Field == "amps")?.Value.Text);

    [Theory]
    [InlineData("6 terminals 1U 1V 1W 2U 2V 2W", "1U 1V 1W 2U 2V 2W")]
    [InlineData("terminals 1U1, 1V1, 1W1", "1U1 1V1 1W1")]
    [InlineData("reads 1V and 2W", "")]
    public void Terminals_of_a_motor_of_several_speeds_are_marks(string text, string marks)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(marks, string.Join(' ', heard.Facts.OfType<Fact.Lead>().Select(lead => lead.Marking)));
        Assert.True(marks.Length == 0 || !heard.Facts.Any(fact => fact is Fact.Plate));
    }

    [Theory]
    [InlineData("wires black white brown brown", "black white brown 1 brown 2")]
    [InlineData("psc blower, wires red red black", "red 1 red 2 black")]
    public void Leads_of_one_colour_are_as_many_leads(string text, string tags) =>
        Assert.Equal(tags, string.Join(' ', Listener.Understand(text).Facts.OfType<Fact.Lead>().Select(lead => lead.Tag)));

    [Theory]
    [InlineData("3 speed fan", "several")]
    [InlineData("it has two speeds", "several")]
    [InlineData("single speed motor", "single")]
    [InlineData("the speed is 1440", null)]
    public void Whether_a_motor_has_several_speeds_is_heard_unasked(string text, string? option)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(option, heard.Facts.OfType<Fact.Choice>().FirstOrDefault(choice => choice.Question == "several-speeds")?.Option);
        Assert.True(option is null || heard.NotUnderstood.Count == 0);
    }

    [Theory]
    [InlineData("hums, will start with push", "hums-no-start starts-if-spun")]
    [InlineData("it runs but with a loud hum", "electrical-growl")]
    public void A_hum_that_a_push_ends_is_no_growl(string text, string symptoms) =>
        Assert.Equal(symptoms, string.Join(' ', Listener.Understand(text).Symptoms.Where(one => one.Present).Select(one => one.Id)));

    [Theory]
    [InlineData("its not running fast its running slow", "runs-slow")]
    [InlineData("it's not getting hot it's getting loud", "runs-hot")]
    public void A_new_it_is_ends_a_denial(string text, string symptom) =>
        Assert.Equal(symptom == "runs-slow", Assert.Single(Listener.Understand(text).Symptoms, one => one.Id == symptom).Present);

    [Theory]
    [InlineData("it wont come up to speed and hums", false)]
    [InlineData("it hums, but give it a push and it comes up to speed", true)]
    public void What_does_not_come_up_to_speed_has_not_been_spun(string text, bool spun) =>
        Assert.Equal(spun, Listener.Understand(text).Symptoms.Any(one => one is { Id: "starts-if-spun", Present: true }));

    [Theory]
    [InlineData("megger 500 V gave 0.4 megohm", 0.4)]
    [InlineData("insulation reads 2 megohm", 2.0)]
    [InlineData("0.4 megohm", null)]
    [InlineData("400 kilohm", null)]
    public void An_insulation_test_is_no_path_to_earth(string text, double? megohms)
    {
        var heard = Listener.Understand(text, leads: [], asked: new OpenQuestion { Id = "test.earth-continuity", Kind = QuestionKind.Quantity, About = "earth-continuity", Unit = "ohm", CanBeOpen = true });
        Assert.Equal(megohms, heard.Facts.OfType<Fact.Insulation>().SingleOrDefault()?.Megohms);
        Assert.Equal(megohms is null, heard.Facts.OfType<Fact.BenchTest>().Any(test => test.Test == "earth-continuity"));
    }

    [Theory]
    [InlineData("motor rewound last week hums and pulls 3x current no load")]
    [InlineData("it draws 2 times the amps")]
    [InlineData("pulls 2x FLA")]
    public void So_many_times_the_current_is_no_figure_of_amps(string text)
    {
        var heard = Listener.Understand(text);
        Assert.DoesNotContain(heard.Facts, fact => fact is Fact.Running { Amps: not null });
        Assert.Contains(heard.Symptoms, symptom => symptom is { Id: "high-current", Present: true });
    }

    [Theory]
    [InlineData("it draws 130 percent of FLA", true)]
    [InlineData("pulling 118% of nameplate current", true)]
    [InlineData("pulls 85 percent of nameplate current", false)]
    [InlineData("the heaters are set to 115 percent of FLA", null)]
    [InlineData("draws 7 A, efficiency 84 percent, plate 8 A", false)]
    [InlineData("draws 8.2 A, plate 8 A", null)]
    [InlineData("draws 8.2 A", null)]
    [InlineData("we clamped the legs, amps are 62, 58 and 70 with the plate at 60", true)]
    [InlineData("currents 5.2 5.3 5.2 with plate 5.6", false)]
    public void A_share_of_the_plates_current_tells_whether_it_is_too_much(string text, bool? high) =>
        Assert.Equal(high, Listener.Understand(text).Symptoms.FirstOrDefault(one => one.Id == "high-current")?.Present);

    [Theory]
    [InlineData("one phase at 2.1 amps and the others at 5.6 and 5.9", true)]
    [InlineData("he found only 9 amps on one phase and 19 on the other two", true)]
    [InlineData("amps are 11.1, 11.0, 11.2 on the legs", false)]
    [InlineData("phase currents are 88, 79 and 81", null)]
    [InlineData("9 amps on one phase, 19 on another", null)]
    [InlineData("1 to 2, 3 and 4 open", null)]
    public void Currents_of_three_lines_tell_whether_they_are_unequal(string text, bool? unequal) =>
        Assert.Equal(unequal, Listener.Understand(text).Symptoms.FirstOrDefault(one => one.Id == "unequal-phase-currents")?.Present);

    [Theory]
    [InlineData("330 V across it and 0.82 A through it", false)]
    [InlineData("capacitor: 330 V across it and 0.82 A through it", true)]
    public void Volts_across_something_and_amps_through_it_are_no_marks_of_a_plate(string text, bool capacitor)
    {
        var heard = Listener.Understand(text);
        Assert.DoesNotContain(heard.Facts, fact => fact is Fact.Plate or Fact.Supply or Fact.Running);
        Assert.Equal(capacitor, heard.Facts.Any(fact => fact is Fact.Capacitor { AcrossVolts: 330, ThroughAmps: 0.82 }));
        Assert.Equal(!capacitor, heard.NotUnderstood.Count > 0);
    }

    [Theory]
    [InlineData("the reading keeps jumping", false)]
    [InlineData("the meter jumps about", false)]
    [InlineData("it jumps about on the bench", true)]
    [InlineData("it shakes so much that I cannot read the meter", true)]
    public void A_figure_that_wanders_is_no_motor_that_shakes(string text, bool shakes) =>
        Assert.Equal(shakes, Listener.Understand(text).Symptoms.Any(one => one is { Id: "vibrates", Present: true }));

    [Theory]
    [InlineData("tried giving it a push with a stick. nope, doesn't help it any", false)]
    [InlineData("I push the wheel by hand and off it goes", true)]
    public void A_push_that_does_not_help_starts_nothing(string text, bool starts) =>
        Assert.Equal(starts, Listener.Understand(text).Symptoms.Single(one => one.Id == "starts-if-spun").Present);

    [Fact]
    public void Who_trips_over_a_cable_is_no_motor_that_trips() =>
        Assert.Empty(Listener.Understand("I tripped over the cable after it had been running an hour").Symptoms);

    [Theory]
    [InlineData("voltage at the motor is 238 while it runs")]
    [InlineData("locked rotor 60 A")]
    [InlineData("three wires red, blue and white")]
    public void A_figure_is_judged_by_what_it_should_be_and_not_by_its_words(string text) => Assert.DoesNotContain(Listener.Understand(text).Symptoms, one => one.Present);

    [Theory]
    [InlineData("clear, over 200 megohm", true)]
    [InlineData("0.3 ohm", false)]
    public void Megohms_are_nothing_that_two_probes_held_together_show(string text, bool insulation)
    {
        var heard = Listener.Understand(text, leads: [], asked: new OpenQuestion { Id = "probes", Kind = QuestionKind.Quantity, About = Fact.BenchTest.ProbeZero, Unit = "ohm" });
        Assert.Equal(insulation, heard.Facts.Any(fact => fact is Fact.Insulation { Megohms: 200 }));
        Assert.Equal(!insulation, heard.Facts.Any(fact => fact is Fact.BenchTest { Test: Fact.BenchTest.ProbeZero }));
    }

    [Theory]
    [InlineData("it is isolated, locked and proved dead")]
    [InlineData("locked out and isolated, proved dead")]
    public void What_says_one_thing_twice_is_understood_both_times(string text)
    {
        var heard = Listener.Understand(text);
        Assert.Contains(heard.Facts, fact => fact is Fact.Confirm { Id: "isolated", Confirmed: true });
        Assert.Empty(heard.NotUnderstood);
    }

    [Fact]
    public void Two_wires_that_run_one_way_tell_nothing_of_three_currents() =>
        Assert.DoesNotContain(Listener.Understand("conveyor gearmotor 24 V DC two wires runs one way only, want it reversible").Symptoms, symptom => symptom.Id == "unequal-phase-currents");

    /// <summary>A tool bites into its work, and a belt is pulled; what bites or belts a hand is a shock, whatever it is.</summary>
    [Theory]
    [InlineData("as soon as the tool bites it slows to a crawl", false)]
    [InlineData("the drill bites and stalls", false)]
    [InlineData("it stops when the cutter bites into the oak", false)]
    [InlineData("the plug is too hot to touch and it smells a bit", false)]
    [InlineData("it sounds a bit off", false)]
    [InlineData("it has been a bit off since spring", false)]
    [InlineData("I got a bit of a shock from it", true)]
    [InlineData("I have been bit by it", true)]
    [InlineData("it gave me a bite off the frame", true)]
    [InlineData("when I touch it it bites", true)]
    [InlineData("the saw bites me when I touch it", true)]
    [InlineData("the drill bites when I touch it", true)]
    [InlineData("the frame bites into my hand", true)]
    [InlineData("when the saw bites it gives me a tingle", true)]
    [InlineData("my son gave the belt a tug and it went", false)]
    [InlineData("I took the belt off", false)]
    [InlineData("we got a new belt for it", false)]
    [InlineData("it has got a belt and two pulleys", false)]
    [InlineData("it gave me a good belt", true)]
    [InlineData("I got a belt", true)]
    [InlineData("got a belt that threw me back", true)]
    [InlineData("got a proper belt", true)]
    [InlineData("I got a belt when I touched the case", true)]
    [InlineData("had a good belt off the lathe", true)]
    [InlineData("it bites", true)]
    [InlineData("the casing bites", true)]
    public void A_tool_that_bites_into_its_work_and_a_belt_that_is_pulled_are_no_shock(string text, bool shock)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(shock, heard.Symptoms.Any(symptom => symptom is { Id: "shock-from-frame", Present: true }));
        Assert.Equal(shock, heard.Dangers.Any(danger => danger.Id == "shock-felt"));
    }

    /// <summary>What was mended and starts again hummed only then.</summary>
    [Theory]
    [InlineData("I replaced the capacitor on my pool pump because it was just humming. Now it starts right up.", false)]
    [InlineData("It was humming without turning, so I've put in a new capacitor. It starts now every time.", false)]
    [InlineData("I replaced the capacitor because it was just humming. Now it trips the breaker.", true)]
    [InlineData("I replaced the capacitor. Now it just hums.", true)]
    public void What_was_mended_and_starts_again_does_not_hum(string text, bool hums) =>
        Assert.Equal(hums, Listener.Understand(text).Symptoms.Any(symptom => symptom is { Id: "hums-no-start", Present: true }));

    [Theory]
    [InlineData("the roller door at our fire station does not open", false)]
    [InlineData("the motor caught fire", true)]
    [InlineData("it burst into flames", true)]
    [InlineData("the motor is burning", true)]
    [InlineData("the motor is burning hot", false)]
    [InlineData("the motor is burning my hand", false)]
    public void A_fire_station_is_no_fire(string text, bool fire) =>
        Assert.Equal(fire, Listener.Understand(text).Dangers.Any(danger => danger.Id is "fire" or "smoke"));

    [Theory]
    [InlineData("ok it's unplugged, cord is on the bench", false)]
    [InlineData("it runs fine on the bench", true)]
    public void A_plug_on_the_bench_is_no_run_without_load(string text, bool unloaded)
    {
        var facts = Listener.Understand(text).Facts;
        Assert.Equal(unloaded, facts.Any(fact => fact is Fact.Symptom { Id: "works-unloaded", Present: true }));
        Assert.DoesNotContain(facts, fact => fact is Fact.Choice);
    }

    [Fact]
    public void Insulation_over_some_megohms_is_no_dirt()
    {
        var heard = Listener.Understand("Overload set at 5.0. Insulation over 500 Meg at 500 V, after two hours with a lamp inside.");
        Assert.DoesNotContain(heard.Facts, fact => fact is Fact.BenchTest);
        Assert.Empty(heard.Questions);
        Assert.Equal((500.0, null), (heard.Facts.OfType<Fact.Insulation>().Single().Megohms, heard.Facts.OfType<Fact.Insulation>().Single().AtMinute));
    }

    [Theory]
    [InlineData("threw the main and opened the doors", null)]
    [InlineData("the main winding is open", "run-open")]
    [InlineData("the run winding opened up", "run-open")]
    public void A_door_that_was_opened_is_no_open_winding(string text, string? outcome) =>
        Assert.Equal(outcome, Listener.Understand(text).Facts.OfType<Fact.BenchTest>().FirstOrDefault(test => test.Test == "resistance")?.Outcome);

    [Theory]
    [InlineData("one fuse in the main board was blown, the drive runs", false)]
    [InlineData("the drive's board is blown", true)]
    public void A_fuse_in_the_main_board_is_no_electronic_fault(string text, bool fault) =>
        Assert.Equal(fault, Listener.Understand(text).Facts.OfType<Fact.BenchTest>().Any(test => test is { Test: "electronic-part", Outcome: "fault" }));

    [Theory]
    [InlineData("it runs on two phases only", null)]
    [InlineData("supply is 3 phase", 3)]
    public void Two_phases_that_are_left_are_no_kind_of_supply(string text, int? phases) =>
        Assert.Equal(phases, Listener.Understand(text).Facts.OfType<Fact.Supply>().FirstOrDefault()?.Phases);

    [Theory]
    [InlineData("the pump turns over by hand with no tight spots", null)]
    [InlineData("the pump turns over by hand with a tight spot", "rubs")]
    public void No_tight_spot_is_none(string text, string? outcome) =>
        Assert.Equal(outcome, Listener.Understand(text).Facts.OfType<Fact.BenchTest>().FirstOrDefault(test => test.Test == "turn-by-hand")?.Outcome);

    [Theory]
    [InlineData("my meter doesn't measure capacitors", false)]
    [InlineData("it doesn't have a capacitor", true)]
    public void A_meter_that_cannot_measure_capacitors_is_no_motor_without_one(string text, bool none) =>
        Assert.Equal(none, Listener.Understand(text).Facts.Any(fact => fact is Fact.Capacitor { Present: false }));

    [Theory]
    [InlineData("when the blade bites it trips the breaker", "trips-at-once", false)]
    [InlineData("it trips the breaker", "trips-at-once", true)]
    public void What_trips_as_the_tool_bites_does_not_trip_at_once(string text, string symptom, bool told) =>
        Assert.Equal(told, Listener.Understand(text).Symptoms.Any(one => one.Id == symptom && one.Present));

    [Theory]
    [InlineData("the third prong is broken off", true)]
    [InlineData("somebody snapped the round prong off", true)]
    [InlineData("the earth pin has been cut off the plug", true)]
    [InlineData("the third leg is off", false)]
    [InlineData("it has a pin that broke in the coupling", false)]
    public void A_pin_that_is_off_is_an_earth_that_is_missing_and_no_motor_that_went_off(string text, bool missing)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(missing, heard.Dangers.Any(danger => danger.Id == "no-earth"));
        Assert.DoesNotContain(heard.NotUnderstood, left => left.Reads.Contains("symptom/silent-no-start"));
    }

    [Theory]
    [InlineData("brine pump 230 V runs hot", false)]
    [InlineData("the brine pump went dead", false)]
    [InlineData("brine got into the motor", true)]
    [InlineData("brine ran down into the stirrer's motor", true)]
    [InlineData("water pump runs for ten minutes then stops", false)]
    [InlineData("water ran into the pump motor", true)]
    [InlineData("brine leaked on it", true)]
    public void A_brine_pump_that_runs_is_no_brine_that_ran(string text, bool wet) =>
        Assert.Equal(wet, Listener.Understand(text).Symptoms.Any(symptom => symptom is { Id: "got-wet", Present: true }));

    [Theory]
    [InlineData("no start with loud buzz", true)]
    [InlineData("no start, no buzz", false)]
    public void A_buzz_beside_no_start_is_there(string text, bool hums) =>
        Assert.Equal(hums, Listener.Understand(text).Symptoms.Any(symptom => symptom is { Id: "hums-no-start", Present: true }));

    [Fact]
    public void Not_a_peep_is_no_hum()
    {
        var symptoms = Listener.Understand("it just sits there sulking, not a peep").Symptoms;
        Assert.Contains(symptoms, symptom => symptom is { Id: "silent-no-start", Present: true });
        Assert.DoesNotContain(symptoms, symptom => symptom is { Id: "hums-no-start", Present: true });
    }

    [Theory]
    [InlineData("it has been running fine for ten years", false)]
    [InlineData("been used for years without a hitch", false)]
    [InlineData("been on for ten years", false)]
    [InlineData("it has been off for three winters", true)]
    [InlineData("sat in the loft for years", true)]
    [InlineData("the guard has been taped down for years", false)]
    public void Years_in_use_are_no_years_unused(string text, bool unused) =>
        Assert.Equal(unused, Listener.Understand(text).Symptoms.Any(symptom => symptom is { Id: "stood-unused", Present: true }));

    [Theory]
    [InlineData("4 leads 1 to 4, wire it up", false)]
    [InlineData("wire it up", false)]
    [InlineData("I wired it up yesterday", true)]
    [InlineData("wired it myself, wrong it seems", true)]
    public void What_is_to_be_wired_was_not_just_wired(string text, bool rewired) =>
        Assert.Equal(rewired, Listener.Understand(text).Symptoms.Any(symptom => symptom is { Id: "just-rewired", Present: true }));

    [Theory]
    [InlineData("I turned the breaker off", false)]
    [InlineData("switched the breaker off", false)]
    [InlineData("breaker off", false)]
    [InlineData("the breaker is off", false)]
    [InlineData("I switch on and the breaker is off", true)]
    [InlineData("the breaker goes off when I switch it on", true)]
    [InlineData("the breaker keeps going off", true)]
    [InlineData("the breaker went off like a gunshot", true)]
    public void A_breaker_that_is_off_has_not_tripped(string text, bool trips)
    {
        var heard = Listener.Understand(text);
        Assert.Equal(trips, heard.Symptoms.Any(symptom => symptom is { Id: "trips-at-once", Present: true }));
        Assert.DoesNotContain(heard.Facts, fact => fact is Fact.BenchTest);
    }

    [Theory]
    [InlineData("it gets tired after an hour and gives up, then after a coffee it works again", false)]
    [InlineData("it works again", true)]
    [InlineData("it is up and running", true)]
    [InlineData("ran up and runs", false)]
    public void What_works_again_after_a_rest_or_runs_up_is_not_repaired(string text, bool repaired) =>
        Assert.Equal(repaired, Listener.Understand(text).Facts.OfType<Fact.Choice>().Any(choice => choice is { Question: "outcome", Option: "repaired" }));

    [Fact]
    public void A_rotation_to_be_swapped_is_a_motor_to_be_turned_round() =>
        Assert.Equal("reverse", Listener.Understand("need to swap rotation on the stirrer").Goal);

    [Theory]
    [InlineData("is the earth ok?", null)]
    [InlineData("should it be ok?", null)]
    [InlineData("within its marked band", "in-band")]
    public void A_question_back_is_no_answer(string text, string? answer)
    {
        var asked = new OpenQuestion { Id = "test.capacitance", Kind = QuestionKind.Choice, About = "capacitance", Options = [new("in-band", "within its marked band"), new("low", "under its band")] };
        Assert.Equal(answer, Listener.Understand(text, leads: [], asked: asked).Answer?.Choice);
    }

    [Theory]
    [InlineData("is it done?", null)]
    [InlineData("what do you think it is", null)]
    [InlineData("so what is it then", null)]
    [InlineData("I hope it is", null)]
    [InlineData("no idea if it is", false)]
    [InlineData("it is", true)]
    [InlineData("yes I think so", true)]
    [InlineData("done", true)]
    public void What_is_asked_back_confirms_nothing(string text, bool? confirmed) =>
        Assert.Equal(confirmed, Listener.Understand(text, leads: [], asked: new OpenQuestion { Id = "isolated", Kind = QuestionKind.Confirm, About = "confirm" }).Answer?.Confirmed);
}
