namespace WireCoach.Service.Tests.Calc;

public sealed class CapacitorEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/capacitor";

    [Fact]
    public async Task A_capacitor_is_judged_and_replacements_are_sorted()
    {
        var answer = await service.Post(Path, new
        {
            microfarads = 40,
            volts = 370,
            use = "run",
            measured = new { volts = 330, amps = 4.2, hertz = 60 },
            candidates = new[] { new { microfarads = 40, volts = 440, use = "run" }, new { microfarads = 40, volts = 440, use = "start" } },
        });
        Assert.Equal(33.76, answer.GetProperty("measuredMicrofarads").GetProperty("value").GetDouble(), 0.02);
        Assert.Equal("weak", answer.GetProperty("verdict").GetString());
        Assert.Equal(36, answer.GetProperty("band").GetProperty("low").GetProperty("value").GetDouble(), 1e-9);
        var replacements = answer.GetProperty("replacements").EnumerateArray().ToList();
        Assert.True(replacements[0].GetProperty("allowed").GetBoolean());
        Assert.False(replacements[1].GetProperty("allowed").GetBoolean());
        Assert.Contains("bursts", replacements[1].GetProperty("why").GetString(), StringComparison.Ordinal);
        Assert.Equal(440, replacements[1].GetProperty("candidate").GetProperty("volts").GetDouble());
    }

    [Fact]
    public async Task Sets_energy_and_discharge_are_worked_out()
    {
        var sets = await service.Post(Path, new { series = new[] { 200, 200 } });
        Assert.Equal(100, sets.GetProperty("combinedMicrofarads").GetProperty("value").GetDouble(), 1e-9);
        var answer = await service.Post(Path, new { microfarads = 400, bleedOhms = 15000, fromVolts = 169.7, toVolts = 50 });
        Assert.Equal(7.33, answer.GetProperty("bleedSeconds").GetProperty("value").GetDouble(), 0.02);
        Assert.Equal(1.920, answer.GetProperty("bleedWatts").GetProperty("value").GetDouble(), 0.002);
        Assert.Equal("second", answer.GetProperty("bleedSeconds").GetProperty("unit").GetString());
        Assert.Equal("joule", answer.GetProperty("energyJoules").GetProperty("unit").GetString());
    }

    [Fact]
    public async Task A_printed_range_is_its_own_band()
    {
        var answer = await service.Post(Path, new { microfarads = "189-227", use = "start", volts = 250, measured = new { microfarads = 180 } });
        Assert.Equal("weak", answer.GetProperty("verdict").GetString());
        Assert.Equal(227, answer.GetProperty("band").GetProperty("high").GetProperty("value").GetDouble());
    }

    [Theory]
    [InlineData("{}", "microfarads")]
    [InlineData("""{"microfarads":-4}""", "microfarads")]
    [InlineData("""{"microfarads":"lots"}""", "microfarads")]
    [InlineData("""{"microfarads":40,"use":"lamp"}""", "use")]
    [InlineData("""{"microfarads":40,"measured":{"volts":230}}""", "measured.amps")]
    [InlineData("""{"microfarads":40,"measured":{"volts":230,"amps":4}}""", "measured.hertz")]
    [InlineData("""{"series":[{"volts":440}]}""", "series[0].microfarads")]
    [InlineData("""{"series":[40],"parallel":[40]}""", "parallel")]
    [InlineData("""{"microfarads":40,"bleedOhms":1000,"fromVolts":50,"toVolts":300}""", "toVolts")]
    [InlineData("""{"microfarads":40,"volts":"many"}""", "volts")]
    public async Task A_wrong_body_is_refused_by_its_member(string json, string field)
    {
        var (status, body) = await service.PostText(Path, json);
        Assert.InRange(status, 400, 409);
        Assert.Contains(body.GetProperty("errors").EnumerateObject(), error => error.Name == field);
    }
}
