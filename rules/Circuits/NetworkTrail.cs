using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Circuits;

/// <summary>How a network was solved, step by step.</summary>
public static class NetworkTrail
{
    /// <summary>The steps of a solution in phasors.</summary>
    /// <param name="network">The network that was solved.</param>
    public static IReadOnlyList<TrailStep> Of(Network network) =>
    [
        new("currents at each node", "sum of amps = 0", $"{network.Elements.Count} elements", $"zero volts at {network.Ground}"),
        new(
            "volts along each element",
            "V = R·I, V = jωL·I + jωM·I2, I = jωC·V",
            $"{Units.Text(network.Hertz, "hertz")}, {network.Couplings.Count} couplings, M = k·√(L1·L2)",
            "one set of linear equations, solved and corrected once"),
    ];

    /// <summary>The steps of ohmmeter readings.</summary>
    /// <param name="network">The network that was read.</param>
    public static IReadOnlyList<TrailStep> OfMeter(Network network) =>
    [
        new("paths for direct current", "coil = its wire, capacitor = open", $"{network.Elements.Count} elements", "a network of resistors"),
        new("ohms of each pair", "star to mesh: G_ab += G_an·G_nb / ΣG_n", "every node but the pair is taken out", "R = 1 / G"),
    ];
}
