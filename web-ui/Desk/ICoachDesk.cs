using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Statements;

namespace WireCoach.WebUi.Desk;

/// <summary>Where pages and endpoints hold their sessions. Whatever a call acknowledges is on disk before it returns.</summary>
/// <remarks>
/// A <c>key</c> makes a call safe to repeat: the same key in the same session is stored once and answers as it did.
/// A page puts a fresh key (for example <see cref="SessionView.Sequence"/> with the form's name) into a hidden field.
/// A refusal is an <see cref="Answer{T}"/> with problems; nothing is stored then.
/// </remarks>
public interface ICoachDesk
{
    /// <summary>Opens a session and puts its first words, plate and instruments into it.</summary>
    Task<Answer<SessionView>> Open(NewSession opening, string? key = null, CancellationToken cancel = default);

    /// <summary>What to look for among the jobs where the first words of an opening ask after earlier ones, empty for all of them; <see langword="null"/> where they begin a job.</summary>
    string? Sought(NewSession opening);

    /// <summary>A session as it stands.</summary>
    Task<Answer<SessionView>> Find(string session, CancellationToken cancel = default);

    /// <summary>Plain words: facts, readings, answers, corrections, undo, "why?".</summary>
    Task<Answer<Reply>> Hear(string session, string text, string? key = null, CancellationToken cancel = default);

    /// <summary>The answer to the open question. The same answer twice in a row is stored once.</summary>
    Task<Answer<Reply>> Respond(string session, QuestionAnswer given, string? key = null, CancellationToken cancel = default);

    /// <summary>Facts in structure. The same facts twice in a row are stored once.</summary>
    Task<Answer<Reply>> Take(string session, IReadOnlyList<Fact> facts, string? key = null, CancellationToken cancel = default);

    /// <summary>Takes a fact back; the log keeps both.</summary>
    Task<Answer<Reply>> Retract(string session, string factId, string? key = null, CancellationToken cancel = default);

    /// <summary>Practice only: puts the meter's probes on two leads of the simulated motor.</summary>
    Task<Answer<Reply>> Probe(string session, string from, string to, string? key = null, CancellationToken cancel = default);

    /// <summary>A manager's verdict on a session.</summary>
    Task<Answer<SessionView>> Review(string session, NewReview review, string? key = null, CancellationToken cancel = default);

    /// <summary>Closes a session: it takes no further facts.</summary>
    Task<Answer<SessionView>> Close(string session, string? key = null, CancellationToken cancel = default);

    /// <summary>Deletes sessions for good; that they were deleted, when, by whom and why stays on record.</summary>
    Task<Answer<IReadOnlyList<Deletion>>> Delete(IReadOnlyList<string> sessions, string? who, string? why, CancellationToken cancel = default);

    /// <summary>What was deleted, the latest first.</summary>
    Task<Answer<IReadOnlyList<Deletion>>> Deletions(CancellationToken cancel = default);

    /// <summary>Everything that was written of a session, in order.</summary>
    Task<Answer<SessionLog>> Log(string session, CancellationToken cancel = default);

    /// <summary>Sessions, the newest first, a page at a time.</summary>
    Task<Answer<SessionPage>> List(SessionFilter filter, CancellationToken cancel = default);

    /// <summary>What the sessions of a span of time amount to.</summary>
    Task<Answer<Figures>> Figures(DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancel = default);
}
