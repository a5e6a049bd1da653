using System.Text;
using Npgsql;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Sessions in PostgreSQL, for a chain of shops with one service: a turn is one transaction that is on disk before the answer.</summary>
/// <remarks>
/// One service writes: it holds an advisory lock, and each transaction looks whether the database still names it as the owner,
/// so that a service that lost its lock with its connection cannot write beside its successor.
/// </remarks>
internal sealed partial class PostgresStore : ISessionStore, IAsyncDisposable
{
    private const long LockNumber = 0x57697265436F6163;
    private const int CommandSeconds = 15;

    private readonly NpgsqlDataSource _source;
    private readonly NpgsqlConnection _lock;
    private readonly string _owner = $"{Guid.NewGuid():N}";

    private PostgresStore(NpgsqlDataSource source, NpgsqlConnection locked) => (_source, _lock) = (source, locked);

    public string? Trouble
    {
        get
        {
            try
            {
                using var command = _source.CreateCommand("select value from meta where name = 'owner'");
                command.CommandTimeout = 2;
                return (string?)command.ExecuteScalar() == _owner ? null : "Another WireCoach took over the sessions in PostgreSQL.";
            }
            catch (NpgsqlException wrong)
            {
                return Unreachable(wrong);
            }
        }
    }

    /// <summary>Connects, makes the tables that are missing, and takes the sessions over.</summary>
    /// <exception cref="StoreException">It cannot be reached or used, or another service holds it.</exception>
    public static PostgresStore Open(string connectionString, ILogger<PostgresStore> log)
    {
        NpgsqlDataSource source;
        try
        {
            var settings = new NpgsqlConnectionStringBuilder(connectionString) { ApplicationName = "WireCoach", CommandTimeout = CommandSeconds };
            settings.Options = $"{settings.Options} -c synchronous_commit=on".Trim();
            source = NpgsqlDataSource.Create(settings);
        }
        catch (ArgumentException wrong)
        {
            throw new StoreException("Data:Postgres is no connection string of PostgreSQL; write for example Host=db;Database=wirecoach;Username=wirecoach.", wrong);
        }

        try
        {
            return Open(source, log);
        }
        catch (Exception wrong)
        {
            source.Dispose();
            throw wrong is NpgsqlException ? new StoreException(Unreachable(wrong), wrong) : wrong;
        }
    }

    public async Task Append(IReadOnlyList<StoredEvent> events)
    {
        try
        {
            await using var connection = await _source.OpenConnectionAsync();
            await using var transaction = await connection.BeginTransactionAsync();
            var folds = await Known(connection, events);
            await using var batch = new NpgsqlBatch(connection, transaction);
            foreach (var stored in events)
            {
                Take(batch, folds, stored);
            }

            foreach (var fold in folds.Values)
            {
                batch.BatchCommands.Add(Upsert(fold));
            }

            await batch.ExecuteNonQueryAsync();
            await transaction.CommitAsync();
        }
        catch (NpgsqlException wrong)
        {
            throw new StoreException(Unreachable(wrong), wrong);
        }
    }

    public Task<IReadOnlyList<StoredEvent>> Events(string session, CancellationToken cancel = default) => Read<IReadOnlyList<StoredEvent>>(
        [Command("select s.events, e.line from sessions s left join events e on e.session = s.id where s.id = $1 order by e.seq", session)],
        async reader =>
        {
            var (expected, events) = (0, new List<StoredEvent>());
            while (await reader.ReadAsync(cancel))
            {
                expected = reader.GetInt32(0);
                var line = Encoding.UTF8.GetBytes(await reader.IsDBNullAsync(1, cancel) ? string.Empty : reader.GetString(1));
                events.Add(EventFormat.IsWhole(line) ? EventFormat.Read(line) : throw Damaged(session));
            }

            return events.Count == expected && events.Select((stored, at) => stored.Sequence == at + 1).All(inPlace => inPlace) ? events : throw Damaged(session);
        },
        cancel);

    public Task<SessionPage> List(SessionFilter filter, CancellationToken cancel = default)
    {
        var size = Math.Clamp(filter.Size ?? 50, 1, 200);
        return Read(
            [
                PostgresQuery.Of(filter).Select("select count(*) from sessions"),
                PostgresQuery.Of(filter).And("id < {0}", filter.After).Select("select shown from sessions", $"order by id desc limit {size + 1}"),
            ],
            async reader =>
            {
                await reader.ReadAsync(cancel);
                var total = (int)reader.GetInt64(0);
                await reader.NextResultAsync(cancel);
                var found = await Shown(reader, cancel);
                return new SessionPage([.. found.Take(size)], total, found.Count > size ? found[size - 1].Id : null);
            },
            cancel);
    }

