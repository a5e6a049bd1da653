using System.Text.Json;

namespace WireCoach.Service.Tests.Conversations;

/// <summary>The first run of a three-phase motor: what to expect before it, the judgement after it.</summary>
public sealed class FirstRunConversationTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private const string Motor = "phase T1 y 2 0; phase T2 y 2 120; phase T3 y 2 240";

    private readonly List<JsonElement> _said = [];
    private readonly List<string> _asked = [];
    private JsonElement _reply;
    private string _id = string.Empty;

    [Fact]
    public async Task Start_current_time_and_how_often_are_said_before_the_first_start()
    {
        await Run([]);
        var start = _said.FindIndex(sentence => Id(sentence) == "heat.expect-start-code");
        Assert.InRange(start, 0, _said.FindIndex(sentence => Id(sentence).StartsWith("heat.run-", StringComparison.Ordinal)));
        var quotes = _said[start].GetProperty("quotes").EnumerateArray().Select(quote => quote.GetProperty("value").GetDouble()).ToList();
        Assert.Equal([7.1 * 5000 / (Math.Sqrt(3) * 230), 7.99 * 5000 / (Math.Sqrt(3) * 230)], quotes, (one, other) => Math.Abs(one - other) < 0.01);
        Assert.Contains(_said, sentence => Id(sentence) == "heat.expect-start-time");
        Assert.Contains(_said, sentence => Id(sentence) == "heat.expect-starts-table" && Text(sentence).Contains("16.3", StringComparison.Ordinal) && Text(sentence).Contains("42 s", StringComparison.Ordinal));
        Assert.Equal("verified", _reply.GetProperty("assessment").GetProperty("status").GetString());
    }

    [Fact]
    public async Task Nobody_is_hurried_to_a_hot_motor_before_it_is_made_safe()
    {
        await Run([]);
        var offer = Text(Assert.Single(_said, sentence => Id(sentence) == "heat.rise-offer"));
        Assert.InRange(offer.IndexOf("make it safe as before", StringComparison.Ordinal), 0, offer.IndexOf("read the same two joints", StringComparison.Ordinal));
        Assert.DoesNotContain("half a minute", offer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_code_letter_the_start_current_is_a_range_that_is_marked_as_an_estimate()
    {
        await Run([], codeLetter: null);
        var said = Assert.Single(_said, sentence => Id(sentence) == "heat.expect-start-kind");
        Assert.Equal([5 * 14, 8 * 14], said.GetProperty("quotes").EnumerateArray().Select(quote => quote.GetProperty("value").GetDouble()));
        Assert.Contains("estimate", Text(said), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Three_volts_and_three_amps_are_asked_and_their_unbalance_is_judged()
    {
        await Run(new() { ["supply-voltage.l3-l1"] = 219, ["run-current.l3"] = 2.8 });
        Assert.Equal(["supply-voltage", "supply-voltage.l2-l3", "supply-voltage.l3-l1"], _asked.Where(asked => asked.StartsWith("supply-voltage", StringComparison.Ordinal)));
        Assert.Equal(["run-current", "run-current.l2", "run-current.l3"], _asked.Where(asked => asked.StartsWith("run-current", StringComparison.Ordinal)));
        Assert.Equal(100 * (679.0 / 3 - 219) / (679.0 / 3), Quoted("heat.volts-derate", "voltage-unbalance"), 1e-6);
        Assert.Equal(100 * (2.8 - 6.8 / 3) / (6.8 / 3), Quoted("heat.amps-investigate", "current-unbalance"), 1e-6);
        Assert.Contains(_said, sentence => Id(sentence) == "heat.run-amps-uncoupled" && Text(sentence).Contains("2.8 A", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Three_pairs_of_lines_are_said_to_be_three()
    {
        await Run([], until: "supply-voltage");
        Assert.Contains("begin with L1 to L2", _reply.GetProperty("ask").GetProperty("how").GetRawText(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lost_line_is_no_good_run()
    {
        await Run(new() { ["run-current.l2"] = 0 });
        Assert.Contains(_said, sentence => Id(sentence) == "heat.amps-lost");
        Assert.Equal("open", _reply.GetProperty("assessment").GetProperty("status").GetString()); // neither verified nor ready for power
    }

    [Fact]
    public async Task A_run_that_must_be_switched_off_is_not_measured_further()
    {
        await Run(new() { ["run-volts"] = 5 });
        Assert.Contains(_said, sentence => Id(sentence) == "heat.run-volts-out");
        Assert.DoesNotContain("run-current", _asked);
        Assert.DoesNotContain("run-direction", _asked);
        Take(await service.Post($"/api/sessions/{_id}/facts", new { facts = new[] { new { kind = "running", volts = 230 } } }));
        Assert.Equal("run-current", Ask);
    }

    [Theory]
    [InlineData("supply-voltage", 460)]
    [InlineData("supply-voltage.l2-l3", 120)]
    public async Task Wrong_volts_at_the_switch_keep_the_motor_off(string question, double volts)
    {
        await Run(new() { [question] = volts }, until: "first-start", most: 40);
        Assert.DoesNotContain("first-start", _asked);
        Assert.Contains(_said, sentence => Id(sentence) == "nameplate.supply-out");
        Assert.Contains(_reply.GetProperty("assessment").GetProperty("checks").EnumerateArray(), check => check.GetProperty("id").GetString() == "supply-voltage" && check.GetProperty("verdict").GetString() == "fail");
    }

    [Fact]
    public async Task Volts_too_unequal_keep_the_motor_off()
    {
        await Run(new() { ["supply-voltage.l3-l1"] = 209 }, until: "first-start", most: 40);
        Assert.DoesNotContain("first-start", _asked);
        Assert.Contains(_said, sentence => Id(sentence) == "heat.volts-do-not-run");
    }

    [Fact]
    public async Task Three_figures_may_be_told_at_once()
    {
        await Run([], until: "supply-voltage");
        await Tell("L1-L2 231 V, L2-L3 230 V, L3-L1 229");
        Assert.Equal("first-start", Ask);
        await service.Post($"/api/sessions/{_id}/answers", new { questionId = "first-start", choice = "ran" });
        await service.Post($"/api/sessions/{_id}/answers", new { questionId = "run-volts", quantity = new { value = 230, unit = "volt" } });
        await Tell("5.1, 5.2 and 5.3 amps");
        Assert.Equal("run-speed", Ask);
        Assert.Contains(_said, sentence => Id(sentence) == "heat.amps-balanced");
    }

    [Fact]
    public async Task Hot_ohms_are_judged_by_resistance_against_the_class_once_everything_is_known()
    {
        await Run([]);
        Assert.Contains(_said, sentence => Id(sentence) == "heat.rise-offer");
        await Tell("hot ohms 12.6, cold ohms 10 at 20 C, ambient 24 C");
        Assert.Equal(62.17, Quoted("heat.pass", "rise-by-resistance"), 0.01);
    }

    [Fact]
    public async Task What_hot_ohms_still_lack_is_asked()
    {
        await Run([], insulationClass: null);
        await Tell("hot ohms 13.6");
        Assert.Equal("cold-resistance", Ask);
        await Tell("10");
        Assert.Equal("cold-celsius", Ask);
        await Tell("20");
        Assert.Equal("ambient-celsius", Ask);
        await Tell("24 C");
        Assert.Equal("plate.insulationClass", Ask);
        await Tell("B");
        Assert.Equal(87.62, Quoted("heat.fail", "rise-by-resistance"), 0.01); // (3.6 / 10) × 254.5 + 20 − 24 over 80 K
    }

    [Fact]
    public async Task A_fourth_start_within_minutes_waits()
    {
        await Run(new() { ["run-direction"] = "wrong" }, until: "isolated", most: 40, after: "run-direction");
        for (var start = 2; start <= 3; start++)
        {
            await service.Post($"/api/sessions/{_id}/facts", new { facts = new object[] { new { kind = "confirm", id = "isolated", confirmed = true }, new { kind = "running", outcome = "ran", amps = 5 + (start * 0.1) } } });
        }

        var (_, session) = await service.Get($"/api/sessions/{_id}");
        Assert.Contains("heat.starts-in-a-row", session.GetRawText(), StringComparison.Ordinal);
    }

    private string Ask => _reply.GetProperty("ask").GetProperty("id").GetString()!;

    private static string Id(JsonElement sentence) => sentence.GetProperty("id").GetString()!;

    private static string Text(JsonElement sentence) => sentence.GetProperty("text").GetString()!;

    private double Quoted(string sentence, string rule) => _said.Last(said => Id(said) == sentence).GetProperty("quotes").EnumerateArray()
        .First(quote => quote.GetProperty("rule").GetString() == rule).GetProperty("value").GetDouble();

    private async Task Tell(string text) => Take(await service.Post($"/api/sessions/{_id}/messages", new { text }));

    private void Take(JsonElement reply)
    {
        _reply = reply;
        _said.AddRange(reply.GetProperty("say").EnumerateArray());
    }

    /// <summary>Holds the conversation to its end, to a question, or for so many turns.</summary>
    private async Task Run(Dictionary<string, object> instead, string? codeLetter = "J", string? insulationClass = "F", string? until = null, int most = 90, string? after = null)
    {
        var answers = new WoundAnswers(new WoundBench(Motor, 5, capacitor: false)) { SupplyVolts = 230, SupplyPhases = 3 };
        var plate = new { volts = new[] { 230 }, amps = new[] { 14 }, horsepower = 5, rpm = 1740, hertz = 60, phases = 3, codeLetter, insulationClass };
        var opened = await service.Post("/api/sessions", new
        {
            role = "technician",
            region = "na",
            instruments = new[] { "multimeter", "insulation-tester", "clamp-meter", "low-voltage-ac" },
            motor = plate.GetType().GetProperties().Where(field => field.GetValue(plate) is not null).ToDictionary(field => field.Name, field => field.GetValue(plate)),
        });
        _id = opened.GetProperty("id").GetString()!;
        Take(await service.Post($"/api/sessions/{_id}/facts", new { facts = answers.Known(null) }));
        for (var turn = 0; turn < most && _reply.GetProperty("ask") is { ValueKind: JsonValueKind.Object } ask; turn++)
        {
            if (Ask == until && (after is null || _asked.Contains(after)))
            {
                return;
            }

            _asked.Add(Ask);
            Take(await service.Post($"/api/sessions/{_id}/answers", instead.TryGetValue(Ask, out var given)
                ? given is string choice ? new { questionId = Ask, choice } : new { questionId = Ask, quantity = new { value = given, unit = ask.GetProperty("unit").GetString() } }
                : answers.Answer(ask, _reply.GetProperty("assessment").GetProperty("plan"))));
        }
    }
}
