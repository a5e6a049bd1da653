using System.Text.Json;

namespace WireCoach.Service.Tests.Calc;

public sealed class UnderstandEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/understand";

    [Fact]
    public async Task Words_become_facts_symptoms_and_a_goal()
    {
        var heard = await service.Post(Path, new { text = "3/4 hp 115/230 stirrer motor just hums, no smell. what is wrong with it?", region = "na" });
        Assert.Contains(heard.GetProperty("symptoms").EnumerateArray(), symptom => Id(symptom) == "hums-no-start" && symptom.GetProperty("present").GetBoolean());
        Assert.Contains(heard.GetProperty("symptoms").EnumerateArray(), symptom => Id(symptom) == "smoke-or-burnt-smell" && !symptom.GetProperty("present").GetBoolean());
        Assert.Equal("diagnose", heard.GetProperty("goal").GetString());
        var plate = heard.GetProperty("facts").EnumerateArray().Where(fact => fact.GetProperty("kind").GetString() == "plate").ToList();
        Assert.Equal(0.75, plate.Single(fact => fact.GetProperty("field").GetString() == "horsepower").GetProperty("value").GetDouble());
        Assert.Equal("[115,230]", plate.Single(fact => fact.GetProperty("field").GetString() == "volts").GetProperty("value").GetRawText());
    }

    [Fact]
    public async Task The_open_question_decides_how_a_bare_number_is_read()
    {
        var heard = await service.Post(Path, new { text = "1.7", leads = new[] { "1", "4" }, asked = new { id = "reading.1.4", kind = "reading", about = "resistance", between = new[] { "1", "4" }, text = "From 1 to 4?" } });
        var reading = heard.GetProperty("facts")[0];
        Assert.Equal("reading 1 4 1.7", $"{reading.GetProperty("kind").GetString()} {reading.GetProperty("from").GetString()} {reading.GetProperty("to").GetString()} {reading.GetProperty("ohms").GetDouble()}");
    }

    [Fact]
    public async Task What_is_not_understood_comes_back_in_the_own_words()
    {
        var heard = await service.Post(Path, new { text = "the flibbert is gnarling. 1-4 is 3.2 ohm" });
        Assert.Equal("the flibbert is gnarling", heard.GetProperty("notUnderstood")[0].GetProperty("text").GetString());
        Assert.Equal("reading", heard.GetProperty("facts")[0].GetProperty("kind").GetString());
    }

    [Theory]
    [InlineData("{}", "text", 400)]
    [InlineData("""{"text":5}""", "text", 400)]
    [InlineData("""{"text":"hums","leads":"1"}""", "leads", 400)]
    [InlineData("""{"text":"hums","leads":["1",""]}""", "leads", 400)]
    [InlineData("""{"text":"hums","asked":{"kind":"reading"}}""", "asked.id", 400)]
    [InlineData("""{"text":"hums","asked":{"id":"x","kind":"riddle"}}""", "asked.kind", 400)]
    [InlineData("""{"text":"hums","region":"moon"}""", "region", 400)]
    public async Task A_bad_body_names_the_member(string body, string field, int expected)
    {
        var (status, problem) = await service.PostText(Path, body);
        Assert.Equal(expected, status);
        Assert.Contains(problem.GetProperty("errors").EnumerateObject(), error => error.Name == field);
    }

    [Fact]
    public async Task A_message_that_is_too_long_is_refused_whole()
    {
        var (status, problem) = await service.PostText(Path, JsonSerializer.Serialize(new { text = new string('h', 30_000) }));
        Assert.Equal(413, status);
        Assert.Equal("too-large", problem.GetProperty("type").GetString());
    }

    private static string? Id(JsonElement symptom) => symptom.GetProperty("id").GetString();
}
