using WireCoach.Rules.Cases;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Tests.Heat;

/// <summary>Whole reports on heat, starts and first runs, as they were looked at.</summary>
public sealed class WrittenReportsTest
{
    private static readonly HeatInput Cold = new() { ColdOhms = 10, ColdCelsius = 20, HotOhms = 12.6, AmbientCelsius = 24, InsulationClass = "B" };

    private static readonly PlateFields Pump = Plate("115/230", "10.4/5.2", "1140");

    [Fact]
    public void Each_report_is_the_one_that_was_looked_at() => Sheets.Hold("reports.txt", [.. Winding(), .. Unequal(), .. Starts(), .. Runs(), .. OnOne()]);

    private static IEnumerable<(string About, object Report)> Winding() =>
    [
        ("a winding well within its class", WindingHeat.Judge(Trade.Knowledge, Cold)),
        ("a winding near its limit", WindingHeat.Judge(Trade.Knowledge, Cold with { HotOhms = 13.4 })),
        ("a winding above its limit, high up, with a service factor", WindingHeat.Judge(Trade.Knowledge, Cold with { HotOhms = 14.2, AltitudeMetres = 1500, ServiceFactor = 1.15, AmbientCelsius = 45 })),
        ("an aluminium winding of class F", WindingHeat.Judge(Trade.Knowledge, Cold with { Material = "aluminium", InsulationClass = "f" })),
        ("readings of a winding that cannot be", WindingHeat.Judge(Trade.Knowledge, new() { ColdOhms = -1, ColdCelsius = -300, HotOhms = double.NaN, AmbientCelsius = 99, AltitudeMetres = -5, ServiceFactor = 0.5, Material = "tin" })),
        ("a winding hotter than any insulation stands", WindingHeat.Judge(Trade.Knowledge, Cold with { HotOhms = 30 })),
        ("a winding colder than its surroundings", WindingHeat.Judge(Trade.Knowledge, Cold with { HotOhms = 10, AmbientCelsius = 45 })),
        ("an aluminium winding by its other name", WindingHeat.Judge(Trade.Knowledge, Cold with { Material = "aluminum" })),
        ("a height that no place has", WindingHeat.Judge(Trade.Knowledge, Cold with { AltitudeMetres = 1e6 })),
        ("the rise of a reading that cannot be", WindingHeat.Rises(Trade.Knowledge, Cold with { HotOhms = -1 })),
        ("the rise alone", WindingHeat.Rises(Trade.Knowledge, Cold)),
        ("ohms at another temperature", WindingHeat.Resistance(Trade.Knowledge, 2.5, 60, 25, "copper")),
        ("ohms at another temperature that cannot be", WindingHeat.Resistance(Trade.Knowledge, 0, -300, 999, "tin")),
    ];

    private static IEnumerable<(string About, object Report)> Unequal() =>
    [
        .. new double[][] { [230, 230, 230], [230, 231, 228], [462, 463, 455], [240, 230, 210], [400, 400], [230, 0, 230], [232.3, 230, 227.7], [241.5, 230, 218.5], [230, 231, 1e6], [1, 1, 2.9] }.Select(volts => ($"volts {string.Join(' ', volts)}", (object)Unbalance.OfVolts(Trade.Knowledge, volts))),
        .. new double[][] { [10, 10, 12], [8.1, 8.4, 8], [10, 10, 10.9], [24.2, 24.2, 0], [0, 0, 0], [1, -1, 1], [1, 1, 1e9], [10, 10, 0.9] }.Select(amps => ($"amps {string.Join(' ', amps)}", (object)Unbalance.OfAmps(Trade.Knowledge, amps))),
        ("ohms that are alike", WindingReadings.Judge(Trade.Knowledge, [4.02, 4.02, 4.10], 0.01)),
        ("ohms that differ", WindingReadings.Judge(Trade.Knowledge, [1.2, 1.22, 1.31], 0.001)),
        ("ohms that a common meter cannot tell apart", WindingReadings.Judge(Trade.Knowledge, [1.2, 1.22, 1.31])),
        ("ohms to be read again", WindingReadings.Judge(Trade.Knowledge, [30, 30.2, 31.6])),
        ("ohms that are no delta", WindingReadings.Judge(Trade.Knowledge, [1, 1, 2.5])),
        ("ohms of a meter without a last digit", WindingReadings.Judge(Trade.Knowledge, [1, 1, 1], -1)),
        ("a roll that follows the supply", RollTest.Judge(Trade.Knowledge, [[22, 18, 18], [22, 18, 18], [22, 18, 18]])),
        ("a roll that follows the motor", RollTest.Judge(Trade.Knowledge, [[22, 18, 18], [18, 18, 22], [18, 22, 18]])),
        ("a roll that follows both", RollTest.Judge(Trade.Knowledge, [[22, 18, 18], [18, 22, 18], [22, 18, 18]])),
        ("a roll without a difference", RollTest.Judge(Trade.Knowledge, [[18, 18, 18.2], [18.1, 18, 18], [18, 18.1, 18]])),
        ("a roll with a small difference", RollTest.Judge(Trade.Knowledge, [[19.5, 18, 18], [19.5, 18, 18], [19.5, 18, 18]])),
        ("a roll of two high lines", RollTest.Judge(Trade.Knowledge, [[22, 22, 18], [22, 22, 18], [22, 22, 18]])),
        ("a roll without any current", RollTest.Judge(Trade.Knowledge, [[0, 0, 0], [1, 2, 3], [1, 2, 3]])),
        ("ohms of nothing", WindingReadings.Judge(Trade.Knowledge, [0, 1, 1])),
        ("ohms on a fine meter, alike", WindingReadings.Judge(Trade.Knowledge, [0.25, 0.25, 0.25], 0.0001)),
        ("half a roll", RollTest.Judge(Trade.Knowledge, [[1, 2, 3], [1, 2]])),
    ];

