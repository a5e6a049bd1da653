using System.Net;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Hosting;

/// <summary>A request that takes too long is cut: what it reads is given up, and who asked is told.</summary>
public sealed class SlowRequestsTest : DataFolderTest
{
    [Theory]
    [InlineData("/api/sessions", "application/problem+json")]
    [InlineData("/api/sessions/1m8bdfw4q9k7pgdy", "application/problem+json")]
    [InlineData("/sessions", "text/html")]
    public async Task What_takes_too_long_is_given_up_and_told(string address, string kind)
    {
        var store = new EndlessStore();
        using var factory = Hosted(services => services.AddSingleton<ISessionStore>(store)
            .PostConfigure<RequestTimeoutOptions>(timeouts => timeouts.DefaultPolicy = new() { Timeout = TimeSpan.FromSeconds(2) }));
        using var client = factory.CreateClient();
        using (await client.GetAsync(address, TestContext.Current.CancellationToken)) { } // the way to the store is compiled before it counts: else the limit may be over before anything is read
        store.Endless = true;
        using var answer = await client.GetAsync(address, TestContext.Current.CancellationToken).WaitAsync(TimeSpan.FromSeconds(20), TestContext.Current.CancellationToken);
        Assert.Equal((HttpStatusCode.GatewayTimeout, kind), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        Assert.Contains("took longer than", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        await store.GivenUp.WaitAsync(TimeSpan.FromSeconds(20), TestContext.Current.CancellationToken); // the answer need not wait for the read that it gave up
    }

    [Fact]
    public void The_limit_is_half_a_minute()
    {
        using var factory = Hosted(_ => { });
        Assert.Equal(TimeSpan.FromSeconds(30), factory.Services.GetRequiredService<IOptions<RequestTimeoutOptions>>().Value.DefaultPolicy?.Timeout);
    }

    /// <summary>Has nothing, and once it is endless reads for as long as it is let.</summary>
    private sealed class EndlessStore : ISessionStore
    {
        private readonly TaskCompletionSource _givenUp = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public bool Endless { get; set; }

        public Task GivenUp => _givenUp.Task;

        public string? Trouble => null;

        public Task Append(IReadOnlyList<StoredEvent> events) => throw new NotSupportedException();

        public Task<IReadOnlyList<StoredEvent>> Events(string session, CancellationToken cancel = default) => Read<IReadOnlyList<StoredEvent>>([], cancel);

        public Task<SessionPage> List(SessionFilter filter, CancellationToken cancel = default) => Read(new SessionPage([], 0, null), cancel);

        public Task<IReadOnlyList<SessionSummary>> Summaries(DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancel = default) => Read<IReadOnlyList<SessionSummary>>([], cancel);

        public Task Erase() => throw new NotSupportedException();

        public Task<IReadOnlyList<Deletion>> Deletions(CancellationToken cancel = default) => Read<IReadOnlyList<Deletion>>([], cancel);

        private async Task<T> Read<T>(T nothing, CancellationToken cancel)
        {
            if (!Endless)
            {
                return nothing;
            }

            try
            {
                await Task.Delay(Timeout.Infinite, cancel);
            }
            catch (OperationCanceledException)
            {
                _givenUp.TrySetResult();
                throw;
            }

            throw new InvalidOperationException();
        }
    }
}
