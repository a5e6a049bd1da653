using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>Every pair was read and none shows anything: no slip of one reading explains that, nor one winding that is open.</summary>
internal static class Silence
{
    /// <summary>What it comes down to; <see langword="null"/> where something reads, or not all pairs were read.</summary>
    /// <param name="bench">The leads.</param>
    /// <param name="readings">The readings.</param>
    /// <param name="next">Asks for a reading.</param>
    public static Identification? Of(Bench bench, IReadOnlyList<Measured> readings, Func<int, int, Statement, double, NextReading> next)
    {
        var count = bench.Leads.Count;
        var pairs = count * (count - 1) / 2;
        if (count < 3 || readings.Any(reading => reading.Showed != Showed.Open) || readings.DistinctBy(reading => (reading.First, reading.Second)).Count() < pairs)
        {
            return null;
        }

        var found = new Identification
        {
            Status = IdentificationStatus.CannotTell,
            TouchesSoFar = bench.Input.Readings.Count,
            ExpectedTouchesLeft = 0,
            Notes = [Statement.Of("windings.prove-the-meter")],
        };
        if (bench.Input.Looks is not null && readings.Count == pairs)
        {
            return found with { Status = IdentificationStatus.NeedsReading, Next = next(0, 1, Statement.Of("windings.read-again"), 1), ExpectedTouchesLeft = 1 };
        }

        // Three leads always meet inside, so that one break where they meet, or a protector there, opens them all.
        return count > 3 ? found
            : found with { Status = IdentificationStatus.Faulty, Faults = [new("protector-open", bench.Leads, Statement.Of("windings.all-open"))] };
    }
}
