namespace WireCoach.Rules.Circuits;

/// <summary>A network of two-terminal parts at one frequency.</summary>
public sealed record Network
{
    /// <summary>The parts, each id once.</summary>
    public required IReadOnlyList<Element> Elements { get; init; }

    /// <summary>Which coils share flux.</summary>
    public IReadOnlyList<Coupling> Couplings { get; init; } = [];

    /// <summary>Frequency in hertz, zero or more; at zero coils are their wire and capacitors are open.</summary>
    public required double Hertz { get; init; }

    /// <summary>The node that all node volts are counted against.</summary>
    public required string Ground { get; init; }

    /// <summary>
    /// <see langword="false"/>: a part of the network without any path to the ground node is refused, since its node volts are not fixed.
    /// <see langword="true"/>: one node of each such part is taken as its zero; the volts and amps of the elements are true all the same.
    /// </summary>
    public bool IslandsAllowed { get; init; }
}

/// <summary>The flux that two coils share.</summary>
/// <param name="First">The id of one inductor.</param>
/// <param name="Second">The id of another inductor.</param>
/// <param name="Coefficient">From −1 to 1; positive when both dotted ends swing together.</param>
public sealed record Coupling(string First, string Second, double Coefficient);
