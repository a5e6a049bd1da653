using WireCoach.Rules.Connections;
using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>Windings and connections are called by words and the person's tags, never by the ids of a layout.</summary>
public sealed class WindingNamesTest
{
    private static readonly WindingNames Names = new(Motors.Knowledge.Sentences);

    [Theory]
    [InlineData("capacitor-start-dual-6", "run-1", "run half T1–T2")]
    [InlineData("capacitor-start-dual-6", "start", "start winding T5–red")]
    [InlineData("three-phase-9-star", "a2", "winding half T7")]
    [InlineData("three-phase-6", "a", "winding T1–T4")]
    [InlineData("psc-tapped", "tap-1", "speed section HI–MED")]
    [InlineData("shaded-pole-2", "run", "run winding T1–T4")]
    [InlineData("capacitor-start-dual-8", "start-1", "start half T5–T6")]
    [InlineData("capacitor-start-dual-8", "start-2", "start half T7–red")]
    [InlineData("sealed-compressor-3", "run", "run winding C–R")]
    [InlineData("sealed-compressor-3", "start", "start winding C–S")]
    [InlineData("three-phase-3", "b", "winding T2")]
    [InlineData("dc-compound", "armature", "armature A1–A2")]
    [InlineData("dc-compound", "series-field", "series field S1–S2")]
    [InlineData("dc-compound", "shunt-field", "shunt field F1–F2")]
    public void A_winding_goes_by_its_kind_and_its_ends(string layout, string coil, string expected)
    {
        var motor = Motors.Knowledge.Layouts[layout];
        Assert.Equal(expected, Names.Of(motor, motor.Coils.Single(one => one.Id == coil), new Dictionary<string, string> { ["T8"] = "red" }));
    }

    [Theory]
    [InlineData("three-phase-9-star", "high-star", "higher voltage, star")]
    [InlineData("capacitor-start-dual-6", "low-clockwise", "lower voltage, clockwise")]
    [InlineData("part-winding-6", "start", "the one connection, only while starting")]
    public void A_connection_goes_by_what_it_is_for_and_by_its_direction_where_it_has_one(string layout, string row, string expected) =>
        Assert.Equal(expected, Names.Of(Motors.Knowledge.Layouts[layout].Connections.Single(one => one.Id == row)));

    [Theory]
    [InlineData("high", "higher voltage")]
    [InlineData("delta", "delta")]
    [InlineData("zigzag", "zigzag")]
    public void A_wish_goes_by_the_word_of_the_trade_and_else_by_its_own(string kind, string expected) => Assert.Equal(expected, Names.Use(kind));

    [Fact]
    public void Every_winding_and_every_connection_of_every_layout_has_its_own_name()
    {
        foreach (var layout in Motors.Knowledge.Layouts.Values.SelectMany(layout => layout.Forms()))
        {
            var windings = layout.Coils.Select(coil => Names.Of(layout, coil, new Dictionary<string, string>())).ToList();
            Assert.True(windings.Distinct(StringComparer.Ordinal).Count() == windings.Count, $"{layout.Id} {layout.Form}: {string.Join(", ", windings)}");
            Assert.All(windings, name => Assert.DoesNotContain("inside", name, StringComparison.Ordinal));
            var rows = layout.Connections.Select(Names.Of).ToList();
            Assert.True(rows.Distinct(StringComparer.Ordinal).Count() == rows.Count, $"{layout.Id} {layout.Form}: {string.Join("; ", rows)}");
        }
    }

    [Fact]
    public void A_line_that_is_not_used_comes_before_the_volts_that_follow_from_it()
    {
        var motor = Motors.Knowledge.Layouts["three-phase-6"];
        var row = motor.Connections[0];
        var joints = FoundMotor.JointsOf(row, new Dictionary<string, string>()).Select(joint => joint.Conductor == "L3" ? joint with { Conductor = null } : joint).ToList();
        var result = new ConnectionChecker(Motors.Knowledge).Check(
            FoundMotor.Of(Names, motor, new Dictionary<string, string>(), 230, joints, 230 * row.VoltsShare, 3, row)).Value!;
        Assert.Equal("line-not-used", result.Findings[0].Rule);
        Assert.Contains(result.Findings, finding => finding.Severity == Severity.Wrong);
    }
}
