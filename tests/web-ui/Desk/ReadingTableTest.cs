using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;

namespace WireCoach.WebUi.Tests.Desk;

/// <summary>A form with all pairs of leads becomes readings, or says which row cannot be read.</summary>
public sealed class ReadingTableTest
{
    private static readonly CaseOpening Opening = new(Role.Technician, Region.NorthAmerica);

    [Fact]
    public void Every_pair_and_every_lead_to_the_frame_has_one_row_of_its_own()
    {
        for (var leads = 2; leads <= 12; leads++)
        {
            var rows = new ReadingTable(Case(leads)).Groups.SelectMany(group => group).ToList();
            Assert.Equal((leads * (leads - 1) / 2) + leads, rows.Count);
            Assert.Equal(rows.Count, rows.Select(row => row.Field).Distinct().Count());
            Assert.Equal(rows.Count, rows.Select(row => string.Join(' ', new[] { row.From, row.To }.Order(StringComparer.Ordinal))).Distinct().Count());
        }
    }

    [Theory]
    [InlineData("1.7", "ohm", 1.7)]
    [InlineData("1,7", "kilohm", 1700.0)]
    [InlineData(" 20 ", "megohm", 20e6)]
    [InlineData("0", null, 0.0)]
    public void A_figure_is_read_in_the_unit_of_the_table(string text, string? unit, double ohms)
    {
        var reading = Assert.IsType<Fact.Reading>(Assert.Single(new ReadingTable(Case(3)).Read(Form(("r0-2", text)), unit).Value!));
        Assert.Equal(("1", "3", ohms, false), (reading.From, reading.To, reading.Ohms, reading.Open));
    }

    [Fact]
    public void A_new_figure_takes_the_place_of_the_old_one_whichever_way_round_it_was_read()
    {
        var file = Case(3, new Fact.Reading { FactId = "f9", From = "3", To = "1", Ohms = 4 });
        var reading = Assert.IsType<Fact.Reading>(Assert.Single(new ReadingTable(file).Read(Form(("r0-2.open", "yes")), "ohm").Value!));
        Assert.Equal(("f9", true, null), (reading.Replaces, reading.Open, reading.Ohms));
    }

    [Theory]
    [InlineData("r0-1", "many")]
    [InlineData("r1-2", "-4")]
    [InlineData("r2-f", "1.2.3")]
    public void What_is_no_figure_is_refused_by_its_row_and_nothing_is_taken(string row, string text)
    {
        var read = new ReadingTable(Case(3)).Read(Form((row, text), ("r0-2", "5")), "ohm");
        Assert.False(read.IsGiven);
        Assert.Equal(row, Assert.Single(read.Problems).Field);
    }

    [Fact]
    public void A_figure_beside_over_range_is_refused() =>
        Assert.Equal("r0-1", Assert.Single(new ReadingTable(Case(2)).Read(Form(("r0-1", "4"), ("r0-1.open", "yes")), "ohm").Problems).Field);

    private static Func<string, string?> Form(params (string Name, string Text)[] given) => name => given.Where(field => field.Name == name).Select(field => field.Text).FirstOrDefault();

    private static CaseFile Case(int leads, params Fact[] more) =>
        CaseFile.From(Opening, [.. Enumerable.Range(1, leads).Select(lead => (Fact)new Fact.Lead { Tag = lead.ToString(System.Globalization.CultureInfo.InvariantCulture) }), .. more]);
}
