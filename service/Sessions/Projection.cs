using System.Globalization;
using System.Text;
using LiteDB;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>The database that answers every read. It can be deleted at any time: the journal rebuilds it. Used by one thread at a time.</summary>
internal sealed class Projection : IDisposable
{
    /// <summary>The version of the documents' shape; a database of another one is made anew from the journal.</summary>
    public const int Schema = 3;

    private const int Batch = 2000;

    private readonly LiteDatabase _database;
    private readonly ILiteCollection<BsonDocument> _sessions;
    private readonly ILiteCollection<BsonDocument> _events;
    private readonly ILiteCollection<BsonDocument> _meta;
    private readonly ILiteCollection<BsonDocument> _deleted;
    private string? _listedTo = string.Empty;

    public Projection(string path)
    {
        _database = new LiteDatabase(new ConnectionString
        {
            Filename = path,
            Connection = ConnectionType.Direct,
            Collation = new Collation(127, CompareOptions.Ordinal),
        });
        try
        {
            _database.UtcDate = true;
            _sessions = _database.GetCollection("sessions");
            _events = _database.GetCollection("events");
            _meta = _database.GetCollection("meta");
            _deleted = _database.GetCollection("deleted");
            (Mark, Count) = ReadMark();
        }
        catch
        {
            _database.Dispose();
            throw;
        }
    }

    /// <summary>All sessions as the list shows them; not whole before <see cref="ListFurther"/> says so.</summary>
    public SummaryIndex Index { get; } = new();

    /// <summary>Whether the list is whole.</summary>
    public bool IsListed => _listedTo is null;

    /// <summary>How far in the journal it has come.</summary>
    public JournalPosition Mark { get; private set; }

    /// <summary>How many lines that is.</summary>
    public long Count { get; private set; }

    /// <summary>How many events it holds; slow for many.</summary>
    public long CountEvents() => _events.LongCount();

    /// <summary>Takes over lines in their order; the mark moves with them in one transaction.</summary>
    public void Apply(IEnumerable<JournalPiece> pieces)
    {
        foreach (var chunk in pieces.Chunk(Batch))
        {
            var folds = new Dictionary<string, SummaryFold>(StringComparer.Ordinal);
            var documents = chunk.SelectMany(piece => piece.Lines).Select(line => Fold(folds, line)).ToList();
            var count = Count + documents.Count;
            _database.BeginTrans();
            _events.Upsert(documents);
            _sessions.Upsert(folds.Values.Select(SummaryDocument.Write));
            TakeOut(chunk.SelectMany(piece => piece.Lines));
            WriteMark(chunk[^1].End, count);
            if (!_database.Commit())
            {
                throw new StoreException("The database did not commit.");
            }

            (Mark, Count) = (chunk[^1].End, count);
            Show(folds.Values, chunk.SelectMany(piece => piece.Lines));
        }
    }

    /// <summary>Fills an empty database.</summary>
    public void Fill(IEnumerable<JournalPiece> pieces)
    {
        var folds = new Dictionary<string, SummaryFold>(StringComparer.Ordinal);
        var (mark, count, deletions) = (JournalPosition.Start, 0L, new List<ReadOnlyMemory<byte>>());
        _events.InsertBulk(pieces.SelectMany(piece =>
        {
            (mark, count) = (piece.End, count + piece.Lines.Count);
            deletions.AddRange(piece.Lines.Where(line => EventFormat.IsDeletion(line.Span)));
            return piece.Lines.Select(line => Fold(folds, line));
        }));
        _sessions.InsertBulk(folds.Values.Select(SummaryDocument.Write));
        TakeOut(deletions);
        WriteMark(mark, count);
        _database.Checkpoint();
        (Mark, Count) = (mark, count);
        Show(folds.Values, []);
        _listedTo = null;
    }

    /// <summary>The lines of a session in their order.</summary>
    /// <exception cref="StoreException">They are not what was written.</exception>
    public IReadOnlyList<StoredEvent> Events(string session)
    {
        var summary = _sessions.FindById(session);
        if (summary is null)
        {
            return [];
        }

        var events = _events.Find(Query.Between("_id", $"{session}/", $"{session}0"))
            .Select(document => Encoding.UTF8.GetBytes(document["line"].AsString))
            .Select(line => EventFormat.IsWhole(line) ? EventFormat.Read(line) : throw Damaged(session))
            .ToList();
        return events.Count == summary["events"].AsInt32 && events.Select((stored, at) => stored.Sequence == at + 1).All(inPlace => inPlace)
            ? events
            : throw Damaged(session);
    }

