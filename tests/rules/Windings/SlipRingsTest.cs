using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>Two groups of three leads are two speeds, or the stator and the rotor of a motor with slip rings: ohms never tell which.</summary>
public sealed class SlipRingsTest
{
    private static readonly IdentificationInput Six = new()
    {
        Leads = ["1", "2", "3", "4", "5", "6"],
        HasCapacitor = false,
        Plate = PlateFields.Empty.With("phases", PlateValue.Of(3)),
        Looks = new(),
    };

    private static readonly IdentificationInput Triples = Six with
    {
        Readings = IdentifierTest.All(Six, [("1-2", 3.0), ("1-3", 3.0), ("2-3", 3.0), ("4-5", 0.9), ("4-6", 0.9), ("5-6", 0.9)]),
    };

    [Fact]
    public void Nothing_seen_leaves_both_open()
    {
        var found = IdentifierTest.Give(Triples);
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
        Assert.Equal(["two-speed-two-winding-6", "wound-rotor-6"], found.Undecided.Order(StringComparer.Ordinal));
        Assert.Equal(IdentificationStatus.CannotTell, IdentifierTest.Give(Triples with { Looks = null }).Status);
    }

    [Fact]
    public void Without_brushes_and_with_two_speeds_it_is_a_motor_of_two_speeds()
    {
        var found = IdentifierTest.Give(Triples with { Looks = new() { Brushes = false, Speeds = true } });
        Assert.Equal((IdentificationStatus.Identified, "two-speed-two-winding-6"), (found.Status, found.Layouts[0].Id));
        Assert.All(found.Windings, winding => Assert.Equal("phase", winding.Role));
    }

    [Theory]
    [InlineData("1", "1 2 3")]
    [InlineData("5", "4 5 6")]
    public void With_brushes_the_leads_that_come_from_them_are_the_rotor_whichever_reads_higher(string atRings, string rotor)
    {
        var seen = Triples with { Looks = new() { Brushes = true, Speeds = false } };
        var open = IdentifierTest.Give(seen);
        Assert.Equal((IdentificationStatus.CannotTell, "wound-rotor-6"), (open.Status, open.Undecided[0]));
        var found = IdentifierTest.Give(seen with { RingLeads = [atRings] });
        Assert.Equal((IdentificationStatus.Identified, "wound-rotor-6"), (found.Status, found.Layouts[0].Id));
        Assert.Equal(rotor, string.Join(' ', found.Windings.Single(winding => winding.Role == "rotor").Leads));
        Assert.Equal(["layout.rotor-never-on-the-mains"], found.Notes.Select(note => note.Id));
    }

    [Theory]
    [InlineData("K", "L", "M")]
    [InlineData("M1", "M2", "M3")]
    public void Marked_leads_say_which_is_the_rotor(string first, string second, string third)
    {
        var stator = first == "K" ? new[] { "U1", "V1", "W1" } : ["T1", "T2", "T3"];
        string[] marks = [first, second, third, .. stator];
        var found = IdentifierTest.Give(Triples with { Markings = Six.Leads.Zip(marks).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal) });
        Assert.Equal(IdentificationStatus.Identified, found.Status);
        Assert.Equal("1 2 3", string.Join(' ', found.Windings.Single(winding => winding.Role == "rotor").Leads));
    }

    /// <summary>60 Hz and 50 Hz stand on one plate too, and make no second winding.</summary>
    [Theory]
    [InlineData(1725, 1140, true)]
    [InlineData(1440, 720, true)]
    [InlineData(1730, 1440, false)]
    public void Two_speeds_on_the_plate_say_as_much_as_a_look(double fast, double slow, bool settled)
    {
        var found = IdentifierTest.Give(Triples with { Plate = Triples.Plate.With("rpm", PlateValue.Of([fast, slow])) });
        Assert.Equal(settled, found.Status == IdentificationStatus.Identified);
        Assert.Equal("two-speed-two-winding-6", settled ? found.Layouts[0].Id : found.Undecided.Order(StringComparer.Ordinal).First());
    }

    [Fact]
    public void Two_equal_groups_may_be_a_stator_and_its_rotor_until_somebody_has_looked_for_brushes()
    {
        var equal = Six with { Readings = IdentifierTest.All(Six, [("1-2", 3.0), ("1-3", 3.0), ("2-3", 3.0), ("4-5", 3.0), ("4-6", 3.0), ("5-6", 3.0)]) };
        Assert.Contains("wound-rotor-6", IdentifierTest.Give(equal).Undecided);
        var found = IdentifierTest.Give(equal with { Looks = new() { Brushes = false, Speeds = false } });
        Assert.Equal((IdentificationStatus.Identified, "part-winding-6"), (found.Status, found.Layouts[0].Id));
    }

    [Fact]
    public void A_motor_of_two_speeds_takes_no_more_touches_for_it()
    {
        var identifier = new Identifier(Trade.Knowledge);
        var plate = PlateFields.Empty.With("phases", PlateValue.Of(3)).With("rpm", PlateValue.Of([1725, 1140]));
        var touches = Enumerable.Range(0, 20).Select(seed =>
        {
            var chance = new Random(seed);
            var motor = new MotorFactory(chance).Make("two-speed-two-winding-6", ohms: 3, ratio: 2);
            var person = new BenchPerson(motor, new(chance, 0.5, 1, 0.1), chance, mistaken: false);
            Assert.Equal(IdentificationStatus.Identified, person.Follow(identifier, new() { Leads = [], Plate = plate, HasCapacitor = false, Looks = new() }).Status);
            return person.Touches;
        });
        Assert.InRange(touches.Average(), 4, 9);
    }

    [Fact]
    public void It_has_brushes_and_neither_an_armature_nor_magnets()
    {
        var layout = Trade.Knowledge.Layouts["wound-rotor-6"];
        Assert.Equal((true, false, true, null), (Looks.HasBrushes(layout), Looks.HasArmature(layout), Looks.HasSlipRings(layout), Looks.HasMagnets(layout)));
    }

    [Fact]
    public void Its_ends_need_no_test_and_no_connection_is_given_without_the_diagram_of_its_starter()
    {
        var ends = new EndsFinder(Trade.Knowledge).Find(new()
        {
            Layout = "wound-rotor-6",
            Windings = [new("phase", ["1", "2", "3"]) { Junction = true, Markings = ["T1", "T2", "T3"] }, new("rotor", ["4", "5", "6"]) { Junction = true, Markings = ["M1", "M2", "M3"] }],
        }).Value!;
        Assert.Equal((EndsStatus.Settled, 6), (ends.Status, ends.Assignment!.Count));
        var plan = new Planner(Trade.Knowledge).Plan(new() { Layout = "wound-rotor-6", Leads = ends.Assignment, Plate = Six.Plate });
        Assert.Contains("layout.rotor-to-its-starter", plan.Problems.Select(problem => problem.Advice.Id));
    }
}
