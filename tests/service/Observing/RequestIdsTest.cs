using System.Net;
using System.Text;
using System.Text.Json;

namespace WireCoach.Service.Tests.Observing;

/// <summary>The id of a request, its caller's own where it brings one, stands in the problem document and in the log: that is how the two are brought together.</summary>
public sealed class RequestIdsTest : DataFolderTest
{
    [Theory]
    [InlineData("GET", "/api/sessions/0000000000000000", "", HttpStatusCode.NotFound)]
    [InlineData("GET", "/api/nothing", "", HttpStatusCode.NotFound)]
    [InlineData("PUT", "/api/sessions", "", HttpStatusCode.MethodNotAllowed)]
    [InlineData("POST", "/api/sessions", "{", HttpStatusCode.BadRequest)]
    [InlineData("POST", "/api/sessions", """{"role":"pilot","region":"na"}""", HttpStatusCode.BadRequest)]
    [InlineData("POST", "/api/calc/network", """{"elements":[]}""", HttpStatusCode.BadRequest)]
    public async Task A_problem_names_its_request(string method, string path, string body, HttpStatusCode expected)
    {
        using var service = new ServiceFixture();
        var (status, type, trace, answer) = await Send(service, method, path, body);
        Assert.Equal((expected, "application/problem+json"), (status, type));
        Assert.Contains(trace, answer.GetProperty("traceId").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_log_line_of_a_turn_has_the_id_that_its_caller_gave()
    {
        string trace;
        await using (var process = await ServiceProcess.Start(Folder))
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, "/api/sessions") { Content = new StringContent("""{"role":"technician","region":"na","text":"1-4 is 1.7"}""", Encoding.UTF8, "application/json") };
            trace = Trace(request);
            using var response = await process.Client.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.Created, response.StatusCode);
        }

        var lines = Directory.EnumerateFiles(Path.Combine(Folder, "logs")).SelectMany(File.ReadAllLines);
        Assert.Contains(lines, line => line.Contains("Turn {Kind}", StringComparison.Ordinal) && line.Contains(trace, StringComparison.Ordinal));
    }

    private static async Task<(HttpStatusCode Status, string? Type, string Trace, JsonElement Body)> Send(ServiceFixture service, string method, string path, string body)
    {
        using var request = new HttpRequestMessage(new(method), path);
        if (body.Length > 0)
        {
            request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        }

        var trace = Trace(request);
        using var response = await service.Client.SendAsync(request, TestContext.Current.CancellationToken);
        return (response.StatusCode, response.Content.Headers.ContentType?.MediaType, trace, JsonDocument.Parse(await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement);
    }

    private static string Trace(HttpRequestMessage request)
    {
        var trace = $"{Guid.NewGuid():N}";
        request.Headers.Add("traceparent", $"00-{trace}-00f067aa0ba902b7-01");
        return trace;
    }
}
