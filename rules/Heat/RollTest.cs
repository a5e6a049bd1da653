using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>The three motor leads moved on one step at a time, keeping the order: does the high current stay on the line or go with the lead?</summary>
public static class RollTest
{
    /// <summary>The judgement of three sets of line currents.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="roll">Amps in L1, L2, L3 with L1 on T1, then on T2, then on T3.</param>
    public static Answer<UnbalanceReport> Judge(TradeKnowledge knowledge, IReadOnlyList<IReadOnlyList<double>> roll)
    {
        ArgumentNullException.ThrowIfNull(roll);
        if (roll.Count != 3)
        {
            return new Problem("invalid-fact", "roll", Statement.Of("heat.roll-shape"));
        }

        for (var at = 0; at < roll.Count; at++)
        {
            if (Unbalance.Wrong($"roll[{at}]", roll[at], zeroAllowed: true) is { } problem)
            {
                return problem;
            }
        }

        var rule = knowledge.Rules["current-unbalance"];
        var worst = roll.MaxBy(Spread.Percent)!;
        var percent = rule.Quote(Spread.Percent(worst), "percent", Unbalance.Inputs(worst, "amp"));
        if (percent.Value <= rule["note-percent"])
        {
            return new UnbalanceReport { Percent = percent, Verdict = "ok", Why = Statement.Of("heat.roll-nothing").With("percent", percent) };
        }

        var lines = roll.Select(Highest).ToList();
        var leads = lines.Select((line, step) => line is { } on ? (on + step) % 3 : (int?)null).ToList();
        var verdict = percent.Value > rule["investigate-percent"] ? "investigate" : "note";
        return lines[0] is { } supply && lines.TrueForAll(line => line == supply)
            ? Report("supply", $"L{supply + 1}", Statement.Of("heat.roll-supply", ("line", $"L{supply + 1}")))
            : leads[0] is { } lead && leads.TrueForAll(one => one == lead)
                ? Report("motor", $"T{lead + 1}", Statement.Of("heat.roll-motor", ("lead", $"T{lead + 1}")))
                : Report("mixed", null, Statement.Of("heat.roll-mixed"));

        UnbalanceReport Report(string follows, string? on, Statement why) =>
            new() { Percent = percent, Verdict = verdict, Why = why.With("percent", percent), Follows = follows, On = on };
    }

    /// <summary>The line with the highest current; <see langword="null"/> where two share it.</summary>
    private static int? Highest(IReadOnlyList<double> amps)
    {
        var most = amps.Max();
        return amps.Count(amp => amp.Equals(most)) == 1 ? Enumerable.Range(0, 3).First(line => amps[line].Equals(most)) : null;
    }
}
