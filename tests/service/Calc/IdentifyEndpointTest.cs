using System.Text.Json;

namespace WireCoach.Service.Tests.Calc;

public sealed class IdentifyEndpointTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Path = "/api/calc/identify";

    [Fact]
    public async Task Two_alike_and_one_higher_are_run_halves_and_start_winding()
    {
        var found = await service.Post(Path, new
        {
            leads = new[] { "1", "2", "3", "4", "5", "6" },
            hasCapacitor = true,
            readings = AllPairs(("1", "4", 3.2), ("2", "5", 3.2), ("3", "6", 7.4)),
        });
        Assert.Equal("identified", found.GetProperty("status").GetString());
        Assert.Equal(["run 1-4 3.2", "run 2-5 3.2", "start 3-6 7.4"], found.GetProperty("windings").EnumerateArray().Select(Text));
        Assert.Equal("capacitor-start-dual-6", found.GetProperty("layouts")[0].GetProperty("id").GetString());
        Assert.Equal(JsonValueKind.Null, found.GetProperty("next").ValueKind);
    }

    [Fact]
    public async Task A_client_with_a_transformer_is_told_what_to_feed_and_what_it_reads_counts()
    {
        object Halves(params object[] benchTests) => new
        {
            leads = new[] { "1", "2", "3", "4" },
            hasCapacitor = false,
            looks = new { brushes = false, speeds = false, bothWays = false },
            instruments = new[] { "low-voltage-ac" },
            readings = new[] { ("1", "2", 2.0), ("3", "4", 1.45), ("1", "2", 2.0), ("3", "4", 1.45) }.Select(one => Reading(one.Item1, one.Item2, one.Item3))
                .Concat(new[] { ("1", "3"), ("1", "4"), ("2", "3"), ("2", "4") }.Select(one => Reading(one.Item1, one.Item2, null))),
            benchTests,
        };
        object Shows(JsonElement next, double value) => new { test = next.GetProperty("kind").GetString(), drive = next.GetProperty("setup").GetProperty("drive"), read = next.GetProperty("setup").GetProperty("read"), appliedVolts = next.GetProperty("setup").GetProperty("appliedVolts"), value, unit = "volt" };
        var first = (await service.Post(Path, Halves())).GetProperty("next");
        Assert.Equal("induced-voltage", first.GetProperty("kind").GetString());
        var second = (await service.Post(Path, Halves(Shows(first, 6.1)))).GetProperty("next");
        var found = await service.Post(Path, Halves(Shows(first, 6.1), Shows(second, 5.3)));
        Assert.Equal("identified", found.GetProperty("status").GetString());
        Assert.Equal("dual-voltage-4", found.GetProperty("layouts")[0].GetProperty("id").GetString());
    }

    [Theory]
    [InlineData("/api/calc/identify", "low-voltage-dc")]
    [InlineData("/api/calc/ends", "low-voltage-dc")]
    [InlineData("/api/calc/identify", null)]
    public async Task An_instrument_that_no_test_uses_is_said_so(string path, string? instrument)
    {
        var (status, problem) = await service.PostText(path, JsonSerializer.Serialize(new
        {
            leads = new[] { "1", "2" },
            readings = new[] { Reading("1", "2", 2.0) },
            windings = new[] { new { role = "phase", leads = new[] { "1", "2" } } },
            instruments = new[] { "battery", instrument },
        }));
        Assert.InRange(status, 400, 422);
        Assert.Contains("instruments[1]", problem.GetRawText(), StringComparison.Ordinal);
        Assert.Equal(instrument is not null, problem.GetRawText().Contains("low-voltage-ac", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("9", 12.0, 6.0, "benchTests[0].drive")]
    [InlineData("1", 0.0, 6.0, "benchTests[0].appliedVolts")]
    [InlineData("1", 12.0, -6.0, "benchTests[0].value")]
    public async Task A_test_that_cannot_be_is_said_so(string fed, double appliedVolts, double value, string field)
    {
        var (status, problem) = await service.PostText(Path, JsonSerializer.Serialize(new
        {
            leads = new[] { "1", "2", "3", "4" },
            readings = new[] { Reading("1", "2", 2.0) },
            benchTests = new[] { new { test = "induced-voltage", drive = new[] { fed, "2" }, read = new[] { "3", "4" }, appliedVolts, value, unit = "volt" } },
        }));
        Assert.InRange(status, 400, 422);
        Assert.Contains(field, problem.GetRawText(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_client_that_measures_what_is_asked_comes_to_an_end()
    {
        var readings = new List<object>();
        for (; ; )
        {
            var found = await service.Post(Path, new { leads = new[] { "a", "b", "c", "d", "e", "f" }, hasCapacitor = true, capacitorBridged = true, readings });
            if (found.GetProperty("status").GetString() != "needs-reading")
            {
                Assert.Equal("identified", found.GetProperty("status").GetString());
                Assert.InRange(readings.Count, 3, 12);
                return;
            }

            var next = found.GetProperty("next");
            Assert.Equal("resistance", next.GetProperty("kind").GetString());
            var pair = string.Concat(new[] { next.GetProperty("from").GetString()!, next.GetProperty("to").GetString()! }.Order(StringComparer.Ordinal));
            double? ohms = pair switch { "ae" => 4.1, "bf" => 4.0, "cd" => 9.5, _ => null };
            readings.Add(Reading(pair[..1], pair[1..], ohms));
        }
    }

    [Fact]
    public async Task Tags_that_are_the_marks_of_a_common_a_run_and_a_start_pin_count_as_printed()
    {
        var found = await service.Post(Path, new
        {
            leads = new[] { "C", "R", "S" },
            hasCapacitor = true,
            looks = new { bothWays = false },
            readings = new[] { Reading("C", "R", 8.0), Reading("C", "S", 14.0), Reading("R", "S", 22.0) },
        });
        Assert.Equal("identified", found.GetProperty("status").GetString());
        Assert.Equal(["run C-R 8", "start C-S 14"], found.GetProperty("windings").EnumerateArray().Select(Text));
    }

    [Fact]
    public async Task Test_leads_that_were_held_together_are_taken_off_as_those_that_are_stated()
    {
        var readings = new[] { Reading("1", "2", 1.7), Reading("3", "4", 3.6), Reading("1", "3", null) };
        async Task<string> Windings(object? meter, params object[] benchTests) =>
            (await service.Post(Path, new { leads = new[] { "1", "2", "3", "4" }, meter, readings, benchTests })).GetProperty("windings").GetRawText();
        var taken = await Windings(null, new { test = "probe-zero", value = 0.9 }, new { test = "probe-zero", value = 0.3 });
        Assert.Equal(await Windings(new { testLeadOhms = 0.3 }), taken);
        Assert.NotEqual(await Windings(null), taken);
        Assert.Equal(await Windings(new { zeroed = true }), await Windings(new { zeroed = true }, new { test = "probe-zero", value = 0.3 }));
    }

    [Fact]
    public async Task The_same_body_gives_the_same_bytes()
    {
        const string Body = """{"leads":["1","2","3","4"],"readings":[{"from":"1","to":"2","ohms":2.1}]}""";
        var (_, first) = await service.PostText(Path, Body);
        var (_, second) = await service.PostText(Path, Body);
        Assert.Equal(first.GetRawText(), second.GetRawText());
    }

    [Theory]
    [InlineData("""{"leads":["1","2"],"readings":[{"from":"1","to":"9","ohms":2}]}""", "unknown-lead", "readings[0].to")]
    [InlineData("""{"leads":["1","2"],"readings":[{"from":"1","to":"1","ohms":2}]}""", "invalid-fact", "readings[0]")]
    [InlineData("""{"leads":["1","2"],"readings":[{"from":"1","to":"2","ohms":-2}]}""", "unreadable-quantity", "readings[0].ohms")]
    [InlineData("""{"leads":["1","2"],"readings":[{"from":"1","to":"2","ohms":"two"}]}""", "unreadable-quantity", "readings[0].ohms")]
    [InlineData("""{"leads":["1","2"],"readings":[{"from":"1","to":"2"}]}""", "invalid-fact", "readings[0]")]
    [InlineData("""{"leads":["1","1"],"readings":[]}""", "invalid-fact", "leads")]
    [InlineData("""{"leads":["1"],"readings":[]}""", "invalid-fact", "leads")]
    [InlineData("""{"readings":[]}""", "invalid-fact", "leads")]
    [InlineData("""{"leads":["1","2"],"readings":[null]}""", "invalid-fact", "readings[0].from")]
    [InlineData("""{"leads":["1","2"],"readings":[],"meter":{"percent":-1}}""", "unreadable-quantity", "meter.percent")]
    public async Task What_cannot_be_is_refused_by_its_member(string body, string id, string field)
    {
        var (status, answer) = await service.PostText(Path, body);
        Assert.Equal(400, status);
        Assert.Equal(id, answer.GetProperty("type").GetString());
        Assert.True(answer.GetProperty("errors").TryGetProperty(field, out _), answer.GetRawText());
    }

    private static object[] AllPairs(params (string From, string To, double Ohms)[] windings) =>
    [
        .. from first in Enumerable.Range(1, 6)
           from second in Enumerable.Range(first + 1, 6 - first)
           let found = windings.FirstOrDefault(winding => winding.From == $"{first}" && winding.To == $"{second}")
           select Reading($"{first}", $"{second}", found.Ohms > 0 ? found.Ohms : null),
    ];

    private static object Reading(string one, string other, double? ohms) =>
        ohms is null ? new { from = one, to = other, open = true } : new { from = one, to = other, ohms };

    private static string Text(JsonElement winding) =>
        $"{winding.GetProperty("role").GetString()} {string.Join('-', winding.GetProperty("leads").EnumerateArray().Select(lead => lead.GetString()))} {winding.GetProperty("ohms").GetDouble()}";
}
