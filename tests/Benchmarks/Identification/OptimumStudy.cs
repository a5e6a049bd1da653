using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Benchmarks.Identification;

/// <summary>The fewest touches that any way of measuring can need on average, by search through all of them, beside what the identifier takes.</summary>
/// <remarks>
/// A clean meter, every winding to be measured. The search knows the kind of motor beforehand; so does the identifier in the second column, which knows
/// no other, and in the third it finds the kind out among all. What bears out single figures is left out of both and stands in the last column.
/// Kinds that read the same until leads have been told apart are searched together too, each as usual as the identifier takes it to be: finding out which
/// of them it is has its price, and there the third column is what is to be compared.
/// </remarks>
internal static class OptimumStudy
{
    private static readonly string[] Kinds =
    [
        "capacitor-start-dual-6", "two-value-capacitor, six leads", "three-phase-6", "part-winding-6", "two-speed-two-winding-6", "two-speed-6", "dc-compound", "psc-tapped, four speeds",
    ];

    private static readonly string[][] Together = [["three-phase-6", "part-winding-6"]];

    /// <summary>Runs every kind with six leads, and those with nine by their groups; a figure says how many motors the identifier measures.</summary>
    public static void Run(string[] args)
    {
        var motors = args.Length > 0 ? int.Parse(args[0], null) : 300;
        var knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
        var identifier = new Identifier(knowledge);
        Console.WriteLine($"{"",-34}{"optimum",9}{"same kind",11}{"any kind",10}{"in all",9}{"states",9}");
        foreach (var kind in Kinds.Where(kind => args.Length < 2 || args.Contains(kind)))
        {
            var best = new FewestTouches((new MotorFactory(new Even(0)).Make(kind), 1));
            Print(kind, best.Mean(), best.States);
        }

        foreach (var kinds in Together.Where(kinds => args.Length < 2 || kinds.Any(args.Contains)))
        {
            var shares = Shares(identifier, kinds);
            var best = new FewestTouches([.. kinds.Zip(shares, (kind, share) => (new MotorFactory(new Even(0)).Make(kind), share))]);
            var ours = kinds.Select(kind => Ours(identifier, kind, motors)).ToList();
            Console.WriteLine($"{string.Join(" or ", kinds),-34}{best.Mean(),9:F3}{"",11}{ours.Zip(shares, (one, share) => one.Known * share).Sum(),10:F3}{ours.Zip(shares, (one, share) => one.All * share).Sum(),9:F3}{best.States,9}");
        }

        // Of a star whose point does not come out all three pairs are read, one more than join it, and its figures are those of two coils.
        foreach (var (kind, more, figuresTell, sizes) in new (string, int, bool, int[])[] { ("three-phase-9-delta", 0, false, [3, 3, 3]), ("three-phase-9-star", 1, true, [2, 2, 2, 3]) })
        {
            if (args.Length < 2 || args.Contains(kind))
            {
                var best = new FewestGroupTouches(figuresTell, sizes);
                Print(kind, best.Mean() + more, best.States);
            }
        }

        void Print(string kind, double optimum, int states)
        {
            var id = kind.Split(',')[0];
            var (any, all) = Ours(identifier, kind, motors);
            var (same, _) = Ours(new(knowledge with { Layouts = knowledge.Layouts.Where(layout => layout.Key == id).ToDictionary(StringComparer.Ordinal) }), kind, motors);
            Console.WriteLine($"{kind,-34}{optimum,9:F3}{same,11:F3}{any,10:F3}{all,9:F3}{states,9}");
        }
    }

    /// <summary>How usual kinds of motor are among themselves, as the identifier takes it before anything is read.</summary>
    private static double[] Shares(Identifier identifier, string[] kinds)
    {
        var motor = new MotorFactory(new Even(0)).Make(kinds[0]);
        var before = identifier.Identify(new() { Leads = motor.Tags, Plate = PlateFields.Empty.With("phases", PlateValue.Of(IdentifyStudy.Phases(kinds[0]))), HasCapacitor = motor.CapacitorUse != "none", Looks = motor.Looks }).Value!;
        double[] shares = [.. kinds.Select(kind => before.Layouts.First(layout => layout.Id == kind).Probability)];
        return Array.ConvertAll(shares, share => share / shares.Sum());
    }

