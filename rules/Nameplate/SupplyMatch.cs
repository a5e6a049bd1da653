using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Nameplate;

/// <summary>A supply against the plate.</summary>
/// <param name="Verdict">A word for the outcome, see the method that gives it.</param>
/// <param name="Value">The figure that was judged.</param>
/// <param name="Why">What follows.</param>
public sealed record SupplyJudgement(string Verdict, Quoted Value, Statement Why);

/// <summary>Whether a motor may stand on a supply: volts, hertz, and both together.</summary>
public static class SupplyMatch
{
    /// <summary>
    /// Supply volts against one volt figure of the plate: <c>ok</c>, <c>ok-low</c>, <c>ok-high</c>, <c>edge-low</c>, <c>edge-high</c>,
    /// <c>edge-ask-for-208</c>, <c>out-low</c>, <c>out-high</c>.
    /// </summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="plateVolts">Rated volts.</param>
    /// <param name="supplyVolts">Volts of the supply.</param>
    public static SupplyJudgement Volts(TradeKnowledge knowledge, double plateVolts, double supplyVolts)
    {
        var rule = knowledge.Rules["supply-deviation"];
        var percent = 100 * (supplyVolts - plateVolts) / plateVolts;
        var value = rule.Quote(percent, "percent", $"{Units.Text(supplyVolts, "volt")} on {Units.Text(plateVolts, "volt")}");
        var special = knowledge.Rules["supply-208"];
        var size = Math.Abs(percent) - rule["slack-percent"];
        if (size <= rule["most-percent"] && supplyVolts >= special["least"] && supplyVolts <= special["most"]
            && plateVolts >= special["plate-least"] && plateVolts <= special["plate-most"])
        {
            return new("edge-ask-for-208", value, AgainstPlate(Statement.Of("nameplate.supply-208"), value).With("torque", Torque(knowledge, plateVolts, supplyVolts)));
        }

        var verdict = size <= rule["ok-percent"] ? "ok"
            : (size < rule["edge-percent"] ? "ok" : size <= rule["most-percent"] ? "edge" : "out") + (percent < 0 ? "-low" : "-high");
        return new(verdict, value, AgainstPlate(verdict switch
        {
            "ok" or "ok-low" or "ok-high" => Statement.Of("nameplate.supply-ok"),
            "edge-low" or "edge-high" => Statement.Of("nameplate.supply-edge"),
            _ => Statement.Of("nameplate.supply-out"),
        }, value));
    }

    /// <summary>How far it is, whichever way.</summary>
    /// <param name="percent">How far it is off, in percent.</param>
    public static Quoted Unsigned(Quoted percent)
    {
        ArgumentNullException.ThrowIfNull(percent);
        return percent with { Value = Math.Abs(percent.Value!.Value), Text = Units.Text(Math.Abs(percent.Value.Value), "percent") };
    }

    /// <summary>The statement with how far off volts are and on which side of the plate's: a minus sign is not read aloud.</summary>
    /// <param name="statement">What is said of them.</param>
    /// <param name="percent">How far they are off, in percent.</param>
    public static Statement AgainstPlate(Statement statement, Quoted percent)
    {
        ArgumentNullException.ThrowIfNull(statement);
        return statement.With("deviation", Unsigned(percent))
            .With("side", Statement.Named(percent.Value < 0 ? "nameplate.below" : percent.Value > 0 ? "nameplate.above" : "nameplate.off"));
    }

    /// <summary>Torque that is left at other volts than the plate's, in percent.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="plateVolts">Rated volts.</param>
    /// <param name="supplyVolts">Volts of the supply.</param>
    public static Quoted Torque(TradeKnowledge knowledge, double plateVolts, double supplyVolts) =>
        knowledge.Rules["low-volt-torque"].Quote(
            100 * Math.Pow(supplyVolts / plateVolts, 2), "percent", $"{Units.Text(supplyVolts, "volt")} on {Units.Text(plateVolts, "volt")}");

