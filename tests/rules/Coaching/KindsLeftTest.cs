using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>The kinds of motor that are left where nothing more can be read, against the leads that there are.</summary>
public sealed class KindsLeftTest
{
    private static readonly Coach Coach = new(Trade.Knowledge);

    [Theory]
    [InlineData(0, 90, 190, true)] // a motor of two leads with a sensor beside it
    [InlineData(1, 230, 1.9, false)] // all that is left has four leads
    public void A_kind_with_fewer_leads_is_named_with_what_the_others_would_be(int phases, double volts, double other, bool fewer)
    {
        var file = PracticeAnswers.Add(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), []),
        [
            new Fact.Confirm { Id = "isolated" }, new Fact.Goal { Id = "connect" },
            new Fact.Plate { Field = "volts", Value = PlateValue.Of(volts) }, new Fact.Plate { Field = "phases", Value = PlateValue.Of(phases) }, new Fact.Capacitor { Present = false },
            .. "1234".Select(tag => new Fact.Lead { Tag = $"{tag}" }),
            new Fact.Reading { From = "1", To = "2", Ohms = 1.7 }, new Fact.Reading { From = "3", To = "4", Ohms = other }, new Fact.Reading { From = "1", To = "3", Open = true },
        ]);
        for (var turn = 0; turn < 40 && Coach.Assess(file).Next is { } next; turn++)
        {
            file = PracticeAnswers.Add(file, [new Fact.Unknown { Question = next.Id }]);
        }

        var left = Coach.Assess(file);
        Assert.Equal("referred", left.Status);
        Assert.Contains(left.Say, one => one.Id == "safety.card-do-not");
        var said = Spoken.Whole(left).Say;
        var which = Assert.Single(said, one => one.Id == "windings.shop-tells-which");
        Assert.Equal(fewer, Trade.Knowledge.Sentences.Render(which).Contains("two leads", StringComparison.Ordinal));
        Assert.Equal(fewer, said.Any(one => one.Id == "windings.kind-with-fewer-leads"));
    }
}
