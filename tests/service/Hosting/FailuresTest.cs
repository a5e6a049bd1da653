using System.Net;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Hosting;

/// <summary>When something fails, a person gets a page and a program a problem document; neither gets the service's insides.</summary>
public sealed class FailuresTest : DataFolderTest
{
    private const string Inside = "ZQXINSIDE";

    [Theory]
    [InlineData(true, HttpStatusCode.ServiceUnavailable)]
    [InlineData(false, HttpStatusCode.InternalServerError)]
    public async Task A_page_that_fails_is_a_page_and_an_address_that_fails_a_problem(bool store, HttpStatusCode expected)
    {
        using var factory = Hosted(services => services.AddSingleton<ISessionStore>(new BrokenStore(store ? new StoreException(Inside) : new InvalidOperationException(Inside))));
        using var client = factory.CreateClient();
        using (var page = await client.GetAsync("/sessions", TestContext.Current.CancellationToken))
        {
            var text = await page.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.Equal((expected, "text/html"), (page.StatusCode, page.Content.Headers.ContentType?.MediaType));
            Assert.Contains("wirecoach.css", text, StringComparison.Ordinal);
            Assert.Contains("This did not work", text, StringComparison.Ordinal);
            Assert.DoesNotContain(Inside, text, StringComparison.Ordinal);
            Assert.NotEmpty(page.Headers.GetValues("Content-Security-Policy"));
        }

        using var answer = await client.GetAsync("/api/sessions", TestContext.Current.CancellationToken);
        var body = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal((expected, "application/problem+json"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        Assert.DoesNotContain(Inside, body, StringComparison.Ordinal);
        Assert.NotEmpty(JsonDocument.Parse(body).RootElement.GetProperty("traceId").GetString()!);
        using var health = await client.GetAsync("/health/ready", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, health.StatusCode);
        Assert.Contains("the disk is full", await health.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private sealed class BrokenStore(Exception wrong) : ISessionStore
    {
        public string? Trouble => "the disk is full";

        public Task Append(IReadOnlyList<StoredEvent> events) => throw wrong;

        public Task<IReadOnlyList<StoredEvent>> Events(string session, CancellationToken cancel = default) => throw wrong;

        public Task<SessionPage> List(SessionFilter filter, CancellationToken cancel = default) => throw wrong;

        public Task<IReadOnlyList<SessionSummary>> Summaries(DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancel = default) => throw wrong;

        public Task Erase() => throw wrong;

        public Task<IReadOnlyList<Deletion>> Deletions(CancellationToken cancel = default) => throw wrong;
    }
}
