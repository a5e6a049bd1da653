using CsCheck;
using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Capacitors;

/// <summary>Usual µF make a print doubtful and never choose a part.</summary>
public sealed class UsualMicrofaradsTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    [Theory]
    [InlineData(0.75, 115, "start", 270, 430)]
    [InlineData(0.75, 230, "start", 65, 430)]
    [InlineData(0.75, 230, "run", 8, 20)]
    [InlineData(0.6, 230, "run", 5, 20)]
    [InlineData(5, 230, "start", 270, 480)]
    public void The_row_of_the_size_or_both_around_it(double horsepower, double volts, string use, double low, double high)
    {
        var usual = Report(new() { Marked = new(40, Use: use), Horsepower = horsepower, MotorVolts = volts, Hertz = 60 }).UsualMicrofarads!;
        Assert.Equal((low, high), (usual.Low!.Value!.Value, usual.High!.Value!.Value));
    }

    [Theory]
    [InlineData(20.0, 230, "run")]
    [InlineData(0.1, 230, "run")]
    [InlineData(0.75, 115, "run")]
    [InlineData(3.0, 115, "start")]
    [InlineData(0.75, 230, "unknown")]
    public void Nothing_is_usual_where_no_row_says(double horsepower, double volts, string use) =>
        Assert.Null(Report(new() { Marked = new(40, Use: use), Horsepower = horsepower, MotorVolts = volts, Hertz = 60 }).UsualMicrofarads);

    [Theory]
    [InlineData(15, false)]
    [InlineData(40, false)]
    [InlineData(41, true)]
    [InlineData(3.9, true)]
    [InlineData(4, false)]
    public void A_print_far_from_it_is_doubted_and_not_called_wrong(double marked, bool doubted)
    {
        var report = Report(new() { Marked = new(marked, Use: "run"), Horsepower = 0.75, MotorVolts = 230, Hertz = 60 });
        Assert.Equal(doubted, report.Notes.Any(note => note.Id == "capacitors.unusual"));
        Assert.Equal("unknown", report.Verdict);
    }

    [Fact]
    public void At_50_hertz_it_goes_by_the_kilowatt()
    {
        var usual = Report(new() { Marked = new(30, Use: "run"), Kilowatts = 1.1, MotorVolts = 230, Hertz = 50 }).UsualMicrofarads!;
        Assert.Equal(27.5, usual.Low!.Value!.Value, 1e-9);
        Assert.Equal(49.5, usual.High!.Value!.Value, 1e-9);
    }

    [Fact]
    public void A_larger_motor_usually_has_more() => Gen.Select(Gen.Double[0.25, 10], Gen.Double[1, 3], Gen.Bool.Select(run => run ? "run" : "start")).Sample((horsepower, times, use) =>
    {
        var (small, large) = (Usual(horsepower, use), Usual(Math.Min(10, horsepower * times), use));
        return small.Low!.Value <= large.Low!.Value;
    });

    private static QuotedRange Usual(double horsepower, string use) =>
        Report(new() { Marked = new(40, Use: use), Horsepower = horsepower, MotorVolts = 230, Hertz = 60 }).UsualMicrofarads!;

    private static CapacitorReport Report(CapacitorInput input) => CapacitorCalculator.Calculate(Knowledge, input).Value!;
}
