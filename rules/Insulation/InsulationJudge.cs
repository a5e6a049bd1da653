using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Insulation;

/// <summary>Judges insulation readings: corrected to 40 °C, against what such a winding must have.</summary>
public static class InsulationJudge
{
    /// <summary>What one insulation fact of a case amounts to, for a random-wound motor below 1 kV.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="fact">The reading.</param>
    /// <param name="ratedVolts">Rated volts of the winding.</param>
    public static Answer<InsulationReport> Judge(TradeKnowledge knowledge, Fact.Insulation fact, double ratedVolts)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return Judge(knowledge, new InsulationInput
        {
            RatedVolts = ratedVolts,
            Readings = [new InsulationReading(fact.Megohms, fact.AtMinute, fact.Celsius, fact.TestVolts)],
            EarlierMegohms = fact.EarlierMegohms,
        });
    }

    /// <summary>What the last insulation reading of a case amounts to; <see langword="null"/> where there is none, or it cannot be judged.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="file">The case. Where neither plate nor supply give volts, usual ones are taken: below 1 kV the least does not depend on them.</param>
    public static InsulationReport? Last(TradeKnowledge knowledge, CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var rated = file.Plate.Volts.Count > 0 ? file.Plate.Volts.Max() : file.Supply?.Volts ?? knowledge.Rules["insulation-reading"]["assumed-rated-volts"];
        return file.Insulations.IsEmpty ? null : Judge(knowledge, file.Insulations[^1], rated).Value;
    }

    /// <summary>What readings of one session amount to, or what is wrong with them.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="input">The readings and the winding.</param>
    public static Answer<InsulationReport> Judge(TradeKnowledge knowledge, InsulationInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var problems = InsulationProblems.Of(knowledge, input).ToList();
        return problems.Count > 0 ? Answer<InsulationReport>.Refused(problems) : Report(knowledge, input);
    }

    private static InsulationReport Report(TradeKnowledge knowledge, InsulationInput input)
    {
        var minute = knowledge.Rules["polarization-index"]["early-minute"];
        var judged = input.Readings.OrderBy(reading => Math.Abs((reading.AtMinute ?? minute) - minute)).First();
        var corrected = judged.Celsius is { } celsius ? InsulationCorrection.Corrected(knowledge, judged.Megohms, celsius, input.System) : null;
        var minimum = InsulationMinimum.Of(knowledge, input);
        var (verdict, why) = Verdict(knowledge, judged, corrected, minimum);
        if (judged.OverRange && (verdict is "marginal" or "fail"))
        {
            (verdict, why) = ("no-proof", Statement.Of("insulation.range-too-small").With("read", AsRead(knowledge, judged)));
        }

        var ratios = InsulationRatios.Of(knowledge, input);
        var late = verdict == "pass" && IsLate(knowledge, input, judged);
        if (late)
        {
            (verdict, why) = ("retest", Statement.Of("insulation.read-too-late").With("read", AsRead(knowledge, judged)));
        }

        var trend = InsulationTrend.Of(knowledge, input.EarlierMegohms, judged, corrected, verdict);
        if (ratios.IndexFails && (verdict is "pass" or "marginal"))
        {
            (verdict, why) = ("fail", Statement.Of("insulation.index-low").With("index", ratios.Index!).With("least", ratios.IndexLeast!));
        }

        return new InsulationReport
        {
            CorrectedMegohms = corrected,
            MinimumMegohms = minimum,
            PolarizationIndex = ratios.Index,
            AbsorptionRatio = ratios.Absorption,
            NotApplicable = ratios.NotApplicable,
            Verdict = verdict,
            Why = why,
            DoNext = [.. Next(knowledge, input, late ? "late" : verdict, judged)],
            Notes = [.. InsulationNotes.Of(knowledge, input, judged, ratios), .. trend is null ? Array.Empty<Statement>() : [trend]],
            Trend = trend,
            TestVolts = InsulationNotes.TestVolts(knowledge, input.RatedVolts!.Value),
        };
    }

    private static Quoted AsRead(TradeKnowledge knowledge, InsulationReading reading) => knowledge.Rules["insulation-gate"].Quote(
        reading.Megohms, "megohm", reading.Celsius is { } at ? $"winding at {Units.Text(at, "celsius")}" : "winding temperature not known");

    /// <summary>The longer a large winding is fed the higher it reads: what counts is one minute. A small random-wound one is through with that within seconds.</summary>
    private static bool IsLate(TradeKnowledge knowledge, InsulationInput input, InsulationReading reading) => input.Kind != "random-wound"
        && reading.AtMinute > knowledge.Rules["polarization-index"]["early-minute"] + knowledge.Rules["insulation-reading"]["minute-slack"];

    private static (string Verdict, Statement Why) Verdict(TradeKnowledge knowledge, InsulationReading reading, Quoted? corrected, Quoted minimum)
    {
        var gate = knowledge.Rules["insulation-gate"];
        var asRead = AsRead(knowledge, reading);
        var stop = gate.Quote(gate["stop-megohms"], "megohm", "any temperature");
        if (reading.TestVolts < knowledge.Rules["insulation-reading"]["least-test-volts"])
        {
            return reading.Megohms < knowledge.Rules["insulation-reading"]["multimeter-bad-megohms"] && !reading.OverRange
                ? ("fail", Statement.Of("insulation.multimeter-bad").With("read", asRead))
                : ("no-proof", Statement.Of("insulation.no-proof"));
        }

        if (reading.Megohms < gate["stop-megohms"] && !reading.OverRange)
        {
            return ("fail", Statement.Of("insulation.as-read-stop").With("read", asRead).With("limit", stop));
        }

        if (reading.Celsius is null)
        {
            var (pass, least) = (gate["no-temperature-pass-megohms"], gate["no-temperature-marginal-megohms"]);
            var (word, says, limit) = reading.Megohms > pass ? ("pass", "insulation.temperature-unknown-pass", pass)
                : reading.Megohms >= least ? ("marginal", "insulation.temperature-unknown-marginal", pass)
                : ("fail", "insulation.temperature-unknown-fail", least);
            return (word, Statement.Of(says).With("read", asRead).With("limit", gate.Quote(limit, "megohm", "winding temperature not known")));
        }

        if (corrected is not { Value: { } megohms })
        {
            return ("retest", Statement.Of("insulation.temperature-outside").With("read", asRead));
        }

        return megohms >= minimum.Value ? ("pass", Statement.Of("insulation.pass").With("corrected", corrected).With("minimum", minimum))
            : megohms >= gate["stop-megohms"] ? ("marginal", Statement.Of("insulation.marginal").With("corrected", corrected).With("minimum", minimum))
            : ("fail", Statement.Of("insulation.fail").With("corrected", corrected).With("limit", stop));
    }

    private static IEnumerable<Statement> Next(TradeKnowledge knowledge, InsulationInput input, string verdict, InsulationReading judged)
    {
        var rule = knowledge.Rules["insulation-reading"];
        switch (verdict)
        {
            case "fail":
                yield return Statement.Of("insulation.do-not-energise");
                yield return Statement.Of("insulation.isolate-winding");
                yield return Statement.Of("insulation.dry");
                break;
            case "marginal":
                yield return Statement.Of("insulation.dry");
                yield return Statement.Of("insulation.no-power-before-decision");
                break;
            case "retest":
                var range = knowledge.Rules["insulation-correction-range"];
                yield return Statement.Of("insulation.retest-warm")
                    .With("low", range.Quote(range["retest-least-celsius"], "celsius", "retest"))
                    .With("high", range.Quote(range["retest-most-celsius"], "celsius", "retest"));
                break;
            case "late":
                yield return Statement.Of("insulation.read-at-one-minute");
                break;
            case "no-proof":
                yield return InsulationNotes.TestVolts(knowledge, input.RatedVolts!.Value) is { Low: { } volts }
                    ? Statement.Of("insulation.use-a-tester").With("volts", volts)
                    : Statement.Of("insulation.low-rated-volts");
                break;
            default:
                yield return Statement.Of("insulation.go-on");
                break;
        }

        var seconds = Math.Max(rule["discharge-least-seconds"], rule["discharge-times"] * rule["seconds-per-minute"] * (judged.AtMinute ?? 1));
        yield return Statement.Of("insulation.discharge")
            .With("time", rule.Quote(seconds, "second", $"test volts applied for {Units.Text(judged.AtMinute ?? 1, "minute")}"));
    }
}
