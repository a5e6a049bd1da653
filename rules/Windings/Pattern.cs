using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>What a meter shows between two terminals.</summary>
internal enum Link : byte
{
    /// <summary>No path.</summary>
    Open,

    /// <summary>A path of coils.</summary>
    Ohms,

    /// <summary>A path through a capacitor: it moves and then goes open.</summary>
    Kick,
}

/// <summary>What is the matter inside, or what stands in the way of the meter.</summary>
internal enum ConditionKind
{
    /// <summary>Nothing.</summary>
    Sound,

    /// <summary>The start switch reads open at rest.</summary>
    SwitchOpen,

    /// <summary>The protector reads open.</summary>
    ProtectorOpen,

    /// <summary>A coil is open.</summary>
    OpenCoil,

    /// <summary>A coil has shorted turns.</summary>
    ShortedCoil,
}

/// <summary>The state of one motor: what is the matter, with which coil, and whether a capacitor blocks the meter.</summary>
internal sealed record Condition(ConditionKind Kind, bool Blocked = false, LayoutCoil? Coil = null, double Factor = 1)
{
    /// <summary>Whether nothing is the matter; a capacitor in the way is nothing.</summary>
    public bool IsWhole => Kind == ConditionKind.Sound;

    /// <summary>Whether something reads open that should not.</summary>
    public bool IsBreak => Kind is ConditionKind.OpenCoil or ConditionKind.ProtectorOpen or ConditionKind.SwitchOpen;
}

/// <summary>An unknown resistance: that of the coils of one group, or of all that lies between two leads.</summary>
internal sealed record Unknown(string Group, double LnLow, double LnHigh, double Tail)
{
    /// <summary>ln of the most that is usual, by its own range or by that of windings to which its ratio is known.</summary>
    public double LnMost { get; init; } = LnHigh;
}

/// <summary>What is known beforehand of the ratio of two unknowns.</summary>
internal sealed record KnownRatio(int Of, int To, double LnLow, double LnHigh, double Tail);

/// <summary>A winding as a person would name it: its role, its group of like coils, its terminals.</summary>
internal sealed record PatternWinding(string Role, string Group, IReadOnlyList<int> Terminals, bool Junction, IReadOnlyList<string> Coils)
{
    public IReadOnlyList<int> Taps { get; init; } = [];
}

/// <summary>Terminals that hang together, and the ways in which they may be exchanged without any reading changing.</summary>
internal sealed class Block(int index, int @class, int[] terminals, int[][] symmetries)
{
    private readonly (int Place, int Size)[]?[] _orbits = new (int, int)[1 << Math.Min(terminals.Length, 12)][];

    public int Index => index;

    /// <summary>The index of the first block that is just like this one.</summary>
    public int Class => @class;

    public int[] Terminals => terminals;

    /// <summary>All exchanges of its terminals that change no reading, as places.</summary>
    public int[][] Symmetries => symmetries;

    /// <summary>The free places, one for each kind, with how many there are of the kind, when the places of the mask are taken.</summary>
    public (int Place, int Size)[] Orbits(int mask) => _orbits[mask] ??= Find(mask);

    private (int Place, int Size)[] Find(int mask)
    {
        var keeping = symmetries.Where(map => Enumerable.Range(0, terminals.Length).All(place => (mask & (1 << place)) == 0 || map[place] == place)).ToList();
        var found = new List<(int, int)>();
        var seen = mask;
        for (var place = 0; place < terminals.Length; place++)
        {
            if ((seen & (1 << place)) == 0)
            {
                var orbit = keeping.Select(map => map[place]).Append(place).Distinct().ToList();
                orbit.ForEach(member => seen |= 1 << member);
                found.Add((place, orbit.Count));
            }
        }

        return [.. found];
    }
}

/// <summary>A layout in one state as an ohmmeter sees it: which terminals hang together and what each pair reads in terms of a few unknowns.</summary>
internal sealed class Pattern
{
    private FitPrior? _before;
    private bool[][]? _within;
    private (int Unknown, double Factor)[][]? _terms;
    private int[]? _unknownsOf;
    private CoilGroup[]? _groups;
    private (int, int)[]? _breaks;
    private double? _logShare;
    private IReadOnlyDictionary<(string, string), Lie>? _lies;

