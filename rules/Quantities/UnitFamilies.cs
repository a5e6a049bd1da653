namespace WireCoach.Rules.Quantities;

/// <summary>Units of one kind and their sizes.</summary>
public static class UnitFamilies
{
    private static readonly Dictionary<string, (string Family, double Size)> Sizes = new(StringComparer.Ordinal)
    {
        ["ohm"] = ("resistance", 1),
        ["kilohm"] = ("resistance", 1e3),
        ["megohm"] = ("resistance", 1e6),
        ["volt"] = ("voltage", 1),
        ["amp"] = ("current", 1),
        ["milliamp"] = ("current", 1e-3),
        ["watt"] = ("power", 1),
        ["kilowatt"] = ("power", 1e3),
        ["hertz"] = ("frequency", 1),
        ["rpm"] = ("speed", 1),
        ["microfarad"] = ("capacitance", 1),
        ["second"] = ("time", 1),
        ["minute"] = ("time", 60),
        ["percent"] = ("ratio", 0.01),
        ["ratio"] = ("ratio", 1),
        ["celsius"] = ("temperature", 1),
        ["count"] = ("count", 1),
    };

    /// <summary>A value in another unit of the same kind, or <see langword="null"/> where the units are of different kinds or unknown.</summary>
    /// <param name="value">The value.</param>
    /// <param name="from">Its unit id.</param>
    /// <param name="to">The wanted unit id.</param>
    public static double? Convert(double value, string from, string to) =>
        from == to ? value
        : Sizes.TryGetValue(from, out var given) && Sizes.TryGetValue(to, out var wanted) && given.Family == wanted.Family
            ? value * given.Size / wanted.Size
            : null;
}
