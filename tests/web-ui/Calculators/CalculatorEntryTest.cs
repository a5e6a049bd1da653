using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.WebUi.Tests.Calculators;

/// <summary>What is written into a calculator becomes a body of the contract, and a problem finds its way back to the field.</summary>
public sealed class CalculatorEntryTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);

    [Theory]
    [InlineData("supply", "volts", "230", """{"volts":230}""")]
    [InlineData("supply", "volts", " 230 V ", """{"volts":230}""")]
    [InlineData("supply", "lengthMetres", "12,5", """{"lengthMetres":12.5}""")]
    [InlineData("supply", "horsepower", "1 1/2", """{"horsepower":"1 1/2"}""")]
    [InlineData("supply", "phases", "3", """{"phases":3}""")]
    [InlineData("supply", "cordConnected", "yes", """{"cordConnected":true}""")]
    [InlineData("supply", "otherMotorAmps", "14, 8,5", """{"otherMotorAmps":[14,8.5]}""")]
    [InlineData("capacitor", "measured.amps", "4.2", """{"measured":{"amps":4.2}}""")]
    [InlineData("capacitor", "candidates[1].volts", "370", """{"candidates":[{"volts":370}]}""")]
    [InlineData("insulation", "readings[2].megohms", "50", """{"readings":[{"megohms":50,"atMinute":10}]}""")]
    [InlineData("unbalance", "roll[1][0]", "22", """{"roll":[[22]]}""")]
    public void A_field_becomes_a_member(string calculator, string field, string text, string body)
    {
        var entry = Entry(calculator, (field, text));
        Assert.Empty(entry.Problems);
        Assert.Equal(body, entry.Body.ToJsonString());
    }

    [Theory]
    [InlineData("supply", "volts", "230 bar")]
    [InlineData("supply", "volts", "1e999")]
    [InlineData("supply", "protection", "string")]
    [InlineData("supply", "cordConnected", "maybe")]
    [InlineData("supply", "otherMotorAmps", "14 many")]
    public void What_cannot_be_read_is_said_at_its_field_and_left_out(string calculator, string field, string text)
    {
        var entry = Entry(calculator, (field, text));
        var problem = Assert.Single(entry.Problems);
        Assert.Equal(field, entry.FieldOf(problem)?.Name);
        Assert.Contains(text, Knowledge.Sentences.Render(problem.Advice), StringComparison.Ordinal);
        Assert.Empty(entry.Body);
    }

    [Fact]
    public void A_problem_with_a_row_that_closed_up_stands_at_the_field_that_filled_it()
    {
        var entry = Entry("insulation", ("ratedVolts", "230"), ("readings[2].megohms", "50"));
        Assert.Equal("readings[2].megohms", entry.FieldOf(new Problem("invalid-fact", "readings[0].megohms", Statement.Named("x")))?.Name);
    }

    [Fact]
    public void One_temperature_goes_with_every_reading_that_was_taken()
    {
        var entry = Entry("insulation", ("readings[0].megohms", "20"), ("readings[0].celsius", "25"), ("readings[2].megohms", "50"));
        Assert.Equal("""{"readings":[{"megohms":20,"atMinute":1,"celsius":25},{"celsius":25,"megohms":50,"atMinute":10}]}""", entry.Body.ToJsonString());
    }

    [Fact]
    public void A_case_fills_in_what_it_knows()
    {
        var file = CaseFile.From(new(Role.Technician, Region.NorthAmerica),
        [
            new Fact.Plate { Field = "volts", Value = PlateValue.Of(115, 230) },
            new Fact.Plate { Field = "amps", Value = PlateValue.Of(13.8, 6.9) },
            new Fact.Plate { Field = "horsepower", Value = PlateValue.Of(0.75) },
            new Fact.Supply { Volts = 240, Phases = 1, Hertz = 60 },
            new Fact.Insulation { Megohms = 40, Celsius = 20, TestVolts = 500 },
        ]);
        Assert.Equal(
            "calculators/supply?region=na&phases=1&volts=240&horsepower=0.75&plateAmps=6.9&plateVolts=230&hertz=60",
            CalculatorLink.For(Knowledge.Calculators["supply"], file, []));
        Assert.EndsWith("earlierMegohms%5B0%5D=12&earlierMegohms%5B1%5D=9.5&region=na", CalculatorLink.For(Knowledge.Calculators["insulation"], file, [12, 9.5]), StringComparison.Ordinal);
        Assert.All(Knowledge.Calculators.Values, form => Assert.NotEmpty(CalculatorLink.For(form, file, [])));
    }

    [Fact]
    public void A_calculator_is_offered_beside_questions_that_are_asked() =>
        Assert.All(Knowledge.Calculators.Values.SelectMany(form => form.Questions), question => Assert.Contains(question, Knowledge.Questions.Keys));

    [Fact]
    public void An_example_fills_fields_of_its_form() => Assert.All(Knowledge.Calculators.Values, form =>
        Assert.All(form.Sample.Keys, name => Assert.Contains(form.Fields, field => field.Name == name)));

    [Fact]
    public void What_cannot_be_read_is_told_beside_its_own_field_although_the_rows_close_up()
    {
        var entry = Entry("unbalance", ("volts[0]", "462"), ("volts[1]", "4x0"), ("volts[2]", "455"));
        Assert.Equal("volts[1]", entry.FieldOf(Assert.Single(entry.Problems))?.Name);
    }

    private static CalculatorEntry Entry(string calculator, params (string Field, string Text)[] given) =>
        new(Knowledge.Calculators[calculator], given.ToDictionary(one => one.Field, one => one.Text.Trim(), StringComparer.Ordinal));
}
