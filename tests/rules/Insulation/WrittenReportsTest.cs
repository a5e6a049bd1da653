using WireCoach.Rules.Cases;
using WireCoach.Rules.Insulation;

namespace WireCoach.Rules.Tests.Insulation;

/// <summary>Whole reports on insulation and earth, as they were looked at.</summary>
public sealed class WrittenReportsTest
{
    [Fact]
    public void Each_report_is_the_one_that_was_looked_at() => Sheets.Hold("reports.txt",
    [
        .. Inputs().Select(one => (one.About, (object)InsulationJudge.Judge(Trade.Knowledge, one.Input))),
        .. Earths().Select(one => ($"earth: {one.About}", one.Report)),
    ]);

    private static InsulationInput Motor(params IReadOnlyList<InsulationReading> readings) => new() { RatedVolts = 230, Readings = readings };

    private static IEnumerable<(string About, InsulationInput Input)> Inputs() =>
    [
        ("a good one at 20 °C", Motor(new InsulationReading(200, 1, 20, 500))),
        ("a good one at 60 °C, of cast resin", Motor(new InsulationReading(30, 1, 60, 500)) with { System = "thermoset" }),
        ("a good one at 20 °C, of cast resin", Motor(new InsulationReading(30, 1, 20, 500)) with { System = "thermoset" }),
        ("a good one at 60 °C, of old varnish", Motor(new InsulationReading(30, 1, 60, 500)) with { System = "thermoplastic" }),
        ("exactly the least", Motor(new InsulationReading(5, 1, 40, 500))),
        ("between stop and least", Motor(new InsulationReading(4.9, 1, 40, 500))),
        ("exactly the stop", Motor(new InsulationReading(1, 1, 40, 500))),
        ("below the stop as read", Motor(new InsulationReading(0.9, 1, 20, 500))),
        ("below the stop once it is brought to 40 °C", Motor(new InsulationReading(2, 1, 15, 500))),
        ("no temperature, above the line", Motor(new InsulationReading(21, TestVolts: 500))),
        ("no temperature, on the line", Motor(new InsulationReading(20, TestVolts: 500))),
        ("no temperature, low", Motor(new InsulationReading(3, TestVolts: 500))),
        ("over the tester's range, cold", Motor(new InsulationReading(0.5, 1, 20, 500, OverRange: true))),
        ("too cold to be brought to 40 °C", Motor(new InsulationReading(500, 1, 2, 500))),
        ("a multimeter that shows something", Motor(new InsulationReading(0.2, TestVolts: 9))),
        ("a multimeter that shows nothing", Motor(new InsulationReading(20, TestVolts: 9, OverRange: true))),
        ("test volts too high", Motor(new InsulationReading(200, 1, 20, 2500))),
        ("test volts too low", Motor(new InsulationReading(200, 1, 20, 100))),
        ("test volts not said", Motor(new InsulationReading(200, 1, 20))),
        ("half a minute and one", Motor(new InsulationReading(100, 0.5, 20, 500), new InsulationReading(125, 1, 20, 500))),
        ("half a minute and one, questionable", Motor(new InsulationReading(100, 0.5, 20, 500), new InsulationReading(110, 1, 20, 500))),
        ("half a minute and one, very good", Motor(new InsulationReading(100, 0.5, 20, 500), new InsulationReading(170, 1, 20, 500))),
        ("half a minute and one, falling", Motor(new InsulationReading(100, 0.5, 20, 500), new InsulationReading(90, 1, 20, 500))),
        ("ten minutes on a wound stator of loose wire", Motor(new InsulationReading(100, 1, 20, 500), new InsulationReading(250, 10, 20, 500))),
        ("ten minutes on formed coils", Motor(new InsulationReading(800, 1, 20, 1000), new InsulationReading(2000, 10, 20, 1000)) with { Kind = "form-wound", RatedVolts = 2300 }),
        ("ten minutes on formed coils, low", Motor(new InsulationReading(800, 1, 20, 1000), new InsulationReading(1000, 10, 20, 1000)) with { Kind = "form-wound", RatedVolts = 2300 }),
        ("ten minutes on formed coils of class A", Motor(new InsulationReading(800, 1, 20, 1000), new InsulationReading(1240, 10, 20, 1000)) with { Kind = "form-wound", RatedVolts = 2300, InsulationClass = "a" }),
        ("ten minutes on formed coils, brittle", Motor(new InsulationReading(800, 1, 20, 1000), new InsulationReading(7200, 10, 20, 1000)) with { Kind = "form-wound", RatedVolts = 2300 }),
        ("ten minutes on formed coils, too high to say", Motor(new InsulationReading(6000, 1, 20, 1000), new InsulationReading(9000, 10, 20, 1000)) with { Kind = "form-wound", RatedVolts = 2300 }),
        ("ten minutes on formed coils of low volts", Motor(new InsulationReading(300, 1, 20, 500), new InsulationReading(900, 10, 20, 500)) with { Kind = "form-wound" }),
        ("ten minutes on an armature", Motor(new InsulationReading(300, 1, 20, 500), new InsulationReading(900, 10, 20, 500)) with { Kind = "armature" }),
        ("ten minutes on a field", Motor(new InsulationReading(300, 1, 20, 500), new InsulationReading(900, 10, 20, 500)) with { Kind = "field" }),
        ("an old winding", Motor(new InsulationReading(3, 1, 40, 500)) with { Kind = "old" }),
        ("falling since the last session", Motor(new InsulationReading(100, 1, 40, 500)) with { EarlierMegohms = [1000, 900, 800, 700, 400] }),
        ("falling slowly", Motor(new InsulationReading(300, 1, 40, 500)) with { EarlierMegohms = [1000, 600, 400] }),
        ("steady", Motor(new InsulationReading(390, 1, 40, 500)) with { EarlierMegohms = [400] }),
        ("earlier sessions, no temperature now", Motor(new InsulationReading(390, TestVolts: 500)) with { EarlierMegohms = [400] }),
        ("earlier sessions, no insulation test now", Motor(new InsulationReading(0.2, TestVolts: 9)) with { EarlierMegohms = [400] }),
        ("held for ten minutes", Motor(new InsulationReading(390, 10, 40, 500))),
        ("nothing said", new InsulationInput()),
        ("figures that cannot be", new InsulationInput
        {
            RatedVolts = 0, Kind = "loose", System = "paper", InsulationClass = "X", Edition = 1990, EarlierMegohms = [-1, 5],
            Readings = [new(-1, 0, -200, -1), new(double.NaN, 1e6, 1e4, 1e7)],
        }),
    ];

    private static IEnumerable<(string About, object Report)> Earths() =>
    [
        .. new[] { 0.05, 0.1, 0.11, 0.3, 0.31, 0.5, 0.51, 1, 1.01, 20 }.SelectMany(ohms => new[] { Region.NorthAmerica, Region.Iec }.Select(region =>
            ($"{ohms} Ω, {region}", (object)EarthJudge.Judge(Trade.Knowledge, ohms, region)))),
        .. new double[] { 5, 5.1, 12.5, 13, 200 }.Select(metres => ($"0.4 Ω over a cord of {metres} m", (object)EarthJudge.Judge(Trade.Knowledge, 0.4, Region.Iec, metres))),
        ("no path, North America", EarthJudge.NoPath(Trade.Knowledge, Region.NorthAmerica)),
        ("no path elsewhere", EarthJudge.NoPath(Trade.Knowledge, Region.Iec)),
        ("less than nothing", EarthJudge.Judge(Trade.Knowledge, -1, Region.Iec)),
        ("no number", EarthJudge.Judge(Trade.Knowledge, double.NaN, Region.Iec)),
        ("a cord without end", EarthJudge.Judge(Trade.Knowledge, 0.1, Region.Iec, 1e6)),
    ];
}
