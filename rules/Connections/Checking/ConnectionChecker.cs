using System.Globalization;
using System.Numerics;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Solves a connection as it was found, and says what is right or wrong with it.</summary>
public sealed class ConnectionChecker(TradeKnowledge knowledge)
{
    /// <summary>Below this share of both fields together their difference turns nothing.</summary>
    private const double NoTurn = 0.01;

    /// <summary>Checks a connection.</summary>
    /// <param name="found">The connection.</param>
    /// <returns>What was found; or what is wrong with the question.</returns>
    public Answer<CheckResult> Check(FoundConnection found)
    {
        var wrong = FoundCheck.Of(found);
        return wrong.Count > 0 ? Answer<CheckResult>.Refused(wrong) : found.IsCommutator ? Brushed(found) : Checked(found);
    }

    /// <summary>The verdict alone.</summary>
    /// <param name="found">A sound connection.</param>
    internal Verdict VerdictOf(FoundConnection found) =>
        found.IsCommutator ? new CommutatorJudge(new FoundNodes(found), knowledge).Verdict : Judged(found).Verdict;

    /// <summary>What is right or wrong by the volts that the connection gives each coil of an induction motor.</summary>
    /// <param name="found">A sound connection.</param>
    internal Judge Judged(FoundConnection found) => new(new FoundNodes(found), knowledge);

    private CheckResult Brushed(FoundConnection found)
    {
        var judge = new CommutatorJudge(new FoundNodes(found), knowledge);
        return new CheckResult
        {
            Verdict = judge.Verdict,
            Coils = [.. found.Coils.Select(judge.Coil)],
            Findings = judge.Findings,
            Seen = [judge.Seen],
            Change = judge.Verdict == Verdict.Correct ? null : SmallestChange.Of(judge.Nodes, this),
            Trail = CheckTrail.Of(judge.Nodes),
        };
    }

    private CheckResult Checked(FoundConnection found)
    {
        var judge = Judged(found);
        if (judge.Places is null)
        {
            return new CheckResult
            {
                Verdict = judge.Verdict,
                Coils = [.. found.Coils.Select(coil => new CheckedCoil(coil.Id, null, null, null, null))],
                Findings = judge.Findings,
                Rotation = FieldRotation.None,
                PhaseOrder = "none",
                Seen = [Statement.Of("check.seen-short")],
                Change = SmallestChange.Of(judge.Nodes, this),
                Trail = CheckTrail.Of(judge, null),
            };
        }

        var model = new FieldModel(judge, judge.Places, knowledge);
        var rest = model.At(1);
        var point = found.Slip is { } slip ? model.At(slip) : rest;
        var phases = found.Coils.Any(coil => coil.IsPhase);
        var sense = Math.Abs(rest.Torque) <= NoTurn * rest.GapWatts ? 0 : Math.Sign(rest.Torque);
        var times = Times(judge, model, rest);
        return new CheckResult
        {
            Verdict = judge.Verdict,
            Coils = [.. Enumerable.Range(0, found.Coils.Count).Select(index => Coil(judge, model, point, index))],
            LineAmps = model.IsToScale ? point.LineAmps : null,
            Findings = judge.Findings,
            Rotation = phases ? null : sense switch { > 0 => FieldRotation.StartFollowsMain, < 0 => FieldRotation.MainFollowsStart, _ => FieldRotation.None },
            PhaseOrder = !phases ? null : sense switch { > 0 => "a-b-c", < 0 => "a-c-b", _ => "none" },
            Seen = Expected.Of(judge, times, sense != 0, knowledge),
            StartingTimes = times,
            Change = judge.Verdict == Verdict.Correct ? null : SmallestChange.Of(judge.Nodes, this),
            Trail = CheckTrail.Of(judge, point),
        };
    }

    /// <summary>Where all coils are fed with the right sense, the volts are those that it settles at while running; otherwise, or where a slip was asked for, those of the coupled machine.</summary>
    private static CheckedCoil Coil(Judge judge, FieldModel model, FieldPoint point, int index)
    {
        var coil = judge.Nodes.Found.Coils[index];
        var design = judge.Places!.Weak.Contains(coil.Id) || (judge.IsOneField && judge.Nodes.Found.Slip is null);
        var volts = design ? judge.Volts[index] : point.Volts[index];
        // What is left of a coil that nothing feeds is rounding.
        volts = volts.Magnitude < 1e-6 * coil.RatedVolts ? 0 : volts;
        return new CheckedCoil(
            coil.Id, volts.Magnitude, volts.Phase * 180 / Math.PI, 100 * volts.Magnitude / coil.RatedVolts,
            model.IsToScale ? point.Amps[index].Magnitude : null);
    }

    /// <summary>The coil that is worst off at standstill, against what it draws in a right connection.</summary>
    private static double? Times(Judge judge, FieldModel model, FieldPoint rest) => judge.Verdict == Verdict.Correct ? 1 : Enumerable.Range(0, rest.Amps.Count)
        .Where(index => !judge.Places!.Weak.Contains(judge.Nodes.Coils[index].Id))
        .Select(index => rest.Amps[index].Magnitude / model.UsualStartingAmps(index)).DefaultIfEmpty(0).Max();
}

/// <summary>How a check was worked out.</summary>
internal static class CheckTrail
{
    public static IReadOnlyList<TrailStep> Of(FoundNodes nodes) =>
        [new("nodes", "leads of one joint, and joints of one conductor, are one node", $"{nodes.Found.Joints.Count} joints", $"{nodes.Count} nodes")];

    public static IReadOnlyList<TrailStep> Of(Judge judge, FieldPoint? point) =>
    [
        .. Of(judge.Nodes),
        .. judge.Volts.Select((volts, index) => new TrailStep(
            $"volts of {judge.Nodes.Coils[index].Id}", "run coils divide the line by their ratings, start branches follow",
            $"{judge.Nodes.Coils[index].Coil!.RatedVolts.ToString("G5", CultureInfo.InvariantCulture)} V rated",
            string.Create(CultureInfo.InvariantCulture, $"{volts.Magnitude:G5} V at {Degrees(volts):F0}°"))),
        .. point is null ? Array.Empty<TrailStep>() : [new("field", "forward and backward field of all coils, rotor at the slip", $"slip {Units.Number(point.Slip)}", "currents, and the way the field turns")],
    ];

    private static double Degrees(Complex volts) => volts.Magnitude < 1e-6 ? 0 : volts.Phase * 180 / Math.PI;
}
