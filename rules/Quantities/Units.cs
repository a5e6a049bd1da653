using System.Globalization;

namespace WireCoach.Rules.Quantities;

/// <summary>The unit ids of the contract, their signs, and how a value is printed.</summary>
/// <remarks>Members and arguments that hold a plain number carry the unit in their name (<c>ohms</c>, <c>volts</c>, <c>microfarads</c>).</remarks>
public static class Units
{
    private static readonly Dictionary<string, string> Signs = new(StringComparer.Ordinal)
    {
        ["ohm"] = "Ω",
        ["megohm"] = "MΩ",
        ["kilohm"] = "kΩ",
        ["volt"] = "V",
        ["amp"] = "A",
        ["milliamp"] = "mA",
        ["watt"] = "W",
        ["kilowatt"] = "kW",
        ["horsepower"] = "hp",
        ["hertz"] = "Hz",
        ["rpm"] = "rpm",
        ["microfarad"] = "µF",
        ["joule"] = "J",
        ["second"] = "s",
        ["minute"] = "min",
        ["celsius"] = "°C",
        ["kelvin"] = "K",
        ["percent"] = "%",
        ["newton-metre"] = "N·m",
        ["pound-foot"] = "lb·ft",
        ["metre"] = "m",
        ["degree"] = "°",
        ["square-millimetre"] = "mm²",
        ["ratio"] = "",
        ["count"] = "",
        ["awg"] = "",
    };

    /// <summary>The ids of all units.</summary>
    public static IReadOnlyCollection<string> Ids => Signs.Keys;

    /// <summary>The sign that stands behind a value, empty for a ratio or a count.</summary>
    /// <param name="unit">A unit id.</param>
    /// <exception cref="ArgumentException">The unit is not known.</exception>
    public static string Sign(string unit) => Signs.TryGetValue(unit, out var sign)
        ? sign
        : throw new ArgumentException($"'{unit}' is not a unit of the contract.", nameof(unit));

    /// <summary>A value as a person reads it: three significant figures, no trailing zeros, the sign behind it.</summary>
    /// <param name="value">A finite value.</param>
    /// <param name="unit">A unit id.</param>
    /// <param name="figures">Significant figures, 1 to 6.</param>
    public static string Text(double value, string unit, int figures = 3)
    {
        var sign = Sign(unit);
        var number = Number(value, figures);
        return sign.Length == 0 ? number
            : sign is "%" or "°" ? number + (sign == "%" ? " %" : sign)
            : $"{number} {sign}";
    }

    /// <summary>A value that a person gave, as it is told back to them: what is no finite number is a question mark.</summary>
    /// <param name="value">Any value.</param>
    /// <param name="unit">A unit id.</param>
    /// <param name="figures">Significant figures, 1 to 6.</param>
    public static string Given(double value, string unit, int figures = 3) => double.IsFinite(value) ? Text(value, unit, figures) : "?";

    /// <summary>A plain number rounded to significant figures; whole numbers above that keep their digits.</summary>
    /// <param name="value">A finite value.</param>
    /// <param name="figures">Significant figures, 1 to 6.</param>
    public static string Number(double value, int figures = 3)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "Only a finite number can be printed.");
        }

        if (value == 0)
        {
            return "0";
        }

        var decimals = Math.Clamp(figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 10);
        var text = Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString($"F{decimals}", CultureInfo.InvariantCulture);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }
}
