using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Nameplate;

/// <summary>The kind of motor as the tables name it, from the words on a plate.</summary>
internal static class MotorKind
{
    private static readonly (string Part, string Kind)[] Words =
    [
        ("shaded", "shaded-pole"),
        ("two-value", "two-value"), ("two value", "two-value"), ("cap-start cap-run", "two-value"), ("capacitor-start capacitor-run", "two-value"),
        ("cap start cap run", "two-value"), ("cscr", "two-value"),
        ("psc", "psc"), ("permanent-split", "psc"), ("permanent split", "psc"), ("perm split", "psc"), ("capacitor-run", "psc"), ("capacitor run", "psc"), ("cap run", "psc"),
        ("capacitor-start", "capacitor-start"), ("capacitor start", "capacitor-start"), ("cap start", "capacitor-start"), ("cap-start", "capacitor-start"), ("csir", "capacitor-start"),
        ("split", "split-phase"),
        ("universal", "universal"), ("commutator", "universal"),
        ("permanent-magnet", "dc-permanent-magnet"), ("permanent magnet", "dc-permanent-magnet"), ("pmdc", "dc-permanent-magnet"), ("dc", "dc-permanent-magnet"),
        ("three-phase", "three-phase"), ("three phase", "three-phase"), ("3-phase", "three-phase"), ("induction", "induction"),
    ];

    /// <summary>The kind, or <see langword="null"/> where the words name none.</summary>
    public static string? Of(string? type) => type is null
        ? null
        : Words.FirstOrDefault(word => type.Contains(word.Part, StringComparison.OrdinalIgnoreCase)).Kind;

    /// <summary>The rows of the usual-efficiency table that can hold this motor.</summary>
    public static IReadOnlyList<TradeRow> Rows(TradeTable table, string? type, int? phases, double horsepower)
    {
        var family = Of(type) switch
        {
            "capacitor-start" => ["capacitor-start-small", "capacitor-start"],
            { } kind when kind is not ("three-phase" or "induction") => [kind],
            _ => phases == 3 ? ["three-phase-small", "three-phase", "three-phase-medium"]
                : new[] { "split-phase", "capacitor-start-small", "capacitor-start", "psc", "two-value" },
        };
        var rows = table.Rows.Where(row => family.Contains(row.Key, StringComparer.Ordinal)).ToList();
        var holding = rows.Where(row => From(row) <= horsepower && horsepower <= To(row)).ToList();
        if (holding.Count > 0)
        {
            return holding;
        }

        // Between two rows of one family: both, so that the range is honest. Beyond the ends: none.
        var below = rows.Where(row => To(row) < horsepower).MaxBy(To);
        var above = rows.Where(row => From(row) > horsepower).MinBy(From);
        return below is null || above is null ? [] : [below, above];

        double From(TradeRow row) => table.Number(row, "from-horsepower")!.Value * (1 - Slack);
        double To(TradeRow row) => table.Number(row, "to-horsepower")!.Value * (1 + Slack);
    }

    private const double Slack = 0.025;
}
