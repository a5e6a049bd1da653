using System.Numerics;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Coils that close a ring on themselves without any volts from the line: what is induced in them drives a current round the ring.</summary>
/// <remarks>Round a delta the three phases add to nothing; a run coil and a start coil never do, since they stand at a right angle.</remarks>
internal static class ClosedLoops
{
    /// <summary>The rings, each as its coils.</summary>
    /// <param name="coils">Coils that get no volts from the line; none with both ends on one node.</param>
    public static IEnumerable<IReadOnlyList<Ended>> Of(List<Ended> coils)
    {
        // The induced volts of every node along the coils; a coil whose ends have theirs already closes a ring, a harmless one where they agree.
        var (volts, island) = (new Dictionary<int, Complex>(), new Dictionary<int, int>());
        while (coils.Find(coil => !volts.ContainsKey(coil.From)) is { } first)
        {
            (volts[first.From], island[first.From]) = (Complex.Zero, first.From);
            while (coils.Find(coil => volts.ContainsKey(coil.From) != volts.ContainsKey(coil.To)) is { } next)
            {
                var (known, other, rise) = volts.ContainsKey(next.From) ? (next.From, next.To, -Induced(next)) : (next.To, next.From, Induced(next));
                (volts[other], island[other]) = (volts[known] + rise, island[known]);
            }
        }

        var closing = coils.Where(coil => (volts[coil.From] - volts[coil.To] - Induced(coil)).Magnitude > 1e-9 * coil.Coil!.RatedVolts)
            .Select(coil => island[coil.From]).ToHashSet();
        return coils.Where(coil => closing.Contains(island[coil.From])).GroupBy(coil => island[coil.From]).Select(ring => (IReadOnlyList<Ended>)[.. ring]);
    }

    private static Complex Induced(Ended coil) => Complex.FromPolarCoordinates(coil.Coil!.RatedVolts, coil.Coil.Angle);
}
