using System.Net;
using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>The practice motor in a session: a whole job with nothing but the members of the question and the meter.</summary>
public sealed class PracticeTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task The_meter_answers_and_its_reading_is_a_fact()
    {
        var session = await Open(7);
        var id = session.GetProperty("id").GetString();
        var tags = Tags(session);
        Assert.InRange(tags.Count, 6, 8); // some have a protector
        var first = await service.Post($"/api/sessions/{id}/probe", new { from = tags[0], to = tags[1] });
        var reading = first.GetProperty("understood")[0];
        Assert.Equal(("reading", "probe"), (reading.GetProperty("kind").GetString(), reading.GetProperty("how").GetString()));
        var again = await service.Post($"/api/sessions/{(await Open(7)).GetProperty("id").GetString()}/probe", new { from = tags[0], to = tags[1] });
        Assert.Equal(reading.GetProperty("ohms").ToString(), again.GetProperty("understood")[0].GetProperty("ohms").ToString());
    }

    [Theory]
    [InlineData("""{"from":"1","to":"1"}""")]
    [InlineData("""{"from":"1","to":"99"}""")]
    [InlineData("""{"from":"1"}""")]
    public async Task Probes_that_touch_nothing_are_refused(string body)
    {
        var id = (await Open(7)).GetProperty("id").GetString();
        var (status, _) = await service.PostText($"/api/sessions/{id}/probe", body);
        Assert.Equal(400, status);
    }

    [Fact]
    public async Task A_practice_motor_has_its_machines_name_in_the_list()
    {
        var session = await Open(7);
        var machine = session.GetProperty("facts").EnumerateArray().Single(fact => fact.GetProperty("kind").GetString() == "application").GetProperty("text").GetString();
        var listed = (await service.Get("/api/sessions")).Body.GetProperty("items").EnumerateArray().Single(item => item.GetProperty("id").GetString() == session.GetProperty("id").GetString());
        Assert.Equal(machine, listed.GetProperty("title").GetString());
        var found = (await service.Get($"/api/sessions?size=50&text={Uri.EscapeDataString(machine!)}")).Body.GetProperty("items").EnumerateArray();
        Assert.Contains(found, item => item.GetProperty("id").GetString() == session.GetProperty("id").GetString());
    }

    [Fact]
    public async Task A_real_motor_cannot_be_probed()
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na" });
        var (status, problem) = await service.PostText($"/api/sessions/{session.GetProperty("id").GetString()}/probe", """{"from":"1","to":"2"}""");
        Assert.Equal((409, "not-ready"), (status, problem.GetProperty("type").GetString()));
    }

    [Fact]
    public async Task A_plan_that_is_not_there_yet_cannot_be_drawn_and_says_what_is_missing()
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na" });
        var (status, problem) = await service.Get($"/api/sessions/{session.GetProperty("id").GetString()}/diagram.svg");
        Assert.Equal((409, "not-ready"), (status, problem.GetProperty("type").GetString()));
    }

    [Fact]
    public async Task The_leads_are_drawn_as_far_as_they_are_known()
    {
        var id = (await Open(7)).GetProperty("id").GetString();
        using var picture = await service.Client.GetAsync($"/api/sessions/{id}/diagram.svg?of=leads", TestContext.Current.CancellationToken);
        Assert.Equal((HttpStatusCode.OK, "image/svg+xml"), (picture.StatusCode, picture.Content.Headers.ContentType?.MediaType));
        Assert.StartsWith("<svg", await picture.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    /// <summary>What is measured is taken by the meter alone, from the probes together to the ends; no question comes back for ever.</summary>
    [Theory]
    [InlineData("good")]
    [InlineData("fair")]
    [InlineData("cheap")]
    public async Task The_meter_takes_every_measurement_until_the_leads_are_told(string meter)
    {
        var told = 0;
        for (var seed = 1; seed <= 10; seed++)
        {
            var session = await service.Post("/api/sessions", new { role = "technician", region = "na", practice = new { layout = "capacitor-start-dual-6", seed, meter } });
            var id = session.GetProperty("id").GetString();
            var measured = new List<string>();
            for (var turn = 0; ; turn++)
            {
                Assert.True(turn < 50, $"{meter} {seed} goes round and round: {string.Join(", ", measured.TakeLast(4))}");
                var (_, now) = await service.Get($"/api/sessions/{id}");
                if (now.GetProperty("assessment").GetProperty("next") is not { ValueKind: JsonValueKind.Object } ask || ask.GetProperty("id").GetString() is "connected" or "supply" && now.GetProperty("assessment").GetProperty("plan").ValueKind == JsonValueKind.Object)
                {
                    told += now.GetProperty("assessment").GetProperty("identification").GetProperty("status").GetString() == "identified" ? 1 : 0;
                    break;
                }

                var questionId = ask.GetProperty("id").GetString()!;
                if (ask.GetProperty("kind").GetString() is "reading" or "quantity" || questionId.StartsWith("ends.", StringComparison.Ordinal))
                {
                    measured.Add(questionId);
                    await service.Post($"/api/sessions/{id}/probe", new { });
                    continue;
                }

                var options = ask.GetProperty("options") is { ValueKind: JsonValueKind.Array } array ? array.EnumerateArray().Select(option => option.GetProperty("id").GetString()!).ToList() : [];
                await service.Post($"/api/sessions/{id}/answers", ask.GetProperty("kind").GetString() == "confirm"
                    ? new { questionId, confirmed = true }
                    : new { questionId, choice = options.Find(option => option is "na-240" or "low-voltage-ac") ?? options[0] });
            }

            Assert.Contains("probe-zero", measured);
        }

        Assert.True(told >= 4, $"{told} of 10 with a {meter} meter");
    }

    [Fact]
    public async Task A_meter_that_does_not_exist_is_refused_by_its_member()
    {
        var (status, problem) = await service.PostText("/api/sessions", """{"role":"technician","region":"na","practice":{"meter":"magic"}}""");
        Assert.Equal(400, status);
        Assert.True(problem.GetProperty("errors").TryGetProperty("practice.meter", out _));
    }

    private static List<string> Tags(JsonElement session) =>
    [
        .. session.GetProperty("facts").EnumerateArray()
            .Where(fact => fact.GetProperty("kind").GetString() == "lead")
            .Select(fact => fact.GetProperty("tag").GetString()!),
    ];

    private Task<JsonElement> Open(int seed) => service.Post("/api/sessions", new
    {
        role = "apprentice",
        region = "na",
        practice = new { layout = "capacitor-start-dual-6", seed },
    });
}
