using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Reference;

/// <summary>The limits by which a supply suits a plate, and the figures that a refusal quotes.</summary>
public sealed record ConnectionFigures
{
    /// <summary>Nominal volts that belong together, so that 240 V counts as the supply of a 230 V plate.</summary>
    public required IReadOnlyList<NominalFamily> Families { get; init; }

    /// <summary>Volts that a supply, a plate or a capacitor can have.</summary>
    public required Span Volts { get; init; }

    /// <summary>Hertz that a supply or a plate can have, direct current left aside.</summary>
    public required Span Hertz { get; init; }

    /// <summary>Amps, kilowatts or horsepower that a plate can have.</summary>
    public required Span Sizes { get; init; }

    /// <summary>Ohms that a winding can have.</summary>
    public required Span Ohms { get; init; }

    /// <summary>How far the supply may lie from the plate's volts, within one family, as a share.</summary>
    public required Limit VoltsTolerance { get; init; }

    /// <summary>How far the supply may lie from the plate's volts where the families differ, as a share.</summary>
    public required Limit OtherFamilyTolerance { get; init; }

    /// <summary>From this share on a deviation within the tolerance is said.</summary>
    public required Limit VoltsNote { get; init; }

    /// <summary>How far the frequency may lie from the plate's, as a share.</summary>
    public required Limit HertzTolerance { get; init; }

    /// <summary>The greatest sum of both deviations, as a share.</summary>
    public required Limit CombinedTolerance { get; init; }

    /// <summary>Plate volts less than this ratio apart are one voltage written as a range (208-230).</summary>
    public required Limit RangeRatio { get; init; }

    /// <summary>How far a plate's second voltage may lie from the ratio of the connection table, as a share.</summary>
    public required Limit RatioTolerance { get; init; }

    /// <summary>Volts per hertz against the plate's above which iron saturates.</summary>
    public required Limit VoltsPerHertzHigh { get; init; }

    /// <summary>Volts per hertz against the plate's below which the motor is weak.</summary>
    public required Limit VoltsPerHertzLow { get; init; }

    /// <summary>The least volts that a capacitor must be made for, as a share of its branch's rated volts.</summary>
    public required Limit CapacitorVolts { get; init; }

    /// <summary>The least volts that a capacitor must be made for that stays in circuit, as a share of its branch's rated volts.</summary>
    public required Limit RunCapacitorVolts { get; init; }

    /// <summary>Layouts that run on direct current only.</summary>
    public required IReadOnlyList<string> DirectCurrentOnly { get; init; }

    /// <summary>Layouts that run on direct or alternating current.</summary>
    public required IReadOnlyList<string> EitherCurrent { get; init; }
}

/// <summary>Nominal volts that belong together.</summary>
public sealed record NominalFamily
{
    /// <summary>The nominal volts.</summary>
    public required IReadOnlyList<double> Volts { get; init; }

    /// <summary>Whether the plate must name one of these volts: nearness to another voltage is not enough.</summary>
    public bool MustBeOnPlate { get; init; }

    /// <summary>Where the family comes from.</summary>
    public required Source Source { get; init; }
}

/// <summary>What a figure can be; beyond it is a slip of the pen.</summary>
public sealed record Span
{
    /// <summary>The least value.</summary>
    public required double Least { get; init; }

    /// <summary>The greatest value.</summary>
    public required double Most { get; init; }

    /// <summary>Where the bounds come from.</summary>
    public required Source Source { get; init; }
}

/// <summary>A figure with its source.</summary>
public sealed record Limit
{
    /// <summary>The figure, in the unit of the member that holds it.</summary>
    public required double Value { get; init; }

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }
}
