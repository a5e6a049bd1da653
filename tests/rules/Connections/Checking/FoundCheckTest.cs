using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>Questions about a connection that cannot be answered as they stand, and the last ones that can.</summary>
public sealed class FoundCheckTest
{
    private static readonly ConnectionChecker Checker = new(Trade.Knowledge);

    private static readonly FoundConnection Sound = new()
    {
        Coils = [new("main", "M1", "M2", "run", 230, "main", 10), new("start", "A1", "A2", "start", 230, "start", 25)],
        Joints = [new(["M1", "A1"], "L1"), new(["M2", "A2"], "L2")],
        SupplyVolts = 230,
        Phases = 1,
        Hertz = 60,
    };

    private static readonly FoundConnection Brushed = Sound with
    {
        Coils = [new("armature", "A1", "A2", "armature", 230, "main"), new("shunt", "F1", "F2", "shunt-field", 230, "main")],
        Joints = [new(["A1", "F1"], "+"), new(["A2", "F2"], "-")],
        Hertz = 0,
    };

    private static readonly Dictionary<string, FoundConnection> Wrong = new(StringComparer.Ordinal)
    {
        ["no coils"] = Sound with { Coils = [] },
        ["25 coils"] = Sound with { Coils = Many(25) },
        ["101 joints"] = Sound with { Joints = [.. Sound.Joints, .. Enumerable.Range(0, 99).Select(_ => new FoundJoint([]))] },
        ["97 leads"] = Sound with { Joints = [.. Sound.Joints, new(Names(93))] },
        ["an id twice"] = Sound with { Coils = [Sound.Coils[0], Sound.Coils[1] with { Id = "main" }] },
        ["one end twice"] = Sound with { Coils = [Sound.Coils[0], Sound.Coils[1] with { To = "A1" }] },
        ["rated volts 0"] = Rated(0),
        ["rated volts too many"] = Rated(100_001),
        ["ohms 0"] = Ohms(0),
        ["ohms too many"] = Ohms(1.1e9),
        ["axis"] = Sound with { Coils = [Sound.Coils[0], Sound.Coils[1] with { Axis = "d" }] },
        ["conductor"] = Sound with { Joints = [Sound.Joints[0], new(["M2", "A2"], "L4")] },
        ["supply 0"] = Sound with { SupplyVolts = 0 },
        ["supply too high"] = Sound with { SupplyVolts = 100_001 },
        ["two phases"] = Sound with { Phases = 2 },
        ["hertz 0"] = Sound with { Hertz = 0 },
        ["hertz too high"] = Sound with { Hertz = 1001 },
        ["brushed, hertz below 0"] = Brushed with { Hertz = -1 },
        ["third line on one phase"] = Sound with { Joints = [.. Sound.Joints, new(["x"], "L3")] },
        ["phases and axes mixed"] = Sound with { Coils = [Sound.Coils[0], Sound.Coils[1] with { Axis = "b" }] },
        ["plus on alternating"] = Sound with { Joints = [new(["M1", "A1"], "+"), Sound.Joints[1]] },
        ["minus on alternating"] = Sound with { Joints = [Sound.Joints[0], new(["M2", "A2"], "-")] },
        ["brushes and a run winding"] = Brushed with { Coils = [Brushed.Coils[0], Brushed.Coils[1] with { Role = "run" }] },
        ["microfarads 0"] = Capacitors(1, 0),
        ["microfarads too many"] = Capacitors(1, 1.1e6),
        ["nine capacitors"] = Capacitors(9, 10),
        ["eight capacitors and a switch"] = Capacitors(8, 10) with { Switches = [new("A1", "q")] },
        ["slip 0"] = Sound with { Slip = 0 },
        ["slip 2"] = Sound with { Slip = 2 },
    };

    private static readonly Dictionary<string, FoundConnection> Taken = new(StringComparer.Ordinal)
    {
        ["as it stands"] = Sound,
        ["brushes on direct current"] = Brushed,
        ["brushes on alternating current"] = Brushed with { Hertz = 60 },
        ["24 coils"] = Sound with { Coils = Many(24) },
        ["100 joints"] = Sound with { Joints = [.. Sound.Joints, .. Enumerable.Range(0, 98).Select(_ => new FoundJoint([]))] },
        ["96 leads"] = Sound with { Joints = [.. Sound.Joints, new(Names(92))] },
        ["rated volts at the limit"] = Rated(100_000),
        ["ohms at the limit"] = Ohms(1e9),
        ["ohms not measured"] = Ohms(null),
        ["supply at the limit"] = Sound with { SupplyVolts = 100_000 },
        ["hertz at the limit"] = Sound with { Hertz = 1000 },
        ["hertz not said"] = Sound with { Hertz = null },
        ["phases not said"] = Sound with { Phases = null },
        ["microfarads at the limit"] = Capacitors(1, 1e6),
        ["microfarads not read"] = Capacitors(1, null),
        ["eight capacitors"] = Capacitors(8, 10),
        ["slip of a motor driven backwards"] = Sound with { Slip = 1.9 },
    };

