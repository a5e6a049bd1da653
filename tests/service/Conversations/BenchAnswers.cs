using System.Text.Json;

namespace WireCoach.Service.Tests.Conversations;

/// <summary>Answers questions as somebody who has the motor on the bench; goes by the members of the question and reads no sentence.</summary>
internal sealed class BenchAnswers(BenchMotor motor) : IBenchAnswers
{
    /// <summary>What a look at a capacitor-start motor tells.</summary>
    private static readonly Dictionary<string, string> Seen = new(StringComparer.Ordinal)
    {
        ["both-ways"] = "one",
        ["brushes"] = "no",
        ["capacitor-wires"] = "inside",
        ["several-speeds"] = "single",
    };

    private int _readings;
    private int _starts;

    /// <summary>Volts of the supply.</summary>
    public required double Supply { get; init; }

    /// <summary>What is known before anything is asked: the leads by tag, and the supply.</summary>
    public object[] Known(IReadOnlyDictionary<string, string>? marks) =>
    [
        new { kind = "supply", volts = Supply, phases = 1, hertz = 60 },
        .. motor.Tags.Select(tag => (object)new { kind = "lead", tag, marking = marks?.First(mark => mark.Value == tag).Key }),
    ];

    /// <summary>What is at hand for the test of the ends.</summary>
    public string Instrument { get; init; } = "low-voltage-ac";

    /// <summary>The number of the meter reading that comes out wrong; 0 for none.</summary>
    public int Mistake { get; init; }

    /// <summary>Whether a start with this plan turns the way the machine needs.</summary>
    public Func<int, JsonElement, bool> TurnsRight { get; init; } = (_, _) => true;

    /// <summary>The answer, in the contract's members.</summary>
    public object Answer(JsonElement ask, JsonElement plan)
    {
        var questionId = ask.GetProperty("id").GetString()!;
        var about = ask.GetProperty("about").GetString()!;
        return ask.GetProperty("kind").GetString() switch
        {
            "confirm" => Done(questionId),
            "reading" => Reading(questionId, ask),
            "quantity" => new { questionId, quantity = new { value = Quantity(about, ask), unit = ask.GetProperty("unit").GetString() } },
            "choice" => new { questionId, choice = Choice(questionId, about, ask, plan) },
            _ => new { questionId, unknown = true },
        };
    }

    private object Done(string questionId)
    {
        if (questionId == "capacitor-refitted")
        {
            motor.Bridged = false;
        }

        return new { questionId, confirmed = true };
    }

    private object Reading(string questionId, JsonElement ask)
    {
        var between = Strings(ask.GetProperty("between"));
        var ohms = motor.Ohms(between[0], between[1], Ties(ask));
        _readings++;
        if (_readings == Mistake)
        {
            ohms = ohms is null ? 4.4 : null;
        }

        return ohms is { } value
            ? new { questionId, reading = (object)new { ohms = value } }
            : new { questionId, reading = (object)new { open = true } };
    }

    private double Quantity(string about, JsonElement ask) => about switch
    {
        "resistance" => 0.2,
        "insulation" => 200,
        "earth-continuity" => 0.3,
        "supply-voltage" or "running" => Supply,
        "run-current" => 2.5,
        "run-speed" => 1175,
        "series-voltage" or "induced-voltage" => Math.Round(Volts(ask.GetProperty("setup"), turning: false), 1),
        "half-run" => Math.Round(Volts(ask.GetProperty("setup"), turning: true), 1),
        _ => throw new InvalidOperationException($"Nothing to measure for '{about}'."),
    };

    private double Volts(JsonElement setup, bool turning) => motor.Volts(
        Strings(setup.GetProperty("drive")), [.. setup.GetProperty("tie").EnumerateArray().Select(Strings)], Strings(setup.GetProperty("read")),
        setup.GetProperty("appliedVolts").GetDouble(), turning);

    private string Choice(string questionId, string about, JsonElement ask, JsonElement plan)
    {
        if (about == "capacitor" && questionId == "capacitor-bridged")
        {
            motor.Bridged = true;
            return "bridged";
        }

        if (Seen.TryGetValue(questionId, out var seen))
        {
            return seen;
        }

        if (questionId == "start-branch")
        {
            return "still-open";
        }

        if (about == "soft-first-run")
        {
            return SoftRun(ask.GetProperty("setup")) ? "ran" : "hummed";
        }

        if (about == "running")
        {
            _starts++;
            return "ran";
        }

        var wanted = about switch
        {
            "capacitor" => "one",
            "run-direction" => TurnsRight(_starts, plan) ? "right" : "wrong",
            "instrument" => Instrument,
            "plate" => "1",
            _ => null,
        };
        var options = ask.GetProperty("options").EnumerateArray().Select(option => option.GetProperty("id").GetString()!).ToList();
        return wanted is not null && options.Contains(wanted) ? wanted : options[0];
    }

    /// <summary>Whether the halves help each other as joined for a soft first run.</summary>
    private bool SoftRun(JsonElement setup)
    {
        var drive = Strings(setup.GetProperty("drive"));
        var ties = setup.GetProperty("tie").EnumerateArray().Select(Strings).ToList();
        string? Line(string[] leads) => leads.Contains(drive[0]) ? "L1" : leads.Contains(drive[1]) ? "L2" : null;
        var joints = ties.Concat(drive.Where(lead => !ties.Exists(tie => tie.Contains(lead))).Select(lead => new[] { lead })).Select(leads => (leads, Line(leads))).ToList();
        var (halves, _, _) = motor.Connected(joints);
        return halves[0] * halves[1] > 0;
    }

    private static IReadOnlyList<string[]> Ties(JsonElement ask) =>
        ask.GetProperty("setup") is { ValueKind: JsonValueKind.Object } setup ? [.. setup.GetProperty("tie").EnumerateArray().Select(Strings)] : [];

    private static string[] Strings(JsonElement array) => [.. array.EnumerateArray().Select(item => item.GetString()!)];
}

/// <summary>Somebody who has the motor on the bench.</summary>
internal interface IBenchAnswers
{
    /// <summary>What is known before anything is asked.</summary>
    object[] Known(IReadOnlyDictionary<string, string>? marks);

    /// <summary>The answer to a question, in the contract's members.</summary>
    object Answer(JsonElement ask, JsonElement plan);
}