    /// <summary>Takes further sessions into the list, which is whole when this is true.</summary>
    public bool ListFurther()
    {
        if (_listedTo is null)
        {
            return true;
        }

        var query = Query.All("_id", Query.Ascending);
        query.Limit = Batch;
        query.Where.Add(Query.GT("_id", _listedTo));
        var found = _sessions.Find(query).ToList();
        found.ForEach(document => Index.Put(SummaryDocument.Read(document)));
        _listedTo = found.Count == Batch ? found[^1]["_id"].AsString : null;
        return _listedTo is null;
    }

    /// <summary>What was deleted, the latest first.</summary>
    public IReadOnlyList<Deletion> Deletions() =>
    [
        .. _deleted.FindAll().ToList()
            .Select(document => new Deletion(
                document["_id"].AsString,
                DateTimeOffset.FromUnixTimeMilliseconds(document["at"].AsInt64),
                document["who"].IsNull ? null : document["who"].AsString,
                document["why"].AsString))
            .OrderByDescending(deletion => deletion.At),
    ];

    /// <summary>Puts everything into the data file, so that the next opening has nothing to recover.</summary>
    public void Dispose() => _database.Dispose();

    private static StoreException Damaged(string session) => new($"The database does not hold the session {session} as it was written.");

    /// <summary>Takes over into the list what the database has committed.</summary>
    private void Show(IEnumerable<SummaryFold> folds, IEnumerable<ReadOnlyMemory<byte>> lines)
    {
        foreach (var fold in folds)
        {
            Index.Put(fold);
        }

        foreach (var line in lines.Where(line => EventFormat.IsDeletion(line.Span)))
        {
            Index.Remove(EventFormat.SessionOf(line.Span));
        }
    }

    /// <summary>Sessions that these lines delete: what is left is the line that says so.</summary>
    private void TakeOut(IEnumerable<ReadOnlyMemory<byte>> lines)
    {
        foreach (var stored in lines.Where(line => EventFormat.IsDeletion(line.Span)).Select(EventFormat.Read))
        {
            var deleted = (SessionEvent.Deleted)stored.Event;
            _sessions.Delete(stored.Session);
            _events.DeleteMany(Query.And(Query.Between("_id", $"{stored.Session}/", $"{stored.Session}0"), Query.Not("_id", Place(stored))));
            _deleted.Upsert(new BsonDocument { ["_id"] = stored.Session, ["at"] = stored.At.ToUnixTimeMilliseconds(), ["who"] = deleted.Who, ["why"] = deleted.Why });
        }
    }

    private static string Place(StoredEvent stored) => string.Create(CultureInfo.InvariantCulture, $"{stored.Session}/{stored.Sequence:D7}");

    private BsonDocument Fold(Dictionary<string, SummaryFold> folds, ReadOnlyMemory<byte> line)
    {
        var stored = EventFormat.Read(line);
        if (stored.Event is SessionEvent.Deleted)
        {
            folds.Remove(stored.Session);
        }
        else if (stored.Sequence == 1)
        {
            folds[stored.Session] = SummaryFold.Of(stored);
        }
        else
        {
            if (!folds.TryGetValue(stored.Session, out var known))
            {
                known = SummaryDocument.Read(_sessions.FindById(stored.Session)
                    ?? throw new StoreException($"The database does not know the session {stored.Session}."));
            }

            folds[stored.Session] = known.With(stored);
        }

        return new BsonDocument
        {
            ["_id"] = Place(stored),
            ["line"] = Encoding.UTF8.GetString(line.Span),
        };
    }

    private (JournalPosition Mark, long Count) ReadMark()
    {
        if (_meta.FindById("mark") is not { } mark)
        {
            return (JournalPosition.Start, 0);
        }

        return mark["schema"] == Schema
            ? (new(mark["segment"].AsString, mark["offset"].AsInt64, mark["check"].AsString), mark["count"].AsInt64)
            : throw new StoreException("The database is of another version.");
    }

    private void WriteMark(JournalPosition mark, long count) => _meta.Upsert(new BsonDocument
    {
        ["_id"] = "mark",
        ["schema"] = Schema,
        ["segment"] = mark.Segment,
        ["offset"] = mark.Offset,
        ["check"] = mark.Check,
        ["count"] = count,
    });
}
