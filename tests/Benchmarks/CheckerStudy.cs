using System.Diagnostics;
using WireCoach.Knowledge;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Tests.Connections.Checking;

namespace WireCoach.Benchmarks;

/// <summary>Chance slips on motors with more than six leads: the checker against the independent judge of the tests.</summary>
internal static class CheckerStudy
{
    public static void Run(string[] args)
    {
        var checker = new ConnectionChecker(KnowledgeFolder.Load(KnowledgeFolder.Beside));
        var (chance, wanted) = (new Random(4), args.Length > 0 ? int.Parse(args[0]) : 100_000);
        var motors = BenchMotor.All.Where(motor => motor.Leads.Count > 6).ToList();
        var (right, differ, watch) = (0, 0, Stopwatch.StartNew());
        for (var again = 0; again < wanted; again++)
        {
            var motor = motors[again % motors.Count];
            var nets = motor.Slipped(chance);
            var expected = IndependentJudge.IsRight(motor, nets);
            right += expected ? 1 : 0;
            differ += expected == (checker.Judged(motor.Found(nets)).Verdict == Verdict.Correct) ? 0 : 1;
        }

        Console.WriteLine($"{wanted} connections of {motors.Count} motors with 8 to 12 leads in {watch.Elapsed.TotalSeconds:F0} s: {right} right, {differ} judged otherwise than by the independent judge");
    }
}
