using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Which lead a name means, and what looks like the name of one.</summary>
public sealed class LeadReaderTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("wire #3 to wire #4 is 4.2", "3 4")]
    [InlineData("wire no 3 to wire no 4 is 4.2", "3 4")]
    [InlineData("wire number 3 to wire number 4 is 4.2", "3 4")]
    [InlineData("wire nr 3 to wire nr 4 is 4.2", "3 4")]
    [InlineData("wire 3 to wire 4 is 4.2", "3 4")]
    [InlineData("48 to 47 is 4.2 ohm", "48 47")]
    [InlineData("the red to the blue 4.2", "red blue")]
    [InlineData("white/black to red 4.2 ohm", "white/black red")]
    [InlineData("white with black stripe to red 4.2 ohm", "white/black red")]
    [InlineData("white with a black tracer to red 4.2 ohm", "white/black red")]
    [InlineData("white w/ black stripe to red 4.2 ohm", "white/black red")]
    [InlineData("white with black trace to red 4.2 ohm", "white/black red")]
    [InlineData("white with black line to red 4.2 ohm", "white/black red")]
    [InlineData("white with tracer to red 4.2 ohm", "white/tracer red")]
    [InlineData("white with stripe to red 4.2 ohm", "white/tracer red")]
    [InlineData("the bare frame to T1 4.2", "frame T1")]
    [InlineData("ground to T1 4.2", "earth T1")]
    [InlineData("49 to 50 is 4.2 ohm", null)]
    [InlineData("0 to 1 is 4.2 ohm", null)]
    [InlineData("1.5V to 2 4.2", null)]
    [InlineData("J1 to J2 4.2", null)]
    [InlineData("IP55 to T1 4.2", null)]
    [InlineData("L1 to L2 4.2", null)]
    [InlineData("the fat wire to the thin wire 4.2", null)]
    public void A_lead_is_a_number_a_mark_a_colour_or_metal(string text, string? pair) => Assert.Equal(pair, Pair(text));

    [Theory]
    [InlineData("fat red to thin red 4.2", "fat red", "thin red", "fat red thin red")]
    [InlineData("yellow to blue 4.2", "fat yellow", "blue", "fat yellow blue")]
    [InlineData("yellow to blue 4.2", "yellow", "blue", "yellow blue")]
    [InlineData("7 to 8 is 4.2", "T7", "T8", "T7 T8")]
    [InlineData("7 to 8 is 4.2", "7", "T8", "7 T8")]
    [InlineData("t7 to t8 is 4.2", "T7", "T8", "T7 T8")]
    [InlineData("white/black is 4.2 ohm", "white", "black", "white black")]
    public void A_name_that_is_known_goes_before_what_it_looks_like(string text, string one, string other, string pair) => Assert.Equal(pair, Pair(text, one, other));

    private static string? Pair(string text, params string[] leads) =>
        Listener.Understand(text, leads).Facts.OfType<Fact.Reading>().Select(reading => $"{reading.From} {reading.To}").SingleOrDefault();
}
