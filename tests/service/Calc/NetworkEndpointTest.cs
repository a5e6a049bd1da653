using System.Text.Json;

namespace WireCoach.Service.Tests.Calc;

public sealed class NetworkEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/network";

    [Fact]
    public async Task A_network_answers_the_phasors_of_nodes_and_elements()
    {
        var answer = await service.Post(Path, new
        {
            hertz = 60,
            ground = "0",
            elements = new object[]
            {
                new { id = "V", kind = "voltage-source", between = new[] { "a", "0" }, volts = 12 },
                new { id = "R", kind = "resistor", between = new[] { "a", "m" }, ohms = 3 },
                new { id = "L1", kind = "inductor", between = new[] { "m", "n" }, henries = 0.04 },
                new { id = "L2", kind = "inductor", between = new[] { "n", "0" }, henries = 0.04 },
            },
            couplings = new[] { new { first = "L1", second = "L2", coefficient = 0.9 } },
        });
        // Series aiding: 3 + jω(2L + 2M) = 3 + j57.302 Ω, so 12 V drive 0.2091280 A at −87.003°.
        var amps = answer.GetProperty("elements").GetProperty("R").GetProperty("amps");
        Assert.Equal(0.209127995 * Math.Cos(-87.00309577 * Math.PI / 180), amps.GetProperty("re").GetDouble(), 1e-8);
        Assert.Equal(0.209127995 * Math.Sin(-87.00309577 * Math.PI / 180), amps.GetProperty("im").GetDouble(), 1e-8);
        Assert.Equal(12, answer.GetProperty("nodes").GetProperty("a").GetProperty("re").GetDouble(), 1e-12);
    }

    [Fact]
    public async Task Ohmmeter_pairs_are_answered_in_the_order_asked_and_open_is_null()
    {
        var answer = await service.Post(Path, new
        {
            hertz = 0,
            elements = new object[]
            {
                new { id = "A", kind = "resistor", between = new[] { "T1", "T4" }, ohms = 2.0 },
                new { id = "B", kind = "resistor", between = new[] { "T2", "T5" }, ohms = (double?)null },
                new { id = "J", kind = "resistor", between = new[] { "T4", "T7" }, ohms = 0.0 },
            },
            ohmmeter = new[] { new[] { "T7", "T1" }, ["T2", "T5"], ["T4", "T7"], ["T1", "T9"] },
        });
        var read = answer.GetProperty("ohmmeter").EnumerateArray().ToList();
        Assert.Equal(["T7", "T1"], read[0].GetProperty("between").EnumerateArray().Select(lead => lead.GetString()!));
        Assert.Equal(["2", "null", "0", "null"], read.Select(pair => pair.GetProperty("ohms").GetRawText()));
    }

    [Theory]
    [InlineData("""{"hertz":60,"ground":"0"}""", "invalid-fact", "elements")]
    [InlineData("""{"hertz":60,"ground":"0","elements":[{"id":"R","kind":"resistor","between":["a","0"]}]}""", "invalid-fact", "elements[0].ohms")]
    [InlineData("""{"hertz":60,"ground":"0","elements":[{"id":"R","kind":"resistor","between":["a","0"],"ohms":-1}]}""", "invalid-fact", "elements[0].ohms")]
    [InlineData("""{"hertz":60,"ground":"0","elements":[{"id":"R","kind":"resistor","between":["a","0"],"ohms":"five"}]}""", "invalid-fact", "elements[0].ohms")]
    [InlineData("""{"hertz":60,"ground":"0","elements":[{"id":"R","kind":"memristor","between":["a","0"],"ohms":1}]}""", "invalid-fact", "elements[0].kind")]
    [InlineData("""{"hertz":60,"ground":"0","elements":[{"id":"R","kind":"resistor","between":["a"],"ohms":1}]}""", "invalid-fact", "elements[0].between")]
    [InlineData("""{"hertz":60,"ground":"0","elements":[null]}""", "invalid-fact", "elements[0]")]
    [InlineData("""{"hertz":60,"ground":"x","elements":[{"id":"R","kind":"resistor","between":["a","0"],"ohms":1}]}""", "impossible-network", "ground")]
    [InlineData("""{"hertz":60,"elements":[{"id":"R","kind":"resistor","between":["a","0"],"ohms":1}],"ohmmeter":[["a","0"]]}""", "invalid-fact", "hertz")]
    [InlineData("""{"hertz":0,"elements":[{"id":"V","kind":"voltage-source","between":["a","0"],"volts":1}],"ohmmeter":[["a","0"]]}""", "impossible-network", "elements[0]")]
    [InlineData("""{"hertz":60,"ground":"0","elements":[{"id":"V","kind":"voltage-source","between":["a","0"],"volts":1},{"id":"W","kind":"voltage-source","between":["a","0"],"volts":2}]}""", "impossible-network", "elements[1]")]
    [InlineData("""{"hertz":1e999,"ground":"0","elements":[{"id":"R","kind":"resistor","between":["a","0"],"ohms":1}]}""", "invalid-fact", "hertz")]
    [InlineData("not json", "invalid-fact", "body")]
    public async Task A_wrong_body_is_refused_by_its_member(string json, string type, string field)
    {
        var (status, problem) = await service.PostText(Path, json);
        Assert.Equal(400, status);
        Assert.Equal(type, problem.GetProperty("type").GetString());
        Assert.Contains(field, problem.GetProperty("errors").EnumerateObject().Select(member => member.Name));
    }

    [Fact]
    public async Task The_same_body_gives_the_same_bytes()
    {
        const string Json = """{"hertz":60,"ground":"0","elements":[{"id":"V","kind":"voltage-source","between":["a","0"],"volts":1},{"id":"R","kind":"resistor","between":["a","0"],"ohms":3}]}""";
        Assert.Equal((await service.PostText(Path, Json)).Body.GetRawText(), (await service.PostText(Path, Json)).Body.GetRawText());
    }

    [Fact]
    public async Task The_calculators_stand_in_the_OpenAPI_document()
    {
        var document = JsonDocument.Parse(await service.Client.GetStringAsync("/openapi/v1.json", TestContext.Current.CancellationToken));
        Assert.True(document.RootElement.GetProperty("paths").TryGetProperty(Path, out _));
    }
}
