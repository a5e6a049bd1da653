using WireCoach.Rules.Cases;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Store;

/// <summary>What every store must do. Each kind of store runs all of it.</summary>
public abstract class SessionStoreTest : DataFolderTest
{
    [Fact]
    public async Task Events_come_back_as_they_were_stored()
    {
        await using var opened = Open();
        var events = StoredSessions.New("a", 5);
        await opened.Store.Append(events);
        Assert.Equal(StoredSessions.Lines(events), StoredSessions.Lines(await opened.Store.Events(events[0].Session)));
        Assert.Empty(await opened.Store.Events(SessionId.New(DateTimeOffset.UtcNow)));
        Assert.Null(opened.Store.Trouble);
    }

    [Fact]
    public async Task Tags_that_differ_only_in_case_stay_apart_and_blanks_stay()
    {
        await using var opened = Open();
        var id = SessionId.New(DateTimeOffset.UtcNow);
        await opened.Store.Append([StoredSessions.Opened(id), StoredSessions.Taken(id, 2, new Fact.Lead { Tag = "T1", Colour = " x\0 " }, new Fact.Lead { Tag = "t1" })]);
        var taken = Assert.IsType<SessionEvent.FactsTaken>((await opened.Store.Events(id))[1].Event);
        Assert.Equal(["T1", "t1"], taken.Facts.Cast<Fact.Lead>().Select(lead => lead.Tag));
        Assert.Equal(" x\0 ", ((Fact.Lead)taken.Facts[0]).Colour);
    }

    [Fact]
    public async Task Everything_is_there_after_reopening()
    {
        var sessions = Enumerable.Range(0, 20).Select(number => StoredSessions.New($"{number}", 6)).ToList();
        await using (var opened = Open())
        {
            await Task.WhenAll(sessions.Select(opened.Store.Append));
        }

        await using var again = Open();
        foreach (var session in sessions)
        {
            Assert.Equal(StoredSessions.Lines(session), StoredSessions.Lines(await again.Store.Events(session[0].Session)));
        }

        Assert.Equal(20, (await again.Store.List(new SessionFilter())).Total);
    }

    [Fact]
    public async Task A_session_that_grows_shows_what_it_has_become()
    {
        await using var opened = Open();
        var id = SessionId.New(DateTimeOffset.UtcNow);
        await opened.Store.Append([StoredSessions.Opened(id, "Ada")]);
        await opened.Store.Append([StoredSessions.Taken(id, 2, new Fact.Reading { From = "1", To = "4", Ohms = 2 }, new Fact.Confirm { Id = "dead", Confirmed = true })]);
        await opened.Store.Append([At(id, 3, new SessionEvent.Concluded("open", "identify", "six-lead", ["open-coil"])), At(id, 4, new SessionEvent.CautionShown("dead", "…", []))]);
        await opened.Store.Append([At(id, 5, new SessionEvent.Reviewed("ok", null, "boss", 4))]);
        var shown = Assert.Single((await opened.Store.List(new SessionFilter())).Items);
        Assert.Equal((5, 2, 1, "open", "six-lead", "ok"), (shown.Events, shown.Facts, shown.Touches, shown.Status, shown.Layout, shown.Verdict));
        Assert.Equal(["open-coil"], shown.Causes);
        Assert.Equal(["dead", "dead"], [.. shown.Cautions, .. shown.Confirmed]);
        Assert.Equal((StoredSessions.At, "Ada", Role.Technician), (shown.CreatedAt, shown.Who, shown.Role));
    }

    [Fact]
    public async Task A_filter_finds_what_fits_it_and_nothing_else()
    {
        await using var opened = Open();
        var begin = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
        for (var number = 0; number < 60; number++)
        {
            await opened.Store.Append(Numbered(SessionId.New(begin.AddDays(number)), number));
        }

        var all = await opened.Store.Summaries(null, null);
        Assert.Equal(60, all.Count);
        foreach (var (filter, fits) in Filters(begin, all))
        {
            var expected = all.Where(fits).Select(summary => summary.Id).OrderDescending(StringComparer.Ordinal).ToList();
            Assert.True(expected.Count is > 0 and < 60, $"{filter} tells nothing apart");
            var page = await opened.Store.List(filter with { Size = 200 });
            Assert.Equal(expected, page.Items.Select(item => item.Id));
            Assert.Equal((expected.Count, (string?)null), (page.Total, page.Next));
        }

        Assert.Empty((await opened.Store.List(new SessionFilter { Text = "100%" })).Items);
        Assert.Empty((await opened.Store.List(new SessionFilter { Text = "' or true --" })).Items);
        Assert.Equal(28, (await opened.Store.Summaries(begin.AddDays(31), begin.AddDays(59))).Count);
    }

