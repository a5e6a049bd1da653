using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Which leads hang together and on which line, in the ways in which it is said.</summary>
public sealed class JointsTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("L1: T1, T7")]
    [InlineData("L1 - T1 and T7")]
    [InlineData("L1 = T1, T7")]
    [InlineData("L1 has T1 and T7")]
    [InlineData("L1 gets T1 and T7")]
    [InlineData("L1 takes T1 and T7")]
    [InlineData("L1 to T1 and T7")]
    [InlineData("L1 with T1 and T7")]
    [InlineData("L1 feeds T1 and T7")]
    [InlineData("L1 is T1 + T7")]
    [InlineData("line: T1, T7")]
    [InlineData("line 1: T1, T7")]
    [InlineData("T1 and T7 go to L1")]
    [InlineData("T1 and T7 on the line")]
    [InlineData("T1 & T7 on line 1")]
    [InlineData("T1 with T7 on L1")]
    [InlineData("T1 T7 joined, on L1")]
    [InlineData("T1 T7 joined to L1")]
    [InlineData("T1 and T7 on L1 together")]
    public void Leads_on_a_line_are_heard(string text) => Assert.Equal("joint T1 T7 > L1", Heard(text));

    [Theory]
    [InlineData("L1: T1, T7. L2: T2, T8. L3: T3, T9", "joint T1 T7 > L1; joint T2 T8 > L2; joint T3 T9 > L3")]
    [InlineData("T1 T7 on L1, T2 T8 on L2, T3 T9 on L3", "joint T1 T7 > L1; joint T2 T8 > L2; joint T3 T9 > L3")]
    [InlineData("L1: T1, L2: T2, L3: T3", "joint T1 > L1; joint T2 > L2; joint T3 > L3")]
    [InlineData("T8 capped, T9 capped", "joint T8 > nothing; joint T9 > nothing")]
    [InlineData("T8 and T9 each capped", "joint T8 > nothing; joint T9 > nothing")]
    [InlineData("T8 and T9 are capped separately", "joint T8 > nothing; joint T9 > nothing")]
    [InlineData("T8 and T9 each capped separately", "joint T8 > nothing; joint T9 > nothing")]
    [InlineData("T8 and T9 capped", "")]
    [InlineData("neutral: T4", "joint T4 > N")]
    [InlineData("T1 goes to the neutral", "joint T1 > N")]
    [InlineData("T1 on L1", "joint T1 > L1")]
    [InlineData("T4 T5 T6 together", "joint T4 T5 T6 > nothing")]
    [InlineData("T4, T5 & T6 are together", "joint T4 T5 T6 > nothing")]
    [InlineData("T4 + T5 + T6 tied together", "joint T4 T5 T6 > nothing")]
    [InlineData("T4 with T5 and T6 tied together", "joint T4 T5 T6 > nothing")]
    [InlineData("red, blue joined together", "joint red blue > nothing")]
    [InlineData("L1 has T1 on L2", "joint T1 > L2")]
    [InlineData("L1: T1 goes to L2", "joint T1 > L2")]
    public void Each_joint_is_heard_with_its_own_leads(string text, string joints) => Assert.Equal(joints, Heard(text));

    [Theory]
    [InlineData("T4 joined")]
    [InlineData("T4 and T4 joined")]
    [InlineData("a and b joined")]
    [InlineData("frame and T1 joined")]
    [InlineData("earth and T4 tied together")]
    [InlineData("red, blue and the frame joined")]
    [InlineData("red to the frame")]
    [InlineData("L1: 1, 4")]
    public void One_lead_alone_the_frame_and_bare_numbers_make_no_joint(string text) => Assert.DoesNotContain("joint", Heard(text), StringComparison.Ordinal);

    [Theory]
    [InlineData("L1: 1, 4", "joint 1 4 > L1")]
    [InlineData("L1 4 a", "")]
    [InlineData("L1 4 amp", "")]
    [InlineData("L1 4 amps", "")]
    [InlineData("L1 4 v", "")]
    [InlineData("L1 4 volt", "")]
    [InlineData("L1 4 volts", "")]
    [InlineData("L1 4 ohm", "")]
    [InlineData("L1 4 ohms", "")]
    public void A_number_behind_a_line_is_a_lead_where_leads_are_called_so_and_never_with_a_unit(string text, string joints) =>
        Assert.Equal(joints, string.Join("; ", Brief.Of(Listener.Understand(text, ["1", "2", "3", "4"])).Where(line => line.StartsWith("joint", StringComparison.Ordinal))));

    private static string Heard(string text) => string.Join("; ", Brief.Of(Listener.Understand(text)));
}
