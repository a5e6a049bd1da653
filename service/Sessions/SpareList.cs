using System.Text;

namespace WireCoach.Service.Sessions;

/// <summary>The list of a database that is gone for now, kept up to date from the journal, so that reads go on. Used by one thread at a time.</summary>
internal sealed class SpareList(SummaryIndex index)
{
    private readonly HashSet<string> _stale = new(StringComparer.Ordinal);

    /// <summary>Notes lines that the list does not show yet.</summary>
    public void Note(IEnumerable<JournalPiece> pieces) => _stale.UnionWith(pieces.SelectMany(piece => piece.Lines).Select(line => EventFormat.SessionOf(line.Span)));

    /// <summary>The list as the journal stands.</summary>
    public SummaryIndex UpTo(string folder, JournalPosition end)
    {
        foreach (var session in _stale)
        {
            var events = Events(folder, end, session, CancellationToken.None);
            if (events.Count == 0)
            {
                index.Remove(session);
            }
            else
            {
                index.Put(events.Skip(1).Aggregate(SummaryFold.Of(events[0]), (fold, stored) => fold.With(stored)));
            }
        }

        _stale.Clear();
        return index;
    }

    /// <summary>A session's events, looked for in the whole journal; none for a deleted one.</summary>
    /// <exception cref="StoreException">They are not as they were written, or cannot be read.</exception>
    public static IReadOnlyList<StoredEvent> Events(string folder, JournalPosition end, string session, CancellationToken cancel)
    {
        var id = Encoding.ASCII.GetBytes(session);
        var events = new List<StoredEvent>();
        try
        {
            foreach (var line in Journal.Read(folder, JournalPosition.Start, end).TakeWhile(_ => !cancel.IsCancellationRequested).SelectMany(piece => piece.Lines)
                .Where(line => line.Span.IndexOf(id) >= 0 && EventFormat.SessionOf(line.Span) == session))
            {
                events.Add(EventFormat.IsWhole(line.Span) && EventFormat.Read(line) is var stored && stored.Sequence == events.Count + 1
                    ? stored
                    : throw new StoreException($"The journal does not hold the session {session} as it was written."));
            }
        }
        catch (IOException wrong)
        {
            throw new StoreException($"The journal cannot be read: {wrong.Message}", wrong);
        }

        cancel.ThrowIfCancellationRequested();

        return events is [.., { Event: SessionEvent.Deleted }] ? [] : events;
    }
}