    /// <summary>Touches until every winding has been measured, and touches in all, those included by which single figures are borne out.</summary>
    private static (double Known, double All) Ours(Identifier identifier, string kind, int motors)
    {
        var (known, all) = (0.0, 0.0);
        for (var seed = 0; seed < motors; seed++)
        {
            var chance = new Even(seed);
            var motor = new MotorFactory(chance).Make(kind);
            var person = new BenchPerson(motor, new(chance, 0, 0, 0), chance, mistaken: false, looks: true);
            person.Follow(identifier, new()
            {
                Leads = [],
                Plate = PlateFields.Empty.With("phases", PlateValue.Of(IdentifyStudy.Phases(kind))),
                HasCapacitor = motor.CapacitorUse != "none",
                CapacitorBridged = motor.CapacitorUse == "none" ? null : true,
                Looks = motor.Looks,
            });
            known += person.Touches - person.BorneOut;
            all += person.Touches;
        }

        return (known / motors, all / motors);
    }

    /// <summary>Chance for the order of leads, none for ohms: like coils are just alike.</summary>
    private sealed class Even(int seed) : Random(seed)
    {
        public override double NextDouble() => 0.5;
    }
}

/// <summary>Searches all ways to measure six hidden leads of one motor, or of one of several kinds.</summary>
internal sealed class FewestTouches
{
    private const int Leads = 6;
    private const int Unread = 0;
    private const int Open = 1;
    private const int Symbols = 17;
    private const double Close = 1e-6;

    private static readonly (int First, int Second)[] Pairs = [.. from first in Enumerable.Range(0, Leads) from second in Enumerable.Range(first + 1, Leads - first - 1) select (first, second)];
    private static readonly int[][] Orders = [.. Permutations([])];
    private static readonly int[][] Moved = [.. Orders.Select(order => Pairs.Select(pair => At(order[pair.First], order[pair.Second])).ToArray())];

    private readonly Dictionary<ulong, double> _known = [];
    private readonly Kind[] _kinds;
    private readonly byte[][] _tables;

    /// <param name="motors">One motor of each kind and how usual it is.</param>
    public FewestTouches(params (SimulatedMotor Motor, double Share)[] motors)
    {
        _kinds = [.. motors.Select(one => new Kind(one.Motor, one.Share))];
        _tables = [.. _kinds.SelectMany(kind => Moved.Select(moved => moved.Select(pair => kind.Truth[pair]).ToArray()))];
    }

    /// <summary>How many different states of knowledge were looked at.</summary>
    public int States => _known.Count;

    /// <summary>The least mean number of touches until all windings are known and measured.</summary>
    public double Mean() => Best(new byte[Pairs.Length], [.. Enumerable.Range(0, _tables.Length)]);

    private static int At(int one, int other) => Array.IndexOf(Pairs, (Math.Min(one, other), Math.Max(one, other)));

    private static IEnumerable<int[]> Permutations(int[] begun) => begun.Length == Leads ? [begun]
        : Enumerable.Range(0, Leads).Except(begun).SelectMany(next => Permutations([.. begun, next]));

    private double Best(byte[] state, int[] possible)
    {
        var key = Key(state);
        if (_known.TryGetValue(key, out var known))
        {
            return known;
        }

        if (IsDone(state, possible))
        {
            return _known[key] = 0;
        }

        var best = double.PositiveInfinity;
        var tried = new HashSet<ulong>();
        for (var pair = 0; pair < Pairs.Length; pair++)
        {
            if (state[pair] == Unread && tried.Add(Key(With(state, pair, Symbols - 1))))
            {
                var sum = 1.0;
                foreach (var outcome in possible.GroupBy(order => _tables[order][pair]))
                {
                    sum += Share(outcome) / Share(possible) * Best(With(state, pair, outcome.Key), [.. outcome]);
                }

                best = Math.Min(best, sum);
            }
        }

        return _known[key] = best;
    }

    private Kind KindOf(int order) => _kinds[order / Orders.Length];

    private double Share(IEnumerable<int> orders) => orders.Sum(order => KindOf(order).Share);

    private static byte[] With(byte[] state, int pair, byte symbol)
    {
        var next = (byte[])state.Clone();
        next[pair] = symbol;
        return next;
    }

