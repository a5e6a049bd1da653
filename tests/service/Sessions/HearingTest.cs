using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>Plain words in a session, over HTTP.</summary>
public sealed class HearingTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Readings_in_plain_words_become_facts_with_their_words()
    {
        var id = await Open();
        await Say(id, "tagged them 1 2 3 4 5 6");
        var reply = await Say(id, "1-4 is 3.2 ohm, 2-5 nothing");
        var readings = reply.GetProperty("understood").EnumerateArray().Where(fact => fact.GetProperty("kind").GetString() == "reading").ToList();
        Assert.Equal(3.2, readings[0].GetProperty("ohms").GetDouble());
        Assert.True(readings[1].GetProperty("open").GetBoolean());
        Assert.All(readings, reading => Assert.Equal("typed", reading.GetProperty("how").GetString()));
        Assert.Equal("1-4 is 3.2 ohm", readings[0].GetProperty("span").GetString());
    }

    [Fact]
    public async Task A_correction_takes_the_place_of_the_reading_and_the_log_keeps_both()
    {
        var id = await Open();
        await Say(id, "red to blue is 1.5 ohm");
        await Say(id, "no, red to blue was 5.1");
        var (_, session) = await service.Get($"/api/sessions/{id}");
        var reading = Assert.Single(session.GetProperty("facts").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "reading");
        Assert.Equal(5.1, reading.GetProperty("ohms").GetDouble());
        var (_, events) = await service.Get($"/api/sessions/{id}/events");
        Assert.Contains("1.5", events.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Undo_takes_back_what_was_said_last()
    {
        var id = await Open();
        await Say(id, "it just hums");
        await Say(id, "1-4 is 3.2 ohm");
        await Say(id, "undo");
        var (_, session) = await service.Get($"/api/sessions/{id}");
        var kinds = session.GetProperty("facts").EnumerateArray().Select(fact => fact.GetProperty("kind").GetString()).ToList();
        Assert.DoesNotContain("reading", kinds);
        Assert.Contains("symptom", kinds);
    }

    [Fact]
    public async Task What_was_not_understood_is_said_back_and_kept()
    {
        var id = await Open();
        var reply = await Say(id, "flurble the grommet zix");
        Assert.NotEmpty(reply.GetProperty("notUnderstood").EnumerateArray());
        var (_, events) = await service.Get($"/api/sessions/{id}/events");
        Assert.Contains("flurble", events.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lead_that_nobody_named_is_refused_with_the_leads_that_there_are()
    {
        var id = await Open();
        await service.Post($"/api/sessions/{id}/facts", new { facts = new[] { new { kind = "lead", tag = "1" }, new { kind = "lead", tag = "2" } } });
        var (status, problem) = await service.PostText($"/api/sessions/{id}/messages", """{"text":"1-9 is 3.2 ohm"}""");
        Assert.Equal((400, "unknown-lead"), (status, problem.GetProperty("type").GetString()));
        Assert.Contains("1, 2", problem.GetProperty("errors").GetProperty("text")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_word_of_the_trade_is_explained()
    {
        var id = await Open();
        var reply = await Say(id, "what is a start winding?");
        Assert.Contains(reply.GetProperty("say").EnumerateArray(), said => said.GetProperty("id").GetString() == "asked.term");
    }

    [Fact]
    public async Task A_session_opens_with_the_first_words_understood()
    {
        var session = await service.Post("/api/sessions", new { role = "homeowner", region = "na", text = "my grinder just hums, 115 volts" });
        Assert.Contains(session.GetProperty("facts").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "symptom");
    }

    private async Task<string> Open() =>
        (await service.Post("/api/sessions", new { role = "technician", region = "na" })).GetProperty("id").GetString()!;

    private Task<JsonElement> Say(string id, string text) => service.Post($"/api/sessions/{id}/messages", new { text });
}
