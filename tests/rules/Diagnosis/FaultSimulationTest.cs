using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

public sealed class FaultSimulationTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

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

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.4)]
    public void Faults_that_show_as_another_hand_wrote_them_are_found(double unsharp)
    {
        var tally = new FaultSimulation(Knowledge, unsharp, seed: 11, apart: true).Run(500, fixedOrder: false);
        Assert.InRange(tally.Share(tally.InstructionAtOnce), 0.85, 1);
        Assert.InRange(tally.Share(tally.InstructionAfterFive), 0.94, 1);
        Assert.InRange((double)tally.SettledRightly / tally.Settled, 0.95, 1);
    }

    [Fact]
    public void The_world_that_was_written_apart_names_every_cause_and_only_what_knowledge_knows()
    {
        var world = WrittenWorld.Read();
        Assert.Equal(Knowledge.Causes.Keys.Order(StringComparer.Ordinal), world.Select(fault => fault.Cause).Order(StringComparer.Ordinal));
        Assert.All(world, fault =>
        {
            Assert.Empty(fault.Shows.Keys.Except(Knowledge.Symptoms.Keys));
            Assert.All(fault.Tests, test => Assert.Empty(test.Value.Keys.Except(Knowledge.Tests[test.Key].Outcomes.Select(outcome => outcome.Id))));
        });
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
