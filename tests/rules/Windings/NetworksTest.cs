using System.Text.Json;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>Readings of published winding networks, computed elsewhere with exact fractions, and what they show.</summary>
public sealed class NetworksTest
{
    private static readonly MeterInput GoodMeter = new() { Percent = 0.5, Counts = 0 };

    [Theory]
    [InlineData("N01", "identified", "phase*T1-T2-T3")]
    [InlineData("N03", "identified", "phase T1-T0, phase T2-T0, phase T3-T0")]
    [InlineData("N13", "identified", "phase T1-T4, phase T2-T5, phase T3-T6")]
    [InlineData("N19", "identified", "phase T1-T4, phase T2-T5, phase T3-T6, phase*T7-T8-T9")]
    [InlineData("N49", "identified", "run C-R, start C-S")]
    [InlineData("N55", "identified", "phase*T1-T2-T3, phase*T11-T12-T13")]
    public void Sound_networks_are_told_apart(string id, string status, string windings)
    {
        var found = Found(id);
        Assert.Equal(status, found.Status.ToString().ToLowerInvariant());
        Assert.Equal(windings, string.Join(", ", found.Windings.Select(winding => $"{winding.Role}{(winding.Junction ? "*" : " ")}{string.Join('-', winding.Leads)}")));
    }

    [Theory]
    [InlineData("N05", "open-phase-winding", "T2-T3")]
    [InlineData("N07", "shorted-phase-turns", "T1-T2")]
    [InlineData("N11", "grounded-winding", "T1-T3")]
    [InlineData("N21", "open-phase-winding", "T2-T5")]
    [InlineData("N23", "shorted-phase-turns", "T7")]
    [InlineData("N31", "open-phase-winding", "T1-T9")]
    [InlineData("N33", "grounded-winding", "T3-T8")]
    public void Faults_are_found_with_the_leads_of_the_winding(string id, string cause, string leads)
    {
        var found = Found(id);
        Assert.Equal(IdentificationStatus.Faulty, found.Status);
        Assert.Equal(cause, found.Faults[0].Id);
        Assert.Equal(leads, string.Join('-', found.Faults[0].Leads));
    }

    [Fact]
    public void Two_equal_windings_with_a_common_are_a_capacitor_motor_or_an_open_delta_and_only_the_plate_tells()
    {
        var unknown = Found("N05", marked: false);
        Assert.Equal(IdentificationStatus.CannotTell, unknown.Status);
        Assert.Equal(["psc-3", "psc-reversible-3", "three-phase-3"], unknown.Layouts.Take(3).Select(layout => layout.Id).Order(StringComparer.Ordinal));
        var plate = PlateFields.Empty.With("phases", PlateValue.Of(3));
        Assert.Equal("open-phase-winding", Found("N05", marked: false, plate).Faults.Single().Id);
    }

    [Fact]
    public void Two_run_halves_and_a_start_pair_that_reads_nothing_are_not_called_broken_before_the_capacitor_is_bridged()
    {
        var found = Found("N45");
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
        Assert.Empty(found.Faults);
        Assert.Equal(("T5", "T8"), (found.Next!.From, found.Next.To));
    }

    [Theory]
    [InlineData("N39")]
    [InlineData("N47")]
    public void Joints_that_are_still_made_are_no_broken_phase_of_another_motor(string id)
    {
        var found = Found(id, meter: new());
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
        Assert.Empty(found.Faults);
        Assert.Contains(found.Notes, note => note.Id == "windings.marks-of-another-motor");
    }

    /// <summary>Every public network with other ohms, hidden names and readings left out: what is named stays what it was, or is left open.</summary>
    [Fact]
    public void No_network_is_told_otherwise_by_other_ohms_other_names_or_fewer_readings()
    {
        foreach (var network in Vectors.Of("ohmmeter.json").GetProperty("networks").EnumerateArray())
        {
            var id = network.GetProperty("id").GetString()!;
            var readings = network.GetProperty("readings").GetArrayLength();
            foreach (var marked in new[] { true, false })
            {
                var whole = Found(id, marked);
                AssertSame(id, whole, Found(id, marked, scale: 1.9));
                AssertSame(id, whole, Found(id, marked, scale: 0.6));
                for (var left = 0; left < readings; left += 3)
                {
                    AssertSame(id, whole, Found(id, marked, without: left));
                }
            }
        }
    }

    private static void AssertSame(string id, Identification whole, Identification other) => Assert.True(
        (whole.Status, other.Status) is not (IdentificationStatus.Identified or IdentificationStatus.Faulty, IdentificationStatus.Identified or IdentificationStatus.Faulty) || Names(whole) == Names(other),
        $"{id}: {Names(other)} against {Names(whole)}");

    private static string Names(Identification found) =>
        $"{found.Status} {string.Join(' ', found.Windings.Select(winding => $"{winding.Role}{(winding.Junction ? "*" : ":")}{string.Join('-', winding.Leads)}"))} {string.Join(' ', found.Faults.Select(fault => $"{fault.Id}:{string.Join('-', fault.Leads)}"))}";

    [Fact]
    public void A_protector_that_comes_out_beside_its_winding_is_named() =>
        Assert.Contains(Found("N53").Windings, winding => winding.Role == "protector" && winding.Leads.SequenceEqual(["P1", "P2"]));

    private static Identification Found(string id, bool marked = true, PlateFields? plate = null, double scale = 1, int without = -1, MeterInput? meter = null)
    {
        var network = Vectors.Of("ohmmeter.json").GetProperty("networks").EnumerateArray().First(one => one.GetProperty("id").GetString() == id);
        var leads = network.GetProperty("leads").EnumerateArray().Select(lead => lead.GetString()!).Where(lead => lead != "FRAME").ToList();
        return IdentifierTest.Give(new()
        {
            Leads = [.. leads.Select(Tag)],
            Markings = marked ? leads.ToDictionary(lead => lead, lead => lead) : new Dictionary<string, string>(),
            Plate = plate ?? PlateFields.Empty,
            Meter = meter ?? GoodMeter,
            Readings = [.. network.GetProperty("readings").EnumerateArray().Where((_, at) => at != without).Select(Reading)],
        });

        string Tag(string lead) => lead == "FRAME" || marked ? lead : $"lead {leads.IndexOf(lead) + 1}";

        Fact.Reading Reading(JsonElement reading)
        {
            double? ohms = reading.GetProperty("ohms").ValueKind == JsonValueKind.Null ? null : scale * reading.GetProperty("ohms").GetDouble();
            return new() { From = Tag(reading.GetProperty("a").GetString()!), To = Tag(reading.GetProperty("b").GetString()!), Ohms = ohms, Open = ohms is null };
        }
    }
}
