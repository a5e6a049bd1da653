using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Statements;
using WireCoach.Service.Phrasing;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Holds the sessions: every call is checked, turned by the rules, stored and only then answered.</summary>
internal sealed partial class CoachDesk(
    ISessionStore store, LiveSessions live, EarlierSessions earlier, Turning turning, Coach coach, Opening opening, Hearing hearing, PracticeBench bench, FactCheck check, TimeProvider clock, TurnLog log,
    Watches watches, Tally tally) : ICoachDesk
{
    private const int KeyLength = 80;

    private static readonly JsonSerializerOptions Prints = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    private readonly RecentKeys _opened = new();
    private readonly SessionGates _openings = new();

    public async Task<Answer<SessionView>> Open(NewSession begun, string? key = null, CancellationToken cancel = default) => Told("open", await Opened(begun, key, cancel));

    private async Task<Answer<SessionView>> Opened(NewSession begun, string? key, CancellationToken cancel)
    {
        if (!IsKey(key))
        {
            return Refusals.WrongKey(KeyLength);
        }

        if (key is null)
        {
            return await OpenedAnew(begun, key, cancel);
        }

        using var turn = await _openings.Enter(key, cancel); // a second tap waits for what the first one opens
        if (_opened.Find(key) is { } before)
        {
            return await Find(before, cancel);
        }

        var opened = await OpenedAnew(begun, key, cancel);
        if (opened.IsGiven)
        {
            _opened.Add(key, opened.Value.Id);
        }

        return opened;
    }

    private async Task<Answer<SessionView>> OpenedAnew(NewSession begun, string? key, CancellationToken cancel)
    {
        var started = clock.GetTimestamp();
        var read = opening.Read(begun);
        if (!read.IsGiven)
        {
            return Answer<SessionView>.Refused(read.Problems);
        }

        var at = Now();
        var id = SessionId.New(at);
        var given = await earlier.Beside(id, read.Value.Opened, at, read.Value.Given, cancel);
        var turned = turning.Open(id, read.Value.Opened, given with { Key = key }, at);
        if (!await Store(turned))
        {
            return Refusals.StoreUnavailable();
        }

        log.Turn("open", turned, null, clock.GetElapsedTime(started));
        return Views.Of(turned.After);
    }

    public async Task<Answer<SessionView>> Find(string session, CancellationToken cancel = default)
    {
        using var held = await live.Hold(session, cancel);
        return held.Session is { } found ? Views.Of(found) : Refusals.UnknownSession(session);
    }

    public Task<Answer<Reply>> Hear(string session, string text, string? key = null, CancellationToken cancel = default) =>
        Turn("message", session, key, null, found => hearing.Hear(found, text), cancel);

    public Task<Answer<Reply>> Respond(string session, QuestionAnswer given, string? key = null, CancellationToken cancel = default) =>
        Turn("answer", session, key, Print("answer", given), found => Respond(found, given), cancel);

    public Task<Answer<Reply>> Take(string session, IReadOnlyList<Fact> facts, string? key = null, CancellationToken cancel = default) =>
        Turn("facts", session, key, Print("facts", facts), found => Take(found, facts), cancel);

    public Task<Answer<Reply>> Retract(string session, string factId, string? key = null, CancellationToken cancel = default) =>
        Turn("retract", session, key, null, found => Retract(found, factId), cancel);

    public Task<Answer<Reply>> Probe(string session, string from, string to, string? key = null, CancellationToken cancel = default) =>
        Turn("probe", session, key, null, found => found.State.Opened.Practice is { } chosen ? bench.Probe(found, chosen, from.Trim(), to.Trim()) : Refusals.NoPractice(), cancel);

    private async Task<Answer<Reply>> Turn(
        string kind, string session, string? key, string? print, Func<LiveSession, Answer<Given>> give, CancellationToken cancel) =>
        Told(kind, await Turned(kind, session, key, print, give, cancel));

    private async Task<Answer<Reply>> Turned(
        string kind, string session, string? key, string? print, Func<LiveSession, Answer<Given>> give, CancellationToken cancel)
    {
        var started = clock.GetTimestamp();
        if (!IsKey(key))
        {
            return Refusals.WrongKey(KeyLength);
        }

        using var held = await live.Hold(session, cancel);
        if (held.Session is not { } found)
        {
            return Refusals.UnknownSession(session);
        }

        if (Views.Repeated(found, key, print) is { } before)
        {
            return before;
        }

        if (found.State.Closed)
        {
            return Refusals.Closed();
        }

        var given = give(found);
        if (!given.IsGiven)
        {
            return Answer<Reply>.Refused(given.Problems);
        }

        var whole = await earlier.Beside(session, found.State.Opened, found.State.CreatedAt, given.Value, cancel);
        var turned = turning.Turn(found, whole with { Key = key, Print = print }, Now());
        if (!await Store(turned))
        {
            return Refusals.StoreUnavailable();
        }

        watches.Turned(session);
        log.Turn(kind, turned, found.Assessment, clock.GetElapsedTime(started));
        return turned.Reply;
    }

    private Answer<Given> Respond(LiveSession found, QuestionAnswer given)
    {
        if (found.Assessment.Next is not { } asked)
        {
            return Refusals.NothingAsked();
        }

        var read = coach.Read(found.Case, asked, given);
        if (!read.IsGiven)
        {
            return Answer<Given>.Refused(read.Problems);
        }

        if (given.Text is not null && read.Value.Count == 0)
        {
            return hearing.Hear(found, given.Text);
        }

        var facts = check.Check(found.Case, read.Value, "answer");
        return facts.IsGiven
            ? new Given { Facts = facts.Value, Question = asked.Id }
            : Answer<Given>.Refused(facts.Problems);
    }

    private Answer<Given> Take(LiveSession found, IReadOnlyList<Fact>? facts)
    {
        if (facts is not { Count: > 0 } || facts.Any(fact => fact is null))
        {
            return Refusals.NoFacts();
        }

        if (facts.Count > FactCheck.MostFacts)
        {
            return Refusals.TooManyFacts(FactCheck.MostFacts);
        }

        var read = check.Check(found.Case, facts, "facts");
        return read.IsGiven
            ? new Given { Facts = [.. Coach.Implied(found.Case, read.Value), .. read.Value.Select(fact => fact with { How = FactEntry.Form })] }
            : Answer<Given>.Refused(read.Problems);
    }

    private static Answer<Given> Retract(LiveSession found, string factId)
    {
        var fact = found.State.Facts.FindLast(known => known.FactId == factId)
            ?? found.State.Facts.FindLast(known => known.Id == factId);
        return fact is null ? Refusals.UnknownFact(factId) : new Given { Retracted = [fact.FactId] };
    }

    /// <summary>An answer, told to the meters when it is a refusal.</summary>
    private Answer<T> Told<T>(string kind, Answer<T> answer)
        where T : class
    {
        if (!answer.IsGiven)
        {
            log.Refused(kind, answer.Problems[0]);
        }

        return answer;
    }

    private async Task<bool> Store(Turned turned)
    {
        var started = clock.GetTimestamp();
        try
        {
            await store.Append(turned.Events);
            log.Commit(stored: true, clock.GetElapsedTime(started));
        }
        catch (StoreException)
        {
            log.Commit(stored: false, clock.GetElapsedTime(started));
            live.Remove(turned.After.State.Id); // a store far away may have taken it without being able to say so: the next call looks
            return false;
        }

        live.Put(turned.After);
        return true;
    }

    /// <summary>The time as the journal keeps it.</summary>
    private DateTimeOffset Now() => DateTimeOffset.FromUnixTimeMilliseconds(clock.GetUtcNow().ToUnixTimeMilliseconds());

    private static bool IsKey(string? key) =>
        key is null || (key.Length is > 0 and <= KeyLength && key.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '.' or '_'));

    private static string Print<T>(string kind, T body) =>
        $"{kind}-{Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(body, Prints)).AsSpan(0, 8))}";
}
