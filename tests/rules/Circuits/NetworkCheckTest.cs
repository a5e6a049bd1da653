using WireCoach.Rules.Circuits;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Tests.Circuits;

/// <summary>What is wrong with a network is named by its place, each thing once, and nothing is named that is right.</summary>
public sealed class NetworkCheckTest
{
    private static readonly Element.Source Line = new("s", "a", "0", 120);
    private static readonly Element.Inductor Main = new("p", "a", "0", 0.1, 2);
    private static readonly Element.Inductor Start = new("q", "a", "0", 0.1, 4);

    private static readonly Element.Inductor Third = new("r", "a", "0", 0.1, 4);

    private static readonly Dictionary<string, (Network Network, string[] Problems)> Live = new(StringComparer.Ordinal)
    {
        ["nothing"] = (Of([]), ["invalid-fact elements problem.missing (field: elements)"]),
        ["a coil on a line"] = (Of([Line, Main]), []),
        ["hertz below zero"] = (Of([Line, Main]) with { Hertz = -50 }, ["invalid-fact hertz circuits.figure-out-of-range (field: hertz, value: -50)"]),
        ["hertz that are no number"] = (Of([Line, Main]) with { Hertz = double.NaN }, ["invalid-fact hertz circuits.figure-out-of-range (field: hertz, value: NaN)"]),
        ["an id twice"] = (Of([Line, Main, Main]), ["invalid-fact elements[2].id circuits.id-twice (id: p)"]),
        ["ohms below zero"] = (Of([Line, new Element.Resistor("r", "a", "0", -1)]), ["invalid-fact elements[1].ohms circuits.figure-out-of-range (field: elements[1].ohms, value: -1)"]),
        ["ohms without end"] = (Of([Line, new Element.Resistor("r", "a", "0", double.PositiveInfinity)]), ["invalid-fact elements[1].ohms circuits.figure-out-of-range (field: elements[1].ohms, value: Infinity)"]),
        ["a coil of nothing"] = (Of([Line, new Element.Inductor("p", "a", "0", 0, -2)]),
        [
            "invalid-fact elements[1].henries circuits.figure-out-of-range (field: elements[1].henries, value: 0)", "invalid-fact elements[1].ohms circuits.figure-out-of-range (field: elements[1].ohms, value: -2)",
        ]),
        ["a coil without end"] = (Of([Line, new Element.Inductor("p", "a", "0", double.PositiveInfinity, double.PositiveInfinity)]),
        [
            "invalid-fact elements[1].henries circuits.figure-out-of-range (field: elements[1].henries, value: Infinity)", "invalid-fact elements[1].ohms circuits.figure-out-of-range (field: elements[1].ohms, value: Infinity)",
        ]),
        ["a capacitor of nothing"] = (Of([Line, Main, new Element.Capacitor("c", "a", "0", 0)]), ["invalid-fact elements[2].microfarads circuits.figure-out-of-range (field: elements[2].microfarads, value: 0)"]),
        ["a capacitor without end"] = (Of([Line, Main, new Element.Capacitor("c", "a", "0", double.PositiveInfinity)]), ["invalid-fact elements[2].microfarads circuits.figure-out-of-range (field: elements[2].microfarads, value: Infinity)"]),
        ["volts that are no number"] = (Of([new Element.Source("s", "a", "0", double.NaN, double.NaN), Main]),
        [
            "invalid-fact elements[0].volts circuits.figure-out-of-range (field: elements[0].volts, value: NaN)", "invalid-fact elements[0].angleDegrees circuits.figure-out-of-range (field: elements[0].angleDegrees, value: NaN)",
        ]),
        ["direct volts at an angle"] = (Of([new Element.Source("s", "a", "0", 12, 90), Main]) with { Hertz = 0 }, ["invalid-fact elements[0].angleDegrees circuits.angle-of-direct-volts"]),
        ["direct volts turned round"] = (Of([new Element.Source("s", "a", "0", 12, 180), Main]) with { Hertz = 0 }, []),
        ["a coupling to no coil"] = (Of([Line, Main], new Coupling("p", "s", 0.5)), ["invalid-fact couplings[0].second circuits.not-a-coil (id: s)"]),
        ["a coupling from nowhere"] = (Of([Line, Main], new Coupling("x", "p", 0.5)), ["invalid-fact couplings[0].first circuits.not-a-coil (id: x)"]),
        ["a coil with itself"] = (Of([Line, Main], new Coupling("p", "p", 0.5)), ["invalid-fact couplings[0] circuits.coupling-twice (first: p, second: p)"]),
        ["a coupling twice, turned round"] = (Of([Line, Main, Start], new Coupling("p", "q", 0.5), new Coupling("q", "p", 0.5)), ["invalid-fact couplings[1] circuits.coupling-twice (first: q, second: p)"]),
        ["more than all flux"] = (Of([Line, Main, Start], new Coupling("p", "q", -1.1)), ["impossible-network couplings[0].coefficient circuits.coefficient (value: -1.1)"]),
        ["all flux of a coil with wire"] = (Of([Line, Main, Start], new Coupling("p", "q", -1)), []),
        ["two sources in one loop"] = (Of([Line, new Element.Source("t", "a", "0", 115)]), ["impossible-network elements[1] circuits.loop-without-resistance (element: t)"]),
        ["too much"] = (Of([.. Enumerable.Range(0, NetworkSolver.MostElements + 1).Select(at => new Element.Resistor($"r{at}", "a", "0", 5))]), ["too-large elements circuits.too-many-elements (most: 200)"]),
        ["as much as may be"] = (Of([.. Enumerable.Range(0, NetworkSolver.MostElements).Select(at => new Element.Resistor($"r{at}", "a", "0", 5))]), []),
    };

