using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>What a first run amounts to.</summary>
/// <param name="Verdict"><c>good</c>, <c>watch</c>, <c>unsettled</c> where a reading shows neither that it is sound nor that it is faulty, <c>stop</c>, or <c>incomplete</c> where nothing could be judged.</param>
/// <param name="Statements">What each reading says, the weightiest first.</param>
public sealed record FirstRunJudgement(string Verdict, IReadOnlyList<Statement> Statements);

/// <summary>Compares a first run with the plate: volts, amps, speed, heat, and what it did.</summary>
public static class FirstRun
{
    /// <summary>The judgement of one set of running readings.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="plate">The plate as far as it was read.</param>
    /// <param name="connectionVolts">Rated volts of the connection that was made; <see langword="null"/> to take the plate's nearest to the measured volts.</param>
    /// <param name="connectionAmps">Rated amps of that connection; <see langword="null"/> to take the plate's.</param>
    /// <param name="run">What was read.</param>
    /// <param name="coupled">Whether the load hangs on the shaft.</param>
    /// <param name="lines">Amps of the three lines of a three-phase motor; <see langword="null"/> where they were not all read.</param>
    public static FirstRunJudgement Judge(
        TradeKnowledge knowledge, PlateFields plate, double? connectionVolts, double? connectionAmps, Fact.Running run, bool coupled = false, IReadOnlyList<double>? lines = null)
    {
        ArgumentNullException.ThrowIfNull(plate);
        ArgumentNullException.ThrowIfNull(run);
        var pair = (connectionVolts ?? run.Volts) is { } near ? PlateConnections.At(knowledge, plate, near) : null;
        var volts = connectionVolts ?? pair?.Volts ?? (run.Volts is { } seen && plate.Volts.Count > 0 ? plate.Volts.MinBy(one => Math.Abs(Math.Log(one / seen))) : plate.Volts is [var only] ? only : null);
        var amps = connectionAmps ?? pair?.Amps ?? (plate.Amps.Count == 1 && plate.Volts.Count <= 1 ? plate.Amps[0] : null);
        var findings = new[]
        {
            FirstRunReadings.Outcome(knowledge, run),
            FirstRunReadings.Amps(knowledge, plate, amps, volts, lines is null ? run : run with { Amps = lines.Max() }, coupled),
            FirstRunReadings.Lines(knowledge, lines, coupled),
            FirstRunReadings.Volts(knowledge, volts, run),
            FirstRunReadings.Speed(knowledge, plate, run, coupled),
            FirstRunReadings.Direction(run),
            FirstRunReadings.Heat(knowledge, run),
        }.OfType<(int Weight, Statement Say)>().OrderByDescending(finding => finding.Weight).ToList();
        var judged = findings.Where(finding => finding.Weight >= 0).ToList();
        return new FirstRunJudgement(
            judged.Count == 0 ? "incomplete" : judged.Max(finding => finding.Weight) switch { 0 => "good", 1 => "watch", 2 => "unsettled", _ => "stop" },
            [.. findings.Select(finding => finding.Say)]);
    }
}
