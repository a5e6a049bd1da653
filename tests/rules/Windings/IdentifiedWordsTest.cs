using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;
using static WireCoach.Rules.Tests.Windings.IdentifierTest;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>What is said of the leads, the faults and the next reading, and of input that cannot be.</summary>
public sealed class IdentifiedWordsTest
{
    private static readonly IdentificationInput Six = new() { Leads = ["1", "2", "3", "4", "5", "6"], HasCapacitor = true, CapacitorBridged = true };
    private static readonly IdentificationInput Star = new() { Leads = ["1", "2", "3"], HasCapacitor = false, Plate = PlateFields.Empty.With("phases", PlateValue.Of(3)) };
    private static readonly (string, double)[] Sound = [("1-4", 2.0), ("2-5", 2.0), ("3-6", 5.1)];

    public static TheoryData<string, string[], IdentificationInput> Slips() => new()
    {
        { "one lead", ["invalid-fact leads"], new() { Leads = ["1"] } },
        { "a lead twice", ["invalid-fact leads"], new() { Leads = ["a", "A", "b"] } },
        { "unknown leads", ["unknown-lead readings[0].from", "unknown-lead readings[1].to"], Six with { Readings = [Open("9-1"), Open("1-9")] } },
        { "a lead with itself", ["invalid-fact readings[0]"], Six with { Readings = [Open("1-1")] } },
        { "the frame with the earth", ["invalid-fact readings[0]"], Six with { Readings = [Open("frame-earth")] } },
        { "ohms below nothing", ["unreadable-quantity readings[0].ohms"], Six with { Readings = [Ohms("1-4", -0.1)] } },
        { "ohms that are none", ["unreadable-quantity readings[0].ohms"], Six with { Readings = [Ohms("1-4", double.NaN)] } },
        { "ohms of no motor", ["unreadable-quantity readings[0].ohms"], Six with { Readings = [Ohms("1-4", 2e9)] } },
        { "a reading of nothing", ["invalid-fact readings[0]"], Six with { Readings = [new() { From = "1", To = "4" }] } },
        { "a meter that is far off", ["unreadable-quantity meter.percent"], Six with { Meter = new() { Percent = 51 } } },
        { "counts below nothing", ["unreadable-quantity meter.counts"], Six with { Meter = new() { Counts = -1 } } },
        { "test leads of ten ohms and more", ["unreadable-quantity meter.testLeadOhms"], Six with { Meter = new() { TestLeadOhms = 10.1 } } },
        { "figures at their edge", [], Six with { Meter = new() { Percent = 50, Counts = 100, TestLeadOhms = 10 }, Readings = [Ohms("1-4", 0), new() { From = "2", To = "FRAME", Open = true }, new() { From = "3", To = "6", Kick = true }] } },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void Input_that_cannot_be_is_refused_with_its_field(string slip, string[] expected, IdentificationInput input)
    {
        var problems = new Identifier(Trade.Knowledge).Identify(input).Problems;
        var found = problems.Select(problem => $"{problem.Id} {problem.Field}").ToList();
        Assert.True(expected.SequenceEqual(found), $"{slip}: {string.Join(", ", found)}");
        Assert.All(Spoken.Lines(problems), Assert.NotEmpty);
    }

    public static TheoryData<string, IdentificationStatus, string?, IdentificationInput> Cases() => new()
    {
        { "nothing was read", IdentificationStatus.NeedsReading, "windings.first-reading", Six },
        { "two readings", IdentificationStatus.NeedsReading, "windings.splits-most", Six with { Readings = [Open("1-2"), Ohms("1-4", 2)] } },
        { "all was read", IdentificationStatus.Identified, null, Six with { Readings = All(Six, Sound) } },
        { "a short cut", IdentificationStatus.NeedsReading, "windings.first-reading", Six with { Shortcuts = true } },
        { "a handful that answers none", IdentificationStatus.NeedsReading, "windings.splits-most", Six with { Shortcuts = true, Readings = [Open("1-2") with { Together = ["3", "5"] }] } },
        { "an open half", IdentificationStatus.Faulty, null, Six with { Readings = All(Six, [Sound[0], Sound[2]]) } },
        { "shorted turns", IdentificationStatus.Faulty, null, Six with { Meter = new() { Percent = 0.5, Counts = 0 }, Readings = All(Six, [("1-4", 4.0), ("2-5", 2.9), ("3-6", 9.8)]) } },
        { "down to the frame", IdentificationStatus.Faulty, null, Six with { Readings = [.. All(Six, Sound), Ohms("5-frame", 0.8)] } },
        { "open to the frame", IdentificationStatus.Identified, null, Six with { Readings = [.. All(Six, Sound), Open("5-frame")] } },
        { "not read to the frame yet", IdentificationStatus.NeedsReading, "windings.to-frame", Six with { CheckFrame = true, Readings = All(Six, Sound) } },
        { "a lead in two windings", IdentificationStatus.Contradiction, "windings.read-again", Six with { Readings = [.. All(Six, Sound).Select(one => one is { From: "1", To: "2" } ? Ohms("1-2", 7.7) : one)] } },
        { "all open", IdentificationStatus.Faulty, null, Star with { Readings = All(Star, []) } },
        { "an open phase", IdentificationStatus.Faulty, null, Star with { Readings = All(Star, [("1-2", 3)]) } },
        { "a start branch behind its capacitor", IdentificationStatus.CannotTell, "windings.bridge-capacitor", Six with { CapacitorBridged = false, Readings = All(Six, [Sound[0], Sound[1]]) } },
        { "more leads than any motor has", IdentificationStatus.CannotTell, null, new() { Leads = [.. Enumerable.Range(1, 30).Select(at => $"{at}")] } },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_is_found_and_asked_next_can_be_read_out(string known, IdentificationStatus status, string? why, IdentificationInput input)
    {
        var found = Spoken.Whole(new Identifier(Trade.Knowledge, remembered: 0).Identify(input).Value!);
        Assert.True((status, why) == (found.Status, found.Next?.Why.Id), $"{known}: {found.Status} {found.Next?.Why.Id} {string.Join(' ', found.Notes)}");
    }

    /// <summary>900 Ω is of the bundle and of no lead in it.</summary>
    public static TheoryData<string, IdentificationStatus, string?, string?, Fact.Reading[]> Bundles() => new()
    {
        { "each alone is open", IdentificationStatus.Contradiction, "windings.read-again", "windings.frame-path-denied", [Bundle(900), .. Alone("123456")] },
        { "the same in the other order", IdentificationStatus.Contradiction, "windings.read-again", "windings.frame-path-denied", [.. Alone("123456"), Bundle(900)] },
        { "a path again", IdentificationStatus.Contradiction, null, "windings.frame-path-again", [Bundle(900), .. Alone("123456"), Bundle(1200)] },
        { "open the second time", IdentificationStatus.Identified, null, null, [Bundle(900), .. Alone("123456"), Bundle(null)] },
        { "two not read alone", IdentificationStatus.NeedsReading, "windings.frame-which", null, [Bundle(900), .. Alone("1246")] },
        { "nothing read alone", IdentificationStatus.NeedsReading, "windings.frame-which", null, [Bundle(900)] },
        { "the last is the one", IdentificationStatus.Faulty, null, null, [Bundle(900), .. Alone("12345"), Ohms("6-frame", 900)] },
        { "all together open", IdentificationStatus.Identified, null, null, [Bundle(null)] },
        { "open together, then a path", IdentificationStatus.Contradiction, "windings.read-again", "windings.frame-path-denied", [Bundle(null), Bundle(900)] },
    };

    [Theory]
    [MemberData(nameof(Bundles))]
    public void A_path_of_leads_held_together_is_no_leads_until_one_shows_it_alone(string known, IdentificationStatus status, string? asked, string? why, Fact.Reading[] toFrame)
    {
        var found = Spoken.Whole(Give(Six with { Readings = [.. All(Six, Sound), .. toFrame] }));
        Assert.True((status, asked, why) == (found.Status, found.Next?.Why.Id, found.Contradictions.SingleOrDefault()?.Why.Id), $"{known}: {found.Status} {found.Next?.Why.Id} {string.Join(' ', found.Notes)}");
        Assert.Equal(status == IdentificationStatus.Faulty ? ["3", "6"] : [], found.Faults.SelectMany(fault => fault.Leads));
        Assert.Equal(asked == "windings.read-again", found.Next?.Together.Count > 0);
    }

    [Fact]
    public void Where_a_lead_cannot_be_read_alone_a_ground_stays_possible()
    {
        var found = Spoken.Whole(Give(Six with { Readings = [.. All(Six, Sound), Bundle(900), .. Alone("12345")], Unreadable = [("6", Fact.Reading.Frame)] }));
        Assert.Equal((IdentificationStatus.CannotTell, "windings.frame-path-somewhere"), (found.Status, found.Notes.Single().Id));
        Assert.Empty(found.Faults);
    }

    private static Fact.Reading Bundle(double? ohms) => new() { From = "1", To = Fact.Reading.Frame, Together = ["2", "3", "4", "5", "6"], Ohms = ohms, Open = ohms is null };

    private static IEnumerable<Fact.Reading> Alone(string leads) => leads.Select(lead => Open($"{lead}-frame"));

    [Fact]
    public void One_lead_of_a_sound_motor_is_read_to_the_frame() =>
        Assert.Equal(IdentificationStatus.Identified, Give(Six with { CheckFrame = true, Readings = [.. All(Six, Sound), Open("1-frame")] }).Status);

    [Theory]
    [InlineData(false, null, 0.3)] // nobody took the probes off
    [InlineData(true, null, null)]
    [InlineData(false, 0.1, 0.1)] // said, so that the test counts no more
    public void Probes_that_were_read_against_each_other_are_taken_off_unless_they_were_zeroed(bool zeroed, double? said, double? taken)
    {
        var meter = MeterInput.Probed(new() { Zeroed = zeroed, TestLeadOhms = said }, [new() { Test = "probe-zero", Value = 0.5 }, new() { Test = "probe-zero", Value = 0.3 }, new() { Test = "resistance", Value = 9 }])!;
        Assert.Equal((taken, zeroed), (meter.TestLeadOhms, meter.Zeroed));
        Assert.Null(MeterInput.Probed(null, [new() { Test = "resistance", Value = 9 }]));
        Assert.Equal(0.3, MeterInput.Probed(null, [new() { Test = "probe-zero", Value = 0.3 }])!.TestLeadOhms);
    }
}
