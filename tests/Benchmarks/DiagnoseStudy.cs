using System.Diagnostics;
using WireCoach.Knowledge;
using WireCoach.Rules.Tests.Diagnosis;

namespace WireCoach.Benchmarks;

/// <summary>Simulated faulty motors through the whole loop, in a world as knowledge says and in one that differs from it: tests to settle, against a fixed order.</summary>
internal static class DiagnoseStudy
{
    public static void Run(string[] args)
    {
        var motors = args.Length > 0 ? int.Parse(args[0], System.Globalization.CultureInfo.InvariantCulture) : 50_000;
        var knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
        Console.WriteLine($"{motors} motors each; a settled case is one instruction at 0.95 or more");
        Console.WriteLine($"{"world",-22}{"order",-10}{"top 3",8}{"top 3 after 5",15}{"settled",9}{"rightly",9}{"tests",7}{"minutes",9}{"ms/turn",9}");
        foreach (var (world, unsharp) in new[] { ("as knowledge says", 0.0), ("log odds ± 0.4", 0.4), ("log odds ± 0.8", 0.8) })
        {
            foreach (var fixedOrder in new[] { false, true })
            {
                var watch = Stopwatch.StartNew();
                var tally = new FaultSimulation(knowledge, unsharp, seed: 2026).Run(motors, fixedOrder);
                Console.WriteLine(
                    $"{world,-22}{(fixedOrder ? "textbook" : "chosen"),-10}{tally.Share(tally.TopThreeAtOnce),8:F3}{tally.Share(tally.TopThreeAfterFive),15:F3}{tally.Share(tally.Settled),9:F3}" +
                    $"{(double)tally.SettledRightly / tally.Settled,9:F3}{(double)tally.Tests / tally.Motors,7:F2}{tally.Seconds / tally.Motors / 60,9:F1}{watch.Elapsed.TotalMilliseconds / (tally.Tests + tally.Motors),9:F2}");
            }
        }
    }
}
