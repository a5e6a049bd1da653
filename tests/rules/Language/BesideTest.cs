using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What symptoms that are told beside each other make of each other.</summary>
public sealed class BesideTest
{
    [Fact]
    public void Each_row_is_moved_by_the_others_as_far_as_they_are_likely()
    {
        string[] names = ["no/runs-hot", "runs-hot", "vibrates"];
        var learnt = new Dictionary<string, ToldBeside>(StringComparer.Ordinal)
        {
            ["runs-hot"] = new() { Id = "runs-hot", Own = 0.5, Others = "no/runs-hot -2.00 vibrates 0.25" },
            ["vibrates"] = new() { Id = "vibrates", Own = -1, Others = string.Empty },
        };
        var chances = new Beside(learnt, names).Chances([3, 0.2, -1]);
        Assert.Equal(Chance(3), chances[0], 12);
        Assert.Equal(Chance(0.2 + 0.5 - (2 * Chance(3)) + (0.25 * Chance(-1))), chances[1], 12);
        Assert.Equal(Chance(-2), chances[2], 12);
    }

    [Fact]
    public void Something_was_learnt_of_every_row_and_nothing_of_itself()
    {
        var learnt = Trade.Knowledge.Words.Beside;
        Assert.Equal(Trade.Knowledge.Words.Told.Keys.Order(StringComparer.Ordinal), learnt.Keys.Order(StringComparer.Ordinal));
        Assert.All(learnt.Values, row => Assert.DoesNotContain(WordWeights.Of(row.Others), other => other.Word == row.Id));
    }

    private static double Chance(double odds) => 1 / (1 + Math.Exp(-odds));
}
