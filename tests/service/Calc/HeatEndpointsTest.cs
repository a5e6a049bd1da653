namespace WireCoach.Service.Tests.Calc;

public sealed class HeatEndpointsTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task A_rise_is_judged_by_its_class()
    {
        var answer = await service.Post("/api/calc/winding-heat", new { coldOhms = 10, coldCelsius = 20, hotOhms = 12.6, ambientCelsius = 24, insulationClass = "B" });
        Assert.Equal(62.17, answer.GetProperty("riseKelvin").GetProperty("value").GetDouble(), 0.01);
        Assert.Equal(80, answer.GetProperty("limitKelvin").GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal(17.83, answer.GetProperty("marginKelvin").GetProperty("value").GetDouble(), 0.01);
        Assert.Equal(86.17, answer.GetProperty("hotCelsius").GetProperty("value").GetDouble(), 0.01);
        Assert.Equal("pass", answer.GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task A_resistance_is_carried()
    {
        var answer = await service.Post("/api/calc/winding-heat", new { ohms = 2.5, fromCelsius = 25, toCelsius = 40, material = "copper" });
        Assert.Equal(2.6445, answer.GetProperty("ohms").GetProperty("value").GetDouble(), 0.0005);
    }

    [Fact]
    public async Task Unequal_volts_are_judged()
    {
        var answer = await service.Post("/api/calc/unbalance", new { volts = new[] { 462, 463, 455 } });
        Assert.Equal(1.087, answer.GetProperty("percent").GetProperty("value").GetDouble(), 0.01);
        Assert.Equal(0.995, answer.GetProperty("derating").GetProperty("value").GetDouble(), 0.01);
        Assert.Equal("null", answer.GetProperty("follows").GetRawText());
    }

    [Fact]
    public async Task The_roll_test_says_what_the_current_follows()
    {
        var answer = await service.Post("/api/calc/unbalance", new { roll = new[] { new[] { 22, 18, 18 }, [22, 18, 18], [22, 18, 18] } });
        Assert.Equal("supply", answer.GetProperty("follows").GetString());
        Assert.Equal("null", answer.GetProperty("derating").GetRawText());
    }

    [Theory]
    [InlineData("winding-heat", """{"coldOhms":10}""", "hotOhms")]
    [InlineData("winding-heat", """{"ohms":10}""", "fromCelsius")]
    [InlineData("winding-heat", """{"ohms":10,"fromCelsius":20,"toCelsius":40,"material":"tin"}""", "material")]
    [InlineData("winding-heat", """{"coldOhms":10,"coldCelsius":20,"hotOhms":9,"ambientCelsius":40,"insulationClass":"B"}""", "hotOhms")]
    [InlineData("winding-heat", """{"coldOhms":"ten"}""", "coldOhms")]
    [InlineData("unbalance", "{}", "volts")]
    [InlineData("unbalance", """{"volts":[230,230]}""", "volts")]
    [InlineData("unbalance", """{"volts":[230,-1,230]}""", "volts")]
    [InlineData("unbalance", """{"volts":[230,230,230],"amps":[1,1,1]}""", "amps")]
    [InlineData("unbalance", """{"roll":[[1,2,3]]}""", "roll")]
    [InlineData("unbalance", """{"roll":[[1,2,3],[1,2,3],null]}""", "roll[2]")]
    public async Task A_wrong_body_is_refused_by_its_member(string calculator, string json, string field)
    {
        var (status, body) = await service.PostText($"/api/calc/{calculator}", json);
        Assert.Equal(400, status);
        Assert.Contains(body.GetProperty("errors").EnumerateObject(), error => error.Name == field);
    }
}
