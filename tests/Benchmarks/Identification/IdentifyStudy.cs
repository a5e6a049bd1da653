using System.Diagnostics;
using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Benchmarks.Identification;

/// <summary>Simulated motors measured as the identifier asks: how many it settles, how many touches it takes, and whether it names a wrong winding.</summary>
internal static class IdentifyStudy
{
    private const int Portion = 5_000;
    private const int Between = 15_000;

    /// <summary>The habit taken to the same certainty costs a search of its own, so it is taken on every eighth round of motors.</summary>
    private const int CompareEach = 8;

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
            var input = new IdentificationInput { Leads = [], HasCapacitor = true, CapacitorBridged = inTheWay ? null : true, Looks = new() };
            var family = $"{kind}{(inTheWay ? ", capacitor in the way" : string.Empty)}, {(fault.Length > 0 ? fault : mistaken ? "one false reading" : "sound")}";
            One(identifier, seed, family, () => new MotorFactory(new Random(seed)).Make(kind, fault, inTheWay), random => new(random, 1, 2, 0.2), mistaken, input, table);
        }

        table.Print(motors);
    }

    private static void EveryKind(Identifier identifier, int from, int motors, IReadOnlyList<string> kinds)
    {
        var table = new Table();
        (double Percent, double Counts, double Leads)[] meters = [(0, 0, 0), (0.5, 1, 0.1), (1, 2, 0.2)];
        for (var done = 0; done < motors; done += Portion)
        {
            Parallel.For(from + done, from + Math.Min(done + Portion, motors), seed => Simulate(identifier, seed, meters, kinds, table));
            Console.WriteLine($"{Math.Min(done + Portion, motors)} of {motors} motors, {table.Wrong} wrong");
            if (done > 0 && done % Between == 0)
            {
                table.Print(done + Portion); // what is known so far, should somebody end the study early
            }
        }

        table.Print(motors);
        table.PrintOpen();
    }

    private static void Simulate(Identifier identifier, int seed, (double Percent, double Counts, double Leads)[] meters, IReadOnlyList<string> kinds, Table table)
    {
        var chance = new Random(seed);
        var kind = MotorFactory.All[seed % MotorFactory.All.Count];
        if (kinds.Count > 0 && !kinds.Contains(kind))
        {
            return;
        }

        var fault = chance.NextDouble() < 0.15 ? (chance.Next(2) == 0 ? "open" : "shorted") : string.Empty;
        var (percent, counts, leads) = meters[chance.Next(meters.Length)];
        var motor = new MotorFactory(new Random(seed)).Make(kind, fault);
        var missing = chance.NextDouble() < 0.1;
        var pair = motor.Tags.OrderBy(_ => chance.Next()).Take(2).ToArray();
        var mistaken = chance.NextDouble() < 0.03;
        var looks = chance.NextDouble() < 0.8;
        var input = Known(motor, chance) with { Leads = [], Unreadable = missing && motor.Tags.Count > 3 ? [(pair[0], pair[1])] : [] };
        var instrument = chance.NextDouble();
        string[] tests = instrument < 0.5 ? ["induced-voltage"] : instrument < 0.6 ? ["battery-flick"] : [];
        var state = fault.Length > 0 ? ", faulty" : mistaken ? ", one false reading" : string.Empty;
        One(identifier, seed, $"{kind}{state}", () => new MotorFactory(new Random(seed)).Make(kind, fault), random => new(random, percent, counts, leads), mistaken, input, table, looks, tests);
    }

    /// <summary>What the person has seen beforehand: the plate's phases and the capacitor, most of the time.</summary>
    private static IdentificationInput Known(SimulatedMotor motor, Random chance) => new()
    {
        Leads = [],
        Plate = chance.NextDouble() < 0.7 ? PlateFields.Empty.With("phases", PlateValue.Of(Phases(motor.Layout))).With("volts", PlateValue.Of(Volts(motor.Layout))) : PlateFields.Empty,
        HasCapacitor = chance.NextDouble() < 0.7 ? motor.CapacitorUse != "none" : null,
        CapacitorUse = motor.CapacitorUse is "start" or "run" && chance.NextDouble() < 0.5 ? motor.CapacitorUse : null,
        CapacitorBridged = motor.CapacitorUse == "none" ? null : true,
        Looks = new(),
    };

    private static double[] Volts(string kind) => kind switch
    {
        "capacitor-start-dual-6" or "capacitor-start-dual-6, protector" or "capacitor-start-dual-8" or "dual-voltage-4" or "dual-voltage-4, no capacitor" or "two-value-capacitor, six leads" => [115, 230],
        "three-phase-6" or "three-phase-6, heater" => [230, 400],
        "three-phase-9-star" or "three-phase-9-delta" or "three-phase-10" or "three-phase-12" => [230, 460],
        _ when kind.StartsWith("dc-", StringComparison.Ordinal) => [180],
        _ => [230],
    };

    /// <summary>How many phases a kind of motor runs on; none for direct current.</summary>
    internal static double Phases(string kind) =>
        kind.StartsWith("dc-", StringComparison.Ordinal) ? 0
        : kind.StartsWith("three-phase", StringComparison.Ordinal) || kind.StartsWith("two-speed", StringComparison.Ordinal) || kind is "part-winding-6" or "wound-rotor-6" ? 3
        : 1;

    private static void One(
        Identifier identifier, int seed, string family, Func<SimulatedMotor> make, Func<Random, SimulatedMeter> meter, bool mistaken, IdentificationInput input, Table table, bool looks = false, params string[] tests)
    {
        var clock = Stopwatch.GetTimestamp();
        var motor = make();
        var chance = new Random(seed + 1);
        var person = new BenchPerson(motor, meter(chance), chance, mistaken, looks, tests);
        var found = person.Follow(identifier, input);
        var wrong = found.Status == IdentificationStatus.Identified ? !Judge.IsRight(motor, found) : found.Status == IdentificationStatus.Faulty && motor.Fault.Length == 0 && !mistaken;
        var twin = make();
        var again = new Random(seed + 1);
        table.Add(family, found.Status.ToString(), person.Touches, Habit.Touches(new(twin, meter(again), again, mistaken), twin),
            seed / MotorFactory.All.Count % CompareEach == 0 ? Settled(identifier, make(), meter, seed, mistaken, input, looks, tests) : null, motor.Tags.Count * (motor.Tags.Count - 1) / 2, wrong, Stopwatch.GetElapsedTime(clock));
        if (found.Status == IdentificationStatus.CannotTell)
        {
            table.Open(family, $"{string.Join(' ', found.Notes.Select(note => note.Id))}{(looks ? string.Empty : ", nobody looked")}{(tests.Length > 0 ? ", with tests" : string.Empty)}: {string.Join(' ', found.Undecided)}");
        }

        if (wrong)
        {
            Console.WriteLine(
                $"WRONG {family}, seed {seed}: {string.Join(" | ", person.Readings.Select(one => $"{one.From}-{one.To} {one.Ohms?.ToString("F1") ?? (one.Kick ? "kick" : "open")}"))}{string.Concat(person.Tests.Select(test => $" | {test.Test} {string.Join('-', test.Drive)} {string.Join('-', test.Read)} {test.Value:F2}{test.Outcome}"))} -> " +
                $"{string.Join(' ', found.Windings.Select(one => $"{one.Role} {string.Join('-', one.Leads)}{(one.Taps is { } taps ? $" over {string.Join('-', taps)}" : string.Empty)}"))} ({found.Layouts[0].Id}); truth {string.Join(' ', motor.Windings.Select(one => $"{one.Role} {string.Join('-', one.Tags)}"))}");
        }
    }

    /// <summary>Touches of somebody who goes by habit until just as much is settled.</summary>
    private static int Settled(Identifier identifier, SimulatedMotor motor, Func<Random, SimulatedMeter> meter, int seed, bool mistaken, IdentificationInput input, bool looks, string[] tests)
    {
        var chance = new Random(seed + 1);
        return Habit.ToTheSameCertainty(new(motor, meter(chance), chance, mistaken, looks, tests), motor, identifier, input);
    }

    /// <summary>Figures by family of motors.</summary>
    private sealed class Table
    {
        private readonly SortedDictionary<string, List<(string Status, int Touches, int Habit, int? Fair, int AllPairs, bool Wrong)>> _rows = new(StringComparer.Ordinal);
        private readonly SortedDictionary<string, Dictionary<string, int>> _open = new(StringComparer.Ordinal);
        private TimeSpan _time;

        public int Wrong => _rows.Values.Sum(rows => rows.Count(row => row.Wrong));

        public void Add(string family, string status, int touches, int habit, int? fair, int allPairs, bool wrong, TimeSpan time)
        {
            lock (_rows)
            {
                _rows.TryAdd(family, []);
                _rows[family].Add((status, touches, habit, fair, allPairs, wrong));
                _time += time;
            }
        }

        /// <summary>One more motor of which it cannot be told, for this reason.</summary>
        public void Open(string family, string why)
        {
            lock (_rows)
            {
                _open.TryAdd(family, []);
                _open[family][why] = _open[family].GetValueOrDefault(why) + 1;
            }
        }

        /// <summary>For each family in which it cannot be told of one motor in a hundred, the commonest reasons.</summary>
        public void PrintOpen()
        {
            foreach (var (family, reasons) in _open.Where(one => one.Value.Values.Sum() * 100 >= _rows[one.Key].Count))
            {
                Console.WriteLine($"cannot tell, {family}:");
                foreach (var (why, count) in reasons.OrderByDescending(one => one.Value).ThenBy(one => one.Key, StringComparer.Ordinal).Take(8))
                {
                    Console.WriteLine($"  {100.0 * count / _rows[family].Count,5:F1}%  {why}");
                }
            }
        }

        private static string Less(List<(string Status, int Touches, int Habit, int? Fair, int AllPairs, bool Wrong)> both)
        {
            double[] less = [.. both.Select(row => (double)(row.Fair!.Value - row.Touches))];
            var mean = less.DefaultIfEmpty(double.NaN).Average();
            return $"{mean,7:F2}{Math.Sqrt(less.Sum(one => (one - mean) * (one - mean)) / Math.Max(1, less.Length - 1) / Math.Max(1, less.Length)),6:F2}";
        }

        /// <remarks>
        /// Of each <see cref="CompareEach"/>th round of motors the last columns before "pairs" compare both ways to the same certainty on the same motors. Both ways may strike
        /// it lucky or not, by touches on each motor, so that with the mean of what the identifier saves stands its standard error.
        /// </remarks>
        public void Print(int motors)
        {
            Console.WriteLine($"{"",-48}{"motors",7}{"ident.%",8}{"faulty%",8}{"can't%",7}{"touches",9}{"p95",4}{"habit",7}{"p95",4}{"| same motors: ours",20}{"habit",7}{"p95",4}{"less",7}{"±",6}{"pairs",7}{"wrong",6}");
            foreach (var (family, rows) in _rows.Append(new("all", [.. _rows.Values.SelectMany(rows => rows)])))
            {
                double Share(string status) => 100.0 * rows.Count(row => row.Status == status) / rows.Count;
                var both = rows.FindAll(row => row.Fair is not null);
                Console.WriteLine(
                    $"{family,-48}{rows.Count,7}{Share("Identified"),8:F1}{Share("Faulty"),8:F1}{Share("CannotTell"),7:F1}{rows.Average(row => row.Touches),9:F2}" +
                    $"{Judge.Percentile([.. rows.Select(row => row.Touches)], 0.95),4}{rows.Average(row => row.Habit),7:F2}{Judge.Percentile([.. rows.Select(row => row.Habit)], 0.95),4}" +
                    $"{(both.Count == 0 ? double.NaN : both.Average(row => row.Touches)),20:F2}{(both.Count == 0 ? double.NaN : both.Average(row => row.Fair!.Value)),7:F2}{(both.Count == 0 ? 0 : Judge.Percentile([.. both.Select(row => row.Fair!.Value)], 0.95)),4}" +
                    $"{Less(both)}{rows.Average(row => row.AllPairs),7:F1}{rows.Count(row => row.Wrong),6}");
            }

            Console.WriteLine($"{motors} motors in {_time.TotalSeconds:F1} s of both processors");
        }
    }
}
