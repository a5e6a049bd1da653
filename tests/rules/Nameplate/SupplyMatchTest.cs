using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Nameplate;

public sealed class SupplyMatchTest
{
    private static readonly TradeKnowledge Knowledge = CsvFile.Knowledge;

    public static TheoryData<string> Volts() => CsvFile.Ids("supply-volts");

    public static TheoryData<string> Flux() => CsvFile.Ids("volts-per-hertz");

    [Theory]
    [MemberData(nameof(Volts))]
    public void Supply_volts_are_judged_against_the_plate(string id)
    {
        var row = CsvFile.Vectors("supply-volts")[id];
        var judged = SupplyMatch.Volts(Knowledge, row.Number("plate_V"), row.Number("supply_V"));
        Assert.Equal(row.Number("expect_dev_pct"), judged.Value.Value!.Value, 0.005);
        Assert.StartsWith(row["verdict"].Replace('_', '-').Replace("-marking", string.Empty, StringComparison.Ordinal), judged.Verdict, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(220, 240, "edge-high")]
    [InlineData(380, 415, "edge-high")]
    [InlineData(440, 480, "edge-high")]
    [InlineData(230, 240, "ok")]
    [InlineData(115, 120, "ok")]
    [InlineData(200, 208, "ok")]
    [InlineData(208, 208, "ok")]
    [InlineData(230, 207, "edge-ask-for-208")]
    [InlineData(240, 208, "out-low")]
    public void Nominal_names_are_understood_but_the_volts_are_still_compared(double plate, double supply, string verdict) =>
        Assert.Equal(verdict, SupplyMatch.Volts(Knowledge, plate, supply).Verdict);

    [Theory]
    [MemberData(nameof(Flux))]
    public void Volts_per_hertz_are_judged_against_the_plate(string id)
    {
        var row = CsvFile.Vectors("volts-per-hertz")[id];
        var judged = SupplyMatch.VoltsPerHertz(Knowledge, row.Number("Vs"), row.Number("fs"), row.Number("Vp"), row.Number("fp"));
        Assert.Equal(row.Number("expect_r"), judged.Value.Value!.Value, 0.0001);
        Assert.Equal(row["verdict"].Split('_')[0], judged.Verdict);
    }

    [Theory]
    [InlineData(-8, -4, false)]
    [InlineData(2, -6, false)]
    [InlineData(10, 0, true)]
    [InlineData(-6, 4, true)]
    [InlineData(10.5, 0, false)]
    public void The_american_band_takes_volts_and_hertz_together(double volts, double hertz, bool within) =>
        Assert.Equal(within, SupplyMatch.WithinNema(Knowledge, volts, hertz));

    [Theory]
    [InlineData(5, -2, "b")]
    [InlineData(-7, 2, "b")]
    [InlineData(12, 0, "outside")]
    [InlineData(-9, 3, "outside")]
    [InlineData(-7, 3, "b")]
    [InlineData(3, -5, "b")]
    [InlineData(3.1, -5, "outside")]
    [InlineData(3, -2, "a")]
    [InlineData(-3, 2, "a")]
    [InlineData(-3.1, 2, "b")]
    [InlineData(5, 2, "a")]
    [InlineData(0, 0, "a")]
    public void The_international_zones_have_their_corners_cut(double volts, double hertz, string zone) =>
        Assert.Equal(zone, SupplyMatch.IecZone(Knowledge, volts, hertz));

    [Fact]
    public void Torque_goes_with_the_square_of_the_volts()
    {
        Assert.Equal(81.78, SupplyMatch.Torque(Knowledge, 230, 208).Value!.Value, 0.02);
        Assert.Equal("81.8 %", SupplyMatch.Torque(Knowledge, 230, 208).Text);
        Assert.Equal(45, SupplyMatch.Torque(Knowledge, 115, 77).Value!.Value, 0.5);
    }
}
