using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>Insulation over several sessions of one motor.</summary>
public sealed class InsulationTrendTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task A_fall_by_half_since_the_last_session_is_said_in_the_reply_both_at_forty_degrees()
    {
        await Measured("Brine pump 1", "insulation all leads to frame 120 megohm at 40 C, 500 V");
        var said = await Measured("brine pump 1", "insulation all leads to frame 120 megohm at 20 C, 500 V"); // 30 MΩ at 40 °C
        Assert.Contains(said, sentence => sentence.GetProperty("id").GetString() == "insulation.falling"
            && sentence.GetProperty("text").GetString() is { } text && text.Contains("120 MΩ", StringComparison.Ordinal) && text.Contains("30 MΩ", StringComparison.Ordinal)
            && sentence.GetProperty("quotes").EnumerateArray().Any(quote => quote.GetProperty("rule").GetString() == "insulation-trend"));
    }

    [Fact]
    public async Task A_reading_that_holds_is_said_to_hold_and_three_sessions_are_named_in_their_order()
    {
        await Measured("stirrer 2", "insulation 400 megohm at 40 C, 500 V");
        await Measured("stirrer 2", "insulation 300 megohm at 40 C, 500 V");
        var said = await Measured("stirrer 2", "insulation 280 megohm at 40 C, 500 V");
        Assert.Contains(said, sentence => sentence.GetProperty("id").GetString() == "insulation.steady"
            && sentence.GetProperty("text").GetString()!.Contains("400 MΩ, 300 MΩ, 280 MΩ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_reading_without_its_temperature_asks_for_it_and_then_tells_the_trend()
    {
        await Measured("conveyor", "insulation 400 megohm at 40 C, 500 V");
        var id = await Open("technician", "conveyor");
        var reply = await service.Post($"/api/sessions/{id}/facts", new { facts = new[] { new { kind = "insulation", megohms = 300, testVolts = 500 } } });
        Assert.Contains(Said(reply), sentence => sentence.GetProperty("id").GetString() == "insulation.trend-needs-temperature");

        var known = await service.Post($"/api/sessions/{id}/facts", new { facts = new[] { new { kind = "insulation", megohms = 300, testVolts = 500, celsius = 20, replaces = reply.GetProperty("understood")[0].GetProperty("factId").GetString() } } });
        Assert.Contains(Said(known), sentence => sentence.GetProperty("id").GetString() == "insulation.falling");
    }

    [Theory]
    [InlineData("technician", "another motor")]
    [InlineData("homeowner", "cheese vat")]
    [InlineData("apprentice", "cheese vat")]
    public async Task Another_motor_and_those_who_see_only_their_own_sessions_get_no_trend(string role, string motor)
    {
        await Measured("cheese vat", "insulation 400 megohm at 40 C, 500 V");
        var id = await Open(role, motor);
        var reply = await service.Post($"/api/sessions/{id}/facts", new { facts = new[] { new { kind = "insulation", megohms = 100, testVolts = 500, celsius = 40, earlierMegohms = new[] { 900 } } } });
        Assert.NotEmpty(Said(reply));
        Assert.DoesNotContain("900", reply.GetRawText(), StringComparison.Ordinal);
        Assert.DoesNotContain(Said(reply), sentence => sentence.GetProperty("text").GetString()!.Contains("session", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_was_compared_stays_with_the_reading_when_the_earlier_session_is_gone()
    {
        await Measured("churn", "insulation 400 megohm at 40 C, 500 V");
        var id = await Open("technician", "churn");
        await service.Post($"/api/sessions/{id}/messages", new { text = "insulation 100 megohm at 40 C, 500 V" });
        var (_, session) = await service.Get($"/api/sessions/{id}");
        var fact = Assert.Single(session.GetProperty("facts").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "insulation");
        Assert.Equal(400, Assert.Single(fact.GetProperty("earlierMegohms").EnumerateArray()).GetDouble());
    }

    private static List<JsonElement> Said(JsonElement reply) => [.. reply.GetProperty("say").EnumerateArray()];

    private async Task<List<JsonElement>> Measured(string motor, string text)
    {
        var id = await Open("technician", motor);
        return Said(await service.Post($"/api/sessions/{id}/messages", new { text }));
    }

    private async Task<string> Open(string role, string motorTag) =>
        (await service.Post("/api/sessions", new { role, region = "na", motorTag, motor = new { volts = new[] { 230 }, amps = new[] { 5.2 } } })).GetProperty("id").GetString()!;
}
