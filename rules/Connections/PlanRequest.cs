using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Connections;

/// <summary>What a connection plan is asked from. Anything left out that the plan needs comes back as missing.</summary>
public sealed record PlanRequest
{
    /// <summary>A layout id.</summary>
    public required string Layout { get; init; }

    /// <summary>The person's tag of each lead, by the lead's marking (NEMA or IEC).</summary>
    public required IReadOnlyDictionary<string, string> Leads { get; init; }

    /// <summary>The plate as far as it was read.</summary>
    public PlateFields Plate { get; init; } = PlateFields.Empty;

    /// <summary>The supply at hand, or <see langword="null"/> where nothing was said of it.</summary>
    public Fact.Supply? Supply { get; init; }

    /// <summary><c>clockwise</c> or <c>counterclockwise</c>; <see langword="null"/> leaves it to the first run.</summary>
    public string? Rotation { get; init; }

    /// <summary>Where <see cref="Rotation"/> is seen from: <c>shaft-end</c> or <c>opposite-end</c>; the end of the table where it is left out.</summary>
    public string? SeenFrom { get; init; }

    /// <summary>Whether it is not known which end of the start branch is which: then no row of the table tells the direction, and <see cref="Rotation"/> only takes the other row than the one that ran the wrong way.</summary>
    public bool DirectionUnproved { get; init; }

    /// <summary>The capacitor that is to be used, or <see langword="null"/>.</summary>
    public Fact.Capacitor? Capacitor { get; init; }

    /// <summary>A row of the table to take where several suit the supply: a speed, a tap, a step of the start; the row's <c>for</c> or id.</summary>
    public string? Connection { get; init; }

    /// <summary>A variant of the layout (a protector, another inside); where it is left out, the form with exactly these leads.</summary>
    public string? Form { get; init; }

    /// <summary>Measured ohms by coil id or coil group, cold and with the probes taken off.</summary>
    public IReadOnlyDictionary<string, double> CoilOhms { get; init; } = new Dictionary<string, double>(StringComparer.Ordinal);

    /// <summary>Measured windings by the tags of their two leads; each is one coil of the layout.</summary>
    public IReadOnlyList<MeasuredWinding> Windings { get; init; } = [];
}

/// <summary>What a meter reads between two leads that are the ends of one coil.</summary>
/// <param name="From">The tag of one end.</param>
/// <param name="To">The tag of the other end.</param>
/// <param name="Ohms">The resistance in ohms, above zero, with the probes taken off.</param>
public sealed record MeasuredWinding(string From, string To, double Ohms);
