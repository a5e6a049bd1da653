using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>Tests of the ends that no motor can give lead on: to doing one of them again, or taking it back.</summary>
public sealed class EndsContradictedTest
{
    private static readonly Coach Coach = new(Trade.Knowledge);

    [Theory]
    [InlineData(18, false)]
    [InlineData(12, true)]
    public void Who_read_what_cannot_be_is_asked_for_the_last_test_again(double volts, bool contradicted)
    {
        var assessed = Assess([.. Facts(), Test("5", "2", 6), Test("4", "1", volts)]);
        Assert.Equal(contradicted, assessed.Say.Any(said => said.Id == "ends.one-does-not-fit"));
        Assert.Equal(contradicted, assessed.Plan is null);
        Assert.Equal(contradicted, assessed.Next is { About: "series-voltage", Setup.Read: ["3", "4"], Why.Id: "ends.why-again" });
    }

    [Fact]
    public void Of_a_test_done_again_the_last_reading_counts() =>
        Assert.Equal(Assess([.. Facts(), Test("5", "2", 6), Test("4", "1", 18)]).Plan!.Steps.Count, Assess([.. Facts(), Test("5", "2", 6), Test("4", "1", 12), Test("4", "1", 18)]).Plan!.Steps.Count);

    [Fact]
    public void What_comes_out_the_same_puts_the_other_test_in_doubt() =>
        Assert.True(Assess([.. Facts(), Test("5", "2", 6), Test("4", "1", 12), Test("4", "1", 12)]).Next is { Setup.Read: ["3", "5"], Why.Id: "ends.why-again" });

    [Fact]
    public void Where_all_come_out_the_same_it_says_how_to_take_one_back()
    {
        var assessed = Assess([.. Facts(), Test("5", "2", 6), Test("5", "2", 6), Test("4", "1", 12), Test("4", "1", 12)]);
        Assert.Contains(assessed.Say, said => said.Id == "ends.no-way-fits");
        Assert.Contains(assessed.Say, said => said.Id == "coach.take-back");
        Assert.Null(assessed.Plan);
    }

    [Fact]
    public void Who_may_not_do_the_test_is_not_asked_for_it_again() =>
        Assert.NotEqual("series-voltage", Assess([.. Facts(), Test("5", "2", 6), Test("4", "1", 12)], Role.Homeowner).Next?.About);

    [Fact]
    public void What_was_taken_back_is_asked_again() =>
        Assert.StartsWith("ends.series-voltage.", Assess([.. Facts(), Test("5", "2", 6)]).Next?.Id, StringComparison.Ordinal);

    private static Assessment Assess(IReadOnlyList<Fact> facts, Role role = Role.Technician) => Coach.Assess(CaseFile.From(new CaseOpening(role, Region.Iec), facts));

    private static IReadOnlyList<Fact> Facts() =>
    [
        .. "123456".Select(tag => new Fact.Lead { Tag = tag.ToString() }),
        Plate("phases", 3), Plate("volts", 230, 400), Plate("amps", 8.7, 5), Plate("rpm", 1430), Plate("kilowatts", 2.2), Plate("hertz", 50),
        new Fact.Supply { Volts = 400, Phases = 3, Hertz = 50 },
        new Fact.Goal { Id = "connect" },
        new Fact.Confirm { Id = "isolated" },
        new Fact.BenchTest { Test = "probe-zero", Value = 0.2, Unit = "ohm" },
        new Fact.Reading { From = "1", To = Fact.Reading.Frame, Together = ["2", "3", "4", "5", "6"], Open = true },
        .. Enumerable.Range(0, 2).SelectMany(_ => (Fact[])[Ohms("1", "4"), Ohms("2", "5"), Ohms("3", "6")]),
        .. new[] { ("1", "2"), ("1", "3"), ("2", "3") }.Select(pair => new Fact.Reading { From = pair.Item1, To = pair.Item2, Open = true }),
        new Fact.Instrument { Id = "low-voltage-ac", Volts = 12 },
    ];

    private static Fact.Plate Plate(string field, params double[] values) => new() { Field = field, Value = PlateValue.Of(values) };

    private static Fact.Reading Ohms(string from, string to) => new() { From = from, To = to, Ohms = 9.4 };

    private static Fact.BenchTest Test(string far, string tied, double volts) =>
        new() { Test = "series-voltage", Drive = ["3", "6"], Tie = [["6", tied]], Read = ["3", far], Value = volts, Unit = "volt", AppliedVolts = 12 };
}
