using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Hosting;

/// <summary>Pages wait for what they show, from a store that answers at once and from one that does not.</summary>
public sealed class LatePagesTest : DataFolderTest
{
    [Fact]
    public async Task Every_page_is_whole_when_the_store_answers_late()
    {
        await using var inner = LocalStore.Open(Path.Combine(Folder, "own"), TimeProvider.System, NullLogger<LocalStore>.Instance);
        string id;
        using (var before = Hosted(services => services.AddSingleton<ISessionStore>(inner)))
        using (var client = before.CreateClient())
        {
            using var opened = await client.PostAsJsonAsync("/api/sessions", new { role = "technician", region = "na", motorTag = "brine pump 2", text = "six leads, no marks" }, TestContext.Current.CancellationToken);
            id = (await opened.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetString()!;
        }

        using var factory = Hosted(services => services.AddSingleton<ISessionStore>(new LateStore(inner))); // it knows no session yet
        using var pages = factory.CreateClient();
        foreach (var (address, shown) in (IEnumerable<(string, string)>)
        [
            ($"sessions/{id}", "brine pump 2"), ("", "brine pump 2"), ("sessions", "brine pump 2"), ("figures", "technician"), ("retention?days=1", "1"),
            ($"sessions/{id}/log", "brine pump 2"), ($"sessions/{id}/plan", "brine pump 2"), ($"sessions/{id}/readings", "All readings in one table"),
        ])
        {
            using var page = await pages.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
            var text = await page.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.True(page.StatusCode == HttpStatusCode.OK && text.Contains(shown, StringComparison.Ordinal), $"{address}: {page.StatusCode}\n{text}");
        }
    }

    /// <summary>Answers as a store elsewhere does: truly later.</summary>
    private sealed class LateStore(ISessionStore inner) : ISessionStore
    {
        public string? Trouble => inner.Trouble;

        public Task Append(IReadOnlyList<StoredEvent> events) => inner.Append(events);

        public Task<IReadOnlyList<StoredEvent>> Events(string session, CancellationToken cancel = default) => Late(() => inner.Events(session, cancel), cancel);

        public Task<SessionPage> List(SessionFilter filter, CancellationToken cancel = default) => Late(() => inner.List(filter, cancel), cancel);

        public Task<IReadOnlyList<SessionSummary>> Summaries(DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancel = default) => Late(() => inner.Summaries(from, to, cancel), cancel);

        public Task Erase() => inner.Erase();

        public Task<IReadOnlyList<Deletion>> Deletions(CancellationToken cancel = default) => Late(() => inner.Deletions(cancel), cancel);

        private static async Task<T> Late<T>(Func<Task<T>> read, CancellationToken cancel)
        {
            await Task.Delay(30, cancel);
            return await read();
        }
    }
}