    [Theory]
    [InlineData("no coils", "coils", "problem.missing")]
    [InlineData("25 coils", "coils", "check.too-many")]
    [InlineData("101 joints", "joints", "check.too-many")]
    [InlineData("97 leads", "joints", "check.too-many")]
    [InlineData("an id twice", "coils[1].id", "circuits.id-twice")]
    [InlineData("one end twice", "coils[1].leads", "problem.same-lead")]
    [InlineData("rated volts 0", "coils[1].ratedVolts", "circuits.figure-out-of-range")]
    [InlineData("rated volts too many", "coils[1].ratedVolts", "circuits.figure-out-of-range")]
    [InlineData("ohms 0", "coils[1].ohms", "circuits.figure-out-of-range")]
    [InlineData("ohms too many", "coils[1].ohms", "circuits.figure-out-of-range")]
    [InlineData("axis", "coils[1].axis", "check.axis")]
    [InlineData("conductor", "joints[1].conductor", "check.conductor")]
    [InlineData("supply 0", "supply.volts", "circuits.figure-out-of-range")]
    [InlineData("supply too high", "supply.volts", "circuits.figure-out-of-range")]
    [InlineData("two phases", "supply.phases", "check.phases")]
    [InlineData("hertz 0", "supply.hertz", "circuits.figure-out-of-range")]
    [InlineData("hertz too high", "supply.hertz", "circuits.figure-out-of-range")]
    [InlineData("brushed, hertz below 0", "supply.hertz", "circuits.figure-out-of-range")]
    [InlineData("third line on one phase", "supply.phases", "check.third-line")]
    [InlineData("phases and axes mixed", "coils", "check.mixed-axes")]
    [InlineData("plus on alternating", "joints", "check.direct-current")]
    [InlineData("minus on alternating", "joints", "check.direct-current")]
    [InlineData("brushes and a run winding", "coils", "check.mixed-kinds")]
    [InlineData("microfarads 0", "capacitor.microfarads", "circuits.figure-out-of-range")]
    [InlineData("microfarads too many", "capacitor.microfarads", "circuits.figure-out-of-range")]
    [InlineData("nine capacitors", "capacitor", "check.too-many-parts")]
    [InlineData("eight capacitors and a switch", "capacitor", "check.too-many-parts")]
    [InlineData("slip 0", "slip", "circuits.figure-out-of-range")]
    [InlineData("slip 2", "slip", "circuits.figure-out-of-range")]
    public void What_cannot_be_answered_is_said_by_its_member(string what, string field, string advice)
    {
        var answer = Checker.Check(Wrong[what]);
        Assert.False(answer.IsGiven);
        var problem = Assert.Single(answer.Problems);
        Assert.Equal((advice == "check.too-many" ? "too-large" : "invalid-fact", field, advice), (problem.Id, problem.Field, problem.Advice.Id));
        Assert.DoesNotContain('{', Trade.Knowledge.Sentences.Render(problem.Advice));
    }

    [Fact]
    public void Every_wrong_question_is_tried() => Assert.Equal(
        Wrong.Count, typeof(FoundCheckTest).GetMethod(nameof(What_cannot_be_answered_is_said_by_its_member))!.GetCustomAttributes(typeof(InlineDataAttribute), inherit: false).Length);

    [Fact]
    public void The_last_that_can_be_answered_are() => Assert.All(Taken, question => Assert.True(Checker.Check(question.Value).IsGiven, question.Key));

    [Fact]
    public void The_advice_names_what_was_given()
    {
        string Said(string what) => Trade.Knowledge.Sentences.Render(Checker.Check(Wrong[what]).Problems[0].Advice);
        Assert.Contains("24", Said("25 coils"), StringComparison.Ordinal);
        Assert.Contains("8", Said("nine capacitors"), StringComparison.Ordinal);
        Assert.Contains("L4", Said("conductor"), StringComparison.Ordinal);
        Assert.Contains("1001", Said("hertz too high"), StringComparison.Ordinal);
        Assert.Contains("A1", Said("one end twice"), StringComparison.Ordinal);
        Assert.Contains("coils", Said("no coils"), StringComparison.Ordinal);
    }

    private static FoundConnection Rated(double volts) => Sound with { Coils = [Sound.Coils[0], Sound.Coils[1] with { RatedVolts = volts }] };

    private static FoundConnection Ohms(double? ohms) => Sound with { Coils = [Sound.Coils[0], Sound.Coils[1] with { Ohms = ohms }] };

    private static FoundConnection Capacitors(int count, double? microfarads) =>
        Sound with { Capacitors = [.. Enumerable.Range(0, count).Select(_ => new FoundCapacitor("M1", "q", microfarads))] };

    private static IReadOnlyList<FoundCoil> Many(int count) =>
        [.. Enumerable.Range(0, count).Select(index => new FoundCoil($"run {index}", "M1", "M2", "run", 230, "main"))];

    private static IReadOnlyList<string> Names(int count) => [.. Enumerable.Range(0, count).Select(index => $"x{index}")];
}
