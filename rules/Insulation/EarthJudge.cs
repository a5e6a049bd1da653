using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Insulation;

/// <summary>What an earth reading amounts to.</summary>
/// <param name="LimitOhms">The most that passes.</param>
/// <param name="Verdict"><c>pass</c>, <c>marginal</c> or <c>fail</c>.</param>
/// <param name="Why">Why.</param>
/// <param name="DoNext">What to do next.</param>
public sealed record EarthReport(Quoted LimitOhms, string Verdict, Statement Why, IReadOnlyList<Statement> DoNext);

/// <summary>Judges the resistance from the frame to the earth pin or the earth conductor.</summary>
public static class EarthJudge
{
    /// <summary>Whether the earth path is good enough for power, or what is wrong with the reading.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="ohms">Frame to earth in Ω, probes taken off.</param>
    /// <param name="region">Whose practice.</param>
    /// <param name="cordMetres">Length of the cord; <see langword="null"/> where there is none, or up to 5 m.</param>
    public static Answer<EarthReport> Judge(TradeKnowledge knowledge, double ohms, Region region, double? cordMetres = null)
    {
        var range = knowledge.Rules["earth-reading"];
        if (!(ohms >= 0 && ohms <= range["most-ohms"]))
        {
            return new Problem("invalid-fact", "earthOhms", Statement.Of("insulation.out-of-range",
                ("field", "earthOhms"), ("value", Units.Given(ohms, "ohm")), ("least", Units.Text(0, "ohm")), ("most", Units.Text(range["most-ohms"], "ohm"))));
        }

        if (cordMetres is { } length && !(length >= 0 && length <= range["most-metres"]))
        {
            return new Problem("invalid-fact", "cordMetres", Statement.Of("insulation.out-of-range",
                ("field", "cordMetres"), ("value", Units.Given(length, "metre")), ("least", Units.Text(0, "metre")), ("most", Units.Text(range["most-metres"], "metre"))));
        }

        return region == Region.Iec ? International(knowledge, ohms, cordMetres) : American(knowledge, ohms);
    }

    /// <summary>What it amounts to that there is no path at all.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="region">Whose practice.</param>
    public static EarthReport NoPath(TradeKnowledge knowledge, Region region)
    {
        var rule = knowledge.Rules[region == Region.Iec ? "earth-lead" : "earth-frame"];
        var limit = rule.Quote(rule[region == Region.Iec ? "first-ohms" : "pass-ohms"], "ohm", "frame to earth");
        return new(limit, "fail", Statement.Of("insulation.earth-open").With("limit", limit), [Statement.Of("insulation.earth-stop")]);
    }

    /// <summary>By the length of the cord; where that is not known a reading that some cord allows is neither passed nor failed.</summary>
    private static EarthReport International(TradeKnowledge knowledge, double ohms, double? cord)
    {
        var rule = knowledge.Rules["earth-lead"];
        var metres = cord ?? 0;
        var further = Math.Ceiling(Math.Max(0, metres - rule["first-metres"]) / rule["further-metres"]);
        var limit = rule.Quote(Math.Min(rule["most-ohms"], rule["first-ohms"] + rule["further-ohms"] * further), "ohm", $"cord of {Units.Text(metres, "metre")}");
        return ohms <= limit.Value + Slack ? Passed(limit, rule, ohms)
            : cord is null && ohms <= rule["most-ohms"] + Slack ? new(limit, "marginal", Statement.Of("insulation.earth-by-cord").With("ohms", Read(rule, ohms)).With("limit", limit)
                .With("metres", rule.Quote(rule["first-metres"], "metre", "cord")).With("most", rule.Quote(rule["most-ohms"], "ohm", "the longest cord")), [Statement.Of("insulation.earth-clean")])
            : Failed(limit, cord is null ? rule.Quote(rule["most-ohms"], "ohm", "the longest cord") : limit, rule, ohms);
    }

    private static EarthReport American(TradeKnowledge knowledge, double ohms)
    {
        var rule = knowledge.Rules["earth-frame"];
        var limit = rule.Quote(rule["pass-ohms"], "ohm", "frame to earth pin");
        return ohms <= rule["pass-ohms"] + Slack ? Passed(limit, rule, ohms)
            : ohms <= rule["stop-ohms"] + Slack ? new(limit, "marginal", Statement.Of("insulation.earth-marginal").With("ohms", Read(rule, ohms)).With("limit", limit), [Statement.Of("insulation.earth-clean")])
            : Failed(limit, rule.Quote(rule["stop-ohms"], "ohm", "frame to earth pin"), rule, ohms);
    }

    private static EarthReport Passed(Quoted limit, TradeRule rule, double ohms) =>
        new(limit, "pass", Statement.Of("insulation.earth-pass").With("ohms", Read(rule, ohms)).With("limit", limit), [Statement.Of("insulation.earth-not-capacity")]);

    private static EarthReport Failed(Quoted limit, Quoted most, TradeRule rule, double ohms) =>
        new(limit, "fail", Statement.Of("insulation.earth-fail").With("ohms", Read(rule, ohms)).With("limit", most), [Statement.Of("insulation.earth-stop"), Statement.Of("insulation.earth-clean")]);

    private static Quoted Read(TradeRule rule, double ohms) => rule.Quote(ohms, "ohm", "as read");

    private const double Slack = 1e-9;
}
