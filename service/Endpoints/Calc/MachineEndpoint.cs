using System.Text.Json;
using WireCoach.Rules.Machines;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>The machine models: single-phase, two-winding and three-phase induction machines at one slip or over all slips.</summary>
internal static class MachineEndpoint
{
    public static void MapMachine(this RouteGroupBuilder calc) => calc.MapPost("/machine", Solve)
        .Accepts<MachineBody>("application/json")
        .Produces<MachineAnswer>()
        .WithSummary("What an induction machine draws and gives at one slip, or over all slips")
        .WithDescription(
            "Circuit in ohms at the stated hertz, rotor referred to the stator: r1, x1, r2, x2, xm, and rc where known. " +
            "single-phase: double revolving field, each field takes half of r2, x2 and xm. " +
            "two-winding: main {r, x} and start {r, x} are the windings' own resistance and leakage when r2, x2 and xm are given, and turnsRatio is start over main; " +
            "without r2, x2 and xm they are the locked-rotor impedances, and only the start is answered. startVolts and startAngleDegrees where the start branch has a supply of its own. " +
            "three-phase: one phase as a star, volts between lines; lineVolts [ab, bc, ca] for an unbalanced supply, openLine \"a\", \"b\" or \"c\" for a lost line. " +
            "slip or rpm; curve: n gives n points from standstill to the field's speed. " +
            "coreWatts and rotationalWatts are both taken off the converted power (coreBooking \"from-output\", the habit of the no-load test); " +
            "coreBooking \"to-input\" adds the core loss to the input instead. Instead of a circuit: tests {noLoad {volts, amps, watts}, blocked {volts, amps, watts}, r1}. " +
            "Or an estimate from the plate alone: plate {amps, volts}; then 'basis' is 'estimate' and 'estimates' gives the range of every figure over the circuits that such motors have. " +
            "'effects' says what a low supply, a weak capacitor, a lost line or a reversed half of the run winding does, in percent of the sound machine. " +
            "Torque in newton metres; angles against the supply, negative lags.");

    private static IResult Solve(JsonElement body, TradeKnowledge knowledge, Problems problems)
    {
        var wrong = new List<Problem>();
        var question = MachineReader.Read(body, wrong);
        return wrong.Count > 0 ? problems.Result(wrong) : problems.Result(MachineAnswers.Of(question, knowledge));
    }

    /// <summary>The body as the OpenAPI document shows it; members by their other usual names are understood too.</summary>
    internal sealed record MachineBody(
        string Kind, double? R1, double? X1, double? R2, double? X2, double? Xm, double? Rc, WindingBody? Main, WindingBody? Start, double? TurnsRatio,
        double? Microfarads, double? StartVolts, double? StartAngleDegrees, double Volts, IReadOnlyList<double>? LineVolts, string? OpenLine, double Hertz, int Poles,
        double? Slip, double? Rpm, double? CoreWatts, double? RotationalWatts, string? CoreBooking, int? Curve, TestsBody? Tests, PlateBody? Plate);

    internal sealed record WindingBody(double R, double X);

    internal sealed record PlateBody(double? Amps, double? Volts);

    internal sealed record TestsBody(BenchReading NoLoad, BenchReading Blocked, double R1);
}
