using System.Text.Json;

namespace WireCoach.Service.Tests.Calc;

public sealed class DiagnoseEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/diagnose";

    [Fact]
    public async Task A_pump_that_hums_and_starts_when_spun_has_its_start_branch_suspected()
    {
        var answer = await service.Post(Path, new
        {
            role = "technician",
            machine = new { layout = "capacitor-start-dual-6" },
            symptoms = new[] { new { id = "hums-no-start", present = true }, new { id = "starts-if-spun", present = true } },
            results = new object[] { new { test = "capacitor-look", outcome = "sound" }, new { test = "turn-by-hand", outcome = "free" }, new { test = "look-and-smell", outcome = "nothing" } },
        });
        string[] first = [.. answer.GetProperty("causes").EnumerateArray().Take(3).Select(cause => cause.GetProperty("id").GetString()!)];
        Assert.Contains("start-switch-stuck-open", first);
        Assert.Contains("start-capacitor-open", first);
        Assert.NotEmpty(answer.GetProperty("causes")[0].GetProperty("for").EnumerateArray());
        var next = answer.GetProperty("next");
        Assert.Contains("isolate", next.GetProperty("how")[0].GetString(), StringComparison.Ordinal);
        Assert.True(next.GetProperty("outcomes").GetArrayLength() >= 2);
        Assert.Contains("discharge-capacitor", Cautions(answer));
    }

    [Fact]
    public async Task Plain_words_do_as_well_as_symptoms()
    {
        var answer = await service.Post(Path, new { role = "homeowner", text = "my grinder just hums and if i give the wheel a flick it goes. got a tingle off the case too" });
        Assert.True(answer.GetProperty("gate").GetProperty("stop").GetBoolean());
        Assert.Equal("stop-shock", Cautions(answer)[0]);
        Assert.Contains("rotating-parts", Cautions(answer));
        Assert.Contains("no-live-work", Cautions(answer));
    }

    [Fact]
    public async Task Volts_and_amps_of_a_capacitor_are_turned_into_a_verdict()
    {
        var answer = await service.Post(Path, new
        {
            role = "technician",
            machine = new { family = "permanent split capacitor" },
            symptoms = new[] { new { id = "hums-no-start", present = true }, new { id = "starts-if-spun", present = true } },
            facts = new object[] { new { kind = "capacitor", microfarads = 30, volts = 440, use = "run" } },
            results = new object[] { new { test = "capacitance", value = new { volts = 230, amps = 0.7, hertz = 60 } } },
        });
        // 0.7 A at 230 V and 60 Hz is 8.07 µF, a quarter of the mark
        Assert.Equal("run-capacitor-weak", answer.GetProperty("causes")[0].GetProperty("id").GetString());
        Assert.InRange(answer.GetProperty("causes")[0].GetProperty("probability").GetDouble(), 0.5, 1);
    }

    [Fact]
    public async Task Three_currents_are_judged_by_their_spread()
    {
        var answer = await service.Post(Path, new
        {
            role = "technician",
            machine = new { phases = 3 },
            symptoms = new[] { new { id = "hums-no-start", present = true } },
            results = new object[] { new { test = "line-currents", value = new[] { 14.2, 13.9, 0 } } },
        });
        Assert.Equal("lost-phase", answer.GetProperty("causes")[0].GetProperty("id").GetString());
    }

    [Fact]
    public async Task A_person_at_home_is_stopped_and_referred_after_a_shock()
    {
        var answer = await service.Post(Path, new { role = "homeowner", symptoms = new[] { new { id = "shock-from-frame", present = true } } });
        var gate = answer.GetProperty("gate");
        Assert.True(gate.GetProperty("stop").GetBoolean());
        Assert.True(gate.GetProperty("referOut").GetBoolean());
        Assert.Equal("licensed-electrician", gate.GetProperty("referTo").GetString());
        Assert.Equal("stop-shock", Cautions(answer)[0]);
        Assert.NotEmpty(gate.GetProperty("tellThem").EnumerateArray());
    }

    [Fact]
    public async Task A_value_without_anything_to_hold_it_against_is_named()
    {
        var answer = await service.Post(Path, new
        {
            role = "technician",
            symptoms = new[] { new { id = "runs-hot", present = true } },
            results = new object[] { new { test = "run-current", value = 7 } },
        });
        Assert.Equal("run-current", answer.GetProperty("unjudged")[0].GetString());
    }

    [Theory]
    [InlineData("""{"symptoms":[{"id":"hums-no-start"}]}""", "role")]
    [InlineData("""{"role":"technician"}""", "symptoms")]
    [InlineData("""{"role":"technician","symptoms":[{"id":"sings"}]}""", "symptoms[0].id")]
    [InlineData("""{"role":"technician","symptoms":[],"results":[{"test":"capacitance","outcome":"purple"}]}""", "results[0].outcome")]
    [InlineData("""{"role":"technician","results":[{"test":"crystal-ball","outcome":"cloudy"}]}""", "results[0].test")]
    [InlineData("""{"role":"technician","results":[{"test":"turn-by-hand","value":3}]}""", "results[0].value")]
    [InlineData("""{"role":"technician","results":[{"test":"insulation","value":-3}]}""", "results[0].value")]
    [InlineData("""{"role":"technician","machine":{"family":"steam"},"symptoms":[{"id":"hums-no-start"}]}""", "machine.family")]
    [InlineData("""{"role":"technician","machine":{"layout":"none-such"},"symptoms":[{"id":"hums-no-start"}]}""", "machine.layout")]
    [InlineData("""{"role":"technician","symptoms":[{"id":"hums-no-start"}],"facts":[{"kind":"reading","from":"a","to":"b","ohms":-3}]}""", "facts[0].ohms")]
    [InlineData("""{"role":"technician","symptoms":[{"id":"hums-no-start"}],"facts":[{"kind":"reading","from":"a","ohms":3}]}""", "facts[0].to")]
    [InlineData("""{"role":"technician","symptoms":[{"id":"hums-no-start"}],"supply":{"kind":"supply","volts":-230}}""", "supply.volts")]
    [InlineData("""{"role":"technician","symptoms":[{"id":"hums-no-start"}],"machine":{"volts":-5}}""", "machine.volts")]
    [InlineData("""{"role":"technician","symptoms":[{"id":"hums-no-start"}],"plate":{"amps":-5}}""", "plate.amps")]
    [InlineData("""{"role":"technician","symptoms":[{"id":"hums-no-start"}],"instruments":["crystal-ball"]}""", "instruments[0]")]
    [InlineData("""{"role":"wizard","symptoms":[{"id":"hums-no-start"}]}""", "role")]
    [InlineData("""{"role":"technician","symptoms":"hums"}""", "symptoms")]
    public async Task A_bad_body_is_refused_by_its_member(string body, string member)
    {
        var (status, problem) = await service.PostText(Path, body);
        Assert.Equal(400, status);
        Assert.Equal("invalid-fact", problem.GetProperty("type").GetString());
        Assert.True(problem.GetProperty("errors").TryGetProperty(member, out _), problem.ToString());
    }

    [Fact]
    public async Task The_same_body_gives_the_same_bytes()
    {
        const string body = """{"role":"apprentice","machine":{"phases":1},"symptoms":[{"id":"runs-hot"},{"id":"low-torque","present":false}]}""";
        var (_, first) = await service.PostText(Path, body);
        var (_, second) = await service.PostText(Path, body);
        Assert.Equal(first.GetRawText(), second.GetRawText());
    }

    private static List<string> Cautions(JsonElement answer) => [.. answer.GetProperty("cautions").EnumerateArray().Select(caution => caution.GetProperty("id").GetString()!)];
}
