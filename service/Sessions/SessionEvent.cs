using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Something that happened in a session. Events are never edited.</summary>
internal abstract record SessionEvent
{
    private SessionEvent()
    {
    }

    public sealed record Opened(Role Role, Region Region, string? Who, string? MotorTag, PracticeChoice? Practice) : SessionEvent;

    /// <summary>What the person gave: the facts in it, the words, what was not understood, and the question that it answers.</summary>
    public sealed record FactsTaken(
        IReadOnlyList<Fact> Facts, string? Words = null, IReadOnlyList<string>? NotUnderstood = null, string? Question = null) : SessionEvent;

    public sealed record Retracted(string FactId) : SessionEvent;

    /// <summary>A decision or an explanation that was shown.</summary>
    public sealed record Said(string Id, string Text, IReadOnlyList<string> Rules) : SessionEvent;

    public sealed record CautionShown(string Id, string Text, IReadOnlyList<string> Rules) : SessionEvent;

    /// <summary>Where the rules stand after a turn; written when it changes.</summary>
    public sealed record Concluded(string Status, string? Goal, string? Layout, IReadOnlyList<string> Causes) : SessionEvent;

    /// <summary>The question that is open now; without an id there is none.</summary>
    public sealed record Asked(string? Id, string? Text, string? About) : SessionEvent;

    public sealed record Reviewed(string Verdict, string? Note, string? Who, int Upon) : SessionEvent;

    public sealed record Closed : SessionEvent;

    /// <summary>The session was deleted; this is all that is left of it.</summary>
    public sealed record Deleted(string? Who, string Why) : SessionEvent;
}

/// <summary>An event with its place and time, as it stands in the journal.</summary>
/// <param name="Session">The session's id.</param>
/// <param name="Sequence">Its place in the session, from 1.</param>
/// <param name="At">When, UTC, to the millisecond.</param>
/// <param name="Event">What happened.</param>
internal sealed record StoredEvent(string Session, int Sequence, DateTimeOffset At, SessionEvent Event)
{
    /// <summary>The client's key of the request that it belongs to, on the request's first event.</summary>
    public string? Key { get; init; }

    /// <summary>A print of the request's body, on the request's first event, to know a double tap.</summary>
    public string? Print { get; init; }

    /// <summary>The engine's version that wrote it.</summary>
    public string Engine { get; init; } = EventFormat.Engine;
}
