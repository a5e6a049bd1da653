using CsCheck;
using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Capacitors;

public sealed class CapacitorCalculatorTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    [Theory]
    [InlineData(4.2, 330, 60, 33.76, 0.02)]
    [InlineData(8.9, 115, 60, 205.3, 0.1)]
    public void Volts_and_amps_at_the_same_moment_give_the_microfarads(double amps, double volts, double hertz, double microfarads, double tolerance) =>
        Assert.Equal(microfarads, Calculate(new() { Measured = new() { Amps = amps, Volts = volts, Hertz = hertz } }).MeasuredMicrofarads!.Value!.Value, tolerance);

    [Fact]
    public void Parts_in_series_and_in_parallel_add_up()
    {
        var series = Calculate(new() { Series = [new(200, Volts: 165), new(200, Volts: 165)] });
        Assert.Equal(100, series.CombinedMicrofarads!.Value!.Value, 0.01);
        Assert.Equal(330, series.CombinedVolts!.Value!.Value, 0.01);
        var parallel = Calculate(new() { Parallel = [new(40, Volts: 440), new(5, Volts: 370)] });
        Assert.Equal(45, parallel.CombinedMicrofarads!.Value!.Value, 0.001);
        Assert.Equal(370, parallel.CombinedVolts!.Value!.Value);
        // Unequal parts in series: the smaller takes more of the volts.
        Assert.Equal(440 * (10 / (1 / (1 / 10.0 + 1 / 40.0))), Calculate(new() { Series = [new(10, Volts: 440), new(40, Volts: 440)] }).CombinedVolts!.Value!.Value, 1e-9);
    }

    [Theory]
    [InlineData(40, 440, 7.744)]
    [InlineData(25, 400, 4.000)]
    public void The_energy_is_that_of_the_crest(double microfarads, double volts, double joules) =>
        Assert.Equal(joules, Calculate(new() { Marked = new(microfarads, Volts: volts) }).EnergyJoules!.Value!.Value, 0.002);

    [Theory]
    [InlineData(15000, 400, 169.7, 50, 7.33, 0.02)]
    [InlineData(220000, 40, 622.3, 50, 22.19, 0.05)]
    [InlineData(20000, 40, 622.3, 10, 3.305, 0.005)]
    public void A_resistor_takes_its_time(double ohms, double microfarads, double from, double to, double seconds, double tolerance) =>
        Assert.Equal(seconds, Calculate(new() { Marked = new(microfarads), BleedOhms = ohms, FromVolts = from, ToVolts = to }).BleedSeconds!.Value!.Value, tolerance);

    [Theory]
    [InlineData(40, 622.3, 50, 60, 594.9, 0.5)]
    [InlineData(25, 565.7, 60, 5, 89.15, 0.1)]
    public void A_time_asks_for_a_resistor(double microfarads, double from, double to, double seconds, double kilohms, double tolerance) =>
        Assert.Equal(kilohms, Calculate(new() { Marked = new(microfarads), WithinSeconds = seconds, FromVolts = from, ToVolts = to }).BleedKilohms!.Value!.Value, tolerance);

    [Fact]
    public void The_first_moment_heats_the_resistor_most() =>
        Assert.Equal(1.920, Calculate(new() { Marked = new(400), BleedOhms = 15000, FromVolts = 169.7 }).BleedWatts!.Value!.Value, 0.002);

    [Theory]
    [InlineData(1.2, 359.3)]
    [InlineData(1.5, 414.6)]
    public void A_run_capacitor_sees_more_than_the_line(double turns, double volts) =>
        Assert.Equal(volts, CapacitorCalculator.RunVolts(Knowledge, 230, turns).Value!.Value, 0.1);

    [Theory]
    [InlineData("run", 40, null, null, 38.0, "good")]
    [InlineData("run", 40, null, null, 35.9, "weak")]
    [InlineData("run", 40, null, null, 44.1, "over")]
    [InlineData("run", 40, null, 5.0, 37.5, "good")] // 5 % and the meter's own error
    [InlineData("run", 40, null, 5.0, 37.0, "weak")]
    [InlineData("start", 189, 227.0, null, 189.0, "good")]
    [InlineData("start", 189, 227.0, null, 188.0, "weak")]
    [InlineData("start", 189, 227.0, null, 270.0, "good")]
    [InlineData("start", 189, 227.0, null, 273.0, "over")]
    [InlineData("start", 200, null, null, 199.0, "weak")]
    [InlineData("start", 200, null, null, 239.0, "good")]
    [InlineData("start", 200, null, null, 241.0, "over")]
    [InlineData("start", 200, null, null, 0.05, "open")]
    [InlineData("run", 4, null, null, 0.09, "open")]
    public void The_print_sets_the_band(string use, double marked, double? to, double? tolerance, double measured, string verdict) =>
        Assert.Equal(verdict, Calculate(new() { Marked = new(marked, to, Use: use, TolerancePercent: tolerance), Measured = new() { Microfarads = measured } }).Verdict);

    [Fact]
    public void Open_short_and_unknown_are_said_as_they_are()
    {
        Assert.Equal("shorted", Calculate(new() { Marked = new(40), Measured = new() { Short = true } }).Verdict);
        Assert.Equal("shorted", Calculate(new() { Marked = new(40), Measured = new() { Ohms = 2 } }).Verdict);
        Assert.Equal("open", Calculate(new() { Marked = new(40), Measured = new() { Open = true } }).Verdict);
        Assert.Equal("open", Calculate(new() { Marked = new(40), Measured = new() { Volts = 230, Amps = 0, Hertz = 50 } }).Verdict);
        Assert.Equal("unknown", Calculate(new() { Marked = new(40) }).Verdict);
        Assert.Equal("unknown", Calculate(new() { Measured = new() { Microfarads = 40 } }).Verdict);
    }

    [Theory]
    [InlineData(60, null, null, 60, "good")]
    [InlineData(60, null, null, 55, "unknown")] // a run capacitor would be good, a start capacitor weak
    [InlineData(60, null, null, 70, "unknown")]
    [InlineData(60, null, null, 50, "weak")]
    [InlineData(60, null, null, 80, "over")]
    [InlineData(60, 440.0, null, 55, "good")]
    [InlineData(189, 165.0, 227.0, 188, "weak")]
    [InlineData(189, null, 227.0, 250, "good")]
    public void Where_the_use_is_not_said_the_print_tells_it_or_nothing_is_claimed_that_hangs_on_it(double marked, double? volts, double? to, double measured, string verdict) =>
        Assert.Equal(verdict, Calculate(new() { Marked = new(marked, to, volts), Measured = new() { Microfarads = measured } }).Verdict);

    [Theory]
    [InlineData("run", 40, 370, "run", 40, 440, true)]
    [InlineData("run", 40, 440, "run", 40, 370, false)]
    [InlineData("run", 40, 370, "run", 42, 370, true)]
    [InlineData("run", 40, 370, "run", 45, 370, false)]
    [InlineData("run", 40, 370, "start", 40, 440, false)]
    [InlineData("start", 200, 165, "start", 200, 250, true)]
    [InlineData("start", 200, 165, "start", 250, 250, false)]
    [InlineData("start", 60, 250, "run", 60, 440, true)]
    [InlineData("unknown", 60, 250, "run", 60, 440, false)]
    [InlineData("run", 60, 250, "unknown", 60, 330, false)]
    [InlineData("run", 60, 250, "unknown", 60, 440, true)]
    [InlineData("unknown", 40, 370, "unknown", 40, 440, true)]
    [InlineData("unknown", 40, 440, "unknown", 40, 370, false)]
    [InlineData("unknown", 40, 370, "start", 40, 440, false)]
    public void A_replacement_has_the_same_use_the_same_microfarads_and_volts_enough(
        string use, double microfarads, double volts, string otherUse, double otherMicrofarads, double otherVolts, bool allowed)
    {
        var report = Calculate(new() { Marked = new(microfarads, Volts: volts, Use: use), Candidates = [new(otherMicrofarads, Volts: otherVolts, Use: otherUse)] });
        Assert.Equal(allowed, report.Replacements[0].Allowed);
        Assert.Equal(allowed, report.Replacements[0].Reasons.Count == 0);
    }

    [Theory]
    [InlineData(50, 440, 5)] // 20 kΩ, 622 V down to 5 V: 4.8 s, so the least of 5 s
    [InlineData(400, 229.81, 33.4)]
    [InlineData(1000, 120.2, 70.5)]
    public void The_bleeding_tool_is_held_long_enough(double microfarads, double volts, double seconds)
    {
        var discharge = CapacitorSafety.Discharge(Knowledge, microfarads, volts);
        Assert.Equal(seconds, discharge.HoldSeconds.Value!.Value, 0.1);
        Assert.Equal(20, discharge.Resistor.Value);
        // After that time no more than the safe volts is left.
        var left = discharge.WorstVolts.Value!.Value * Math.Exp(-discharge.HoldSeconds.Value.Value / (20000 * microfarads * 1e-6));
        Assert.True(left <= discharge.SafeVolts.Value!.Value + 1e-9);
    }

    [Theory]
    [InlineData(4.9, true)]
    [InlineData(-4.9, true)]
    [InlineData(5.0, false)]
    [InlineData(-60, false)]
    public void Below_five_volts_it_may_be_touched(double volts, bool safe) => Assert.Equal(safe, CapacitorSafety.IsSafe(Knowledge, volts));

    [Fact]
    public void More_microfarads_more_ohms_or_more_volts_never_bleed_faster() => Gen.Select(Gen.Double[0.5, 2000], Gen.Double[100, 1e6], Gen.Double[60, 900], Gen.Double[1.01, 3])
        .Sample((microfarads, ohms, volts, more) =>
        {
            double Seconds(double c, double r, double v) => Calculate(new() { Marked = new(c), BleedOhms = r, FromVolts = v, ToVolts = 50 }).BleedSeconds!.Value!.Value;
            var once = Seconds(microfarads, ohms, volts);
            return Seconds(microfarads * more, ohms, volts) > once && Seconds(microfarads, ohms * more, volts) > once && Seconds(microfarads, ohms, volts * more) > once;
        }, iter: 200);

    [Theory]
    [InlineData(-5, null, null, "microfarads")]
    [InlineData(40, 0.0, null, "bleedOhms")]
    [InlineData(40, 1000.0, 700.0, "toVolts")]
    public void What_cannot_be_is_refused(double microfarads, double? ohms, double? to, string field)
    {
        var answer = CapacitorCalculator.Calculate(Knowledge, new() { Marked = new(microfarads), BleedOhms = ohms, FromVolts = 600, ToVolts = to });
        Assert.Equal(field, Assert.Single(answer.Problems).Field);
    }

    private static CapacitorReport Calculate(CapacitorInput input) => CapacitorCalculator.Calculate(Knowledge, input).Value!;
}
