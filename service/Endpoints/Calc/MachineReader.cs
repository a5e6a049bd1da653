using System.Numerics;
using System.Text.Json;
using WireCoach.Rules.Machines;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Reads a machine question, by the contract's names and the other names that textbooks and tools use.</summary>
internal static class MachineReader
{
    public static MachineQuestion Read(JsonElement body, List<Problem> wrong)
    {
        var all = new Members(body, string.Empty, wrong);
        var circuit = all.Has("circuit", "parameters", "equivalentCircuit", "params") ? all.Inner("circuit", "parameters", "equivalentCircuit", "params") : all;
        var (main, start, plate) = (all.Inner("main"), all.Inner("start", "aux", "auxiliary"), all.Inner("plate"));
        var kind = all.Text("kind");
        return new MachineQuestion
        {
            Kind = kind ?? string.Empty,
            R1 = circuit.Number("r1", "statorResistance", "statorOhms", "r1Ohms", "rs") ?? Resistance(main),
            X1 = circuit.Number("x1", "statorReactance", "statorLeakageReactance", "statorLeakageOhms", "x1Ohms", "xs") ?? Reactance(main),
            R2 = circuit.Number("r2", "rotorResistance", "rotorOhms", "r2Ohms", "rr") ?? main.Number("r2", "rotorR"),
            X2 = circuit.Number("x2", "rotorReactance", "rotorLeakageReactance", "rotorLeakageOhms", "x2Ohms", "xr") ?? main.Number("x2", "rotorX"),
            Xm = circuit.Number("xm", "magnetizingReactance", "magnetisingReactance", "magnetizingOhms", "magnetisingOhms", "xmOhms", "xphi") ?? main.Number("xm"),
            Rc = circuit.Number("rc", "coreResistance", "coreOhms"),
            StartR = Resistance(start),
            StartX = Reactance(start),
            TurnsRatio = all.Number("turnsRatio", "a", "ratio"),
            Microfarads = all.Number("microfarads", "capacitance", "capacitorMicrofarads", "cUf") ?? start.Number("microfarads"),
            StartVolts = all.Number("startVolts") ?? start.Number("volts"),
            StartAngleDegrees = all.Number("startAngleDegrees") ?? start.Number("angleDegrees") ?? 0,
            Volts = all.KindOf("volts") == JsonValueKind.Array ? null : all.Number("volts", "v", "voltage", "lineVoltage", "vll"),
            LineVolts = all.KindOf("volts") == JsonValueKind.Array ? all.Numbers("volts") : all.Numbers("lineVolts"),
            PlateAmps = plate.Number("amps"),
            PlateVolts = plate.Number("volts"),
            OpenLine = OpenLine(all),
            Hertz = all.Number("hertz", "f", "hz", "frequency"),
            Poles = all.Number("poles", "p"),
            Slip = all.Number("slip", "s"),
            Rpm = all.Number("rpm", "speed", "n"),
            CoreWatts = all.Number("coreWatts", "pCore", "coreLossWatts", "coreLoss") ?? 0,
            RotationalWatts = all.Number("rotationalWatts", "pRot", "frictionWatts", "frictionWindageWatts", "frictionAndWindageWatts", "pFrictionWindage", "pFw") ?? 0,
            CoreBooking = all.Text("coreBooking") ?? "from-output",
            Curve = all.Number("curve"),
            Tests = all.Has("tests") ? Tests(all.Inner("tests")) : null,
        };
    }

    private static double? Resistance(Members winding) => winding.Number("r", "ohms", "r1", "resistance");

    private static double? Reactance(Members winding) => winding.Number("x", "x1", "reactance", "reactanceOhms");

    private static string? OpenLine(Members all) => all.KindOf("openLine", "lineOpen", "oneLineOpen") switch
    {
        JsonValueKind.True => "a",
        JsonValueKind.False or JsonValueKind.Undefined => null,
        _ => all.Text("openLine", "lineOpen", "oneLineOpen")?.ToUpperInvariant() switch { "A" or "L1" => "a", "B" or "L2" => "b", "C" or "L3" => "c", var other => other },
    };

    private static MachineTests Tests(Members tests) => new(
        Reading(tests.Inner("noLoad")), Reading(tests.Inner("blocked", "blockedRotor")), tests.Needed("r1", "statorOhms"),
        tests.Number("leakageRatio", "x1OverX2") ?? 1, tests.Inner("blocked", "blockedRotor").Number("hertz"));

    private static BenchReading Reading(Members reading) =>
        new(reading.Needed("volts", "v"), reading.Needed("amps", "i"), reading.Needed("watts", "p"));
}
