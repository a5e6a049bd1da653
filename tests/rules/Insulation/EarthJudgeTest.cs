using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Insulation;

namespace WireCoach.Rules.Tests.Insulation;

public sealed class EarthJudgeTest
{
    public static TheoryData<string> Cords() => CsvFile.Ids("earth");

    [Theory]
    [MemberData(nameof(Cords))]
    public void A_longer_cord_may_have_a_little_more(string id)
    {
        var row = CsvFile.Vectors("earth")[id];
        var judged = EarthJudge.Judge(CsvFile.Knowledge, row.Number("R"), Region.Iec, row.Number("cord_m")).Value!;
        Assert.Equal(row["expect"].Split(' ')[0], judged.Verdict);
        if (row["expect"].Split('(') is [_, var limit])
        {
            Assert.Equal(double.Parse(limit.TrimEnd(')'), CultureInfo.InvariantCulture), judged.LimitOhms.Value!.Value, 1e-9);
        }
    }

    [Theory]
    [InlineData(0.5, "pass")]
    [InlineData(0.51, "marginal")]
    [InlineData(1.0, "marginal")]
    [InlineData(1.01, "fail")]
    public void In_north_america_half_an_ohm_passes_and_one_stops(double ohms, string verdict) =>
        Assert.Equal(verdict, EarthJudge.Judge(CsvFile.Knowledge, ohms, Region.NorthAmerica).Value!.Verdict);

    [Theory]
    [InlineData(5, 0.3)]
    [InlineData(5.01, 0.4)]
    [InlineData(12.5, 0.4)]
    [InlineData(100, 1.0)]
    public void The_limit_grows_in_steps_up_to_one_ohm(double metres, double ohms) =>
        Assert.Equal(ohms, EarthJudge.Judge(CsvFile.Knowledge, 0, Region.Iec, metres).Value!.LimitOhms.Value!.Value, 1e-9);

    [Fact]
    public void Negative_ohms_are_refused() => Assert.Single(EarthJudge.Judge(CsvFile.Knowledge, -0.1, Region.Iec).Problems);
}
