namespace WireCoach.Rules.Capacitors;

/// <summary>A capacitor, what was measured on it, and what is asked of it.</summary>
public sealed record CapacitorInput
{
    /// <summary>The print.</summary>
    public CapacitorPart Marked { get; init; } = new(null);

    /// <summary>Supply hertz.</summary>
    public double? Hertz { get; init; }

    /// <summary>What was measured, or <see langword="null"/>.</summary>
    public CapacitorMeasured? Measured { get; init; }

    /// <summary>Parts that might take its place.</summary>
    public IReadOnlyList<CapacitorPart> Candidates { get; init; } = [];

    /// <summary>Parts in series.</summary>
    public IReadOnlyList<CapacitorPart> Series { get; init; } = [];

    /// <summary>Parts in parallel.</summary>
    public IReadOnlyList<CapacitorPart> Parallel { get; init; } = [];

    /// <summary>Resistor across it in Ω.</summary>
    public double? BleedOhms { get; init; }

    /// <summary>Direct volts at the start of the discharge; √2 × the marked volts where it is not said.</summary>
    public double? FromVolts { get; init; }

    /// <summary>Direct volts at its end; the gate of touching where it is not said.</summary>
    public double? ToVolts { get; init; }

    /// <summary>Seconds within which it should be down, to find the resistor.</summary>
    public double? WithinSeconds { get; init; }

    /// <summary>Rated volts of the motor.</summary>
    public double? MotorVolts { get; init; }

    /// <summary>Rated power of the motor in hp.</summary>
    public double? Horsepower { get; init; }

    /// <summary>Rated power of the motor in kW.</summary>
    public double? Kilowatts { get; init; }

    /// <summary>Turns of the start winding to those of the main winding.</summary>
    public double? TurnsRatio { get; init; }

    /// <summary>Bulge, leak or blown vent seen.</summary>
    public bool Damaged { get; init; }
}

/// <summary>What was measured on a capacitor; one of the ways is given.</summary>
public sealed record CapacitorMeasured
{
    /// <summary>A capacitance meter's reading in µF.</summary>
    public double? Microfarads { get; init; }

    /// <summary>Volts AC across it while it carries <see cref="Amps"/>.</summary>
    public double? Volts { get; init; }

    /// <summary>Amps through it at the same moment.</summary>
    public double? Amps { get; init; }

    /// <summary>Hertz of that current.</summary>
    public double? Hertz { get; init; }

    /// <summary>Ohms that stay on the meter, capacitor discharged and off.</summary>
    public double? Ohms { get; init; }

    /// <summary>The meter stays over-range without moving.</summary>
    public bool Open { get; init; }

    /// <summary>The meter stays at nothing.</summary>
    public bool Short { get; init; }
}
