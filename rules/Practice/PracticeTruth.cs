namespace WireCoach.Rules.Practice;

/// <summary>What the practice motor hides, for scoring afterwards.</summary>
public sealed record PracticeTruth
{
    /// <summary>Its layout.</summary>
    public required string Layout { get; init; }

    /// <summary>The variant of the layout; <see langword="null"/> for the layout as it stands.</summary>
    public string? Form { get; init; }

    /// <summary>The tag of each marking.</summary>
    public required IReadOnlyDictionary<string, string> Leads { get; init; }

    /// <summary>The fault as a cause id of the contract; <see langword="null"/> for a sound motor.</summary>
    public string? Fault { get; init; }

    /// <summary>The coil or part with the fault, by its id in the layout.</summary>
    public string? FaultAt { get; init; }

    /// <summary>Ohms of each coil by id, as it is: <see langword="null"/> where it is open.</summary>
    public required IReadOnlyDictionary<string, double?> Ohms { get; init; }

    /// <summary>Whether like halves lie on poles of their own and hardly couple at rest.</summary>
    public bool OnOwnPoles { get; init; }

    /// <summary>Volts induced at rest in a like coil on the same axis over the volts applied.</summary>
    public required double Coupling { get; init; }

    /// <summary>Megohms of the winding to the frame.</summary>
    public required double Megohms { get; init; }
}
