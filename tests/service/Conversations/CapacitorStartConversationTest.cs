using System.Net.Http.Json;
using System.Text.Json;

namespace WireCoach.Service.Tests.Conversations;

/// <summary>The main job, from unmarked leads to a verified first run, held through HTTP.</summary>
public sealed class CapacitorStartConversationTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly Dictionary<string, string> SixTags = new(StringComparer.Ordinal)
    {
        ["T1"] = "4", ["T2"] = "1", ["T3"] = "2", ["T4"] = "6", ["T5"] = "3", ["T8"] = "5",
    };

    private static readonly Dictionary<string, string> FourTags = new(StringComparer.Ordinal)
    {
        ["T1"] = "b", ["T4"] = "d", ["T5"] = "a", ["T8"] = "c",
    };

    [Theory]
    [InlineData(240, 0.5, 0)]
    [InlineData(120, 1.0, 0)]
    [InlineData(240, 0.5, 4)]
    [InlineData(120, 1.0, 5)]
    public async Task A_six_lead_motor_without_marks_runs_with_every_winding_at_its_volts(double supply, double share, int mistake)
    {
        var motor = new BenchMotor(SixTags, 1.5, 3.4);
        var client = new MemberClient(service.Client, new BenchAnswers(motor) { Supply = supply, Mistake = mistake });
        await client.Hold(Opening());

        Assert.Equal("verified", client.Status);
        Assert.Equal(0, client.Question("supply-voltage").GetProperty("how").GetArrayLength()); // one pair of lines: nothing to say about three
        var joints = client.Question(client.Asked.First(id => id.StartsWith("joint-ohms", StringComparison.Ordinal))).GetProperty("expect").EnumerateArray().Select(expect => expect.GetRawText()).ToList();
        Assert.Contains("as planned, as far as ohms can tell", joints[0], StringComparison.Ordinal);
        Assert.Contains("No power: open the joints", joints[^1], StringComparison.Ordinal);
        var (halves, start, _) = motor.Connected(Joints(client.Plan));
        Assert.Equal(share, Math.Abs(halves[0]), 9);
        Assert.Equal(halves[0], halves[1], 9);
        Assert.Equal(share, Math.Abs(start), 9);
    }

    [Fact]
    public async Task Printed_marks_that_the_ohms_bear_out_save_the_test_of_the_ends()
    {
        var motor = new BenchMotor(SixTags, 1.5, 3.4);
        var client = new MemberClient(service.Client, new BenchAnswers(motor) { Supply = 240 });
        await client.Hold(Opening(), SixTags);

        Assert.Equal("verified", client.Status);
        Assert.DoesNotContain(client.Asked, question => question.StartsWith("ends.", StringComparison.Ordinal));
        var (halves, _, _) = motor.Connected(Joints(client.Plan));
        Assert.Equal(halves[0], halves[1], 9);
    }

    [Fact]
    public async Task A_motor_that_turns_the_wrong_way_is_made_safe_again_and_turned_round_by_its_start_leads()
    {
        var motor = new BenchMotor(SixTags, 1.5, 3.4);
        var first = default(bool?);
        var client = new MemberClient(service.Client, new BenchAnswers(motor)
        {
            Supply = 240,
            TurnsRight = (_, plan) =>
            {
                var forward = motor.Connected(Joints(plan)).Forward;
                first ??= forward;
                return forward != first;
            },
        });
        await client.Hold(Opening());

        Assert.Equal("verified", client.Status);
        Assert.Equal(2, client.Asked.Count(question => question == "isolated"));
        Assert.Contains("reversed", client.Asked);
        Assert.Equal(2, client.Asked.Count(question => question == "first-start"));
        var steps = client.Plan.GetProperty("steps").GetRawText();
        Assert.Contains("Turned round since the run that went the wrong way; the next run proves it.", steps, StringComparison.Ordinal);
        Assert.DoesNotContain("clockwise", steps, StringComparison.Ordinal); // nothing has told the ends of the start winding
    }

    [Fact]
    public async Task Without_a_transformer_or_a_cell_a_guarded_trial_at_half_the_volts_tells_the_ends()
    {
        var motor = new BenchMotor(SixTags, 1.5, 3.4);
        var client = new MemberClient(service.Client, new BenchAnswers(motor) { Supply = 240, Instrument = "none" });
        await client.Hold(Opening(instruments: ["multimeter", "insulation-tester"]));

        Assert.Equal("verified", client.Status);
        var trial = client.Asked.ToList().FindIndex(question => question.StartsWith("ends.", StringComparison.Ordinal));
        Assert.All(new[] { "insulation", "earth-continuity", "shaft-free-guarded", "protected-supply" }, check => Assert.InRange(client.Asked.ToList().IndexOf(check), 0, trial));
        var (halves, _, _) = motor.Connected(Joints(client.Plan));
        Assert.Equal(halves[0], halves[1], 9);
    }

    [Theory]
    [InlineData("insulation", new[] { "multimeter", "low-voltage-ac" }, "insulation")]
    [InlineData("joints-to-frame", new[] { "multimeter", "low-voltage-ac" }, "joints to the frame")]
    [InlineData("earth-continuity", new[] { "multimeter", "low-voltage-ac" }, "frame to earth")]
    [InlineData("insulation", new[] { "multimeter" }, "insulation")] // no trial of the ends either
    [InlineData("earth-continuity", new[] { "multimeter" }, "frame to earth")]
    public async Task What_could_not_be_measured_before_power_ends_without_power(string question, string[] instruments, string said)
    {
        var motor = new BenchMotor(SixTags, 1.5, 3.4);
        var client = new MemberClient(service.Client, new Unmeasured(new BenchAnswers(motor) { Supply = 240, Instrument = instruments.Length > 1 ? "low-voltage-ac" : "none" }, question));
        await client.Hold(Opening(instruments: instruments));

        Assert.Equal("open", client.Status);
        Assert.Contains(client.Asked, asked => asked.StartsWith(question, StringComparison.Ordinal));
        Assert.DoesNotContain(client.Asked, asked => asked is "first-start" or "supply-voltage" or "shaft-free-guarded" or "protected-supply");
        Assert.StartsWith($"Not measured, so not proved: {said}.", client.Assessment.GetProperty("say")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_that_could_not_be_measured_is_said()
    {
        var client = new MemberClient(service.Client, new Unmeasured(new BenchAnswers(new BenchMotor(SixTags, 1.5, 3.4)) { Supply = 240 }, "insulation", "earth-continuity"));
        await client.Hold(Opening());
        var said = client.Assessment.GetProperty("say").EnumerateArray().Select(one => one.GetString()!).Where(one => one.StartsWith("Not measured", StringComparison.Ordinal)).ToList();
        Assert.Equal(2, said.Count);
        Assert.Contains(said, one => one.Contains("insulation", StringComparison.Ordinal));
        Assert.Contains(said, one => one.Contains("frame to earth", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.2, "shaft-free-guarded")]
    [InlineData(4.0, "earth-continuity")]
    [InlineData(null, "earth-continuity")]
    public async Task An_earth_that_is_read_later_counts_however_it_is_told(double? ohms, string next)
    {
        var client = new MemberClient(service.Client, new Unmeasured(new BenchAnswers(new BenchMotor(SixTags, 1.5, 3.4)) { Supply = 240 }, "earth-continuity"));
        await client.Hold(Opening());
        var told = await service.Client.PostAsJsonAsync($"/api/sessions/{client.Id}/facts", new { facts = new[] { new { kind = "reading", from = "frame", to = "earth", ohms, open = ohms is null } } }, TestContext.Current.CancellationToken);
        Assert.True(told.IsSuccessStatusCode, await told.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal(next, (await told.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("ask").GetProperty("id").GetString());
    }

    [Fact]
    public async Task A_motor_without_a_path_to_earth_gets_no_power_whatever_was_read_before()
    {
        var client = new MemberClient(service.Client, new Broken(new BenchAnswers(new BenchMotor(SixTags, 1.5, 3.4)) { Supply = 240 }));
        var stuck = await Assert.ThrowsAnyAsync<Exception>(() => client.Hold(Opening()));

        Assert.Contains("'earth-continuity' is asked for ever", stuck.Message, StringComparison.Ordinal);
        Assert.Equal("open", client.Status);
        Assert.DoesNotContain(client.Asked, asked => asked is "first-start" or "supply-voltage" or "shaft-free-guarded" or "protected-supply");
        Assert.Contains(client.Assessment.GetProperty("checks").EnumerateArray(), check => (check.GetProperty("id").GetString(), check.GetProperty("verdict").GetString()) == ("earth-continuity", "fail"));
    }

    /// <summary>Somebody whose meter shows over-range from the frame to earth.</summary>
    private sealed class Broken(IBenchAnswers others) : IBenchAnswers
    {
        public object[] Known(IReadOnlyDictionary<string, string>? marks) =>
            [.. others.Known(marks), new { kind = "reading", from = "earth", to = "frame", ohms = 0.2 }, new { kind = "reading", from = "frame", to = "earth", open = true }];

        public object Answer(JsonElement ask, JsonElement plan) => ask.GetProperty("id").GetString() == "earth-continuity"
            ? new { questionId = "earth-continuity", reading = new { open = true } }
            : others.Answer(ask, plan);
    }

    /// <summary>Somebody who cannot tell one thing.</summary>
    private sealed class Unmeasured(IBenchAnswers others, params string[] questions) : IBenchAnswers
    {
        public object[] Known(IReadOnlyDictionary<string, string>? marks) => others.Known(marks);

        public object Answer(JsonElement ask, JsonElement plan) => ask.GetProperty("id").GetString()! is var id && questions.Any(question => id.StartsWith(question, StringComparison.Ordinal))
            ? new { questionId = id, unknown = true }
            : others.Answer(ask, plan);
    }

    [Fact]
    public async Task A_four_lead_motor_is_connected_for_its_one_voltage()
    {
        var motor = new BenchMotor(FourTags, 1.8, 6.0);
        var client = new MemberClient(service.Client, new BenchAnswers(motor) { Supply = 120 });
        await client.Hold(Opening(volts: [115], amps: [6.4]));

        Assert.Equal("verified", client.Status);
        var (halves, start, _) = motor.Connected(Joints(client.Plan));
        Assert.Equal(1, Math.Abs(halves[0]), 9);
        Assert.Equal(1, Math.Abs(start), 9);
    }

    [Fact]
    public async Task An_open_start_winding_is_found_after_its_switch_and_capacitor_were_looked_at_and_gets_no_power()
    {
        var motor = new BenchMotor(SixTags, 1.5, 3.4) { StartOpen = true };
        var client = new MemberClient(service.Client, new BenchAnswers(motor) { Supply = 240 });
        await client.Hold(Opening());

        Assert.Equal("referred", client.Status);
        Assert.Contains("start-branch", client.Asked);
        Assert.DoesNotContain("first-start", client.Asked);
        Assert.Equal(JsonValueKind.Null, client.Plan.ValueKind);
    }

    private static object Opening(double[]? volts = null, double[]? amps = null, string[]? instruments = null) => new
    {
        role = "technician",
        region = "na",
        instruments = instruments ?? ["multimeter", "low-voltage-ac", "insulation-tester", "clamp-meter"],
        motorTag = "brine pump",
        motor = new { horsepower = 0.75, volts = volts ?? [115, 230], amps = amps ?? [10.4, 5.2], rpm = 1140, hertz = 60, phases = 1 },
    };

    private static IReadOnlyList<(string[] Leads, string? Line)> Joints(JsonElement plan) =>
    [
        .. plan.GetProperty("joints").EnumerateArray().Select(joint => (
            joint.GetProperty("leads").EnumerateArray().Select(lead => lead.GetString()!).ToArray(),
            joint.GetProperty("conductor") is { ValueKind: JsonValueKind.String } line ? line.GetString() : null)),
    ];
}
