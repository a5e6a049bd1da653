using System.Net;

namespace WireCoach.Service.Tests.Hosting;

/// <summary>What is not there is said by the page that was asked for, and the status tells programs.</summary>
public sealed class MissingPagesTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Theory]
    [InlineData("/sessions/none", "There is no such job")]
    [InlineData("/sessions/none/log", "There is no such job")]
    [InlineData("/sessions/none/plan", "There is no such job")]
    [InlineData("/sessions/none/practice", "There is no such job")]
    [InlineData("/no-such-page", "There is no such page")]
    public async Task What_is_not_there_is_said_by_its_own_page(string path, string says)
    {
        using var page = await service.Client.GetAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal((HttpStatusCode.NotFound, "text/html"), (page.StatusCode, page.Content.Headers.ContentType?.MediaType));
        Assert.Contains($"{says}</h1>", await page.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }
}
