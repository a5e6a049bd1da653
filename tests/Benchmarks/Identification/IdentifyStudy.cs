using System.Diagnostics;
using WireCoach.Knowledge;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Benchmarks.Identification;

/// <summary>Simulated motors measured as the identifier asks: how many it settles, how many touches it takes, and that it never names a wrong winding.</summary>
internal static class IdentifyStudy
{
    public static void Run(string[] args)
    {
        var identifier = new Identifier(KnowledgeFolder.Load(KnowledgeFolder.Beside));
        Yardstick(identifier);
        var motors = args.Length > 0 ? int.Parse(args[0], null) : 20_000;
        CapacitorStart(identifier, motors);
    }

    /// <summary>Three windings on six unmarked leads, two alike and one higher, a clean meter.</summary>
    private static void Yardstick(Identifier identifier)
    {
        var touches = new List<int>();
        var settled = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            var chance = new Random(seed);
            var motor = new MotorFactory(chance).Make("capacitor-start-dual-6", ohms: 3.2, ratio: 2.3);
            var person = new BenchPerson(motor, new(chance, 0, 0, 0), chance, mistaken: false);
            var found = person.Follow(identifier, new() { Leads = [], HasCapacitor = true, CapacitorBridged = true });
            settled += found.Status == IdentificationStatus.Identified ? 1 : 0;
            touches.Add(person.Touches);
        }

        Console.WriteLine($"clean meter, two alike and one higher: {settled} of {touches.Count} settled, touches mean {touches.Average():F3} (optimum 6.000)");
    }

    private static void CapacitorStart(Identifier identifier, int motors)
    {
        var clock = Stopwatch.StartNew();
        var outcomes = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var touches = new List<int>();
        var habit = new List<int>();
        var families = new SortedDictionary<string, Touched>(StringComparer.Ordinal);
        var wrong = 0;
        for (var seed = 0; seed < motors; seed++)
        {
            var chance = new Random(seed);
            var kind = chance.NextDouble() < 0.6 ? "capacitor-start-dual-6" : "capacitor-start-4";
            var fault = chance.NextDouble() < 0.1 ? (chance.Next(2) == 0 ? "open" : "shorted") : "";
            var mistaken = chance.NextDouble() < 0.05;
            var inTheWay = chance.NextDouble() < 0.3;
            var motor = new MotorFactory(chance).Make(kind, fault, inTheWay);
            habit.Add(Habit.Touches(new(motor, new(chance, 1, 2, 0.2), chance, mistaken), motor));
            var person = new BenchPerson(motor, new(chance, 1, 2, 0.2), chance, mistaken);
            var found = person.Follow(identifier, new() { Leads = [], HasCapacitor = true, CapacitorBridged = inTheWay ? null : true });
            var status = $"{(fault.Length > 0 ? fault : mistaken ? "one false reading" : "sound")}: {found.Status}";
            outcomes[status] = outcomes.GetValueOrDefault(status) + 1;
            var family = $"{kind}{(inTheWay ? ", capacitor in the way" : "")}, {(fault.Length > 0 ? fault : mistaken ? "one false reading" : "sound")}";
            families.TryAdd(family, new());
            families[family].Add(person.Touches, habit[^1]);
            touches.Add(person.Touches);
            if (found.Status == IdentificationStatus.Identified && !Judge.IsRight(motor, found))
            {
                wrong++;
                Console.WriteLine($"WRONG seed {seed} {kind} {fault} {mistaken}: {string.Join(" | ", person.Readings.Select(one => $"{one.From}-{one.To} {(one.Ohms?.ToString("F1") ?? (one.Kick ? "kick" : "open"))}"))} -> {string.Join(" ", found.Windings.Select(one => one.Role + string.Join('-', one.Leads)))} truth {string.Join(" ", motor.Windings.Select(one => one.Role + string.Join('-', one.Tags)))}");
            }
        }

        foreach (var (outcome, count) in outcomes)
        {
            Console.WriteLine($"  {outcome,-40} {count,7} {100.0 * count / motors,6:F1} %");
        }

        foreach (var (family, touched) in families)
        {
            Console.WriteLine($"  {family,-60} {touched.Count,7} motors, touches {touched.Mean:F2}, habit {touched.HabitMean:F2}");
        }

        Console.WriteLine($"{motors} motors, wrong 'identified': {wrong}; touches mean {touches.Average():F2}, p95 {Judge.Percentile(touches, 0.95)}; habit mean {habit.Average():F2}, p95 {Judge.Percentile(habit, 0.95)}; all pairs 15 or 6; {clock.Elapsed.TotalSeconds:F1} s");
    }

    /// <summary>Touches of motors of one family.</summary>
    private sealed class Touched
    {
        private long _ours;
        private long _habit;

        public int Count { get; private set; }

        public double Mean => (double)_ours / Count;

        public double HabitMean => (double)_habit / Count;

        public void Add(int ours, int habit)
        {
            Count++;
            _ours += ours;
            _habit += habit;
        }
    }
}            var status = $"{(fault.Length > 0 ? fault : mistaken ? "one false reading" : "sound")}: {found.Status}";
            outcomes[status] = outcomes.GetValueOrDefault(status) + 1;
            var family = $"{kind}{(inTheWay ? ", capacitor in the way" : "")}, {(fault.Length > 0 ? fault : mistaken ? "one false reading" : "sound")}";
            families.TryAdd(family, new());
            families[family].Add(person.Touches, habit[^1]);
            touches.Add(person.Touches);
            if (found.Status == IdentificationStatus.Identified && !Judge.IsRight(motor, found))
            {
                wrong++;
                Console.WriteLine($"WRONG seed {seed} {kind} {fault} {mistaken}: {string.Join(" | ", person.Readings.Select(one => $"{one.From}-{one.To} {(one.Ohms?.ToString("F1") ?? (one.Kick ? "kick" : "open"))}"))} -> {string.Join(" ", found.Windings.Select(one => one.Role + string.Join('-', one.Leads)))} truth {string.Join(" ", motor.Windings.Select(one => one.Role + string.Join('-', one.Tags)))}");
            }
        }

        foreach (var (outcome, count) in outcomes)
        {
            Console.WriteLine($"  {outcome,-40} {count,7} {100.0 * count / motors,6:F1} %");
        }

        foreach (var (family, touched) in families)
        {
            Console.WriteLine($"  {family,-60} {touched.Count,7} motors, touches {touched.Mean:F2}, habit {touched.HabitMean:F2}");
        }

        Console.WriteLine($"{motors} motors, wrong 'identified': {wrong}; touches mean {touches.Average():F2}, p95 {Judge.Percentile(touches, 0.95)}; habit mean {habit.Average():F2}, p95 {Judge.Percentile(habit, 0.95)}; all pairs 15 or 6; {clock.Elapsed.TotalSeconds:F1} s");
    }

    /// <summary>Touches of motors of one family.</summary>
    private sealed class Touched
    {
        private long _ours;
        private long _habit;

        public int Count { get; private set; }

        public double Mean => (double)_ours / Count;

        public double HabitMean => (double)_habit / Count;

        public void Add(int ours, int habit)
        {
            Count++;
            _ours += ours;
            _habit += habit;
        }
    }
}
