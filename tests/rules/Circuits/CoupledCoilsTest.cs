using System.Numerics;
using System.Text.Json;
using WireCoach.Rules.Circuits;

namespace WireCoach.Rules.Tests.Circuits;

/// <summary>The published coupled-coil vectors, through the solver.</summary>
public sealed class CoupledCoilsTest
{
    private static readonly JsonElement[] All = [.. Vectors.Of("machines.json").GetProperty("vectors").EnumerateArray()];

    [Theory]
    [InlineData(1.6, 0.1, 0.34, 2.38, 1.02)] // CC-01
    [InlineData(0.0005, 0.0005, 0.0002, 0.0014, 0.0006)] // CC-03
    [InlineData(0.8, 0.2, 0.2, 1.4, 0.6)] // CC-05
    [InlineData(0.04, 0.01, 0.005, 0.06, 0.04)] // CC-07
    [InlineData(0.0025, 0.04, 0.008, 0.0585, 0.0265)] // CC-09
    [InlineData(0.0025, 0.04, 0.01, 0.0625, 0.0225)] // CC-09, all flux shared
    public void In_series_they_add_or_take_away_twice_their_mutual_inductance(double first, double second, double mutual, double aiding, double opposing)
    {
        Assert.Equal(aiding, Henries(first, second, mutual, ("a", "m"), ("m", "0")), 1e-9 * aiding);
        Assert.Equal(opposing, Henries(first, second, mutual, ("a", "m"), ("0", "m")), 1e-9 * opposing);
    }

    [Theory]
    [InlineData(0.8, 0.2, 0.2, 0.2, 0.08571428571)] // CC-05
    [InlineData(4, 6, 3, 3.75, 0.9375)] // CC-11
    public void Side_by_side_their_polarity_counts_as_well(double first, double second, double mutual, double aiding, double opposing)
    {
        Assert.Equal(aiding, Henries(first, second, mutual, ("a", "0"), ("a", "0")), 1e-9);
        Assert.Equal(opposing, Henries(first, second, mutual, ("a", "0"), ("0", "a")), 1e-9);
    }

    [Fact]
    public void With_the_rotor_locked_in_place_the_aiding_impedance_falls_and_the_opposing_one_does_not()
    {
        var (inputs, expected) = Vector("CC-13");
        Complex Ohms(bool aiding) => 12 / Solve(
            [
                new Element.Inductor("1", "a", "m", inputs("L_each"), inputs("R_each")),
                aiding ? new Element.Inductor("2", "m", "0", inputs("L_each"), inputs("R_each")) : new Element.Inductor("2", "0", "m", inputs("L_each"), inputs("R_each")),
                new Element.Inductor("cage", "0", "r", inputs("L_rotor")), new Element.Resistor("bars", "r", "0", inputs("R_rotor")),
            ],
            [Of("1", "2", inputs("M"), 0.04, 0.04), Of("1", "cage", inputs("M_rotor"), 0.04, 0.04), Of("2", "cage", inputs("M_rotor"), 0.04, 0.04)], 12);
        Assert.Equal(expected("Zmag_aid"), Ohms(true).Magnitude, 1e-4 * expected("Zmag_aid"));
        Assert.Equal(expected("Zmag_opp"), Ohms(false).Magnitude, 1e-4 * expected("Zmag_opp"));
        Assert.Equal(expected("ratio"), Ohms(true).Magnitude / Ohms(false).Magnitude, 1e-4 * expected("ratio"));
    }

    [Theory]
    [InlineData("CC-15")]
    [InlineData("CC-17")]
    public void Two_halves_side_by_side_draw_a_short_when_one_is_reversed(string id)
    {
        var (inputs, expected) = Vector(id);
        double Amps((string, string) second) => Solve(
            [new Element.Inductor("1", "a", "0", inputs("L1"), inputs("R1")), new Element.Inductor("2", second.Item1, second.Item2, inputs("L2"), inputs("R2"))],
            [Of("1", "2", inputs("M"), inputs("L1"), inputs("L2"))], inputs("V")).Magnitude;
        Assert.Equal(expected("I_line_aid"), Amps(("a", "0")), 1e-4 * expected("I_line_aid"));
        Assert.Equal(expected("I_line_opp"), Amps(("0", "a")), 1e-4 * expected("I_line_opp"));
        Assert.Equal(expected("ratio_line_current"), Amps(("0", "a")) / Amps(("a", "0")), 1e-4 * expected("ratio_line_current"));
    }

