using System.Text.Json;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>The manager's side of the desk: verdicts, the log, the list, the figures.</summary>
internal sealed partial class CoachDesk
{
    public const int LargestPage = 200;

    private static readonly string[] Verdicts = ["ok", "redo", "note"];

    public Task<Answer<SessionView>> Review(string session, NewReview review, string? key = null, CancellationToken cancel = default)
    {
        if (!Verdicts.Contains(review.Verdict, StringComparer.Ordinal))
        {
            return Refused(Refusals.OneOf("verdict", string.Join(", ", Verdicts)));
        }

        if (review.Note?.Length > FactCheck.TextLength)
        {
            return Refused(Refusals.TooLong("note", FactCheck.TextLength));
        }

        return review.Who?.Length > Opening.NameLength
            ? Refused(Refusals.TooLong("who", Opening.NameLength))
            : Record(session, key, Print("review", review), state => new SessionEvent.Reviewed(review.Verdict!, review.Note, review.Who, state.Sequence), cancel);
    }

    public Task<Answer<SessionView>> Close(string session, string? key = null, CancellationToken cancel = default) =>
        Record(session, key, null, state => state.Closed ? null : new SessionEvent.Closed(), cancel);

    public async Task<Answer<SessionLog>> Log(string session, CancellationToken cancel = default)
    {
        using var held = await live.Hold(session, cancel);
        if (held.Session is not { } found)
        {
            return Refusals.UnknownSession(session);
        }

        var events = await store.Events(session, cancel);
        return new SessionLog(Views.Of(found), [.. events.Select(LogEntries.Of)], Conclusion.Differences(found.State.Concluded, coach.Assess(found.Case)));
    }

    public string? Sought(NewSession opening) => hearing.Sought(opening);

    public async Task<Answer<SessionPage>> List(SessionFilter filter, CancellationToken cancel = default)
    {
        if (filter.Size is { } size && size is < 1 or > LargestPage)
        {
            return Refusals.WrongSize(LargestPage);
        }

        return filter.After is { } after && !SessionId.IsWellFormed(after) ? Refusals.WrongCursor() : await store.List(filter, cancel);
    }

    public async Task<Answer<Figures>> Figures(DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancel = default)
    {
        var sessions = await store.Summaries(from, to, cancel);
        return FiguresFold.Of(sessions) with { OverTime = FiguresOverTime.Of(sessions), Phrasing = tally.Figures(from, to) };
    }

    public async Task<Answer<IReadOnlyList<Deletion>>> Delete(IReadOnlyList<string> sessions, string? who, string? why, CancellationToken cancel = default)
    {
        if (string.IsNullOrWhiteSpace(why))
        {
            return Refusals.Empty("why");
        }

        if (why.Length > FactCheck.TextLength || who?.Length > Opening.NameLength)
        {
            return why.Length > FactCheck.TextLength ? Refusals.TooLong("why", FactCheck.TextLength) : Refusals.TooLong("who", Opening.NameLength);
        }

        var deleted = new List<Deletion>();
        try
        {
            foreach (var session in sessions.Distinct(StringComparer.Ordinal))
            {
                using var held = await live.Hold(session, cancel);
                if (held.Session is not { } found)
                {
                    return Refusals.UnknownSession(session);
                }

                var at = Now();
                await store.Append([new StoredEvent(session, found.State.Sequence + 1, at, new SessionEvent.Deleted(who, why.Trim()))]);
                live.Remove(session);
                deleted.Add(new Deletion(session, at, who, why.Trim()));
            }

            await store.Erase();
        }
        catch (StoreException)
        {
            return Refusals.StoreUnavailable();
        }

        return deleted;
    }

    public async Task<Answer<IReadOnlyList<Deletion>>> Deletions(CancellationToken cancel = default) =>
        Answer<IReadOnlyList<Deletion>>.Given(await store.Deletions(cancel));

    private static Task<Answer<SessionView>> Refused(Problem problem) => Task.FromResult<Answer<SessionView>>(problem);

    private async Task<Answer<SessionView>> Record(
        string session, string? key, string? print, Func<SessionState, SessionEvent?> happen, CancellationToken cancel)
    {
        if (!IsKey(key))
        {
            return Refusals.WrongKey(KeyLength);
        }

        using var held = await live.Hold(session, cancel);
        if (held.Session is not { } found)
        {
            return Refusals.UnknownSession(session);
        }

        if ((key is not null && found.State.Keys.ContainsKey(key)) || (print is not null && print == found.State.Print) || happen(found.State) is not { } happened)
        {
            return Views.Of(found);
        }

        var stored = new StoredEvent(session, found.State.Sequence + 1, Now(), happened) { Key = key, Print = print };
        var state = found.State.With(stored);
        var turned = new Turned(found with { State = state }, [stored], Views.Reply(found));
        return await Store(turned) ? Views.Of(turned.After) : Refusals.StoreUnavailable();
    }
}
