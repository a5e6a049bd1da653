using System.Collections.Immutable;
using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>A session as its events make it: one fold.</summary>
internal sealed record SessionState
{
    public required string Id { get; init; }

    public required SessionEvent.Opened Opened { get; init; }

    public required DateTimeOffset CreatedAt { get; init; }

    public required DateTimeOffset ChangedAt { get; init; }

    /// <summary>The place of the last event.</summary>
    public required int Sequence { get; init; }

    /// <summary>All facts that were not retracted.</summary>
    public ImmutableList<Fact> Facts { get; init; } = [];

    /// <summary>How many facts were ever taken; gives the next fact its id.</summary>
    public int Taken { get; init; }

    public Review? Review { get; init; }

    public bool Closed { get; init; }

    public string Status { get; init; } = "open";

    public string? Asked { get; init; }

    public ImmutableHashSet<string> CautionsShown { get; init; } = ImmutableHashSet.Create<string>(StringComparer.Ordinal);

    public SessionEvent.Concluded? Concluded { get; init; }

    /// <summary>The conversation so far.</summary>
    public ImmutableList<Turn> Turns { get; init; } = [];

    /// <summary>Requests by the client's key: the turn that each became.</summary>
    public ImmutableDictionary<string, int> Keys { get; init; } = ImmutableDictionary.Create<string, int>(StringComparer.Ordinal);

    /// <summary>The print of the last request's body.</summary>
    public string? Print { get; init; }

    /// <summary>The facts that count, folded.</summary>
    public CaseFile Case => CaseFile.From(new CaseOpening(Opened.Role, Opened.Region, Opened.Practice is not null), Facts);

    /// <exception cref="StoreException">The events do not begin with an opening, or leave one out.</exception>
    public static SessionState From(IReadOnlyList<StoredEvent> events) =>
        events.Skip(1).Aggregate(Of(events[0]), (state, stored) => state.With(stored));

    public SessionState With(StoredEvent stored)
    {
        if (stored.Sequence != Sequence + 1)
        {
            throw new StoreException($"The session {Id} lacks an event before number {stored.Sequence}.");
        }

        var state = Requested(this with { Sequence = stored.Sequence, ChangedAt = stored.At }, stored);
        return stored.Event switch
        {
            SessionEvent.FactsTaken taken => state with
            {
                Facts = state.Facts.AddRange(taken.Facts),
                Taken = state.Taken + taken.Facts.Count,
                Turns = state.Turns.Add(new Turn
                {
                    Sequence = stored.Sequence,
                    At = stored.At,
                    Words = taken.Words,
                    Facts = taken.Facts,
                    NotUnderstood = [.. (taken.NotUnderstood ?? []).Select(text => new Unheard(text))],
                }),
            },
            SessionEvent.Retracted retracted => state with
            {
                Facts = state.Facts.RemoveAll(fact => fact.FactId == retracted.FactId),
                Turns = state.Turns.Add(new Turn { Sequence = stored.Sequence, At = stored.At, Retracted = retracted.FactId }),
            },
            SessionEvent.Said said => state.InLastTurn(turn => turn with { Say = [.. turn.Say, new(said.Id, said.Text, said.Rules)] }),
            SessionEvent.CautionShown caution => state.InLastTurn(turn => turn with { Say = [.. turn.Say, new(caution.Id, caution.Text, caution.Rules)] })
                with { CautionsShown = state.CautionsShown.Add(caution.Id) },
            SessionEvent.Asked asked => state.InLastTurn(turn => turn with { Asked = asked.Id is null ? null : new(asked.Id, asked.Text ?? string.Empty, []) })
                with { Asked = asked.Id },
            SessionEvent.Concluded now => state with { Concluded = now, Status = now.Status },
            SessionEvent.Reviewed reviewed => state with
            {
                Review = new(reviewed.Verdict, reviewed.Note, reviewed.Who, stored.At, reviewed.Upon),
            },
            SessionEvent.Closed => state with { Closed = true, Status = "closed", Asked = null },
            _ => throw new StoreException($"The session {Id} cannot hold the event '{EventFormat.TypeOf(stored.Event)}' there."),
        };
    }

    private static SessionState Of(StoredEvent first) => first is { Sequence: 1, Event: SessionEvent.Opened opened }
        ? Requested(
            new SessionState { Id = first.Session, Opened = opened, CreatedAt = first.At, ChangedAt = first.At, Sequence = 1 }, first)
        : throw new StoreException($"The session {first.Session} does not begin with its opening.");

    private static SessionState Requested(SessionState state, StoredEvent stored)
    {
        var keyed = stored.Key is null ? state : state with { Keys = state.Keys.SetItem(stored.Key, stored.Sequence) };
        return stored.Key is null && stored.Print is null ? keyed : keyed with { Print = stored.Print };
    }

    private SessionState InLastTurn(Func<Turn, Turn> change) => Turns.IsEmpty
        ? this with { Turns = [change(new Turn { Sequence = Sequence, At = ChangedAt })] }
        : this with { Turns = Turns.SetItem(Turns.Count - 1, change(Turns[^1])) };
}
