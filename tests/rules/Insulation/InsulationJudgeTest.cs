using WireCoach.Rules.Cases;
using WireCoach.Rules.Insulation;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Insulation;

public sealed class InsulationJudgeTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    /// <summary>What is beyond a tester's range is more than the end of it, so that end fails no winding.</summary>
    [Theory]
    [InlineData(0.5, 20.0, "no-proof")]
    [InlineData(20, 20.0, "pass")]
    [InlineData(4, null, "no-proof")]
    [InlineData(200, null, "pass")]
    public void A_range_that_ends_too_low_proves_neither(double megohms, double? celsius, string verdict)
    {
        var report = InsulationJudge.Judge(Knowledge, new InsulationInput
        {
            RatedVolts = 230,
            Readings = [new InsulationReading(megohms, 1, celsius, 500, OverRange: true)],
        }).Value!;
        Assert.Equal(verdict, report.Verdict);
        Assert.Equal(verdict == "no-proof" ? "insulation.range-too-small" : report.Why.Id, report.Why.Id);
    }

    /// <summary>A reading that is taken into a case but not judged would count as measured and fail nothing.</summary>
    [Theory]
    [InlineData("least")]
    [InlineData("most")]
    public void What_may_be_entered_of_a_reading_can_be_judged(string bound)
    {
        double Of(string input) => Knowledge.Rules[input][bound];
        Assert.True(InsulationJudge.Judge(Knowledge, new Fact.Insulation { Megohms = Of("input-megohms"), AtMinute = Of("input-minutes"), Celsius = Of("input-insulation-celsius"), TestVolts = Of("input-test-volts") }, 230).IsGiven);
    }

    [Theory]
    [InlineData(20, 20, "thermoplastic", 5.00, 0.005)]
    [InlineData(8, 60, "thermoplastic", 32.0, 0.01)]
    [InlineData(8, 60, "thermoset", 18.013, 0.01)]
    [InlineData(8, 60, "unknown", 18.013, 0.01)]
    [InlineData(20, 20, "unknown", 5.00, 0.005)]
    [InlineData(38, 21, "unknown", 10.18, 0.01)]
    public void A_reading_is_brought_to_forty_degrees(double megohms, double celsius, string system, double corrected, double tolerance) =>
        Assert.Equal(corrected, InsulationCorrection.Corrected(Knowledge, megohms, celsius, system)!.Value!.Value, tolerance);

    [Theory]
    [InlineData(10, 0.1250, 0.6560)]
    [InlineData(20, 0.2500, 0.7622)]
    [InlineData(25, 0.3536, 0.8186)]
    [InlineData(30, 0.5000, 0.8770)]
    [InlineData(40, 1.0000, 1.0000)]
    [InlineData(50, 2.0000, 1.5195)]
    [InlineData(60, 4.0000, 2.2517)]
    [InlineData(70, 8.0000, 3.2609)]
    public void The_correction_factors_are_those_of_the_table(double celsius, double thermoplastic, double thermoset)
    {
        Assert.Equal(thermoplastic, InsulationCorrection.Corrected(Knowledge, 1, celsius, "thermoplastic")!.Value!.Value, 0.00006);
        Assert.Equal(thermoset, InsulationCorrection.Corrected(Knowledge, 1, celsius, "thermoset")!.Value!.Value, 0.00006);
    }

    [Theory]
    [InlineData("old", 460, 1.46)]
    [InlineData("field", 230, 1.23)]
    [InlineData("random-wound", 230, 5)]
    [InlineData("form-wound", 480, 5)]
    [InlineData("form-wound", 4160, 100)]
    [InlineData("armature", 240, 5)]
    public void Each_kind_of_winding_has_its_least(string kind, double volts, double megohms) =>
        Assert.Equal(megohms, Judge(volts, kind, new InsulationReading(50, 1, 25, 500)).MinimumMegohms.Value!.Value, 0.0005);

    [Fact]
    public void An_armature_was_asked_for_more_before_2013() =>
        Assert.Equal(100, InsulationJudge.Judge(Knowledge, new InsulationInput { RatedVolts = 240, Kind = "armature", Edition = 2000, Readings = [new(50)] }).Value!.MinimumMegohms.Value);

    [Theory]
    [InlineData(8, 60.0, "pass")]
    [InlineData(20, 20.0, "pass")]
    [InlineData(19.9, 20.0, "marginal")]
    [InlineData(3.9, 20.0, "fail")] // 0.98 MΩ at 40 °C
    [InlineData(0.9, 80.0, "fail")] // as read, whatever the correction says
    [InlineData(21, null, "pass")]
    [InlineData(20, null, "marginal")]
    [InlineData(5, null, "marginal")]
    [InlineData(4.9, null, "fail")]
    [InlineData(500, 5.0, "retest")]
    [InlineData(500, 90.0, "retest")]
    [InlineData(0.5, 5.0, "fail")]
    public void A_small_motor_is_judged_at_forty_degrees_or_with_caution(double megohms, double? celsius, string verdict) =>
        Assert.Equal(verdict, Judge(230, "random-wound", new InsulationReading(megohms, 1, celsius, 500)).Verdict);

    [Theory]
    [InlineData(3, "fail")]
    [InlineData(40, "no-proof")]
    public void A_multimeter_proves_nothing_but_a_bad_sign(double megohms, string verdict) =>
        Assert.Equal(verdict, Judge(230, "random-wound", new InsulationReading(megohms, 1, 25, 9)).Verdict);

    [Fact]
    public void Ten_minutes_over_one_is_judged_on_form_wound_windings_only()
    {
        var good = Judge(4160, "form-wound", "F", new(200, 1, 40, 500), new(500, 10, 40, 500));
        Assert.Equal((2.5, "pass"), (good.PolarizationIndex!.Value, good.Verdict));
        var poor = Judge(4160, "form-wound", "B", new(120, 1, 40, 500), new(150, 10, 40, 500));
        Assert.Equal((1.25, "fail"), (poor.PolarizationIndex!.Value, poor.Verdict));
        var small = Judge(230, "random-wound", null, new(800, 1, 40, 500), new(880, 10, 40, 500));
        Assert.Null(small.PolarizationIndex);
        Assert.NotNull(small.NotApplicable);
        Assert.Equal("pass", small.Verdict);
        Assert.Equal("pass", Judge(4160, "form-wound", "A", new(200, 1, 40, 500), new(310, 10, 40, 500)).Verdict);
        Assert.NotNull(Judge(4160, "form-wound", "F", new(6000, 1, 40, 500), new(6500, 10, 40, 500)).NotApplicable);
    }

    [Fact]
    public void One_minute_over_half_a_minute_is_the_absorption_ratio() =>
        Assert.Equal(1.10, Judge(230, "random-wound", null, new(50, 0.5, 40, 500), new(55, 1, 40, 500)).AbsorptionRatio!.Value!.Value, 0.001);

    [Fact]
    public void The_one_minute_reading_is_the_one_that_is_judged() =>
        Assert.Equal(55, Judge(230, "random-wound", null, new(500, 10, 40, 500), new(55, 1, 40, 500)).CorrectedMegohms!.Value!.Value, 1e-9);

    [Theory]
    [InlineData(500, 0)]
    [InlineData(1000, 1)]
    [InlineData(250, 1)]
    public void Test_volts_that_do_not_suit_are_said(double testVolts, int notes) =>
        Assert.Equal(notes, Judge(230, "random-wound", new InsulationReading(100, 1, 25, testVolts)).Notes.Count);

    [Theory]
    [InlineData(40, new[] { 300.0, 200 }, "insulation.falling")]
    [InlineData(100, new[] { 200.0 }, "insulation.falling")] // half is half or more
    [InlineData(101, new[] { 200.0 }, "insulation.steady")]
    [InlineData(90, new[] { 200.0, 130 }, "insulation.falling-slowly")]
    [InlineData(260, new[] { 90.0, 200 }, "insulation.steady")]
    [InlineData(2, new[] { 30.0 }, "insulation.falling")] // although it no longer passes either
    public void A_fall_between_sessions_is_a_warning(double megohms, double[] earlier, string said)
    {
        var report = InsulationJudge.Judge(Knowledge, new InsulationInput { RatedVolts = 230, Readings = [new(megohms, 1, 40, 500)], EarlierMegohms = earlier }).Value!;
        Assert.Equal(said, report.Trend!.Id);
        Assert.Contains(report.Trend, report.Notes);
    }

    [Fact]
    public void Both_readings_of_a_trend_are_at_forty_degrees() // 200 MΩ at 20 °C is 50 at 40
        => Assert.Equal("insulation.falling", InsulationJudge.Judge(Knowledge, new InsulationInput { RatedVolts = 230, Readings = [new(200, 1, 20, 500)], EarlierMegohms = [100] }).Value!.Trend!.Id);

    [Theory]
    [InlineData(null, 500.0, "insulation.trend-needs-temperature")]
    [InlineData(5.0, 500.0, "insulation.trend-needs-temperature")]
    [InlineData(20.0, 9.0, null)]
    public void What_cannot_be_compared_is_not(double? celsius, double testVolts, string? said) =>
        Assert.Equal(said, InsulationJudge.Judge(Knowledge, new InsulationInput { RatedVolts = 230, Readings = [new(200, 1, celsius, testVolts)], EarlierMegohms = [100] }).Value!.Trend?.Id);

    [Fact]
    public void A_fact_of_the_case_is_judged_alike() =>
        Assert.Equal("fail", InsulationJudge.Judge(Knowledge, new Fact.Insulation { Megohms = 0.6, Celsius = 22, TestVolts = 500 }, 230).Value!.Verdict);

    [Theory]
    [InlineData(0, 5, 25, "ratedVolts")]
    [InlineData(230, -5, 25, "readings[0].megohms")]
    [InlineData(230, 5, 900, "readings[0].celsius")]
    public void What_cannot_be_is_refused(double volts, double megohms, double celsius, string field) =>
        Assert.Equal(field, Assert.Single(InsulationJudge.Judge(Knowledge, new InsulationInput { RatedVolts = volts, Readings = [new(megohms, 1, celsius)] }).Problems).Field);

    [Fact]
    public void A_colder_winding_never_passes_with_less()
    {
        for (var celsius = 10.0; celsius < 84; celsius += 0.5)
        {
            Assert.True(InsulationCorrection.Corrected(Knowledge, 10, celsius, "unknown")!.Value < InsulationCorrection.Corrected(Knowledge, 10, celsius + 0.5, "unknown")!.Value);
        }
    }

    private static InsulationReport Judge(double volts, string kind, InsulationReading reading) => Judge(volts, kind, null, reading);

    [Fact]
    public void A_winding_for_few_volts_is_not_sent_to_a_tester_for_the_mains()
    {
        Assert.Null(Judge(24, "random-wound", new InsulationReading(100, 1, 40, 500)).TestVolts);
        foreach (var used in new double?[] { 9, 500, null })
        {
            var report = Judge(24, "random-wound", new InsulationReading(100, 1, 40, used));
            Assert.Contains(report.Notes, note => note.Id == "insulation.low-rated-volts");
            Assert.DoesNotContain(report.DoNext, next => next.Id == "insulation.use-a-tester");
        }

        Assert.NotNull(Judge(50, "random-wound", new InsulationReading(100, 1, 40, 500)).TestVolts);
    }

    [Theory]
    [InlineData("form-wound", 10, "retest")]
    [InlineData("form-wound", 1, "pass")]
    [InlineData("form-wound", 0.5, "pass")]
    [InlineData("random-wound", 10, "pass")]
    public void A_reading_that_was_taken_late_is_no_pass_of_a_large_winding(string kind, double minute, string verdict)
    {
        var report = Judge(460, kind, new InsulationReading(6, minute, 40, 500));
        Assert.Equal(verdict, report.Verdict);
        Assert.Equal(verdict == "retest", report.DoNext.Any(next => next.Id == "insulation.read-at-one-minute"));
    }

    [Fact]
    public void From_a_kilovolt_on_every_winding_needs_what_coils_made_in_forms_need() =>
        Assert.Equal(100, Judge(2300, "random-wound", new InsulationReading(50, 1, 40, 500)).MinimumMegohms.Value);

    private static InsulationReport Judge(double volts, string kind, string? letter, params InsulationReading[] readings) =>
        InsulationJudge.Judge(Knowledge, new InsulationInput { RatedVolts = volts, Kind = kind, InsulationClass = letter, Readings = readings }).Value!;
}
