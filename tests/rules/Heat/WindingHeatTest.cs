using CsCheck;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Heat;

public sealed class WindingHeatTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    [Theory]
    [InlineData(2.50, 25, 40, "copper", 2.6445)]
    [InlineData(2.50, 60, 25, "copper", 2.2029)]
    [InlineData(10.0, 20, 115, "aluminium", 13.8776)]
    public void A_resistance_is_carried_to_another_temperature(double ohms, double from, double to, string material, double expected) =>
        Assert.Equal(expected, WindingHeat.Resistance(Knowledge, ohms, from, to, material).Value!.Value!.Value, 0.0005);

    [Fact]
    public void The_rise_by_resistance_is_judged_by_the_class()
    {
        var report = Judge(10, 20, 12.6, 24, "B");
        Assert.Equal(62.17, report.RiseKelvin.Value!.Value, 0.01);
        Assert.Equal(86.17, report.HotCelsius.Value!.Value, 0.01);
        Assert.Equal((80, "pass"), (report.LimitKelvin.Value!.Value, report.Verdict));
        Assert.Equal(("fail", "pass"), (Judge(10, 20, 14.2, 24, "B").Verdict, Judge(10, 20, 14.2, 24, "F").Verdict));
    }

    [Theory]
    [InlineData("A", null, 20, null, 60)]
    [InlineData("E", null, 20, null, 75)]
    [InlineData("B", null, 20, null, 80)]
    [InlineData("F", null, 20, null, 105)]
    [InlineData("h", null, 20, null, 125)]
    [InlineData("B", 1.15, 20, null, 90)]
    [InlineData("F", 1.25, 20, null, 115)]
    [InlineData("B", null, 20, 1500.0, 76)]
    [InlineData("B", null, 20, 800.0, 80)]
    [InlineData("B", null, 50, null, 70)]
    public void The_limit_knows_class_height_and_surroundings(string letter, double? factor, double ambient, double? metres, double kelvin) =>
        Assert.Equal(kelvin, WindingHeat.Judge(Knowledge, new()
        {
            ColdOhms = 10, ColdCelsius = 20, HotOhms = 13, AmbientCelsius = ambient, InsulationClass = letter, ServiceFactor = factor, AltitudeMetres = metres,
        }).Value!.LimitKelvin.Value!.Value, 0.05);

    [Theory]
    [InlineData(15, 0.3536)]
    [InlineData(-10, 2.000)]
    public void Ten_kelvin_halve_the_life(double above, double factor) => Assert.Equal(factor, WindingHeat.Life(Knowledge, above).Value!.Value, 0.0005);

    [Theory]
    [InlineData(0, 20, 12, 24, "B", "coldOhms")]
    [InlineData(10, 20, 8, 24, "B", "hotOhms")]
    [InlineData(10, 20, 12, 24, "N", "insulationClass")]
    [InlineData(10, 20, 12, 24, "Q", "insulationClass")]
    [InlineData(10, 20, 12, 95, "B", "ambientCelsius")]
    public void What_cannot_be_is_refused(double cold, double coldCelsius, double hot, double ambient, string letter, string field) =>
        Assert.Equal(field, Assert.Single(WindingHeat.Judge(
            Knowledge, new() { ColdOhms = cold, ColdCelsius = coldCelsius, HotOhms = hot, AmbientCelsius = ambient, InsulationClass = letter }).Problems).Field);

    [Fact]
    public void Carried_there_and_back_a_resistance_is_the_same() => Gen.Select(Gen.Double[0.01, 1000], Gen.Double[-40, 200], Gen.Double[-40, 200]).Sample((ohms, from, to) =>
    {
        var there = WindingHeat.Resistance(Knowledge, ohms, from, to, "copper").Value!.Value!.Value;
        return Math.Abs(WindingHeat.Resistance(Knowledge, there, to, from, "copper").Value!.Value!.Value / ohms - 1) < 1e-12;
    }, iter: 200);

    [Fact]
    public void More_hot_ohms_are_more_rise() => Gen.Select(Gen.Double[1, 100], Gen.Double[1.05, 1.4], Gen.Double[1.001, 1.2]).Sample((cold, hot, more) =>
        Judge(cold, 20, cold * hot * more, 20, "F").RiseKelvin.Value > Judge(cold, 20, cold * hot, 20, "F").RiseKelvin.Value, iter: 200);

    private static HeatReport Judge(double cold, double coldCelsius, double hot, double ambient, string letter) => WindingHeat.Judge(
        Knowledge, new() { ColdOhms = cold, ColdCelsius = coldCelsius, HotOhms = hot, AmbientCelsius = ambient, InsulationClass = letter }).Value!;
}
