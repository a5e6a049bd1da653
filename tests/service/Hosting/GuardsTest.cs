using System.Net;
using System.Text;

namespace WireCoach.Service.Tests.Hosting;

/// <summary>What keeps strangers out, and what the log does not hold.</summary>
public sealed class GuardsTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Opening = """{"role":"technician","region":"na"}""";

    [Theory]
    [InlineData("Origin", "http://evil.example", HttpStatusCode.Forbidden)]
    [InlineData("Origin", "null", HttpStatusCode.Forbidden)]
    [InlineData("Sec-Fetch-Site", "cross-site", HttpStatusCode.Forbidden)]
    [InlineData("Sec-Fetch-Site", "same-site", HttpStatusCode.Forbidden)]
    [InlineData("Sec-Fetch-Site", "same-origin", HttpStatusCode.Created)]
    [InlineData("Origin", "http://localhost", HttpStatusCode.Created)]
    [InlineData("Host", "evil.example", HttpStatusCode.BadRequest)]
    [InlineData("Host", "127.0.0.1.nip.io", HttpStatusCode.BadRequest)]
    [InlineData("Host", "localhost:5080", HttpStatusCode.Created)]
    public async Task Only_pages_of_this_service_change_anything(string header, string value, HttpStatusCode expected)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/sessions") { Content = new StringContent(Opening, Encoding.UTF8, "application/json") };
        request.Headers.TryAddWithoutValidation(header, value);
        using var response = await service.Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(expected, response.StatusCode);
    }

    [Fact]
    public async Task Another_site_may_not_delete()
    {
        using var request = new HttpRequestMessage(HttpMethod.Delete, "/api/sessions/x/facts/f1");
        request.Headers.TryAddWithoutValidation("Origin", "http://evil.example");
        using var response = await service.Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/api/sessions")]
    [InlineData("/api/nothing")]
    [InlineData("/health/live")]
    public async Task Every_answer_tells_the_browser_what_it_may_do(string path)
    {
        using var response = await service.Client.GetAsync(path, TestContext.Current.CancellationToken);
        var policy = Assert.Single(response.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal(["nosniff"], response.Headers.GetValues("X-Content-Type-Options"));
    }

    [Fact]
    public async Task The_script_for_enhanced_forms_is_served()
    {
        using var response = await service.Client.GetAsync("/_framework/blazor.web.js", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
    }

    [Fact]
    public async Task Health_says_that_it_can_take_sessions()
    {
        foreach (var path in (string[])["/health/live", "/health/ready"])
        {
            var (status, _) = await service.Get(path);
            Assert.Equal(200, status);
        }
    }

    [Fact]
    public async Task The_log_holds_no_word_of_a_person()
    {
        const string Marker = "ZQXMARKER";
        var session = await service.Post("/api/sessions", new
        {
            role = "technician",
            region = "na",
            who = $"{Marker}who",
            motorTag = $"{Marker}tag",
            text = $"{Marker} text, it just hums",
            motor = new { serial = $"{Marker}plate" },
        });
        var id = session.GetProperty("id").GetString();
        await service.Post($"/api/sessions/{id}/messages", new { text = $"{Marker}A to {Marker}B is 3.2 ohm" });
        await service.Post($"/api/sessions/{id}/facts", new { facts = new object[] { new { kind = "lead", tag = $"{Marker}1" }, new { kind = "application", text = $"{Marker} stirrer" } } });
        await service.PostText($"/api/sessions/{id}/facts", $$"""{"facts":[{"kind":"reading","from":"{{Marker}}","to":"{{Marker}}2","ohms":"{{Marker}}"}]}""");
        await service.PostText($"/api/sessions/{id}/facts", $$"""{"facts":[{"kind":"{{Marker}}"}]}""");
        await service.PostText($"/api/sessions/{Marker}/messages", $$"""{"text":"{{Marker}}"}""");
        await service.PostText($"/api/sessions/{id}/answers", $$"""{"questionId":"{{Marker}}","text":"{{Marker}}"}""");
        await service.Post($"/api/sessions/{id}/review", new { verdict = "note", note = $"{Marker} note", who = $"{Marker}boss" });
        await service.Get($"/api/sessions?text={Marker}&who={Marker}");
        await service.Client.GetStringAsync($"/sessions/{id}", TestContext.Current.CancellationToken);

        var log = new StringBuilder();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(service.Folder, "logs")))
        {
            using var reader = new StreamReader(new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite));
            log.Append(await reader.ReadToEndAsync(TestContext.Current.CancellationToken));
        }

        Assert.Contains(id!, log.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(Marker, log.ToString(), StringComparison.OrdinalIgnoreCase);
        Assert.True(File.ReadAllText(Directory.EnumerateFiles(service.Folder, "journal-*").Single(), Encoding.UTF8).Contains(Marker, StringComparison.Ordinal));
    }
}
