using WireCoach.Rules.Coaching;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

public sealed class WrittenCasesTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Troubleshooting Bench = new(Knowledge);

    public static TheoryData<string> HandedOn() => [.. WrittenCase.All.Where(one => one.ReferTo is not null).Select(one => one.Case)];

    public static TheoryData<string> Names() => [.. WrittenCase.All.Select(one => one.Case)];

    [Fact]
    public void There_are_cases_of_every_family_and_every_role()
    {
        Assert.True(WrittenCase.All.Count >= 60);
        Assert.Empty(Knowledge.Families.Keys.Except(WrittenCase.All.Select(one => one.Family ?? string.Empty), StringComparer.Ordinal));
        Assert.Empty(new[] { "technician", "homeowner", "apprentice", "manager" }.Except(WrittenCase.All.Select(one => one.Role), StringComparer.Ordinal));
        Assert.Empty(WrittenCase.All.SelectMany(one => one.Causes).Except(Knowledge.Causes.Keys, StringComparer.Ordinal));
        Assert.Empty(WrittenCase.All.SelectMany(one => one.Cautions).Except(Knowledge.Cautions.Keys, StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void An_accepted_cause_is_among_the_first_three(string name)
    {
        var one = Find(name);
        var causes = Bench.Examine(one.ToFile()).Faults.Causes;
        Assert.True(causes.Take(3).Any(cause => one.Causes.Contains(cause.Id)), string.Join(", ", causes.Take(5).Select(cause => $"{cause.Id} {cause.Probability:F2}")));
        if (one.First is not null)
        {
            Assert.Equal(one.First, causes[0].Id);
        }

        if (one.Status is not null)
        {
            Assert.Equal(one.Status, Bench.Examine(one.ToFile()).Faults.Status);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_first_test_is_one_that_a_senior_hand_would_make_and_the_gate_does_not_refuse(string name)
    {
        var one = Find(name);
        var report = Bench.Examine(one.ToFile());
        if (report.Faults.Next is { } next)
        {
            Assert.True(report.Gate.CouldOpen(next.Task));
            Assert.DoesNotContain(next.Test, one.RefusedTests);
            Assert.True(one.Tests.Count == 0 || one.Tests.Contains(next.Test), $"{next.Test} instead of {string.Join(", ", one.Tests)}");
        }
        else
        {
            Assert.True(report.Faults.Status is "settled" or "refer");
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_warning_that_is_due_is_there_and_a_danger_stops(string name)
    {
        var one = Find(name);
        var report = Bench.Examine(one.ToFile());
        Assert.Empty(one.Cautions.Except(report.Cautions.Select(caution => caution.Id), StringComparer.Ordinal));
        Assert.Equal(one.Stop, report.Gate.Stop);
        if (one.Stop)
        {
            Assert.StartsWith("stop-", report.Cautions[0].Id.Replace("protection-not-bypassed", "stop-", StringComparison.Ordinal), StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(HandedOn))]
    public void It_is_handed_on_to_whom_it_belongs(string name)
    {
        var one = Find(name);
        var gate = Bench.Examine(one.ToFile()).Gate;
        Assert.True(gate.ReferOut);
        Assert.Equal(one.ReferTo, gate.ReferTo);
        Assert.NotEmpty(gate.TellThem);
    }

    private static WrittenCase Find(string name) => WrittenCase.All.First(one => one.Case == name);
}
