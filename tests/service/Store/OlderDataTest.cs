using LiteDB;
using Microsoft.Extensions.Logging.Abstractions;
using WireCoach.Rules.Cases;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Store;

/// <summary>Records that an earlier version wrote open in this one. The files beside the tests are never edited: each version adds its own.</summary>
public sealed class OlderDataTest : DataFolderTest
{
    private static string Kept => Path.Combine(AppContext.BaseDirectory, "Store", "older");

    /// <summary>Every journal that was ever kept, by the version of its lines.</summary>
    public static TheoryData<string> Versions => [.. Directory.EnumerateDirectories(Kept).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_version_up_to_this_one_is_kept() =>
        Assert.Equal(Enumerable.Range(1, EventFormat.Version).Select(version => $"v{version}"), Directory.EnumerateDirectories(Kept).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Versions))]
    public async Task A_journal_of_an_older_version_opens_and_goes_on(string version)
    {
        Take(version);
        await using var store = LocalStore.Open(Folder, TimeProvider.System, NullLogger<LocalStore>.Instance);
        var shown = Assert.Single((await store.List(new SessionFilter())).Items);
        Assert.Equal(
            ("closed", "brine pump", "ok", 4, 1, "capacitor-start-dual-6"),
            (shown.Status, shown.MotorTag, shown.Verdict, shown.Facts, shown.Retracted, shown.Layout));
        var events = await store.Events(shown.Id);
        Assert.Equal(9, events.Select(stored => EventFormat.TypeOf(stored.Event)).Distinct().Count());
        var reading = Assert.Single(events.Select(stored => stored.Event).OfType<SessionEvent.FactsTaken>().SelectMany(taken => taken.Facts).OfType<Fact.Reading>());
        Assert.Equal((1.7, "1", "4"), (reading.Ohms, reading.From, reading.To));
        await store.Append(StoredSessions.New("today", 3));
        Assert.Equal(2, (await store.List(new SessionFilter())).Total);
    }

    [Theory]
    [MemberData(nameof(Versions))]
    public async Task What_an_older_version_wrote_is_folded_as_it_was_then(string version)
    {
        Take(version);
        await using var store = LocalStore.Open(Folder, TimeProvider.System, NullLogger<LocalStore>.Instance);
        var state = SessionState.From(await store.Events((await store.List(new SessionFilter())).Items[0].Id));
        Assert.True(state.Closed);
        Assert.Equal(["f1", "f2", "f4"], state.Facts.Select(fact => fact.FactId));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(1)]
    [InlineData(99)]
    public async Task A_database_of_another_version_is_made_anew(int? schema)
    {
        var session = StoredSessions.New("kept", 6);
        await using (var store = LocalStore.Open(Folder, TimeProvider.System, NullLogger<LocalStore>.Instance))
        {
            await store.Append(session);
        }

        using (var database = new LiteDatabase(Database))
        {
            var meta = database.GetCollection("meta");
            var mark = meta.FindById("mark");
            mark.Remove("schema");
            if (schema is not null)
            {
                mark["schema"] = schema;
            }

            meta.Update(mark);
            database.GetCollection("sessions").DeleteAll();
        }

        await using var again = LocalStore.Open(Folder, TimeProvider.System, NullLogger<LocalStore>.Instance);
        Assert.Equal(1, (await again.List(new SessionFilter())).Total);
        Assert.Equal(StoredSessions.Lines(session), StoredSessions.Lines(await again.Events(session[0].Session)));
    }

    private void Take(string version)
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Kept, version)))
        {
            File.Copy(file, Path.Combine(Folder, Path.GetFileName(file)));
        }
    }
}
