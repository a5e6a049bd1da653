using WireCoach.Rules.Cases;
using WireCoach.Rules.Machines;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What a cause does to torque and current in figures, where the case holds what they rest on.</summary>
/// <param name="knowledge">The facts of the trade.</param>
internal sealed class CauseEffects(TradeKnowledge knowledge)
{
    private readonly MachineEffects _effects = new(knowledge);

    /// <summary>The figures for a cause; none where nothing was measured or the cause has none.</summary>
    /// <param name="cause">A cause id.</param>
    /// <param name="file">The case.</param>
    public IReadOnlyList<Statement> Of(string cause, CaseFile file) => cause switch
    {
        "start-capacitor-weak" => WeakCapacitor(file),
        "low-supply-voltage" or "undersized-cord-or-long-run" => LowVolts(file),
        "lost-phase" => LostLine(),
        "run-half-reversed" => [Ranged(Statement.Of("effect.half-reversed"), _effects.StartingAmpsWithHalfReversed())],
        _ => [],
    };

    /// <summary>Starting torque with what the capacitor has left of its marking.</summary>
    public IReadOnlyList<Statement> WeakCapacitor(CaseFile file) =>
        file.Capacitors.FindLast(capacitor => capacitor is { Present: true, Use: not "run", Microfarads: not null, MeasuredMicrofarads: > 0 }) is { Microfarads: { } marked, MeasuredMicrofarads: { } measured }
        && measured < marked
            ? [Ranged(Statement.Of("effect.weak-capacitor", ("measured", Units.Text(measured, "microfarad")), ("marked", Units.Text(marked, "microfarad"))), _effects.StartingTorqueWithCapacitor(marked, measured))]
            : [];

    /// <summary>Amps of a motor that runs on with one of its three lines lost, and of one that stands.</summary>
    public IReadOnlyList<Statement> LostLine() =>
    [
        Ranged(Statement.Of("effect.line-lost"), _effects.AmpsWithLineLost()),
        Statement.Of("effect.line-lost-start").With("amps", _effects.StartingAmpsWithLineLost()),
    ];

    /// <summary>Torque on the volts that were read at the motor, or else on those of the supply.</summary>
    private List<Statement> LowVolts(CaseFile file)
    {
        var read = file.BenchTests.FindLast(test => test is { Test: "voltage-at-motor-starting", Value: > 0 })?.Value
            ?? file.Runs.FindLast(run => run.Volts > 0)?.Volts ?? file.Supply?.Volts;
        if (read is not { } volts || file.Plate.Volts.Count == 0)
        {
            return [];
        }

        var rated = file.Plate.Volts.MinBy(one => Math.Abs(Math.Log(one / (file.Supply?.Volts ?? volts))));
        return volts >= rated ? [] : [Statement.Of("effect.low-volts", ("volts", Units.Text(volts, "volt")), ("plate", Units.Text(rated, "volt")))
            .With("torque", SupplyMatch.Torque(knowledge, rated, volts)).With("amps", _effects.StartingAmpsOnSupply(volts, rated))];
    }

    private static Statement Ranged(Statement said, EffectRange range) => said.With("low", range.Low).With("high", range.High);
}
