using LiteDB;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Keeps the projection in step with the journal, and makes it anew when it is stale, broken or ahead.</summary>
/// <remarks>Writes queue up behind the acknowledgement; a read first takes over what is queued, so that it sees everything acknowledged.</remarks>
internal sealed partial class ProjectionKeeper : IDisposable
{
    private const long Smallest = 8192;
    private const int Portion = 100;
    private const int Patience = 5000;
    private const long CountedUpTo = 200_000;
    private const string State = "projection-state";

    private readonly string _folder;
    private readonly ILogger _log;
    private readonly Lock _gate = new();
    private readonly Lock _queueGate = new();
    private List<JournalPiece> _queue = [];
    private JournalPosition _end;
    private Projection? _projection;
    private SpareList? _spare;
    private long _again;
    private volatile string? _trouble;
    private volatile bool _closed;

    private ProjectionKeeper(string folder, ILogger log) => (_folder, _log) = (folder, log);

    /// <summary>Whether lines wait to be taken over.</summary>
    public int Waiting
    {
        get
        {
            lock (_queueGate)
            {
                return _queue.Count;
            }
        }
    }

    /// <summary>What keeps the database from being there, or <see langword="null"/>.</summary>
    public string? Trouble => _trouble;

    private string File => Path.Combine(_folder, "sessions.db");

    /// <summary>Opens the database beside a journal of which it knows some part already.</summary>
    /// <param name="folder">The data folder.</param>
    /// <param name="journal">The journal, checked.</param>
    /// <param name="log">Says what had to be done.</param>
    public static ProjectionKeeper Open(string folder, Journal journal, ILogger log)
    {
        var keeper = new ProjectionKeeper(folder, log) { _end = journal.End };
        var stopped = keeper.WasStoppedWell();
        keeper.WriteState("open");
        var why = stopped ? keeper.TryOpen(journal.Count) : "the machine stopped while it was in use";
        if (why is not null)
        {
            keeper.Rebuild(why);
        }
        else
        {
            keeper.CatchUp();
        }

        return keeper;
    }

    /// <summary>Tells of lines that are on disk now.</summary>
    public void Enqueue(JournalPiece piece)
    {
        lock (_queueGate)
        {
            _queue.Add(piece);
        }
    }

    /// <summary>Takes over what is queued, in pieces, so that reads come in between.</summary>
    public void Drain()
    {
        for (var left = Waiting; left > 0; left = Waiting)
        {
            Ask<object?>(_ => null, Portion);
            if (left > Portion)
            {
                Thread.Sleep(1);
            }
        }
    }

    /// <summary>A read. A database that fails is made anew from the journal, once.</summary>
    public T Ask<T>(Func<Projection, T> read) => Ask(read, int.MaxValue);

    private T Ask<T>(Func<Projection, T> read, int most)
    {
        lock (_gate)
        {
            if (_closed)
            {
                throw new StoreException("The service is stopping.");
            }

            var pieces = TakeQueue(_projection is null ? int.MaxValue : most);
            try
            {
                if (_projection is not null)
                {
                    _projection.Apply(pieces);
                    return read(_projection);
                }
            }
            catch (Exception wrong) when (IsFailure(wrong))
            {
                LogFailed(_log, wrong.GetType().Name, wrong.Message);
                pieces.AddRange(TakeQueue());
                Drop();
            }

            _spare?.Note(pieces);
            return AskAnew(read);
        }
    }

    /// <summary>A read of a database that is made anew; where that fails it is left alone for a while.</summary>
    private T AskAnew<T>(Func<Projection, T> read)
    {
        if (_trouble is null || Environment.TickCount64 >= _again)
        {
            try
            {
                Rebuild("it failed");
                return read(_projection!);
            }
            catch (Exception wrong) when (IsFailure(wrong))
            {
                LogFailed(_log, wrong.GetType().Name, wrong.Message);
                Drop();
                DeleteFiles(); // the journal needs the room more
                (_trouble, _again) = ($"The session list cannot be made: {wrong.Message}", Environment.TickCount64 + Patience);
            }
        }

        throw new StoreException(_trouble);
    }

    /// <summary>A session's events, from the journal itself while there is no database.</summary>
    /// <exception cref="StoreException">They are not as they were written, or cannot be read.</exception>
    public IReadOnlyList<StoredEvent> Events(string session, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        try
        {
            return Ask(projection => projection.Events(session));
        }
        catch (StoreException) when (_trouble is not null && !_closed)
        {
            return SpareList.Events(_folder, _end, session, cancel);
        }
    }

    /// <summary>The list of all sessions, whole: who asks while it is still being read in reads on. While there is no database it is the one that was there, kept up to date.</summary>
    public SummaryIndex Listed(CancellationToken cancel)
    {
        try
        {
            do
            {
                cancel.ThrowIfCancellationRequested(); // in pieces, so that others come in between
            }
            while (!Ask(projection => projection.ListFurther()));

            return Ask(projection => projection.Index);
        }
        catch (StoreException) when (_spare is not null && !_closed)
        {
            lock (_gate)
            {
                return _spare.UpTo(_folder, _end);
            }
        }
    }

