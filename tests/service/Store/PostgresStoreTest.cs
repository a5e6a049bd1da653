using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Store;

/// <summary>PostgreSQL as a store.</summary>
public sealed class PostgresStoreTest(PostgresServer server) : SessionStoreTest, IClassFixture<PostgresServer>
{
    private readonly string _connection = server.NewDatabase();

    [Fact]
    public async Task An_event_is_taken_once()
    {
        await using var opened = Open();
        var events = StoredSessions.New("a", 3);
        await opened.Store.Append(events);
        await Assert.ThrowsAsync<StoreException>(() => opened.Store.Append([StoredSessions.Taken(events[0].Session, 3)]));
        await Assert.ThrowsAsync<StoreException>(() => opened.Store.Append([StoredSessions.Taken(events[0].Session, 5)]));
        await Assert.ThrowsAsync<StoreException>(() => opened.Store.Append([StoredSessions.Opened(events[0].Session)]));
        Assert.Equal(3, (await opened.Store.Events(events[0].Session)).Count);
    }

    [Fact]
    public async Task What_was_acknowledged_is_there_after_the_server_was_cut_off_and_the_store_goes_on()
    {
        await using var opened = Open();
        var acknowledged = new List<IReadOnlyList<StoredEvent>>();
        for (var cut = 0; cut < 3; cut++)
        {
            var enough = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            var until = acknowledged.Count + 5;
            var writing = Task.Run(async () =>
            {
                while (true)
                {
                    var events = StoredSessions.New("a", 4);
                    await opened.Store.Append(events);
                    acknowledged.Add(events);
                    if (acknowledged.Count == until)
                    {
                        enough.SetResult();
                    }
                }
            });
            await Task.WhenAny(enough.Task, writing); // in the midst of writing, however fast this machine is
            server.Cut();
            await Assert.ThrowsAsync<StoreException>(() => writing);
            Assert.NotNull(opened.Store.Trouble);
            server.Start();
            Assert.Null(opened.Store.Trouble);
        }

        Assert.True(acknowledged.Count > 10);
        foreach (var events in acknowledged)
        {
            Assert.Equal(StoredSessions.Lines(events), StoredSessions.Lines(await opened.Store.Events(events[0].Session)));
        }
    }

    [Fact]
    public async Task Who_lost_the_lock_and_has_a_successor_writes_no_more()
    {
        await using var first = Open();
        server.Cut();
        server.Start();
        await using var second = Open();
        var refused = await Assert.ThrowsAsync<StoreException>(async () =>
        {
            await FirstConnectionFails(first);
            await first.Store.Append(StoredSessions.New("a", 2));
        });
        Assert.Contains("took over", refused.Message, StringComparison.Ordinal);
        Assert.Contains("took over", first.Store.Trouble, StringComparison.Ordinal);
        await second.Store.Append(StoredSessions.New("a", 2));
    }

    [Fact]
    public async Task A_line_that_was_changed_is_not_given_out()
    {
        await using var opened = Open();
        var events = StoredSessions.New("a", 3);
        await opened.Store.Append(events);
        await using var source = NpgsqlDataSource.Create(_connection);
        await using var command = source.CreateCommand("update events set line = replace(line, '\"ohms\":1', '\"ohms\":2') where seq = 3");
        Assert.Equal(1, await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken));
        await Assert.ThrowsAsync<StoreException>(() => opened.Store.Events(events[0].Session));
    }

    [Theory]
    [InlineData("Host=127.0.0.1;Port=1;Username=a;Password=hush;Timeout=2", "PostgreSQL did not take or give")]
    [InlineData("nonsense", "no connection string")]
    public void A_server_that_cannot_be_used_is_said_in_one_sentence(string connection, string expected)
    {
        var refused = Assert.Throws<StoreException>(() => PostgresStore.Open(connection, NullLogger<PostgresStore>.Instance));
        Assert.Contains(expected, refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("hush", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tables_of_a_newer_version_are_refused()
    {
        await Open().DisposeAsync();
        await using var source = NpgsqlDataSource.Create(_connection);
        await using var command = source.CreateCommand("update meta set value = '99' where name = 'schema'");
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
        Assert.Contains("version 99", Assert.Throws<StoreException>(Open).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_whole_service_runs_on_it()
    {
        using var service = new ServiceFixture(("Data:Postgres", _connection));
        var opened = await service.Post("/api/sessions", new { role = "technician", region = "na" });
        var id = opened.GetProperty("id").GetString();
        await service.Post($"/api/sessions/{id}/messages", new { text = "brine pump motor, single phase, six wires no marks" });
        Assert.Equal(1, (await service.Get("/api/sessions?text=brine")).Body.GetProperty("total").GetInt32());
        Assert.Equal(200, (await service.Get("/health/ready")).Status);
        Assert.Empty(Directory.EnumerateFiles(service.Folder, "journal-*"));
    }

    internal override Opened Open() => new(PostgresStore.Open(_connection, NullLogger<PostgresStore>.Instance));

    internal override async Task<bool> Keeps(ISessionStore store, string word)
    {
        await using var source = NpgsqlDataSource.Create(_connection);
        await using (var command = source.CreateCommand("checkpoint"))
        {
            await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
        }

        return Directory.EnumerateFiles(Path.Combine(server.Data, "base"), "*", SearchOption.AllDirectories)
            .Any(file => Encoding.UTF8.GetString(File.ReadAllBytes(file)).Contains(word, StringComparison.Ordinal));
    }

    /// <summary>A pooled connection may be dead without knowing it; the next one is new.</summary>
    private static async Task FirstConnectionFails(Opened store)
    {
        for (var tries = 0; tries < 5; tries++)
        {
            try
            {
                await store.Store.List(new SessionFilter());
            }
            catch (StoreException)
            {
                // the pool throws dead connections away
            }
        }
    }
}
