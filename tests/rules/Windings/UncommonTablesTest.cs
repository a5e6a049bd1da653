using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>Tables of readings that are right and that common motors do not give: nothing is said of them that they do not show.</summary>
public sealed class UncommonTablesTest
{
    private static readonly Identifier Identifier = new(Trade.Knowledge);

    [Theory]
    [InlineData("C", "R", "S")]
    [InlineData("C", "S", "R")]
    [InlineData("S", "R", "C")]
    public void An_open_overload_of_a_sealed_compressor_is_found_in_whatever_order_its_pins_are_named(string first, string second, string third)
    {
        var found = Find(Marked(first, second, third), ("S-R", 7));
        Assert.Equal(IdentificationStatus.Faulty, found.Status);
        Assert.Equal("protector-open", found.Faults.Single().Id);
        Assert.Equal(["R", "S"], Enumerable.Select(["run", "start"], role => found.Windings.Single(winding => winding.Role == role).Leads.Single(lead => lead != "C")));
    }

    [Fact]
    public void Leads_between_which_nothing_is_left_over_the_meters_own_are_not_named()
    {
        var found = Find(new() { Leads = ["a", "b", "c"] }, ("a-b", 0), ("a-c", 0), ("b-c", 0));
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
        Assert.Equal("windings.no-ohms", found.Notes[0].Id);
    }

    [Fact]
    public void Pins_without_marks_are_not_named_where_the_break_hides_which_is_which()
    {
        var found = Find(new() { Leads = ["a", "b", "c"], Plate = PlateFields.Empty.With("phases", PlateValue.Of(1)) }, ("b-c", 7));
        Assert.DoesNotContain(found.Windings, winding => winding.Role is "run" or "start");
    }

    [Theory]
    [InlineData(1200, 3900)]
    [InlineData(2000, 4400)]
    public void Two_windings_in_a_row_may_read_more_than_any_one_winding(double run, double start)
    {
        var found = Find(new() { Leads = ["a", "b", "c"] }, ("a-b", run), ("a-c", start), ("b-c", run + start));
        Assert.Empty(found.Contradictions);
        Assert.Empty(found.Faults);
    }

    [Fact]
    public void A_bleed_resistor_behind_a_winding_stays_one()
    {
        var found = Find(new() { Leads = ["a", "b", "c", "d"], HasCapacitor = true }, ("a-b", 1.2), ("c-d", 15000));
        Assert.Null(found.Windings.Single(winding => winding.Role == "start").Ohms);
    }

    [Theory]
    [InlineData("U1-U2 V1-V2 W1-W2", "TP1-TP2", 180)]
    [InlineData("U1-U2 V1-V2 W1-W2", "HE1-HE2", 576)]
    [InlineData("T1-T4 T2-T5 T3-T6", "H1-H2", 576)]
    [InlineData("T1-T4 T2-T5 T3-T6", "P1-P2", 0.1)]
    public void Marked_leads_beside_the_windings_take_nothing_from_the_marks_of_the_windings(string phases, string beside, double ohms)
    {
        var pairs = phases.Split(' ');
        string[] leads = [.. pairs.Append(beside).SelectMany(pair => pair.Split('-'))];
        Assert.True(Identifier.AreMarkings(leads));
        var found = Find(Marked(leads), [.. pairs.Select(pair => (pair, 7.2)), (beside, ohms)]);
        Assert.Equal(IdentificationStatus.Identified, found.Status);
        Assert.Equal("three-phase-6", found.Layouts[0].Id);
        Assert.Equal(3, found.Windings.Count(winding => winding.Role == "phase"));
    }

    [Fact]
    public void Parts_beside_the_windings_alone_are_no_marks_of_a_motor() => Assert.False(Identifier.AreMarkings(["TP1", "TP2"]));

    [Fact]
    public void A_winding_that_is_marked_as_another_is_not_called_certain()
    {
        var found = Find(Marked("T1", "T4", "T5", "T8"), ("T1-T4", 6), ("T5-T8", 1.5));
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
        Assert.Contains(found.Notes, note => note.Id == "windings.marked-as-another");
        Assert.Equal(IdentificationStatus.Identified, Find(Marked("T1", "T4", "T5", "T8"), ("T1-T4", 1.5), ("T5-T8", 6)).Status);
    }

    [Fact]
    public void Three_leads_that_read_nothing_are_a_break_where_they_meet_and_no_wrong_reading()
    {
        var found = Find(new() { Leads = ["a", "b", "c"] });
        Assert.Equal(IdentificationStatus.Faulty, found.Status);
        Assert.Equal("protector-open", found.Faults.Single().Id);
        Assert.Contains(found.Notes, note => note.Id == "windings.prove-the-meter");
    }

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    public void Where_nothing_reads_anything_the_meter_is_doubted_first(int count)
    {
        var found = Find(new() { Leads = [.. Enumerable.Range(1, count).Select(number => $"{number}")] });
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
        Assert.Empty(found.Contradictions);
        Assert.Empty(found.Faults);
    }

    private static IdentificationInput Marked(params string[] leads) => new() { Leads = leads, Markings = leads.ToDictionary(lead => lead, lead => lead) };

    private static Identification Find(IdentificationInput input, params (string Pair, double Ohms)[] windings) => IdentifierTest.Find(input, [.. windings.Select(one => (Ordered(input, one.Pair), one.Ohms))]);

    private static string Ordered(IdentificationInput input, string pair) => string.Join('-', pair.Split('-').OrderBy(lead => input.Leads.ToList().IndexOf(lead)));
}