    /// <summary>What figures alone cannot tell: loops, parts that float, and networks without one answer.</summary>
    private static readonly Dictionary<string, (Network Network, string[] Problems)> Joined = new(StringComparer.Ordinal)
    {
        ["a wire without ohms"] = (Of([Line, new Element.Resistor("w", "a", "b", 0), new Element.Resistor("r", "b", "0", 5)]), []),
        ["a coil without ohms"] = (Of([Line, new Element.Inductor("p", "a", "0", 0.1)]), []),
        ["a coil without ohms on direct volts"] = (Of([Line, new Element.Inductor("p", "a", "0", 0.1)]) with { Hertz = 0 }, ["impossible-network elements[1] circuits.loop-without-resistance (element: p)"]),
        ["a wire beside a closed switch"] = (Of([Line, new Element.Switch("k", "a", "b", true), new Element.Resistor("w", "b", "a", 0), new Element.Resistor("r", "b", "0", 5)]), ["impossible-network elements[2] circuits.loop-without-resistance (element: w)"]),
        ["a wire beside an open switch"] = (Of([Line, new Element.Switch("k", "a", "b", false), new Element.Resistor("w", "b", "a", 0), new Element.Resistor("r", "b", "0", 5)]), []),
        ["a source closed short"] = (Of([Line, new Element.Switch("k", "0", "a", true)]), ["impossible-network elements[1] circuits.loop-without-resistance (element: k)"]),
        ["capacitors in a row"] = (Of([Line, new Element.Capacitor("c", "a", "b", 10), new Element.Capacitor("d", "b", "0", 20)]), []),
        ["capacitors in a row on direct volts"] = (Of([Line, new Element.Capacitor("c", "a", "b", 10), new Element.Capacitor("d", "b", "0", 20)]) with { Hertz = 0 }, ["impossible-network ground circuits.floating (nodes: b)"]),
        ["parts that float"] = (Of([Line, Main, new Element.Resistor("r", "y", "x", 5), new Element.Switch("k", "y", "a", false)]), ["impossible-network ground circuits.floating (nodes: x, y)"]),
        ["parts that float, where they may"] = (Of([Line, Main, new Element.Resistor("r", "y", "x", 5)]) with { IslandsAllowed = true }, []),
        ["a lead behind an open coil"] = (Of([Line, Main, new Element.Resistor("r", "a", "x", null)]), ["impossible-network ground circuits.floating (nodes: x)"]),
        ["a ground that is not there"] = (Of([Line, Main]) with { Ground = "earth" }, ["impossible-network ground circuits.ground-in-no-element (ground: earth)"]),
        ["a coil and a capacitor that cancel out"] = (Of([Line, new Element.Inductor("p", "a", "b", 1), new Element.Capacitor("c", "b", "0", 1e6 / Math.Pow(120 * Math.PI, 2))]), ["impossible-network elements circuits.no-single-solution"]),
        ["three coils that share all their flux"] = (Of([Line, Main, Start, Third], new Coupling("p", "q", 1), new Coupling("q", "r", -1), new Coupling("r", "p", -1)), []),
        ["three coils that cannot share so much"] = (Of([Line, Main, Start, Third], new Coupling("p", "q", 0.9), new Coupling("q", "r", 0.9), new Coupling("r", "p", -0.9)), ["impossible-network couplings circuits.couplings-contradict"]),
        ["the same, one of them twice"] = (Of([Line, Main, Start, Third], new Coupling("p", "q", 0.9), new Coupling("q", "r", 0.9), new Coupling("r", "p", -0.9), new Coupling("r", "q", 0.9)), ["invalid-fact couplings[3] circuits.coupling-twice (first: r, second: q)"]),
        ["the same, one of them beyond all flux"] = (Of([Line, Main, Start, Third], new Coupling("p", "q", 0.9), new Coupling("q", "r", 0.9), new Coupling("r", "p", -1.9)), ["impossible-network couplings[2].coefficient circuits.coefficient (value: -1.9)"]),
        ["the same, one of them to no coil"] = (Of([Line, Main, Start], new Coupling("p", "q", 0.9), new Coupling("q", "s", 0.9), new Coupling("s", "p", -0.9)), ["invalid-fact couplings[1].second circuits.not-a-coil (id: s)", "invalid-fact couplings[2].first circuits.not-a-coil (id: s)"]),
    };

