using Microsoft.Extensions.Logging.Abstractions;
using WireCoach.Rules.Cases;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Store;

/// <summary>The store on its own: what it acknowledged is there, whatever happens to its files.</summary>
public sealed class LocalStoreTest : DataFolderTest
{
    [Fact]
    public async Task A_line_that_was_spoilt_is_found_at_opening_after_a_clean_close_and_after_an_unclean_one()
    {
        var sessions = await Fill(3);
        var note = Path.Combine(Folder, "checked-segments");
        Assert.True(File.Exists(note));
        var (length, changed) = (new FileInfo(Journal).Length, File.GetLastWriteTimeUtc(Journal));
        Flip(Journal, length / 2);
        Assert.Throws<StoreException>(() => Open());
        Flip(Journal, length / 2);
        Assert.False(File.Exists(note)); // it counts once
        await Holds(sessions);
        Flip(Journal, length - 20); // the last line is looked at in any case
        File.SetLastWriteTimeUtc(Journal, changed);
        Assert.Throws<StoreException>(() => Open());
    }

    [Theory]
    [InlineData("")]
    [InlineData("{\"Version\":1}")]
    [InlineData("{\"Version\":9,\"Segments\":[],\"Deleted\":[]}")]
    [InlineData("[[[")]
    public async Task A_note_on_the_journal_that_cannot_be_read_only_costs_time(string text)
    {
        var sessions = await Fill(3);
        await File.WriteAllTextAsync(Path.Combine(Folder, "checked-segments"), text, TestContext.Current.CancellationToken);
        await Holds(sessions);
    }

    [Fact]
    public async Task A_clean_start_reads_no_line_twice_and_counts_on()
    {
        var sessions = await Fill(3);
        for (var round = 0; round < 3; round++)
        {
            await using (var store = Open())
            {
                sessions.Add(StoredSessions.New("more", 2));
                await store.Append(sessions[^1]);
            }

            using var journal = WireCoach.Service.Sessions.Journal.Open(Folder, TimeProvider.System);
            Assert.Equal(sessions.Sum(session => session.Count), journal.Count);
            Assert.Equal(new FileInfo(Journal).Length, journal.End.Offset);
            Assert.Equal(0, journal.LinesRead);
        }

        await Holds(sessions);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(100)]
    [InlineData(8191)]
    [InlineData(8192)]
    [InlineData(20000)]
    public async Task A_database_that_was_cut_short_is_made_anew(long length)
    {
        var sessions = await Fill(30);
        using (var file = new FileStream(Database, FileMode.Open))
        {
            file.SetLength(Math.Min(length, file.Length));
        }

        await Holds(sessions);
    }

    [Fact]
    public async Task A_deleted_database_is_made_anew()
    {
        var sessions = await Fill(10);
        File.Delete(Database);
        await Holds(sessions);
    }

    [Fact]
    public async Task A_database_of_another_journal_is_made_anew()
    {
        var sessions = await Fill(10);
        var other = Path.Combine(Folder, "other");
        await using (var store = LocalStore.Open(other, TimeProvider.System, NullLogger<LocalStore>.Instance))
        {
            await store.Append(StoredSessions.New("other", 400));
        }

        File.Copy(Path.Combine(other, "sessions.db"), Database, overwrite: true);
        await Holds(sessions);
    }

    [Fact]
    public async Task Bits_that_turn_round_in_the_database_change_no_answer()
    {
        var sessions = await Fill(30);
        var length = new FileInfo(Database).Length;
        var chance = new Random(20260314);
        for (var flip = 0; flip < 25; flip++)
        {
            Flip(Database, chance.NextInt64(length), chance.Next(8));
            await Holds(sessions);
        }
    }

    [Theory]
    [InlineData("0123abcd {\"v\":1,\"ses")]
    [InlineData("\0\0\0\0\0\0\0\0\0\0")]
    [InlineData("x")]
    public async Task A_torn_last_line_is_put_aside_and_nothing_acknowledged_goes_with_it(string torn)
    {
        var sessions = await Fill(5);
        await Append(torn);
        await Holds(sessions);
        Assert.Single(Directory.EnumerateFiles(Folder, "*.torn-*"), file => File.ReadAllText(file) == torn);
    }

    [Fact]
    public async Task Every_single_bit_that_turns_round_in_the_journal_stops_the_start_and_keeps_the_file()
    {
        await Fill(3);
        var length = new FileInfo(Journal).Length;
        var chance = new Random(9);
        for (var flip = 0; flip < 300; flip++)
        {
            var (at, bit) = (flip == 0 ? length - 1 : chance.NextInt64(length), chance.Next(8));
            Flip(Journal, at, bit);
            var damaged = await File.ReadAllBytesAsync(Journal, TestContext.Current.CancellationToken);
            var refused = Assert.Throws<StoreException>(() => Open());
            Assert.Contains("damaged at byte", refused.Message, StringComparison.Ordinal);
            Assert.Equal(damaged, await File.ReadAllBytesAsync(Journal, TestContext.Current.CancellationToken));
            Flip(Journal, at, bit);
        }
    }