    private static IEnumerable<(string About, object Report)> Starts()
    {
        StartingMotor Motor(PlateFields plate, double volts, int phases, string? family, double? amps = 10, Region region = Region.NorthAmerica) =>
            new() { Plate = plate, Volts = volts, Phases = phases, Family = family, Amps = amps, Region = region };
        var three = Plate("230/460", "28/14", "1750").With("horsepower", PlateValue.Of(10));
        return
        [
            ("a start by the plate's locked-rotor amps", ExpectedStart.Of(Trade.Knowledge, Motor(three.With("lockedRotorAmps", PlateValue.Parse("162/81")), 460, 3, "three-phase"))),
            ("a start by one figure on a plate of two volts", ExpectedStart.Of(Trade.Knowledge, Motor(three.With("lockedRotorAmps", PlateValue.Parse("162")), 460, 3, "three-phase"))),
            ("a start by the code letter", ExpectedStart.Of(Trade.Knowledge, Motor(three.With("codeLetter", PlateValue.Parse("H")), 460, 3, "three-phase"))),
            ("a start by the last code letter", ExpectedStart.Of(Trade.Knowledge, Motor(three.With("codeLetter", PlateValue.Parse("V")), 460, 3, "three-phase"))),
            ("a start by the kind, elsewhere", ExpectedStart.Of(Trade.Knowledge, Motor(three, 400, 3, "three-phase", region: Region.Iec))),
            ("a start of direct current", ExpectedStart.Of(Trade.Knowledge, Motor(Plate("240", "20", "1750"), 240, 0, "dc"))),
            ("a start of which nothing is known", ExpectedStart.Of(Trade.Knowledge, Motor(PlateFields.Empty, 230, 1, null, null))),
            ("a start by one figure on a plate of one voltage", ExpectedStart.Of(Trade.Knowledge, Motor(Plate("230", "5.2", "1140").With("lockedRotorAmps", PlateValue.Parse("30")), 230, 1, "capacitor-start"))),
            ("too many starts of a start capacitor", Judged(Motor(Plate("230", "5.2", "1140"), 230, 1, "capacitor-start"), 30)),
            ("too many starts by the table", Judged(Motor(three, 460, 3, "three-phase"), 30)),
            ("too many starts in a row", Judged(Motor(Plate("230", "5.2", "1140"), 230, 1, "psc"), 4)),
            ("few starts", Judged(Motor(three, 460, 3, "three-phase"), 1)),
            ("starts in an hour", Starting.PerHour(Trade.Knowledge, 25, 4, 50)),
            ("starts in an hour, no load said", Starting.PerHour(Trade.Knowledge, 10, 2, null)),
            ("starts in an hour, beyond the table", Starting.PerHour(Trade.Knowledge, 300, 4, null)),
            ("running up", Starting.RunUp(Trade.Knowledge, 0.5, 1750, 8)),
            ("running up, in pounds", Starting.RunUpPounds(Trade.Knowledge, 50, 1750, 20)),
            ("a soft start", Shares(Starting.SoftStarter(Trade.Knowledge, 0.5))),
            ("an autotransformer", Shares(Starting.Autotransformer(Trade.Knowledge, 0.65))),
            ("star-delta", Shares(Starting.StarDelta(Trade.Knowledge))),
            ("a lost line", new[] { LostLine.Running(Trade.Knowledge, 14), LostLine.AtStandstill(Trade.Knowledge, 81), LostLine.HottestDeltaWinding(Trade.Knowledge, 14), LostLine.HottestDeltaShare(Trade.Knowledge, 14, 14) }),
        ];
    }

