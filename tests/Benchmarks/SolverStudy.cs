using System.Diagnostics;
using WireCoach.Rules.Circuits;

namespace WireCoach.Benchmarks;

/// <summary>How many nine-lead motors one core solves in a second, and what each solve allocates.</summary>
internal static class SolverStudy
{
    private static readonly string[] Coils = ["T1-T4", "T2-T5", "T3-T6", "T7-n", "T8-n", "T9-n"];

    public static void Run(string[] args)
    {
        var network = NineLeads();
        var seconds = args.Length > 0 ? double.Parse(args[0]) : 3;
        Solve(network, 0.5);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var (solves, elapsed) = Solve(network, seconds);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Console.WriteLine($"nine-lead star, high voltage, one core: {solves / elapsed:F0} solves/s, {allocated / solves} bytes allocated per solve ({solves} solves)");
    }

    private static (long Solves, double Seconds) Solve(Network network, double seconds)
    {
        var watch = Stopwatch.StartNew();
        long solves = 0;
        while (watch.Elapsed.TotalSeconds < seconds)
        {
            for (var again = 0; again < 100; again++)
            {
                if (!NetworkSolver.Solve(network).IsGiven)
                {
                    throw new InvalidOperationException("The nine-lead motor has no solution.");
                }
            }

            solves += 100;
        }

        return (solves, watch.Elapsed.TotalSeconds);
    }

    private static Network NineLeads()
    {
        string Joined(string lead) => lead switch { "T4" or "T7" => "47", "T5" or "T8" => "58", "T6" or "T9" => "69", _ => lead };
        var elements = new List<Element>();
        for (var line = 1; line <= 3; line++)
        {
            elements.Add(new Element.Source($"L{line}", $"T{line}", "N", 265.6, -120 * (line - 1)));
        }

        foreach (var coil in Coils)
        {
            var ends = coil.Split('-');
            elements.Add(new Element.Inductor(coil, Joined(ends[0]), Joined(ends[1]), 0.02, 1));
        }

        var couplings = new List<Coupling>();
        for (var one = 0; one < 6; one++)
        {
            for (var other = one + 1; other < 6; other++)
            {
                couplings.Add(new Coupling(Coils[one], Coils[other], one % 3 == other % 3 ? 0.9 : -0.45));
            }
        }

        return new Network { Elements = elements, Couplings = couplings, Hertz = 60, Ground = "N" };
    }
}