    private static readonly Dictionary<string, (Network Network, string[] Problems)> Dead = new(StringComparer.Ordinal)
    {
        ["nothing"] = (Of([]) with { Hertz = 0 }, ["invalid-fact elements problem.missing (field: elements)"]),
        ["a coil"] = (Of([Main]) with { Hertz = 0 }, []),
        ["a coil at its hertz"] = (Of([Main]), ["invalid-fact hertz circuits.meter-at-zero-hertz"]),
        ["a live coil"] = (Of([Line, Main]) with { Hertz = 0 }, ["impossible-network elements[0] circuits.meter-on-live (element: s)"]),
        ["ohms below zero"] = (Of([new Element.Resistor("r", "a", "0", -1)]) with { Hertz = 0 }, ["invalid-fact elements[0].ohms circuits.figure-out-of-range (field: elements[0].ohms, value: -1)"]),
    };

    public static TheoryData<string> Networks() => [.. Live.Keys];

    public static TheoryData<string> WaysToJoin() => [.. Joined.Keys];

    public static TheoryData<string> Metered() => [.. Dead.Keys];

    [Theory]
    [MemberData(nameof(Networks))]
    public void What_is_wrong_with_a_network_is_named(string network) =>
        Assert.Equal(Live[network].Problems, Said(NetworkSolver.Solve(Live[network].Network).Problems));

    [Theory]
    [MemberData(nameof(WaysToJoin))]
    public void What_has_no_answer_as_it_is_joined_is_named(string network) =>
        Assert.Equal(Joined[network].Problems, Said(NetworkSolver.Solve(Joined[network].Network).Problems));

    [Theory]
    [MemberData(nameof(Metered))]
    public void What_an_ohmmeter_cannot_read_is_named(string network) =>
        Assert.Equal(Dead[network].Problems, Said(NetworkSolver.Read(Dead[network].Network, [("a", "0")]).Problems));

    [Fact]
    public void The_ways_to_a_solution_and_to_a_reading_are_told()
    {
        var network = Of([Line, Main, Start], new Coupling("p", "q", 0.5));
        Assert.Equal(
        [
            "currents at each node: sum of amps = 0; 3 elements = zero volts at 0",
            "volts along each element: V = R·I, V = jωL·I + jωM·I2, I = jωC·V; 60 Hz, 1 couplings, M = k·√(L1·L2) = one set of linear equations, solved and corrected once",
        ], NetworkTrail.Of(network).Select(Said));
        Assert.Equal(
        [
            "paths for direct current: coil = its wire, capacitor = open; 3 elements = a network of resistors",
            "ohms of each pair: star to mesh: G_ab += G_an·G_nb / ΣG_n; every node but the pair is taken out = R = 1 / G",
        ], NetworkTrail.OfMeter(network).Select(Said));
    }

    private static Network Of(IReadOnlyList<Element> elements, params IReadOnlyList<Coupling> couplings) => new() { Elements = elements, Couplings = couplings, Hertz = 60, Ground = "0" };

    private static string Said(TrailStep step) => $"{step.Step}: {step.Formula}; {step.Inputs} = {step.Result}";

    private static IEnumerable<string> Said(IEnumerable<Problem> problems) => problems.Select(problem => $"{Spoken.Whole(problem).Id} {problem.Field} {problem.Advice}");
}
