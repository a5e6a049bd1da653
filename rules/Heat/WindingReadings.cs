using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>Three readings between the leads of a three-phase winding: balance, and the star or the delta that they would be.</summary>
public static class WindingReadings
{
    /// <summary>The judgement, with what the meter can tell apart.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="ohms">Ω between leads 1-2, 2-3, 3-1, probes taken off.</param>
    /// <param name="resolutionOhms">The meter's last digit in Ω; a common meter's where it is not said.</param>
    public static Answer<UnbalanceReport> Judge(TradeKnowledge knowledge, IReadOnlyList<double> ohms, double? resolutionOhms = null)
    {
        if (Unbalance.Wrong("ohms", ohms, zeroAllowed: false) is { } problem)
        {
            return problem;
        }

        if (HeatProblems.Outside("resolutionOhms", resolutionOhms, "ohm", 0, knowledge.Rules["heat-range"]["most-ohms"]) is { } step)
        {
            return step;
        }

        var rule = knowledge.Rules["resistance-unbalance"];
        var percent = rule.Quote(Spread.Percent(ohms), "percent", Unbalance.Inputs(ohms, "ohm"));
        var least = Resolvable(knowledge, ohms.Max(), resolutionOhms);
        var spread = rule.Quote(ohms.Max() - ohms.Min(), "ohm", Unbalance.Inputs(ohms, "ohm"));
        var fine = percent.Value <= rule["ok-percent"];
        var told = spread.Value > least.Value || (fine && least.Value <= rule["ok-percent"] / 100 * ohms.Average());
        var (verdict, why) = !told ? ("cannot-tell", Statement.Of("heat.ohms-cannot-tell").With("spread", spread).With("step", least))
            : fine ? ("ok", Statement.Of("heat.ohms-ok"))
            : percent.Value <= rule["fault-percent"] || Legs(ohms).Any(leg => leg < 0) ? ("repeat", Statement.Of("heat.ohms-repeat"))
            : ("fault", Statement.Of("heat.ohms-fault"));
        return new UnbalanceReport
        {
            Percent = percent,
            Verdict = verdict,
            Why = why.With("percent", percent),
            StarOhms = Star(knowledge, ohms),
            DeltaOhms = Delta(knowledge, ohms),
        };
    }

    /// <summary>The legs 1, 2, 3 of the star that three readings would be; empty where no winding has such readings.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="ohms">Ω between leads 1-2, 2-3, 3-1.</param>
    public static IReadOnlyList<Quoted> Star(TradeKnowledge knowledge, IReadOnlyList<double> ohms) =>
        Legs(ohms).Any(leg => leg < 0) ? [] : [.. Legs(ohms).Select(leg => knowledge.Rules["star-legs"].Quote(leg, "ohm", Unbalance.Inputs(ohms, "ohm")))];

    /// <summary>The phases 1-2, 2-3, 3-1 of the delta that three readings would be; empty where they can be none.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="ohms">Ω between leads 1-2, 2-3, 3-1.</param>
    public static IReadOnlyList<Quoted> Delta(TradeKnowledge knowledge, IReadOnlyList<double> ohms)
    {
        var legs = Legs(ohms);
        if (legs.Any(leg => leg <= 0))
        {
            return [];
        }

        var sum = legs[0] * legs[1] + legs[1] * legs[2] + legs[2] * legs[0];
        return [.. new[] { sum / legs[2], sum / legs[0], sum / legs[1] }.Select(phase => knowledge.Rules["delta-phases"].Quote(phase, "ohm", Unbalance.Inputs(ohms, "ohm")))];
    }

    /// <summary>The least difference between two readings of one meter and range that is more than its digits.</summary>
    private static Quoted Resolvable(TradeKnowledge knowledge, double ohms, double? resolutionOhms)
    {
        var rule = knowledge.Rules["resolvable"];
        var step = resolutionOhms ?? rule["resolution-ohms"];
        return rule.Quote(rule["readings"] * rule["counts"] * step + rule["gain-percent"] / 100 * ohms, "ohm",
            $"{Units.Number(rule["counts"])} counts of {Units.Text(step, "ohm")}, {Units.Text(ohms, "ohm", 4)}");
    }

    private static double[] Legs(IReadOnlyList<double> ohms) =>
        [(ohms[0] + ohms[2] - ohms[1]) / 2, (ohms[0] + ohms[1] - ohms[2]) / 2, (ohms[1] + ohms[2] - ohms[0]) / 2];
}
