namespace WireCoach.Service.Tests.Calc;

public sealed class SupplyEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/supply";

    [Fact]
    public async Task A_north_american_motor_is_planned()
    {
        var answer = await service.Post(Path, new
        {
            region = "na", phases = 1, volts = 115, horsepower = 1.5, plateAmps = 17.0, serviceFactor = 1.15, insulationCelsius = 60, lengthMetres = 30, protection = "dual-element-fuse",
        });
        Assert.Equal(20, Value("tableAmps"));
        Assert.Equal(25, Value("conductorAmps"));
        Assert.Equal("10 AWG", answer.GetProperty("conductor").GetProperty("size").GetProperty("text").GetString());
        Assert.Equal(60, Value("conductor", "celsiusColumn"));
        Assert.Equal(21.25, Value("overloadAmps"), 0.01);
        Assert.Equal(23.80, Value("overloadCeilingAmps"), 0.01);
        Assert.Equal(35, Value("protection", "amps"), 1e-9);
        Assert.Equal(35, Value("protection", "standardAmps"));
        Assert.Equal(45, Value("protection", "ceilingAmps"));
        Assert.Equal("10 AWG", answer.GetProperty("earthConductor").GetProperty("size").GetProperty("text").GetString());
        Assert.True(Value("voltageDrop", "percent") < Value("voltageDrop", "startingPercent"));
        Assert.Contains("2023", answer.GetProperty("conductorAmps").GetProperty("source").GetString(), StringComparison.Ordinal);
        Assert.Equal("code-deferral", answer.GetProperty("protection").GetProperty("amps").GetProperty("caution").GetString());
        Assert.Contains(answer.GetProperty("notes").EnumerateArray(), note => note.GetString()!.Contains("inspector", StringComparison.Ordinal));

        double Value(params string[] path) => path.Aggregate(answer, (element, name) => element.GetProperty(name)).GetProperty("value").GetDouble();
    }

    [Fact]
    public async Task A_motor_elsewhere_is_planned()
    {
        var answer = await service.Post(Path, new { region = "iec", phases = 3, volts = 400, kilowatts = 4, plateAmps = 8.5, insulationCelsius = 70, lengthMetres = 20, protection = "circuit-breaker-c" });
        Assert.Equal("square-millimetre", answer.GetProperty("conductor").GetProperty("size").GetProperty("unit").GetString());
        Assert.Equal(8.5, answer.GetProperty("overloadAmps").GetProperty("value").GetDouble());
        Assert.Equal(13, answer.GetProperty("protection").GetProperty("standardAmps").GetProperty("value").GetDouble());
        Assert.Equal(230 / 130.0, answer.GetProperty("loopOhms").GetProperty("value").GetDouble(), 1e-9);
    }

    [Fact]
    public async Task A_fraction_and_an_edition_are_read()
    {
        var answer = await service.Post(Path, new { region = "na", phases = 3, volts = 230, horsepower = "1/2", edition = "NEC 2020", protection = "inverse-time-breaker" });
        Assert.Equal(15, answer.GetProperty("protection").GetProperty("standardAmps").GetProperty("value").GetDouble());
        Assert.Equal("NEC 2020", answer.GetProperty("edition").GetString());
    }

    [Theory]
    [InlineData("{}", "region")]
    [InlineData("""{"region":"mars","phases":1,"volts":115,"horsepower":1}""", "region")]
    [InlineData("""{"region":"na","phases":1,"volts":115}""", "horsepower")]
    [InlineData("""{"region":"na","phases":2,"volts":115,"horsepower":1}""", "phases")]
    [InlineData("""{"region":"na","phases":1,"volts":115,"horsepower":40}""", "horsepower")]
    [InlineData("""{"region":"na","phases":3,"volts":400,"horsepower":5}""", "volts")]
    [InlineData("""{"region":"na","phases":1,"volts":115,"horsepower":-1}""", "horsepower")]
    [InlineData("""{"region":"na","phases":1,"volts":115,"horsepower":"big"}""", "horsepower")]
    [InlineData("""{"region":"na","phases":1,"volts":115,"horsepower":1,"insulationCelsius":70}""", "insulationCelsius")]
    [InlineData("""{"region":"na","phases":1,"volts":115,"horsepower":1,"insulationCelsius":60,"ambientCelsius":65}""", "ambientCelsius")]
    [InlineData("""{"region":"na","phases":1,"volts":115,"horsepower":1,"protection":"hope"}""", "protection")]
    [InlineData("""{"region":"na","phases":1,"volts":115,"horsepower":1,"kilowatts":5}""", "kilowatts")]
    [InlineData("""{"region":"iec","phases":3,"volts":400,"kilowatts":4,"lengthMetres":-5}""", "lengthMetres")]
    [InlineData("""{"region":"iec","phases":3,"volts":400,"kilowatts":90}""", "kilowatts")]
    public async Task A_wrong_body_is_refused_by_its_member(string json, string field)
    {
        var (status, body) = await service.PostText(Path, json);
        Assert.Equal(400, status);
        Assert.Contains(body.GetProperty("errors").EnumerateObject(), error => error.Name == field);
    }
}
