using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Practice;

namespace WireCoach.Rules.Tests.Practice;

/// <summary>Simulated motors with all that is seen and measured of them, as they were looked at: a lesson that is opened again has the same motor.</summary>
public sealed class WrittenMotorsTest
{
    [Fact]
    public void Each_motor_is_the_one_that_was_looked_at() =>
        Sheets.Hold("motors.txt", [.. Trade.Knowledge.Layouts.Keys.Order(StringComparer.Ordinal).SelectMany((layout, at) => Motors(layout, at + 1))]);

    private static IEnumerable<(string About, object Report)> Motors(string layout, int seed)
    {
        var sound = Told(PracticeMotorTest.Motor(layout, null, seed));
        yield return ($"{layout}, sound", sound);
        foreach (var fault in PracticeMotor.FaultsOf(Trade.Knowledge, layout))
        {
            yield return ($"{layout}, {fault}", Told(PracticeMotorTest.Motor(layout, fault, seed)).Except(sound).ToList());
        }
    }

    private static IReadOnlyList<string> Told(PracticeMotor motor)
    {
        var form = PracticeMotorTest.Form(motor);
        var pairs = motor.Tags.SelectMany((one, at) => motor.Tags.Skip(at + 1).Append("frame").Select(other => (One: one, Other: other))).ToList();
        return
        [
            $"{motor.Machine}: {motor.Truth.Layout} {motor.Truth.Form}, {string.Join(' ', motor.Truth.Leads.Select(lead => $"{lead.Key}={lead.Value}"))}",
            .. motor.Opening().Select(Said),
            .. pairs.Select(pair => Said(motor.Touch(pair.One, pair.Other).Value!)),
            .. pairs.Where(pair => motor.Touch(pair.One, pair.Other).Value!.Kick).Select(pair => $"bridged, {Said(motor.Touch(pair.One, pair.Other, capacitorsBridged: true).Value!)}"),
            .. pairs.Where(pair => pair.Other != "frame").Select(pair => $"{pair.One} to {pair.Other} while it turns: {motor.Turned(pair.One, pair.Other)}").Where(said => !said.EndsWith("steady", StringComparison.Ordinal)),
            $"dragged: {motor.Dragged()}",
            Said(motor.Probes()),
            Said(motor.Earth()),
            Said(motor.Insulation()),
            .. form.Connections.Select(row => $"{row.Id}: {Run(motor.Power(PracticeMotorTest.Joints(motor, row), PracticeMotorTest.Supply(motor, row)))}"),
            .. form.Connections.Where(row => row.Lines.Count == 2).Select(row => $"{row.Id} on twice the volts: {Run(motor.Power(PracticeMotorTest.Joints(motor, row), PracticeMotorTest.Supply(motor, row) with { Volts = 2 * PracticeMotorTest.Supply(motor, row).Volts }))}"),
            .. form.Connections.Where(row => row.Lines.Count == 3).Take(1).Select(row => $"{row.Id} without L3: {Run(motor.Power([.. PracticeMotorTest.Joints(motor, row).Where(joint => joint.Conductor != "L3")], PracticeMotorTest.Supply(motor, row)))}"),
        ];
    }

    private static string Said(Fact fact) => Trade.Knowledge.Sentences.Render(Echo.Of(fact));

    private static string Run(Fact.Running run) => $"{run.Outcome}, {run.Amps} A, {run.Rpm} rpm, {run.Direction}";
}
