using System.Text.Json;

namespace WireCoach.Service.Tests.Calc;

public sealed class ConnectEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/connect";

    private static readonly Dictionary<string, string> SixLeads = new()
    {
        ["T1"] = "1", ["T2"] = "4", ["T3"] = "2", ["T4"] = "6", ["T5"] = "5", ["T8"] = "3",
    };

    [Fact]
    public async Task A_plan_answers_joints_volts_ohms_steps_and_the_exchange()
    {
        var plan = await service.Post(Path, new
        {
            layout = "capacitor-start-dual-6",
            leads = SixLeads,
            plate = new { volts = "115/230", amps = new[] { 10.4, 5.2 }, hertz = 60 },
            supply = new { volts = 240, phases = 1, hertz = 60, system = "split-phase" },
            coilOhms = new { run = 1.5, start = 3.4 },
        });
        Assert.Equal(
            ["J1 1 L1", "J2 6+5 L2", "J3 4+2+3 -"],
            plan.GetProperty("joints").EnumerateArray().Select(joint =>
                $"{joint.GetProperty("name").GetString()} {string.Join('+', Texts(joint.GetProperty("leads")))} {joint.GetProperty("conductor").GetString() ?? "-"}"));
        Assert.Equal(0, plan.GetProperty("capped").GetArrayLength());
        Assert.Equal(5.2, plan.GetProperty("lineAmps").GetDouble());
        Assert.Equal([120.0, 120.0, 120.0], plan.GetProperty("perWinding").EnumerateArray().Select(winding => winding.GetProperty("volts").GetDouble()));
        Assert.Equal(["3", "5"], Texts(plan.GetProperty("reverse").GetProperty("swap")[0]).Order(StringComparer.Ordinal));
        Assert.Equal(3.0, plan.GetProperty("expectedOhms")[0].GetProperty("ohms").GetDouble(), 1e-9);
        Assert.Contains("join 4 + 2 + 3 with each other and with nothing else", string.Join('\n', Texts(plan.GetProperty("steps"))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_connection_that_the_layout_has_not_is_wrong_and_nothing_is_missing()
    {
        var (status, problem) = await service.PostText(Path, """{"layout":"capacitor-start-dual-6","leads":{"T1":"1","T2":"2","T3":"3","T4":"4","T5":"5","T8":"8"},"plate":{"volts":[115,230]},"supply":{"volts":230,"phases":1},"connection":"sideways"}""");
        Assert.Equal((400, "invalid-fact"), ((int)status, problem.GetProperty("type").GetString()));
        Assert.Equal("connection", Assert.Single(problem.GetProperty("errors").EnumerateObject()).Name);
        Assert.False(problem.TryGetProperty("missing", out _));
    }

    [Fact]
    public async Task What_is_missing_is_named()
    {
        var (status, problem) = await service.PostText(Path, """{"layout":"capacitor-start-dual-6","leads":{"T1":"1","T2":"4","T3":"2","T4":"6","T5":"5"}}""");
        Assert.Equal(409, status);
        Assert.Equal("not-ready", problem.GetProperty("type").GetString());
        Assert.Equal(["leads.T8", "supply.volts", "supply.phases", "plate.volts"], Texts(problem.GetProperty("missing")));
    }

    [Theory]
    [InlineData("""{"leads":{}}""", "layout")]
    [InlineData("""{"layout":"capacitor-start-4"}""", "leads")]
    [InlineData("""{"layout":"no-such","leads":{}}""", "layout")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{"T9":"1"}}""", "leads.T9")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{"T1":"1","T4":"1"}}""", "leads.T4")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"rotation":"left"}""", "rotation")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"supply":{"volts":-1}}""", "supply.volts")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"supply":{"volts":"many"}}""", "supply.volts")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"supply":{"volts":115,"phases":2}}""", "supply.phases")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"plate":{"volts":[115,0]}}""", "plate.volts")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"windings":[{"leads":["1"],"ohms":2}]}""", "windings[0]")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{"T1":"1","t1":"2"}}""", "leads.t1")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{"T1":"1","U1":"2"}}""", "leads.U1")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"supply":{"volts":1e400}}""", "supply.volts")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"plate":{"hertz":-60}}""", "plate.hertz")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"plate":{"horsepower":1e400}}""", "plate.horsepower")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"coilOhms":{"run":0}}""", "coilOhms.run")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{},"coilOhms":{"rnu":1}}""", "coilOhms.rnu")]
    [InlineData("""{"layout":"capacitor-start-4","leads":{"T1":"a","T4":"b"},"windings":[{"leads":["a","c"],"ohms":2}]}""", "windings")]
    [InlineData("[]", "body")]
    public async Task A_wrong_member_is_named(string json, string field)
    {
        var (status, problem) = await service.PostText(Path, json);
        Assert.InRange(status, 400, 409);
        Assert.Contains(field, problem.GetProperty("errors").EnumerateObject().Select(error => error.Name));
    }

    private static IEnumerable<string> Texts(JsonElement array) => array.EnumerateArray().Select(text => text.GetString()!);
}
