using System.Buffers;
using System.Threading.Channels;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Sessions on this machine: a synced journal is the truth, LiteDB answers the reads, one writer owns both.</summary>
internal sealed partial class LocalStore : ISessionStore, IAsyncDisposable
{
    private const int Together = 256;
    private const int Backlog = 5000;

    private static readonly TimeSpan Gathering = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan Looking = TimeSpan.FromSeconds(2);

    private readonly FolderLock _lock;
    private readonly Journal _journal;
    private readonly ProjectionKeeper _projection;
    private readonly ILogger<LocalStore> _log;
    private readonly Channel<Pending> _pending = Channel.CreateBounded<Pending>(
        new BoundedChannelOptions(1024) { SingleReader = true, FullMode = BoundedChannelFullMode.Wait });
    private readonly AutoResetEvent _written = new(initialState: false);
    private readonly CancellationTokenSource _stopping = new();
    private readonly Task _writer;
    private readonly Task _projector;
    private volatile string? _trouble;

    private LocalStore(FolderLock folderLock, Journal journal, ProjectionKeeper projection, ILogger<LocalStore> log)
    {
        (_lock, _journal, _projection, _log) = (folderLock, journal, projection, log);
        _writer = OnItsOwn(Write);
        _projector = OnItsOwn(Project);
    }

    public string? Trouble => _trouble ?? _projection.Trouble;

    /// <summary>Opens a data folder, checks its journal and brings its list up to date.</summary>
    /// <exception cref="StoreException">The folder is taken, cannot be written, or its journal is damaged.</exception>
    public static LocalStore Open(string folder, TimeProvider clock, ILogger<LocalStore> log)
    {
        var folderLock = FolderLock.Take(folder);
        try
        {
            var journal = Journal.Open(folder, clock);
            if (journal.TornTail is { } torn)
            {
                LogTorn(log, torn);
            }

            return new LocalStore(folderLock, journal, ProjectionKeeper.Open(folder, journal, log), log);
        }
        catch (Exception wrong)
        {
            folderLock.Dispose();
            if (wrong is UnauthorizedAccessException or IOException)
            {
                throw new StoreException($"The data folder {folder} cannot be used: {wrong.Message}", wrong);
            }

            throw;
        }
    }

    public Task Append(IReadOnlyList<StoredEvent> events) => Hand(new Pending(events));

    public Task Erase() => Hand(new Pending([]) { Erase = true });

    private async Task Hand(Pending pending)
    {
        try
        {
            await _pending.Writer.WriteAsync(pending);
        }
        catch (ChannelClosedException wrong)
        {
            throw new StoreException("The service is stopping.", wrong);
        }

        await pending.Done.Task;
    }

    public Task<IReadOnlyList<StoredEvent>> Events(string session, CancellationToken cancel = default) => Task.FromResult(_projection.Events(session, cancel));

    public Task<SessionPage> List(SessionFilter filter, CancellationToken cancel = default) => Task.FromResult(_projection.Listed(cancel).List(filter));

    public Task<IReadOnlyList<SessionSummary>> Summaries(DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancel = default) =>
        Task.FromResult(_projection.Listed(cancel).Between(from, to));

    public Task<IReadOnlyList<Deletion>> Deletions(CancellationToken cancel = default) => Task.FromResult(_projection.Deletions(cancel));

    /// <summary>Finishes what was taken, closes the files and frees the folder.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_stopping.IsCancellationRequested)
        {
            return;
        }

        _pending.Writer.TryComplete();
        await _writer;
        await _stopping.CancelAsync();
        await _projector;
        _projection.Dispose();
        _journal.Dispose();
        _lock.Dispose();
        _written.Dispose();
        _stopping.Dispose();
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The journal ended in a torn line, which is kept in {File}")]
    private static partial void LogTorn(ILogger log, string file);

    [LoggerMessage(Level = LogLevel.Error, Message = "The journal could not be written ({Kind}: {Message})")]
    private static partial void LogUnwritten(ILogger log, string kind, string message);

