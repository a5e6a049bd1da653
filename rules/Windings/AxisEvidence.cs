using WireCoach.Rules.Cases;
using WireCoach.Rules.Choosing;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>What a winding shows of another that is fed.</summary>
internal enum Induced
{
    /// <summary>Next to nothing.</summary>
    Nothing,

    /// <summary>As much as phases show of each other.</summary>
    Half,

    /// <summary>As much as like coils on one axis show of each other.</summary>
    Whole,

    /// <summary>No kick of the needle.</summary>
    NoKick,

    /// <summary>A kick, either way.</summary>
    Kick,

    /// <summary>Volts between nothing and something: they say nothing.</summary>
    Unclear,
}

/// <summary>How two windings lie to each other.</summary>
internal enum Lie
{
    /// <summary>It cannot be said: one of them is not a single winding, or ohms leave open which of several like ones it is.</summary>
    Unknown,

    /// <summary>At a right angle, or one of them is no winding of the motor: nothing passes over.</summary>
    Apart,

    /// <summary>Phases of one motor.</summary>
    Phases,

    /// <summary>Like coils on one axis.</summary>
    Alike,

    /// <summary>Coils of unlike turns on one axis.</summary>
    OneAxis,
}

/// <summary>A test in which one pair of leads was fed and another read.</summary>
internal sealed record AxisResult(int DriveFirst, int DriveSecond, int ReadFirst, int ReadSecond, Induced Shown)
{
    /// <summary>Whether the same two pairs were tested, whichever was fed.</summary>
    public bool Between(AxisResult other) => (Drives(other.DriveFirst, other.DriveSecond) && Reads(other.ReadFirst, other.ReadSecond)) || (Drives(other.ReadFirst, other.ReadSecond) && Reads(other.DriveFirst, other.DriveSecond));

    /// <summary>Whether this pair was fed.</summary>
    public bool Drives(int first, int second) => (DriveFirst == first && DriveSecond == second) || (DriveFirst == second && DriveSecond == first);

    /// <summary>Whether this pair was read.</summary>
    public bool Reads(int first, int second) => (ReadFirst == first && ReadSecond == second) || (ReadFirst == second && ReadSecond == first);
}

/// <summary>Tests between windings as evidence of how the windings lie: like coils on one axis show each other, coils at a right angle do not, phases show half.</summary>
/// <remarks>Halves on poles of their own show little of each other whatever is fed, so that nothing seen twice is no more than nothing seen once.</remarks>
internal sealed class AxisEvidence
{
    /// <summary>The tests that it understands.</summary>
    public const string ByVolts = "induced-voltage";

    public const string ByFlick = "battery-flick";

    private const double Right = 90;
    private const double Straight = 180;

    private readonly IdentificationFigures _figures;

    private AxisEvidence(IdentificationFigures figures, IReadOnlyList<AxisResult> results) => (_figures, Results) = (figures, results);

    public IReadOnlyList<AxisResult> Results { get; }

    public static AxisEvidence Of(IdentificationInput input, TradeKnowledge knowledge) =>
        new(knowledge.Identification, [.. input.Tests.Select(test => Read(test, input.Leads, knowledge)).OfType<AxisResult>()]);

    /// <summary>The same with one more result.</summary>
    public AxisEvidence With(AxisResult result) => new(_figures, [.. Results, result]);

    /// <summary>The same without one result.</summary>
    public AxisEvidence Without(AxisResult result) => new(_figures, [.. Results.Where(other => other != result)]);

    /// <summary>The same without any result.</summary>
    public AxisEvidence WithoutAny() => new(_figures, []);

    /// <summary>Whether some test showed these two in each other, and none showed nothing: they do not stand at a right angle.</summary>
    public bool ShowsCoupled(int[] one, int[] other)
    {
        var between = Results.Where(result => result.Between(new(one[0], one[^1], other[0], other[^1], result.Shown))).ToList();
        return between.Exists(result => result.Shown is Induced.Half or Induced.Whole or Induced.Kick) && between.TrueForAll(result => result.Shown is not (Induced.Nothing or Induced.NoKick));
    }

    /// <summary>ln of how likely all results are if an explanation holds.</summary>
    public double LogOf(Leaf leaf)
    {
        if (Results.Count == 0)
        {
            return 0;
        }

        var (usual, apart) = (Math.Log(1 - _figures.OwnPoles.Value), Math.Log(_figures.OwnPoles.Value));
        foreach (var result in Results)
        {
            var lie = LieOf(leaf, result);
            usual += Math.Log(Chance(result.Shown, lie, ownPoles: false));
            apart += Math.Log(Chance(result.Shown, lie, ownPoles: true));
        }

        return Weights.LogSum([usual, apart]);
    }

    /// <summary>How the windings of a test lie to each other if an explanation holds.</summary>
    public static Lie LieOf(Leaf leaf, AxisResult result) =>
        (Winding(leaf, result.DriveFirst, result.DriveSecond), Winding(leaf, result.ReadFirst, result.ReadSecond)) is ({ } driven, { } read) ? leaf.Pattern.Lies.GetValueOrDefault((driven.Group, read.Group), Lie.Unknown) : Lie.Unknown;

