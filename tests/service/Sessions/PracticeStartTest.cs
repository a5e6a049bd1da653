using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>A whole job on the practice motor by its own answers: meter, bench tests and the first start come from the simulated motor, whatever was expected.</summary>
public sealed class PracticeStartTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Theory]
    [InlineData("capacitor-start-dual-6")]
    [InlineData("capacitor-start-4")]
    [InlineData("three-phase-9-star")]
    [InlineData("three-phase-3")]
    public async Task A_sound_motor_runs_on_the_plan_and_is_turned_round_where_it_ran_against_the_arrow(string layout)
    {
        var (verified, against) = (0, 0);
        for (var seed = 1; seed <= 6; seed++)
        {
            var (asked, last) = await Hold(layout, null, seed);
            var status = last.GetProperty("assessment").GetProperty("status").GetString();
            verified += status == "verified" ? 1 : 0;
            against += asked.Contains("reversed") ? 1 : 0;
            Assert.True(status == "verified" || !asked.Contains("first-start"), $"{layout} {seed}: {status}; {string.Join(", ", asked.TakeLast(8))}"); // an honest "cannot tell" comes before any power
            Assert.Equal(!asked.Contains("first-start") ? 0 : asked.Contains("reversed") ? 2 : 1, asked.Count(id => id == "first-start"));
        }

        Assert.InRange(verified, 3, 6);
        Assert.InRange(against, 1, 5);
    }

    [Fact]
    public async Task A_start_capacitor_that_is_open_makes_the_first_start_hum_although_the_joints_are_right()
    {
        var (_, last) = await Hold("capacitor-start-dual-6", "start-capacitor-open", 3, untilStart: true);
        var facts = last.GetProperty("understood").EnumerateArray().ToList();
        Assert.Contains(facts, fact => fact.GetProperty("kind").GetString() == "running" && fact.GetProperty("outcome").GetString() == "hummed" && fact.GetProperty("how").GetString() == "probe");
        Assert.Contains(facts, fact => fact.GetProperty("kind").GetString() == "symptom" && fact.GetProperty("id").GetString() == "hums-no-start");
    }

    private async Task<(List<string> Asked, JsonElement Last)> Hold(string layout, string? fault, int seed, bool untilStart = false)
    {
        var session = await service.Post("/api/sessions", new { role = "technician", region = "na", practice = new { layout, fault, seed } });
        var path = $"/api/sessions/{session.GetProperty("id").GetString()}";
        var (volts, phases) = (Plate(session, "volts"), Plate(session, "phases"));
        var last = await service.Post($"{path}/facts", new { facts = new object[] { new { kind = "supply", volts, phases, hertz = 60 }, new { kind = "goal", id = "connect" } } });
        var asked = new List<string>();
        while (last.GetProperty("ask") is { ValueKind: JsonValueKind.Object } ask)
        {
            var id = ask.GetProperty("id").GetString()!;
            asked.Add(id);
            Assert.True(asked.Count < 90, $"{layout} {seed} on {volts} V does not end: {string.Join(", ", asked.TakeLast(6))}");
            last = Probed(ask, id)
                ? await service.Post($"{path}/probe", new { })
                : await service.Post($"{path}/answers", Answer(ask, id));
            if (untilStart && id == "first-start")
            {
                break;
            }
        }

        return (asked, last);
    }

    /// <summary>The last figure of a field of the plate: of two volts the high ones.</summary>
    private static double Plate(JsonElement session, string field)
    {
        var value = session.GetProperty("facts").EnumerateArray().Single(fact => fact.GetProperty("kind").GetString() == "plate" && fact.GetProperty("field").GetString() == field).GetProperty("value");
        return value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().Last().GetDouble() : value.GetDouble();
    }

    private static bool Probed(JsonElement ask, string id) =>
        ask.GetProperty("kind").GetString() == "reading"
        || id is "first-start" or "insulation" or "shaft-drag" or "earth-continuity" || id.StartsWith("supply-voltage", StringComparison.Ordinal) || ask.GetProperty("about").GetString() == "armature" || ask.GetProperty("about").GetString() is "series-voltage" or "induced-voltage" or "battery-flick";

    private static object Answer(JsonElement ask, string questionId) => ask.GetProperty("kind").GetString() switch
    {
        "confirm" => new { questionId, confirmed = true },
        "choice" => new { questionId, choice = Choice(ask, questionId) },
        "quantity" when ask.GetProperty("about").GetString() is "resistance" => new { questionId, quantity = new { value = 0.2, unit = "ohm" } },
        _ => new { questionId, unknown = true },
    };

    private static string Choice(JsonElement ask, string questionId) => questionId switch
    {
        "capacitor-bridged" => "bridged",
        "capacitor" => "one",
        "instrument" or "ends-instrument" => "low-voltage-ac",
        _ => ask.GetProperty("options")[0].GetProperty("id").GetString()!,
    };
}
