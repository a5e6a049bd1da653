using WireCoach.Knowledge;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

public sealed class FaultSimulationTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);

    [Theory]
    [InlineData(0.0, 0.78, 0.9)]
    [InlineData(0.4, 0.74, 0.87)]
    public void Simulated_faults_are_found(double unsharp, double atOnce, double afterFive)
    {
        var tally = new FaultSimulation(Knowledge, unsharp, seed: 5).Run(300, fixedOrder: false);
        Assert.InRange(tally.Share(tally.InstructionAtOnce), atOnce, 1);
        Assert.InRange(tally.Share(tally.TopThreeAfterFive), afterFive, 1);
        Assert.InRange((double)tally.SettledRightly / tally.Settled, 0.9, 1);
    }

    [Fact]
    public void It_asks_less_than_a_textbook_does()
    {
        var chosen = new FaultSimulation(Knowledge, 0, seed: 7).Run(100, fixedOrder: false);
        var textbook = new FaultSimulation(Knowledge, 0, seed: 7).Run(100, fixedOrder: true);
        Assert.True(chosen.Tests < 0.7 * textbook.Tests, $"{chosen.Tests} against {textbook.Tests}");
        Assert.True(chosen.Seconds < 0.7 * textbook.Seconds, $"{chosen.Seconds} against {textbook.Seconds}");
    }
}
