using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>What it would take to run a three-phase motor from one phase.</summary>
/// <param name="Microfarads">Run capacitor, film type, in µF.</param>
/// <param name="StartMicrofarads">Start capacitor beside it, dropped out within seconds, in µF.</param>
/// <param name="CapacitorVolts">Least marked volts AC of the capacitor.</param>
/// <param name="PowerWatts">Shaft power that is left, in W: less of a larger motor.</param>
/// <param name="StartTorquePercent">Starting torque that is left, in percent of the rated start.</param>
public sealed record OnePhaseEstimate(Quoted Microfarads, QuotedRange StartMicrofarads, Quoted CapacitorVolts, QuotedRange PowerWatts, QuotedRange StartTorquePercent);

/// <summary>A three-phase motor on a single-phase supply: an estimate for explaining, with its limits. A drive is the better way.</summary>
public static class OnOnePhase
{
    /// <summary>The estimate, or why it may not be.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="shaftWatts">Rated shaft power in W.</param>
    /// <param name="windingVolts">What one winding is made for, in V: the plate's delta figure.</param>
    /// <param name="lineVolts">Volts of the supply.</param>
    /// <param name="hertz">Hertz of the supply.</param>
    public static Answer<OnePhaseEstimate> Estimate(TradeKnowledge knowledge, double shaftWatts, double windingVolts, double lineVolts, double hertz)
    {
        var rule = knowledge.Rules["one-phase-limits"];
        if (Math.Abs(lineVolts / windingVolts - 1) * 100 > knowledge.Rules["supply-deviation"]["most-percent"])
        {
            return new Problem("invalid-fact", "plateVolts", Statement.Of("heat.one-phase-volts", ("line", Units.Text(lineVolts, "volt"))));
        }

        if (shaftWatts > rule["most-kilowatts"] * 1000)
        {
            return new Problem("invalid-fact", "kilowatts", Statement.Of("heat.one-phase-power", ("most", Units.Text(rule["most-kilowatts"], "kilowatt"))));
        }

        var run = Capacitor(knowledge, shaftWatts, lineVolts, hertz);
        var microfarads = run.Value!.Value;
        return new OnePhaseEstimate(
            run,
            new(rule.Quote(rule["start-low"] * microfarads, "microfarad", run.Text), rule.Quote(rule["start-high"] * microfarads, "microfarad", run.Text)),
            rule.Quote(rule["least-capacitor-volts"], "volt", "film, for continuous use"),
            new(Power("power-low-percent"), Power("power-high-percent")),
            new(rule.Quote(rule["torque-low-percent"], "percent", "start"), rule.Quote(rule["torque-high-percent"], "percent", "start")));

        Quoted Power(string share) => rule.Quote(rule[share] / 100 * shaftWatts, "watt", Units.Text(shaftWatts, "watt", 4));
    }

    /// <summary>What is said where a three-phase motor is to run from one phase: what a run capacitor could do, and where that ends.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="shaftWatts">Rated shaft power in W, where it is known.</param>
    /// <param name="volts">Volts of the supply, where they are known.</param>
    /// <param name="hertz">Hertz of the supply, where they are known.</param>
    public static Statement Advice(TradeKnowledge knowledge, double? shaftWatts, double? volts, double? hertz)
    {
        var rule = knowledge.Rules["one-phase-limits"];
        if (shaftWatts > rule["most-kilowatts"] * 1000)
        {
            return Statement.Of("heat.three-phase-on-one-too-big").With("most", Quote("most-kilowatts", "kilowatt")).With("power", Units.Text(shaftWatts.Value / 1000, "kilowatt"));
        }

        var said = shaftWatts is { } watts && volts is { } line && hertz is { } frequency
            ? Statement.Of("heat.three-phase-on-one-estimate").With("microfarads", Capacitor(knowledge, watts, line, frequency))
            : Statement.Of("heat.three-phase-on-one");
        return said
            .With("low", Quote("power-low-percent", "percent"))
            .With("high", Quote("power-high-percent", "percent"))
            .With("start", Quote("torque-high-percent", "percent"))
            .With("most", Quote("most-kilowatts", "kilowatt"))
            .With("rating", Quote("least-capacitor-volts", "volt"));

        Quoted Quote(string figure, string unit) => rule.Quote(rule[figure], unit, "on one phase");
    }

    /// <summary>The run capacitor in µF.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="shaftWatts">Shaft power in W.</param>
    /// <param name="volts">Volts of the supply and of one winding.</param>
    /// <param name="hertz">Hertz of the supply.</param>
    public static Quoted Capacitor(TradeKnowledge knowledge, double shaftWatts, double volts, double hertz)
    {
        var rule = knowledge.Rules["steinmetz"];
        return rule.Quote(rule["microfarads-per-farad"] * 2 * shaftWatts / (Math.Sqrt(3) * 2 * Math.PI * hertz * volts * volts), "microfarad",
            $"{Units.Text(shaftWatts, "watt", 4)}, {Units.Text(volts, "volt")}, {Units.Text(hertz, "hertz")}");
    }

    /// <summary>Line amps of a drive that makes three phases of one.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="horsepower">Rated power in hp.</param>
    /// <param name="volts">Volts of the supply.</param>
    /// <param name="efficiency">Efficiency of motor and drive, a share.</param>
    /// <param name="powerFactor">Power factor of the drive's input, a share.</param>
    public static Quoted DriveInput(TradeKnowledge knowledge, double horsepower, double volts, double efficiency, double powerFactor)
    {
        var rule = knowledge.Rules["drive-input"];
        return rule.Quote(rule["watts"] * horsepower / (volts * efficiency * powerFactor), "amp",
            $"{Units.Text(horsepower, "horsepower")}, {Units.Text(volts, "volt")}, efficiency {Units.Number(efficiency)}, power factor {Units.Number(powerFactor)}");
    }
}
