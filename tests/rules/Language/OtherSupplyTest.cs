using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What a motor is made for, what there is to feed it, and whether the two go together.</summary>
public sealed class OtherSupplyTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("will a 3 phase motor run on single phase", "run-on-one-phase")]
    [InlineData("can I use this three phase motor at home", "run-on-one-phase")]
    [InlineData("how do I run 3 phase off single phase", "run-on-one-phase")]
    [InlineData("can I run it off single phase?", "run-on-one-phase")]
    [InlineData("can I run it on 230", "run-on-other-volts")]
    [InlineData("would it work on 120", "run-on-other-volts")]
    [InlineData("will it run on 208", "run-230-on-208")]
    [InlineData("should I switch it to 240?", "run-on-other-volts")]
    [InlineData("do I need to rewire it for 240?", "run-on-other-volts")]
    [InlineData("how should I rewire it for 240?", null)]
    [InlineData("can I change it to 240?", null)]
    [InlineData("why does my single phase motor hum", null)]
    [InlineData("how do I measure a 3 phase motor at home", null)]
    [InlineData("I want to run it on 230", null)]
    [InlineData("wired star on 230, is that ok?", null)]
    [InlineData("it is connected in delta on 400, is that right", null)]
    public void Whether_it_runs_on_another_supply_is_a_question(string text, string? question) =>
        Assert.Equal(question, Listener.Understand(text).Questions.Select(one => one.Id).FirstOrDefault(id => id.StartsWith("run-", StringComparison.Ordinal)));

    /// <summary>Phases and volts in the name of a motor are its own; what there is where the person is is the supply.</summary>
    [Theory]
    [InlineData("three phase motor 400 V", "400", null, null)]
    [InlineData("i have a 400V 3 phase motor", "400", null, null)]
    [InlineData("pump with a three phase 400 V motor, only single phase 230 here", "400", 230.0, 1)]
    [InlineData("400 V three phase motor, house has 230 single phase", "400", 230.0, 1)]
    [InlineData("can I run a 400 V three phase motor at home on 230 single phase", "400", 230.0, 1)]
    [InlineData("3 phase motor, supply 400 V", null, 400.0, null)]
    [InlineData("I want to run it on 230", null, 230.0, null)]
    [InlineData("shelf conveyor motor, 115/230, will it work on 230?", "115/230", 230.0, null)]
    [InlineData("would it work on 120", null, 120.0, null)]
    public void Volts_of_the_motor_are_told_from_those_of_the_supply(string text, string? plate, double? supply, int? phases)
    {
        var facts = Listener.Understand(text).Facts;
        Assert.Equal(plate, facts.OfType<Fact.Plate>().FirstOrDefault(one => one.Field == "volts")?.Value.Text);
        Assert.Equal((supply, phases), (facts.OfType<Fact.Supply>().FirstOrDefault()?.Volts, facts.OfType<Fact.Supply>().FirstOrDefault()?.Phases));
        Assert.DoesNotContain(facts, one => one is Fact.Choice { Question: Fact.Choice.WiredFor });
    }

    /// <summary>Of several volts none is taken but those between the lines of a three-phase supply.</summary>
    [Theory]
    [InlineData("supply is 208, 240 or 480", null)]
    [InlineData("supply is 208 V, 240 V or 480 V", null)]
    [InlineData("supply 120, 208 or 240 volts", null)]
    [InlineData("the supply is 208 or 240 V", null)]
    [InlineData("the supply is 208 or 240 or 480, I don't know", null)]
    [InlineData("I have 230 V and 400 V in the shop", null)]
    [InlineData("I have 110 and 220 outlets here", null)]
    [InlineData("the supply is 120/240", null)]
    [InlineData("supply 120/240 V single phase", null)]
    [InlineData("we have 230/400 V here", null)]
    [InlineData("supply 230 V and 400 V motor", 230.0)]
    [InlineData("277/480 V supply, three phase", 480.0)]
    [InlineData("120/208 V three phase supply", 208.0)]
    [InlineData("supply is 230 V, the motor plate says 115 or 230 V", 230.0)]
    public void Which_of_several_volts_the_supply_has_is_not_guessed(string text, double? volts) =>
        Assert.Equal(volts, Listener.Understand(text).Facts.OfType<Fact.Supply>().Select(one => one.Volts).SingleOrDefault(one => one is not null));

    /// <summary>A converter makes three phases of one; who only asks whether one would do has one phase.</summary>
    [Theory]
    [InlineData("three phase motor 230/400 V, runs on a frequency converter with 230 V single phase in", "230/400", 230.0, 3, true)]
    [InlineData("on a converter 230 V single phase in", null, 230.0, 3, true)]
    [InlineData("fed from a 230 V single phase inverter", null, 230.0, 3, true)]
    [InlineData("a phase converter fed with 240 V single phase", null, 240.0, 3, true)]
    [InlineData("can I run this three phase motor on a vfd from 240 V single phase", null, 240.0, 1, false)]
    [InlineData("replacement motor 230/400 V 0.75 kW, old one was on a converter 230 V single phase in", "230/400", 230.0, 3, false)]
    [InlineData("400 V three phase motor, house has 230 single phase", "400", 230.0, 1, false)]
    public void What_a_converter_gives_is_the_supply(string text, string? plate, double? supply, int? phases, bool converter)
    {
        var facts = Listener.Understand(text).Facts;
        Assert.Equal(plate, facts.OfType<Fact.Plate>().FirstOrDefault(one => one.Field == "volts")?.Value.Text);
        Assert.Equal((supply, phases), (facts.OfType<Fact.Supply>().FirstOrDefault()?.Volts, facts.OfType<Fact.Supply>().FirstOrDefault()?.Phases));
        Assert.Equal(converter, facts.Any(one => one is Fact.Choice { Question: "fed-by", Option: "converter" }));
        Assert.DoesNotContain(facts, one => one is Fact.Choice { Question: Fact.Choice.WiredFor });
    }

    /// <summary>How the old one was joined says nothing of the new one.</summary>
    [Theory]
    [InlineData("it is wired in delta", "delta")]
    [InlineData("new motor 230/400 V, the old one was wired in delta", null)]
    public void The_links_of_another_motor_are_not_those_of_this(string text, string? links) =>
        Assert.Equal(links, Listener.Understand(text).Facts.OfType<Fact.Choice>().FirstOrDefault(one => one.Question == Fact.Choice.Links)?.Option);

    /// <summary>What was measured, what it had, and what a generator can give are no plate.</summary>
    [Theory]
    [InlineData("between two of the phases at the motor I get 400", "")]
    [InlineData("15 kW motor on a 40 kVA generator", "kilowatts 15")]
    [InlineData("I measured from the grinder's body to the radiator and got 110 volts", "")]
    public void What_is_no_plate_is_not_taken_for_one(string text, string plate) =>
        Assert.Equal(plate, string.Join(", ", Listener.Understand(text).Facts.OfType<Fact.Plate>().Select(one => $"{one.Field} {one.Value.Text}")));

    [Theory]
    [InlineData("I measured from the grinder's body to the radiator and got 110 volts", 110.0)]
    [InlineData("110 volts from the frame to the water pipe", 110.0)]
    [InlineData("found 110 V between frame and the water pipe with it running", 110.0)]
    [InlineData("230 volts at the socket", null)]
    public void Volts_from_the_body_to_a_pipe_are_on_the_frame(string text, double? volts)
    {
        var facts = Listener.Understand(text).Facts;
        Assert.Equal(volts, facts.OfType<Fact.BenchTest>().FirstOrDefault(test => test.Test == "frame-voltage")?.Value);
        Assert.Equal(volts is null, facts.OfType<Fact.Supply>().Any());
        Assert.DoesNotContain(facts, fact => fact is Fact.Symptom { Id: "got-wet" });
    }

    [Theory]
    [InlineData("3 volts with it off")]
    [InlineData("7 V on it")]
    public void Volts_that_no_mains_has_are_asked_after(string text) =>
        Assert.Empty(Listener.Understand(text).Facts.OfType<Fact.Supply>());

    [Theory]
    [InlineData("I get 236 V at the socket but only 198 at the motor when it's pulling", 236.0, 198.0)]
    [InlineData("236 V at the socket, 198 at the pump while it runs", 236.0, 198.0)]
    [InlineData("230 V at the socket, 198 V at the motor", 230.0, 198.0)]
    [InlineData("198 V at the motor, 230 V at the socket", 230.0, 198.0)]
    [InlineData("I read 104 at the motor and 120 at the panel", 120.0, 104.0)]
    [InlineData("120 at the panel, 104 at the motor", 120.0, 104.0)]
    [InlineData("voltage at the panel 240, at the motor 212", 240.0, 212.0)]
    [InlineData("at the motor 212 V, at the outlet 236 V", 236.0, 212.0)]
    public void Volts_at_the_motor_are_not_those_of_the_supply(string text, double supply, double running)
    {
        var facts = Listener.Understand(text).Facts;
        Assert.Equal(supply, facts.OfType<Fact.Supply>().Single(one => one.Volts is not null).Volts);
        Assert.Equal(running, facts.OfType<Fact.Running>().First().Volts);
        Assert.DoesNotContain(facts, fact => fact is Fact.BenchTest { Test: "supply-voltage" });
    }

    [Theory]
    [InlineData("fed from a 20 A breaker, 120 V", null)]
    [InlineData("1 hp, 120 V", 120.0)]
    public void Volts_beside_a_breaker_are_no_plate(string text, double? plate) =>
        Assert.Equal(plate, Listener.Understand(text).Facts.OfType<Fact.Plate>().FirstOrDefault(one => one.Field == "volts")?.Value.Number);

    [Theory]
    [InlineData("120 volt saw that I rewired for 240 last weekend. On 120 it ran fine.", 240.0)]
    [InlineData("it runs on 120", 120.0)]
    public void What_it_ran_on_before_is_not_the_supply(string text, double volts) =>
        Assert.Equal(volts, Listener.Understand(text).Facts.OfType<Fact.Supply>().Last(supply => supply.Volts is not null).Volts);

    [Theory]
    [InlineData("the high leg stayed on the same motor lead when I rolled them", null)]
    [InlineData("we have a high leg here", "three-phase-delta")]
    [InlineData("240 V high leg delta", "three-phase-delta")]
    public void A_leg_that_reads_high_is_no_kind_of_supply(string text, string? system) =>
        Assert.Equal(system, Listener.Understand(text).Facts.OfType<Fact.Supply>().FirstOrDefault()?.System);
}
