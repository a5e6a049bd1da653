using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Capacitors;

/// <summary>Everything about one capacitor: health, replacement, combination, charge.</summary>
public static class CapacitorCalculator
{
    /// <summary>The report, or what is wrong with the question.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="input">The capacitor and what is asked.</param>
    public static Answer<CapacitorReport> Calculate(TradeKnowledge knowledge, CapacitorInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var problems = CapacitorProblems.Of(knowledge, input).ToList();
        var print = knowledge.Rules["capacitor-print"];
        return problems.Count > 0 ? Answer<CapacitorReport>.Refused(problems) : Report(knowledge, input with
        {
            Marked = input.Marked.ByPrint(print),
            Candidates = [.. input.Candidates.Select(candidate => candidate.ByPrint(print))],
        });
    }

    private static CapacitorReport Report(TradeKnowledge knowledge, CapacitorInput input)
    {
        var measured = CapacitorHealth.Measured(knowledge, input);
        var band = CapacitorHealth.Band(knowledge, input.Marked);
        var (verdict, why) = input.Damaged ? ("open", Statement.Of("capacitors.damaged")) : CapacitorHealth.Verdict(knowledge, input, measured, band);
        var combined = input.Series.Count > 0 ? CapacitorSets.Series(knowledge, input.Series)
            : input.Parallel.Count > 0 ? CapacitorSets.Parallel(knowledge, input.Parallel) : null;
        var combinedVolts = input.Series.Count > 0 ? CapacitorSets.SeriesVolts(knowledge, input.Series)
            : input.Parallel.Count > 0 ? CapacitorSets.ParallelVolts(knowledge, input.Parallel) : null;
        var microfarads = input.Marked.MicrofaradsTo ?? input.Marked.Microfarads ?? combined?.Value ?? measured?.Value;
        var worst = Worst(knowledge, input, combinedVolts);
        var safe = CapacitorSafety.SafeVolts(knowledge).Value!.Value;
        var to = input.ToVolts ?? safe;
        return new CapacitorReport
        {
            MeasuredMicrofarads = measured,
            Band = band,
            Verdict = verdict,
            Why = why,
            Replacements = [.. input.Candidates.Select(candidate => CapacitorFit.Of(knowledge, input.Marked, candidate))],
            CombinedMicrofarads = combined,
            CombinedVolts = combinedVolts,
            EnergyJoules = microfarads is { } held && worst is not null ? CapacitorSafety.Energy(knowledge, held, worst) : null,
            BleedSeconds = microfarads is { } charge && worst is not null && input.BleedOhms is { } ohms && worst.Value > to
                ? CapacitorSafety.Seconds(knowledge, ohms, charge, worst.Value!.Value, to) : null,
            BleedWatts = worst is not null && input.BleedOhms is { } resistor ? Watts(knowledge, worst, resistor) : null,
            BleedKilohms = microfarads is { } size && worst is not null && input.WithinSeconds is { } seconds && worst.Value > to
                ? Kilohms(knowledge, size, worst.Value!.Value, to, seconds) : null,
            RunVolts = input is { MotorVolts: { } volts, TurnsRatio: { } ratio } ? RunVolts(knowledge, volts, ratio) : null,
            UsualMicrofarads = UsualMicrofarads.Of(knowledge, input),
            Discharge = microfarads is { } stored && worst is not null ? CapacitorSafety.From(knowledge, stored, worst) : null,
            Notes = [.. CapacitorNotes.Of(knowledge, input, measured, worst, microfarads)],
            Meter = CapacitorNotes.Meter(knowledge),
        };
    }

    /// <summary>Volts across a run capacitor while the motor runs.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="motorVolts">Volts across the main winding.</param>
    /// <param name="turnsRatio">Turns of the start winding to those of the main winding.</param>
    public static Quoted RunVolts(TradeKnowledge knowledge, double motorVolts, double turnsRatio) => knowledge.Rules["capacitor-run-volts"].Quote(
        motorVolts * Math.Sqrt(1 + turnsRatio * turnsRatio), "volt", $"{Units.Text(motorVolts, "volt")}, a = {Units.Number(turnsRatio)}");

    /// <summary>Direct volts at the start: as said, else at worst by the mark.</summary>
    private static Quoted? Worst(TradeKnowledge knowledge, CapacitorInput input, Quoted? combinedVolts) =>
        input.FromVolts is { } said ? knowledge.Rules["capacitor-peak-volts"].Quote(said, "volt", "direct volts as given")
        : (input.Marked.Volts ?? combinedVolts?.Value) is { } marked ? CapacitorSafety.PeakVolts(knowledge, marked)
        : null;

    private static Quoted Watts(TradeKnowledge knowledge, Quoted worst, double ohms) => knowledge.Rules["capacitor-bleed-watts"].Quote(
        worst.Value!.Value * worst.Value.Value / ohms, "watt", $"{worst.Text}, {Units.Text(ohms, "ohm", 4)}", null, worst.Trail);

    private static Quoted Kilohms(TradeKnowledge knowledge, double microfarads, double fromVolts, double toVolts, double seconds)
    {
        var rule = knowledge.Rules["capacitor-bleed-ohms"];
        var ohms = seconds / (microfarads / rule["microfarads-per-farad"] * Math.Log(fromVolts / toVolts));
        return rule.Quote(ohms / rule["ohms-per-kilohm"], "kilohm",
            $"{Units.Text(seconds, "second")}, {Units.Text(microfarads, "microfarad", 4)}, {Units.Text(fromVolts, "volt", 4)} to {Units.Text(toVolts, "volt")}");
    }
}