    /// <summary>One table is left, and each group of leads has been read as often as it has coils.</summary>
    private bool IsDone(byte[] state, int[] possible)
    {
        if (possible.Any(order => !_tables[order].AsSpan().SequenceEqual(_tables[possible[0]])))
        {
            return false;
        }

        var (order, kind) = (Orders[possible[0] % Orders.Length], KindOf(possible[0]));
        if (kind.Places is { } places && !IsProved(state, Array.ConvertAll(order, lead => places[lead])))
        {
            return false;
        }

        for (var group = 0; group < Leads; group++)
        {
            var leads = Enumerable.Range(0, Leads).Where(lead => kind.GroupOf[order[lead]] == group).ToList();
            var read = Pairs.Where((pair, at) => state[at] > Open && leads.Contains(pair.First)).ToList();
            var reached = leads.Take(1).ToHashSet();
            while (read.Exists(pair => reached.Contains(pair.First) != reached.Contains(pair.Second)))
            {
                reached.UnionWith(read.Where(pair => reached.Contains(pair.First) || reached.Contains(pair.Second)).SelectMany(pair => new[] { pair.First, pair.Second }));
            }

            if (read.Count < kind.Spans[group] || reached.Count < leads.Count)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether what was read can only come from leads that lie like this, whatever the ohms of the sections are: the search knows them, who measures does not.</summary>
    private static bool IsProved(byte[] state, double[] places)
    {
        var read = Pairs.Where((_, pair) => state[pair] > Open).ToList();
        var found = new HashSet<string>(StringComparer.Ordinal);
        Lay(new double?[Leads]);
        return found.Count == 1;

        // Each lead lies on one side or the other of one that it was read against.
        void Lay(double?[] laid)
        {
            if (Array.TrueForAll(laid, place => place is not null))
            {
                var mirror = laid[0] < laid[Leads - 1] ? 1 : -1;
                found.Add(string.Join(' ', laid.Select(place => Math.Round(mirror * (place!.Value - laid[0]!.Value), 6) + 0.0)));
                return;
            }

            laid[0] ??= 0;
            var (from, to) = read.Find(pair => laid[pair.First] is null != laid[pair.Second] is null) is var next && next != default && laid[next.First] is null ? (next.Second, next.First) : next;
            if (from == to)
            {
                found.UnionWith(["apart", "unread"]);
                return;
            }

            foreach (var side in new[] { -1, 1 })
            {
                laid[to] = laid[from] + (side * Math.Abs(places[from] - places[to]));
                if (read.TrueForAll(pair => laid[pair.First] is not { } one || laid[pair.Second] is not { } other || Math.Abs(Math.Abs(one - other) - Math.Abs(places[pair.First] - places[pair.Second])) < Close))
                {
                    Lay((double?[])laid.Clone());
                }
            }

            laid[to] = null;
        }
    }

    /// <summary>The same for all states that differ only in the names of the leads.</summary>
    private static ulong Key(byte[] state)
    {
        var least = ulong.MaxValue;
        foreach (var moved in Moved)
        {
            var key = 0UL;
            foreach (var pair in moved)
            {
                key = (key * Symbols) + state[pair];
            }

            least = Math.Min(least, key);
        }

        return least;
    }

    /// <summary>A kind of motor with its leads in a fixed order.</summary>
    private sealed class Kind
    {
        public Kind(SimulatedMotor motor, double share)
        {
            var figures = new List<double>();
            Share = share;
            Truth = [.. Pairs.Select(pair => Symbol(motor.Read(motor.Tags[pair.First], motor.Tags[pair.Second]).Ohms, figures))];
            GroupOf = [.. Enumerable.Range(0, Leads).Select(lead => Enumerable.Range(0, lead + 1).First(other => other == lead || Truth[At(other, lead)] != Open))];
            Spans = [.. Enumerable.Range(0, Leads).Select(group => SpansOf(motor, group))];
            Places = PlacesOf(motor);
        }

        public double Share { get; }

        public byte[] Truth { get; }

        public int[] GroupOf { get; }

        public int[] Spans { get; }

        public double[]? Places { get; }

        private static byte Symbol(double? ohms, List<double> figures)
        {
            if (ohms is not { } read)
            {
                return Open;
            }

            var at = figures.FindIndex(figure => Math.Abs(figure - read) < Close * read);
            if (at < 0)
            {
                figures.Add(read);
                at = figures.Count - 1;
            }

            return (byte)(Open + 1 + at);
        }

        /// <summary>As many readings as a group has coils, and enough to hang together.</summary>
        private int SpansOf(SimulatedMotor motor, int group)
        {
            var leads = Enumerable.Range(0, Leads).Where(lead => GroupOf[lead] == group).Select(lead => motor.Tags[lead]).ToList();
            return leads.Count < 2 ? 0
                : Math.Clamp(motor.Windings.Count(winding => winding.Tags.All(leads.Contains)), leads.Count - 1, leads.Count * (leads.Count - 1) / 2);
        }

        /// <summary>Where all leads lie on one winding with taps: how many ohms from the first; <see langword="null"/> for all other motors.</summary>
        private static double[]? PlacesOf(SimulatedMotor motor)
        {
            double Far(int one, int other) => one == other ? 0 : motor.Read(motor.Tags[one], motor.Tags[other]).Ohms ?? double.NaN;
            var end = Enumerable.Range(0, Leads).MaxBy(lead => Far(0, lead));
            double[] places = [.. Enumerable.Range(0, Leads).Select(lead => Far(end, lead))];
            return Pairs.All(pair => Math.Abs(Math.Abs(places[pair.First] - places[pair.Second]) - Far(pair.First, pair.Second)) < Close) ? places : null;
        }
    }
}
