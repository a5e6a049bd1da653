using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Supply;

/// <summary>A motor and the supply that is to carry it.</summary>
public sealed record SupplyInput
{
    /// <summary>Whose codes.</summary>
    public Region Region { get; init; }

    /// <summary>Phases of the motor and its supply: 1 or 3; 1 for direct current too.</summary>
    public int Phases { get; init; } = 1;

    /// <summary>Volts of the supply, line to line.</summary>
    public double Volts { get; init; }

    /// <summary>Hertz of the supply.</summary>
    public double? Hertz { get; init; }

    /// <summary>Rated power in hp.</summary>
    public double? Horsepower { get; init; }

    /// <summary>Rated power in kW.</summary>
    public double? Kilowatts { get; init; }

    /// <summary>Plate amps of the connection in use.</summary>
    public double? PlateAmps { get; init; }

    /// <summary>Plate volts of the connection in use.</summary>
    public double? PlateVolts { get; init; }

    /// <summary>Plate hertz.</summary>
    public double? PlateHertz { get; init; }

    /// <summary>Marked service factor; 1 where it is blank.</summary>
    public double? ServiceFactor { get; init; }

    /// <summary>Marked temperature rise in K.</summary>
    public double? TemperatureRise { get; init; }

    /// <summary>Plate speed in rpm.</summary>
    public double? Rpm { get; init; }

    /// <summary>Locked-rotor code letter.</summary>
    public string? CodeLetter { get; init; }

    /// <summary>One way along the line, in m.</summary>
    public double? LengthMetres { get; init; }

    /// <summary>Power factor at full load; <see langword="null"/> reckons with resistance alone.</summary>
    public double? PowerFactor { get; init; }

    /// <summary>Efficiency at full load, a share.</summary>
    public double? Efficiency { get; init; }

    /// <summary>Insulation temperature of the conductor, or of the terminals where they are lower, in °C.</summary>
    public double? InsulationCelsius { get; init; }

    /// <summary>Marked temperature of the terminals in °C.</summary>
    public double? TerminalCelsius { get; init; }

    /// <summary>Surroundings of the conductor in °C; 30 where it is not said.</summary>
    public double? AmbientCelsius { get; init; }

    /// <summary>Current-carrying conductors together in North America, circuits side by side elsewhere.</summary>
    public int? Together { get; init; }

    /// <summary>Way of laying outside North America: <c>b2</c> or <c>c</c>.</summary>
    public string? Laying { get; init; }

    /// <summary>The short-circuit device.</summary>
    public string? Protection { get; init; }

    /// <summary>A row of the table of devices: <c>single-phase</c>, <c>squirrel-cage</c>, <c>design-b</c>, <c>synchronous</c>, <c>wound-rotor</c>, <c>dc</c>.</summary>
    public string? MotorType { get; init; }

    /// <summary><c>direct</c> or <c>star-delta</c>.</summary>
    public string? Starter { get; init; }

    /// <summary><c>half-wave</c> or <c>full-wave</c>, for a direct-current motor behind a single-phase rectifier.</summary>
    public string? Rectifier { get; init; }

    /// <summary>Cord and plug.</summary>
    public bool CordConnected { get; init; }

    /// <summary>Full-load amps of other motors on the same feeder.</summary>
    public IReadOnlyList<double> OtherMotorAmps { get; init; } = [];

    /// <summary>The adopted edition (year).</summary>
    public int? Edition { get; init; }

    /// <summary>Metal of the conductors; only <c>copper</c> has figures here.</summary>
    public string? Material { get; init; }

    /// <summary><c>tn</c> or <c>tt</c> outside North America.</summary>
    public string? Earthing { get; init; }

    /// <summary>Fault current that the protective conductor carries, in A.</summary>
    public double? FaultAmps { get; init; }

    /// <summary>Seconds until it is cut.</summary>
    public double? FaultSeconds { get; init; }

    /// <summary>Inertia of the load at the motor's shaft in kg·m².</summary>
    public double? LoadKilogramSquareMetres { get; init; }

    /// <summary>Mean of motor less load torque while it runs up, in N·m.</summary>
    public double? AcceleratingNewtonMetres { get; init; }

    /// <summary>Tap of an autotransformer starter, a share.</summary>
    public double? Tap { get; init; }

    /// <summary>Volts of a single-phase supply on which this three-phase motor is wanted.</summary>
    public double? SinglePhaseVolts { get; init; }

    /// <summary>Least-voltage factor of the United Kingdom since 2015.</summary>
    public bool UnitedKingdom { get; init; }
}