    [Theory]
    [InlineData(0, "V_open_corner_ok")]
    [InlineData(180, "V_open_corner_reversed")]
    public void An_open_corner_of_a_delta_shows_a_reversed_phase(double turned, string figure)
    {
        var (inputs, expected) = Vector("CC-19");
        Element[] loop =
        [
            new Element.Source("A", "1", "0", inputs("E")), new Element.Source("B", "2", "1", inputs("E"), -120), new Element.Source("C", "3", "2", inputs("E"), 120 + turned),
            new Element.Resistor("R", "3", "r", 3), new Element.Inductor("L", "r", "x", 9 / (2 * Math.PI * 60)),
        ];
        var open = NetworkSolver.Solve(new Network { Elements = loop, Hertz = 60, Ground = "0" }).Value!;
        Assert.Equal(expected(figure), open.Nodes["3"].Magnitude, 1e-6);
        var closed = NetworkSolver.Solve(new Network { Elements = [.. loop, new Element.Switch("corner", "x", "0", true)], Hertz = 60, Ground = "0" }).Value!;
        Assert.Equal(turned == 0 ? 0 : expected("I_loop"), closed.Elements["corner"].Amps.Magnitude, 1e-4);
    }

    [Theory]
    [InlineData("2", "V_BC_bucking")]
    [InlineData("-2", "V_BC_in_phase_series")]
    public void A_phase_that_is_not_fed_takes_half_of_the_fed_one_with_opposite_sign(string direction, string figure)
    {
        var (inputs, expected) = Vector("CC-21");
        var k = inputs("M_over_L");
        var solved = NetworkSolver.Solve(new Network
        {
            Elements =
            [
                new Element.Source("V", "a", "0", 12), new Element.Inductor("A", "a", "0", 0.05), new Element.Inductor("B", "b", "star", 0.05),
                direction == "2" ? new Element.Inductor("C", "c", "star", 0.05) : new Element.Inductor("C", "star", "c", 0.05),
            ],
            Couplings = [new("A", "B", k), new("A", "C", k), new("B", "C", k)],
            Hertz = 60,
            Ground = "0",
            IslandsAllowed = true,
        }).Value!;
        Assert.Equal(expected("V_B"), solved.Elements["B"].Volts.Magnitude, 1e-9);
        Assert.Equal(expected(figure), (solved.Nodes["b"] - solved.Nodes["c"]).Magnitude, 1e-9);
    }

    private static Coupling Of(string first, string second, double mutual, double one, double other) => new(first, second, mutual / Math.Sqrt(one * other));

    private static double Henries(double first, double second, double mutual, (string From, string To) one, (string From, string To) other) =>
        (1 / Solve(
            [new Element.Inductor("1", one.From, one.To, first), new Element.Inductor("2", other.From, other.To, second)],
            [Of("1", "2", mutual, first, second)], 1)).Imaginary / (2 * Math.PI * 60);

    private static Complex Solve(IReadOnlyList<Element> coils, IReadOnlyList<Coupling> couplings, double volts)
    {
        var answer = NetworkSolver.Solve(new Network { Elements = [new Element.Source("V", "a", "0", volts), .. coils], Couplings = couplings, Hertz = 60, Ground = "0" });
        Assert.Empty(answer.Problems);
        return -answer.Value!.Elements["V"].Amps;
    }

    private static (Func<string, double> Inputs, Func<string, double> Expected) Vector(string id)
    {
        var vector = All.Single(item => item.GetProperty("id").GetString() == id);
        return (name => vector.GetProperty("inputs").GetProperty(name).GetDouble(), name => vector.GetProperty("expected").GetProperty(name).GetDouble());
    }
}
