using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>Small motors joined as a line of text says, and what the checker says of them.</summary>
/// <remarks>"L1:1,3 L2:2 ~:4,5" puts 1 and 3 on L1, 2 on L2, and 4 and 5 together on nothing.</remarks>
internal static class Connected
{
    private static readonly ConnectionChecker Checker = new(Trade.Knowledge);

    /// <summary>A run and a start winding.</summary>
    public static readonly IReadOnlyList<FoundCoil> Split = [Run("main", "M1", "M2"), Start("start", "A1", "A2")];

    /// <summary>Two run halves and a start winding, all for the low volts.</summary>
    public static readonly IReadOnlyList<FoundCoil> Halves = [Run("first", "1", "2"), Run("second", "3", "4"), Start("start", "8", "5")];

    /// <summary>Two run halves and two start halves.</summary>
    public static readonly IReadOnlyList<FoundCoil> AllHalves = [Run("first", "1", "2"), Run("second", "3", "4"), Start("start", "6", "5"), Start("other", "8", "7")];

    /// <summary>Three phases for star.</summary>
    public static readonly IReadOnlyList<FoundCoil> Star = [Phase("a", "1", "4"), Phase("b", "2", "5"), Phase("c", "3", "6")];

    /// <summary>An armature with a shunt field.</summary>
    public static readonly IReadOnlyList<FoundCoil> Shunt = [Brushed("armature", "A1", "A2", FoundCoil.Armature), Brushed("shunt", "F1", "F2", FoundCoil.ShuntField)];

    /// <summary>An armature with a series field.</summary>
    public static readonly IReadOnlyList<FoundCoil> Series = [Shunt[0], Brushed("series", "S1", "S2", FoundCoil.SeriesField)];

    /// <summary>An armature with both fields.</summary>
    public static readonly IReadOnlyList<FoundCoil> Compound = [Shunt[0], Series[1], Shunt[1]];

    /// <summary>An armature between two series fields.</summary>
    public static readonly IReadOnlyList<FoundCoil> TwoSeries = [Shunt[0], Series[1], Brushed("other", "S3", "S4", FoundCoil.SeriesField)];

    public static FoundCoil Run(string id, string from, string to) => new(id, from, to, "run", 230, "main");

    public static FoundCoil Start(string id, string from, string to) => new(id, from, to, "start", 230, "start");

    public static FoundCoil Phase(string axis, string from, string to, double volts = 133) => new($"{axis} {from}-{to}", from, to, "phase", volts, axis);

    public static IReadOnlyList<FoundJoint> Joints(string text) =>
        [.. text.Split(' ').Select(joint => joint.Split(':')).Select(joint => new FoundJoint(joint[1].Length == 0 ? [] : joint[1].Split(','), joint[0] == "~" ? null : joint[0]))];

    public static FoundConnection Of(IReadOnlyList<FoundCoil> coils, string joints, double volts = 230, int? phases = null, double? hertz = 60) =>
        new() { Coils = coils, Joints = Joints(joints), SupplyVolts = volts, Phases = phases, Hertz = hertz };

    public static CheckResult Checked(FoundConnection found)
    {
        var answer = Checker.Check(found);
        Assert.True(answer.IsGiven, string.Join("; ", answer.Problems.Select(problem => Trade.Knowledge.Sentences.Render(problem.Advice))));
        Assert.All(answer.Value.Findings.Select(finding => finding.Why).Concat(answer.Value.Seen), said => Assert.DoesNotContain('{', Trade.Knowledge.Sentences.Render(said)));
        return answer.Value;
    }

    /// <summary>"rule severity about, about; …", in the order in which they are told.</summary>
    public static string Told(CheckResult result) =>
        string.Join("; ", result.Findings.Select(finding => $"{finding.Rule} {finding.Severity} {string.Join(',', finding.About)}".TrimEnd()));

    /// <summary>The sentences of what would be seen.</summary>
    public static string Seen(CheckResult result) => string.Join(' ', result.Seen.Select(said => said.Id["check.seen-".Length..]));

    private static FoundCoil Brushed(string id, string from, string to, string role) => new(id, from, to, role, 230, "main");
}
