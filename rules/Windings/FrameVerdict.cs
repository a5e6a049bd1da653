using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Windings;

/// <summary>What readings to the frame leave open: a path that only leads held together show is of none of them.</summary>
internal static class FrameVerdict
{
    private const double Tellings = 0.2;

    /// <summary>The path of a bundle of which each lead reads open: nothing is said of any of them while it stands; <see langword="null"/> where the readings go together.</summary>
    /// <param name="bench">The leads.</param>
    /// <param name="frame">Their readings to the frame.</param>
    public static Identification? Denied(Bench bench, FrameReadings frame) => frame.Denied(bench) is not { } denied ? null : new()
    {
        Status = IdentificationStatus.Contradiction,
        Contradictions = [denied],
        Next = denied.Readings is [var again] ? ToFrame([again.From == Fact.Reading.Frame ? again.To : again.From, .. again.Together], "windings.read-again") : null,
        TouchesSoFar = bench.Input.Readings.Count,
        ExpectedTouchesLeft = denied.Readings.Count,
    };

    /// <summary>Which of a bundle makes its path, or that a ground is possible where that cannot be read; <see langword="null"/> where no path is without a lead.</summary>
    /// <param name="bench">The leads.</param>
    /// <param name="frame">Their readings to the frame.</param>
    /// <param name="give">What is known beside it, with a status and notes.</param>
    public static Identification? Open(Bench bench, FrameReadings frame, Func<IdentificationStatus, Statement[], Identification> give) =>
        frame.Possible(bench) is not { } possible ? null
        : frame.Unread(lead => IsReadable(bench, lead)) is var unread and >= 0
            ? give(IdentificationStatus.NeedsReading, []) with { Next = ToFrame([bench.Leads[unread]], "windings.frame-which"), ExpectedTouchesLeft = 1 }
        : give(IdentificationStatus.CannotTell, [possible]);

    /// <summary>A reading of leads, held together where they are several, to the frame.</summary>
    /// <param name="leads">Their tags.</param>
    /// <param name="why">The sentence that says why.</param>
    public static NextReading ToFrame(IReadOnlyList<string> leads, string why) => new()
    {
        Kind = "resistance",
        From = leads[0],
        To = Fact.Reading.Frame,
        Together = [.. leads.Skip(1)],
        Why = Statement.Of(why),
        ExpectedTellings = Tellings,
    };

    private static bool IsReadable(Bench bench, int lead) => !bench.Input.Unreadable.Any(pair =>
        string.Equals(pair.From, bench.Leads[lead], StringComparison.OrdinalIgnoreCase) && pair.To == Fact.Reading.Frame);
}
