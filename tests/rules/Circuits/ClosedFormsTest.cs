using System.Numerics;
using WireCoach.Rules.Circuits;

namespace WireCoach.Rules.Tests.Circuits;

/// <summary>Networks whose answer is a closed form derived by hand, with figures drawn anew for each case.</summary>
public sealed class ClosedFormsTest
{
    private const double Close = 1e-9;

    public static TheoryData<int> Cases() => [.. Enumerable.Range(1, 25)];

    /// <summary>Ra in star answers to Rab = Ra + Rb + Ra·Rb/Rc in delta: the lines see no difference.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void A_star_and_the_delta_that_answers_to_it_draw_the_same_from_unequal_lines(int draw)
    {
        var next = Figures(draw);
        var (a, b, c) = (next(1, 50), next(1, 50), next(1, 50));
        Element[] lines = [new Element.Source("L1", "a", "0", next(100, 400)), new Element.Source("L2", "b", "0", next(100, 400), -next(80, 140)), new Element.Source("L3", "c", "0", next(100, 400), next(80, 140))];
        var star = Solved(50, [.. lines, new Element.Resistor("A", "a", "n", a), new Element.Resistor("B", "b", "n", b), new Element.Resistor("C", "c", "n", c)]);
        var sum = (a * b) + (b * c) + (c * a);
        var delta = Solved(50, [.. lines, new Element.Resistor("AB", "a", "b", sum / c), new Element.Resistor("BC", "b", "c", sum / a), new Element.Resistor("CA", "c", "a", sum / b)]);
        Assert.All(lines, line => Same(star.Elements[line.Id].Amps, delta.Elements[line.Id].Amps));
    }

    /// <summary>A star without neutral: its middle stands at Σ(V/Z) ÷ Σ(1/Z).</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_middle_of_an_unequal_star_moves(int draw)
    {
        var next = Figures(draw);
        double[] ohms = [next(1, 50), next(1, 50), next(1, 50)];
        var henries = next(0.001, 0.2);
        Complex[] legs = [ohms[0], new Complex(ohms[1], 2 * Math.PI * 60 * henries), ohms[2]];
        Complex[] volts = [.. new[] { 0.0, -120, 120 }.Select(angle => Complex.FromPolarCoordinates(230, angle * Math.PI / 180))];
        var solved = Solved(60,
        [
            new Element.Source("1", "a", "0", 230), new Element.Source("2", "b", "0", 230, -120), new Element.Source("3", "c", "0", 230, 120),
            new Element.Resistor("A", "a", "n", ohms[0]), new Element.Inductor("B", "b", "n", henries, ohms[1]), new Element.Resistor("C", "c", "n", ohms[2]),
        ]);
        Same(Sum(volts.Zip(legs, (volt, leg) => volt / leg)) / Sum(legs.Select(leg => 1 / leg)), solved.Nodes["n"]);
    }

    /// <summary>The bridge's meter sees an open voltage behind the two dividers side by side.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void A_bridge_drives_its_meter_as_an_equivalent_source(int draw)
    {
        var next = Figures(draw);
        var (r1, r2, r3, r4, meter, volts) = (next(1, 900), next(1, 900), next(1, 900), next(1, 900), next(1, 900), next(1, 24));
        var open = volts * ((r2 / (r1 + r2)) - (r4 / (r3 + r4)));
        var inner = (r1 * r2 / (r1 + r2)) + (r3 * r4 / (r3 + r4));
        var solved = Solved(0,
        [
            new Element.Source("V", "a", "0", volts), new Element.Resistor("1", "a", "x", r1), new Element.Resistor("2", "x", "0", r2),
            new Element.Resistor("3", "a", "y", r3), new Element.Resistor("4", "y", "0", r4), new Element.Resistor("meter", "x", "y", meter),
        ]);
        Same(open / (inner + meter), solved.Elements["meter"].Amps);
    }

