using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>A coil of a motor on the bench.</summary>
internal sealed record BenchCoil(string From, string To, int Axis = 0, bool Start = false);

/// <summary>A motor with the volts that suit one of its connections, and the right connections as the trade's tables print them.</summary>
/// <remarks>Volts are counted in the supply: between two lines 1, or from a line to the middle of three 1. Rated volts are given by their squares.</remarks>
internal sealed record BenchMotor(string Name, bool ThreePhase, IReadOnlyList<BenchCoil> Coils, Ratio RatedSquare, Ratio StartSquare, IReadOnlyList<string> Tables)
{
    private const string NineStar = "1>4 2>5 3>6 7>n 8>n 9>n";
    private const string NineDelta = "1>4 7>2 2>5 8>3 3>6 9>1";
    private const string Twelve = "1>4 7>10 2>5 8>11 3>6 9>12";

    public static readonly BenchMotor SplitPhase = Single("SP4", "1>4", "8>5", 1, 1, "L1:1,8 L2:4,5", "L1:1,5 L2:4,8");
    public static readonly BenchMotor SixHigh = Single("DV6 high", "1>2 3>4", "8>5", Half, Half, "L1:1 L2:4,5 2,3,8", "L1:1 L2:4,8 2,3,5");
    public static readonly BenchMotor SixLow = Single("DV6 low", "1>2 3>4", "8>5", 1, 1, "L1:1,3,8 L2:2,4,5", "L1:1,3,5 L2:2,4,8");
    public static readonly BenchMotor EightHigh = Single("DV8 high", "1>2 3>4", "6>5 8>7", Half, Half, "L1:1,8 L2:4,5 2,3 6,7", "L1:1,5 L2:4,8 2,3 6,7");
    public static readonly BenchMotor EightLow = Single("DV8 low", "1>2 3>4", "6>5 8>7", 1, 1, "L1:1,3,6,8 L2:2,4,5,7", "L1:1,3,5,7 L2:2,4,6,8");
    public static readonly BenchMotor SixStar = Three("six-lead star", "1>4 2>5 3>6", 1, "L1:1 L2:2 L3:3 4,5,6");
    public static readonly BenchMotor SixDelta = Three("six-lead delta", "1>4 2>5 3>6", 3, "L1:1,6 L2:2,4 L3:3,5");
    public static readonly BenchMotor NineStarHigh = Three("nine-lead star high", NineStar, Half, "L1:1 L2:2 L3:3 4,7 5,8 6,9");
    public static readonly BenchMotor NineStarLow = Three("nine-lead star low", NineStar, 1, "L1:1,7 L2:2,8 L3:3,9 4,5,6");
    public static readonly BenchMotor NineDeltaHigh = Three("nine-lead delta high", NineDelta, Ratio.Of(3, 4), "L1:1 L2:2 L3:3 4,7 5,8 6,9");
    public static readonly BenchMotor NineDeltaLow = Three("nine-lead delta low", NineDelta, 3, "L1:1,6,7 L2:2,4,8 L3:3,5,9");
    public static readonly BenchMotor TwelveHighStar = Three("twelve-lead high star", Twelve, Half, "L1:1 L2:2 L3:3 4,7 5,8 6,9 10,11,12");
    public static readonly BenchMotor TwelveHighDelta = Three("twelve-lead high delta", Twelve, Ratio.Of(3, 4), "L1:1,12 L2:2,10 L3:3,11 4,7 5,8 6,9");
    public static readonly BenchMotor TwelveLowStar = Three("twelve-lead low star", Twelve, 1, "L1:1,7 L2:2,8 L3:3,9 4,5,6 10,11,12");
    public static readonly BenchMotor TwelveLowDelta = Three("twelve-lead low delta", Twelve, 3, "L1:1,6,7,12 L2:2,4,8,10 L3:3,5,9,11");

    public static readonly IReadOnlyList<BenchMotor> All =
    [
        SplitPhase, SixHigh, SixLow, EightHigh, EightLow, SixStar, SixDelta, NineStarHigh, NineStarLow, NineDeltaHigh, NineDeltaLow,
        TwelveHighStar, TwelveHighDelta, TwelveLowStar, TwelveLowDelta,
    ];

    private static Ratio Half => Ratio.Of(1, 4);

