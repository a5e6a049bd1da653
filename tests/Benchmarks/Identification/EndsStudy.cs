using WireCoach.Knowledge;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Benchmarks.Identification;

/// <summary>The ends of drawn motors told apart test by test: how many are settled, how many tests that takes, and whether a number is ever wrong.</summary>
internal static class EndsStudy
{
    private static readonly string[] Kinds =
    [
        "capacitor-start-dual-6", "dual-voltage-4", "capacitor-start-dual-8", "three-phase-6", "three-phase-9-star", "three-phase-9-star+neutral-out", "three-phase-9-delta",
        "three-phase-12", "part-winding-6", "dc-compound", "series-commutator", "dc-shunt",
    ];

    /// <summary>Runs every kind; a figure says how many motors of each.</summary>
    public static void Run(string[] args)
    {
        var motors = args.Length > 0 ? int.Parse(args[0], null) : 500;
        var knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
        var finder = new EndsFinder(knowledge);
        Console.WriteLine($"{"",-34}{"at hand",-16}{"halves",-12}{"motors",7}{"settled%",10}{"can't%",8}{"contrad.%",10}{"tests",7}{"most",6}{"wrong",7}");
        foreach (var kind in Kinds)
        {
            foreach (var instrument in new[] { "low-voltage-ac", "battery", "lcr-meter" })
            {
                Row(finder, kind, instrument, ownPoles: false, motors, seed => new(knowledge, kind, seed, Drawn(seed, 1.9, 5.2), Drawn(~seed, 0.3, 1.2)));
                Row(finder, kind, instrument, ownPoles: true, motors, seed => new(knowledge, kind, seed, Drawn(seed, 1.0, 6), ownPoles: true, stray: Drawn(~seed, 0, 0.05)));
            }
        }
    }

    private static void Row(EndsFinder finder, string kind, string instrument, bool ownPoles, int motors, Func<int, EndsBench> make)
    {
        var (settled, open, contradicted, wrong) = (0, 0, 0, 0);
        var tests = new List<int>();
        for (var seed = 0; seed < motors; seed++)
        {
            var bench = make(seed);
            var (found, taken) = bench.Follow(finder, "multimeter", instrument);
            tests.Add(taken);
            settled += found.Status == EndsStatus.Settled ? 1 : 0;
            open += found.Status == EndsStatus.CannotTell ? 1 : 0;
            contradicted += found.Status == EndsStatus.Contradiction ? 1 : 0;
            if (found is { Status: EndsStatus.Settled, Assignment: { } assignment } && !bench.Lies(assignment))
            {
                wrong++;
                Console.WriteLine($"WRONG {kind} {instrument} seed {seed}: {string.Join(' ', assignment.Select(pair => $"{pair.Key}={pair.Value}"))}");
            }
        }

        double Share(int count) => 100.0 * count / motors;
        Console.WriteLine($"{kind,-34}{instrument,-16}{(ownPoles ? "own poles" : "shared"),-12}{motors,7}{Share(settled),10:F1}{Share(open),8:F1}{Share(contradicted),10:F1}{tests.Average(),7:F1}{tests.Max(),6}{wrong,7}");
    }

    private static double Drawn(int seed, double low, double high) => low + ((high - low) * new Random(seed).NextDouble());
}
