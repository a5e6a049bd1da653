using CsCheck;
using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Insulation;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests;

/// <summary>The formulas worked out a second time on figures of any size, beside the few written vectors.</summary>
public sealed class FormulasTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    [Fact]
    public void Microfarads_from_volts_and_amps() => Gen.Select(Gen.Double[50, 500], Gen.Double[0.3, 12], Gen.OneOf(Gen.Const(50.0), Gen.Const(60.0))).Sample((volts, amps, hertz) =>
        Near(1e6 * amps / (2 * Math.PI * hertz * volts), Capacitor(new() { Marked = new(40), Measured = new() { Volts = volts, Amps = amps, Hertz = hertz } }).MeasuredMicrofarads?.Value));

    [Fact]
    public void Parts_in_series_and_in_parallel() => Gen.Double[1, 400].Array[2, 5].Sample(parts =>
        Near(1 / parts.Sum(part => 1 / part), Capacitor(new() { Series = [.. parts.Select(part => new CapacitorPart(part))] }).CombinedMicrofarads?.Value)
        && Near(parts.Sum(), Capacitor(new() { Parallel = [.. parts.Select(part => new CapacitorPart(part))] }).CombinedMicrofarads?.Value));

    [Fact]
    public void Energy_and_the_time_and_watts_of_a_bleed() => Gen.Select(Gen.Double[2, 600], Gen.Double[100, 630], Gen.Double[5000, 300000], Gen.Double[5, 60]).Sample((microfarads, from, ohms, to) =>
    {
        var report = Capacitor(new() { Marked = new(microfarads, null, 440, "run"), FromVolts = from, ToVolts = to, BleedOhms = ohms });
        return Near(microfarads * 1e-6 * ohms * Math.Log(from / to), report.BleedSeconds?.Value) && Near(from * from / ohms, report.BleedWatts?.Value)
            && Near(0.5e-6 * microfarads * 2 * 440 * 440, Capacitor(new() { Marked = new(microfarads, null, 440, "run") }).EnergyJoules?.Value);
    });

    [Fact]
    public void Insulation_at_forty_degrees_by_either_system_and_the_lower_where_it_is_not_known() => Gen.Select(Gen.Double[0.5, 3000], Gen.Double[10, 85]).Sample((megohms, celsius) =>
    {
        var soft = megohms * Math.Pow(0.5, (40 - celsius) / 10);
        var hard = megohms * Math.Exp(-(celsius > 40 ? 4230 : 1245) * ((1 / (celsius + 273)) - (1 / 313.0)));
        return Near(soft, InsulationCorrection.Corrected(Knowledge, megohms, celsius, "thermoplastic")?.Value)
            && Near(hard, InsulationCorrection.Corrected(Knowledge, megohms, celsius, "thermoset")?.Value)
            && Near(Math.Min(soft, hard), InsulationCorrection.Corrected(Knowledge, megohms, celsius, "unknown")?.Value);
    });

    [Fact]
    public void Rise_by_resistance_of_copper_and_aluminium() => Gen.Select(Gen.Double[0.2, 60], Gen.Double[5, 35], Gen.Double[1.05, 1.5], Gen.Double[10, 45], Gen.Bool).Sample((cold, celsius, times, ambient, copper) =>
    {
        var rise = ((times - 1) * ((copper ? 234.5 : 225) + celsius)) + celsius - ambient;
        var answer = WindingHeat.Judge(Knowledge, new() { ColdOhms = cold, ColdCelsius = celsius, HotOhms = cold * times, AmbientCelsius = ambient, InsulationClass = "F", Material = copper ? "copper" : "aluminium" });
        return rise < -3 ? answer.Problems is [{ Field: "hotOhms" }] : Near(rise, answer.Value!.RiseKelvin.Value, 1e-6) && answer.Value.Verdict == (rise <= 105 - Math.Max(0, ambient - 40) ? "pass" : "fail");
    });

    [Fact]
    public void There_and_back_a_resistance_is_the_same() => Gen.Select(Gen.Double[0.1, 500], Gen.Double[-20, 150], Gen.Double[-20, 150], Gen.OneOf(Gen.Const("copper"), Gen.Const("aluminium"))).Sample((ohms, from, to, material) =>
        Near(ohms, WindingHeat.Resistance(Knowledge, WindingHeat.Resistance(Knowledge, ohms, from, to, material).Value!.Value!.Value, to, from, material).Value!.Value));

    [Fact]
    public void Unbalance_is_the_largest_deviation_from_the_mean_and_never_eases_the_derating() => Gen.Double[380, 420].Array[3].Sample(volts =>
    {
        var report = Unbalance.OfVolts(Knowledge, volts).Value!;
        var mean = volts.Average();
        var expected = 100 * volts.Max(one => Math.Abs(one - mean)) / mean;
        return Near(expected, report.Percent.Value) && (expected > 5 ? report.Derating is null : report.Derating!.Value <= Unbalance.OfVolts(Knowledge, [.. volts.Select(one => mean + ((one - mean) / 2))]).Value!.Derating!.Value + 1e-12);
    });

    private static CapacitorReport Capacitor(CapacitorInput input) => CapacitorCalculator.Calculate(Knowledge, input).Value!;

    private static bool Near(double expected, double? value, double tolerance = 1e-9) => value is { } found && Math.Abs(found - expected) <= tolerance * Math.Max(1, Math.Abs(expected));
}
