using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Machines;

/// <summary>Answers a machine question from the plate alone: the usual circuit of such a motor, and every figure with its range.</summary>
internal static class MachineEstimate
{
    private static readonly (string Name, Func<MachineAnswer, double?> Figure)[] Figures =
    [
        ("amps", answer => answer.Amps), ("powerFactor", answer => answer.PowerFactor), ("torque", answer => answer.Torque), ("shaftTorque", answer => answer.ShaftTorque),
        ("outputWatts", answer => answer.OutputWatts), ("startingTorque", answer => answer.StartingTorque), ("startingAmps", answer => answer.StartingAmps),
        ("breakdownTorque", answer => answer.BreakdownTorque), ("breakdownSlip", answer => answer.BreakdownSlip), ("mainAmps", answer => answer.MainAmps),
        ("startAmps", answer => answer.StartAmps), ("capacitorVolts", answer => answer.CapacitorVolts),
    ];

    public static MachineAnswer Of(MachineQuestion question, TradeKnowledge knowledge)
    {
        var volts = question.PlateVolts ?? question.Feed.Volts;
        var circuits = question.Kind == MachineQuestion.ThreePhaseKind
            ? EstimatedCircuits.ThreePhase(knowledge, volts, question.PlateAmps!.Value)
            : EstimatedCircuits.SinglePhase(knowledge, volts, question.PlateAmps!.Value);
        var rule = knowledge.Rules["effect-weak-capacitor"];
        var turns = new[] { rule["turns-low"], rule["turns-high"] };
        List<MachineQuestion> all = [.. Wound(question, circuits.Usual, [turns.Average()], rule), .. circuits.All.SelectMany(circuit => Wound(question, circuit, turns, rule))];
        List<MachineAnswer> answers = [.. all.Select(MachineAnswers.Solved)];
        var usual = answers[0];
        return usual with
        {
            Basis = "estimate",
            Circuit = circuits.Usual,
            Estimates = [.. Figures.Select(one => (one.Name, Range: LowHigh.Of(answers.Select(one.Figure)))).Where(one => one.Range is not null).Select(one => new EstimatedFigure(one.Name, one.Range!.Low, one.Range.High))],
            Effects = FaultEffects.Of(all, knowledge),
            Curve = usual.Curve is null ? null :
            [
                .. usual.Curve.Select((point, index) => point with
                {
                    Torques = LowHigh.Of(answers.Select(answer => (double?)answer.Curve![index].Torque)),
                    AmpsRange = LowHigh.Of(answers.Select(answer => (double?)answer.Curve![index].Amps)),
                }),
            ],
        };
    }

    /// <summary>The question of a circuit; of a machine with two windings with the start windings that it may have.</summary>
    private static IEnumerable<MachineQuestion> Wound(MachineQuestion question, MachineCircuit circuit, IReadOnlyList<double> turns, TradeRule rule) =>
        question.Kind != MachineQuestion.TwoWindingKind
            ? [question.With(circuit)]
            : (question.TurnsRatio is { } known ? [known] : turns).Select(ratio => question.With(circuit) with
            {
                TurnsRatio = ratio,
                StartR = question.StartR ?? (ratio * ratio * circuit.R1 * rule["start-ohms"]),
                StartX = question.StartX ?? (ratio * ratio * circuit.X1),
            });
}
