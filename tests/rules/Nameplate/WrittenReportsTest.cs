using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;

namespace WireCoach.Rules.Tests.Nameplate;

/// <summary>Whole reports on plates, supplies and replacements, as they were looked at.</summary>
public sealed class WrittenReportsTest
{
    private static readonly string[] Sound =
    [
        "horsepower 0.75; volts 115/230; amps 10.4/5.2; rpm 1140; hertz 60; phases 1; codeLetter K; insulationClass B; duty CONT",
        "horsepower 0.33; volts 115; amps 6.6; powerFactor 62; efficiency 56; phases 1; type split phase",
        "kilowatts 1.5; volts 230/400; rpm 1430; hertz 50; phases 3; type three-phase",
        "kilowatts 0.18; volts 230; phases 1; type PSC; rpm 1370",
        "horsepower 0.05; type shaded pole; volts 115",
        "horsepower 1.5; type CSIR; volts 115/230; amps 18/9; phases 1",
        "horsepower 1.25; type capacitor start; volts 230; phases 1",
        "horsepower 7.5; volts 208-230/460; amps 22-20/10; phases 3; rpm 3500; hertz 60; codeLetter V",
        "horsepower 7.5; volts 460; amps 10; phases 3; efficiency 88.5",
        "kilowatts 55; volts 400; phases 3; powerFactor 0.87; amps 98",
        "horsepower 1; volts 90; amps 10; type PMDC; rpm 1750",
        "horsepower 0.5; volts 120; amps 6; type universal; rpm 9000",
        "horsepower 900; volts 460; phases 3",
        "horsepower 1; volts 230",
        "rpm 1140",
        "rpm 1450",
        "rpm 985; hertz 50; poles 6; kilowatts 2.2",
        "rpm 1425/1725; hertz 50/60; kilowatts 0.75",
        "rpm 300",
        "rpm 1750; hertz 60; type DC shunt; poles 2",
        "kilowatts 1.5; volts 230; type three phase; rpm 1430",
        "duty CONT; timeRating S2 30 min",
        "amps 10; serviceFactorAmps 13.5; serviceFactor 1.25",
        "volts 230/460; amps 9; horsepower 3; phases 3",
        "volts 230; amps 6; horsepower 1; phases 3; serviceFactor 2; hertz 60",
        "volts 120/240; amps 9.8/4.9",
        "volts 100/400; amps 8/2",
        "volts 230/796; amps 6.9/2",
        "volts 220/240; amps 3/3.3",
        "volts 208-230; amps 3.3-3.2",
        "volts 230-208; amps 3.0-3.3",
        "volts 230-208; amps 2-3.3",
        "amps 10; serviceFactorAmps 10",
        "amps 10; serviceFactorAmps 13; serviceFactor 1.25",
        "amps 10; serviceFactorAmps 13.6; serviceFactor 1.25",
        "insulationClass class F; temperatureRise 110",
        "insulationClass H; rise 150",
        "insulationClass X",
        "horsepower 10; phases 1; volts 230; amps 50",
        "horsepower 3; volts 230; amps 17; phases 1",
        "horsepower 3; volts 230; amps 8; phases 1",
        "horsepower 3; volts 230; amps 34; phases 1",
        "codeLetter Z; horsepower 2",
        "codeLetter J; horsepower 2",
        "codeLetter J; horsepower 2; volts 230; phases 1",
        "kilowatts 1.1; volts 230; phases 1; amps 7.4; hertz 50",
        "kilowatts 0.75; volts 230/400; amps 3.3/1.9; powerFactor 0.78; efficiency 72; phases 3; hertz 50",
    ];

    private static readonly string[] Refused =
    [
        "", "volts -5", "volts 1000000", "amps 1000000", "amps ten", "horsepower 1000000", "kilowatts 1000000", "rpm 900000", "hertz 5", "hertz 5000", "serviceFactor 0.5", "serviceFactor 9",
        "efficiency 140", "efficiency 1.3", "powerFactor 1.2", "powerFactor 0", "serviceFactorAmps 1000000", "lockedRotorAmps 1000000000", "temperatureRise 5000", "ambientCelsius 5000", "poles 1", "poles 7",
        "poles 1000", "capacitorMicrofarads 10000000", "phases 2", "phases two; volts 0",
    ];

