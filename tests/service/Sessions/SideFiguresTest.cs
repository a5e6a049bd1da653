using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>Figures that people ask for or bring along in a conversation: supply, capacitor, insulation, unbalance.</summary>
public sealed class SideFiguresTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Theory]
    [InlineData("na", "which wire and breaker for a 5 hp 230 V single phase motor, 28 A", "8 AWG", "70 A", "32.2 A")]
    [InlineData("na", "what size breaker for a 10 hp 3450 rpm 60 Hz three phase motor 230 V 25.8 A", "8 AWG", "70 A", "29.7 A")]
    [InlineData("iec", "4 kW 400 V 8.5 A 1430 rpm 50 Hz three phase, which cable and breaker?", "1.5 mm²", "13 A", "8.5 A")]
    public async Task Wire_protection_overload_and_earth_are_answered_with_who_decides(string region, string text, string wire, string rating, string overload)
    {
        var said = await Told("technician", region, text);
        var figures = Assert.Single(said, sentence => Id(sentence) == "coach.supply-figures");
        Assert.Contains(wire, Text(figures), StringComparison.Ordinal);
        Assert.Contains(rating, Text(figures), StringComparison.Ordinal);
        Assert.Contains(figures.GetProperty("quotes").EnumerateArray(), quote => quote.GetProperty("caution").GetString() == "code-deferral");
        Assert.Contains(said, sentence => Id(sentence) == "coach.supply-overload" && Text(sentence).Contains(overload, StringComparison.Ordinal));
        Assert.Contains(said, sentence => Id(sentence) == "supply.who-decides");
    }

    [Fact]
    public async Task At_home_the_figures_are_for_the_electrician()
    {
        var said = await Told("homeowner", "na", "what size breaker for a 1 hp 115 V single phase motor, 13.8 amps");
        Assert.Contains(said, sentence => Id(sentence) == "supply.who-decides" && Text(sentence).Contains("not for doing it yourself", StringComparison.Ordinal));
        Assert.StartsWith("To show the electrician", Text(Assert.Single(said, sentence => Id(sentence) == "coach.supply-figures")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_size_that_is_asked_for_beside_a_fault_is_answered_and_does_not_change_the_job()
    {
        var said = await Told("homeowner", "na", "my table saw trips the breaker after a minute, what size breaker do I need?");
        Assert.Contains(said, sentence => Id(sentence) == "coach.sizes-wanted" && Text(sentence).Contains("electrician", StringComparison.Ordinal));
        Assert.DoesNotContain(said, sentence => Id(sentence) == "asked.term");
    }

    [Theory]
    [InlineData("start cap 270-324 uF 250 V. 118 V across it and 2.1 A through it", "capacitors.weak")]
    [InlineData("run capacitor 40 uF 440 V. 240 V across it and 3.6 A through it", "capacitors.good")]
    [InlineData("run capacitor 40 uF 440 V measures 33 uF", "capacitors.weak")]
    [InlineData("run capacitor 40 uF 440 V measures 39 uF", "capacitors.good")]
    [InlineData("run capacitor 40 uF 440 V measures 48 uF", "capacitors.over")]
    [InlineData("208 V supply, plate 230 V 5 hp three phase 15 A", "nameplate.supply-208")]
    [InlineData("18.5 kW single phase 230 V motor", "nameplate.too-large-for-one-phase")]
    [InlineData("insulation 3 megohm at 20 C to frame at 500 V", "insulation.fail")]
    [InlineData("insulation 30 megohm at 20 C to frame at 500 V", "insulation.pass")]
    [InlineData("motor runs hot, line currents 10 10 14 amps", "heat.amps-investigate")]
    [InlineData("motor runs hot, supply volts 462 463 440", "heat.volts-derate")]
    public async Task What_was_measured_is_judged_at_once(string text, string said) =>
        Assert.Contains(await Told("technician", "na", text), sentence => Id(sentence) == said);

    [Theory]
    [InlineData("my pump hums. capacitor 40 uF 440 V run reads 30 uF")]
    [InlineData("insulation 0.3 megohm")]
    [InlineData("insulation 12 megohm")]
    public async Task At_home_nobody_is_told_to_measure_or_replace(string text)
    {
        var said = string.Join(' ', (await Told("homeowner", "na", text)).Select(Text));
        Assert.Contains("motor shop", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Replace it", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Measure", said, StringComparison.Ordinal);
        Assert.DoesNotContain("dry it", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Equal_readings_are_all_taken()
    {
        var id = await Open("technician", "na");
        var reply = await service.Post($"/api/sessions/{id}/messages", new { text = "line currents 10 10 10 amps" });
        Assert.Equal(3, reply.GetProperty("understood").EnumerateArray().Count(fact => fact.GetProperty("kind").GetString() == "bench-test"));
    }

    [Fact]
    public async Task A_capacitor_at_hand_is_held_against_the_one_on_the_motor()
    {
        var id = await Open("technician", "na");
        await service.Post($"/api/sessions/{id}/messages", new { text = "run capacitor 40 uF 440 V" });
        var reply = await service.Post($"/api/sessions/{id}/messages", new { text = "can I use a 45 uF 370 V instead?" });
        Assert.Contains(reply.GetProperty("say").EnumerateArray(), sentence => Id(sentence) == "faq.capacitor-spare-no");
    }

    [Fact]
    public async Task Before_the_protection_is_confirmed_its_figures_are_said()
    {
        var id = await Open("technician", "na");
        var facts = new object[]
        {
            new { kind = "plate", field = "horsepower", value = 5 }, new { kind = "plate", field = "volts", value = 230 }, new { kind = "plate", field = "amps", value = 15.2 },
            new { kind = "plate", field = "phases", value = 3 }, new { kind = "supply", volts = 230, phases = 3, hertz = 60 },
            new { kind = "lead", tag = "T1", marking = "T1" }, new { kind = "lead", tag = "T2", marking = "T2" }, new { kind = "lead", tag = "T3", marking = "T3" },
        };
        var reply = await service.Post($"/api/sessions/{id}/facts", new { facts });
        for (var turn = 0; turn < 30 && reply.GetProperty("ask") is { ValueKind: JsonValueKind.Object } ask && Id(ask) != "protected-supply"; turn++)
        {
            var questionId = Id(ask);
            reply = await service.Post($"/api/sessions/{id}/answers", ask.GetProperty("kind").GetString() switch
            {
                "confirm" => new { questionId, confirmed = true },
                "reading" => ask.GetProperty("between")[1].GetString() == "frame" ? new { questionId, reading = (object)new { open = true } } : new { questionId, reading = (object)new { ohms = 4.2 } },
                "quantity" => new { questionId, quantity = new { value = questionId == "insulation" ? 200 : 0.2, unit = ask.GetProperty("unit").GetString() } },
                _ => new { questionId, choice = ask.GetProperty("options")[0].GetProperty("id").GetString() },
            });
        }

        Assert.Equal("protected-supply", Id(reply.GetProperty("ask")));
        Assert.Contains(reply.GetProperty("say").EnumerateArray(), sentence => Id(sentence) == "coach.supply-figures" && Text(sentence).Contains("12 AWG", StringComparison.Ordinal));
    }

    private static string Id(JsonElement sentence) => sentence.GetProperty("id").GetString()!;

    private static string Text(JsonElement sentence) => sentence.GetProperty("text").GetString()!;

    private async Task<string> Open(string role, string region) => (await service.Post("/api/sessions", new { role, region })).GetProperty("id").GetString()!;

    private async Task<List<JsonElement>> Told(string role, string region, string text) =>
        [.. (await service.Post($"/api/sessions/{await Open(role, region)}/messages", new { text })).GetProperty("say").EnumerateArray()];
}
