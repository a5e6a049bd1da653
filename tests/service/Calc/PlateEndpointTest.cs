using System.Text.Json;

namespace WireCoach.Service.Tests.Calc;

public sealed class PlateEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/plate";

    [Fact]
    public async Task A_plate_answers_quoted_values()
    {
        var answer = await service.Post(Path, new { phases = 3, volts = new[] { 230, 460 }, amps = new[] { 25.8, 12.9 }, horsepower = 10, rpm = 1750, hertz = 60, serviceFactor = 1.15, codeLetter = "H" });
        Assert.Equal(4, Value(answer.GetProperty("poles")));
        Assert.Equal(1800, Value(answer.GetProperty("synchronousRpm")));
        Assert.Equal(2.778, Value(answer.GetProperty("slipPercent")), 0.001);
        Assert.Equal(40.69, Value(answer.GetProperty("ratedTorque")), 0.01);
        Assert.Equal(158.1, Value(answer.GetProperty("lockedRotorAmps").GetProperty("low")), 0.1);
        Assert.Equal(178.0, Value(answer.GetProperty("lockedRotorAmps").GetProperty("high")), 0.1);
        Assert.Empty(answer.GetProperty("findings").EnumerateArray());
        var quoted = answer.GetProperty("ratedTorque");
        Assert.Equal("newton-metre", quoted.GetProperty("unit").GetString());
        Assert.Equal("40.7 N·m", quoted.GetProperty("text").GetString());
        Assert.Equal("code-deferral", quoted.GetProperty("caution").GetString());
        Assert.NotEmpty(quoted.GetProperty("source").GetString()!);
        Assert.NotEmpty(quoted.GetProperty("trail").EnumerateArray());
    }

    [Fact]
    public async Task A_plate_as_people_write_it_is_read()
    {
        var answer = await service.Post(Path, new { phases = "1", volts = "115/230", amps = "9.8/4.9", horsepower = "1/2", rpm = 1725, codeLetter = "L", duty = "CONT" });
        Assert.Equal(4, Value(answer.GetProperty("poles")));
        Assert.Empty(answer.GetProperty("findings").EnumerateArray());
    }

    [Fact]
    public async Task A_disagreement_says_which_and_why()
    {
        var answer = await service.Post(Path, new { phases = 1, volts = 120, amps = 15, horsepower = 5 });
        var finding = answer.GetProperty("findings").EnumerateArray().Single(found => found.GetProperty("id").GetString() == "PC-IMIN");
        Assert.Contains("peak power", finding.GetProperty("why").GetString(), StringComparison.Ordinal);
        Assert.Contains("31.1 A", finding.GetProperty("why").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{}", "volts")]
    [InlineData("""{"volts":-115}""", "volts")]
    [InlineData("""{"rpm":"fast"}""", "rpm")]
    [InlineData("""{"rpm":{"value":5}}""", "rpm")]
    [InlineData("""{"phases":2}""", "phases")]
    [InlineData("""{"hertz":0}""", "hertz")]
    [InlineData("""{"volts":[115,null]}""", "volts")]
    public async Task A_wrong_field_is_named(string json, string field)
    {
        var (status, body) = await service.PostText(Path, json);
        Assert.InRange(status, 400, 409);
        Assert.StartsWith(field, body.GetProperty("errors").EnumerateObject().First().Name, StringComparison.Ordinal);
    }

    private static double Value(JsonElement quoted) => quoted.GetProperty("value").GetDouble();
}
