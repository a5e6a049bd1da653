using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>Which facts are evidence of what is wrong.</summary>
public sealed class SignReaderTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly SignReader Reader = new(new CauseModel(Knowledge));

    [Theory]
    [InlineData("hummed", null, "hums-no-start")]
    [InlineData("tripped", null, "trips-at-once")]
    [InlineData("nothing", null, "silent-no-start")]
    [InlineData("slow", null, "runs-slow")]
    [InlineData("ran", "wrong", "wrong-direction")]
    [InlineData("ran", "right", null)]
    [InlineData("ran", null, null)]
    [InlineData(null, "wrong", "wrong-direction")]
    public void How_it_ran_is_a_symptom(string? outcome, string? direction, string? symptom) =>
        Assert.Equal(symptom is null ? [] : [symptom], Read(new Fact.Running { Outcome = outcome, Direction = direction }).OfType<Sign.Noticed>().Select(sign => sign.Id));

    [Fact]
    public void Symptoms_come_in_order_with_what_was_left_unsaid_beside_them()
    {
        var signs = Read(Seen("trips-at-once"), Seen("runs-hot", present: false), Seen("hums-no-start"), Seen("made-up"));
        Assert.Equal(["hums-no-start", "runs-hot", "trips-at-once"], signs.OfType<Sign.Noticed>().Select(sign => sign.Id));
        Assert.Equal([true, false, true], signs.OfType<Sign.Noticed>().Select(sign => sign.Present));
        Assert.All(signs.OfType<Sign.Noticed>(), sign => Assert.Equal(sign.Id, Knowledge.Symptoms.Values.ElementAt(sign.Symptom).Id));
        var untold = Assert.Single(signs.OfType<Sign.Untold>()).Symptoms.Select(at => Knowledge.Symptoms.Values.ElementAt(at).Id);
        Assert.Equal(Knowledge.Symptoms.Keys.Except(["trips-at-once", "runs-hot", "hums-no-start"]), untold);
        Assert.Empty(Read(Seen("runs-hot", present: false)).OfType<Sign.Untold>()); // whoever only denies has not told what it does
    }

    [Fact]
    public void What_may_have_been_told_is_neither_told_nor_left_unsaid()
    {
        var signs = Read(Seen("hums-no-start"), Doubted("runs-hot"), Doubted("trips-at-once"), Seen("trips-at-once", present: false), Doubted("made-up"));
        Assert.Equal(["runs-hot"], signs.OfType<Sign.Doubted>().Select(sign => Knowledge.Symptoms.Values.ElementAt(sign.Symptom).Id));
        Assert.Equal(["hums-no-start", "trips-at-once"], signs.OfType<Sign.Noticed>().Select(sign => sign.Id));
        Assert.DoesNotContain(signs.OfType<Sign.Doubted>().Single().Symptom, Assert.Single(signs.OfType<Sign.Untold>()).Symptoms);
        Assert.Empty(Read(Doubted("runs-hot")).OfType<Sign.Untold>());
    }

    public static TheoryData<string, string?, Fact[]> Shown() => new()
    {
        { "insulation", "low", [new Fact.Insulation { Megohms = 0.4 }] },
        { "insulation", "good", [new Fact.Insulation { Megohms = 0.4 }, new Fact.Insulation { Megohms = 90 }] },
        { "capacitance", "weak", [new Fact.Capacitor { Microfarads = 30, MeasuredMicrofarads = 22 }] },
        { "run-current", "far-above", [Plate("amps", 5), new Fact.Running { Amps = 9 }] },
        { "run-current", "far-above", [Plate("amps", 5), new Fact.Running { Amps = 9, Outcome = "ran" }] },
        { "run-current", null, [Plate("amps", 5), new Fact.Running { Amps = 9, Outcome = "hummed" }] }, // the amps of a start
        { "run-speed", "slow", [Plate("rpm", 1440), new Fact.Running { Rpm = 1300 }] },
        { "supply-voltage", "low", [Plate("volts", 230), new Fact.Running { Volts = 200 }] },
        { "supply-voltage", "low", [Plate("volts", 230), new Fact.Supply { Volts = 200 }] }, // as it was told
        { "supply-voltage", "right", [Plate("volts", 230), new Fact.Supply { Volts = 200 }, Value("supply-voltage", 231)] }, // what was read counts before it
        { "earth-continuity", "good", [new Fact.Reading { From = "earth", To = "frame", Ohms = 0.2 }] },
        { "plate", "low-on-high", [Plate("volts", 115), new Fact.Supply { Volts = 230 }] },
        { "plate", "fits", [Plate("volts", 115), new Fact.Supply { Volts = 230 }, Outcome("plate", "fits")] },
        { "run-direction", "wrong", [Seen("wrong-direction")] },
        { "run-direction", null, [Seen("wrong-direction", present: false)] },
        { "resistance", "to-frame", [new Fact.Reading { From = "1", To = "frame", Ohms = 3 }] },
        { "resistance", "to-frame", [new Fact.Reading { From = "frame", To = "1", Short = true }] },
        { "resistance", null, [new Fact.Reading { From = "1", To = "frame", Open = true }] },
        { "resistance", null, [new Fact.Reading { From = "1", To = "frame", Kick = true }] }, // the capacity of the winding, not a path
        { "resistance", null, [new Fact.Reading { From = "earth", To = "frame", Ohms = 0.2 }] }, // the earth, not a winding
        { "resistance", null, [new Fact.Reading { From = "frame", To = "earth", Ohms = 0.2 }] },
        { "resistance", null, [new Fact.Reading { From = "1", To = "2", Ohms = 3 }] },
        { "resistance", "run-open", [Outcome("resistance", "run-open"), new Fact.Reading { From = "1", To = "frame", Ohms = 3 }] }, // what was told first stands
        { "resistance", "normal", [Value("resistance", 2), Value("resistance", 2), Value("resistance", 2)] },
        { "resistance", "start-open", [Outcome("resistance", "all-open"), Family("split-phase"), new Fact.Reading { From = "T1", To = "T4", Ohms = 2.4 }, new Fact.Reading { From = "T5", To = "T8", Open = true }] }, // the marks tell which
        { "resistance", "normal", [Outcome("resistance", "normal"), Family("split-phase"), new Fact.Reading { From = "T1", To = "T4", Ohms = 2.4 }, new Fact.Reading { From = "T5", To = "T8", Open = true }] }, // said in words
        { "turn-by-hand", "stiff", [Outcome("turn-by-hand", "free"), Outcome("turn-by-hand", "stiff")] },
        { "turn-by-hand", "free", [Outcome("turn-by-hand", "free"), Outcome("turn-by-hand", "wobbly")] }, // no outcome of that test
        { "turn-by-hand", null, [Outcome("brushes", "worn")] },
        { "insulation", "good", [Value("insulation", 90), Outcome("insulation", "low"), Value("insulation", 90)] },
        { "insulation", "low", [Value("insulation", 90), Outcome("insulation", "low")] },
        { "insulation", "low", [Outcome("insulation", "good"), new Fact.Insulation { Megohms = 0.4 }] },
    };

    [Theory]
    [MemberData(nameof(Shown))]
    public void Of_a_test_the_latest_that_tells_something_counts(string test, string? outcome, Fact[] facts)
    {
        var shown = Read(facts).OfType<Sign.Shown>().SingleOrDefault(sign => sign.Id == test);
        Assert.Equal(outcome, shown?.OutcomeId);
        if (shown is not null)
        {
            var guide = Knowledge.Tests.Values.ElementAt(shown.Test);
            Assert.Equal((test, outcome), (guide.Id, guide.Outcomes[shown.Outcome].Id));
        }
    }

    [Fact]
    public void A_value_is_not_judged_while_nothing_says_what_it_should_be()
    {
        Assert.Equal(["run-speed"], Unjudged(Value("run-speed", 1300)));
        Assert.Empty(Unjudged(Value("run-speed", 1300), Plate("rpm", 1440)));
        Assert.Empty(Unjudged(new Fact.BenchTest { Test = "run-speed", Outcome = "mumbled" })); // nothing was measured
        Assert.Empty(Unjudged(Value("turn-by-hand", 3)));
        Assert.Equal(["resistance", "run-current"], Unjudged(Value("run-current", 3), Value("resistance", 3)));
    }

    private static IReadOnlyList<Sign> Read(params Fact[] facts) => Reader.Read(File(facts));

    private static IReadOnlyList<string> Unjudged(params Fact[] facts) => Reader.Unjudged(File(facts));

    private static CaseFile File(Fact[] facts) => CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts);

    private static Fact.Choice Doubted(string id) => new() { Question = Fact.Choice.Doubted + id, Option = "yes" };

    private static Fact.Symptom Seen(string id, bool present = true) => new() { Id = id, Present = present };

    private static Fact.BenchTest Value(string test, double value) => new() { Test = test, Value = value };

    private static Fact.BenchTest Outcome(string test, string outcome) => new() { Test = test, Outcome = outcome };

    private static Fact.Choice Family(string id) => new() { Question = "family", Option = id };

    private static Fact.Plate Plate(string field, double value) => new() { Field = field, Value = PlateValue.Of(value) };
}
