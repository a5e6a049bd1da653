using WireCoach.Rules.Machines;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Torque and line current over the speed, of a connection as it was found against the right one: an estimate, with its range.</summary>
/// <param name="knowledge">The circuits that such motors have.</param>
public sealed class FieldCurve(TradeKnowledge knowledge)
{
    private const int Steps = 40;

    /// <summary>The curve of a connection in percent of the right one: torque of its greatest torque, amps of its starting amps.</summary>
    /// <param name="found">The connection.</param>
    /// <param name="right">The right connection of the same motor on its own volts.</param>
    /// <returns>The points from standstill to the field's speed; none for a motor with brushes, or where no current may flow at all.</returns>
    public IReadOnlyList<FieldCurvePoint> Of(FoundConnection found, FoundConnection right)
    {
        if (found.IsCommutator || FoundCheck.Of(found).Count > 0 || FoundCheck.Of(right).Count > 0 || new FoundNodes(found).IsShorted || new FoundNodes(right).IsShorted)
        {
            return [];
        }

        var circuits = found.Coils.Any(coil => coil.IsPhase) ? EstimatedCircuits.ThreePhase(knowledge, Math.Sqrt(3), 1) : EstimatedCircuits.SinglePhase(knowledge, 1, 1);
        var all = circuits.All.Select(circuit => Shares(found, right, circuit)).ToList();
        var usual = Shares(found, right, circuits.Usual);
        return
        [
            .. usual.Select((point, index) => new FieldCurvePoint(
                100 * (1 - point.Slip), point.Torque, LowHigh.Of(all.Select(one => (double?)one[index].Torque))!, point.Amps, LowHigh.Of(all.Select(one => (double?)one[index].Amps))!)),
        ];
    }

    private List<(double Slip, double Torque, double Amps)> Shares(FoundConnection found, FoundConnection right, MachineCircuit circuit)
    {
        var (seen, sound) = (Points(found, circuit), Points(right, circuit));
        var (torque, amps) = (sound.Max(point => point.Torque), sound[0].Amps);
        return [.. seen.Select(point => (point.Slip, 100 * point.Torque / torque, 100 * point.Amps / amps))];
    }

    /// <summary>Over the speed in the direction in which it starts; where a start switch stands, with the jump that it makes when it opens.</summary>
    private List<(double Slip, double Torque, double Amps)> Points(FoundConnection found, MachineCircuit circuit)
    {
        var (closed, open) = (Model(found, circuit), Model(found with { Switches = [.. found.Switches.Select(contact => contact with { Closed = false })] }, circuit));
        var (opens, forward) = (knowledge.Rules["check-switch-opens"]["slip"], closed.At(1).Torque >= 0);
        (double, double, double) Point(FieldModel model, double slip)
        {
            var point = model.Turning(slip, forward);
            return (slip, forward ? point.Torque : -point.Torque, point.LineAmps);
        }

        var slips = Enumerable.Range(0, Steps + 1).Select(step => 1 - ((double)step / Steps)).ToList();
        return
        [
            .. slips.Where(slip => slip > opens).Append(opens).Select(slip => Point(closed, slip)),
            .. slips.Where(slip => slip < opens).Prepend(opens).Select(slip => Point(open, slip)),
        ];
    }

    private FieldModel Model(FoundConnection found, MachineCircuit circuit)
    {
        var judge = new Judge(new FoundNodes(found), knowledge);
        return new FieldModel(judge, judge.Places ?? throw new InvalidOperationException("A shorted supply has no curve."), knowledge, circuit);
    }
}

/// <summary>One speed of a curve.</summary>
/// <param name="SpeedPercent">Speed in percent of the field's.</param>
/// <param name="Torque">Torque in percent of the greatest of the right connection.</param>
/// <param name="Torques">Its range.</param>
/// <param name="Amps">Line amps in percent of the starting amps of the right connection.</param>
/// <param name="AmpsRange">Their range.</param>
public sealed record FieldCurvePoint(double SpeedPercent, double Torque, LowHigh Torques, double Amps, LowHigh AmpsRange);
