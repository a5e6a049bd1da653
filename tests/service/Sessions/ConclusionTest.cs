using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>What today's rules make of an old job otherwise than it was decided then.</summary>
public sealed class ConclusionTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);

    private static readonly Assessment Today = new Coach(Knowledge).Assess(CaseFile.From(
        new CaseOpening(Role.Technician, Region.NorthAmerica),
        [.. new Listener(Knowledge).Understand("The grinder hums and starts when it is spun.").Facts.Select((fact, at) => fact with { FactId = $"f{at + 1}" })]));

    [Fact]
    public void What_is_decided_as_before_is_no_difference() => Assert.Empty(Conclusion.Differences(Conclusion.Of(Today), Today));

    [Fact]
    public void Nothing_is_compared_where_nothing_was_decided() => Assert.Empty(Conclusion.Differences(null, Today));

    [Fact]
    public void Each_decision_that_is_taken_otherwise_is_named_with_both()
    {
        var now = Conclusion.Of(Today);
        var found = Conclusion.Differences(now with { Status = "verified", Layout = "psc-3", Causes = ["worn-bearing"] }, Today);
        Assert.Equal(["status", "layout", "cause"], found.Select(difference => difference.What));
        Assert.Equal(["verified"], found[0].Then);
        Assert.Equal([now.Status], found[0].Now);
        Assert.Equal(["psc-3"], found[1].Then);
        Assert.Empty(found[1].Now);
        Assert.Equal(now.Causes, found[2].Now);
        Assert.NotEmpty(now.Causes);
    }
}