    public required Layout Layout { get; init; }

    /// <summary>What is known of the resistances before anything is read.</summary>
    public FitPrior Before => _before ??= new(this);

    /// <summary>The terminals in groups between which there are no ohms.</summary>
    public CoilGroup[] Groups => _groups ??= [.. Premises.Groups(this)];

    /// <summary>Ends of windings between which nothing reads.</summary>
    public (int First, int Last)[] Breaks => _breaks ??= [.. Windings.Where(winding => !winding.Junction && Links[winding.Terminals[0]][winding.Terminals[^1]] != Link.Ohms)
        .Select(winding => (winding.Terminals[0], winding.Terminals[^1]))];

    /// <summary>How windings of one group lie to those of another.</summary>
    public IReadOnlyDictionary<(string One, string Other), Lie> Lies => _lies ??= AxisEvidence.Lies(this);

    public required Condition Condition { get; init; }

    public required double LogPrior { get; set; }

    public required int Count { get; init; }

    /// <summary>The same leads with nothing the matter; <see langword="null"/> where nothing is.</summary>
    public Pattern? SoundTwin { get; init; }

    /// <summary>Whether something is the matter of which no reading tells: a sound motor of its kind reads just the same.</summary>
    public bool HidesTrouble { get; set; }

    /// <summary>Whether no reading would tell it from a sound motor of its kind.</summary>
    public bool ReadsSound => Condition.IsWhole || HidesTrouble;

    /// <summary>Whether the capacitor stands between leads, so that it can be bridged from outside and its kick can be seen.</summary>
    public bool CapacitorWithinReach { get; init; }

    /// <summary>The marking of each terminal.</summary>
    public required string[] Markings { get; init; }

    public required int[] BlockOf { get; init; }

    public required Block[] Blocks { get; init; }

    /// <summary>ln of the share of all ways to lay leads on the terminals that reads like any one of them: as many as there are exchanges that change no reading.</summary>
    public double LogShare => _logShare ??= Blocks.Sum(block => Math.Log(block.Symmetries.Length))
        + Blocks.GroupBy(block => block.Class).Sum(alike => LogFactorial(alike.Count())) - LogFactorial(Count);

    private static double LogFactorial(int count) => Enumerable.Range(1, count).Sum(one => Math.Log(one));

    public required Link[][] Links { get; init; }

    /// <summary>For each pair the index of its formula; −1 where there is no steady reading.</summary>
    public required int[][] Formula { get; init; }

    /// <summary>Each formula as text, so that formulas of two patterns can be compared.</summary>
    public required string[] FormulaNames { get; init; }

    /// <summary>Each formula: the factor of each unknown.</summary>
    public required double[][] Formulas { get; init; }

    /// <summary>Each formula: the unknowns that are in it with their factors.</summary>
    public (int Unknown, double Factor)[][] Terms => _terms ??= Array.ConvertAll(Formulas, factors => factors.Select((factor, unknown) => (unknown, factor)).Where(term => term.factor > 0).ToArray());

    /// <summary>Each formula: the unknowns that are in it, as bits.</summary>
    public int[] UnknownsOf => _unknownsOf ??= Array.ConvertAll(Terms, terms => terms.Aggregate(0, (bits, term) => bits | (1 << term.Unknown)));

    /// <summary>Whether the first formula can never give more than the second, whatever the unknowns are.</summary>
    public bool[][] Within => _within ??= [.. Formulas.Select(part => Formulas.Select(all => !part.Where((factor, unknown) => factor > all[unknown]).Any()).ToArray())];

    /// <summary>For each formula its only unknown; −1 where it has several or none.</summary>
    public required int[] OnlyUnknown { get; init; }

    /// <summary>For each formula with only one unknown ln of its factor.</summary>
    public required double[] LnFactor { get; init; }

    public required Unknown[] Unknowns { get; init; }

    public required KnownRatio[] Ratios { get; init; }

    public required IReadOnlyList<PatternWinding> Windings { get; init; }
}
