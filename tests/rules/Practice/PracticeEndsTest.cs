using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Practice;

/// <summary>Ends told on practice motors, and proved by switching the motor on.</summary>
public sealed class PracticeEndsTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    [Theory]
    [InlineData("capacitor-start-dual-6")]
    [InlineData("capacitor-start-dual-8")]
    [InlineData("dual-voltage-4")]
    [InlineData("three-phase-6")]
    [InlineData("three-phase-12")]
    public void Joined_by_the_ends_that_were_told_the_motor_runs_on_every_row(string layout)
    {
        for (var seed = 0; seed < 12; seed++)
        {
            var motor = PracticeMotorTest.Motor(layout, null, seed);
            var form = PracticeMotorTest.Form(motor);
            if (form.Form?.StartsWith("protector", StringComparison.Ordinal) == true)
            {
                continue;
            }

            var volts = motor.Opening().OfType<Fact.Plate>().Single(plate => plate.Field == "volts").Value.Numbers[0];
            var found = Told(motor, new EndsInput
            {
                Layout = layout,
                Windings = Windings(form, motor.Truth.Leads, seed),
                Instruments = ["multimeter", "low-voltage-ac"],
                LowVolts = volts,
            });
            Assert.True(found.Status == EndsStatus.Settled, $"{layout} {seed} own poles {motor.Truth.OnOwnPoles}: {found.Status} {string.Join(", ", found.Notes)}");
            foreach (var row in form.Connections.Where(row => !row.Starting))
            {
                var run = motor.Power(PracticeMotorTest.Joints(motor, row, leads: found.Assignment), PracticeMotorTest.Supply(motor, row));
                Assert.True(run.Outcome == "ran", $"{layout} {form.Form} seed {seed} {row.Id}: {run.Outcome}");
            }
        }
    }

    private static EndsFinding Told(WireCoach.Rules.Practice.PracticeMotor motor, EndsInput input)
    {
        for (var test = 0; test < 40; test++)
        {
            var found = new EndsFinder(Knowledge).Find(input).Value!;
            if (found.Next is not { } next)
            {
                return found;
            }

            input = input with { Results = [.. input.Results, EndsResult.Of(motor.Test(next.Test, next.Setup).Value!)] };
        }

        throw new InvalidOperationException("The tests never end.");
    }

    private static List<EndsWinding> Windings(Layout form, IReadOnlyDictionary<string, string> leads, int seed)
    {
        var random = new Random(seed);
        string? Lead(string node) => leads.TryGetValue(node, out var tag) ? tag
            : form.Parts.FirstOrDefault(part => part.From == node) is { } part ? Lead(part.To) : null;
        var windings = form.Coils.Where(coil => coil.Role != "start" || form.Id != "dual-voltage-4").Select(coil =>
        {
            string[] ends = [Lead(coil.From)!, Lead(coil.To)!];
            random.Shuffle(ends);
            return new EndsWinding(coil.Role, ends);
        }).ToArray();
        random.Shuffle(windings);
        return [.. windings];
    }
}
