using System.Globalization;
using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Machines;

/// <summary>How a machine answer was worked out, step by step.</summary>
internal static class MachineTrail
{
    public static IReadOnlyList<TrailStep> Single(MachineQuestion question, MachineCircuit circuit)
    {
        var (forward, backward) = circuit.Halves(question.AskedSlip);
        return
        [
            Speed(question),
            new("forward field", "Zf = (jXm/2) ∥ (R2/2s + jX2/2)", Ohms(circuit), Text(forward)),
            new("backward field", "Zb = (jXm/2) ∥ (R2/2(2−s) + jX2/2)", Ohms(circuit), Text(backward)),
            new("line current", "I = V / (R1 + jX1 + Zf + Zb)", Units.Text(question.Feed.Volts, "volt"), Units.Text(Amps(question, circuit), "amp", 4)),
            Booking(question),
        ];
    }

    public static IReadOnlyList<TrailStep> Two(MachineQuestion question, MachineCircuit circuit) =>
    [
        Speed(question),
        new("winding currents", "Vm = (R1 + jX1 + Zf + Zb)·Im − ja(Zf − Zb)·Is; Vs = ja(Zf − Zb)·Im + (Rs + jXs + Zc + a²(Zf + Zb))·Is", Ohms(circuit), "two equations, solved together"),
        new("torque", "T = (|Im − ja·Is|²·Re Zf − |Im + ja·Is|²·Re Zb) / ωs", $"a = {Units.Number(question.TurnsRatio ?? 0, 4)}", "N·m"),
        Booking(question),
    ];

    public static IReadOnlyList<TrailStep> Locked(MachineQuestion question) =>
    [
        new("currents at standstill", "Im = V / Zm, Is = V / (Zs − jXc)", Units.Text(question.Feed.Volts, "volt"), "the windings stand at right angles and do not see each other"),
        new("capacitor for 90°", "Xc = Xs + Rs·Rm / Xm", "locked-rotor impedances", "Is leads Im by 90°"),
        new("capacitor for the greatest starting torque", "Xc = Xs + Rs·(|Zm| − Xm) / Rm", "locked-rotor impedances", "Im·Is·sin is greatest"),
    ];

    public static IReadOnlyList<TrailStep> Three(MachineQuestion question, MachineCircuit circuit) =>
    [
        Speed(question),
        new("one phase", "Z = R1 + jX1 + jXm ∥ (R2/s + jX2)", Ohms(circuit), Text(circuit.Stator + circuit.Field(question.AskedSlip))),
        question switch
        {
            { OpenLine: not null } => new("lost line", "I1 = −I2, VBC across Z1 + Z2 in series", "positive and negative sequence", "I line = √3·I1"),
            { LineVolts: not null } => new("unequal volts", "sequences V1, V2; I1 = V1/Z(s), I2 = V2/Z(2−s)", "three line voltages", "I line = I1 + I2"),
            _ => new("torque", "T = 3·I2²·(R2/s) / ωs", Units.Text(question.Feed.Volts, "volt"), "N·m"),
        },
        Booking(question),
    ];

    private static TrailStep Speed(MachineQuestion question) => new(
        "slip", "s = (ns − n) / ns, ns = 120·f / p",
        $"{Units.Text(question.Feed.Hertz, "hertz")}, {question.Feed.Poles} poles",
        $"s = {Units.Number(question.AskedSlip, 5)}, ns = {Units.Text(question.Feed.SynchronousRpm, "rpm", 5)}");

    private static TrailStep Booking(MachineQuestion question) => question.CoreBooking == "to-input"
        ? new("losses", "Pin = Pcircuit + Pcore; Pout = (1−s)·Pgap − Protational", Watts(question), "core loss added to the input")
        : new("losses", "Pout = (1−s)·Pgap − Pcore − Protational", Watts(question), "core loss taken off the converted power, as the no-load test measures it");

    private static string Watts(MachineQuestion question) =>
        $"core {Units.Text(question.CoreWatts, "watt")}, friction and windage {Units.Text(question.RotationalWatts, "watt")}";

    private static double Amps(MachineQuestion question, MachineCircuit circuit) =>
        SinglePhase.At(circuit, question.Feed, question.AskedSlip, question.Losses).Amps;

    private static string Ohms(MachineCircuit circuit) => string.Create(
        CultureInfo.InvariantCulture, $"R1 {circuit.R1:G5}, X1 {circuit.X1:G5}, R2 {circuit.R2:G5}, X2 {circuit.X2:G5}, Xm {circuit.Xm:G5} Ω");

    private static string Text(System.Numerics.Complex ohms) =>
        string.Create(CultureInfo.InvariantCulture, $"{ohms.Real:G5} + j{ohms.Imaginary:G5} Ω");
}