    /// <summary>A loaded transformer: Z = R1 + jωL1 + (ωM)² ÷ (R2 + jωL2 + R).</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void A_coupled_coil_takes_over_the_load_of_the_other(int draw)
    {
        var next = Figures(draw);
        var (r1, r2, load, l1, l2, k) = (next(0.1, 9), next(0.1, 9), next(0.1, 200), next(0.01, 0.5), next(0.01, 0.5), next(0.1, 0.99));
        var omega = 2 * Math.PI * 50;
        var ohms = new Complex(r1, omega * l1) + (Math.Pow(omega * k, 2) * l1 * l2 / new Complex(r2 + load, omega * l2));
        var solved = Solved(50,
            [new Element.Source("V", "a", "0", 120), new Element.Inductor("1", "a", "0", l1, r1), new Element.Inductor("2", "b", "0", l2, r2), new Element.Resistor("load", "b", "0", load)],
            new Coupling("1", "2", k));
        Same(120 / ohms, -solved.Elements["V"].Amps);
    }

    /// <summary>At ω² = 1 ÷ LC a series circuit is a resistance, and its capacitor stands at Q times the supply.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void In_resonance_the_capacitor_stands_far_above_the_supply(int draw)
    {
        var next = Figures(draw);
        var (ohms, henries, microfarads) = (next(0.5, 20), next(0.05, 2), next(1, 60));
        var omega = 1 / Math.Sqrt(henries * microfarads * 1e-6);
        var solved = Solved(omega / (2 * Math.PI),
            [new Element.Source("V", "a", "0", 115), new Element.Inductor("L", "a", "b", henries, ohms), new Element.Capacitor("C", "b", "0", microfarads)]);
        Assert.Equal(115 / ohms, solved.Elements["L"].Amps.Magnitude, 1e-6 * 115 / ohms);
        Assert.Equal(115 * omega * henries / ohms, solved.Elements["C"].Volts.Magnitude, 1e-6 * 115 * omega * henries / ohms);
    }

    /// <summary>One line lost: of a delta one winding keeps the whole line and two share it; of a star two share it and the third is dead.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void With_one_line_lost_the_windings_share_what_is_left(int draw)
    {
        var next = Figures(draw);
        var (ohms, henries, volts) = (next(0.5, 20), next(0.01, 0.3), next(200, 480));
        var one = new Complex(ohms, 2 * Math.PI * 60 * henries);
        var delta = Solved(60,
        [
            new Element.Source("V", "a", "b", volts), new Element.Inductor("AB", "a", "b", henries, ohms), new Element.Inductor("BC", "b", "c", henries, ohms), new Element.Inductor("CA", "c", "a", henries, ohms),
        ], ground: "b");
        Same(1.5 * volts / one, -delta.Elements["V"].Amps);
        Assert.Equal(volts / 2, delta.Elements["CA"].Volts.Magnitude, Close * volts);
        var star = Solved(60,
        [
            new Element.Source("V", "a", "b", volts), new Element.Inductor("A", "a", "n", henries, ohms), new Element.Inductor("B", "b", "n", henries, ohms), new Element.Inductor("C", "c", "n", henries, ohms),
        ], ground: "b");
        Same(volts / (2 * one), -star.Elements["V"].Amps);
        Assert.Equal(0, star.Elements["C"].Amps.Magnitude, Close);
    }

    private static Func<double, double, double> Figures(int draw)
    {
        var state = (uint)(draw * 2654435761);
        return (low, high) =>
        {
            state = (state * 1664525) + 1013904223;
            return low + ((high - low) * (state / 4294967296.0));
        };
    }

    private static Complex Sum(IEnumerable<Complex> all) => all.Aggregate(Complex.Zero, (sum, one) => sum + one);

    private static void Same(Complex expected, Complex got) => Assert.True((expected - got).Magnitude <= Close * expected.Magnitude, $"{got} instead of {expected}");

    private static Solution Solved(double hertz, IReadOnlyList<Element> elements, Coupling? coupling = null, string ground = "0")
    {
        var answer = NetworkSolver.Solve(new Network { Elements = elements, Couplings = coupling is null ? [] : [coupling], Hertz = hertz, Ground = ground });
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }
}
