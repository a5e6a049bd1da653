using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>Kinds of motor that read the same and that a look, the plate or a turn of the shaft tells apart.</summary>
public sealed class LooksTest
{
    private static readonly IdentificationInput Three = new() { Leads = ["1", "2", "3"], HasCapacitor = true, Plate = PlateFields.Empty.With("phases", PlateValue.Of(1)), Looks = new() };
    private static readonly IdentificationInput Four = new() { Leads = ["1", "2", "3", "4"], Looks = new() };
    private static readonly IdentificationInput Shunt = Four with
    {
        Plate = PlateFields.Empty.With("phases", PlateValue.Of(0)),
        Readings = [.. IdentifierTest.All(Four, [("1-2", 1.4), ("3-4", 300)]).Select(reading => reading.From == "1" && reading.To == "2" ? reading with { ChangesWithShaft = true } : reading)],
    };

    [Theory]
    [InlineData(7.1, 3.7, 10.6)]
    [InlineData(8.9, 5.5, 3.4)]
    [InlineData(3.3, 9.6, 6.6)]
    public void Two_windings_with_a_common_lead_may_be_like_ones_with_shorted_turns_until_somebody_has_looked(double one, double two, double three)
    {
        var input = Three with { Readings = [IdentifierTest.Ohms("1-2", one), IdentifierTest.Ohms("1-3", two), IdentifierTest.Ohms("2-3", three), IdentifierTest.Ohms("1-2", one), IdentifierTest.Ohms("1-3", two), IdentifierTest.Ohms("2-3", three)] };
        var unlooked = IdentifierTest.Give(input);
        Assert.Equal(IdentificationStatus.CannotTell, unlooked.Status);
        Assert.Contains("psc-reversible-3", unlooked.Undecided);
        Assert.Contains("psc-3", unlooked.Undecided);
        Assert.NotEqual(IdentificationStatus.Identified, IdentifierTest.Give(input with { Looks = new() { BothWays = true } }).Status);
        Assert.NotEqual(IdentificationStatus.Identified, IdentifierTest.Give(input with { Looks = null }).Status);
    }

    [Fact]
    public void A_fan_that_turns_one_way_has_a_main_and_a_capacitor_winding()
    {
        IdentificationInput input = Three with { Readings = [IdentifierTest.Ohms("1-2", 20), IdentifierTest.Ohms("1-3", 62), IdentifierTest.Ohms("2-3", 42), IdentifierTest.Ohms("1-2", 20), IdentifierTest.Ohms("2-3", 42), IdentifierTest.Ohms("1-3", 62)], CapacitorUse = "run" };
        var found = IdentifierTest.Give(input with { Looks = new() { BothWays = false, Brushes = false, Speeds = false, CapacitorOutside = true } });
        Assert.Equal(IdentificationStatus.Identified, found.Status);
        Assert.Equal(["2", "3"], found.Windings.Single(winding => winding.Role == "start").Leads);
    }

    [Fact]
    public void Two_like_windings_of_a_motor_that_turns_both_ways_are_both_run_windings()
    {
        var input = Three with { Readings = [IdentifierTest.Ohms("1-2", 40), IdentifierTest.Ohms("1-3", 40), IdentifierTest.Ohms("2-3", 80)] };
        Assert.Equal(IdentificationStatus.CannotTell, IdentifierTest.Give(input).Status);
        var found = IdentifierTest.Give(input with { Looks = new() { BothWays = true, Brushes = false, Speeds = false } });
        Assert.Equal(IdentificationStatus.Identified, found.Status);
        Assert.Equal(["run 1-2", "run 1-3"], found.Windings.Select(winding => $"{winding.Role} {string.Join('-', winding.Leads)}"));
    }