    public Task<IReadOnlyList<SessionSummary>> Summaries(DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancel = default) => Read<IReadOnlyList<SessionSummary>>(
        [PostgresQuery.Of(new SessionFilter { From = from, To = to }).Select("select shown from sessions", "order by id")],
        async reader => await Shown(reader, cancel),
        cancel);

    /// <remarks>The tables are written anew without what was deleted. The server's own log and its backups forget it in their own time.</remarks>
    public async Task Erase()
    {
        try
        {
            await using var connection = await _source.OpenConnectionAsync();
            await using var events = new NpgsqlCommand("vacuum (full, analyze) events", connection) { CommandTimeout = 0 };
            await using var sessions = new NpgsqlCommand("vacuum (full, analyze) sessions", connection) { CommandTimeout = 0 };
            await using var done = new NpgsqlCommand("delete from meta where name = 'erase'", connection);
            await events.ExecuteNonQueryAsync();
            await sessions.ExecuteNonQueryAsync();
            await done.ExecuteNonQueryAsync();
        }
        catch (NpgsqlException wrong)
        {
            throw new StoreException(Unreachable(wrong), wrong);
        }
    }

    public Task<IReadOnlyList<Deletion>> Deletions(CancellationToken cancel = default) => Read<IReadOnlyList<Deletion>>(
        [new NpgsqlBatchCommand("select session, at, who, why from deletions order by at desc, session desc")],
        async reader =>
        {
            var deletions = new List<Deletion>();
            while (await reader.ReadAsync(cancel))
            {
                deletions.Add(new(
                    reader.GetString(0),
                    DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(1)),
                    await reader.IsDBNullAsync(2, cancel) ? null : reader.GetString(2),
                    reader.GetString(3)));
            }

            return deletions;
        },
        cancel);

    /// <summary>Gives the lock back and closes all connections.</summary>
    public async ValueTask DisposeAsync()
    {
        await _lock.DisposeAsync();
        await _source.DisposeAsync();
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Words are searched without an index in PostgreSQL, which is slow for many sessions ({Why})")]
    private static partial void LogNoWordIndex(ILogger log, string why);

    private static PostgresStore Open(NpgsqlDataSource source, ILogger<PostgresStore> log)
    {
        var locked = source.OpenConnection();
        using var command = new NpgsqlCommand("select pg_try_advisory_lock($1)", locked) { Parameters = { new() { Value = LockNumber } } };
        if (command.ExecuteScalar() is not true)
        {
            throw new StoreException("Another WireCoach uses the sessions in PostgreSQL; stop it first, or name another database.");
        }

        var store = new PostgresStore(source, locked);
        if (PostgresSchema.Prepare(locked, store._owner) is { } why)
        {
            LogNoWordIndex(log, why);
        }

        using var erase = new NpgsqlCommand("select 1 from meta where name = 'erase'", locked);
        if (erase.ExecuteScalar() is not null)
        {
            store.Erase().GetAwaiter().GetResult(); // a deletion that was cut short is finished
        }

        return store;
    }

    private static string Unreachable(Exception wrong) =>
        $"PostgreSQL did not take or give the sessions: {(wrong as PostgresException)?.MessageText ?? wrong.Message}";

    private static StoreException Damaged(string session) => new($"PostgreSQL does not hold the session {session} as it was written.");

    private static NpgsqlBatchCommand Command(string text, params object?[] values)
    {
        var command = new NpgsqlBatchCommand(text);
        foreach (var value in values)
        {
            command.Parameters.Add(new() { Value = value ?? DBNull.Value });
        }

        return command;
    }

    private static NpgsqlBatchCommand Upsert(SummaryFold fold)
    {
        var shown = fold.Shown;
        return Command(
            """
            insert into sessions (id, events, role, status, verdict, who, motor_tag, causes, cautions, words, shown)
            values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)
            on conflict (id) do update set events = excluded.events, role = excluded.role, status = excluded.status, verdict = excluded.verdict,
                who = excluded.who, motor_tag = excluded.motor_tag, causes = excluded.causes, cautions = excluded.cautions,
                words = excluded.words, shown = excluded.shown
            """,
            shown.Id,
            shown.Events,
            (int)shown.Role,
            shown.Status,
            shown.Verdict,
            PostgresQuery.Storable(shown.Who?.ToLowerInvariant()),
            PostgresQuery.Storable(shown.MotorTag?.ToLowerInvariant()),
            shown.Causes.ToArray(),
            shown.Cautions.ToArray(),
            PostgresQuery.Storable(fold.Words),
            System.Text.Json.JsonSerializer.Serialize(shown));
    }

    private static async Task<List<SessionSummary>> Shown(NpgsqlDataReader reader, CancellationToken cancel)
    {
        var found = new List<SessionSummary>();
        while (await reader.ReadAsync(cancel))
        {
            found.Add(System.Text.Json.JsonSerializer.Deserialize<SessionSummary>(reader.GetString(0))!);
        }

        return found;
    }

    /// <summary>Adds what an event writes, and moves its session's fold.</summary>
    private static void Take(NpgsqlBatch batch, Dictionary<string, SummaryFold> folds, StoredEvent stored)
    {
        if (stored.Event is SessionEvent.Deleted deleted)
        {
            folds.Remove(stored.Session);
            batch.BatchCommands.Add(Command("delete from events where session = $1", stored.Session));
            batch.BatchCommands.Add(Command("delete from sessions where id = $1", stored.Session));
            batch.BatchCommands.Add(Command(
                "insert into deletions values ($1, $2, $3, $4)",
                stored.Session,
                stored.At.ToUnixTimeMilliseconds(),
                PostgresQuery.Storable(deleted.Who),
                PostgresQuery.Storable(deleted.Why)));
            batch.BatchCommands.Add(new("insert into meta values ('erase', '') on conflict do nothing"));
        }
        else
        {
            folds[stored.Session] = stored.Sequence == 1 ? SummaryFold.Of(stored) : Next(folds, stored);
        }

        var line = new System.Buffers.ArrayBufferWriter<byte>(512);
        EventFormat.Write(line, stored);
        batch.BatchCommands.Add(Command("insert into events values ($1, $2, $3)", stored.Session, stored.Sequence, Encoding.UTF8.GetString(line.WrittenSpan[..^1])));
    }

    private static SummaryFold Next(Dictionary<string, SummaryFold> folds, StoredEvent stored) =>
        folds.TryGetValue(stored.Session, out var known) && known.Shown.Events == stored.Sequence - 1
            ? known.With(stored)
            : throw new StoreException($"The session {stored.Session} has moved on in PostgreSQL.");

    /// <summary>What the list knows of these events' sessions, locked until the transaction ends.</summary>
    private async Task<Dictionary<string, SummaryFold>> Known(NpgsqlConnection connection, IReadOnlyList<StoredEvent> events)
    {
        await using var batch = new NpgsqlBatch(connection);
        batch.BatchCommands.Add(Command("select 1 from meta where name = 'owner' and value = $1", _owner));
        batch.BatchCommands.Add(Command(
            "select shown, words from sessions where id = any($1) order by id for update",
            [events.Select(stored => stored.Session).Distinct(StringComparer.Ordinal).ToArray()]));
        await using var reader = await batch.ExecuteReaderAsync();
        if (!await reader.ReadAsync())
        {
            throw new StoreException("Another WireCoach took over the sessions in PostgreSQL.");
        }

        await reader.NextResultAsync();
        var folds = new Dictionary<string, SummaryFold>(StringComparer.Ordinal);
        while (await reader.ReadAsync())
        {
            var shown = System.Text.Json.JsonSerializer.Deserialize<SessionSummary>(reader.GetString(0))!;
            folds[shown.Id] = new(shown, reader.GetString(1));
        }

        return folds;
    }

    private async Task<T> Read<T>(IReadOnlyList<NpgsqlBatchCommand> commands, Func<NpgsqlDataReader, Task<T>> read, CancellationToken cancel)
    {
        try
        {
            await using var batch = _source.CreateBatch();
            foreach (var command in commands)
            {
                batch.BatchCommands.Add(command);
            }

            await using var reader = await batch.ExecuteReaderAsync(cancel);
            return await read(reader);
        }
        catch (NpgsqlException wrong)
        {
            throw new StoreException(Unreachable(wrong), wrong);
        }
    }
}
