using System.Diagnostics;
using WireCoach.Knowledge;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Benchmarks.Identification;

/// <summary>What choosing the next reading costs, by the number of leads.</summary>
internal static class IdentifyCostStudy
{
    private static readonly string[] Kinds =
        ["split-phase-3", "capacitor-start-4", "psc-tapped", "capacitor-start-dual-6", "three-phase-6", "two-speed-6", "capacitor-start-dual-8", "three-phase-9-star", "three-phase-9-delta", "three-phase-12"];

    public static void Run(string[] args)
    {
        var motors = args.Length > 0 ? int.Parse(args[0], null) : 40;
        var identifier = new Identifier(KnowledgeFolder.Load(KnowledgeFolder.Beside), remembered: 0);
        Console.WriteLine($"{"",-26}{"leads",6}{"calls",7}{"median ms",11}{"p95 ms",9}{"p99 ms",9}{"cpu p95",9}{"cpu p99",9}{"kB a call",11}{"most kB",9}");
        foreach (var kind in Kinds.Where(kind => args.Length < 2 || args.Contains(kind)))
        {
            Measure(identifier, kind, motors / 4);
            var (times, busy, leads, bytes) = Measure(identifier, kind, motors);
            times.Sort();
            busy.Sort();
            bytes.Sort();
            Console.WriteLine($"{kind,-26}{leads,6}{times.Count,7}{times[times.Count / 2],11:F2}{times[(int)(times.Count * 0.95)],9:F2}{times[(int)(times.Count * 0.99)],9:F2}{busy[(int)(times.Count * 0.95)],9:F2}{busy[(int)(times.Count * 0.99)],9:F2}{bytes.Average() / 1024,11:F0}{bytes[^1] / 1024.0,9:F0}");
        }
    }

    /// <remarks>Beside the time by the clock stands that of the processor, which other work on the machine does not lengthen.</remarks>
    private static (List<double> Milliseconds, List<double> Busy, int Leads, List<long> Bytes) Measure(Identifier identifier, string kind, int motors)
    {
        var (times, busy, bytes) = (new List<double>(), new List<double>(), new List<long>());
        var leads = 0;
        for (var seed = 0; seed < motors; seed++)
        {
            var chance = new Random(seed);
            var motor = new MotorFactory(chance).Make(kind);
            leads = motor.Tags.Count;
            var person = new BenchPerson(motor, new(chance, 1, 2, 0.2), chance, mistaken: false);
            while (person.Touches < 80)
            {
                var before = GC.GetAllocatedBytesForCurrentThread();
                var used = Environment.CpuUsage.TotalTime;
                var clock = Stopwatch.GetTimestamp();
                var found = identifier.Identify(new() { Leads = motor.Tags, Readings = person.Readings, Meter = person.Said }).Value!;
                times.Add(Stopwatch.GetElapsedTime(clock).TotalMilliseconds);
                busy.Add((Environment.CpuUsage.TotalTime - used).TotalMilliseconds);
                bytes.Add(GC.GetAllocatedBytesForCurrentThread() - before);
                if (found.Next is null || found.Status != IdentificationStatus.NeedsReading)
                {
                    break;
                }

                person.Measure(found.Next.From, found.Next.To);
            }
        }

        return (times, busy, leads, bytes);
    }
}
