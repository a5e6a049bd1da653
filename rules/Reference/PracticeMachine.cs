using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Reference;

/// <summary>A machine of the dairy that a practice motor drives, with a plate and ohms that fit each other.</summary>
public sealed record PracticeMachine
{
    /// <summary>A stable id.</summary>
    public required string Id { get; init; }

    /// <summary>What the people of the dairy call it.</summary>
    public required string Name { get; init; }

    /// <summary>The layouts that its motor may have.</summary>
    public required IReadOnlyList<string> Layouts { get; init; }

    /// <summary>1 or 3, or 0 for direct current.</summary>
    public required int Phases { get; init; }

    /// <summary>Hertz of the plate; <see langword="null"/> for direct current.</summary>
    public double? Hertz { get; init; }

    /// <summary>Horsepower of the plate.</summary>
    public required double Horsepower { get; init; }

    /// <summary>Volts of the plate, the lowest first.</summary>
    public required IReadOnlyList<double> Volts { get; init; }

    /// <summary>Amps of the plate, in the order of <see cref="Volts"/>.</summary>
    public required IReadOnlyList<double> Amps { get; init; }

    /// <summary>Full-load speed of the plate.</summary>
    public required double Rpm { get; init; }

    /// <summary>The least ohms of one coil of the layout's first window.</summary>
    public required double OhmsLow { get; init; }

    /// <summary>The greatest ohms of one coil of the layout's first window.</summary>
    public required double OhmsHigh { get; init; }

    /// <summary>Microfarads of its start capacitor, where its layout has one.</summary>
    public double StartMicrofarads { get; init; } = 200;

    /// <summary>Microfarads of its run capacitor, where its layout has one.</summary>
    public double RunMicrofarads { get; init; } = 10;

    /// <summary>Where plate and ohms come from.</summary>
    public required Source Source { get; init; }
}
