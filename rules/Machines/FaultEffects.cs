using System.Numerics;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Machines;

/// <summary>What common faults do to a machine whose circuit is known, or to one of several that it may be.</summary>
internal static class FaultEffects
{
    /// <summary>The effects that concern the kind of machine, each over all circuits.</summary>
    /// <param name="machines">Questions with a circuit each, of one kind.</param>
    /// <param name="knowledge">How far a fault goes.</param>
    public static IReadOnlyList<FaultEffect> Of(IReadOnlyList<MachineQuestion> machines, TradeKnowledge knowledge)
    {
        var (first, low, weak) = (machines[0], knowledge.Rules["effect-supply-amps"]["shown"], knowledge.Rules["effect-weak-capacitor"]["shown"]);
        var effects = new List<FaultEffect>
        {
            Compared("low-supply", low, machines, machine => machine with { Volts = low * machine.Volts, LineVolts = machine.LineVolts?.Select(volts => low * volts).ToList(), StartVolts = low * machine.StartVolts }),
        };
        if (first.Microfarads is not null)
        {
            effects.Add(Compared("weak-capacitor", weak, machines, machine => machine with { Microfarads = weak * machine.Microfarads }));
        }

        if (first is { Kind: MachineQuestion.ThreePhaseKind, OpenLine: null, LineVolts: null })
        {
            effects.Add(Compared("lost-line", null, machines, machine => machine with { OpenLine = "a" }) with { AmpsAtSameTorque = LowHigh.Of(machines.Select(SameTorque)) });
        }

        if (first is { Kind: not MachineQuestion.ThreePhaseKind, IsLocked: false })
        {
            effects.Add(new("reversed-half", null, null, LowHigh.Of(machines.SelectMany(machine => ReversedHalf(Circuit(machine), knowledge.Rules["effect-half-reversed"])).Select(percent => (double?)percent)), null, null, null));
        }

        return effects;
    }

    /// <summary>Starting current with one half of the run winding reversed, in percent: opposed halves leave no common flux, so that only resistance and the leakage between them limit it.</summary>
    public static IEnumerable<double> ReversedHalf(MachineCircuit circuit, TradeRule rule) => new[] { rule["leakage-low"], rule["leakage-high"] }
        .Select(share => 100 * (circuit.Stator + circuit.Field(1)).Magnitude / new Complex(circuit.R1, share * (circuit.X1 + circuit.X2)).Magnitude);

    private static FaultEffect Compared(string fault, double? share, IReadOnlyList<MachineQuestion> machines, Func<MachineQuestion, MachineQuestion> with)
    {
        var pairs = machines.Select(machine => machine with { Curve = null, Slip = machine.AskedSlip, Rpm = null }).Select(machine => (Sound: MachineAnswers.Solved(machine), Faulty: MachineAnswers.Solved(with(machine)))).ToList();
        LowHigh? Percent(Func<MachineAnswer, double?> figure) => LowHigh.Of(pairs.Select(pair => figure(pair.Sound) is { } sound && sound != 0 ? 100 * figure(pair.Faulty) / sound : null));
        return new(
            fault, share, Percent(answer => answer.StartingTorque ?? answer.Starting?.TorqueFactor), Percent(answer => answer.StartingAmps),
            Percent(answer => answer.Torque), Percent(answer => answer.Amps), null);
    }

    private static double? SameTorque(MachineQuestion machine)
    {
        var (circuit, feed) = (Circuit(machine), machine.Feed);
        var sound = ThreePhase.At(circuit, feed, machine.AskedSlip, new Losses());
        return ThreePhase.SlipWithLineOpen(circuit, feed, sound.Torque) is { } slip ? 100 * ThreePhase.LineOpen(circuit, feed, slip, new Losses()).Line.Amps / sound.Amps : null;
    }

    private static MachineCircuit Circuit(MachineQuestion machine) => new(machine.R1!.Value, machine.X1!.Value, machine.R2!.Value, machine.X2!.Value, machine.Xm!.Value, machine.Rc);
}
