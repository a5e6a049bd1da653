using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Supply;

/// <summary>The short-circuit and ground-fault device of a motor branch: percent of the table's current, the next size, and the ceiling.</summary>
internal static class ShortCircuitDevice
{
    /// <summary>Devices by the names that clients use.</summary>
    public static readonly IReadOnlyDictionary<string, string> Names = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["inverse-time-breaker"] = "inverse-time-breaker",
        ["circuit-breaker"] = "inverse-time-breaker",
        ["breaker"] = "inverse-time-breaker",
        ["dual-element-fuse"] = "dual-element-fuse",
        ["time-delay-fuse"] = "dual-element-fuse",
        ["non-time-delay-fuse"] = "non-time-delay-fuse",
        ["nontime-fuse"] = "non-time-delay-fuse",
        ["one-time-fuse"] = "non-time-delay-fuse",
        ["class-cc-fuse"] = "class-cc-fuse",
        ["instantaneous-trip-breaker"] = "instantaneous-trip-breaker",
    };

    public static ProtectionChoice Choose(TradeKnowledge knowledge, string device, string motor, Quoted full, int year)
    {
        var table = knowledge.Tables["nec-430-52"];
        var row = table.Row(motor)!;
        var amps = full.Value!.Value;
        var column = string.Equals(device, "class-cc-fuse", StringComparison.Ordinal) ? "non-time-delay-fuse" : device;
        var percent = table.Number(row, column)!.Value;
        var calculated = table.Quote(percent / 100 * amps, "amp", $"{Units.Text(percent, "percent")} of {full.Text} ({row.Key}, {device})", year, full.Trail);
        if (string.Equals(device, "instantaneous-trip-breaker", StringComparison.Ordinal))
        {
            var most = knowledge.Rules["nec-ceiling"][string.Equals(motor, "design-b", StringComparison.Ordinal) ? device + "-design-b" : device];
            return new(device, calculated, calculated, knowledge.Rules["nec-ceiling"].Quote(most / 100 * amps, "amp", $"{Units.Text(most, "percent")} of {full.Text}", year));
        }

        var ratings = StandardRatings.Of(knowledge, device, year);
        var standard = StandardRatings.NextUp(knowledge, ratings, calculated.Value!.Value) ?? ratings.Rows[^1].Size();
        return new(
            device, calculated,
            knowledge.Rules["nec-next-size"].Quote(standard, "amp", $"{calculated.Text}, standard ratings of {ratings.Source}", year, calculated.Trail),
            Ceiling(knowledge, device, full, standard, ratings, year));
    }

    /// <summary>The ceiling, rounded down; where it falls below the rating that stands already, that rating stands.</summary>
    private static Quoted Ceiling(TradeKnowledge knowledge, string device, Quoted full, double standard, TradeTable ratings, int year)
    {
        var rule = knowledge.Rules["nec-ceiling"];
        var amps = full.Value!.Value;
        var large = string.Equals(device, "inverse-time-breaker", StringComparison.Ordinal) && amps > rule["breaker-large-above-amps"];
        var percent = rule[large ? "inverse-time-breaker-large" : device];
        var down = StandardRatings.CapDown(knowledge, ratings, percent / 100 * amps) ?? 0;
        return rule.Quote(Math.Max(down, standard), "amp", $"{Units.Text(percent, "percent")} of {full.Text}, down to a standard rating", year);
    }
}
