using WireCoach.Rules.Cases;
using WireCoach.Rules.Heat;

namespace WireCoach.Rules.Tests.Heat;

public sealed class FirstRunTest
{
    private static readonly PlateFields BrinePump = Plate(("volts", "115/230"), ("amps", "10.4/5.2"), ("rpm", "1140"), ("hertz", "60"), ("horsepower", "0.75"));

    [Theory]
    [InlineData(241, 4.1, 1180, null, "good")]
    [InlineData(241, 5.6, 1180, null, "stop")] // more than at full load, uncoupled
    [InlineData(241, 15, 1180, null, "stop")]
    [InlineData(241, 0.5, 1190, null, "watch")]
    [InlineData(241, 4.1, 700, null, "stop")]
    [InlineData(241, 4.1, 1120, null, "watch")]
    [InlineData(241, 4.1, 1260, null, "stop")]
    [InlineData(208, 4.1, 1180, null, "watch")]
    [InlineData(190, 4.1, 1180, null, "stop")]
    [InlineData(241, 4.1, 1180, "wrong", "stop")]
    [InlineData(241, 4.1, 1180, "right", "good")]
    public void An_uncoupled_run_is_compared_with_the_plate(double volts, double amps, double rpm, string? direction, string verdict) =>
        Assert.Equal(verdict, Judge(new Fact.Running { Volts = volts, Amps = amps, Rpm = rpm, Direction = direction }).Verdict);

    [Theory]
    [InlineData(1, true)]
    [InlineData(0, false)]
    public void Next_to_no_amps_without_load_are_odd_only_where_the_motor_magnetises_itself(int phases, bool odd) => Assert.Equal(odd, FirstRun.Judge(
        CsvFile.Knowledge, BrinePump.With("phases", PlateValue.Of(phases)), 230, 5.2, new Fact.Running { Volts = 230, Amps = 0.5 }).Statements.Any(said => said.Id == "heat.run-amps-light"));

    [Theory]
    [InlineData(5.2, 1.0, "good")]
    [InlineData(5.8, 1.0, "stop")]
    [InlineData(5.8, 1.25, "watch")]
    [InlineData(6.9, 1.25, "stop")]
    public void Under_load_the_service_factor_counts(double amps, double factor, string verdict) => Assert.Equal(
        verdict, FirstRun.Judge(CsvFile.Knowledge, BrinePump.With("serviceFactor", PlateValue.Of(factor)), 230, 5.2, new Fact.Running { Volts = 230, Amps = amps, Rpm = 1140 }, coupled: true).Verdict);

    [Theory]
    [InlineData(2.7, 2.6, 1.2, false, "unsettled", "heat.run-lines-apart")]
    [InlineData(2.7, 2.6, 1.2, true, "watch", "heat.amps-investigate")]
    [InlineData(2.7, 2.6, 1.8, false, "watch", "heat.amps-investigate")]
    [InlineData(2.7, 2.6, 2.4, false, "watch", "heat.amps-note")]
    [InlineData(2.7, 2.6, 2.6, false, "good", "heat.amps-balanced")]
    [InlineData(2.7, 2.6, 0.1, false, "stop", "heat.amps-lost")]
    public void Lines_far_apart_without_load_leave_it_unsettled(double first, double second, double third, bool coupled, string verdict, string said)
    {
        var judged = FirstRun.Judge(CsvFile.Knowledge, BrinePump, 230, 5.2, new Fact.Running { Volts = 230, Amps = first, Rpm = coupled ? 1140 : 1180 }, coupled, [first, second, third]);
        Assert.Equal(verdict, judged.Verdict);
        Assert.Contains(judged.Statements, statement => statement.Id == said);
    }

    [Theory]
    [InlineData("hummed", "stop")]
    [InlineData("tripped", "stop")]
    [InlineData("nothing", "stop")]
    [InlineData("slow", "stop")]
    [InlineData("ran", "incomplete")]
    public void What_it_did_comes_first(string outcome, string verdict) => Assert.Equal(verdict, Judge(new Fact.Running { Outcome = outcome }).Verdict);

    [Fact]
    public void The_weightiest_is_said_first_and_every_number_is_quoted()
    {
        var judged = Judge(new Fact.Running { Volts = 241, Amps = 15, Rpm = 1180 });
        Assert.Equal("heat.run-amps-double", judged.Statements[0].Id);
        Assert.Equal(100 * 15 / 5.2, judged.Statements[0].Quotes[0].Value!.Value, 1e-9);
        Assert.All(judged.Statements, statement => Assert.NotEmpty(CsvFile.Knowledge.Sentences.Render(statement)));
    }

    [Fact]
    public void Without_the_plate_it_says_that_it_cannot_tell() =>
        Assert.Equal("incomplete", FirstRun.Judge(CsvFile.Knowledge, PlateFields.Empty, null, null, new Fact.Running { Amps = 4 }).Verdict);

    private static FirstRunJudgement Judge(Fact.Running run) => FirstRun.Judge(CsvFile.Knowledge, BrinePump, 230, 5.2, run);

    private static PlateFields Plate(params (string Field, string Text)[] fields) =>
        fields.Aggregate(PlateFields.Empty, (plate, field) => plate.With(field.Field, PlateValue.Parse(field.Text)));
}