    [Fact]
    public async Task A_journal_of_a_newer_version_is_refused_by_name()
    {
        await using (var store = Open())
        {
            await store.Append([StoredSessions.Opened(SessionId.New(DateTimeOffset.UtcNow))]);
        }

        var json = System.Text.Encoding.UTF8.GetBytes("""{"v":99,"session":"x","seq":1,"at":"2026-01-01T00:00:00Z","type":"opened","body":{}}""");
        await Append($"{System.IO.Hashing.Crc32.HashToUInt32(json):x8} {System.Text.Encoding.UTF8.GetString(json)}\n");
        var refused = Assert.Throws<StoreException>(() => Open());
        Assert.Contains("newer", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_new_month_starts_a_new_segment_and_the_clock_may_go_back()
    {
        var clock = new SetClock(new DateTimeOffset(2026, 1, 31, 23, 59, 59, TimeSpan.Zero));
        var sessions = new List<IReadOnlyList<StoredEvent>>();
        await using (var store = LocalStore.Open(Folder, clock, NullLogger<LocalStore>.Instance))
        {
            foreach (var month in (int[])[0, 1, -1, 2])
            {
                clock.Now = clock.Now.AddMonths(month);
                sessions.Add(StoredSessions.New("m", 4));
                await store.Append(sessions[^1]);
            }
        }

        Assert.Equal(
            ["journal-2026-01.jsonl", "journal-2026-02.jsonl", "journal-2026-03.jsonl"],
            Directory.EnumerateFiles(Folder, "journal-*").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal));
        await Holds(sessions);
        File.Delete(Database);
        await Holds(sessions);
    }

    [Fact]
    public async Task After_a_kill_only_the_newest_segment_is_read_again()
    {
        var clock = new SetClock(new DateTimeOffset(2026, 1, 31, 23, 59, 59, TimeSpan.Zero));
        var killed = Path.Combine(Folder, "killed");
        Directory.CreateDirectory(killed);
        await using (var store = LocalStore.Open(Folder, clock, NullLogger<LocalStore>.Instance))
        {
            await store.Append(StoredSessions.New("old", 40));
            clock.Now = clock.Now.AddMonths(1);
            await store.Append(StoredSessions.New("new", 4));
        }

        await using (LocalStore.Open(Folder, clock, NullLogger<LocalStore>.Instance))
        {
            foreach (var file in Directory.EnumerateFiles(Folder).Where(file => Path.GetFileName(file) != "lock"))
            {
                File.Copy(file, Path.Combine(killed, Path.GetFileName(file))); // as a kill leaves it
            }
        }

        using (var journal = WireCoach.Service.Sessions.Journal.Open(killed, clock))
        {
            Assert.Equal((44, 4), (journal.Count, journal.LinesRead));
        }

        File.Delete(Path.Combine(killed, "checked-segments"));
        Flip(Path.Combine(killed, "journal-2026-01.jsonl"), 900);
        Assert.Throws<StoreException>(() => WireCoach.Service.Sessions.Journal.Open(killed, clock));
    }

    [Fact]
    public async Task Lines_behind_the_database_are_taken_over_at_opening()
    {
        var before = await Fill(3);
        var old = await File.ReadAllBytesAsync(Database, TestContext.Current.CancellationToken);
        var after = await Fill(3);
        await File.WriteAllBytesAsync(Database, old, TestContext.Current.CancellationToken);
        await Holds([.. before, .. after]);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task What_is_deleted_leaves_the_disk_and_a_record_stays_even_when_it_was_cut_short(bool cutShort)
    {
        var id = SessionId.New(DateTimeOffset.UtcNow);
        var others = await Fill(5);
        await using (var store = Open())
        {
            await store.Append([StoredSessions.Opened(id, "somebody"), new(id, 2, StoredSessions.At, new SessionEvent.FactsTaken([], "a telltale word"))]);
            await store.Append(others[0] is var first ? [StoredSessions.Taken(first[0].Session, first.Count + 1)] : []);
            await store.Append([new(id, 3, StoredSessions.At, new SessionEvent.Deleted("boss", "asked for"))]);
            Assert.Empty(await store.Events(id));
            Assert.DoesNotContain((await store.List(new SessionFilter())).Items, item => item.Id == id);
            if (!cutShort)
            {
                await store.Erase();
            }
        }

        await using var again = Open();
        Assert.Equal([new Deletion(id, StoredSessions.At, "boss", "asked for")], await again.Deletions());
        Assert.Empty(await again.Events(id));
        Assert.Equal(5, (await again.List(new SessionFilter())).Total);
        Assert.Equal(7, (await again.Events(others[0][0].Session)).Count);
        await again.Append([StoredSessions.Taken(others[1][0].Session, 7)]);
        await again.DisposeAsync();
        foreach (var file in Directory.EnumerateFiles(Folder))
        {
            Assert.DoesNotContain("telltale", System.Text.Encoding.UTF8.GetString(await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken)), StringComparison.Ordinal);
        }

        await using var third = Open();
        Assert.Equal(7, (await third.Events(others[1][0].Session)).Count);
        Assert.Single(await third.Deletions());
    }

    private LocalStore Open() => LocalStore.Open(Folder, TimeProvider.System, NullLogger<LocalStore>.Instance);

    private async Task<List<IReadOnlyList<StoredEvent>>> Fill(int sessions)
    {
        var filled = Enumerable.Range(0, sessions).Select(number => StoredSessions.New($"{number}", 6)).ToList();
        await using var store = Open();
        foreach (var session in filled)
        {
            await store.Append(session);
        }

        return filled;
    }

    private async Task Holds(List<IReadOnlyList<StoredEvent>> sessions)
    {
        await using var store = Open();
        foreach (var session in sessions)
        {
            Assert.Equal(StoredSessions.Lines(session), StoredSessions.Lines(await store.Events(session[0].Session)));
        }

        var page = await store.List(new SessionFilter { Size = 200 });
        Assert.Equal(sessions.Count, page.Total);
        Assert.Equal(sessions.Select(session => session[0].Session).Order(StringComparer.Ordinal), page.Items.Select(item => item.Id).Order(StringComparer.Ordinal));
    }

    private sealed class SetClock(DateTimeOffset now) : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = now;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
