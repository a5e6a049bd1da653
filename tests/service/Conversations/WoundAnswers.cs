using System.Text.Json;
using WireCoach.Rules.Cases;

namespace WireCoach.Service.Tests.Conversations;

/// <summary>Answers for any motor on the bench; goes by the members of the question and reads no sentence.</summary>
internal sealed class WoundAnswers(WoundBench motor) : IBenchAnswers
{
    public required double SupplyVolts { get; init; }

    /// <summary>Phases of the supply; 0 for direct current.</summary>
    public required int SupplyPhases { get; init; }

    /// <summary>What is at hand for the test of the ends.</summary>
    public string Instrument { get; init; } = "low-voltage-ac";

    public object[] Known(IReadOnlyDictionary<string, string>? marks) =>
    [
        SupplyPhases == 0 ? new { kind = "supply", volts = SupplyVolts, hertz = 0 } : new { kind = "supply", volts = SupplyVolts, phases = SupplyPhases, hertz = 60 },
        .. motor.Tags.Select(tag => (object)new { kind = "lead", tag }),
    ];

    public object Answer(JsonElement ask, JsonElement plan)
    {
        var questionId = ask.GetProperty("id").GetString()!;
        var about = ask.GetProperty("about").GetString()!;
        motor.Bridged &= questionId != "capacitor-refitted";
        return ask.GetProperty("kind").GetString() switch
        {
            "confirm" => new { questionId, confirmed = true },
            "reading" => Reading(questionId, Strings(ask.GetProperty("between")), ask),
            "quantity" => new { questionId, quantity = new { value = Quantity(about, ask), unit = ask.GetProperty("unit").GetString() } },
            "choice" => new { questionId, choice = Choice(questionId, about, ask) },
            _ => new { questionId, unknown = true },
        };
    }

    private object Reading(string questionId, string[] between, JsonElement ask) => motor.Ohms(between[0], between[1], Ties(ask)) is { } ohms
        ? new { questionId, reading = (object)new { ohms } }
        : new { questionId, reading = (object)new { open = true } };

    private double Quantity(string about, JsonElement ask) => about switch
    {
        "resistance" => 0.2,
        "insulation" => 200,
        "earth-continuity" => 0.3,
        "supply-voltage" or "running" => SupplyVolts,
        "run-current" => 2,
        "run-speed" => 1740,
        "series-voltage" or "induced-voltage" => motor.Volts(Setup(ask)),
        _ => throw new InvalidOperationException($"Nothing to measure for '{about}'."),
    };

    private string Choice(string questionId, string about, JsonElement ask)
    {
        if (questionId == "capacitor-bridged")
        {
            motor.Bridged = true;
        }

        var wanted = questionId switch
        {
            "both-ways" => motor.BothWays ? "both" : "one",
            "capacitor-wires" => motor.CapacitorOutside ? "outside" : "inside",
            "brushes" => motor.HasBrushes ? "yes" : "no",
            "several-speeds" => motor.SeveralSpeeds ? "several" : "single",
            "shaft-drag" => "same",
            _ => null,
        }
        ?? about switch
        {
            "slip-rings" => motor.IsAtRings(Strings(ask.GetProperty("between"))[0]) ? "first" : "second",
            "capacitor" when questionId == "capacitor" => motor.HasCapacitor ? "one" : "none",
            "capacitor" => questionId == "capacitor-use" ? motor.CapacitorUse : "bridged",
            "armature" => ask.GetProperty("between") is { ValueKind: JsonValueKind.Array } pair && motor.JumpsWithShaft(Strings(pair)[0], Strings(pair)[1]) ? "jumps" : "steady",
            "battery-flick" => motor.Flick(Setup(ask)),
            "running" => "ran",
            "run-direction" => "right",
            "instrument" => Instrument,
            "plate" => SupplyPhases.ToString(System.Globalization.CultureInfo.InvariantCulture),
            _ => null,
        };
        var options = ask.GetProperty("options").EnumerateArray().Select(option => option.GetProperty("id").GetString()!).ToList();
        return wanted is not null && options.Contains(wanted) ? wanted
            : wanted is null && options.Count > 0 ? options[0]
            : throw new InvalidOperationException($"{questionId} about {about} offers {string.Join(", ", options)} and not {wanted}.");
    }

    private static IReadOnlyList<string[]> Ties(JsonElement ask) =>
        ask.GetProperty("setup") is { ValueKind: JsonValueKind.Object } setup ? [.. setup.GetProperty("tie").EnumerateArray().Select(Strings)] : [];

    private static TestSetup Setup(JsonElement ask)
    {
        var setup = ask.GetProperty("setup");
        return new(
            Strings(setup.GetProperty("drive")), [.. setup.GetProperty("tie").EnumerateArray().Select(Strings)], Strings(setup.GetProperty("read")),
            setup.GetProperty("appliedVolts") is { ValueKind: JsonValueKind.Number } volts ? volts.GetDouble() : null);
    }

    private static string[] Strings(JsonElement array) => [.. array.EnumerateArray().Select(item => item.GetString()!)];
}
