using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using TestResult = WireCoach.Rules.Diagnosis.TestResult;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>What a client says of a test becomes facts, or a problem that says what is wrong.</summary>
public sealed class TestResultTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    [Theory]
    [InlineData("stiff", "stiff")]
    [InlineData("Turns freely and COASTS", "free")]
    public void An_outcome_is_named_by_its_id_or_its_reading(string said, string outcome) =>
        Assert.Equal(outcome, Fact(new() { Test = "turn-by-hand", Outcome = said }).Outcome);

    [Theory]
    [InlineData("none-such", null, null, "results[0].test", "diagnose.unknown-test")]
    [InlineData("turn-by-hand", "wobbly", null, "results[0].outcome", "diagnose.unknown-outcome")]
    [InlineData("insulation", null, -0.1, "results[0].value", "diagnose.value-out-of-range")]
    [InlineData("insulation", null, double.NaN, "results[0].value", "diagnose.value-out-of-range")]
    [InlineData("insulation", null, null, "results[0].value", "diagnose.value-or-outcome")]
    [InlineData("turn-by-hand", null, 4.0, "results[0].value", "diagnose.value-or-outcome")] // nothing is measured there
    public void What_cannot_be_read_is_said_with_its_field(string test, string? outcome, double? value, string field, string advice)
    {
        var problem = Assert.Single(new TestResult { Test = test, Outcome = outcome, Values = value is null ? [] : [("value", value)] }.Facts(Knowledge, "results[0]").Problems);
        Assert.Equal(("invalid-fact", field, advice), (problem.Id, problem.Field, problem.Advice.Id));
        var said = Knowledge.Sentences.Render(problem.Advice);
        Assert.Contains(field, said, StringComparison.Ordinal);
        if (advice is "diagnose.unknown-outcome" or "diagnose.value-or-outcome")
        {
            Assert.Contains(string.Join(", ", Knowledge.Tests[test].Outcomes.Select(one => one.Id)), said, StringComparison.Ordinal);
            Assert.Contains(Knowledge.Tests[test].Name, said, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Nothing_is_told_apart_from_nothing_known() =>
        Assert.Throws<ArgumentNullException>("knowledge", () => new TestResult { Test = "insulation" }.Facts(null!, "results[0]"));

    [Fact]
    public void Zero_is_a_value() => Assert.Equal(0, Fact(new() { Test = "insulation", Values = [("value", 0)] }).Value);

    [Fact]
    public void Several_values_are_several_facts_in_the_unit_of_the_test()
    {
        var facts = Facts(new() { Test = "supply-voltage", Values = [("l1", 231), ("l2", null), ("l3", 229)] });
        Assert.Equal([(231, "volt"), (229, "volt")], facts.Select(fact => (fact.Value!.Value, fact.Unit)));
        Assert.All(facts, fact => Assert.Equal("supply-voltage", fact.Test));
    }

    /// <summary>I ÷ (2π f U): 4 A on 230 V at 50 Hz is 55.4 µF.</summary>
    [Fact]
    public void A_capacitor_is_measured_by_volts_amps_and_hertz()
    {
        var fact = Fact(new() { Test = "capacitance", Values = [("volts", 230), ("amps", 4), ("hertz", 50)] });
        Assert.Equal((55.36, "microfarad"), (Math.Round(fact.Value!.Value, 2), fact.Unit));
    }

    [Fact]
    public void Microfarads_of_a_meter_are_the_value_itself() =>
        Assert.Equal((28.4, "microfarad"), (Fact(new() { Test = "capacitance", Values = [("value", 28.4)] }).Value, Fact(new() { Test = "capacitance", Values = [("value", 28.4)] }).Unit));

    [Theory]
    [InlineData(0.0, 50.0)]
    [InlineData(230.0, 0.0)]
    [InlineData(null, 50.0)]
    [InlineData(230.0, null)]
    public void Without_volts_or_hertz_the_figures_stand_for_themselves(double? volts, double? hertz) =>
        Assert.All(Facts(new() { Test = "capacitance", Values = [("volts", volts), ("amps", 4), ("hertz", hertz)] }), fact => Assert.Contains(fact.Value, new[] { volts, 4, hertz }));

    [Theory]
    [InlineData("run 2.1, start 7.4", "normal")]
    [InlineData("run 2.1, start OL", "start-open")]
    [InlineData("run OL, start 7.4", "run-open")]
    [InlineData("run OL, start OL", "all-open")]
    [InlineData("run OL", "run-open")]
    [InlineData("start OL", "start-open")]
    [InlineData("run 2.1, start 7.4, frame 0.4", "to-frame")]
    [InlineData("run OL, start OL, frame 0", "to-frame")]
    [InlineData("run 2.1, start 7.4, frame OL", "normal")]
    [InlineData("frame OL", "normal")]
    [InlineData("run 2.1, lid 3", "normal")]
    [InlineData("u OL, v OL, w OL", "all-open")]
    [InlineData("u 2.1, v OL, w 2.1", "phase-open")]
    public void Ohms_of_windings_by_name_are_one_outcome(string values, string outcome)
    {
        var fact = Fact(new() { Test = "resistance", Values = [.. values.Split(", ").Select(one => one.Split(' ')).Select(one => (one[0], Ohms(one[1])))] });
        Assert.Equal((outcome, (double?)null), (fact.Outcome, fact.Value));
    }

    [Fact]
    public void Ohms_of_three_alike_windings_are_values() =>
        Assert.Equal([2.1, 2.2, 2.3], Facts(new() { Test = "resistance", Values = [("u", 2.1), ("v", 2.2), ("w", 2.3)] }).Select(fact => fact.Value!.Value));

    private static double? Ohms(string text) => text == "OL" ? null : double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static Fact.BenchTest Fact(TestResult result) => Assert.Single(Facts(result));

    private static List<Fact.BenchTest> Facts(TestResult result)
    {
        Answer<IReadOnlyList<Fact>> answer = result.Facts(Knowledge, "results[0]");
        Assert.True(answer.IsGiven);
        return [.. answer.Value.Cast<Fact.BenchTest>()];
    }
}
