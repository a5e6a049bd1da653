namespace WireCoach.Rules.Connections.Checking;

/// <summary>Coils of one axis that close a ring on themselves without any volts from the line: what is induced in them drives a current round the ring.</summary>
internal static class ClosedLoops
{
    /// <summary>The rings, each as its coils.</summary>
    /// <param name="coils">Coils that get no volts from the line; none with both ends on one node.</param>
    public static IEnumerable<IReadOnlyList<Ended>> Of(IEnumerable<Ended> coils) =>
        coils.GroupBy(coil => coil.Coil!.Axis, StringComparer.Ordinal).SelectMany(axis => OfAxis([.. axis]));

    private static IEnumerable<IReadOnlyList<Ended>> OfAxis(List<Ended> coils)
    {
        // The induced volts of every node along the coils; a coil whose ends have theirs already closes a ring, a harmless one where they agree.
        var (volts, island) = (new Dictionary<int, double>(), new Dictionary<int, int>());
        while (coils.Find(coil => !volts.ContainsKey(coil.From)) is { } first)
        {
            (volts[first.From], island[first.From]) = (0, first.From);
            while (coils.Find(coil => volts.ContainsKey(coil.From) != volts.ContainsKey(coil.To)) is { } next)
            {
                var (known, other, rise) = volts.ContainsKey(next.From) ? (next.From, next.To, -next.Coil!.RatedVolts) : (next.To, next.From, next.Coil!.RatedVolts);
                (volts[other], island[other]) = (volts[known] + rise, island[known]);
            }
        }

        var closing = coils.Where(coil => Math.Abs(volts[coil.From] - volts[coil.To] - coil.Coil!.RatedVolts) > 1e-9 * coil.Coil.RatedVolts)
            .Select(coil => island[coil.From]).ToHashSet();
        return coils.Where(coil => closing.Contains(island[coil.From])).GroupBy(coil => island[coil.From]).Select(ring => (IReadOnlyList<Ended>)[.. ring]);
    }
}
