using System.Numerics;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Machines;

/// <summary>What a fault does to torque or current, against the sound motor: an estimate, always as a range.</summary>
/// <param name="Low">The least effect over the circuits that such a motor may have.</param>
/// <param name="High">The greatest effect.</param>
public sealed record EffectRange(Quoted Low, Quoted High);

/// <summary>Says in numbers what a weak capacitor, a low supply, a reversed half or a lost line does.</summary>
public sealed class MachineEffects(TradeKnowledge knowledge)
{
    private const string Percent = "percent";

    /// <summary>Starting current on another supply, in percent of that on the plate's volts.</summary>
    /// <param name="volts">Volts at the motor.</param>
    /// <param name="plateVolts">Volts of the plate.</param>
    public Quoted StartingAmpsOnSupply(double volts, double plateVolts) => knowledge.Rules["effect-supply-amps"]
        .Quote(100 * volts / plateVolts, Percent, Volts(volts, plateVolts));

    /// <summary>Starting torque with a weak start capacitor, in percent of that with a sound one.</summary>
    /// <param name="markedMicrofarads">What the motor is made for.</param>
    /// <param name="measuredMicrofarads">What the capacitor has.</param>
    public EffectRange StartingTorqueWithCapacitor(double markedMicrofarads, double measuredMicrofarads)
    {
        var (rule, share) = (knowledge.Rules["effect-weak-capacitor"], measuredMicrofarads / markedMicrofarads);
        var ratios = StartBranches().SelectMany(windings => new[] { rule["design-low"], rule["design-high"] }.Select(design => Ratio(windings, design, share)));
        return Range(rule, ratios, $"{Units.Text(measuredMicrofarads, "microfarad")} of {Units.Text(markedMicrofarads, "microfarad")}");
    }

    /// <summary>Starting current with one half of the run winding reversed, in percent of the usual starting current.</summary>
    public EffectRange StartingAmpsWithHalfReversed()
    {
        var rule = knowledge.Rules["effect-half-reversed"];
        return Range(rule, SinglePhase().SelectMany(circuit => FaultEffects.ReversedHalf(circuit, rule)).Select(percent => percent / 100), "published circuits of small single-phase motors");
    }

    /// <summary>Line current with one of three lines lost while running on at the same torque, in percent of the current before.</summary>
    public EffectRange AmpsWithLineLost()
    {
        var rule = knowledge.Rules["effect-line-lost"];
        var feed = new Feed(Math.Sqrt(3), 60, 4);
        var ratios = EstimatedCircuits.ThreePhase(knowledge, Math.Sqrt(3), 1).All.SelectMany(circuit => new[] { rule["slip-low"], rule["slip-high"] }.Select(slip =>
        {
            var before = ThreePhase.At(circuit, feed, slip, new Losses());
            return ThreePhase.SlipWithLineOpen(circuit, feed, before.Torque) is { } same
                ? ThreePhase.LineOpen(circuit, feed, same, new Losses()).Line.Amps / before.Amps
                : double.NaN;
        })).Where(double.IsFinite);
        return Range(rule, ratios, "published circuits of small three-phase motors");
    }

    /// <summary>Line current with one of three lines lost at standstill, in percent of the usual starting current; there is no torque.</summary>
    public Quoted StartingAmpsWithLineLost() => knowledge.Rules["effect-line-lost-start"]
        .Quote(100 * Math.Sqrt(3) / 2, Percent, "two phases in series across one line voltage");

    private static string Volts(double volts, double plateVolts) => $"{Units.Text(volts, "volt")} on {Units.Text(plateVolts, "volt")}";

    private static double Ratio(LockedRotor windings, double design, double share)
    {
        const double Hertz = 1;
        var sound = design * (windings.MicrofaradsForRightAngle(Hertz) ?? double.NaN);
        return windings.At(1, Hertz, share * sound).TorqueFactor / windings.At(1, Hertz, sound).TorqueFactor;
    }

    private static EffectRange Range(TradeRule rule, IEnumerable<double> ratios, string inputs)
    {
        var all = ratios.ToList();
        return new(rule.Quote(100 * all.Min(), Percent, inputs), rule.Quote(100 * all.Max(), Percent, inputs));
    }

    private IReadOnlyList<MachineCircuit> SinglePhase() => EstimatedCircuits.SinglePhase(knowledge, 1, 1).All;

    private IEnumerable<LockedRotor> StartBranches()
    {
        var rule = knowledge.Rules["effect-weak-capacitor"];
        return SinglePhase().SelectMany(circuit => new[] { rule["turns-low"], rule["turns-high"] }.Select(turns => new TwoWinding
        {
            Main = circuit,
            StartR = turns * turns * circuit.R1 * rule["start-ohms"],
            StartX = turns * turns * circuit.X1,
            TurnsRatio = turns,
        }.Standstill()));
    }
}
