using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Supply;

/// <summary>The next larger conductor that keeps the voltage drop within what is recommended, and the earth conductor that grows with it.</summary>
internal static class LargerConductor
{
    /// <summary>By the North American tables; <see langword="null"/> where the drop is small enough, or no size of the table is.</summary>
    public static LargerConductorChoice? American(TradeKnowledge knowledge, SupplyInput input, Quoted full, string size, EarthChoice earth, int year)
    {
        var most = knowledge.Rules["voltage-drop-percent"]["branch-percent"];
        var sizes = knowledge.Tables.In("nec-310-16", year).Rows.Select(row => row.Key).SkipWhile(key => key != size).ToList();
        return Choose(sizes, most, key => VoltageDrop.American(knowledge, input, full, null, key, year)) is not var (key, drop) ? null
            : new(knowledge.Rules["nec-conductor-size"].Name($"{key} AWG", "awg", $"voltage drop {drop.Percent.Text}", year, drop.Percent.Trail) with { Value = AmericanConductor.Number(key) },
                AmericanEarth(knowledge, earth.Size.Text.Split(' ')[0], size, key, year),
                drop.Percent);
    }

    /// <summary>By the table of cables.</summary>
    public static LargerConductorChoice? International(TradeKnowledge knowledge, SupplyInput input, Quoted design, string size, double powerFactor)
    {
        var most = knowledge.Rules["iec-voltage-drop-percent"]["branch-percent"];
        var sizes = knowledge.Tables["iec-cable"].Rows.Select(row => row.Key).SkipWhile(key => key != size).ToList();
        return Choose(sizes, most, key => VoltageDrop.International(knowledge, input, design, null, key, powerFactor)) is not var (key, drop) ? null
            : new(knowledge.Rules["iec-cable-size"].Quote(Fractions.Read(key)!.Value, "square-millimetre", $"voltage drop {drop.Percent.Text}", null, drop.Percent.Trail),
                InternationalCable.Earth(knowledge, Fractions.Read(key)!.Value).Size,
                drop.Percent);
    }

    private static (string Key, VoltageDropReport Drop)? Choose(List<string> sizes, double most, Func<string, VoltageDropReport?> drop)
    {
        if (sizes.Count == 0 || drop(sizes[0]) is not { } now || now.Percent.Value <= most)
        {
            return null;
        }

        foreach (var size in sizes.Skip(1))
        {
            if (drop(size) is { } there && there.Percent.Value <= most)
            {
                return (size, there);
            }
        }

        return null;
    }

    /// <summary>Circular mils in the proportion in which the conductors grew; never more than the conductors themselves.</summary>
    private static Quoted AmericanEarth(TradeKnowledge knowledge, string earth, string size, string larger, int year)
    {
        var table = knowledge.Tables["nec-chapter-9"];
        var ratio = Mils(larger) / Mils(size);
        var needed = Math.Min(Mils(earth) * ratio, Mils(larger));
        var key = table.Rows.First(row => table.Number(row, "circular-mils") >= needed - Slack).Key;
        return knowledge.Rules["nec-earth-larger"].Name($"{key} AWG", "awg", $"{earth} AWG × {Units.Number(ratio)}", year) with { Value = AmericanConductor.Number(key) };

        double Mils(string awg) => table.Number(table.Row(awg)!, "circular-mils")!.Value;
    }

    private const double Slack = 1e-6;
}
