using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>Breaker, fuse or motor protection device outside North America, and the fault loop that it needs.</summary>
internal static class InternationalProtection
{
    /// <summary>Devices by the names that clients use.</summary>
    public static readonly IReadOnlyDictionary<string, string> Names = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["circuit-breaker-b"] = "circuit-breaker-b",
        ["circuit-breaker-c"] = "circuit-breaker-c",
        ["circuit-breaker-d"] = "circuit-breaker-d",
        ["fuse-gg"] = "fuse-gg",
        ["gg-fuse"] = "fuse-gg",
        ["fuse"] = "fuse-gg",
        ["motor-protection-breaker"] = "motor-protection-breaker",
        ["motor-circuit-breaker"] = "motor-protection-breaker",
    };

    /// <summary>The device for a design current, or why there is none.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="input">The question.</param>
    /// <param name="design">Ib.</param>
    /// <param name="row">The row of the current table, or <see langword="null"/>.</param>
    /// <param name="column">Its volts column.</param>
    public static Answer<ProtectionChoice> Choose(TradeKnowledge knowledge, SupplyInput input, Quoted design, TradeRow? row, string? column) =>
        Names[input.Protection ?? "circuit-breaker-c"] switch
        {
            "fuse-gg" => Fuse(knowledge, input, design, row, column),
            "motor-protection-breaker" => Dial(knowledge, input, design),
            var breaker => Breaker(knowledge, input, design, breaker),
        };

    /// <summary>The dial range that holds a current; <see langword="null"/> beyond the ranges.</summary>
    public static QuotedRange? Range(TradeKnowledge knowledge, Quoted dial)
    {
        var table = knowledge.Tables["iec-dial-ranges"];
        return table.Rows.FirstOrDefault(row => dial.Value <= row.Size() && dial.Value >= table.Number(row, "from")) is { } row
            ? new(table.Quote(table.Number(row, "from")!.Value, "amp", dial.Text), table.Quote(row.Size(), "amp", dial.Text))
            : null;
    }

    /// <summary>The most impedance of the fault loop for a breaker to trip at once.</summary>
    public static Quoted? LoopOhms(TradeKnowledge knowledge, SupplyInput input, ProtectionChoice device)
    {
        if (!device.Device.StartsWith("circuit-breaker-", StringComparison.Ordinal))
        {
            return null;
        }

        var letter = device.Device[^1..];
        return LoopOhms(knowledge, letter, device.StandardAmps.Value!.Value, input.UnitedKingdom);
    }

    /// <summary>The most impedance of the fault loop for a breaker of a letter and a rating.</summary>
    public static Quoted LoopOhms(TradeKnowledge knowledge, string letter, double amps, bool unitedKingdom)
    {
        var volts = knowledge.Rules["iec-loop"]["earth-volts"];
        var rule = knowledge.Rules[unitedKingdom ? "iec-loop-uk-2015" : "iec-loop"];
        var multiple = knowledge.Rules["iec-breaker-start"][$"{letter}-most"];
        return rule.Quote(rule["minimum-voltage-share"] * volts / (multiple * amps), "ohm",
            $"{Units.Text(volts, "volt")}, {letter.ToUpperInvariant()}{Units.Number(amps)}: {Units.Number(multiple)} × {Units.Text(amps, "amp")}");
    }

    private static Answer<ProtectionChoice> Breaker(TradeKnowledge knowledge, SupplyInput input, Quoted design, string device)
    {
        var rule = knowledge.Rules["iec-breaker-start"];
        var letter = device[^1..];
        var multiple = rule["start-multiple"] * (input.Starter is "star-delta" ? 1.0 / 3 : 1);
        var start = multiple * design.Value!.Value * rule["peak"] / (Math.Sqrt(2) * rule[$"{letter}-least"]);
        var needed = Math.Max(design.Value.Value, start);
        var amps = rule.Quote(needed, "amp", $"{design.Text}, start {Units.Number(multiple)} × with first peak {Units.Number(rule["peak"])}, {letter.ToUpperInvariant()} holds {Units.Number(rule[$"{letter}-least"])} ×", null, design.Trail);
        var ratings = knowledge.Tables["iec-breaker-ratings"];
        if (ratings.Rows.FirstOrDefault(row => row.Size() >= needed) is not { } rating)
        {
            return new Problem("invalid-fact", "protection", Statement.Of("supply.breaker-beyond-range", ("device", device), ("largest", Units.Text(ratings.Rows[^1].Size(), "amp"))).With("needed", amps));
        }

        var standard = ratings.Quote(rating.Size(), "amp", amps.Text, null, amps.Trail);
        return new ProtectionChoice(device, amps, standard, standard);
    }

    private static Answer<ProtectionChoice> Fuse(TradeKnowledge knowledge, SupplyInput input, Quoted design, TradeRow? row, string? column)
    {
        var table = knowledge.Tables["iec-current-three-phase"];
        if (input.Phases != 3 || row is null || column is null)
        {
            return new Problem("invalid-fact", "protection", Statement.Of("supply.no-fuse-guide"));
        }

        var direct = table.Number(row, $"fuse-{column}")!.Value;
        var amps = input.Starter is "star-delta" ? table.Number(row, $"fuse-{column}-star-delta") ?? direct : direct;
        var fuse = knowledge.Rules["iec-fuse-guide"].Quote(amps, "amp", $"{row.Key} kW, {column} V, {input.Starter ?? "direct"}", null, design.Trail);
        return new ProtectionChoice("fuse-gg", fuse, fuse, fuse);
    }

    private static Answer<ProtectionChoice> Dial(TradeKnowledge knowledge, SupplyInput input, Quoted design)
    {
        if (Range(knowledge, design) is not { High: { } high })
        {
            return new Problem("invalid-fact", input.PlateAmps is null ? "kilowatts" : "plateAmps", Statement.Of("supply.no-dial-range").With("amps", design));
        }

        var dial = knowledge.Rules["iec-motor-dial"].Quote(design.Value!.Value, "amp", design.Text, null, design.Trail);
        return new ProtectionChoice("motor-protection-breaker", dial, high, dial);
    }
}