    /// <summary>The leads that come out, in order.</summary>
    public IReadOnlyList<string> Leads => [.. Coils.SelectMany(coil => new[] { coil.From, coil.To }).Where(name => name != "n").Distinct().OrderBy(int.Parse)];

    public IReadOnlyList<string> Lines => ThreePhase ? ["L1", "L2", "L3"] : ["L1", "L2"];

    /// <summary>Names to nets, from a printed table; leads that it does not name lie alone.</summary>
    public Dictionary<string, int> Nets(string table)
    {
        var nets = new Dictionary<string, int>();
        foreach (var (group, index) in table.Split(' ').Select((group, index) => (group, index)))
        {
            foreach (var name in group.Split(':', ','))
            {
                nets[name] = index;
            }
        }

        foreach (var name in Leads.Concat(Lines).Append("n").Where(name => !nets.ContainsKey(name)))
        {
            nets[name] = 100 + nets.Count;
        }

        return nets;
    }

    /// <summary>The same connection as the checker takes it.</summary>
    public FoundConnection Found(IReadOnlyDictionary<string, int> nets, double supply = 230)
    {
        var volts = ThreePhase ? supply / Math.Sqrt(3) : supply;
        double Rated(Ratio square) => volts * Math.Sqrt((double)square.Top / (double)square.Bottom);
        return new FoundConnection
        {
            SupplyVolts = supply,
            Phases = ThreePhase ? 3 : 1,
            Hertz = 60,
            Coils =
            [
                .. Coils.Select(coil => new FoundCoil(
                    $"{coil.From}-{coil.To}", coil.From, coil.To, coil.Start ? "start" : ThreePhase ? "phase" : "run", Rated(coil.Start ? StartSquare : RatedSquare),
                    ThreePhase ? new[] { "a", "b", "c" }[coil.Axis] : coil.Start ? "start" : "main")),
            ],
            Joints =
            [
                .. nets.Where(name => name.Key != "n").GroupBy(name => name.Value).SelectMany(net => Joints([.. net.Select(name => name.Key)])),
            ],
        };
    }

    /// <summary>A table with one to three slips: two leads exchanged, a lead moved, two joints made one, a joint undone.</summary>
    public Dictionary<string, int> Slipped(Random chance)
    {
        var nets = Nets(Tables[chance.Next(Tables.Count)]);
        for (var slips = chance.Next(1, 4); slips > 0; slips--)
        {
            var (one, other) = (Leads[chance.Next(Leads.Count)], Leads[chance.Next(Leads.Count)]);
            switch (chance.Next(4))
            {
                case 0:
                    (nets[one], nets[other]) = (nets[other], nets[one]);
                    break;
                case 1:
                    nets[one] = nets[other];
                    break;
                case 2:
                    nets[one] = 1000 + slips;
                    break;
                default:
                    var (from, to) = (nets[one], nets[other]);
                    foreach (var name in nets.Where(name => name.Value == from).Select(name => name.Key).ToList())
                    {
                        nets[name] = to;
                    }

                    break;
            }
        }

        return nets;
    }

    private static IEnumerable<FoundJoint> Joints(List<string> names)
    {
        var (lines, leads) = (names.Where(name => name.StartsWith('L')).ToList(), names.Where(name => !name.StartsWith('L')).ToList());
        return lines.Count == 0 ? [new FoundJoint(leads)] : lines.Select(line => new FoundJoint(leads, line));
    }

    private static BenchMotor Single(string name, string run, string start, Ratio rated, Ratio startRated, params string[] tables) => new(
        name, false, [.. Parsed(run).Select(ends => new BenchCoil(ends[0], ends[1])), .. Parsed(start).Select(ends => new BenchCoil(ends[0], ends[1], 0, true))], rated, startRated, tables);

    private static BenchMotor Three(string name, string coils, Ratio rated, params string[] tables) =>
        new(name, true, [.. Parsed(coils).Select((ends, index) => new BenchCoil(ends[0], ends[1], AxisOf(coils, index)))], rated, 0, tables);

    /// <summary>Coils stand phase by phase in twos (a a b b c c), except where all outer coils come first (a b c a b c).</summary>
    private static int AxisOf(string coils, int index) => coils == NineStar || coils.Split(' ').Length == 3 ? index % 3 : index / 2;

    private static IEnumerable<string[]> Parsed(string coils) => coils.Split(' ').Select(coil => coil.Split('>'));
}
