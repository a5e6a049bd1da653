using WireCoach.Knowledge;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>A feed that is off, or a slip of the decimal point upwards, decides nothing about ends.</summary>
public sealed class EndsLimitsTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);

    [Theory]
    [InlineData("series-voltage", 18.4, 12.0, null)]
    [InlineData("series-voltage", 4.1, 12.0, null)]
    [InlineData("series-voltage", 1.2, 12.0, null)]
    [InlineData("series-voltage", 0.5, 12.0, "problem.ends-too-low")]
    [InlineData("series-voltage", 0, 12.0, "problem.ends-too-low")]
    [InlineData("series-voltage", 0, null, "problem.ends-too-low")]
    [InlineData("series-voltage", 25, 12.0, "problem.ends-too-high")]
    [InlineData("induced-voltage", 0.1, 12.0, null)]
    [InlineData("half-run", 9, 120.0, null)]
    public void What_no_motor_reads_is_refused_with_what_to_look_at(string test, double value, double? applied, string? problem) =>
        Assert.Equal(problem, EndsLimits.Against(Knowledge, test, value, applied)?.Id);

    [Theory]
    [InlineData(25.125, 12.0, "25.13 V cannot come from 12 V on the fed leads; 24.6 V is the most")]
    [InlineData(0.5, 12.0, "0.5 V is less than any two windings leave of 12 V, at least 0.96 V")]
    public void What_is_refused_is_said_with_its_figures(double value, double? applied, string said) =>
        Assert.StartsWith(said, Knowledge.Sentences.Render(EndsLimits.Against(Knowledge, "series-voltage", value, applied)!), StringComparison.Ordinal);
}
