using System.Globalization;
using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Nameplate;

/// <summary>What plate, links and supply, held against each other, say without anybody looking again.</summary>
internal static class Connected
{
    private const double Twice = 1.4;

    /// <summary>The outcome of comparing plate, links and supply, or <see langword="null"/> where too little is known.</summary>
    public static string? Against(CaseFile file)
    {
        if (file.Plate.Hertz is { } made && file.Supply?.Hertz is { } fed && made != fed)
        {
            return "hertz-differ";
        }

        return Volts(file) is { } volts && file.Supply?.Volts is { } supply
            ? supply / volts >= Twice ? "low-on-high" : supply / volts <= 1 / Twice ? "high-on-low" : null
            : null;
    }

    /// <summary>The volts it is joined for: as told, by the way that the links lie, or the only ones of the plate.</summary>
    private static double? Volts(CaseFile file)
    {
        if (file.Choices.TryGetValue(Fact.Choice.WiredFor, out var told) && double.TryParse(told, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var volts))
        {
            return volts;
        }

        return file.Plate.Volts is [var low, var high] && file.Choices.TryGetValue(Fact.Choice.Links, out var links) ? links == "delta" ? Math.Min(low, high) : Math.Max(low, high)
            : file.Plate.Volts is [var only] ? only
            : null;
    }
}
