using WireCoach.Rules.Cases;
using WireCoach.Rules.Safety;

namespace WireCoach.Rules.Tests.Safety;

/// <summary>The gate as a person would write it on paper, written apart from the knowledge.</summary>
/// <remarks>
/// One letter per task, in the order of <see cref="Tasks"/>: A open at once, C open once something is confirmed, R refused.
/// Every condition stands alone, with an isolated motor without a capacitor unless it says otherwise.
/// </remarks>
internal static class GateTable
{
    public static readonly string[] Tasks =
    [
        "look", "measure-dead", "low-voltage-test", "insulation-test", "reconnect-dead", "first-start", "measure-live",
        "fixed-wiring", "open-panel", "sealed-circuit", "three-phase-supply",
    ];

    public static readonly string[] Roles = ["technician", "homeowner", "apprentice", "manager"];

    /// <summary>Condition, then one row of letters for each role.</summary>
    public static readonly (string Condition, string Technician, string Homeowner, string Apprentice, string Manager)[] Rows =
    [
        ("nothing-special", "ACCCCCCCCRC", "ACRRRRRRRRR", "ACCCCCCRRRR", "ARRRRRRRRRR"),
        ("capacitor-unknown", "ACCCCCCCCRC", "ARRRRRRRRRR", "ACCCCCCRRRR", "ARRRRRRRRRR"),
        ("capacitor", "ACCCCCCCCRC", "ARRRRRRRRRR", "ACCCCCCRRRR", "ARRRRRRRRRR"),
        ("live-cannot-isolate", "RRRRRRRCCRC", "RRRRRRRRRRR", "RRRRRRRRRRR", "RRRRRRRRRRR"),
        ("capacitor-cannot-discharge", "ARRRRRRCCRC", "ARRRRRRRRRR", "ARRRRRRRRRR", "ARRRRRRRRRR"),
        ("fixed-wiring", "ACCCCCCCCRC", "ARRRRRRRRRR", "ACCCCRRRRRR", "ARRRRRRRRRR"),
        ("panel", "ACCCCCCCCRC", "ARRRRRRRRRR", "ACCCCRRRRRR", "ARRRRRRRRRR"),
        ("three-phase", "ACCCCCCCCRC", "ARRRRRRRRRR", "ACCCCRRRRRR", "ARRRRRRRRRR"),
        ("sealed-circuit", "ACRRRRRCCRC", "ARRRRRRRRRR", "ACRRRRRRRRR", "ARRRRRRRRRR"),
        ("water", "CCCCCCCCCRC", "CRRRRRRRRRR", "CCCCCCCRRRR", "CRRRRRRRRRR"),
        ("wet-place", "ACCCCCCCCRC", "ARRRRRRRRRR", "ACCCCCCRRRR", "ARRRRRRRRRR"),
        ("pool", "ACCCCRRRRRR", "ARRRRRRRRRR", "ACCCCRRRRRR", "ARRRRRRRRRR"),
        ("gas-smelled", "RRRRRRRRRRR", "RRRRRRRRRRR", "RRRRRRRRRRR", "RRRRRRRRRRR"),
        ("hazardous-place", "ACRRRRRRRRR", "ARRRRRRRRRR", "ARRRRRRRRRR", "ARRRRRRRRRR"),
        ("lift-fire-medical", "ACRRRRRRRRR", "ARRRRRRRRRR", "ARRRRRRRRRR", "ARRRRRRRRRR"),
        ("above-600-volts", "ARRRRRRRRRR", "ARRRRRRRRRR", "ARRRRRRRRRR", "ARRRRRRRRRR"),
        ("unknown-supply", "ACCCCCCCCRC", "ACRRRRRRRRR", "ACCCCCCRRRR", "ARRRRRRRRRR"),
        ("shock-felt", "CCCCCCCCCRC", "CRRRRRRRRRR", "CCCCCRRRRRR", "CRRRRRRRRRR"),
        ("smoke", "CCCCCCCCCRC", "CRRRRRRRRRR", "CCCCCRRRRRR", "CRRRRRRRRRR"),
        ("bypassed-protection", "ACCCCCCCCRC", "ACRRRRRRRRR", "ACCCCCCRRRR", "ARRRRRRRRRR"),
        ("stored-energy", "ACCCCCCCCRC", "ARRRRRRRRRR", "ACCCCCCRRRR", "ARRRRRRRRRR"),
        ("rotating-parts", "ACCCCCCCCRC", "ACRRRRRRRRR", "ACCCCCCRRRR", "ARRRRRRRRRR"),
        ("automatic-restart", "ACCCCCCCCRC", "ACRRRRRRRRR", "ACCCCCCRRRR", "ARRRRRRRRRR"),
        ("insulation-low", "ACCCCRRCCRR", "ACRRRRRRRRR", "ACCCCRRRRRR", "ARRRRRRRRRR"),
    ];

    /// <summary>The facts that make a condition, beyond a motor without a capacitor.</summary>
    public static IReadOnlyList<Fact> Facts(string condition) => condition switch
    {
        "nothing-special" => [NoCapacitor],
        "capacitor-unknown" => [],
        "capacitor" => [new Fact.Capacitor { Microfarads = 30, Use = "run" }],
        "live-cannot-isolate" => [NoCapacitor, new Fact.Confirm { Id = "isolated", Confirmed = false }],
        "capacitor-cannot-discharge" => [new Fact.Capacitor { Use = "start" }, new Fact.Confirm { Id = "capacitor-discharged", Confirmed = false }],
        "fixed-wiring" => [NoCapacitor, new Fact.Choice { Question = "installed", Option = "fixed" }],
        "panel" => [NoCapacitor, new Fact.Choice { Question = "installed", Option = "panel" }],
        "three-phase" => [NoCapacitor, new Fact.Supply { Volts = 400, Phases = 3 }],
        "sealed-circuit" => [NoCapacitor, new Fact.Application { Text = "compressor of the milk cooler" }],
        "water" => [NoCapacitor, Seen("got-wet")],
        "wet-place" => [NoCapacitor, new Fact.Choice { Question = "place", Option = "wet" }],
        "pool" => [NoCapacitor, new Fact.Application { Text = "the pool pump" }],
        "gas-smelled" => [NoCapacitor, SafetyGate.Heard("gas-smelled")],
        "hazardous-place" => [NoCapacitor, new Fact.Application { Text = "fan of the spray booth" }],
        "lift-fire-medical" => [NoCapacitor, new Fact.Application { Text = "the fire pump in the dairy" }],
        "above-600-volts" => [NoCapacitor, new Fact.Plate { Field = "volts", Value = PlateValue.Of(2300) }],
        "unknown-supply" => [NoCapacitor, new Fact.Unknown { Question = "supply.volts" }],
        "shock-felt" => [NoCapacitor, Seen("shock-from-frame")],
        "smoke" => [NoCapacitor, Seen("smoke-or-burnt-smell")],
        "bypassed-protection" => [NoCapacitor, Seen("protection-bypassed")],
        "stored-energy" => [NoCapacitor, new Fact.Application { Text = "garage door" }],
        "rotating-parts" => [NoCapacitor, Seen("starts-if-spun")],
        "automatic-restart" => [NoCapacitor, Seen("thermal-cutout-cycles")],
        "insulation-low" => [NoCapacitor, new Fact.Insulation { Megohms = 0.4 }],
        _ => throw new ArgumentException(condition, nameof(condition)),
    };

    public static Fact.Symptom Seen(string id) => new() { Id = id };

    private static Fact.Capacitor NoCapacitor => new() { Present = false };
}
