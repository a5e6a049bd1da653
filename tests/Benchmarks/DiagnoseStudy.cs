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
        Console.WriteLine($"{"world",-22}{"order",-10}{"told",6}{"top 3",8}{"action",8}{"top 3 after 5",15}{"action",8}{"settled",9}{"rightly",9}{"tests",7}{"minutes",9}{"ms/turn",9}");
        foreach (var (world, unsharp, apart) in new[] { ("written apart", 0.0, true), ("apart, odds ± 0.4", 0.4, true), ("as knowledge says", 0.0, false), ("log odds ± 0.4", 0.4, false), ("log odds ± 0.8", 0.8, false) })
        {
            foreach (var fixedOrder in new[] { false, true })
            {
                var watch = Stopwatch.StartNew();
                var tally = new FaultSimulation(knowledge, unsharp, seed: 2026, apart).Run(motors, fixedOrder);
                Console.WriteLine(
                    $"{world,-22}{(fixedOrder ? "textbook" : "chosen"),-10}{(double)tally.Told / tally.Motors,6:F2}{tally.Share(tally.TopThreeAtOnce),8:F3}{tally.Share(tally.InstructionAtOnce),8:F3}{tally.Share(tally.TopThreeAfterFive),15:F3}{tally.Share(tally.InstructionAfterFive),8:F3}{tally.Share(tally.Settled),9:F3}" +
                    $"{(double)tally.SettledRightly / tally.Settled,9:F3}{(double)tally.Tests / tally.Motors,7:F2}{tally.Seconds / tally.Motors / 60,9:F1}{watch.Elapsed.TotalMilliseconds / (tally.Tests + tally.Motors),9:F2}");
                if (!fixedOrder && args.Contains("misses"))
                {
                    Misses(tally);
                }
            }
        }
    }

    /// <summary>Which faults were not among the first three after the words alone, and what stood first instead.</summary>
    private static void Misses(FaultSimulation.Tally tally)
    {
        foreach (var (fault, (all, missed, instead)) in tally.ByFault.OrderByDescending(one => one.Value.Missed).Take(40))
        {
            Console.WriteLine($"    {fault,-50}{missed,6} of {all,-6}{string.Join(", ", instead.OrderByDescending(one => one.Value).Take(4).Select(one => $"{one.Key} {one.Value}"))}");
        }
    }
}
