namespace WireCoach.Rules.Cases;

/// <summary>The plate as far as it was read, by field.</summary>
/// <remarks>Units are fixed: volts, amps, horsepower, kilowatts, rpm, hertz; an understood text is converted on the way in.</remarks>
public sealed record PlateFields
{
    /// <summary>No field read yet.</summary>
    public static PlateFields Empty { get; } = new();

    private IReadOnlyDictionary<string, PlateValue> Fields { get; init; } = new Dictionary<string, PlateValue>(StringComparer.Ordinal);

    /// <summary>All fields that were read.</summary>
    public IEnumerable<KeyValuePair<string, PlateValue>> All => Fields;

    /// <summary>Rated volts, in the order of the plate; empty when not read.</summary>
    public IReadOnlyList<double> Volts => Numbers("volts");

    /// <summary>Rated amps, one for each of <see cref="Volts"/> where the plate gives them.</summary>
    public IReadOnlyList<double> Amps => Numbers("amps");

    /// <summary>Rated shaft power in hp.</summary>
    public double? Horsepower => Number("horsepower");

    /// <summary>Rated shaft power in kW.</summary>
    public double? Kilowatts => Number("kilowatts");

    /// <summary>Rated speed in revolutions a minute.</summary>
    public double? Rpm => Number("rpm");

    /// <summary>Rated frequency in hertz.</summary>
    public double? Hertz => Number("hertz");

    /// <summary>1 or 3; 0 of direct current.</summary>
    public int? Phases => Number("phases") is { } phases ? (int)phases : null;

    /// <summary>Service factor.</summary>
    public double? ServiceFactor => Number("serviceFactor");

    /// <summary>A field's value, or <see langword="null"/>.</summary>
    /// <param name="field">The field's name in camelCase.</param>
    public PlateValue? this[string field] => Fields.GetValueOrDefault(field);

    /// <summary>A field as text, or <see langword="null"/>.</summary>
    /// <param name="field">The field's name in camelCase.</param>
    public string? Text(string field) => this[field]?.Text;

    /// <summary>A field's only or first number, or <see langword="null"/>.</summary>
    /// <param name="field">The field's name in camelCase.</param>
    public double? Number(string field) => this[field]?.Number;

    /// <summary>A field's numbers; empty when not read.</summary>
    /// <param name="field">The field's name in camelCase.</param>
    public IReadOnlyList<double> Numbers(string field) => this[field]?.Numbers ?? [];

    /// <summary>The plate with one more field.</summary>
    /// <param name="field">The field's name in camelCase.</param>
    /// <param name="value">Its value.</param>
    public PlateFields With(string field, PlateValue value) =>
        this with { Fields = new Dictionary<string, PlateValue>(Fields, StringComparer.Ordinal) { [field] = value } };
}
