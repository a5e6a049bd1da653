using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>Roles that one mistaken reading would turn are not called certain before that reading was taken again.</summary>
public sealed class SlipGuardTest
{
    private static readonly IdentificationInput Four = new() { Leads = ["1", "2", "3", "4"], HasCapacitor = true, CapacitorBridged = true };

    private const double Run = 1.6;
    private const double Start = 4.2;

    [Fact]
    public void Roles_that_rest_on_one_figure_ask_for_it_again_and_then_stand()
    {
        var input = Four with { Readings = IdentifierTest.All(Four, [("1-2", Run), ("3-4", Start)]) };
        var asked = IdentifierTest.Give(input);
        Assert.Equal((IdentificationStatus.NeedsReading, "windings.one-slip-would-turn-it"), (asked.Status, asked.Next?.Why.Id));
        for (var again = 0; again < 4 && asked.Status == IdentificationStatus.NeedsReading; again++)
        {
            var pair = $"{asked.Next!.From}-{asked.Next.To}";
            input = input with { Readings = [.. input.Readings, pair == "1-2" ? IdentifierTest.Ohms(pair, Run) : pair == "3-4" ? IdentifierTest.Ohms(pair, Start) : IdentifierTest.Open(pair)] };
            asked = IdentifierTest.Give(input);
        }

        Assert.Equal(IdentificationStatus.Identified, asked.Status);
        Assert.Equal(["3", "4"], asked.Windings.Single(winding => winding.Role == "start").Leads);
    }

    [Fact]
    public void A_figure_that_was_false_shows_when_it_is_taken_again()
    {
        var input = Four with { Readings = IdentifierTest.All(Four, [("1-2", Run), ("3-4", Start)]) };
        var asked = IdentifierTest.Give(input).Next!;
        var pair = $"{asked.From}-{asked.To}";
        var found = IdentifierTest.Give(input with { Readings = [.. input.Readings, IdentifierTest.Ohms(pair, pair == "1-2" ? 9.1 : 0.7)] });
        Assert.NotEqual(IdentificationStatus.Identified, found.Status);
    }

    [Fact]
    public void The_order_of_taps_rests_on_figures_and_not_on_what_is_usual()
    {
        // Speed sections need not be alike: lead 3 may lie before lead 1 or behind it, and lead 5 likewise.
        var five = new IdentificationInput { Leads = ["1", "2", "3", "4", "5"], HasCapacitor = true };
        (string, double)[] read = [("1-2", 8.5), ("1-3", 1.8), ("2-4", 18.0), ("2-5", 7.7)];
        var input = five with { Readings = [.. read.Concat(read).Select(one => IdentifierTest.Ohms(one.Item1, one.Item2))] };
        var found = IdentifierTest.Give(input);
        Assert.Equal(IdentificationStatus.NeedsReading, found.Status);
        var along = new Dictionary<string, double>(StringComparer.Ordinal) { ["4"] = -18, ["2"] = 0, ["5"] = 7.7, ["1"] = 8.5, ["3"] = 10.3 };
        for (var more = 0; more < 8 && found.Next is { } next; more++)
        {
            input = input with { Readings = [.. input.Readings, IdentifierTest.Ohms($"{next.From}-{next.To}", Math.Round(Math.Abs(along[next.From] - along[next.To]), 1))] };
            found = IdentifierTest.Give(input);
        }

        Assert.Equal(IdentificationStatus.Identified, found.Status);
        var tapped = found.Windings.Single(winding => winding.Taps is not null);
        Assert.Equal(["2", "5", "1", "3"], [tapped.Leads[0], .. tapped.Taps!, tapped.Leads[^1]]);
    }
}
