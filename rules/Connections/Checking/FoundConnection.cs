namespace WireCoach.Rules.Connections.Checking;

/// <summary>A connection as someone made it: what is tied to what, and what feeds it.</summary>
public sealed record FoundConnection
{
    /// <summary>The coils.</summary>
    public required IReadOnlyList<FoundCoil> Coils { get; init; }

    /// <summary>The joints; joints on one conductor are one joint, and a lead that stands in two joints ties them.</summary>
    public required IReadOnlyList<FoundJoint> Joints { get; init; }

    /// <summary>RMS volts between the line conductors.</summary>
    public required double SupplyVolts { get; init; }

    /// <summary>1 or 3; <see langword="null"/> to be seen from the conductors and coils.</summary>
    public int? Phases { get; init; }

    /// <summary>Frequency in hertz; <see langword="null"/> where it was not said.</summary>
    public double? Hertz { get; init; }

    /// <summary>The system of the supply; <c>split-phase</c> puts N in the middle of L1 and L2.</summary>
    public string? System { get; init; }

    /// <summary>The capacitors.</summary>
    public IReadOnlyList<FoundCapacitor> Capacitors { get; init; } = [];

    /// <summary>The start switches.</summary>
    public IReadOnlyList<FoundSwitch> Switches { get; init; } = [];

    /// <summary>Of each protector in the way, the leads that it connects while it is closed.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Protectors { get; init; } = [];

    /// <summary>Names that are tied inside the motor.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Inside { get; init; } = [];

    /// <summary>The slip to solve at; <see langword="null"/> for standstill.</summary>
    public double? Slip { get; init; }

    /// <summary>Whether it is a motor with brushes.</summary>
    internal bool IsCommutator => Coils.Any(coil => coil.IsOfCommutator);
}

/// <summary>A coil.</summary>
/// <param name="Id">Its id.</param>
/// <param name="From">The name of its start. An end that does not come out is a name in no joint.</param>
/// <param name="To">The name of its finish.</param>
/// <param name="Role">A winding role of the contract.</param>
/// <param name="RatedVolts">The volts it is made for; of a start coil those of its whole branch.</param>
/// <param name="Axis"><c>main</c>, <c>start</c>, <c>a</c>, <c>b</c> or <c>c</c>.</param>
/// <param name="Ohms">Its resistance; <see langword="null"/> where it was not measured.</param>
/// <param name="MayRest">It belongs to another speed or step and may lie open.</param>
public sealed record FoundCoil(
    string Id, string From, string To, string Role, double RatedVolts, string Axis, double? Ohms = null, bool MayRest = false)
{
    /// <summary>What a person calls it; the id where nothing else is known.</summary>
    public string Called { get; init; } = Id;

    internal const string Armature = "armature";

    internal const string SeriesField = "series-field";

    internal const string ShuntField = "shunt-field";

    /// <summary>The magnetic axis in radians.</summary>
    internal double Angle => Axis switch { "start" => Math.PI / 2, "b" => 2 * Math.PI / 3, "c" => 4 * Math.PI / 3, _ => 0 };

    /// <summary>Whether it belongs to the start winding by its role or axis.</summary>
    internal bool IsStart => Role == "start" || Axis == "start";

    /// <summary>Whether it is the armature or a field of a motor with brushes.</summary>
    internal bool IsOfCommutator => Role is Armature or SeriesField or ShuntField;

    /// <summary>Whether it is a coil of a three-phase winding.</summary>
    internal bool IsPhase => Axis is "a" or "b" or "c";
}

/// <summary>Leads that are together.</summary>
/// <param name="Leads">Their names.</param>
/// <param name="Conductor">The conductor on them, or <see langword="null"/>.</param>
public sealed record FoundJoint(IReadOnlyList<string> Leads, string? Conductor = null);

/// <summary>A capacitor.</summary>
/// <param name="From">The name at one terminal.</param>
/// <param name="To">The name at the other terminal.</param>
/// <param name="Microfarads">Its capacitance; <see langword="null"/> where it was not said.</param>
/// <param name="Left">Where it was not said, the share of the usual capacitance that it has left.</param>
public sealed record FoundCapacitor(string From, string To, double? Microfarads = null, double Left = 1);

/// <summary>A start switch.</summary>
/// <param name="From">The name at one terminal.</param>
/// <param name="To">The name at the other terminal.</param>
/// <param name="Closed">As it is at rest, or open while running.</param>
public sealed record FoundSwitch(string From, string To, bool Closed = true);
