using Microsoft.Extensions.Logging.Abstractions;
using WireCoach.Rules.Cases;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Store;

/// <summary>The list in memory finds what reading every session's words would find, and is never shown in part.</summary>
public sealed class SummaryIndexTest : DataFolderTest
{
    private static readonly string[] Words = ["brine", "pump", "Brine-pump", "hums", "HUM", "1-4", "is", "1.7", "Ω", "stirrer\n2", "lathe", "at", "a", "x\ty", "ﬁlter", "İ"];

    [Fact]
    public void A_search_finds_what_holds_every_word_of_it_and_nothing_else()
    {
        var chance = new Random(20260314);
        var index = new SummaryIndex();
        var folds = new Dictionary<string, SummaryFold>(StringComparer.Ordinal);
        for (var step = 0; step < 3000; step++)
        {
            var known = folds.Count == 0 || chance.Next(3) == 0 ? null : folds.Values.ElementAt(chance.Next(folds.Count));
            if (known is not null && chance.Next(8) == 0)
            {
                folds.Remove(known.Shown.Id);
                index.Remove(known.Shown.Id);
                continue;
            }

            var fold = known is null ? Opened(chance) : known.With(Said(known, chance));
            folds[fold.Shown.Id] = fold;
            index.Put(fold);
            var text = string.Join(' ', Enumerable.Range(0, chance.Next(1, 4)).Select(_ => Part(chance)));
            var expected = folds.Values
                .Where(each => text.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries).All(word => each.Words.Contains(word, StringComparison.Ordinal)))
                .Select(each => each.Shown.Id).OrderDescending(StringComparer.Ordinal).ToList();
            var page = index.List(new SessionFilter { Text = text, Size = 5 });
            Assert.Equal(expected.Count, page.Total);
            Assert.Equal(expected.Take(5), page.Items.Select(item => item.Id));
        }

        Assert.Equal(folds.Keys.Order(StringComparer.Ordinal), index.Between(null, null).Select(shown => shown.Id));
    }

    [Fact]
    public async Task A_list_asked_for_at_opening_counts_every_session_while_others_write()
    {
        const int Many = 6500;
        await using (var store = Open())
        {
            await store.Append([.. Enumerable.Range(0, Many).Select(_ => StoredSessions.Opened(SessionId.New(DateTimeOffset.UtcNow)))]);
        }

        await using var again = Open();
        var more = Enumerable.Range(0, 50).Select(_ => StoredSessions.New("later", 3)).ToList();
        var writing = Task.WhenAll(more.Select(again.Append));
        Assert.InRange((await again.List(new SessionFilter { Size = 1 })).Total, Many, Many + more.Count);
        Assert.InRange((await again.Summaries(null, null)).Count, Many, Many + more.Count);
        await writing;
        Assert.Equal(Many + more.Count, (await again.List(new SessionFilter { Size = 1 })).Total);
        Assert.Equal(more.Count, (await again.List(new SessionFilter { Who = "LATER", Size = 1 })).Total);
    }

    [Fact]
    public async Task A_store_stopped_while_its_list_is_read_in_frees_the_folder_and_loses_nothing()
    {
        const int Many = 3000;
        await using (var store = Open())
        {
            await store.Append([.. Enumerable.Range(0, Many).Select(_ => StoredSessions.Opened(SessionId.New(DateTimeOffset.UtcNow)))]);
        }

        for (var time = 0; time < 5; time++)
        {
            await Open().DisposeAsync();
        }

        await using var again = Open();
        Assert.Equal(Many, (await again.List(new SessionFilter { Size = 1 })).Total);
    }

    private LocalStore Open() => LocalStore.Open(Folder, TimeProvider.System, NullLogger<LocalStore>.Instance);

    private static SummaryFold Opened(Random chance) => SummaryFold.Of(new(
        SessionId.New(DateTimeOffset.UnixEpoch.AddSeconds(chance.Next(1_000_000_000))), 1, StoredSessions.At, new SessionEvent.Opened(Role.Technician, Region.Iec, Word(chance), Word(chance), null)));

    private static StoredEvent Said(SummaryFold fold, Random chance) => new(
        fold.Shown.Id, fold.Shown.Events + 1, StoredSessions.At, new SessionEvent.FactsTaken([], string.Join(' ', Enumerable.Range(0, chance.Next(1, 60)).Select(_ => Word(chance)))));

    private static string Word(Random chance) => Words[chance.Next(Words.Length)];

    private static string Part(Random chance)
    {
        var word = Word(chance);
        var from = chance.Next(word.Length);
        return word.Substring(from, chance.Next(1, word.Length - from + 1));
    }
}