    /// <summary>Flux at other volts and hertz: <c>ok</c>, <c>caution</c>, <c>weak</c> or <c>stop</c>.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="supplyVolts">Volts of the supply.</param>
    /// <param name="supplyHertz">Hertz of the supply.</param>
    /// <param name="plateVolts">Rated volts.</param>
    /// <param name="plateHertz">Rated hertz.</param>
    public static SupplyJudgement VoltsPerHertz(TradeKnowledge knowledge, double supplyVolts, double supplyHertz, double plateVolts, double plateHertz)
    {
        var rule = knowledge.Rules["volts-per-hertz"];
        var ratio = supplyVolts / supplyHertz / (plateVolts / plateHertz);
        var value = rule.Quote(ratio, "ratio",
            $"{Units.Text(supplyVolts, "volt")} {Units.Text(supplyHertz, "hertz")} on {Units.Text(plateVolts, "volt")} {Units.Text(plateHertz, "hertz")}");
        var verdict = ratio > rule["caution-most"] ? "stop"
            : ratio < rule["caution-least"] ? "weak"
            : ratio > rule["ok-most"] || ratio < rule["ok-least"] ? "caution"
            : "ok";
        return new(verdict, value, (verdict switch
        {
            "stop" => Statement.Of("nameplate.flux-stop"),
            "weak" => Statement.Of("nameplate.flux-weak"),
            "caution" => Statement.Of("nameplate.flux-caution"),
            _ when supplyHertz < plateHertz => Statement.Of("nameplate.flux-less-power", ("share", Units.Number(supplyHertz / plateHertz))),
            _ when supplyHertz > plateHertz => Statement.Of("nameplate.flux-faster"),
            _ => Statement.Of("nameplate.flux-ok"),
        }).With("ratio", value));
    }

    /// <summary>NEMA's band: whether volts and hertz together are within it.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="voltsPercent">Deviation of the volts in percent, signed.</param>
    /// <param name="hertzPercent">Deviation of the hertz in percent, signed.</param>
    public static bool WithinNema(TradeKnowledge knowledge, double voltsPercent, double hertzPercent)
    {
        var rule = knowledge.Rules["nema-volts-and-hertz"];
        var (volts, hertz) = (Math.Abs(voltsPercent), Math.Abs(hertzPercent));
        return volts <= rule["volts-percent"] && hertz <= rule["hertz-percent"] && volts + hertz <= rule["sum-percent"];
    }

    /// <summary>IEC's zone of volts and hertz: <c>a</c>, <c>b</c> or <c>outside</c>.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="voltsPercent">Deviation of the volts in percent, signed.</param>
    /// <param name="hertzPercent">Deviation of the hertz in percent, signed.</param>
    public static string IecZone(TradeKnowledge knowledge, double voltsPercent, double hertzPercent)
    {
        var (inner, outer) = (knowledge.Rules["iec-zone-a"], knowledge.Rules["iec-zone-b"]);
        return Within(inner, -inner["hertz-percent"], inner["hertz-percent"]) ? "a"
            : Within(outer, outer["hertz-low-percent"], outer["hertz-high-percent"]) ? "b"
            : "outside";

        bool Within(TradeRule zone, double lowHertz, double highHertz) =>
            Math.Abs(voltsPercent) <= zone["volts-percent"] && hertzPercent >= lowHertz && hertzPercent <= highHertz
            && (hertzPercent >= 0 || voltsPercent <= zone["low-hertz-volts"] + zone["low-hertz-slope"] * hertzPercent)
            && (hertzPercent <= 0 || voltsPercent >= zone["high-hertz-volts"] + zone["high-hertz-slope"] * hertzPercent);
    }

    /// <summary>Volts and hertz of a supply against the plate, by the region's standard; <see langword="null"/> where both are inside.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="region">Whose standard.</param>
    /// <param name="voltsPercent">Deviation of the volts in percent, signed.</param>
    /// <param name="hertzPercent">Deviation of the hertz in percent, signed.</param>
    public static Statement? Band(TradeKnowledge knowledge, Region region, double voltsPercent, double hertzPercent) => region switch
    {
        Region.NorthAmerica => WithinNema(knowledge, voltsPercent, hertzPercent) ? null : Statement.Of("nameplate.band-nema"),
        _ => IecZone(knowledge, voltsPercent, hertzPercent) switch
        {
            "a" => null,
            "b" => Statement.Of("nameplate.band-iec-b"),
            _ => Statement.Of("nameplate.band-iec-outside"),
        },
    };
}
