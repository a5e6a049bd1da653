using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Reference;

/// <summary>Conductors in the box that belong to no winding: a protector, a sensor, a heater, a brake, a tacho.</summary>
public sealed record Accessory
{
    /// <summary>A stable id.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it.</summary>
    public required string Name { get; init; }

    /// <summary>A winding role of the contract: <c>protector</c> or <c>other</c>.</summary>
    public required string Role { get; init; }

    /// <summary>The markings of NEMA MG 1; empty where it gives none.</summary>
    public IReadOnlyList<string> Markings { get; init; } = [];

    /// <summary>The markings of IEC 60034-8; empty where it gives none.</summary>
    public IReadOnlyList<string> Iec { get; init; } = [];

    /// <summary>How many leads come out.</summary>
    public int LeadCount { get; init; } = 2;

    /// <summary>The least ohms between its leads, cold.</summary>
    public required double OhmsLow { get; init; }

    /// <summary>The greatest ohms between its leads, cold; <see langword="null"/> where it reads open cold.</summary>
    public double? OhmsHigh { get; init; }

    /// <summary>How often it is met in the boxes of motors, against none; 0 to 1.</summary>
    public required double Weight { get; init; }

    /// <summary>How it is told from a winding, as a sentence id.</summary>
    public required string Tell { get; init; }

    /// <summary>What can go wrong with it, as a sentence id.</summary>
    public required string Hazard { get; init; }

    /// <summary>Whether low AC or a cell may be put on it without harm.</summary>
    public bool MayBeFed { get; init; }

    /// <summary>Where markings and figures come from.</summary>
    public required Source Source { get; init; }
}
