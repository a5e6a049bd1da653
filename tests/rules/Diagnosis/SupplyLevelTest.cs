using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;

namespace WireCoach.Rules.Tests.Diagnosis;

public sealed class SupplyLevelTest
{
    private readonly SupplyLevel _level = new(Trade.Knowledge);

    [Theory]
    [InlineData(Region.Iec, 198, "low")]
    [InlineData(Region.Iec, 258, "high")]
    [InlineData(Region.Iec, 240, null)]
    [InlineData(Region.Iec, 250, null)] // a tenth above
    [InlineData(Region.Iec, 207, null)]
    [InlineData(Region.Iec, 380, null)]
    [InlineData(Region.Iec, 415, null)]
    [InlineData(Region.NorthAmerica, 262, "high")]
    [InlineData(Region.NorthAmerica, 104, "low")]
    [InlineData(Region.NorthAmerica, 110, null)] // an old name of 120 V
    [InlineData(Region.NorthAmerica, 100, null)] // neither 120 V nor, as these are alternating, a drive's 90 V
    [InlineData(Region.NorthAmerica, 220, null)]
    [InlineData(Region.NorthAmerica, 255, "high")]
    [InlineData(Region.NorthAmerica, 277, null)] // a system of its own
    [InlineData(Region.NorthAmerica, 600, null)]
    public void Volts_of_a_supply_are_held_against_the_nearest_that_the_region_has(Region region, double volts, string? outcome) =>
        Assert.Equal(outcome, _level.Of(File(region, new Fact.Supply { Volts = volts })));

    [Theory]
    [InlineData(198, 230, "low")]
    [InlineData(208, 230, null)]
    [InlineData(446, 400, "high")]
    [InlineData(400, 400, null)]
    [InlineData(115, 230, null)] // so far off that it is meant for another connection
    public void A_plate_says_better_what_they_should_be(double volts, double plate, string? outcome) =>
        Assert.Equal(outcome, _level.Of(File(Region.Iec, new Fact.Supply { Volts = volts }, new Fact.Plate { Field = "volts", Value = PlateValue.Of([plate]), Unit = "volt" })));

    [Theory]
    [InlineData(198, "low")]
    [InlineData(104, null)]
    [InlineData(100, "low")]
    public void Of_two_plate_volts_the_nearest_say_what_they_should_be(double volts, string? outcome) =>
        Assert.Equal(outcome, _level.Of(File(Region.Iec, new Fact.Supply { Volts = volts }, new Fact.Plate { Field = "volts", Value = PlateValue.Of([115, 230]), Unit = "volt" })));

    private static CaseFile File(Region region, params Fact[] facts) => CaseFile.From(new CaseOpening(Role.Technician, region), facts);
}
