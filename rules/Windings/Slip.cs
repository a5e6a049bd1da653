using WireCoach.Rules.Choosing;

namespace WireCoach.Rules.Windings;

/// <summary>What becomes of the explanations when one reading is taken for a slip.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Rest">The explanations of all other readings.</param>
/// <param name="LogWeight">ln of the weight of all explanations with this slip, the cost of a slip in it.</param>
internal sealed record Slip(Measured Reading, Explanations Rest, double LogWeight)
{
    /// <summary>Each reading taken for a slip in turn; a reading that was taken twice with one result is none.</summary>
    /// <param name="bench">The patterns in question.</param>
    /// <param name="readings">The readings.</param>
    /// <param name="states">The motors that are looked at when a reading is taken for a slip.</param>
    /// <param name="least">ln of the weight below which an explanation with a slip in it is of no use.</param>
    public static IReadOnlyList<Slip> Each(Bench bench, IReadOnlyList<Measured> readings, IEnumerable<Search> states, double least)
    {
        var slips = new List<Slip>();
        foreach (var reading in readings.Where(reading => !Confirmed(bench, readings, reading)))
        {
            var cost = LogCost(bench, reading);
            var doubted = reading with { Showed = reading.Showed == Showed.Open ? Showed.NotOpen : Showed.Anything, Mistaken = reading.Showed == Showed.Ohms };
            var rest = Explanations.Of(bench, [.. readings.Select(other => other == reading ? doubted : other)], states, everyLead: true, least - cost);
            if (rest.Any)
            {
                slips.Add(new(reading, rest, rest.LogTotal + cost));
            }
        }

        return slips;
    }

    /// <summary>ln of the weight of all.</summary>
    public static double LogTotal(IReadOnlyList<Slip> slips) => Weights.LogSum([.. slips.Select(slip => slip.LogWeight)]);

    /// <summary>Whether a pair was read again with the same result.</summary>
    public static bool Confirmed(Bench bench, IReadOnlyList<Measured> readings, Measured reading) =>
        readings.Any(other => other != reading && SamePair(other, reading) && Agree(bench, other, reading));

    public static bool SamePair(Measured one, Measured other) => one.First == other.First && one.Second == other.Second;

    private static bool Agree(Bench bench, Measured one, Measured other) => (one.Showed, other.Showed) switch
    {
        (Showed.Ohms, Showed.Ohms) => Math.Abs(one.Ohms - other.Ohms) <= bench.Meter.NotAlike(one.Ohms, other.Ohms),
        (Showed.Ohms, Showed.Beep) or (Showed.Beep, Showed.Ohms) => false,
        _ => one.Showed == other.Showed,
    };

    private static double LogCost(Bench bench, Measured reading) =>
        Math.Log(bench.Figures.Slip.Value / 2) + (reading.Showed == Showed.Kick ? Math.Log(bench.Figures.KickImagined.Value) : 0);
}