    [Fact]
    public async Task Pages_follow_one_another_without_a_gap_or_a_repeat()
    {
        await using var opened = Open();
        var sessions = Enumerable.Range(0, 25).Select(number => StoredSessions.New($"{number}", 2)).ToList();
        await Task.WhenAll(sessions.Select(opened.Store.Append));
        var (seen, after) = (new List<string>(), (string?)null);
        do
        {
            var page = await opened.Store.List(new SessionFilter { Size = 7, After = after });
            Assert.Equal(25, page.Total);
            seen.AddRange(page.Items.Select(item => item.Id));
            after = page.Next;
        }
        while (after is not null);
        Assert.Equal(sessions.Select(session => session[0].Session).OrderDescending(StringComparer.Ordinal), seen);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task What_is_deleted_is_gone_and_a_record_stays_even_when_it_was_cut_short(bool cutShort)
    {
        var (id, other) = (SessionId.New(DateTimeOffset.UtcNow), StoredSessions.New("other", 6));
        await using (var opened = Open())
        {
            await opened.Store.Append(other);
            await opened.Store.Append([StoredSessions.Opened(id, "somebody"), At(id, 2, new SessionEvent.FactsTaken([], "a telltale word"))]);
            await opened.Store.Append([At(id, 3, new SessionEvent.Deleted("boss", "asked for"))]);
            Assert.Empty(await opened.Store.Events(id));
            if (!cutShort)
            {
                await opened.Store.Erase();
            }
        }

        await using var again = Open();
        Assert.Equal([new Deletion(id, StoredSessions.At, "boss", "asked for")], await again.Store.Deletions());
        Assert.Empty(await again.Store.Events(id));
        Assert.Equal(1, (await again.Store.List(new SessionFilter())).Total);
        await again.Store.Append([StoredSessions.Taken(other[0].Session, 7)]);
        Assert.Equal(7, (await again.Store.Events(other[0].Session)).Count);
        Assert.False(await Keeps(again.Store, "telltale"));
    }

    [Fact]
    public async Task A_read_that_nobody_waits_for_is_given_up_and_the_store_goes_on()
    {
        await using var opened = Open();
        var session = StoredSessions.New("a", 3);
        await opened.Store.Append(session);
        var gone = new CancellationToken(canceled: true);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => opened.Store.Events(session[0].Session, gone));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => opened.Store.List(new SessionFilter(), gone));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => opened.Store.Summaries(null, null, gone));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => opened.Store.Deletions(gone));
        Assert.Equal(3, (await opened.Store.Events(session[0].Session)).Count);
        Assert.Null(opened.Store.Trouble);
    }

    [Fact]
    public async Task Two_stores_cannot_own_the_same_sessions()
    {
        await using var opened = Open();
        var refused = Assert.Throws<StoreException>(Open);
        Assert.Contains("Another WireCoach", refused.Message, StringComparison.Ordinal);
    }

    internal abstract Opened Open();

    /// <summary>Whether a word still lies in the store's files.</summary>
    internal abstract Task<bool> Keeps(ISessionStore store, string word);

    internal static StoredEvent At(string id, int sequence, SessionEvent happened) => new(id, sequence, StoredSessions.At, happened);

    private static StoredEvent[] Numbered(string id, int number) =>
    [
        new(id, 1, StoredSessions.At, new SessionEvent.Opened(number % 4 == 0 ? Role.Homeowner : Role.Technician, Region.Iec, number % 3 == 0 ? "Ása Brine" : "Odd\\One_", $"P-{number % 5}", null)),
        At(id, 2, new SessionEvent.FactsTaken([], number % 2 == 0 ? "The BRINE pump hums, 100 % of the time" : "stirrer is slow_")),
        At(id, 3, new SessionEvent.Concluded(number % 6 == 0 ? "settled" : "open", null, null, number % 7 == 0 ? ["a", "open-coil"] : ["a"])),
        .. number % 5 == 0 ? [At(id, 4, new SessionEvent.CautionShown("dead", "…", []))] : Array.Empty<StoredEvent>(),
        .. number % 10 == 0 ? [At(id, 5, new SessionEvent.Reviewed("redo", null, null, 4))] : Array.Empty<StoredEvent>(),
    ];

    private static IEnumerable<(SessionFilter Filter, Func<SessionSummary, bool> Fits)> Filters(DateTimeOffset begin, IReadOnlyList<SessionSummary> all) =>
    [
        (new() { Who = "ÁSA brine" }, one => one.Who == "Ása Brine"),
        (new() { MotorTag = "p-3" }, one => one.MotorTag == "P-3"),
        (new() { Role = Role.Homeowner }, one => one.Role == Role.Homeowner),
        (new() { Status = "settled" }, one => one.Status == "settled"),
        (new() { Cause = "open-coil" }, one => one.Causes.Contains("open-coil")),
        (new() { Caution = "dead" }, one => one.Cautions.Contains("dead")),
        (new() { Verdict = "redo" }, one => one.Verdict == "redo"),
        (new() { Text = "PUMP rine" }, one => one.Title!.Contains("BRINE", StringComparison.Ordinal)),
        (new() { Text = "slow_" }, one => one.Title!.Contains("slow", StringComparison.Ordinal)),
        (new() { Text = "odd\\one_" }, one => one.Who == "Odd\\One_"),
        (new() { Only = [all[3].Id, all[9].Id, "nothing"] }, one => one == all[3] || one == all[9]),
        (new() { From = begin.AddDays(10), To = begin.AddDays(20) }, one => all.ToList().IndexOf(one) is >= 10 and < 20),
        (new() { Status = "open", Text = "hums", Role = Role.Technician }, one => one.Status == "open" && one.Title!.Contains("hums", StringComparison.Ordinal) && one.Role == Role.Technician),
    ];

    /// <summary>A store, closed with this.</summary>
    internal sealed class Opened(ISessionStore store) : IAsyncDisposable
    {
        public ISessionStore Store => store;

        public ValueTask DisposeAsync() => ((IAsyncDisposable)store).DisposeAsync();
    }
}
