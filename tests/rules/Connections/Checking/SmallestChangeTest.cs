using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>The one change that mends a connection: the plainest first, and right once it is made.</summary>
public sealed class SmallestChangeTest
{
    [Theory]
    [InlineData("split", "L1:M1,A1 L2:M2 ~:A2", "Join L2 with A2.")]
    [InlineData("split", "L1:M1,A1 L2: ~:M2,A2", "Join L2 with M2 + A2.")] // a line that lies on nothing yet
    [InlineData("split", "L1:M1,A1 L2:M2", "Join L2 with A2.")] // a lead that nobody named lies loose
    [InlineData("split", "L1:M1,A1 L2:M2,A2 L2:A1", "Take A1 out of the joint with L2.")] // out of the other it would lie with both ends on one line
    [InlineData("split", "L1:M1,A1 L2:M2,A2 ~:M1,M2", "Take M1 out of the joint with M2.")]
    [InlineData("split", "L1:M1,A1 L2:M2,A2 ~:M1,A1,M2,A2", "Take the joint M1 + A1 + M2 + A2 apart.")]
    [InlineData("split", "L1:M1,A1 L2:M2,A2,z PE:z", "Take z off and cap it alone.")]
    [InlineData("split", "L1:M1,M2 L2:A1,A2", "Exchange A1 and M1.")]
    [InlineData("halves", "L1:1,4,8 L2:2,3,5", "Exchange 1 and 2.")]
    [InlineData("halves", "~:1,3,8 L1: L2:2,4,5", "Join 1 + 3 + 8 with L1.")]
    [InlineData("halves", "L1:1,3,4,8 L2:2,5", "Move 4 to L2.")]
    [InlineData("star", "L1:1 L2:2 ~:3 ~:4,5,6", "Put L3 on 3.")]
    [InlineData("star", "L1:1 L2:2 L3:3 ~:4,5 ~:6", "Join 4 + 5 with 6.")]
    [InlineData("star", "L1:4 L2:2 L3:3 ~:1,5,6", "Exchange 1 and 4.")]
    [InlineData("tapped", "L1:M1,A1,t L2:M2,A2", "Take t off and cap it alone.")]
    public void One_change_makes_it_right(string motor, string joints, string change)
    {
        var found = Connected.Of(Coils(motor), joints, phases: motor == "star" ? 3 : 1);
        var result = Connected.Checked(found);
        Assert.NotEqual(Verdict.Correct, result.Verdict);
        Assert.Equal(change, Trade.Knowledge.Sentences.Render(result.Change!.What));
        Assert.Equal(Verdict.Correct, Connected.Checked(found with { Joints = result.Change.Joints }).Verdict);
        Assert.Subset(
            found.Coils.SelectMany(coil => new[] { coil.From, coil.To }).Append("z").ToHashSet(StringComparer.Ordinal),
            result.Change.Joints.SelectMany(joint => joint.Leads).ToHashSet(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("split", "L1:M1,A1 L2:M2,A2")] // right as it is
    [InlineData("halves", "L1:2,3 L2:8 ~:1,4,5")] // more than one thing is wrong
    [InlineData("split", "L1:M1,A1 L2:M2,A2", 460)] // no joint helps against wrong volts
    public void No_change_is_offered_where_none_is_needed_or_one_is_not_enough(string motor, string joints, double volts = 230) =>
        Assert.Null(Connected.Checked(Connected.Of(Coils(motor), joints, volts, 1)).Change);

    /// <summary>Six corners and middles of a motor for two speeds: at the low one the middles lie apart.</summary>
    [Fact]
    public void Middles_that_were_joined_are_taken_apart()
    {
        FoundCoil[] coils = [.. new[] { ("a", "1U", "2U", "1V"), ("b", "1V", "2V", "1W"), ("c", "1W", "2W", "1U") }
            .SelectMany(phase => new[] { Connected.Phase(phase.Item1, phase.Item2, phase.Item3, 200), Connected.Phase(phase.Item1, phase.Item3, phase.Item4, 200) })];
        Assert.Equal(Verdict.Correct, Connected.Checked(Connected.Of(coils, "L1:1U L2:1V L3:1W", 400)).Verdict);
        Assert.Equal("Take the joint 2U + 2V + 2W apart.", Trade.Knowledge.Sentences.Render(Connected.Checked(Connected.Of(coils, "L1:1U L2:1V L3:1W ~:2U,2V,2W", 400)).Change!.What));
    }

    [Fact]
    public void A_lead_that_lies_loose_beside_a_capacitor_is_joined()
    {
        var found = Connected.Of(Connected.Split, "L1:M1,A1 L2:q", phases: 1) with { Capacitors = [new("A2", "q", 10)] };
        Assert.Equal("Join L2 with M2.", Trade.Knowledge.Sentences.Render(Connected.Checked(found).Change!.What));
    }

    [Fact]
    public void Fourteen_leads_are_searched_and_no_more()
    {
        CheckResult Of(int strays) => Connected.Checked(Connected.Of(Connected.Split, $"L1:M1,A1 L2:M2 ~:A2 {string.Join(' ', Enumerable.Range(0, strays).Select(at => $"~:z{at}"))}", phases: 1));
        Assert.NotNull(Of(10).Change);
        Assert.Null(Of(11).Change);
    }

    private static IReadOnlyList<FoundCoil> Coils(string motor) => motor switch
    {
        "split" => Connected.Split,
        "halves" => Connected.Halves,
        "tapped" => [.. Connected.Split, Connected.Run("tap", "t", "u") with { MayRest = true }, Connected.Run("other", "u", "M2") with { MayRest = true, RatedVolts = 100 }],
        _ => Connected.Star,
    };
}
