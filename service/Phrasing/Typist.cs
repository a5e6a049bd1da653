using System.Collections.Concurrent;
using System.Diagnostics;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Phrasing;

/// <summary>Has sentences reworded, beside the conversation and never in its way: one call at a time, and the engine's words wherever there is doubt.</summary>
internal sealed class Typist(TradeKnowledge knowledge, Guard guard, Tally tally, Watches watches, TimeProvider clock, ILogger<Typist> log, PhrasingSettings? settings = null) : IDisposable
{
    private const int MostRemembered = 500;
    private const int MostWaiting = 1;

    private readonly LanguageModel? _model = settings is null ? null : new LanguageModel(settings);
    private readonly Breaker _breaker = new(clock);
    private readonly SemaphoreSlim _one = new(1);
    private readonly ConcurrentDictionary<(Role Role, string Masked), string?> _known = new();
    private int _waiting;

    /// <summary>What was said last in a session, in other words where they say the same; all of it at once.</summary>
    public async Task<Rewordings> Of(SessionView session, CancellationToken cancel)
    {
        var items = new List<Rewording>();
        var ended = await Each(session, item => { items.Add(item); return Task.CompletedTask; }, cancel);
        return ended with { Items = items };
    }

    /// <summary>The same one by one, each as soon as it was found to say the same.</summary>
    /// <returns>How it ended, without the rewordings.</returns>
    public async Task<Rewordings> Each(SessionView session, Func<Rewording, Task> passed, CancellationToken cancel)
    {
        if (_model is null || settings is null)
        {
            return Answer("off", session);
        }

        if (Interlocked.Increment(ref _waiting) > MostWaiting + 1)
        {
            Interlocked.Decrement(ref _waiting);
            return Answer("busy", session);
        }

        using var watch = watches.Over(session.Id, cancel);
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(watch.Token);
        limit.CancelAfter(settings.Timeout);
        try
        {
            await _one.WaitAsync(limit.Token);
            try
            {
                foreach (var statement in ToSend(session))
                {
                    if (await Reword(_model, statement, session, watch.Token, limit.Token) is { } reworded)
                    {
                        await passed(reworded);
                    }
                }
            }
            finally
            {
                Leave();
            }
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return Answer(watch.Token.IsCancellationRequested ? "overtaken" : "busy", session);
        }
        finally
        {
            Interlocked.Decrement(ref _waiting);
        }

        return Answer(_breaker.IsOpen ? "resting" : "ready", session);
    }

    /// <summary>Whether a sentence may be shown to a model: of an open room, and without joints, readings or danger in it.</summary>
    public bool MayBeSent(string id, string masked) =>
        knowledge.Phrasing.Rooms.Contains(id.Split('.')[0]) && !guard.Classes(masked, new HashSet<string>()).Overlaps(["verb", "hazard"]);

    public void Dispose()
    {
        _model?.Dispose();
        _one.Dispose();
    }

    private void Leave()
    {
        try
        {
            _one.Release();
        }
        catch (ObjectDisposedException)
        {
            // The service stopped while the model was thinking.
        }
    }

    private IEnumerable<Statement> ToSend(SessionView session)
    {
        var said = (session.Last?.Say ?? []).Select(sentence => sentence.Text).ToHashSet(StringComparer.Ordinal);
        return session.Assessment.Say.Where(statement =>
            MayBeSent(statement.Id, Masked.Of(statement, knowledge.Sentences, session.Role).Text) && said.Contains(knowledge.Sentences.Render(statement, session.Role)));
    }

    private async Task<Rewording?> Reword(LanguageModel model, Statement statement, SessionView session, CancellationToken reader, CancellationToken cancel)
    {
        var masked = Masked.Of(statement, knowledge.Sentences, session.Role);
        if (!_known.TryGetValue((session.Role, masked.Text), out var draft))
        {
            if (_breaker.IsOpen || cancel.IsCancellationRequested)
            {
                return null;
            }

            draft = await Ask(model, statement.Id, masked, session, reader, cancel);
        }

        return draft is not null && masked.Restore(draft) is { } text && text != masked.Exact && guard.Compare(masked.Exact, text, Leads(session)).IsFaithful
            ? new Rewording(statement.Id, masked.Exact, text, knowledge.Sentences.Render(Statement.Of("phrasing.mark"), session.Role))
            : null;
    }

    private async Task<string?> Ask(LanguageModel model, string id, Masked masked, SessionView session, CancellationToken reader, CancellationToken cancel)
    {
        var started = Stopwatch.GetTimestamp();
        var draft = await model.Reword(masked.Text, session.Role, Guard.Longest(masked.Text), cancel);
        reader.ThrowIfCancellationRequested(); // a reader who left is no failure of the model
        var verdict = draft.Failure ?? Judge(masked, draft.Text, Leads(session)).Reason;
        log.LogInformation(
            "Reworded {Sentence} by {Model} at {Endpoint}: {Tokens} tokens, {Milliseconds} ms, {Verdict}",
            id, settings!.Model, settings.Endpoint, draft.Tokens, (int)Stopwatch.GetElapsedTime(started).TotalMilliseconds, verdict ?? "faithful");
        if (draft.Failure is { } failure)
        {
            tally.Failed(failure);
            if (_breaker.Failed())
            {
                log.LogWarning("The language model at {Endpoint} does not answer ({Failure}); it is left alone for a minute", settings.Endpoint, failure);
            }

            return null;
        }

        _breaker.Worked();
        if (verdict is null)
        {
            tally.Reworded();
        }
        else
        {
            tally.Refused(verdict);
        }

        if (_known.Count >= MostRemembered)
        {
            _known.Clear();
        }

        return _known[(session.Role, masked.Text)] = verdict is null ? draft.Text : null;
    }

    private Verdict Judge(Masked masked, string? text, IReadOnlySet<string> leads) => string.IsNullOrEmpty(text) ? Verdict.Refused("empty")
        : masked.Restore(text) is { } restored ? guard.Compare(masked.Exact, restored, leads)
        : Verdict.Refused("tokens");

    private static HashSet<string> Leads(SessionView session) =>
        session.Facts.OfType<Fact.Lead>().Select(lead => lead.Tag).ToHashSet(StringComparer.Ordinal);

    private Rewordings Answer(string state, SessionView session) => new(
        state,
        session.Sequence,
        state == "resting" ? knowledge.Sentences.Render(Statement.Of("phrasing.resting"), session.Role) : null,
        []);
}
