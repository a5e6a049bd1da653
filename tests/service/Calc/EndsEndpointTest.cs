using System.Text.Json;

namespace WireCoach.Service.Tests.Calc;

public sealed class EndsEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/ends";

    private static readonly object[] Windings =
    [
        new { role = "run", leads = new[] { "1", "4" }, ohms = 1.5 },
        new { role = "run", leads = new[] { "2", "6" }, ohms = 1.5 },
        new { role = "start", leads = new[] { "3", "5" }, ohms = 3.4 },
    ];

    private static readonly string[] Instruments = ["multimeter", "low-voltage-ac"];

    [Fact]
    public async Task Without_results_the_next_test_comes_with_set_up_and_readings()
    {
        var answer = await service.Post(Path, new { layout = "capacitor-start-dual-6", windings = Windings, instruments = Instruments });
        Assert.Equal("needs-test", answer.GetProperty("status").GetString());
        var next = answer.GetProperty("next");
        Assert.Equal("series-voltage", next.GetProperty("test").GetString());
        Assert.Equal(12, next.GetProperty("setup").GetProperty("appliedVolts").GetDouble());
        Assert.Equal("Between 9.6 V and 15 V", next.GetProperty("expect")[2].GetProperty("when").GetString());
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("assignment").ValueKind);
    }

    [Fact]
    public async Task A_reading_between_the_free_ends_settles_which_are_alike()
    {
        var answer = await service.Post(Path, new
        {
            windings = Windings,
            instruments = Instruments,
            results = new[] { new { test = "series-voltage", between = new[] { "1", "6" }, value = 18.4 } },
        });
        Assert.Equal("settled", answer.GetProperty("status").GetString());
        Assert.Equal("1", answer.GetProperty("alike")[0][0].GetString());
        Assert.Equal("2", answer.GetProperty("alike")[0][1].GetString());
        Assert.Equal("4", answer.GetProperty("assignment").GetProperty("T2").GetString());
    }

    [Theory]
    [InlineData("{}", "windings")]
    [InlineData("""{"windings":[]}""", "windings")]
    [InlineData("""{"windings":[{"role":"run","leads":["1"]}]}""", "windings[0].leads")]
    [InlineData("""{"windings":[{"leads":["1","2"]}]}""", "windings[0].role")]
    [InlineData("""{"windings":[{"role":"run","leads":["1","2"]},{"role":"run","leads":["3","4"]}],"layout":"three-legged"}""", "layout")]
    [InlineData("""{"windings":[{"role":"run","leads":["1","2"]},{"role":"run","leads":["3","4"]}],"results":[{"test":"guess","between":["1","4"],"value":3}]}""", "results[0].test")]
    [InlineData("""{"windings":[{"role":"run","leads":["1","2"]},{"role":"run","leads":["3","4"]}],"results":[{"test":"series-voltage","between":["1","9"],"value":3}]}""", "results[0].between")]
    [InlineData("""{"windings":[{"role":"run","leads":["1","2"]},{"role":"run","leads":["3","4"]}],"results":[{"test":"series-voltage","between":["1","4"],"value":-3}]}""", "results[0].value")]
    [InlineData("""{"windings":[{"role":"run","leads":["1","2"]},{"role":"run","leads":["3","4"]}],"results":[{"test":"series-voltage","between":["1","4"]}]}""", "results[0].value")]
    public async Task A_bad_body_is_refused_with_the_member_named(string body, string field)
    {
        var (status, problem) = await service.PostText(Path, body);
        Assert.Equal(400, status);
        Assert.True(problem.GetProperty("errors").TryGetProperty(field, out _), problem.ToString());
    }

    [Fact]
    public async Task A_wrong_type_is_refused() => Assert.Equal(400, (await service.PostText(Path, """{"windings":"all of them"}""")).Status);
}
