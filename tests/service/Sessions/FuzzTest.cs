using System.Text;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>Whatever comes in, the answer is an answer.</summary>
public sealed class FuzzTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task No_body_makes_the_service_fail_and_sessions_stay_readable()
    {
        var fuzz = new BodyFuzz(20260314);
        var id = (await service.Post("/api/sessions", new { role = "technician", region = "iec" })).GetProperty("id").GetString();
        for (var number = 0; number < 4000; number++)
        {
            var (part, body) = fuzz.Next();
            var path = part.Length == 0 ? "/api/sessions" : $"/api/sessions/{id}/{part}";
            using var content = new StringContent(body, Encoding.UTF8, "application/json");
            using var response = await service.Client.PostAsync(path, content, TestContext.Current.CancellationToken);
            Assert.True((int)response.StatusCode < 500, $"{(int)response.StatusCode} at {path} for {body}");
            if (!response.IsSuccessStatusCode)
            {
                Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
            }

            if (part == "close" && response.IsSuccessStatusCode)
            {
                id = (await service.Post("/api/sessions", new { role = "homeowner", region = "na" })).GetProperty("id").GetString();
            }
        }

        var (status, page) = await service.Get("/api/sessions?size=200");
        Assert.Equal(200, status);
        foreach (var session in page.GetProperty("items").EnumerateArray().Take(20))
        {
            foreach (var part in (string[])["", "/events", "/report?format=json"])
            {
                var (found, _) = await service.Get($"/api/sessions/{session.GetProperty("id").GetString()}{part}");
                Assert.Equal(200, found);
            }
        }
    }
}
