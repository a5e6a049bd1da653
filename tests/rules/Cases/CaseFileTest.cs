using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Tests.Cases;

/// <summary>What later facts make of earlier ones.</summary>
public sealed class CaseFileTest
{
    [Theory]
    [InlineData("pump", null, "brine pump", "pump")]
    [InlineData("Pump", null, "brine pump", "pump")]
    [InlineData("Pump", "milk-pump", "brine pump", "milk-pump")]
    [InlineData("conveyor", null, "conveyor", null)]
    [InlineData("ump", null, "ump", null)]
    public void A_machine_that_is_called_by_half_its_name_is_the_same(string later, string? known, string machine, string? id)
    {
        var told = Of(new Fact.Application { Text = "brine pump", ApplicationId = known }, new Fact.Application { Text = later, ApplicationId = known is null ? id : "pump" }).Application!;
        Assert.Equal((machine, id), (told.Text, told.ApplicationId));
    }

    [Fact]
    public void What_was_said_of_the_supply_stays_until_it_is_said_otherwise()
    {
        var first = new Fact.Supply { Volts = 230, Phases = 3, Hertz = 50, System = "delta" };
        Assert.Equal(first, Of(first, new Fact.Supply()).Supply);
        var second = new Fact.Supply { Volts = 400, Phases = 1, Hertz = 60, System = "star" };
        Assert.Equal(second, Of(first, second).Supply);
    }

    [Fact]
    public void A_lead_that_is_named_again_keeps_its_place_and_what_was_seen_of_it()
    {
        var file = Of(new Fact.Lead { Tag = "a", Colour = "red", Marking = "T1" }, new Fact.Lead { Tag = "b" }, new Fact.Lead { Tag = "a" }, new Fact.Lead { Tag = "b", Colour = "blue", Marking = "T4" });
        Assert.Equal([("a", "red", "T1"), ("b", "blue", "T4")], file.Leads.Select(lead => (lead.Tag, lead.Colour, lead.Marking)));
        var again = file.With(new Fact.Lead { Tag = "a", Colour = "black", Marking = "T5" }).Leads[0];
        Assert.Equal(("black", "T5"), (again.Colour, again.Marking));
        Assert.Equal(("a", null), (file.Tag("A"), file.Tag("c")));
    }

    [Fact]
    public void A_reading_of_all_leads_is_of_those_that_have_a_name_since()
    {
        var all = new Fact.Reading { From = Fact.Reading.All, To = Fact.Reading.Frame, Open = true };
        var pair = new Fact.Reading { From = "2", To = "3", Ohms = 4 };
        Assert.Equal([all, pair], Of(all, pair).Readings);
        var readings = Of(all, pair, new Fact.Lead { Tag = "1" }, new Fact.Lead { Tag = "2" }, new Fact.Lead { Tag = "3" }).Readings;
        Assert.Equal(("1", "2 3", Fact.Reading.Frame, true), (readings[0].From, string.Join(' ', readings[0].Together), readings[0].To, readings[0].Open));
        Assert.Equal(pair, readings[1]);
    }

    [Fact]
    public void Leads_are_spoken_of_where_they_are_named_joined_or_read()
    {
        var file = Of(
            new Fact.Lead { Tag = "a" }, new Fact.Joint { Leads = ["A", "b"], Conductor = "L1" }, new Fact.Reading { From = "c", To = Fact.Reading.Frame, Open = true },
            new Fact.Reading { From = Fact.Reading.Earth, To = "d", Open = true }, new Fact.Reading { From = Fact.Reading.All, To = "e", Open = true, Together = ["f"] });
        Assert.Equal(["a", "b", "c", "d", "e", "f"], file.SpokenLeads);
    }

    [Fact]
    public void A_fact_that_is_replaced_does_not_count()
    {
        var file = Of(
            new Fact.Symptom { Id = "hums-no-start" }, new Fact.Symptom { FactId = "f1", Id = "runs-hot" }, new Fact.Symptom { FactId = "f2", Id = "slow" }, new Fact.Symptom { FactId = "f3", Id = "noisy", Replaces = "f1" });
        Assert.Equal(["hums-no-start", "noisy", "slow"], file.Symptoms.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_was_confirmed_dead_has_to_be_confirmed_again_after_a_run()
    {
        var safe = Of(new Fact.Confirm { Id = "isolated" });
        Assert.Equal((true, true), (safe.Confirmed("isolated"), safe.ConfirmedSincePower("isolated")));
        var ran = safe.With(new Fact.Running { Amps = 4 });
        Assert.Equal((true, false), (ran.Confirmed("isolated"), ran.ConfirmedSincePower("isolated")));
        Assert.True(ran.With(new Fact.Confirm { Id = "isolated" }).ConfirmedSincePower("isolated"));
        Assert.False(ran.With(new Fact.Confirm { Id = "isolated", Confirmed = false }).ConfirmedSincePower("isolated"));
        Assert.False(safe.ConfirmedSincePower("guarded"));
        Assert.False(safe.Confirmed("guarded"));
    }

    [Fact]
    public void The_volts_of_a_tester_stay_known_when_another_instrument_is_named() =>
        Assert.Equal(500, Of(new Fact.Instrument { Id = "insulation-tester", Volts = 500 }, new Fact.Instrument { Id = "multimeter" }).TestVolts);

    [Fact]
    public void What_could_not_be_told_counts_until_it_is_told()
    {
        var file = Of(new Fact.Unknown { Question = "volts" }, new Fact.Unknown { Question = "turns-easily" }, new Fact.Unknown { Question = "capacitor" });
        Assert.Equal(["turns-easily"], file.With(new Fact.Plate { Field = "volts", Value = PlateValue.Of(230) }).With(new Fact.Choice { Question = "capacitor", Option = "none" }).Unknowns);
    }

    [Theory]
    [InlineData("frame", "earth", 0.2, false, 0.2)]
    [InlineData("earth", "frame", 0.2, false, 0.2)]
    [InlineData("frame", "earth", null, true, 0.0)]
    [InlineData("frame", "earth", null, false, double.PositiveInfinity)]
    [InlineData("frame", "a", 0.2, false, null)]
    public void Ohms_of_the_earth_are_read_either_way(string from, string to, double? ohms, bool joined, double? read) =>
        Assert.Equal(read, CaseFile.EarthOhms(new Fact.Reading { From = from, To = to, Ohms = ohms, Short = joined, Open = ohms is null && !joined }));

    [Fact]
    public void Ohms_of_the_earth_are_told_by_its_test()
    {
        Assert.Equal(0.3, CaseFile.EarthOhms(new Fact.BenchTest { Test = Fact.BenchTest.EarthContinuity, Value = 0.3, Unit = "ohm" }));
        Assert.Equal(double.PositiveInfinity, CaseFile.EarthOhms(new Fact.BenchTest { Test = Fact.BenchTest.EarthContinuity, Outcome = Fact.BenchTest.NoPath }));
        Assert.Null(CaseFile.EarthOhms(new Fact.BenchTest { Test = "probe-zero", Value = 0.3, Unit = "ohm" }));
    }

    private static CaseFile Of(params IEnumerable<Fact> facts) => CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts);
}
