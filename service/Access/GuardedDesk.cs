using System.Security.Claims;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Statements;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Access;

/// <summary>The desk of a shared service: every call is for those who may make it, whether a page or a program makes it.</summary>
/// <remarks>Managers do everything; technicians all but sign off and delete; homeowners and apprentices only see what was opened in their browser.</remarks>
internal sealed class GuardedDesk(CoachDesk desk, OwnSessions own, IDoor door) : ICoachDesk
{
    private bool IsManager => door.Manages;

    private bool SeesAll => door.SeesAll;

    public async Task<Answer<SessionView>> Open(NewSession opening, string? key = null, CancellationToken cancel = default)
    {
        if (!IsSignedIn)
        {
            return NotYours();
        }

        if (!MayBe(opening))
        {
            return new Problem("gate-closed", "role", Statement.Of("access.own-role"));
        }

        var opened = await desk.Open(opening, SeesAll ? key : null, cancel); // a key of somebody else must not lead to their session
        if (opened.IsGiven && !SeesAll)
        {
            own.Add(opened.Value.Id);
        }

        return opened;
    }

    public string? Sought(NewSession opening) => desk.Sought(opening);

    public Task<Answer<SessionView>> Find(string session, CancellationToken cancel = default) => IfSeen(session, () => desk.Find(session, cancel));

    public Task<Answer<Reply>> Hear(string session, string text, string? key = null, CancellationToken cancel = default) =>
        IfSeen(session, () => desk.Hear(session, text, key, cancel));

    public Task<Answer<Reply>> Respond(string session, QuestionAnswer given, string? key = null, CancellationToken cancel = default) =>
        IfSeen(session, () => desk.Respond(session, given, key, cancel));

    public Task<Answer<Reply>> Take(string session, IReadOnlyList<Fact> facts, string? key = null, CancellationToken cancel = default) =>
        IfSeen(session, () => desk.Take(session, facts, key, cancel));

    public Task<Answer<Reply>> Retract(string session, string factId, string? key = null, CancellationToken cancel = default) =>
        IfSeen(session, () => desk.Retract(session, factId, key, cancel));

    public Task<Answer<Reply>> Probe(string session, string from, string to, string? key = null, CancellationToken cancel = default) =>
        IfSeen(session, () => desk.Probe(session, from, to, key, cancel));

    public async Task<Answer<SessionView>> Review(string session, NewReview review, string? key = null, CancellationToken cancel = default) =>
        IsManager ? await desk.Review(session, review, key, cancel) : NotYours();

    public Task<Answer<SessionView>> Close(string session, string? key = null, CancellationToken cancel = default) =>
        IfSeen(session, () => desk.Close(session, key, cancel));

    public async Task<Answer<IReadOnlyList<Deletion>>> Delete(IReadOnlyList<string> sessions, string? who, string? why, CancellationToken cancel = default) =>
        IsManager ? await desk.Delete(sessions, who, why, cancel) : NotYours();

    public async Task<Answer<IReadOnlyList<Deletion>>> Deletions(CancellationToken cancel = default) =>
        IsManager ? await desk.Deletions(cancel) : NotYours();

    public Task<Answer<SessionLog>> Log(string session, CancellationToken cancel = default) => IfSeen(session, () => desk.Log(session, cancel));

    public async Task<Answer<SessionPage>> List(SessionFilter filter, CancellationToken cancel = default) =>
        IsSignedIn ? await desk.List(SeesAll ? filter : filter with { Only = own.All }, cancel) : NotYours();

    public async Task<Answer<Figures>> Figures(DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancel = default) =>
        SeesAll ? await desk.Figures(from, to, cancel) : NotYours();

    private bool IsSignedIn => door.IsInside;

    private static Problem NotYours() => new("gate-closed", "role", Statement.Of("access.not-yours"));

    /// <summary>A practice motor cannot hurt.</summary>
    private bool MayBe(NewSession opening) => opening.Practice is not null || opening.Role is not { } role || SeesAll || door.MayBe.Contains(role);

    /// <summary>A session of somebody else is answered as if there were none.</summary>
    private async Task<Answer<T>> IfSeen<T>(string session, Func<Task<Answer<T>>> call)
        where T : class => SeesAll || (IsSignedIn && own.All.Contains(session, StringComparer.Ordinal)) ? await call() : Refusals.UnknownSession(session);
}