    [Fact]
    public void A_pair_beside_an_armature_is_a_field_only_where_there_are_no_magnets()
    {
        Assert.Equal(IdentificationStatus.CannotTell, IdentifierTest.Give(Shunt).Status);
        var found = IdentifierTest.Give(Shunt with { Readings = [.. Shunt.Readings, .. Shunt.Readings], Looks = new() { Drags = false, Brushes = true, Speeds = false } });
        Assert.Equal(IdentificationStatus.Identified, found.Status);
        Assert.Equal(["armature 1-2", "shunt-field 3-4"], found.Windings.Select(winding => $"{winding.Role} {string.Join('-', winding.Leads)}"));
        Assert.DoesNotContain(IdentifierTest.Give(Shunt with { Looks = new() { Drags = true } }).Windings, winding => winding.Role == "shunt-field");
    }

    [Fact]
    public void Brushes_are_looked_for_before_a_run_and_a_start_winding_are_called_so()
    {
        var input = Four with { Readings = [.. IdentifierTest.All(Four, [("1-2", 0.9), ("3-4", 3.2)]), IdentifierTest.Ohms("1-2", 0.9), IdentifierTest.Ohms("3-4", 3.2)], HasCapacitor = false };
        var unlooked = IdentifierTest.Give(input);
        Assert.Equal(IdentificationStatus.CannotTell, unlooked.Status);
        Assert.Contains("series-commutator", unlooked.Undecided);
        Assert.Equal(IdentificationStatus.Identified, IdentifierTest.Give(input with { Looks = new() { Brushes = false, Speeds = false, BothWays = false } }).Status);
        Assert.NotEqual(IdentificationStatus.Identified, IdentifierTest.Give(input with { Looks = new() { Brushes = true } }).Status);
        Assert.Contains(IdentifierTest.Give(input with { Looks = null }).Notes, note => note.Id == "windings.taken-for");
    }

    /// <summary>A fan with two speeds and no capacitor reads just like it.</summary>
    [Theory]
    [InlineData(null, IdentificationStatus.CannotTell)]
    [InlineData(true, IdentificationStatus.Identified)]
    public void A_capacitor_that_nobody_saw_makes_no_capacitor_winding(bool? capacitor, IdentificationStatus status)
    {
        IdentificationInput input = new() { Leads = ["1", "2", "3"], HasCapacitor = capacitor, CapacitorBridged = capacitor, Readings = [IdentifierTest.Ohms("1-2", 33), IdentifierTest.Ohms("2-3", 12), IdentifierTest.Ohms("1-3", 45)] };
        var found = IdentifierTest.Give(input);
        Assert.Equal(status, found.Status);
        Assert.Equal(capacitor is null, found.Notes.Any(note => note.Id == "windings.look-tells"));
    }

    [Theory]
    [InlineData(new[] { 115.0, 230 }, IdentificationStatus.Identified)]
    [InlineData(new[] { 230.0 }, IdentificationStatus.CannotTell)]
    public void Two_like_pairs_are_two_run_halves_on_a_plate_with_two_voltages(double[] volts, IdentificationStatus status)
    {
        var plate = PlateFields.Empty.With("phases", PlateValue.Of(1)).With("volts", PlateValue.Of(volts));
        var found = IdentifierTest.Give(Four with { Plate = plate, HasCapacitor = true, CapacitorUse = "start", Looks = new() { Brushes = false, Speeds = false, BothWays = false, CapacitorOutside = false }, Readings = [.. IdentifierTest.All(Four, [("1-2", 2.0), ("3-4", 2.0)]), IdentifierTest.Ohms("1-2", 2.0), IdentifierTest.Ohms("3-4", 2.0)] });
        Assert.Equal(status, found.Status);
    }

    [Fact]
    public void A_star_with_its_second_point_brought_out_has_ten_leads()
    {
        var ten = new IdentificationInput { Leads = [.. Enumerable.Range(1, 10).Select(lead => $"{lead}")], Plate = PlateFields.Empty.With("phases", PlateValue.Of(3)) };
        var found = IdentifierTest.Find(ten, ("1-4", 3.0), ("2-5", 3.0), ("3-6", 3.0), ("7-10", 3.0), ("8-10", 3.0), ("9-10", 3.0), ("7-8", 6.0), ("8-9", 6.0), ("7-9", 6.0));
        Assert.Equal(IdentificationStatus.Identified, found.Status);
        Assert.Equal("three-phase-9-star", found.Layouts[0].Id);
        Assert.Equal(6, found.Windings.Count);
    }
}
