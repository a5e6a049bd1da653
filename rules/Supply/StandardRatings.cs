using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Supply;

/// <summary>The standard ratings of fuses and breakers, and how to round to them.</summary>
internal static class StandardRatings
{
    /// <summary>The ratings of the device in the adopted edition, from small to large.</summary>
    public static TradeTable Of(TradeKnowledge knowledge, string device, int year) =>
        device.Contains("fuse", StringComparison.Ordinal) ? knowledge.Tables["nec-240-6-fuse"] : knowledge.Tables.In("nec-240-6-breaker", year);

    /// <summary>The rating itself, or the next one up; <see langword="null"/> beyond the list.</summary>
    public static double? NextUp(TradeKnowledge knowledge, TradeTable ratings, double amps) => ratings.Rows
        .Select(row => (double?)row.Size()).FirstOrDefault(rating => rating >= amps - knowledge.Rules["nec-ceiling"]["same-rating-amps"]);

    /// <summary>The last rating at or below; <see langword="null"/> below the list.</summary>
    public static double? CapDown(TradeKnowledge knowledge, TradeTable ratings, double amps) => ratings.Rows
        .Select(row => (double?)row.Size()).LastOrDefault(rating => rating <= amps + knowledge.Rules["nec-ceiling"]["same-rating-amps"]);
}
