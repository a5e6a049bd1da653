using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Where sessions are kept. One event log a session, and a list over all of them.</summary>
/// <remarks>A read may be given up; what is written is finished once it was begun.</remarks>
internal interface ISessionStore
{
    /// <summary>What keeps the store from working, or <see langword="null"/>.</summary>
    string? Trouble { get; }

    /// <summary>Stores events of one session, all or none; they are on disk when the task completes.</summary>
    /// <remarks>A <see cref="SessionEvent.Deleted"/> hides all earlier events of its session; <see cref="Erase"/> takes them off the disk.</remarks>
    /// <exception cref="StoreException">They could not be stored.</exception>
    Task Append(IReadOnlyList<StoredEvent> events);

    /// <summary>All events of a session in order; none for a session that does not exist.</summary>
    Task<IReadOnlyList<StoredEvent>> Events(string session, CancellationToken cancel = default);

    /// <summary>Sessions, the newest first.</summary>
    Task<SessionPage> List(SessionFilter filter, CancellationToken cancel = default);

    /// <summary>All sessions opened in a span of time.</summary>
    Task<IReadOnlyList<SessionSummary>> Summaries(DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancel = default);

    /// <summary>Takes what was deleted off the disk, so that only the record of the deletion stays. A stop in between is made up for at the next start.</summary>
    /// <exception cref="StoreException">The disk did not take it; it is tried again at the next start.</exception>
    Task Erase();

    /// <summary>What was deleted, the latest first.</summary>
    Task<IReadOnlyList<Deletion>> Deletions(CancellationToken cancel = default);
}
