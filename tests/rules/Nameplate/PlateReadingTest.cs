using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Nameplate;

public sealed class PlateReadingTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    public static TheoryData<string> Poles() => CsvFile.Ids("poles");

    public static TheoryData<string> Letters() => CsvFile.Ids("locked-rotor");

    [Theory]
    [MemberData(nameof(Poles))]
    public void The_speed_gives_poles_and_slip(string id)
    {
        var row = CsvFile.Vectors("poles")[id];
        var report = Check(("rpm", row["rpm"]), ("hertz", row["Hz"]));
        Assert.Equal(row.Number("expect_poles"), report.Poles!.Value);
        Assert.Equal(row.Number("expect_slip_pct"), report.SlipPercent!.Value!.Value, row.Number("tol"));
        // The speed alone gives the same: only one of the two frequencies leaves a slip that a motor has.
        Assert.Equal(row.Number("expect_poles"), Check(("rpm", row["rpm"])).Poles!.Value);
    }

    [Theory]
    [InlineData(1250, "PC-RPM")]
    [InlineData(1800, "PC-RPM")]
    [InlineData(4200, "PC-RPM")]
    public void A_speed_that_no_plain_induction_motor_has_is_asked_about(double rpm, string finding)
    {
        var report = Check(("rpm", $"{rpm}"), ("hertz", "60"));
        Assert.Null(report.Poles);
        Assert.Contains(report.Findings, found => found.Id == finding);
    }

    [Theory]
    [InlineData("PMDC", null, null)]
    [InlineData("universal", null, null)]
    [InlineData("capacitor start", 4.0, "hertz")]
    public void A_motor_with_brushes_has_no_poles_nor_hertz_by_its_speed(string type, double? poles, string? estimate)
    {
        var report = Check(("rpm", "1750"), ("type", type));
        Assert.Equal(poles, report.Poles?.Value);
        Assert.Equal(estimate, report.Estimates.SingleOrDefault()?.Field);
        Assert.Empty(report.Findings);
    }

    [Theory]
    [MemberData(nameof(Letters))]
    public void The_code_letter_gives_the_locked_rotor_amps(string id)
    {
        var row = CsvFile.Vectors("locked-rotor")[id];
        var range = Check(("phases", row["phase"]), ("horsepower", row["hp"]), ("codeLetter", row["letter"]), ("volts", row["V"])).LockedRotorAmps!;
        Assert.Equal(row.Number("expect_min"), range.Low!.Value!.Value, row.Number("tol"));
        Assert.Equal(row.Number("expect_max"), range.High!.Value!.Value, row.Number("tol"));
    }

    [Theory]
    [InlineData("horsepower", "1", 1725, 3.0447 * 1.35582, 0.002)]
    [InlineData("kilowatts", "1.5", 1430, 10.017, 0.005)]
    [InlineData("kilowatts", "0.75", 1425, 5.026, 0.005)]
    public void Power_and_speed_give_the_torque(string field, string power, int rpm, double newtonMetres, double tolerance)
    {
        var report = Check((field, power), ("rpm", $"{rpm}"));
        Assert.Equal(newtonMetres, report.RatedTorque!.Value!.Value, tolerance);
        Assert.Equal(newtonMetres / 1.35582, report.RatedTorquePoundFeet!.Value!.Value, tolerance);
    }

    [Fact]
    public void Kilowatts_become_horsepower() => Assert.Equal(7.3756, PlatePower.Horsepower(Knowledge, 5500).Value!.Value, 0.0005);

    [Theory]
    [InlineData("115/230", "9.8/4.9", null)]
    [InlineData("230/400", "3.3/1.9", null)]
    [InlineData("208-230/460", "3.0-2.8/1.4", null)]
    [InlineData("208-230/460", "2.8/1.4", null)]
    [InlineData("220-240/380-420", "6.2/3.6", null)]
    [InlineData("115/230", "4.9/9.8", "PC-DUAL")]
    [InlineData("115/230", "9.8/9.8", "PC-DUAL")]
    [InlineData("115/230", "98/4.9", "PC-DUAL")]
    [InlineData("115/230", "10.2/4.9", null)]
    [InlineData("115/230", "10.4/4.9", "PC-DUAL")]
    [InlineData("115/230", "0.9/0.4", null)]
    [InlineData("115/230", "0.95/0.4", "PC-DUAL")]
    [InlineData("230/400", "3.8/1.9", "PC-DUAL")]
    [InlineData("115/230", "9.8/4.9/3", "PC-DUAL")]
    [InlineData("208-230/460", "4.0-2.8/1.4", "PC-DUAL-208")]
    [InlineData("115/340", "9.8/3.3", "PC-VOLTS")]
    public void Volts_and_amps_pair_or_the_plate_was_misread(string volts, string amps, string? finding) =>
        Assert.Equal(finding, Check(("volts", volts), ("amps", amps)).Findings.SingleOrDefault()?.Id);

    [Theory]
    [InlineData(5, "120", "15", 1, "PC-IMIN", 31.07)]
    [InlineData(10, "230", "15", 3, "PC-IMIN", 18.72)]
    public void A_power_that_the_amps_cannot_carry_is_impossible(double horsepower, string volts, string amps, int phases, string finding, double least)
    {
        var found = Assert.Single(Check(("horsepower", $"{horsepower}"), ("volts", volts), ("amps", amps), ("phases", $"{phases}")).Findings, one => one.Id == finding);
        Assert.Equal(least, found.Values[0].Value!.Value, 0.01);
        Assert.Equal("impossible", found.Severity);
    }

    [Theory]
    [InlineData("10", "25.8", 0.921, true)]
    [InlineData("1", "8.0", 1.905, false)]
    public void Plate_amps_lie_near_the_table(string horsepower, string amps, double ratio, bool pass)
    {
        var findings = Check(("horsepower", horsepower), ("volts", "230"), ("amps", amps), ("phases", "3")).Findings;
        Assert.Equal(pass, findings.Count == 0);
        var table = CurrentTable.Find(Knowledge, "nec-430-250", Fractions.Read(horsepower)!.Value, 230).Value!;
        Assert.Equal(ratio, double.Parse(amps) / table.Amps.Value!.Value, 0.001);
    }

    [Theory]
    [InlineData("PC-KW-HP", "horsepower", "1", "kilowatts", "1.1")]
    [InlineData("PC-SFA", "amps", "5", "serviceFactorAmps", "6.5")]
    [InlineData("PC-SFA", "amps", "5", "serviceFactorAmps", "4.5")]
    [InlineData("PC-INS", "insulationClass", "G", "hertz", "60")]
    [InlineData("PC-INS", "insulationClass", "A", "temperatureRise", "80")]
    [InlineData("PC-DUTY", "duty", "30 MIN", "hertz", "60")]
    [InlineData("PC-CAP", "type", "split-phase", "capacitorMicrofarads", "40")]
    [InlineData("PC-CODE", "codeLetter", "Q", "hertz", "60")]
    public void A_mark_that_does_not_fit_is_found(string finding, string first, string firstValue, string second, string secondValue) =>
        Assert.Contains(Check((first, firstValue), (second, secondValue)).Findings, found => found.Id == finding);

    [Fact]
    public void The_design_letter_in_the_code_box_gives_itself_away() =>
        Assert.Contains(Check(("codeLetter", "B"), ("horsepower", "0.5"), ("volts", "115"), ("amps", "9.8"), ("phases", "1")).Findings, found => found.Id == "PC-CODE");

    [Fact]
    public void Power_factor_and_efficiency_must_agree_with_power_and_amps()
    {
        Assert.DoesNotContain(Check(("horsepower", "0.33"), ("volts", "115"), ("amps", "6.6"), ("powerFactor", "62"), ("efficiency", "56"), ("phases", "1")).Findings, found => found.Id == "PC-EFF");
        Assert.Contains(Check(("horsepower", "3"), ("volts", "230"), ("amps", "6.6"), ("powerFactor", "62"), ("phases", "1")).Findings, found => found.Id == "PC-EFF");
    }

    [Fact]
    public void A_sound_plate_has_no_finding_and_missing_fields_are_ranges()
    {
        var report = Check(
            ("horsepower", "0.75"), ("volts", "115/230"), ("amps", "10.4/5.2"), ("rpm", "1140"), ("phases", "1"), ("codeLetter", "K"), ("insulationClass", "B"), ("duty", "CONT"));
        Assert.Empty(report.Findings);
        Assert.All(report.Estimates, estimate => Assert.True(estimate.Low.Value <= estimate.High.Value));
        Assert.Contains(report.Estimates, estimate => estimate.Field == "efficiency");
        Assert.True(report.InputWatts!.Low!.Value < report.InputWatts.High!.Value);
        Assert.True(report.InputWatts.High.Value <= 115 * 10.4);
    }

    [Theory]
    [InlineData("volts", "-5")]
    [InlineData("rpm", "900000")]
    [InlineData("hertz", "5000")]
    [InlineData("amps", "ten")]
    [InlineData("phases", "2")]
    [InlineData("efficiency", "140")]
    public void What_cannot_be_a_plate_is_refused_by_its_field(string field, string value)
    {
        var answer = PlateReading.Read(Knowledge, PlateFields.Empty.With(field, value[0] == '-' ? PlateValue.Of(double.Parse(value)) : PlateValue.Parse(value)), null);
        Assert.Equal(field, Assert.Single(answer.Problems).Field);
    }

    private static PlateReport Check(params (string Field, string Text)[] fields) => PlateReading.Check(
        Knowledge, fields.Aggregate(PlateFields.Empty, (plate, field) => plate.With(field.Field, PlateValue.Parse(field.Text))), Region.NorthAmerica);
}
