using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Machines;

/// <summary>Circuits that a motor of a kind may have, estimated from its plate: never one, always a range.</summary>
/// <param name="Low">The circuit with the least resistances and reactances met.</param>
/// <param name="Usual">The usual circuit.</param>
/// <param name="High">The circuit with the greatest resistances and reactances met.</param>
public sealed record EstimatedCircuits(MachineCircuit Low, MachineCircuit Usual, MachineCircuit High)
{
    /// <summary>All three, and the mixed ones with rotor and stator apart, so that a range over them holds what is met.</summary>
    public IReadOnlyList<MachineCircuit> All =>
    [
        Low, Usual, High,
        Low with { R2 = High.R2, X2 = High.X2 }, High with { R2 = Low.R2, X2 = Low.X2 }, Low with { Xm = High.Xm }, High with { Xm = Low.Xm },
    ];

    /// <summary>Circuits of a single-phase motor that runs on its main winding.</summary>
    /// <param name="knowledge">The ranges.</param>
    /// <param name="volts">Plate volts across the main winding.</param>
    /// <param name="amps">Plate amps of the main winding.</param>
    public static EstimatedCircuits SinglePhase(TradeKnowledge knowledge, double volts, double amps) =>
        Of(knowledge.Rules["estimated-single-phase-circuit"], volts / amps);

    /// <summary>Circuits of a three-phase motor, one phase as a star.</summary>
    /// <param name="knowledge">The ranges.</param>
    /// <param name="volts">Plate volts between lines.</param>
    /// <param name="amps">Plate amps of a line.</param>
    public static EstimatedCircuits ThreePhase(TradeKnowledge knowledge, double volts, double amps) =>
        Of(knowledge.Rules["estimated-three-phase-circuit"], volts / Math.Sqrt(3) / amps);

    private static EstimatedCircuits Of(TradeRule rule, double ohms)
    {
        MachineCircuit Circuit(Func<string, double> figure) => new(
            figure("r1") * ohms, figure("x1") * ohms, figure("r2") * ohms, figure("x2") * ohms, figure("xm") * ohms);
        return new(
            Circuit(name => rule[$"{name}-low"]),
            Circuit(name => (rule[$"{name}-low"] + rule[$"{name}-high"]) / 2),
            Circuit(name => rule[$"{name}-high"]));
    }
}
