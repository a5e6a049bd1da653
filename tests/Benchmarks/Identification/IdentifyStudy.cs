using System.Diagnostics;
using WireCoach.Knowledge;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Benchmarks.Identification;

/// <summary>Simulated motors measured as the identifier asks: how many it settles, how many touches it takes, and whether it names a wrong winding.</summary>
internal static class IdentifyStudy
{
    /// <summary>Runs the capacitor-start motors; with "trouble" those with shorted turns and one false reading at once; with "all" every kind of motor, or those named. Figures: how many motors, and the seed of the first.</summary>
    public static void Run(string[] args)
    {
        var identifier = new Identifier(KnowledgeFolder.Load(KnowledgeFolder.Beside));
        var all = args.Contains("all");
        var figures = args.Where(arg => int.TryParse(arg, out _)).Select(arg => int.Parse(arg, null)).ToList();
        var motors = figures.Count > 0 ? figures[0] : all ? 100_000 : 20_000;
        var from = figures.Count > 1 ? figures[1] : 0;
        Yardstick(identifier);
        if (all)
        {
            EveryKind(identifier, from, motors, [.. MotorFactory.All.Where(kind => args.Contains(kind))]);
        }
        else
        {
            CapacitorStart(identifier, from, motors, args.Contains("trouble") ? "shorted" : null);
        }
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

    private static void CapacitorStart(Identifier identifier, int from, int motors, string? only)
    {
        var table = new Table();
        for (var seed = from; seed < from + motors; seed++)
        {
            var chance = new Random(seed);
            var kind = chance.NextDouble() < 0.6 ? "capacitor-start-dual-6" : "capacitor-start-4";
            var fault = chance.NextDouble() < (only is null ? 0.1 : 1) ? (chance.Next(2) == 0 && only is null ? "open" : only ?? "shorted") : string.Empty;
            var mistaken = chance.NextDouble() < (only is null ? 0.05 : 1);
            var inTheWay = chance.NextDouble() < 0.3;
            var input = new IdentificationInput { Leads = [], HasCapacitor = true, CapacitorBridged = inTheWay ? null : true };
            var family = $"{kind}{(inTheWay ? ", capacitor in the way" : string.Empty)}, {(fault.Length > 0 ? fault : mistaken ? "one false reading" : "sound")}";
            One(identifier, seed, family, () => new MotorFactory(new Random(seed)).Make(kind, fault, inTheWay), random => new(random, 1, 2, 0.2), mistaken, input, table);
        }

        table.Print(motors);
    }

    private static void EveryKind(Identifier identifier, int from, int motors, IReadOnlyList<string> kinds)
    {
        var table = new Table();
        (double Percent, double Counts, double Leads)[] meters = [(0, 0, 0), (0.5, 1, 0.1), (1, 2, 0.2)];
        for (var seed = from; seed < from + motors; seed++)
        {
            var chance = new Random(seed);
            var kind = MotorFactory.All[seed % MotorFactory.All.Count];
            if (kinds.Count > 0 && !kinds.Contains(kind))
            {
                continue;
            }

            var fault = chance.NextDouble() < 0.15 ? (chance.Next(2) == 0 ? "open" : "shorted") : string.Empty;
            var (percent, counts, leads) = meters[chance.Next(meters.Length)];
            var motor = new MotorFactory(new Random(seed)).Make(kind, fault);
            var missing = chance.NextDouble() < 0.1;
            var pair = motor.Tags.OrderBy(_ => chance.Next()).Take(2).ToArray();
            var input = new IdentificationInput { Leads = [], Unreadable = missing && motor.Tags.Count > 3 ? [(pair[0], pair[1])] : [] };
            One(identifier, seed, $"{kind}{(fault.Length > 0 ? ", faulty" : string.Empty)}", () => new MotorFactory(new Random(seed)).Make(kind, fault), random => new(random, percent, counts, leads), false, input, table);
        }

        table.Print(motors);
    }

    private static void One(
        Identifier identifier, int seed, string family, Func<SimulatedMotor> make, Func<Random, SimulatedMeter> meter, bool mistaken, IdentificationInput input, Table table)
    {
        var clock = Stopwatch.GetTimestamp();
        var motor = make();
        var chance = new Random(seed + 1);
        var person = new BenchPerson(motor, meter(chance), chance, mistaken);
        var found = person.Follow(identifier, input);
        var wrong = found.Status == IdentificationStatus.Identified && !Judge.IsRight(motor, found);
        var twin = make();
        var again = new Random(seed + 1);
        var fair = make();
        var third = new Random(seed + 1);
        table.Add(family, found.Status.ToString(), person.Touches, Habit.Touches(new(twin, meter(again), again, mistaken), twin),
            Habit.ToTheSameCertainty(new(fair, meter(third), third, mistaken), fair, identifier, input), motor.Tags.Count * (motor.Tags.Count - 1) / 2, wrong, Stopwatch.GetElapsedTime(clock));
        if (wrong)
        {
            Console.WriteLine(
                $"WRONG {family}, seed {seed}: {string.Join(" | ", person.Readings.Select(one => $"{one.From}-{one.To} {one.Ohms?.ToString("F1") ?? (one.Kick ? "kick" : "open")}"))} -> " +
                $"{string.Join(' ', found.Windings.Select(one => $"{one.Role} {string.Join('-', one.Leads)}{(one.Taps is { } taps ? $" over {string.Join('-', taps)}" : string.Empty)}"))} ({found.Layouts[0].Id}); truth {string.Join(' ', motor.Windings.Select(one => $"{one.Role} {string.Join('-', one.Tags)}"))}");
        }
    }

    /// <summary>Figures by family of motors.</summary>
    private sealed class Table
    {
        private readonly SortedDictionary<string, List<(string Status, int Touches, int Habit, int Fair, int AllPairs, bool Wrong)>> _rows = new(StringComparer.Ordinal);
        private TimeSpan _time;

        public void Add(string family, string status, int touches, int habit, int fair, int allPairs, bool wrong, TimeSpan time)
        {
            _rows.TryAdd(family, []);
            _rows[family].Add((status, touches, habit, fair, allPairs, wrong));
            _time += time;
        }

        public void Print(int motors)
        {
            Console.WriteLine($"{"",-58}{"motors",8}{"ident. %",10}{"faulty %",10}{"can't %",9}{"touches",9}{"p95",5}{"habit",8}{"p95",5}{"settled",9}{"p95",5}{"pairs",7}{"wrong",7}");
            foreach (var (family, rows) in _rows.Append(new("all", [.. _rows.Values.SelectMany(rows => rows)])))
            {
                double Share(string status) => 100.0 * rows.Count(row => row.Status == status) / rows.Count;
                Console.WriteLine(
                    $"{family,-58}{rows.Count,8}{Share("Identified"),10:F1}{Share("Faulty"),10:F1}{Share("CannotTell"),9:F1}{rows.Average(row => row.Touches),9:F2}" +
                    $"{Judge.Percentile([.. rows.Select(row => row.Touches)], 0.95),5}{rows.Average(row => row.Habit),8:F2}{Judge.Percentile([.. rows.Select(row => row.Habit)], 0.95),5}" +
                    $"{rows.Average(row => row.Fair),9:F2}{Judge.Percentile([.. rows.Select(row => row.Fair)], 0.95),5}" +
                    $"{rows.Average(row => row.AllPairs),7:F1}{rows.Count(row => row.Wrong),7}");
            }

            Console.WriteLine($"{motors} motors in {_time.TotalSeconds:F1} s");
        }
    }
}
