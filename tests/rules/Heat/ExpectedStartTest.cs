using WireCoach.Rules.Cases;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Heat;

public sealed class ExpectedStartTest
{
    [Theory]
    [InlineData("capacitor-start", 1, Region.NorthAmerica, 4, 6)]
    [InlineData("psc", 1, Region.Iec, 2, 4)]
    [InlineData("split-phase", 1, Region.NorthAmerica, 5, 8)]
    [InlineData("shaded-pole", 1, Region.NorthAmerica, 1.2, 2)]
    [InlineData("two-value", 1, Region.NorthAmerica, 4, 6)]
    [InlineData("commutator", 1, Region.NorthAmerica, 5, 15)]
    [InlineData("dc", 0, Region.NorthAmerica, 5, 15)]
    [InlineData("three-phase", 3, Region.NorthAmerica, 5, 8)]
    [InlineData("three-phase", 3, Region.Iec, 3, 8)] // a small IEC motor starts as softly as its own row
    public void Without_a_mark_it_is_what_the_kind_usually_draws(string family, int phases, Region region, double low, double high)
    {
        var said = Of(new StartingMotor { Plate = PlateFields.Empty, Region = region, Volts = 230, Amps = 10, Phases = phases, Family = family })[0];
        Assert.Equal("heat.expect-start-kind", said.Id);
        Assert.Equal([10 * low, 10 * high], said.Quotes.Select(quote => quote.Value!.Value));
    }

    [Theory]
    [InlineData("L", 1.5, 115, 1, 117.4, 130.3)]
    [InlineData("H", 10, 460, 3, 79.1, 89.0)]
    [InlineData("G", 50, 460, 3, 351.4, 394.7)]
    public void A_code_letter_goes_before_what_is_usual(string letter, double horsepower, double volts, int phases, double low, double high)
    {
        var said = Of(new StartingMotor { Plate = Plate(("codeLetter", letter), ("horsepower", $"{horsepower}")), Volts = volts, Amps = 10, Phases = phases })[0];
        Assert.Equal("heat.expect-start-code", said.Id);
        Assert.Equal(low, said.Quotes[0].Value!.Value, 0.1);
        Assert.Equal(high, said.Quotes[1].Value!.Value, 0.1);
    }

    [Fact]
    public void A_letter_without_an_upper_end_gives_none() =>
        Assert.Equal("heat.expect-start-code-from", Of(new StartingMotor { Plate = Plate(("codeLetter", "V"), ("horsepower", "1")), Volts = 115, Amps = 10, Phases = 1 })[0].Id);

    [Fact]
    public void Amps_that_the_plate_marks_go_before_everything()
    {
        var said = Of(new StartingMotor { Plate = Plate(("volts", "115/230"), ("lockedRotorAmps", "60/30"), ("codeLetter", "L"), ("horsepower", "1")), Volts = 230, Amps = 10, Phases = 1 })[0];
        Assert.Equal(("heat.expect-start-marked", 30), (said.Id, said.Quotes[0].Value!.Value));
    }

    [Fact]
    public void Without_amps_and_letter_only_the_time_is_said() =>
        Assert.Equal("heat.expect-start-time", Of(new StartingMotor { Plate = PlateFields.Empty, Volts = 230, Phases = 1 })[0].Id);

    [Theory]
    [InlineData(2, 5, null)]
    [InlineData(3, 3, "heat.starts-in-a-row")]
    [InlineData(3, 12, null)]
    [InlineData(7, 9, "heat.starts-too-many")] // a 10 hp motor of 2 poles takes 6.2 an hour
    [InlineData(7, 12, null)] // the first is more than an hour ago
    public void Starts_are_counted_by_their_times(int starts, int minutesApart, string? said)
    {
        var motor = new StartingMotor { Plate = Plate(("horsepower", "10"), ("rpm", "3500"), ("hertz", "60")), Volts = 230, Amps = 24, Phases = 3 };
        var first = new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
        Assert.Equal(said, StartDuty.Judge(CsvFile.Knowledge, motor, [.. Enumerable.Range(0, starts).Select(start => first.AddMinutes(start * minutesApart))])?.Id);
    }

    [Fact]
    public void A_start_capacitor_stands_twenty_an_hour() =>
        Assert.Contains(Of(new StartingMotor { Plate = PlateFields.Empty, Volts = 115, Phases = 1, Family = "capacitor-start" }),
            said => said.Id == "heat.expect-starts-capacitor" && said.Quotes[0].Value == 20);

    private static IReadOnlyList<Statement> Of(StartingMotor motor)
    {
        var said = ExpectedStart.Of(CsvFile.Knowledge, motor);
        Assert.All(said, statement => Assert.NotEmpty(CsvFile.Knowledge.Sentences.Render(statement)));
        return said;
    }

    private static PlateFields Plate(params (string Field, string Text)[] fields) =>
        fields.Aggregate(PlateFields.Empty, (plate, field) => plate.With(field.Field, PlateValue.Parse(field.Text)));
}
