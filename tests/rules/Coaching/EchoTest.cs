using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>What was understood is said back in words that a person uses, not in the ids of the contract.</summary>
public sealed class EchoTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);

    [Fact]
    public void Facts_are_said_back_as_people_say_them()
    {
        Assert.Equal("done: unplugged, or locked off and proved dead", Said(new Fact.Confirm { Id = "isolated" }));
        Assert.Equal("done: plug out and in sight", Said(new Fact.Confirm { Id = "isolated" }, Role.Homeowner));
        Assert.Equal("capacitor: off and bridged", Said(new Fact.Choice { Question = "capacitor-bridged", Option = "bridged" }));
        Assert.Equal("looking at the capacitor: bulged, leaking or burst", Said(new Fact.BenchTest { Test = "capacitor-look", Outcome = "swollen" }));
        Assert.Equal("it starts when it is spun", Said(new Fact.Symptom { Id = "starts-if-spun" })); // one flick tells nothing of the other way round
        Assert.Equal("left in the capacitor: 3 V", Said(new Fact.BenchTest { Test = "capacitor-residual", Value = 3, Unit = "volt" }));
        Assert.Equal("joints from 1 to frame: over-range (open)", Said(new Fact.BenchTest { Test = "joint-resistance", Read = ["1", "frame"], Outcome = "open" }));
        Assert.Equal("at the run: it ran up and runs, 241 V, turns the wrong way", Said(new Fact.Running { Outcome = "ran", Volts = 241, Direction = "wrong" }));
        Assert.Equal("plate service factor: 1.15", Said(new Fact.Plate { Field = "serviceFactor", Value = PlateValue.Parse("1.15") }));
        Assert.Equal("supply: 240 V, single-phase, 60 Hz", Said(new Fact.Supply { Volts = 240, Phases = 1, Hertz = 60 }));
        Assert.Equal("danger told of: a shock or a tingle was felt", Said(new Fact.Choice { Question = "danger.shock-felt", Option = "said" }));
        Assert.Equal("still to be said: whether it hums or is silent", Said(new Fact.Choice { Question = "unsettled.no-start", Option = "yes" }));
        Assert.Equal("can't tell: reading between two leads", Said(new Fact.Unknown { Question = "reading.1.2" }));
        Assert.Equal("capacitor: 161 to 193 µF, 250 V, measured 170 µF", Said(new Fact.Capacitor { Present = true, Microfarads = 161, MicrofaradsTo = 193, Volts = 250, MeasuredMicrofarads = 170 }));
    }

    public static TheoryData<string, Fact> Sayings() => new()
    {
        { "1 to 4: 1.7 Ω as shown", new Fact.Reading { From = "1", To = "4", Ohms = 1.7 } },
        { "plate volts: 115/230 V", new Fact.Plate { Field = "volts", Value = PlateValue.Parse("115/230") } },
        { "plate amps: 5.2 A", new Fact.Plate { Field = "amps", Value = PlateValue.Parse("5.2") } },
        { "plate power: 3/4 hp", new Fact.Plate { Field = "horsepower", Value = PlateValue.Parse("3/4") } },
        { "plate power: 0.55 kW", new Fact.Plate { Field = "kilowatts", Value = PlateValue.Parse("0.55") } },
        { "plate speed: 1140 rpm", new Fact.Plate { Field = "rpm", Value = PlateValue.Parse("1140") } },
        { "plate frequency: 60 Hz", new Fact.Plate { Field = "hertz", Value = PlateValue.Parse("60") } },
        { "lead 4", new Fact.Lead { Tag = "4" } },
        { "supply: 400 V, three-phase", new Fact.Supply { Volts = 400, Phases = 3 } },
        { "insulation: 20 MΩ", new Fact.Insulation { Megohms = 20 } },
        { "no capacitor", new Fact.Capacitor { Present = false } },
        { "no start capacitor", new Fact.Capacitor { Present = false, Use = "start" } },
        { "no run capacitor", new Fact.Capacitor { Present = false, Use = "run" } },
        { "at hand: clamp meter", new Fact.Instrument { Id = "clamp-meter" } },
        { "not at hand: clamp meter", new Fact.Instrument { Id = "clamp-meter", Present = false } },
        { "1 + 2 + 3 to frame: over-range (open)", new Fact.Reading { From = "1", To = "frame", Together = ["2", "3"], Open = true } },
        { "red to blue: no more than the probes", new Fact.Reading { From = "red", To = "blue", Short = true } },
        { "1 to 4: it jumps, then goes over-range", new Fact.Reading { From = "1", To = "4", Open = true, Kick = true } },
        { "old motor's plate, volts: 230 V", new Fact.Plate { Field = "volts", Value = PlateValue.Parse("230"), Of = "old" } },
        { "lead 4, marked T5", new Fact.Lead { Tag = "4", Marking = "T5" } },
        { "supply: 50 Hz", new Fact.Supply { Hertz = 50 } },
        { "insulation: 20 MΩ, winding at 31 °C", new Fact.Insulation { Megohms = 20, Celsius = 31 } },
        { "there is a capacitor", new Fact.Capacitor() },
        { "there is a run capacitor", new Fact.Capacitor { Use = "run" } },
        { "start capacitor: 88 µF, measured 61 µF", new Fact.Capacitor { Use = "start", Microfarads = 88, MeasuredMicrofarads = 61 } },
        { "run capacitor: 25 µF", new Fact.Capacitor { Use = "run", Microfarads = 25 } },
        { "capacitor: 440 V", new Fact.Capacitor { Volts = 440 } },
        { "capacitor: 30 µF, 118 V across it, 1.3 A through it", new Fact.Capacitor { Microfarads = 30, AcrossVolts = 118, ThroughAmps = 1.3 } },
        { "capacitor that may take its place: 35 µF, 440 V", new Fact.Capacitor { Microfarads = 35, Volts = 440, Spare = true } },
        { "joined: 1 + 3", new Fact.Joint { Leads = ["1", "3"] } },
        { "joined: 1 + 3, on L1", new Fact.Joint { Leads = ["1", "3"], Conductor = "L1" } },
        { "what you want: turn it round", new Fact.Goal { Id = "reverse" } },
        { "I can't: unplugged, or locked off and proved dead", new Fact.Confirm { Id = "isolated", Confirmed = false } },
        { "not this: it hums and does not start", new Fact.Symptom { Id = "hums-no-start", Present = false } },
        { "drives: the brine pump", new Fact.Application { Text = "the brine pump" } },
        { "length of the line: 30 m", new Fact.Choice { Question = "supply.length-metres", Option = "30" } },
        { "fuse or breaker: 16 A", new Fact.Choice { Question = "supply.protection-amps", Option = "16" } },
        { "from the slip rings: 4 and its like", new Fact.Choice { Question = "ring-leads.1.4", Option = "second" } },
        { "reading while the shaft turns, 1 to 2: it settles at other values as the shaft turns", new Fact.Choice { Question = "turn-shaft.1.2", Option = "jumps" } },
        { "what happened before: the capacitor is new", new Fact.Choice { Question = "history.new-capacitor", Option = "said" } },
        { "test of the ends, flick of a cell from 1 to 3: it hardly moves", new Fact.BenchTest { Test = "battery-flick", Read = ["1", "3"], Outcome = "no-kick" } },
        { "test of the ends, volts from 1 to 4: 13.6 V", new Fact.BenchTest { Test = "series-voltage", Read = ["1", "4"], Value = 13.6, Unit = "volt" } },
        { "probes together: no result", new Fact.BenchTest { Test = "probe-zero" } },
        { "at the run: 4.2 A, 1745 rpm, turns the right way", new Fact.Running { Amps = 4.2, Rpm = 1745, Direction = "right" } },
        { "at the run: nothing at all", new Fact.Running { Outcome = "nothing" } },
        { "can't tell: measuring the capacitor", new Fact.Unknown { Question = "test.capacitance" } },
    };

    [Theory]
    [MemberData(nameof(Sayings))]
    public void Each_kind_of_fact_is_said_back(string said, Fact fact) => Assert.Equal(said, Said(fact));

    [Fact]
    public void Several_leads_are_said_back_at_once()
    {
        string Together(params Fact[] facts) => string.Join(" | ", Echo.Of(facts).Select(one => Knowledge.Sentences.Render(one)));
        Fact[] leads = [new Fact.Lead { Tag = "1" }, new Fact.Lead { Tag = "2" }, new Fact.Lead { Tag = "3", Marking = "T5" }];
        Assert.Contains("1, 2", Together([.. leads, new Fact.Choice { Question = "leads.count", Option = "3" }]), StringComparison.Ordinal);
        Assert.Equal(2, Together([.. leads, new Fact.Choice { Question = "leads.count", Option = "3" }]).Split(" | ").Length);
        Assert.DoesNotContain("1, 2", Together(leads[0], leads[2]), StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("facts", () => Echo.Of((IReadOnlyList<Fact>)null!).ToList());
    }

    [Theory]
    [InlineData(0, "plate: direct current")]
    [InlineData(3, "plate phases: 3")]
    public void No_phases_are_direct_current(int phases, string said) =>
        Assert.Equal(said, Said(new Fact.Plate { Field = "phases", Value = PlateValue.Of(phases) }));

    [Fact]
    public void Whatever_knowledge_can_ask_or_confirm_has_words_of_its_own()
    {
        string[] needed =
        [
            .. Knowledge.Confirmations.Keys.Select(id => $"term.confirmed.{id}"),
            .. Knowledge.Questions.Values.Where(card => card.Kind == "confirm").Select(card => $"term.confirmed.{card.Id}"),
            .. Knowledge.Words.Rules.Keys.Where(id => id.StartsWith("danger/", StringComparison.Ordinal) || id.StartsWith("unsettled/", StringComparison.Ordinal)).Select(id => $"term.{id.Replace('/', '.')}"),
            .. Knowledge.Questions["goal"].Options.Select(goal => $"term.goal.{goal.Id}"),
            .. Knowledge.Questions.Values.Where(card => card.Kind == "choice" && card.About is not ("goal" or "plate")).Select(card => $"term.asked.{card.Id}"),
        ];
        Assert.True(needed.Length > 35, $"{needed.Length}");
        Assert.DoesNotContain(needed, id => !Knowledge.Sentences.Ids.Contains(id, StringComparer.Ordinal));
    }

    [Fact]
    public void What_knowledge_has_no_word_for_is_still_said() =>
        Assert.Equal("at hand: wave meter", Said(new Fact.Instrument { Id = "wave-meter", Present = true }));

    private static string Said(Fact fact, Role role = Role.Technician) => Knowledge.Sentences.Render(Echo.Of(fact), role);
}
