using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>An answer to the open question becomes facts, or a problem that says which member it takes.</summary>
public sealed class AnswerReaderTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly CaseFile Empty = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), []);

    public static TheoryData<string, string, Question, QuestionAnswer> Refused() => new()
    {
        { "questionId", "answer.other-question", Ask(QuestionKind.Confirm), Give() with { QuestionId = "another" } },
        { "unknown", "answer.must-be-known", Ask(QuestionKind.Choice) with { CanBeUnknown = false }, Give() with { Unknown = true } },
        { "choice", "answer.no-such-option", Ask(QuestionKind.Choice, options: "one two"), Give() with { Choice = "three" } },
        { "choice", "answer.wrong-member", Ask(QuestionKind.Choice, options: "one two"), Give() with { Confirmed = true } },
        { "quantity", "answer.wrong-member", Ask(QuestionKind.Quantity, unit: "ohm"), Give() with { Choice = "one" } },
        { "quantity", "answer.wrong-member", Ask(QuestionKind.Quantity, unit: "ohm"), Give() with { Reading = new() { Open = true } } }, // over-range is no answer to it
        { "reading", "answer.wrong-member", Ask(QuestionKind.Reading), Give() with { Quantity = new(3) } },
        { "confirmed", "answer.wrong-member", Ask(QuestionKind.Confirm), Give() with { Text = "yes" } },
        { "text", "answer.wrong-member", Ask(QuestionKind.Text), Give() with { Confirmed = true } },
        { "quantity.unit", "answer.unit-does-not-fit", Ask(QuestionKind.Quantity, unit: "ohm"), Give() with { Quantity = new(3, "volt") } },
        { "quantity.value", "answer.not-below-zero", Ask(QuestionKind.Quantity, unit: "ohm"), Give() with { Quantity = new(-1) } },
        { "quantity.value", "answer.not-below-zero", Ask(QuestionKind.Quantity, unit: "ohm"), Give() with { Quantity = new(double.NaN) } },
        { "reading", "answer.one-of-reading", Ask(QuestionKind.Reading), Give() with { Reading = new() } },
        { "reading", "answer.one-of-reading", Ask(QuestionKind.Reading), Give() with { Reading = new() { Ohms = 3, Open = true } } },
        { "reading", "answer.one-of-reading", Ask(QuestionKind.Reading), Give() with { Reading = new() { Short = true, Open = true } } },
        { "reading", "answer.one-of-reading", Ask(QuestionKind.Reading), Give() with { Reading = new() { Open = false, Short = false, Kick = false } } },
        { "reading.ohms", "answer.not-below-zero", Ask(QuestionKind.Reading), Give() with { Reading = new() { Ohms = -0.1 } } },
        { "reading.ohms", "answer.not-below-zero", Ask(QuestionKind.Reading), Give() with { Reading = new() { Ohms = 1.1e9 } } },
    };

    [Theory]
    [InlineData(1492, false)]
    [InlineData(36, true)]
    [InlineData(1.6, true)]
    public void Amps_that_no_motor_with_this_plate_draws_are_asked_for_once_more(double amps, bool taken)
    {
        var file = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [new Fact.Plate { Field = "amps", Value = PlateValue.Of(1.9) }]);
        var asked = Ask(QuestionKind.Quantity, unit: "amp") with { About = "run-current" };
        var given = Give() with { Quantity = new(amps) };
        var read = new Coach(Knowledge).Read(file, asked, given);
        Assert.Equal(taken, read.IsGiven);
        Assert.True(taken || Assert.Single(read.Problems).Advice.Id == "answer.amps-beyond-plate");
        Assert.True(new Coach(Knowledge).Read(Empty, asked, given).IsGiven);
    }

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_does_not_answer_it_is_refused_with_the_member_that_does(string field, string advice, Question asked, QuestionAnswer given)
    {
        var problem = Assert.Single(Read(asked, given).Problems);
        Assert.Equal((field.Contains('.', StringComparison.Ordinal) ? "unreadable-quantity" : "invalid-fact", field, advice), (problem.Id, problem.Field, problem.Advice.Id));
        Assert.NotEmpty(Knowledge.Sentences.Render(problem.Advice));
        Assert.All(asked.Options.Where(_ => advice == "answer.no-such-option"), option => Assert.Contains(option.Id, $"{problem.Advice}".Split([' ', ',', ')'])));
    }

    public static TheoryData<string, Fact[], Question, QuestionAnswer> Given() => new()
    {
        { "cannot tell", [new Fact.Unknown { Question = "q", How = FactEntry.Form }], Ask(QuestionKind.Choice), Give() with { Unknown = true } },
        { "cannot do", [new Fact.Confirm { Id = "q", Confirmed = false, How = FactEntry.Form }], Ask(QuestionKind.Confirm) with { CanBeUnknown = false }, Give() with { Unknown = true } },
        { "done", [new Fact.Confirm { Id = "q", How = FactEntry.Form }], Ask(QuestionKind.Confirm), Give() with { Confirmed = true } },
        { "not done", [new Fact.Confirm { Id = "q", Confirmed = false, How = FactEntry.Form }], Ask(QuestionKind.Confirm), Give() with { Confirmed = false } },
        { "words", [], Ask(QuestionKind.Text), Give() with { Text = "a stirrer" } },
        { "a choice", [Choice("q", "one")], Ask(QuestionKind.Choice, options: "one two"), Give() with { Choice = "one" } },
        { "an outcome of a test", [new Fact.BenchTest { Test = "turn-by-hand", Outcome = "free", How = FactEntry.Form }], Ask(QuestionKind.Choice, "turn-by-hand", "test.turn-by-hand", "free stiff"), Give("test.turn-by-hand") with { Choice = "free" } },
        { "a tool", [Tool("battery", true)], Ask(QuestionKind.Choice, "instrument", options: "battery lcr-meter none"), Give() with { Choice = "battery" } },
        { "no tool", [Tool("battery", false), Tool("lcr-meter", false)], Ask(QuestionKind.Choice, "instrument", options: "battery lcr-meter none"), Give() with { Choice = "none" } },
        { "a goal", [new Fact.Goal { Id = "reverse", How = FactEntry.Form }], Ask(QuestionKind.Choice, "goal", options: "reverse"), Give() with { Choice = "reverse" } },
        { "a plate field", [new Fact.Plate { Field = "phases", Value = PlateValue.Parse("3"), How = FactEntry.Form }], Ask(QuestionKind.Choice, "plate", "plate.phases", "1 3"), Give("plate.phases") with { Choice = "3" } },
        { "no capacitor", [new Fact.Capacitor { Present = false, Use = "unknown", How = FactEntry.Form }], Ask(QuestionKind.Choice, "capacitor", "capacitor", "none one two"), Give("capacitor") with { Choice = "none" } },
        { "a capacitor", [new Fact.Capacitor { Present = true, Use = "unknown", How = FactEntry.Form }], Ask(QuestionKind.Choice, "capacitor", "capacitor", "none one two"), Give("capacitor") with { Choice = "one" } },
        { "two capacitors", [new Fact.Capacitor { Present = true, Use = "both", How = FactEntry.Form }], Ask(QuestionKind.Choice, "capacitor", "capacitor", "none one two"), Give("capacitor") with { Choice = "two" } },
        { "whether it is bridged", [Choice("capacitor-bridged", "bridged")], Ask(QuestionKind.Choice, "capacitor", "capacitor-bridged", "bridged left"), Give("capacitor-bridged") with { Choice = "bridged" } },
        { "it ran", [new Fact.Running { Outcome = "ran", How = FactEntry.Form }], Ask(QuestionKind.Choice, "running", options: "ran hummed"), Give() with { Choice = "ran" } },
        { "it hummed", Started("hummed", "hums-no-start"), Ask(QuestionKind.Choice, "running", options: "hummed"), Give() with { Choice = "hummed" } },
        { "it was slow", Started("slow", "runs-slow"), Ask(QuestionKind.Choice, "running", options: "slow"), Give() with { Choice = "slow" } },
        { "it tripped", Started("tripped", "trips-at-once"), Ask(QuestionKind.Choice, "running", options: "tripped"), Give() with { Choice = "tripped" } },
        { "nothing", Started("nothing", "silent-no-start"), Ask(QuestionKind.Choice, "running", options: "nothing"), Give() with { Choice = "nothing" } },
        { "it smoked", Started("smoke", "smoke-or-burnt-smell"), Ask(QuestionKind.Choice, "running", options: "smoke"), Give() with { Choice = "smoke" } },
        { "the direction", [new Fact.Running { Direction = "wrong", How = FactEntry.Form }], Ask(QuestionKind.Choice, "run-direction", options: "right wrong"), Give() with { Choice = "wrong" } },
        { "repaired", [Choice("q", "runs"), new Fact.Running { Outcome = "ran", How = FactEntry.Form }, Choice("outcome", "repaired")], Ask(QuestionKind.Choice, "repair", options: "runs same"), Give() with { Choice = "runs" } },
        { "the same as before, which was nothing told", [Choice("q", "same"), new Fact.Running { Outcome = "ran", How = FactEntry.Form }], Ask(QuestionKind.Choice, "repair", options: "runs same"), Give() with { Choice = "same" } },
        { "volts", [new Fact.Running { Volts = 231, How = FactEntry.Form }], Ask(QuestionKind.Quantity, "running", unit: "volt"), Give() with { Quantity = new(231) } },
        { "no ohms at all", [new Fact.BenchTest { Test = "earth-continuity", Value = 0, Unit = "ohm", How = FactEntry.Form }], Ask(QuestionKind.Quantity, "earth-continuity", unit: "ohm"), Give() with { Quantity = new(0) } },
        { "milliamps", [new Fact.Running { Amps = 5, How = FactEntry.Form }], Ask(QuestionKind.Quantity, "run-current", unit: "amp"), Give() with { Quantity = new(5000, "milliamp") } },
        { "speed", [new Fact.Running { Rpm = 1430, How = FactEntry.Form }], Ask(QuestionKind.Quantity, "run-speed", unit: "rpm"), Give() with { Quantity = new(1430) } },
        { "insulation", [new Fact.Insulation { Megohms = 2, How = FactEntry.Form }], Ask(QuestionKind.Quantity, "insulation", unit: "megohm"), Give() with { Quantity = new(2000, "kilohm") } },
        { "a value of a test", [new Fact.BenchTest { Test = "frame-voltage", Value = 4, Unit = "volt", How = FactEntry.Form }], Ask(QuestionKind.Quantity, "frame-voltage", "test.frame-voltage", unit: "volt"), Give("test.frame-voltage") with { Quantity = new(4) } },
        { "insulation by its test", [new Fact.Insulation { Megohms = 4, How = FactEntry.Form }], Ask(QuestionKind.Quantity, "insulation", "test.insulation", unit: "megohm"), Give("test.insulation") with { Quantity = new(4) } },
        { "over-range", [new Fact.BenchTest { Test = "earth-continuity", Outcome = "open", How = FactEntry.Form }], Ask(QuestionKind.Quantity, "earth-continuity", unit: "ohm") with { CanBeOpen = true }, Give() with { Reading = new() { Open = true } } },
        { "ohms", [new Fact.Reading { From = "1", To = "2", Ohms = 3, How = FactEntry.Form }], Ask(QuestionKind.Reading, "resistance"), Give() with { Reading = new() { Ohms = 3 } } },
        { "open", [new Fact.Reading { From = "1", To = "2", Open = true, How = FactEntry.Form }], Ask(QuestionKind.Reading, "resistance"), Give() with { Reading = new() { Open = true } } },
        { "a beep", [new Fact.Reading { From = "1", To = "2", Short = true, How = FactEntry.Form }], Ask(QuestionKind.Reading, "resistance"), Give() with { Reading = new() { Short = true } } },
        { "a kick", [new Fact.Reading { From = "1", To = "2", Kick = true, Open = true, How = FactEntry.Form }], Ask(QuestionKind.Reading, "resistance"), Give() with { Reading = new() { Kick = true } } },
        { "a kick that ends open", [new Fact.Reading { From = "1", To = "2", Kick = true, Open = true, How = FactEntry.Form }], Ask(QuestionKind.Reading, "resistance"), Give() with { Reading = new() { Kick = true, Open = true } } },
    };

    [Theory]
    [MemberData(nameof(Given))]
    public void An_answer_is_the_facts_that_it_gives(string said, Fact[] facts, Question asked, QuestionAnswer given)
    {
        var read = Read(asked, given).Value!;
        Assert.True(Texts(facts).SequenceEqual(Texts(read)), $"{said}: {string.Join("; ", Texts(read))}");
    }

    [Theory]
    [InlineData("hums-no-start", "hummed", null)]
    [InlineData("trips-at-once", "tripped", null)]
    [InlineData("silent-no-start", "nothing", null)]
    [InlineData("wrong-direction", "ran", "wrong")]
    [InlineData("runs-hot", "ran", null)]
    public void What_is_the_same_as_before_a_repair_does_what_was_complained_of(string symptom, string outcome, string? direction)
    {
        var read = Read(Ask(QuestionKind.Choice, "repair", options: "same"), Give() with { Choice = "same" }, new Fact.Symptom { Id = symptom }).Value!;
        Assert.Equal(new Fact.Running { Outcome = outcome, Direction = direction, How = FactEntry.Form }, read[1]);
    }

    [Fact]
    public void Leads_get_the_numbers_that_were_offered_or_the_names_by_which_they_were_spoken_of()
    {
        string Leads(string choice, params Fact[] before) => string.Join(' ', Read(Ask(QuestionKind.Choice, "lead", options: "numbered own none some"), Give() with { Choice = choice }, before).Value!.OfType<Fact.Lead>().Select(lead => lead.Tag));
        Assert.Equal("1 2 3", Leads("numbered", new Fact.Choice { Question = Fact.Choice.LeadCount, Option = "3" }));
        Assert.Equal("red black", Leads("none", new Fact.Reading { From = "red", To = "black", Ohms = 3 }));
        Assert.Empty(Leads("some", new Fact.Reading { From = "red", To = "black", Ohms = 3 }));
    }

    [Fact]
    public void A_setup_goes_with_what_was_seen_or_measured_on_it()
    {
        var setup = new TestSetup(["1", "4"], [["4", "2"]], ["1", "6"], 12);
        var seen = Assert.IsType<Fact.BenchTest>(Assert.Single(Read(Ask(QuestionKind.Choice, "battery-flick", options: "no-kick") with { Setup = setup }, Give() with { Choice = "no-kick" }).Value!));
        Assert.Equal(("battery-flick", "no-kick", 12), (seen.Test, seen.Outcome, seen.AppliedVolts));
        Assert.Equal((setup.Drive, setup.Tie, setup.Read), (seen.Drive, seen.Tie, seen.Read));
        var measured = Assert.IsType<Fact.BenchTest>(Assert.Single(Read(Ask(QuestionKind.Quantity, "series-voltage", unit: "volt") with { Setup = setup }, Give() with { Quantity = new(18.4) }).Value!));
        Assert.Equal((setup.Drive, setup.Tie, setup.Read, 18.4, "volt", 12), (measured.Drive, measured.Tie, measured.Read, measured.Value, measured.Unit, measured.AppliedVolts));
        Assert.Equal("quantity.value", Assert.Single(Read(Ask(QuestionKind.Quantity, "series-voltage", unit: "volt") with { Setup = setup }, Give() with { Quantity = new(50) }).Problems).Field); // more than twelve volts can make of themselves
    }

    [Fact]
    public void A_joint_is_read_as_a_joint()
    {
        Fact.BenchTest Joint(AnsweredReading shown) => (Fact.BenchTest)Assert.Single(Read(Ask(QuestionKind.Reading, "joint-resistance"), Give() with { Reading = shown }).Value!);
        Assert.Equal((0.2, "ohm", null), (Joint(new() { Ohms = 0.2 }).Value, Joint(new() { Ohms = 0.2 }).Unit, Joint(new() { Ohms = 0.2 }).Outcome));
        Assert.Equal((0, null), (Joint(new() { Short = true }).Value, Joint(new() { Short = true }).Outcome));
        Assert.Equal((null, "open"), (Joint(new() { Open = true }).Value, Joint(new() { Open = true }).Outcome));
        Assert.Equal(["1", "2"], Joint(new() { Ohms = 0.2 }).Read);
    }

    [Fact]
    public void A_reading_taken_again_takes_the_place_of_the_one_that_it_contradicts()
    {
        Fact.Reading Again(Fact.Reading earlier, AnsweredReading shown) => (Fact.Reading)Assert.Single(Read(Ask(QuestionKind.Reading, "resistance"), Give() with { Reading = shown }, earlier).Value!);
        var earlier = new Fact.Reading { FactId = "f1", From = "2", To = "1", Ohms = 3, ChangesWithShaft = true };
        Assert.Equal(("f1", true), (Again(earlier, new() { Ohms = 9 }).Replaces, Again(earlier, new() { Ohms = 9 }).ChangesWithShaft));
        Assert.Equal("f1", Again(earlier, new() { Open = true }).Replaces);
        Assert.Null(Again(earlier, new() { Ohms = 3.05 }).Replaces); // as near as a meter reads twice
        Assert.Null(Again(earlier with { To = "3" }, new() { Ohms = 9 }).Replaces);
        Assert.Null(Again(earlier with { Ohms = null, Open = true }, new() { Open = true }).Replaces);
        Assert.Equal("f1", Again(earlier with { Ohms = null, Open = true }, new() { Short = true }).Replaces);
    }

    [Fact]
    public void An_armature_whose_ohms_jump_is_marked_as_such()
    {
        var asked = Ask(QuestionKind.Choice, "armature", options: "jumps steady");
        var read = Read(asked, Give() with { Choice = "jumps" }, new Fact.Reading { FactId = "f1", From = "1", To = "2", Ohms = 3 }).Value!;
        Assert.Equal(("f1", true, 3), ((Fact.Reading)read[1] is var turned ? (turned.Replaces, turned.ChangesWithShaft, turned.Ohms) : default));
        Assert.Single(Read(asked, Give() with { Choice = "steady" }, new Fact.Reading { FactId = "f1", From = "1", To = "2", Ohms = 3 }).Value!);
        Assert.Single(Read(asked, Give() with { Choice = "jumps" }).Value!);
    }

    [Fact]
    public void The_temperature_of_an_insulation_reading_goes_with_the_reading()
    {
        var read = Assert.Single(Read(Ask(QuestionKind.Quantity, "insulation", "insulation-temperature", unit: "celsius"), Give("insulation-temperature") with { Quantity = new(31) }, new Fact.Insulation { FactId = "f1", Megohms = 200 }).Value!);
        Assert.Equal(new Fact.Insulation { Megohms = 200, Celsius = 31, Replaces = "f1", How = FactEntry.Form }, read);
    }

    private static Question Ask(QuestionKind kind, string about = "about", string id = "q", string options = "", string? unit = null) => new()
    {
        Id = id, Kind = kind, About = about, Unit = unit, Task = "look", Between = ["1", "2"], Text = Statement.Named("text"), Why = Statement.Named("why"),
        Options = [.. options.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(option => new QuestionOption(option, Statement.Named(option)))],
    };

    private static QuestionAnswer Give(string id = "q") => new() { QuestionId = id };

    private static Fact.Choice Choice(string question, string option) => new() { Question = question, Option = option, How = FactEntry.Form };

    private static Fact.Instrument Tool(string id, bool present) => new() { Id = id, Present = present, How = FactEntry.Form };

    private static Fact[] Started(string outcome, string symptom) =>
    [
        new Fact.Running { Outcome = outcome, How = FactEntry.Form }, new Fact.Symptom { Id = "just-rewired", How = FactEntry.Form }, new Fact.Symptom { Id = symptom, How = FactEntry.Form },
    ];

    private static IEnumerable<string> Texts(IEnumerable<Fact> facts) => facts.Select(fact => System.Text.Json.JsonSerializer.Serialize(fact));

    private static Answer<IReadOnlyList<Fact>> Read(Question asked, QuestionAnswer given, params Fact[] known) =>
        new AnswerReader(Knowledge).Read(known.Aggregate(Empty, (file, fact) => file.With(fact)), asked, given);
}