    private static readonly (string Old, string Made)[] Replaced =
    [
        ("horsepower 1; volts 230; amps 6; rpm 1725; phases 1; frame 56", "horsepower 1; volts 230; amps 6; rpm 1725; phases 1; frame 56"),
        ("horsepower 1; volts 230; amps 6; rpm 1725; phases 1; frame 56", "kilowatts 1.5; volts 230; amps 9; rpm 1140; phases 1; frame 90L"),
        ("kilowatts 1.5; volts 230/400; amps 6/3.4; rpm 1430; hertz 50; frame 90L", "kilowatts 0.75; volts 400/690; amps 1.9/1.1; rpm 2850; hertz 50; frame 90l"),
        ("kilowatts 1.5; volts 230/400", "volts 110/115; amps 9; hertz 60"),
        ("kilowatts 1.5; hertz 50; phases 3", "kilowatts 1.5; hertz 60; phases 3"),
        ("phases 3", "phases 1; hertz 60"),
        ("frame 56; amps 5", "frame 48"),
        ("rpm 1725; frame 56", "amps 5"),
        ("volts 115/230; amps 10/5", "volts 220/240; amps 6/5.5"),
        ("volts 115/230; amps 10", "volts 230; amps 6"),
    ];

    [Fact]
    public void Each_report_is_the_one_that_was_looked_at() => Sheets.Hold("reports.txt", [.. Plates(), .. Refusals(), .. Supplies(), .. Tables(), .. Replacements()]);

    private static IEnumerable<(string About, object Report)> Plates() => PlateWordsTest.Plates().Select(row => row.Data.Item1).Concat(Sound)
        .Select(plate => ($"a plate: {plate}", (object)PlateReading.Read(Trade.Knowledge, PlateWordsTest.Of(plate), null)));

    private static IEnumerable<(string About, object Report)> Refusals() =>
        Refused.Select(plate => ($"no plate: {plate}", (object)PlateReading.Read(Trade.Knowledge, PlateWordsTest.Of(plate), null)));

    private static IEnumerable<(string About, object Report)> Supplies() =>
    [
        .. new (double Plate, double Supply)[] { (230, 230), (230, 241), (230, 220), (230, 245), (230, 251), (230, 213), (230, 208), (230, 190), (230, 260), (200, 208), (460, 480), (220, 198), (240, 207) }
            .Select(volts => ($"{volts.Supply} V on {volts.Plate} V", (object)new object[] { SupplyMatch.Volts(Trade.Knowledge, volts.Plate, volts.Supply), SupplyMatch.Torque(Trade.Knowledge, volts.Plate, volts.Supply) })),
        .. new (double Volts, double Hertz)[] { (230, 60), (230, 50), (192, 50), (276, 60), (200, 60), (150, 60), (245, 60), (300, 60), (265, 70) }
            .Select(supply => ($"{supply.Volts} V {supply.Hertz} Hz on 230 V 60 Hz", (object)SupplyMatch.VoltsPerHertz(Trade.Knowledge, supply.Volts, supply.Hertz, 230, 60))),
        .. new (double Volts, double Hertz)[] { (0, 0), (5, 2), (6, 0), (10, 0), (11, 0), (0, -5), (0, 3.5), (8, -3), (-10, 3), (4, -2), (-4, 2) }
            .Select(off => ($"{off.Volts} % of volts and {off.Hertz} % of hertz", (object)new[] { SupplyMatch.Band(Trade.Knowledge, Region.NorthAmerica, off.Volts, off.Hertz), SupplyMatch.Band(Trade.Knowledge, Region.Iec, off.Volts, off.Hertz) })),
    ];

    private static IEnumerable<(string About, object Report)> Tables() => new (string Table, double Size, double Volts)[]
    {
        ("nec-430-250", 10, 230), ("nec-430-250", 9, 230), ("nec-430-250", 10.2, 230), ("nec-430-250", 900, 460), ("nec-430-250", 0.1, 460), ("nec-430-250", 10, 300), ("nec-430-250", 10, 20),
        ("nec-430-248", 1, 115), ("nec-430-248", 30, 230), ("nec-430-247", 1, 90), ("nec-430-247", 1, 700), ("iec-current-three-phase", 1.5, 400), ("iec-current-three-phase", 500, 400),
        ("iec-current-three-phase", 1.5, 120), ("iec-current-single-phase", 1.1, 230), ("iec-current-single-phase", 100, 230),
    }.Select(asked => ($"{asked.Size} at {asked.Volts} V in {asked.Table}", (object)CurrentTable.Find(Trade.Knowledge, asked.Table, asked.Size, asked.Volts)));

    private static IEnumerable<(string About, object Report)> Replacements() =>
        Replaced.Select(two => ($"{two.Old} by {two.Made}", (object)ReplacementMotor.Compare(Trade.Knowledge, PlateWordsTest.Of(two.Old), PlateWordsTest.Of(two.Made))));
}
