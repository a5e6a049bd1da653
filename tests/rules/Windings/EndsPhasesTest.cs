using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Rules.Tests.Windings;

public sealed class EndsPhasesTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly EndsFinder Finder = new(Knowledge);
    private static readonly string[] Bench = ["multimeter", "low-voltage-ac"];

    [Fact]
    public void The_same_reading_means_the_opposite_on_two_phases()
    {
        // Like ends tied read 1.2 to 1.33 of the applied volts on two phases; on one axis that reading would be inconclusive or unlike.
        EndsInput Phases(double volts) => new()
        {
            Layout = "three-phase-6",
            Windings = [new("phase", ["1", "2"]), new("phase", ["3", "4"]), new("phase", ["5", "6"])],
            Instruments = Bench,
            Results = [new() { Test = "series-voltage", Drive = ["1", "2"], Tie = [["2", "3"]], Read = ["1", "4"], AppliedVolts = 12, Value = volts }],
        };
        Assert.Contains(Find(Phases(15.2)).Alike, pair => pair.Order().SequenceEqual(["1", "4"]));
        Assert.Contains(Find(Phases(8.6)).Alike, pair => pair.Order().SequenceEqual(["1", "3"]));
        Assert.DoesNotContain(Find(Phases(12.6)).Alike, pair => pair.Contains("3"));
    }

    [Theory]
    [InlineData("three-phase-6", 1.2, 1.33, 0.67, 0.8)]
    public void The_readings_to_expect_are_those_of_the_bench(string layout, double likeLow, double likeHigh, double unlikeLow, double unlikeHigh)
    {
        var next = Find(new() { Layout = layout, Windings = [new("phase", ["1", "2"]), new("phase", ["3", "4"]), new("phase", ["5", "6"])], Instruments = Bench }).Next!;
        Assert.Equal("series-voltage", next.Test);
        Assert.Equal([likeLow, likeHigh], next.Expect[0].When.Quotes.Select(quote => Math.Round(quote.Value!.Value / 12, 2)));
        Assert.Equal("ends.means-tied-like", next.Expect[0].Means.Id);
        Assert.Equal([unlikeLow, unlikeHigh], next.Expect[1].When.Quotes.Select(quote => Math.Round(quote.Value!.Value / 12, 2)));
        Assert.Equal("ends.means-tied-unlike", next.Expect[1].Means.Id);
    }

    [Theory]
    [InlineData("three-phase-6")]
    [InlineData("three-phase-9-star")]
    [InlineData("three-phase-9-star+neutral-out")]
    [InlineData("three-phase-9-delta")]
    [InlineData("three-phase-12")]
    [InlineData("part-winding-6")]
    [InlineData("capacitor-start-dual-8")]
    [InlineData("dual-voltage-4")]
    public void Unmarked_leads_are_numbered_so_that_the_coils_lie_as_the_layout_says(string layout)
    {
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[1.9, 5.2], Gen.Double[0.3, 1.2]).Sample((seed, rotor, ohms) =>
        {
            var k = CoupledCoils.Coupling(rotor);
            var (found, hidden, tests) = Numbered(layout, seed, rotor, ohms, Bench);
            Assert.True(k is < 0.40 or > 0.66 || found.Status == EndsStatus.Settled, $"{layout} k {k:0.00}: {found.Status}");
            Assert.True(tests <= 14, $"{layout} took {tests} tests");
            if (found.Status == EndsStatus.Settled)
            {
                AssertLies(layout, found.Assignment!, hidden);
            }
        }, iter: 12);
    }

    [Theory]
    [InlineData("three-phase-6")]
    [InlineData("three-phase-9-star")]
    public void A_cell_settles_phases_as_well(string layout)
    {
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[1.9, 5.2]).Sample((seed, rotor) =>
        {
            var (found, hidden, _) = Numbered(layout, seed, rotor, 0.8, ["multimeter", "battery"]);
            Assert.NotEqual(EndsStatus.Contradiction, found.Status);
            if (found.Status == EndsStatus.Settled)
            {
                AssertLies(layout, found.Assignment!, hidden);
            }
        }, iter: 10);
    }

    [Theory]
    [InlineData("three-phase-9-star")]
    [InlineData("three-phase-9-delta")]
    [InlineData("three-phase-12")]
    [InlineData("part-winding-6")]
    [InlineData("capacitor-start-dual-8")]
    public void Coils_on_their_own_poles_are_never_numbered_wrong(string layout)
    {
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[1.0, 6], Gen.Double[0, 0.05]).Sample((seed, rotor, stray) =>
        {
            var (found, hidden, _) = Numbered(layout, seed, rotor, 0.8, Bench, ownPoles: true, stray);
            if (found.Status == EndsStatus.Settled)
            {
                AssertLies(layout, found.Assignment!, hidden);
            }
        }, iter: 10);
    }

    [Fact]
    public void Without_its_corners_a_nine_lead_delta_asks_for_ohms_first()
    {
        var refused = Finder.Find(new()
        {
            Layout = "three-phase-9-delta",
            Windings = [new("phase", ["1", "2", "3"]), new("phase", ["4", "5", "6"]), new("phase", ["7", "8", "9"])],
        });
        var problem = refused.Problems.Single();
        Assert.Equal("not-ready", problem.Id);
        Assert.Contains("resistance 1 to 2", problem.Missing);
    }

    [Fact]
    public void A_nine_lead_delta_given_coil_by_coil_is_tested_like_one_given_by_its_groups()
    {
        var found = Find(new()
        {
            Layout = "three-phase-9-delta",
            Windings = [new("phase", ["1", "3"]), new("phase", ["2", "3"]), new("phase", ["4", "8"]), new("phase", ["5", "7"]), new("phase", ["5", "9"]), new("phase", ["6", "8"])],
            Instruments = Bench,
        });
        Assert.Equal(EndsStatus.NeedsTest, found.Status);
        Assert.Null(found.Assignment);
        Assert.Equal("low-voltage-test", found.Next!.Task);
    }

    [Fact]
    public void Compound_fields_are_told_by_a_cell_only_and_never_by_low_ac()
    {
        var input = new EndsInput
        {
            Layout = "dc-compound",
            Windings = [new("armature", ["1", "2"]), new("series-field", ["3", "4"]), new("shunt-field", ["5", "6"])],
            Instruments = ["multimeter", "low-voltage-ac", "battery"],
        };
        var next = Find(input).Next!;
        Assert.Equal("battery-flick", next.Test);
        Assert.Equal(["5", "6"], next.Setup.Drive);
        Assert.Equal(["3", "4"], next.Setup.Read);
        var found = Find(input with { Results = [new() { Test = next.Test, Drive = next.Setup.Drive, Read = next.Setup.Read, Outcome = "down-on-make" }] });
        Assert.Equal("4", found.Assignment!["S1"]);
        Assert.Equal("5", found.Assignment["F1"]);
        Assert.Null(Find(input with { Instruments = ["multimeter", "low-voltage-ac"] }).Next);
    }

    [Theory]
    [InlineData("dc-shunt", new[] { "armature", "shunt-field" })]
    [InlineData("series-commutator", new[] { "armature", "series-field" })]
    [InlineData("dc-permanent-magnet", new[] { "armature" })]
    [InlineData("capacitor-start-4", new[] { "run", "start" })]
    [InlineData("psc-4", new[] { "run", "start" })]
    public void Where_ends_only_set_the_direction_they_are_marked_at_once_and_left_to_a_trial(string layout, string[] roles)
    {
        var found = Find(new() { Layout = layout, Windings = [.. roles.Select((role, at) => new EndsWinding(role, [$"{(2 * at) + 1}", $"{(2 * at) + 2}"]))] });
        Assert.Equal(EndsStatus.Settled, found.Status);
        Assert.True(found.DirectionUnproved);
        Assert.Equal(Knowledge.Layouts[layout].Leads.Count, found.Assignment!.Count);
    }

    [Fact]
    public void A_two_speed_ring_is_left_to_a_motor_shop()
    {
        var found = Find(new() { Layout = "two-speed-6", Windings = [new("phase", ["1", "2", "3", "4", "5", "6"]) { Junction = true }], Instruments = Bench });
        Assert.Equal(EndsStatus.CannotTell, found.Status);
        Assert.Equal("ends.ring-by-trial", found.Notes.Single().Id);
    }

    private static (EndsFinding Found, IReadOnlyList<(string From, string To, int Degrees)> Hidden, int Tests) Numbered(
        string layout, int seed, double rotor, double ohms, string[] instruments, bool ownPoles = false, double stray = 0)
    {
        var form = FormOf(layout);
        var random = new Random(seed);
        var tags = Enumerable.Range(1, form.Leads.Count).Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        random.Shuffle(tags);
        var tagOf = form.Leads.Zip(tags).ToDictionary(pair => pair.First.Marking, pair => pair.Second);
        string Node(string node) => tagOf.GetValueOrDefault(node, node);
        var hidden = form.Coils.Where(coil => coil.Role != "start" || layout == "capacitor-start-dual-8")
            .Select(coil => (Node(coil.From), Node(EndOf(form, coil)), (int)coil.Axis)).ToList();
        int[] arcs = [.. form.Coils.Where(coil => coil.Role != "start" || layout == "capacitor-start-dual-8").Select(coil => coil.Id[^1] - '0')];
        var coils = new CoupledCoils(hidden, rotor, ohms, ownPoles, stray, arcs);
        var input = new EndsInput { Layout = form.Id, Windings = Windings(form, hidden, random), Instruments = instruments };
        var count = 0;
        var found = EndsFinderTest.Drive(input, coils, () => count++);
        return (found, hidden, count);
    }

    private static Layout FormOf(string layout) =>
        layout.Split('+') is [var id, var form] ? Knowledge.Layouts[id].Forms().Single(one => one.Form == form) : Knowledge.Layouts[layout];

    /// <summary>Groups of leads as identification gives them, in any order.</summary>
    private static List<EndsWinding> Windings(Layout form, List<(string From, string To, int Degrees)> hidden, Random random)
    {
        var leads = form.Leads.Count;
        var groups = new List<(string Role, HashSet<string> Nodes)>();
        foreach (var (coil, at) in hidden.Select((coil, at) => (coil, at)))
        {
            var role = form.Coils.Where(one => one.Role != "start" || leads == 8).ElementAt(at).Role;
            var touching = groups.Where(group => group.Nodes.Contains(coil.From) || group.Nodes.Contains(coil.To)).ToList();
            var merged = (role, touching.SelectMany(group => group.Nodes).Concat([coil.From, coil.To]).ToHashSet());
            groups.RemoveAll(touching.Contains);
            groups.Add(merged);
        }

        if (leads == 10)
        {
            return [.. hidden.Select(coil => new EndsWinding("phase", [coil.From, coil.To])).OrderBy(_ => random.Next())]; // its point comes out: each coil is read by itself
        }

        var windings = groups.ConvertAll(group =>
        {
            var tags = group.Nodes.Where(node => char.IsDigit(node[0])).ToArray();
            random.Shuffle(tags);
            var corner = tags.FirstOrDefault(tag => hidden.Count(coil => coil.From == tag || coil.To == tag) > 1);
            return new EndsWinding(group.Role, tags) { Junction = tags.Length > 2, Taps = tags.Length > 2 && corner is not null ? [corner] : [] };
        });
        return [.. windings.OrderBy(_ => random.Next())];
    }

    private static string EndOf(Layout form, LayoutCoil coil)
    {
        var node = coil.To;
        while (form.Leads.All(lead => lead.Marking != node) && form.Parts.FirstOrDefault(part => part.From == node) is { } part)
        {
            node = part.To;
        }

        return node;
    }

    /// <summary>Every coil of the layout is a coil of the motor, and all directions agree up to one turn or one mirror.</summary>
    private static void AssertLies(string layout, IReadOnlyDictionary<string, string> assignment, IReadOnlyList<(string From, string To, int Degrees)> hidden)
    {
        var form = FormOf(layout);
        var differences = new List<(int Axis, int Degrees, string Role)>();
        foreach (var coil in form.Coils.Where(coil => coil.Role != "start" || layout == "capacitor-start-dual-8"))
        {
            var (from, to) = (assignment.GetValueOrDefault(coil.From, "\0"), assignment.GetValueOrDefault(EndOf(form, coil), "\0"));
            var along = hidden.Where(one => (one.From == from || from == "\0") && (one.To == to || (to == "\0" && !char.IsDigit(one.To[0])))).ToList();
            var against = hidden.Where(one => one.To == from && one.From == to).ToList();
            Assert.Single(along.Concat(against));
            differences.Add(((int)coil.Axis, along.Count == 1 ? along[0].Degrees : against[0].Degrees + 180, coil.Role));
        }

        foreach (var role in differences.GroupBy(difference => difference.Role))
        {
            bool Agrees(int mirror) => role.Select(difference => (((difference.Degrees - (mirror * difference.Axis)) % 360) + 360) % 360).Distinct().Count() == 1;
            Assert.True(Agrees(1) || Agrees(-1), string.Join(", ", role.Select(difference => $"{difference.Axis}:{difference.Degrees}")));
        }
    }

    private static EndsFinding Find(EndsInput input) => Finder.Find(input).Value!;
}
