namespace WireCoach.Rules.Insulation;

/// <summary>Insulation readings of one winding in one session.</summary>
public sealed record InsulationInput
{
    /// <summary>Rated volts: line to line for three-phase, line to neutral for single-phase.</summary>
    public double? RatedVolts { get; init; }

    /// <summary>The readings; at least one.</summary>
    public IReadOnlyList<InsulationReading> Readings { get; init; } = [];

    /// <summary><c>random-wound</c>, <c>form-wound</c>, <c>armature</c>, <c>field</c> or <c>old</c> (before about 1970).</summary>
    public string Kind { get; init; } = "random-wound";

    /// <summary><c>thermoset</c>, <c>thermoplastic</c> or <c>unknown</c>.</summary>
    public string System { get; init; } = "unknown";

    /// <summary>The insulation class letter, for the polarization index; B and above where it is not said.</summary>
    public string? InsulationClass { get; init; }

    /// <summary>The adopted edition of the insulation standard.</summary>
    public int Edition { get; init; } = 2013;

    /// <summary>Corrected megohms of earlier sessions of the same motor, the oldest first.</summary>
    public IReadOnlyList<double> EarlierMegohms { get; init; } = [];
}

/// <summary>One insulation reading.</summary>
/// <param name="Megohms">As read, in MΩ.</param>
/// <param name="AtMinute">Minutes after the test volts were applied; one where it is not said.</param>
/// <param name="Celsius">Winding temperature in °C, or <see langword="null"/>.</param>
/// <param name="TestVolts">Direct-current test volts, or <see langword="null"/>.</param>
/// <param name="OverRange">The tester showed more than its range; <paramref name="Megohms"/> is the end of that range.</param>
public sealed record InsulationReading(double Megohms, double? AtMinute = null, double? Celsius = null, double? TestVolts = null, bool OverRange = false);