    /// <summary>One start a minute.</summary>
    private static object Judged(StartingMotor motor, int starts) =>
        StartDuty.Judge(Trade.Knowledge, motor, [.. Enumerable.Range(0, starts).Select(minute => new DateTimeOffset(2026, 3, 2, 8, minute, 0, TimeSpan.Zero))]) is { } said ? said : "nothing";

    private static Quoted[] Shares((Quoted Current, Quoted Torque) reduced) => [reduced.Current, reduced.Torque];

    private static IEnumerable<(string About, object Report)> Runs()
    {
        FirstRunJudgement Of(Fact.Running run, bool coupled = false, double factor = 1) =>
            FirstRun.Judge(Trade.Knowledge, Pump.With("serviceFactor", PlateValue.Of(factor)), 230, 5.2, run, coupled);
        return
        [
            ("a good run", Of(new() { Volts = 241, Amps = 4.1, Rpm = 1180, Direction = "right", Celsius = 50 })),
            ("a run that is stopped", Of(new() { Volts = 190, Amps = 15, Rpm = 700, Direction = "wrong", Celsius = 90, Outcome = "slow" })),
            ("a run at the edge", Of(new() { Volts = 208, Amps = 5.4, Rpm = 1120 })),
            ("a light run above its field", Of(new() { Volts = 230, Amps = 0.5, Rpm = 1260 })),
            ("a run under load", Of(new() { Volts = 230, Amps = 5.2, Rpm = 1140 }, coupled: true)),
            ("a run under load within its service factor", Of(new() { Volts = 230, Amps = 6, Rpm = 1120 }, coupled: true, factor: 1.25)),
            ("a run beyond its load", Of(new() { Volts = 230, Amps = 6.9, Rpm = 1100 }, coupled: true, factor: 1.25)),
            ("a hot frame", Of(new() { Celsius = 91 })),
        ("a run on volts that are a little high", Of(new() { Volts = 246 })),
        ("a run on volts that are a little low", Of(new() { Volts = 215 })),
        ("by the only amps of the plate", FirstRun.Judge(Trade.Knowledge, Plate("230", "5.2", "1140"), null, null, new() { Amps = 4 })),
        ("amps without any volts", FirstRun.Judge(Trade.Knowledge, PlateFields.Empty.With("amps", PlateValue.Of(5)), null, null, new() { Amps = 4 })),
        ("by the connection, whatever was measured", FirstRun.Judge(Trade.Knowledge, Pump, 115, 10.4, new() { Volts = 231, Amps = 10 })),
        ("it hummed", Of(new() { Outcome = "hummed" })),
            ("it tripped", Of(new() { Outcome = "tripped" })),
            ("it did nothing", Of(new() { Outcome = "nothing" })),
            ("three lines, one of them high", FirstRun.Judge(Trade.Knowledge, Pump, 230, 5.2, new() { Amps = 4 }, lines: [4, 4, 5])),
            ("three lines, one of them lost", FirstRun.Judge(Trade.Knowledge, Pump, 230, 5.2, new() { Amps = 4 }, lines: [8, 8, 0])),
            ("without a plate", FirstRun.Judge(Trade.Knowledge, PlateFields.Empty, null, null, new() { Volts = 230, Amps = 4, Rpm = 1700 })),
            ("by the plate's own pair", FirstRun.Judge(Trade.Knowledge, Pump, null, null, new() { Volts = 235, Amps = 4.4, Rpm = 1180 })),
            ("a speed that fits no field", FirstRun.Judge(Trade.Knowledge, Plate("230", "5.2", "2222"), 230, 5.2, new() { Rpm = 2200 })),
        ];
    }

    private static IEnumerable<(string About, object Report)> OnOne() =>
    [
        ("on one phase", OnOnePhase.Estimate(Trade.Knowledge, 750, 230, 230, 50)),
        ("on one phase, in star", OnOnePhase.Estimate(Trade.Knowledge, 750, 400, 230, 50)),
        ("on one phase, too large", OnOnePhase.Estimate(Trade.Knowledge, 3000, 230, 230, 50)),
        ("a drive from one phase", OnOnePhase.DriveInput(Trade.Knowledge, 2, 230, 0.85, 0.65)),
    ];

    private static PlateFields Plate(string volts, string amps, string rpm) => PlateFields.Empty.With("volts", PlateValue.Parse(volts)).With("amps", PlateValue.Parse(amps))
        .With("rpm", PlateValue.Parse(rpm)).With("hertz", PlateValue.Of(60));
}
