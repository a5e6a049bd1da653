using WireCoach.Rules.Heat;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Heat;

public sealed class UnbalanceTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    public static TheoryData<string> Volts() => CsvFile.Ids("unbalance");

    [Theory]
    [MemberData(nameof(Volts))]
    public void Unequal_volts_leave_less_power(string id)
    {
        var row = CsvFile.Vectors("unbalance")[id];
        var report = Unbalance.OfVolts(Knowledge, [row.Number("Va"), row.Number("Vb"), row.Number("Vc")]).Value!;
        Assert.Equal(row.Number("expect_u_pct"), report.Percent.Value!.Value, row.Number("tol"));
        Assert.Equal(row.Number("expect_VUF_pct"), report.NegativeSequencePercent!.Value!.Value, row.Number("tol"));
        Assert.Equal(row.Number("factor"), report.Derating!.Value!.Value, 0.0051);
    }

    [Theory]
    [InlineData(230, 230, 230, "ok")]
    [InlineData(232.3, 230, 227.7, "ok")]
    [InlineData(462, 463, 455, "derate")]
    [InlineData(240, 230, 210, "do-not-run")]
    public void Above_one_percent_it_is_derated_and_above_five_it_does_not_run(double a, double b, double c, string verdict)
    {
        var report = Unbalance.OfVolts(Knowledge, [a, b, c]).Value!;
        Assert.Equal(verdict, report.Verdict);
        Assert.Equal(verdict == "do-not-run", report.Derating is null);
    }

    [Fact]
    public void The_order_of_the_lines_does_not_matter()
    {
        var report = Unbalance.OfVolts(Knowledge, [462, 455, 463]).Value!;
        Assert.Equal(Unbalance.OfVolts(Knowledge, [462, 463, 455]).Value!.Percent.Value, report.Percent.Value);
        Assert.Equal(1.091, report.NegativeSequencePercent!.Value!.Value, 0.001);
    }

    [Theory]
    [InlineData(10, 10, 12, 12.50, "investigate")]
    [InlineData(8.1, 8.4, 8.0, 2.857, "ok")]
    [InlineData(10, 10, 10.9, 5.825, "note")]
    [InlineData(24.2, 24.2, 0, 100, "lost-phase")]
    public void Unequal_amps_are_judged(double a, double b, double c, double percent, string verdict)
    {
        var report = Unbalance.OfAmps(Knowledge, [a, b, c]).Value!;
        Assert.Equal(percent, report.Percent.Value!.Value, 0.005);
        Assert.Equal(verdict, report.Verdict);
    }

    [Fact]
    public void A_high_current_keeps_to_the_line_or_goes_with_the_lead()
    {
        Assert.Equal(("supply", "L1"), Roll([22, 18, 18], [22, 18, 18], [22, 18, 18]));
        Assert.Equal(("supply", "L3"), Roll([18, 18, 22], [18, 18, 22], [18, 17, 22]));
        // The high lead is T1: on L1 first, on L3 when L1 is on T2, on L2 when L1 is on T3.
        Assert.Equal(("motor", "T1"), Roll([22, 18, 18], [18, 18, 22], [18, 22, 18]));
        Assert.Equal(("motor", "T3"), Roll([18, 18, 22], [18, 22, 18], [22, 18, 18]));
        Assert.Equal(("mixed", null), Roll([22, 18, 18], [18, 22, 18], [22, 18, 18]));
        Assert.Equal((null, null), Roll([18, 18, 18.2], [18.1, 18, 18], [18, 18.1, 18]));

        static (string?, string?) Roll(params double[][] roll)
        {
            var report = RollTest.Judge(Knowledge, roll).Value!;
            return (report.Follows, report.On);
        }
    }

    [Theory]
    [InlineData(4.02, 4.02, 4.10, 0.01, 1.318, "ok")]
    [InlineData(1.20, 1.22, 1.31, 0.001, 5.362, "fault")]
    [InlineData(1.20, 1.22, 1.31, null, 5.362, "cannot-tell")]
    [InlineData(30.0, 30.2, 31.0, null, 1.974, "ok")]
    [InlineData(30.0, 30.2, 31.6, null, 3.268, "repeat")]
    [InlineData(30.0, 30.0, 75.0, null, 66.667, "repeat")] // more between two leads than by way of the third: no winding reads like that
    public void Winding_readings_are_judged_only_as_far_as_the_meter_tells(double a, double b, double c, double? resolution, double percent, string verdict)
    {
        var report = WindingReadings.Judge(Knowledge, [a, b, c], resolution).Value!;
        Assert.Equal(percent, report.Percent.Value!.Value, 0.005);
        Assert.Equal(verdict, report.Verdict);
    }

    [Fact]
    public void Readings_become_star_legs_or_delta_phases()
    {
        Assert.All(WindingReadings.Star(Knowledge, [4.02, 4.02, 4.10]).Zip((double[])[2.05, 1.97, 2.05]), pair => Assert.Equal(pair.Second, pair.First.Value!.Value, 0.001));
        Assert.All(WindingReadings.Delta(Knowledge, [2, 2, 2]), phase => Assert.Equal(3, phase.Value!.Value, 0.001));
        // A delta of 1, 2 and 3 Ω, each side beside the other two in series.
        var delta = WindingReadings.Delta(Knowledge, [1 * 5 / 6.0, 2 * 4 / 6.0, 3 * 3 / 6.0]);
        Assert.All(delta.Zip((double[])[1, 2, 3]), pair => Assert.Equal(pair.Second, pair.First.Value!.Value, 1e-9));
    }

    [Fact]
    public void Readings_that_no_winding_has_become_neither_star_nor_delta()
    {
        Assert.Empty(WindingReadings.Star(Knowledge, [30, 30, 75]));
        Assert.Empty(WindingReadings.Delta(Knowledge, [30, 30, 75]));
    }

    [Fact]
    public void Three_readings_are_needed()
    {
        Assert.Single(Unbalance.OfVolts(Knowledge, [230, 230]).Problems);
        Assert.Single(Unbalance.OfVolts(Knowledge, [230, 0, 230]).Problems);
        Assert.Single(Unbalance.OfAmps(Knowledge, [0, 0, 0]).Problems);
        Assert.Single(RollTest.Judge(Knowledge, [[1, 2, 3], [1, 2]]).Problems);
    }
}
