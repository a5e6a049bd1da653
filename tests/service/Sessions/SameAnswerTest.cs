using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>An answer that leaves its own question open, given again.</summary>
public sealed class SameAnswerTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task What_is_asked_for_next_is_not_missed_beforehand()
    {
        var path = await Open();
        var said = (await service.Get(path)).Body.GetProperty("turns").EnumerateArray().SelectMany(turn => turn.GetProperty("say").EnumerateArray()).Select(one => one.GetProperty("id").GetString()!).ToList();
        Assert.NotEmpty(said);
        Assert.DoesNotContain(said, id => id.StartsWith("connections.missing-supply", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_stands_against_a_supply_is_said_however_often_it_is_chosen() =>
        await Hold(await Open(), "supply", new { questionId = "supply", choice = "na-120" }, "three-phase");

    [Fact]
    public async Task What_stands_against_a_reading_is_said_however_often_the_same_is_read() => await Hold(
        await Open(new { kind = "supply", volts = 230, phases = 3, hertz = 60 }, new { kind = "confirm", id = "connected", confirmed = true }, new { kind = "unknown", question = "insulation-temperature" }),
        "insulation", new { questionId = "insulation", quantity = new { value = 3, unit = "megohm" } }, "MΩ");

    private static object Lead(string tag) => new { kind = "lead", tag, marking = tag };

    private static object Reading(string from, string to) => new { kind = "reading", from, to, ohms = 4.2 };

    private async Task Hold(string path, string question, object answer, string word)
    {
        for (var turn = 0; turn < 12 && await Next(path) is var next && next != question; turn++)
        {
            await service.Post($"{path}/answers", new { questionId = next, unknown = true });
        }

        for (var turn = 0; turn < 4; turn++)
        {
            Assert.Equal(question, await Next(path));
            var said = (await service.Post($"{path}/answers", answer)).GetProperty("say").EnumerateArray().Select(one => one.GetProperty("text").GetString()!).ToList();
            Assert.Contains(said, text => text.Contains(word, StringComparison.OrdinalIgnoreCase));
        }
    }

    private async Task<string> Next(string path) => (await service.Get(path)).Body.GetProperty("assessment").GetProperty("next").GetProperty("id").GetString()!;

    /// <summary>A three-phase motor of which all is known but what it will run on.</summary>
    private async Task<string> Open(params object[] more)
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na" });
        var path = $"/api/sessions/{session.GetProperty("id").GetString()}";
        object[] facts =
        [
            new { kind = "goal", id = "connect" }, new { kind = "confirm", id = "isolated", confirmed = true },
            new { kind = "plate", field = "phases", value = 3 }, new { kind = "plate", field = "volts", value = 230 },
            new { kind = "choice", question = "family", option = "three-phase" },
            Lead("U1"), Lead("V1"), Lead("W1"), Reading("U1", "V1"), Reading("V1", "W1"), Reading("U1", "W1"), .. more,
        ];
        await service.Post($"{path}/facts", new { facts });
        return path;
    }
}