    /// <summary>What was deleted, the latest first.</summary>
    public IReadOnlyList<Deletion> Deletions(CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        return Ask(projection => projection.Deletions());
    }

    /// <summary>Takes what was deleted out of the journal, and makes the database anew: its file keeps what is deleted in it.</summary>
    public void Erase(Journal journal)
    {
        lock (_gate)
        {
            TakeQueue();
            journal.Erase();
            _end = journal.End;
            Rebuild("sessions were deleted");
        }
    }

    public void Dispose()
    {
        lock (_gate)
        {
            try
            {
                if (_projection is not null)
                {
                    _projection.Apply(TakeQueue());
                    _projection.Dispose();
                    WriteState("clean");
                }
            }
            catch (Exception wrong) when (IsFailure(wrong))
            {
                LogFailed(_log, wrong.GetType().Name, wrong.Message);
            }

            (_projection, _closed) = (null, true);
        }
    }

    /// <summary>What LiteDB throws when its file or its memory is not what it should be, besides its own exception.</summary>
    private static bool IsFailure(Exception wrong) => wrong is not OutOfMemoryException;

    private static string? Boot()
    {
        const string Path = "/proc/sys/kernel/random/boot_id";
        return System.IO.File.Exists(Path) ? System.IO.File.ReadAllText(Path).Trim() : null;
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The session list failed ({Kind}: {Message})")]
    private static partial void LogFailed(ILogger log, string kind, string message);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The session list was made anew from the journal because {Why}: {Events} events in {Milliseconds} ms")]
    private static partial void LogRebuilt(ILogger log, string why, long events, long milliseconds);

    private string? TryOpen(long count)
    {
        if (!System.IO.File.Exists(File))
        {
            return count == 0 ? NewFile() : "there was none";
        }

        if (new FileInfo(File).Length < Smallest)
        {
            return "its file was cut short";
        }

        try
        {
            _projection = new Projection(File);
            return _projection.Count > count || !Journal.HasLineAt(_folder, _projection.Mark) ? "it does not fit the journal"
                : _projection.Count <= CountedUpTo && _projection.CountEvents() != _projection.Count ? "events were missing in it"
                : null;
        }
        catch (Exception wrong) when (IsFailure(wrong))
        {
            return "it could not be opened";
        }
    }

    private string? NewFile()
    {
        _projection = new Projection(File);
        return null;
    }

    private void CatchUp()
    {
        try
        {
            _projection!.Apply(Journal.Read(_folder, _projection.Mark, _end));
        }
        catch (Exception wrong) when (IsFailure(wrong))
        {
            Rebuild("it could not be brought up to date");
        }
    }

    /// <summary>The first of the queue, or all of it; the end that is known moves with them.</summary>
    private List<JournalPiece> TakeQueue(int most = int.MaxValue)
    {
        lock (_queueGate)
        {
            var taken = _queue.Count <= most ? _queue : _queue[..most];
            if (taken.Count > 0)
            {
                (_queue, _end) = (_queue[taken.Count..], taken[^1].End);
            }

            return taken;
        }
    }

    private void Rebuild(string why)
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();
        Drop();
        DeleteFiles();
        _projection = new Projection(File);
        _projection.Fill(Journal.Read(_folder, JournalPosition.Start, _end));
        (_spare, _trouble) = (null, null);
        LogRebuilt(_log, why, _projection.Count, watch.ElapsedMilliseconds);
    }

    private void DeleteFiles()
    {
        foreach (var file in Directory.EnumerateFiles(_folder, "sessions*.db"))
        {
            System.IO.File.Delete(file);
        }
    }

    /// <summary>Lets the database go; its list stays at hand if it was whole.</summary>
    private void Drop()
    {
        _spare = _projection is { IsListed: true } ? new SpareList(_projection.Index) : _spare;
        try
        {
            _projection?.Dispose();
        }
        catch (Exception wrong) when (IsFailure(wrong))
        {
            LogFailed(_log, wrong.GetType().Name, wrong.Message);
        }

        _projection = null;
    }

    /// <summary>Whether it was closed in order, or at least by a process that ended on a machine that went on.</summary>
    private bool WasStoppedWell()
    {
        var path = Path.Combine(_folder, State);
        return !System.IO.File.Exists(path)
            || System.IO.File.ReadAllText(path).Split(' ') is not ["open", var boot]
            || boot == Boot();
    }

    /// <summary>On disk before the database is touched: after a power cut a stale "clean" would trust half a database.</summary>
    private void WriteState(string state)
    {
        using (var file = new FileStream(Path.Combine(_folder, State), FileMode.Create, FileAccess.Write))
        {
            file.Write(System.Text.Encoding.ASCII.GetBytes($"{state} {Boot()}"));
            file.Flush(flushToDisk: true);
        }

        DirectorySync.Flush(_folder);
    }
}
