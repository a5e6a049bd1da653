using WireCoach.Rules.Capacitors;

namespace WireCoach.Rules.Tests.Capacitors;

/// <summary>Whole reports on capacitors, as they were looked at.</summary>
public sealed class WrittenReportsTest
{
    private static readonly CapacitorPart Run = new(40, Volts: 370, Use: "run", TolerancePercent: 5);

    private static readonly CapacitorPart Start = new(189, 227, 165, "start");

    [Fact]
    public void Each_report_is_the_one_that_was_looked_at() => Sheets.Hold("reports.txt", Inputs().Select(one => (one.About, (object)CapacitorCalculator.Calculate(Trade.Knowledge, one.Input))));

    private static IEnumerable<(string About, CapacitorInput Input)> Inputs() =>
    [
        ("a run capacitor that reads low", new() { Marked = Run, Measured = new() { Microfarads = 37.1 } }),
        ("a run capacitor within its print", new() { Marked = Run, Measured = new() { Microfarads = 41.9 } }),
        ("a run capacitor without a printed tolerance that has drifted", new() { Marked = new(40, Volts: 440, Use: "run"), Measured = new() { Microfarads = 37.5 } }),
        ("a run capacitor just where drifting begins", new() { Marked = new(40, Use: "run"), Measured = new() { Microfarads = 42 } }),
        ("a run capacitor at the end of its band", new() { Marked = new(40, Use: "run"), Measured = new() { Microfarads = 44 } }),
        ("a run capacitor with a printed range", new() { Marked = new(38, 42, 440, "run"), Measured = new() { Microfarads = 42.5 } }),
        ("a start capacitor measured by volts and amps", new() { Marked = Start, Measured = new() { Volts = 115, Amps = 8.9, Hertz = 60 } }),
        ("a start capacitor above its print", new() { Marked = Start, Measured = new() { Microfarads = 240 } }),
        ("a start capacitor far above its print", new() { Marked = Start, Measured = new() { Microfarads = 273 } }),
        ("a single figure on a start capacitor", new() { Marked = new(200, Volts: 250, Use: "start"), Measured = new() { Microfarads = 215 } }),
        ("a short by volts and amps", new() { Marked = Start, Hertz = 50, Measured = new() { Volts = 4, Amps = 9 } }),
        ("a short on the ohmmeter", new() { Marked = Start, Measured = new() { Ohms = 2 } }),
        ("ohms that prove nothing", new() { Marked = Start, Measured = new() { Ohms = 200_000 } }),
        ("a dead one", new() { Marked = Run, Measured = new() { Open = true } }),
        ("a burst one", new() { Marked = Run, Damaged = true, Measured = new() { Microfarads = 40 } }),
        ("a measured one without a print", new() { Measured = new() { Microfarads = 40 } }),
        ("nothing but a print of unknown use", new() { Marked = new(60, Volts: 250) }),
        ("what may take the place of a run capacitor", new()
        {
            Marked = Run,
            Candidates = [new(40, Volts: 440, Use: "run"), new(42, Volts: 370, Use: "run"), new(43, Volts: 330, Use: "run"), new(40, Volts: 440, Use: "start"), new(40, Use: "run"), new(null, Volts: 440, Use: "run"), new(40, Volts: 440)],
        }),
        ("what may take the place of a start capacitor", new()
        {
            Marked = Start,
            Candidates = [new(189, 227, 250, "start"), new(233, 280, 165, "start"), new(200, Volts: 165, Use: "run"), new(200, Volts: 110, Use: "start")],
        }),
        ("what may take the place of a start capacitor of one figure", new() { Marked = new(200, Volts: 165, Use: "start"), Candidates = [new(199, Volts: 165, Use: "start"), new(220, Volts: 165, Use: "start"), new(245, Volts: 165, Use: "start")] }),
        ("what may take the place of one that cannot be read", new() { Marked = new(null), Candidates = [new(40, Volts: 440, Use: "run")] }),
        ("two in series", new() { Series = [new(10, Volts: 440), new(40, Volts: 370)] }),
        ("two in series, one unmarked", new() { Series = [new(10, Volts: 440), new(40)] }),
        ("two in parallel", new() { Parallel = [new(40, Volts: 440), new(5, Volts: 370)] }),
        ("two in parallel, one unmarked", new() { Parallel = [new(30, 50, 440), new(5)] }),
        ("a resistor across it", new() { Marked = new(400, Volts: 165, Use: "start"), BleedOhms = 15_000 }),
        ("a resistor across it, down to 50 V", new() { Marked = Run, BleedOhms = 220_000, FromVolts = 523, ToVolts = 50 }),
        ("a resistor that takes it down in a minute", new() { Marked = Run, WithinSeconds = 60, ToVolts = 50 }),
        ("too little on it to bleed", new() { Marked = new(400, Volts: 3), BleedOhms = 15_000, WithinSeconds = 60 }),
        ("little on it", new() { Marked = new(4, Volts: 60, Use: "run") }),
        ("much on a great one", new() { Marked = new(2000, Volts: 30, Use: "start") }),
        ("a high one", new() { Marked = new(5, Volts: 660, Use: "run") }),
        ("a run capacitor of a 60 Hz motor", new() { Marked = new(40, Use: "run"), Hertz = 60, MotorVolts = 230, TurnsRatio = 1.2, Horsepower = 0.75 }),
        ("a run capacitor of a 50 Hz motor", new() { Marked = new(120, Use: "run"), Hertz = 50, MotorVolts = 230, Kilowatts = 1.1 }),
        ("a run capacitor of a 115 V motor", new() { Marked = new(20, Use: "run"), Hertz = 60, MotorVolts = 115, Horsepower = 0.5 }),
        ("a start capacitor of a motor whose power is known", new() { Marked = Start, Hertz = 60, MotorVolts = 115, Horsepower = 0.6 }),
        ("a run capacitor that is too large for the table at 50 Hz", new() { Marked = new(60, Use: "run"), Hertz = 50, MotorVolts = 230, Kilowatts = 5 }),
        ("a run capacitor at 50 Hz on 115 V", new() { Marked = new(60, Use: "run"), Hertz = 50, MotorVolts = 115, Kilowatts = 0.5 }),
        ("a start capacitor at 50 Hz", new() { Marked = Start, Hertz = 50, MotorVolts = 230, Kilowatts = 0.5 }),
        ("a small one that is nearly dead", new() { Marked = new(100, Use: "run"), Measured = new() { Microfarads = 1.5 } }),
        ("parts that cannot be", new() { Candidates = [new(0, Volts: 440, Use: "run")], Parallel = [new(null, Use: "left")] }),
        ("hertz that nobody has", new() { Marked = Run, Hertz = 2000, Measured = new() { Microfarads = 40, Hertz = 2000 } }),
        ("two powers", new() { Marked = Run, Horsepower = 2, Kilowatts = 0.5 }),
        ("a discharge to more than there is", new() { Marked = Run, WithinSeconds = 5, FromVolts = 3 }),
        ("measured at one frequency on a supply of another", new() { Marked = Start, Hertz = 50, Measured = new() { Volts = 115, Amps = 8.9, Hertz = 60 } }),
        ("nothing", new()),
        ("figures that cannot be", new()
        {
            Marked = new(-5, Volts: 20_000, TolerancePercent: 500, Use: "left"),
            Hertz = 5, BleedOhms = 0, FromVolts = 0, ToVolts = double.NaN, WithinSeconds = -1, MotorVolts = 1e6, Horsepower = 0, Kilowatts = 1e6, TurnsRatio = 99,
            Measured = new() { Microfarads = -1, Volts = -1, Amps = -1, Hertz = 1, Ohms = -1 },
        }),
        ("questions that contradict themselves", new()
        {
            Marked = new(50, 40), Series = [new(null)], Parallel = [new(10)], Measured = new() { Open = true, Short = true }, Horsepower = 1, Kilowatts = 5, FromVolts = 40, ToVolts = 50, BleedOhms = 1000,
        }),
        ("volts without amps", new() { Measured = new() { Volts = 230 } }),
        ("amps without volts", new() { Measured = new() { Amps = 3 } }),
        ("volts and amps without hertz", new() { Measured = new() { Volts = 230, Amps = 3 } }),
    ];
}
