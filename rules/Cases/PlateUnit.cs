using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Cases;

/// <summary>The unit in which a figure of the plate is written.</summary>
public static class PlateUnit
{
    /// <summary>Its sign with a space before it; empty for a number of something.</summary>
    /// <param name="field">The field of the plate.</param>
    /// <param name="unit">The unit that came with it, if one did.</param>
    public static string Sign(string field, string? unit = null)
    {
        ArgumentNullException.ThrowIfNull(field);
        var of = unit ?? field switch
        {
            "volts" => "volt",
            "amps" => "amp",
            "horsepower" => "horsepower",
            "kilowatts" => "kilowatt",
            "rpm" => "rpm",
            "hertz" => "hertz",
            _ => "count",
        };
        return Units.Ids.Contains(of) && Units.Sign(of) is { Length: > 0 } sign ? $" {sign}" : string.Empty;
    }
}
