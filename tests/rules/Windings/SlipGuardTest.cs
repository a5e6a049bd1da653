using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

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

    /// <summary>Of two stars with a coil open, 3 belongs to none; a false figure between it and 4 makes it look like the start winding of another motor.</summary>
    [Fact]
    public void A_start_winding_that_a_false_reading_of_a_broken_motor_would_make_is_read_again()
    {
        var input = new IdentificationInput
        {
            Leads = ["1", "2", "3", "4", "5", "6"],
            HasCapacitor = false,
            Looks = new(),
            Meter = new() { Percent = 0.5, Counts = 1, TestLeadOhms = 0.1, Zeroed = false },
            Readings =
            [
                IdentifierTest.Open("1-2"), IdentifierTest.Open("1-3"), IdentifierTest.Open("2-3"), IdentifierTest.Ohms("3-4", 2.2),
                IdentifierTest.Open("1-5"), IdentifierTest.Ohms("1-6", 1.4), IdentifierTest.Ohms("2-5", 1.4),
            ],
        };
        var found = IdentifierTest.Give(input);
        Assert.Equal((IdentificationStatus.NeedsReading, "3", "4"), (found.Status, found.Next?.From, found.Next?.To));
        foreach (var readings in new[] { input.Readings, [.. input.Readings, IdentifierTest.Open("3-4")], [.. input.Readings, IdentifierTest.Open("3-4"), IdentifierTest.Open("3-4")] })
        {
            Assert.NotEqual(IdentificationStatus.Identified, IdentifierTest.Give(input with { Readings = readings }).Status);
        }

        var table = IdentifierTest.Give(input with { Looks = null });
        Assert.NotEqual(IdentificationStatus.Identified, table.Status);
    }

    [Fact]
    public void Whoever_stands_at_the_motor_bears_out_what_a_table_of_readings_is_believed_in()
    {
        var table = Four with { Readings = IdentifierTest.All(Four, [("1-2", Run), ("3-4", 6.4)]) };
        Assert.Equal(IdentificationStatus.Identified, IdentifierTest.Give(table).Status);
        var looked = table with
        {
            Plate = PlateFields.Empty.With("phases", PlateValue.Of(1)),
            CapacitorUse = "start",
            Looks = new() { Brushes = false, Speeds = false, BothWays = false, CapacitorOutside = false },
        };
        Assert.Equal("windings.one-slip-would-turn-it", IdentifierTest.Give(looked).Next?.Why.Id);
    }

    /// <summary>Between the three leads of a chain the third pair shows a slip in either of the other two, so that neither is taken again.</summary>
    [Fact]
    public void A_pair_that_would_show_several_slips_is_read_before_any_is_taken_again()
    {
        var touches = new List<int>();
        foreach (var seed in Enumerable.Range(0, 13).Where(seed => seed != 6)) // of that one either end may be the common one
        {
            var chance = new Random(seed);
            var motor = new MotorFactory(chance).Make("psc-tapped");
            var person = new BenchPerson(motor, new(chance, 0.5, 1, 0.1), chance, mistaken: false, looks: true);
            var found = person.Follow(new(Trade.Knowledge), new() { Leads = [], HasCapacitor = true, CapacitorBridged = true, Looks = motor.Looks, Plate = PlateFields.Empty.With("phases", PlateValue.Of(1)) });
            Assert.True(found.Status == IdentificationStatus.Identified && Judge.IsRight(motor, found), $"seed {seed}: {found.Status}");
            touches.Add(person.Touches);
        }

        Assert.InRange(touches.Average(), 4, 7.2);
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
