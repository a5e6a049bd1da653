using WireCoach.Rules.Cases;
using WireCoach.Rules.Supply;

namespace WireCoach.Rules.Tests.Supply;

/// <summary>Whole plans of supplies and refusals, as they were looked at.</summary>
public sealed class WrittenReportsTest
{
    private static readonly SupplyInput American = new() { Horsepower = 10, Volts = 230, Phases = 3, PlateAmps = 27, PlateVolts = 230, ServiceFactor = 1.15, Rpm = 1750, CodeLetter = "G", LengthMetres = 30, Edition = 2023 };

    private static readonly SupplyInput International = new() { Region = Region.Iec, Kilowatts = 4, Volts = 400, Phases = 3, PlateAmps = 8.2, PlateVolts = 400, Rpm = 1440, LengthMetres = 40, PowerFactor = 0.83, Efficiency = 0.86 };

    [Fact]
    public void Each_plan_is_the_one_that_was_looked_at() => Sheets.Hold("plans.txt", Inputs().Select(one => (one.About, (object)SupplyPlanner.Plan(Trade.Knowledge, one.Input))));

    private static IEnumerable<(string About, SupplyInput Input)> Inputs() =>
    [
        ("10 hp on 230 V", American),
        ("the same on a long line, with a power factor", American with { LengthMetres = 180, PowerFactor = 0.8 }),
        ("the same on a line far too long", American with { LengthMetres = 400 }),
        ("the same at its terminals of 60 °C, six together in a warm place", American with { InsulationCelsius = 90, TerminalCelsius = 60, Together = 6, AmbientCelsius = 42 }),
        ("the same with fuses, star-delta, on a feeder", American with { Protection = "dual-element-fuse", Starter = "star-delta", OtherMotorAmps = [5, 42] }),
        ("the same with an instantaneous trip, autotransformer", American with { Protection = "instantaneous-trip-breaker", MotorType = "design-b", Starter = "autotransformer", Tap = 0.65 }),
        ("the same with its load and a single-phase line", American with { LoadKilogramSquareMetres = 0.5, AcceleratingNewtonMetres = 30, SinglePhaseVolts = 230, PowerFactor = 0.8, Efficiency = 0.88 }),
        ("the same on a plate for 208 V and 50 Hz", American with { PlateVolts = 208, PlateHertz = 50, Hertz = 60 }),
        ("the same with plate amps that cannot be", American with { PlateAmps = 12 }),
        ("the same with plate amps that are doubtful", American with { PlateAmps = 60 }),
        ("the same by an older edition", American with { Edition = 2008 }),
        ("a small one with a cord", new() { Horsepower = 0.75, Volts = 115, Phases = 1, PlateAmps = 10.4, PlateVolts = 115, CordConnected = true }),
        ("a larger one with a cord", new() { Horsepower = 3, Volts = 115, Phases = 1, CordConnected = true }),
        ("a size between two rows", new() { Horsepower = 0.6, Volts = 115, Phases = 1, PlateAmps = 11 }),
        ("two horsepower on thin wire", new() { Horsepower = 2, Volts = 115, Phases = 1, PlateAmps = 22, InsulationCelsius = 90, TerminalCelsius = 90 }),
        ("a direct-current motor behind a rectifier", new() { Horsepower = 5, Volts = 240, Phases = 1, MotorType = "dc", Rectifier = "half-wave", PlateAmps = 20 }),
        ("a direct-current motor", new() { Horsepower = 5, Volts = 240, Phases = 1, MotorType = "dc", PlateAmps = 20 }),
        ("kilowatts in North America", new() { Kilowatts = 7.5, Volts = 460, Phases = 3 }),
        ("by plate amps alone", new() { PlateAmps = 12, Volts = 460, Phases = 3 }),
        ("4 kW on 400 V", International),
        ("the same with a breaker D in the United Kingdom", International with { Protection = "circuit-breaker-d", UnitedKingdom = true }),
        ("the same with fuses, star-delta, in TT", International with { Protection = "fuse-gg", Starter = "star-delta", Earthing = "tt" }),
        ("the same with a motor protection breaker, laid open and warm", International with { Protection = "motor-protection-breaker", Laying = "c", AmbientCelsius = 45, Together = 3, InsulationCelsius = 90 }),
        ("the same with its fault", International with { FaultAmps = 1500, FaultSeconds = 0.4 }),
        ("the same on a very long line", International with { LengthMetres = 400 }),
        ("the same with its load", International with { LoadKilogramSquareMetres = 0.05, AcceleratingNewtonMetres = 20, SinglePhaseVolts = 230 }),
        ("a small three-phase motor wanted on one phase", International with { Kilowatts = 0.75, PlateAmps = 3.3, Volts = 230, PlateVolts = 230, SinglePhaseVolts = 230 }),
        ("one phase outside North America", new() { Region = Region.Iec, Kilowatts = 1.1, Volts = 230, Phases = 1, Protection = "motor-protection-breaker", PlateAmps = 7 }),
        ("horsepower outside North America", new() { Region = Region.Iec, Horsepower = 2, Volts = 400, Phases = 3 }),
        ("by plate amps alone outside North America", new() { Region = Region.Iec, PlateAmps = 30, Volts = 400, Phases = 3 }),
        ("a large one outside North America", new() { Region = Region.Iec, Kilowatts = 90, Volts = 400, Phases = 3, PlateAmps = 160 }),
        ("too large for one phase", new() { Horsepower = 15, Volts = 230, Phases = 1 }),
        ("too large for one phase outside North America", new() { Region = Region.Iec, Kilowatts = 15, Volts = 230, Phases = 1 }),
        ("too large for any table", new() { Horsepower = 900, Volts = 460, Phases = 3 }),
        ("too large for any table, in kilowatts", new() { Kilowatts = 700, Volts = 460, Phases = 3 }),
        ("too large for any table outside North America, in horsepower", new() { Region = Region.Iec, Horsepower = 100, Volts = 400, Phases = 3 }),
        ("too large for any conductor", new() { Horsepower = 200, Volts = 230, Phases = 3 }),
        ("too large for any conductor, in kilowatts", new() { Kilowatts = 150, Volts = 230, Phases = 3 }),
        ("too large for any conductor outside North America", International with { Kilowatts = null, PlateAmps = 600, Protection = "circuit-breaker-c" }),
        ("too large for any dial", International with { Kilowatts = null, PlateAmps = 600, Protection = "motor-protection-breaker" }),
        ("too large for any dial, by its kilowatts", new() { Region = Region.Iec, Kilowatts = 22, Volts = 400, Phases = 3, Protection = "motor-protection-breaker" }),
        ("a class CC fuse", American with { Protection = "class-cc-fuse" }),
        ("a direct-current motor behind a full bridge", new() { Horsepower = 5, Volts = 240, Phases = 1, MotorType = "dc", Rectifier = "full-wave", PlateAmps = 20, Material = "Copper" }),
        ("a start that is low", American with { LengthMetres = 75 }),
        ("a slow motor", American with { Rpm = 430, TemperatureRise = 40, ServiceFactor = null, PlateAmps = 32 }),
        ("a cord within its small circuit", new() { Horsepower = 0.5, Volts = 115, Phases = 1, CordConnected = true, PlateHertz = 50, PlateVolts = 115, Hertz = 60 }),
        ("an edition that is none", American with { Edition = 2010 }),
        ("a size between two rows outside North America", new() { Region = Region.Iec, Kilowatts = 2.6, Volts = 400, Phases = 3 }),
        ("plate amps that cannot be, outside North America", International with { PlateAmps = 2 }),
        ("plate amps that are doubtful, outside North America", International with { PlateAmps = 20 }),
        ("star-delta behind a breaker", International with { Starter = "star-delta", Earthing = "tn-s", Hertz = 50, PlateHertz = 60 }),
        ("two circuits side by side", International with { Together = 2 }),
        ("four circuits side by side", International with { Together = 4 }),
        ("too warm for its insulation", International with { AmbientCelsius = 70, InsulationCelsius = 90 }),
        ("no size", new() { Volts = 230 }),
        ("figures that cannot be", new()
        {
            Volts = 0, Horsepower = -1, Kilowatts = 0, PlateAmps = double.NaN, PlateVolts = 1e6, PlateHertz = 1, Hertz = 400, ServiceFactor = 0.5, TemperatureRise = 0, Rpm = 1e6, LengthMetres = -1,
            LoadKilogramSquareMetres = 0, AcceleratingNewtonMetres = -1, Tap = 2, SinglePhaseVolts = 0, PowerFactor = 1.1, Efficiency = 0, Together = 0, Edition = 1999, OtherMotorAmps = [0, 5], AmbientCelsius = 90, Phases = 2,
        }),
        ("words that nobody knows", new() { Volts = 230, Horsepower = 1, Protection = "wire", MotorType = "steam", Starter = "rope", Rectifier = "lamp", Laying = "z", Earthing = "it", Material = "aluminium", CodeLetter = "Z", InsulationCelsius = 70, TerminalCelsius = 80 }),
        ("words that do not belong there", new() { Volts = 230, Horsepower = 1, Kilowatts = 5, Phases = 3, MotorType = "single-phase", Rectifier = "full-wave", Tap = 0.5, FaultAmps = 100, Laying = "c", Earthing = "tn", UnitedKingdom = true }),
        ("words that do not belong to one phase", new() { Volts = 230, Horsepower = 1, Phases = 1, MotorType = "design-b", Starter = "star-delta", SinglePhaseVolts = 230, FaultSeconds = 1 }),
        ("an autotransformer without its tap", new() { Volts = 230, Horsepower = 1, Phases = 3, Starter = "autotransformer" }),
        ("direct current outside North America", new() { Region = Region.Iec, Volts = 230, Kilowatts = 1, MotorType = "dc", InsulationCelsius = 60, Edition = 1900 }),
        ("fuses on one phase outside North America", new() { Region = Region.Iec, Volts = 230, Kilowatts = 1.1, Phases = 1, Protection = "fuse-gg" }),
    ];
}
