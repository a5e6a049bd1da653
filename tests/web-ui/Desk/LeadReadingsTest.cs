using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;
using WireCoach.WebUi.Tests.Diagrams;

namespace WireCoach.WebUi.Tests.Desk;

/// <summary>What stands beside a lead in the table of readings.</summary>
public sealed class LeadReadingsTest
{
    private static readonly CaseFile File = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica),
    [
        Read("1", "4", 1.7), Read("4", "1", 1.7), Read("1", "2", null), Read("2", "1", null), Read("1", "3", 3.6), Read("1", "3", 3.7),
        Read("1", Fact.Reading.Frame, null) with { Together = ["2", "3", "4"] },
    ]);

    [Fact]
    public void A_reading_that_was_borne_out_stands_there_once_and_two_that_differ_both() =>
        Assert.Equal("4 1.7 Ω, 3 3.6 Ω, 3 3.7 Ω", LeadReadings.Joined(File, "1", Plans.Pages));

    [Fact]
    public void A_path_of_leads_held_together_is_of_none_of_them_alone() =>
        Assert.Equal("frame 900 Ω (1 + 2)", LeadReadings.Joined(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), [Read("1", Fact.Reading.Frame, 900) with { Together = ["2"] }]), "2", Plans.Pages));

    [Theory]
    [InlineData("1", "2, frame")]
    [InlineData("4", "frame")]
    public void What_is_open_is_named_once(string lead, string open) => Assert.Equal(open, LeadReadings.Open(File, lead));

    private static Fact.Reading Read(string from, string to, double? ohms) => new() { From = from, To = to, Ohms = ohms, Open = ohms is null };
}