    /// <summary>The winding between two leads; <see langword="null"/> where they are not the ends of one.</summary>
    public static PatternWinding? Winding(Leaf leaf, int first, int second)
    {
        var (one, other) = (leaf.TerminalOf[first], leaf.TerminalOf[second]);
        foreach (var winding in leaf.Pattern.Windings)
        {
            if (!winding.Junction && winding.Taps.Count == 0 && winding.Terminals is [var from, var to] && ((from == one && to == other) || (from == other && to == one)))
            {
                return winding;
            }
        }

        return null;
    }

    /// <summary>How windings of two groups lie to each other. An explanation stands for all that exchange like windings, so that it only says what holds of all of them.</summary>
    /// <param name="pattern">The motor.</param>
    public static IReadOnlyDictionary<(string, string), Lie> Lies(Pattern pattern) => pattern.Windings
        .SelectMany(one => pattern.Windings.Where(other => other != one).Select(other => (Groups: (one.Group, other.Group), Lie: LieOf(pattern.Layout, one, other))))
        .GroupBy(pair => pair.Groups, pair => pair.Lie)
        .ToDictionary(pair => pair.Key, pair => pair.Distinct().ToList() is [var single] ? single : Lie.Unknown);

    private static Lie LieOf(Layout layout, PatternWinding driven, PatternWinding read)
    {
        if (Coil(driven) is not { } one || Coil(read) is not { } other || one.Role == "other" || other.Role == "other")
        {
            return Lie.Apart; // a protector, a heater or a sensor
        }

        return Angle(one, other) switch
        {
            0 or Straight => one.Group == other.Group ? Lie.Alike : Lie.OneAxis,
            Right or Right + Straight => Lie.Apart,
            _ => Lie.Phases,
        };

        LayoutCoil? Coil(PatternWinding winding) => layout.Coils.FirstOrDefault(coil => winding.Coils.Contains(coil.Id));
    }

    /// <summary>An armature stands across its fields, whatever is written of it.</summary>
    private static double Angle(LayoutCoil one, LayoutCoil other) =>
        one.ChangesWithShaft == other.ChangesWithShaft ? Math.Abs(one.Axis - other.Axis) : Right;

    private double Chance(Induced shown, Lie lie, bool ownPoles)
    {
        var (misread, nothing, loaded) = (_figures.TestMisread.Value, ownPoles ? _figures.OwnPolesNothing.Value : _figures.TestMisread.Value, _figures.HalvesLoaded.Value);
        return (shown, lie) switch
        {
            (Induced.Unclear, _) or (_, Lie.Unknown) => 1, // it speaks against nothing
            (Induced.Nothing, Lie.Apart) => 1 - (2 * misread),
            (Induced.NoKick, Lie.Apart) => 1 - misread,
            (_, Lie.Apart) => misread,
            (Induced.Half, Lie.Phases) => 1 - (2 * misread),
            (Induced.Kick, Lie.Phases) => 1 - misread,
            (_, Lie.Phases) => misread,
            (Induced.Nothing or Induced.NoKick, _) => nothing,
            (Induced.Kick, _) => 1 - nothing,
            (_, Lie.OneAxis) => (1 - nothing) / 2,
            (Induced.Whole, _) => ownPoles ? misread : 1 - nothing - loaded,
            _ => ownPoles ? 1 - nothing - misread : loaded,
        };
    }

    private static AxisResult? Read(Fact.BenchTest test, IReadOnlyList<string> leads, TradeKnowledge knowledge)
    {
        int[] at = [.. test.Drive.Concat(test.Read).Select(tag => InputCheck.Lead(leads, tag))];
        return test.Drive.Count == 2 && test.Read.Count == 2 && test.Tie.Count == 0 && at.Distinct().Count() == at.Length && at.Min() >= 0 && Shown(test, knowledge) is { } shown
            ? new(at[0], at[1], at[2], at[3], shown) : null;
    }

    /// <summary>What a result shows; <see langword="null"/> for one that is no such test.</summary>
    private static Induced? Shown(Fact.BenchTest test, TradeKnowledge knowledge)
    {
        var rule = knowledge.Rules["ends-induced"];
        return (test.Test, test.Value / (test.AppliedVolts ?? knowledge.Rules["ends-applied-volts"]["volts"]), test.Outcome) switch
        {
            (ByFlick, _, "no-kick") => Induced.NoKick,
            (ByFlick, _, "up-on-make" or "down-on-make") => Induced.Kick,
            (ByVolts, { } ratio, _) when ratio <= rule["null"] => Induced.Nothing,
            (ByVolts, { } ratio, _) when ratio >= rule["same-axis"] => Induced.Whole,
            (ByVolts, { } ratio, _) when ratio >= rule["phases"] => Induced.Half,
            (ByVolts, { }, _) => Induced.Unclear,
            _ => null,
        };
    }
}
