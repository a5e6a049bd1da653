namespace WireCoach.Service.Tests.Calc;

public sealed class InsulationEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/insulation";

    [Fact]
    public async Task A_reading_is_corrected_and_judged()
    {
        var answer = await service.Post(Path, new { ratedVolts = 230, kind = "random-wound", readings = new[] { new { megohms = 8, atMinute = 1, celsius = 60, testVolts = 500 } } });
        Assert.Equal(18.013, answer.GetProperty("correctedMegohms").GetProperty("value").GetDouble(), 0.01);
        Assert.Equal(5, answer.GetProperty("minimumMegohms").GetProperty("value").GetDouble());
        Assert.Equal("pass", answer.GetProperty("verdict").GetString());
        Assert.Equal("null", answer.GetProperty("polarizationIndex").GetRawText());
        Assert.NotEmpty(answer.GetProperty("doNext").EnumerateArray());
    }

    [Fact]
    public async Task The_index_of_a_small_motor_does_not_apply()
    {
        var answer = await service.Post(Path, new
        {
            ratedVolts = 230,
            kind = "random-wound",
            readings = new[] { new { megohms = 800, atMinute = 1, celsius = 40, testVolts = 500 }, new { megohms = 880, atMinute = 10, celsius = 40, testVolts = 500 } },
        });
        Assert.NotEmpty(answer.GetProperty("notApplicable").GetString()!);
        Assert.Equal("null", answer.GetProperty("polarizationIndex").GetRawText());
    }

    [Fact]
    public async Task The_earth_path_may_be_asked_alone()
    {
        var answer = await service.Post(Path, new { region = "iec", earthOhms = 0.55, cordMetres = 20 });
        Assert.Equal("fail", answer.GetProperty("verdict").GetString());
        Assert.Equal(0.5, answer.GetProperty("earth").GetProperty("limitOhms").GetProperty("value").GetDouble(), 1e-9);
    }

    [Theory]
    [InlineData("""{"readings":[{"megohms":5}]}""", "ratedVolts")]
    [InlineData("""{"ratedVolts":230}""", "readings")]
    [InlineData("""{"ratedVolts":230,"readings":[]}""", "readings")]
    [InlineData("""{"ratedVolts":230,"readings":[{"celsius":20}]}""", "readings[0].megohms")]
    [InlineData("""{"ratedVolts":230,"readings":[{"megohms":"lots"}]}""", "readings[0].megohms")]
    [InlineData("""{"ratedVolts":230,"readings":[null]}""", "readings[0].megohms")]
    [InlineData("""{"ratedVolts":230,"kind":"wooden","readings":[{"megohms":5}]}""", "kind")]
    [InlineData("""{"earthOhms":-1}""", "earthOhms")]
    [InlineData("""{"ratedVolts":230,"readings":[{"megohms":5}],"earlierMegohms":[9,-1]}""", "earlierMegohms[1]")]
    [InlineData("""{"ratedVolts":230,"readings":[{"megohms":5}],"insulationClass":"Q"}""", "insulationClass")]
    public async Task A_wrong_body_is_refused_by_its_member(string json, string field)
    {
        var (status, body) = await service.PostText(Path, json);
        Assert.Equal(400, status);
        Assert.Contains(body.GetProperty("errors").EnumerateObject(), error => error.Name == field);
    }
}
