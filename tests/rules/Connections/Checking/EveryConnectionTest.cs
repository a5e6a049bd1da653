using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>The checker against the independent judge: every way to join up to six leads, and chance for more.</summary>
public sealed class EveryConnectionTest
{
    private static readonly ConnectionChecker Checker = new(Trade.Knowledge);

    [Theory]
    [MemberData(nameof(Names))]
    public void The_tables_of_the_trade_are_right(string name)
    {
        var motor = Motor(name);
        Assert.All(motor.Tables, table =>
        {
            Assert.True(IndependentJudge.IsRight(motor, motor.Nets(table)), table);
            Assert.Equal([], Checker.Judged(motor.Found(motor.Nets(table))).Findings.Select(finding => finding.Rule));
        });
    }

    /// <summary>The numbers of right ones are counted by hand: lines in any order, either direction, either half, either end.</summary>
    [Theory]
    [InlineData("SP4", 203, 4)]
    [InlineData("DV6 high", 4140, 16)]
    [InlineData("DV6 low", 4140, 4)]
    [InlineData("six-lead star", 21147, 12)]
    [InlineData("six-lead delta", 21147, 12)]
    public void Every_way_to_join_the_leads_is_judged_as_the_independent_judge_does(string name, int ways, int right)
    {
        var motor = Motor(name);
        var (all, good) = (0, 0);
        foreach (var nets in Partitions([.. motor.Leads, .. motor.Lines]))
        {
            nets["n"] = -1;
            all++;
            good += Same(motor, nets) ? 1 : 0;
        }

        Assert.Equal((ways, right), (all, good));
    }

    [Theory]
    [InlineData("DV8 high")]
    [InlineData("DV8 low")]
    [InlineData("nine-lead star high")]
    [InlineData("nine-lead star low")]
    [InlineData("nine-lead delta high")]
    [InlineData("nine-lead delta low")]
    [InlineData("twelve-lead high star")]
    [InlineData("twelve-lead high delta")]
    [InlineData("twelve-lead low star")]
    [InlineData("twelve-lead low delta")]
    public void Chance_slips_in_larger_motors_are_judged_as_the_independent_judge_does(string name)
    {
        var motor = Motor(name);
        var chance = new Random(20);
        for (var again = 0; again < 1500; again++)
        {
            Same(motor, motor.Slipped(chance));
        }
    }

    public static TheoryData<string> Names() => [.. BenchMotor.All.Select(motor => motor.Name)];

    private static BenchMotor Motor(string name) => BenchMotor.All.Single(motor => motor.Name == name);

    /// <summary>Both say the same; the answer is whether it is right.</summary>
    private static bool Same(BenchMotor motor, IReadOnlyDictionary<string, int> nets)
    {
        var (expected, judged) = (IndependentJudge.IsRight(motor, nets), Checker.Judged(motor.Found(nets)));
        Assert.True(expected == (judged.Verdict == Verdict.Correct), $"{motor.Name}: {Text(nets)} is {(expected ? "right" : "wrong")}, the checker says {judged.Verdict}: {string.Join(", ", judged.Findings.Select(finding => finding.Rule))}");
        return expected;
    }

    private static string Text(IReadOnlyDictionary<string, int> nets) => string.Join(' ', nets.GroupBy(name => name.Value).Select(net => string.Join('+', net.Select(name => name.Key))));

    /// <summary>Every way to put things into groups.</summary>
    private static IEnumerable<Dictionary<string, int>> Partitions(IReadOnlyList<string> names)
    {
        var groups = new int[names.Count];
        IEnumerable<Dictionary<string, int>> From(int index, int used)
        {
            if (index == names.Count)
            {
                yield return names.Select((name, at) => (name, groups[at])).ToDictionary();
                yield break;
            }

            for (var group = 0; group <= used; group++)
            {
                groups[index] = group;
                foreach (var found in From(index + 1, Math.Max(used, group + 1)))
                {
                    yield return found;
                }
            }
        }

        return From(0, 0);
    }
}
