using WireCoach.Rules.Cases;
using WireCoach.Rules.Tests.Connections;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>The capacitor winding of a tapped fan motor comes from the common lead or from the lowest speed.</summary>
public sealed class TappedFanTest
{
    private static readonly (string From, string To, double Ohms)[] Sections = [("C", "H", 40.2), ("H", "M", 12.1), ("M", "L", 9.8)];

    [Theory]
    [InlineData("C", "CAP", null)]
    [InlineData("L", "CAPLO", "layout.capacitor-from-lowest-speed")]
    public void The_capacitor_winding_is_found_at_either_end_and_the_usual_table_is_given_for_the_usual_one_only(string end, string marking, string? refused)
    {
        var found = Found(end);
        Assert.Equal((IdentificationStatus.Identified, "psc-tapped"), (found.Status, found.Layouts[0].Id));
        Assert.Empty(found.Faults);
        Assert.Equal([.. new[] { end, "K" }.Order(StringComparer.Ordinal)], found.Windings.Single(winding => winding.Role == "start").Leads.Order(StringComparer.Ordinal));

        var ends = new EndsFinder(Trade.Knowledge).Find(
            new()
            {
                Layout = "psc-tapped",
                Windings = [.. found.Windings.Select(winding => new EndsWinding(winding.Role, winding.Leads) { Taps = winding.Taps ?? [], Markings = winding.Markings })],
            }).Value!;
        Assert.Equal("K", ends.Assignment![marking]);
        var plan = Motors.Planner.Plan(Motors.Marked("psc-tapped", "230", 230, 1, 60) with { Leads = ends.Assignment });
        Assert.Equal(refused, plan.Problems.SingleOrDefault()?.Advice.Id);
        Assert.Equal(refused is null, plan.IsGiven);
    }

    private static Identification Found(string end)
    {
        string[] tags = ["M", "K", "C", "L", "H"];
        (string From, string To, double Ohms)[] coils = [.. Sections, (end, "K", 110.3)];
        var readings = from one in Enumerable.Range(0, tags.Length)
                       from other in Enumerable.Range(one + 1, tags.Length - one - 1)
                       select new Fact.Reading { From = tags[one], To = tags[other], Ohms = Math.Round(Along(coils, tags[one], tags[other], string.Empty)!.Value, 1) };
        return new Identifier(Trade.Knowledge).Identify(new() { Leads = tags, Readings = [.. readings], HasCapacitor = true, CapacitorBridged = true }).Value!;
    }

    /// <summary>The coils hang together in one row, so that the way from lead to lead is the only one.</summary>
    private static double? Along((string From, string To, double Ohms)[] coils, string from, string to, string before)
    {
        if (from == to)
        {
            return 0;
        }

        foreach (var (one, other, ohms) in coils)
        {
            var next = one == from ? other : other == from ? one : before;
            if (next != before && Along(coils, next, to, from) is { } rest)
            {
                return ohms + rest;
            }
        }

        return null;
    }
}