    [LoggerMessage(Level = LogLevel.Error, Message = "The session list could not be brought up to date ({Kind}: {Message})")]
    private static partial void LogUnprojected(ILogger log, string kind, string message);

    /// <summary>A thread of its own: it waits for the disk, and the pool's threads are for requests.</summary>
    private static Task OnItsOwn(Action work) => Task.Factory.StartNew(work, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);

    private void Write()
    {
        var lines = new ArrayBufferWriter<byte>(1 << 16);
        var batch = new List<Pending>(Together);
        while (_pending.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
        {
            while (batch.Count < Together && _pending.Reader.TryRead(out var pending))
            {
                batch.Add(pending);
            }

            Commit(batch, lines);
            lines.ResetWrittenCount();
            batch.Clear();
        }
    }

    private void Commit(List<Pending> batch, ArrayBufferWriter<byte> lines)
    {
        try
        {
            var written = new List<ReadOnlyMemory<byte>>(batch.Count * 4);
            foreach (var stored in batch.SelectMany(pending => pending.Events))
            {
                var start = lines.WrittenCount;
                EventFormat.Write(lines, stored);
                written.Add(lines.WrittenSpan[start..^1].ToArray());
            }

            if (written.Count > 0)
            {
                _journal.Append(lines.WrittenSpan, written.Count);
                _projection.Enqueue(new JournalPiece(written, _journal.End));
            }

            if (batch.Any(pending => pending.Erase))
            {
                _projection.Erase(_journal);
            }

            if (written.Count == 0 && _trouble is not null)
            {
                _journal.Try();
            }

            _trouble = null;
        }
        catch (Exception wrong) when (wrong is not OutOfMemoryException)
        {
            LogUnwritten(_log, wrong.GetType().Name, wrong.Message);
            _trouble = $"The journal cannot be written: {wrong.Message}";
            batch.ForEach(pending => pending.Done.SetException(new StoreException(_trouble, wrong)));
            return;
        }

        batch.ForEach(pending => pending.Done.SetResult());
        _written.Set();
        if (_projection.Waiting > Backlog)
        {
            DrainOrLog();
        }
    }

    /// <summary>Brings the database up to date behind the answers, a good many turns at a time: that costs far less than each alone.</summary>
    private void Project()
    {
        ListOrLog();
        while (!_stopping.IsCancellationRequested)
        {
            var woken = WaitHandle.WaitAny([_written, _stopping.Token.WaitHandle], Looking);
            if (woken == 0 && !_stopping.Token.WaitHandle.WaitOne(Gathering))
            {
                DrainOrLog();
            }
            else if (woken == WaitHandle.WaitTimeout)
            {
                LookAgain();
            }
        }
    }

    /// <summary>Whether what was wrong still is; nobody may come to find out, because a service that is not ready is not sent anybody.</summary>
    private void LookAgain()
    {
        if (_trouble is not null)
        {
            _pending.Writer.TryWrite(new Pending([]));
        }

        if (_projection.Trouble is not null)
        {
            ListOrLog();
        }
    }

    private void DrainOrLog() => DoOrLog(_projection.Drain);

    /// <summary>Reads the list in, so that the first who asks for it need not wait.</summary>
    private void ListOrLog() => DoOrLog(() => _ = _projection.Listed(_stopping.Token));

    private void DoOrLog(Action work)
    {
        try
        {
            work();
        }
        catch (StoreException wrong)
        {
            LogUnprojected(_log, wrong.GetType().Name, wrong.Message);
        }
        catch (OperationCanceledException) when (_stopping.IsCancellationRequested)
        {
            // stopped while the list was being read in: whoever opens the folder next reads it
        }
    }

    /// <summary>Events that wait for the disk.</summary>
    private sealed record Pending(IReadOnlyList<StoredEvent> Events)
    {
        /// <summary>Whether what was deleted is to leave the disk.</summary>
        public bool Erase { get; init; }

        public TaskCompletionSource Done { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }
}
