using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>What a look at the motor and its plate says for and against a kind of motor.</summary>
public sealed class WhatIsSeenTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;

    [Theory]
    [InlineData("shaded-pole-2", false, null, false, false, null)]
    [InlineData("split-phase-4", null, null, false, false, null)]
    [InlineData("psc-reversible-3", true, true, false, false, null)]
    [InlineData("psc-tapped", false, true, true, false, null)]
    [InlineData("capacitor-start-4", null, false, false, false, null)]
    [InlineData("two-speed-6", null, null, true, false, null)]
    [InlineData("two-speed-two-winding-6", null, null, true, false, null)]
    [InlineData("wound-rotor-6", null, null, false, true, null)]
    [InlineData("three-phase-6", null, null, false, false, null)]
    [InlineData("series-commutator", null, null, false, true, false)]
    [InlineData("dc-shunt", null, null, false, true, false)]
    [InlineData("dc-permanent-magnet", null, null, false, true, true)]
    public void A_layout_shows_how_it_was_made(string id, bool? bothWays, bool? capacitorOutside, bool speeds, bool brushes, bool? magnets)
    {
        var layout = Knowledge.Layouts[id];
        Assert.Equal((bothWays, capacitorOutside, speeds, brushes, magnets), (Looks.TurnsBothWays(layout), Looks.HasCapacitorOutside(layout), Looks.HasSpeeds(layout), Looks.HasBrushes(layout), Looks.HasMagnets(layout)));
    }

    [Fact]
    public void A_look_speaks_against_what_was_made_otherwise_and_tells_two_apart_only_where_nobody_looked_yet()
    {
        var (shunt, split) = (Knowledge.Layouts["dc-shunt"], Knowledge.Layouts["split-phase-4"]);
        Assert.Equal((0, 1), (new Looks { Brushes = true }.Against(shunt), new Looks { Brushes = true }.Against(split)));
        Assert.Equal(2, new Looks { Brushes = false, Drags = true }.Against(shunt));
        Assert.Equal(0, new Looks { Drags = true }.Against(split)); // without brushes nobody knows whether it drags
        Assert.True(new Looks().WouldTell(shunt, split));
        Assert.False(new Looks { Brushes = true }.WouldTell(shunt, split));
        Assert.False(new Looks().WouldTell(split, split));
    }

    [Theory]
    [InlineData("split-phase-4", "phases 1", 0)]
    [InlineData("split-phase-4", "phases 3", -9)]
    [InlineData("split-phase-4", "phases 0", -9)]
    [InlineData("three-phase-6", "phases 3", 0)]
    [InlineData("three-phase-6", "phases 1", -9)]
    [InlineData("sealed-compressor-3", "phases 3", 0)]
    [InlineData("sealed-compressor-3", "phases 1", 0)]
    [InlineData("three-phase-6", "", 0)]
    public void Phases_on_the_plate_rule_kinds_out(string layout, string plate, double weight) => Assert.Equal(weight, Weigh(layout, plate), 1e-9);

    [Theory]
    [InlineData("two-speed-6", "rpm 1440")] // for a motor of two speeds a plate names both
    [InlineData("two-speed-two-winding-6", "rpm 1440")]
    [InlineData("wound-rotor-6", "rpm 720 1440")]
    [InlineData("three-phase-6", "rpm 1140 1725")]
    [InlineData("dual-voltage-4", "volts 230 400")] // halves give twice the volts and nothing else
    [InlineData("dual-voltage-4", "volts 230")]
    public void What_the_plate_does_not_name_makes_a_kind_less_likely(string layout, string plate) => Assert.InRange(Weigh(layout, plate), -9, -0.1);

    [Theory]
    [InlineData("two-speed-6", "rpm 720 1440")]
    [InlineData("three-phase-6", "rpm 1440")]
    [InlineData("three-phase-6", "rpm 1440 1730")] // 50 and 60 Hz
    [InlineData("dual-voltage-4", "volts 115 230")]
    [InlineData("split-phase-4", "volts 230")]
    [InlineData("split-phase-4", "volts 230 240")] // two names of one supply
    [InlineData("three-phase-6", "volts 230 400")] // delta and star
    public void What_the_plate_names_as_the_kind_needs_takes_nothing_from_it(string layout, string plate) => Assert.Equal(0, Weigh(layout, plate), 1e-9);

    private static double Weigh(string layout, string plate)
    {
        var words = plate.Split(' ');
        var fields = plate.Length == 0 ? PlateFields.Empty
            : PlateFields.Empty.With(words[0], PlateValue.Of([.. words.Skip(1).Select(word => double.Parse(word, System.Globalization.CultureInfo.InvariantCulture))]));
        return PlateWeight.Of(Knowledge.Layouts[layout], fields, Knowledge.Identification);
    }
}
