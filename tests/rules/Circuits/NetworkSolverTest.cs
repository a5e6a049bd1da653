using System.Numerics;
using WireCoach.Rules.Circuits;

namespace WireCoach.Rules.Tests.Circuits;

public sealed class NetworkSolverTest
{
    private const double Sixty = 2 * Math.PI * 60;

    [Theory]
    [InlineData(0, 30.3081, 30.3081, 7.57703, 7.57703)]
    [InlineData(0.4, 42.3294, 18.3426, 10.5824, 4.58564)]
    [InlineData(0.9, 57.3811, 4.25392, 14.3453, 1.06348)]
    [InlineData(0.95, 58.8871, 3.35767, 14.7218, 0.839418)]
    public void Two_like_coils_read_as_published_in_series_and_in_parallel(double k, double aiding, double opposing, double besideAiding, double besideOpposing)
    {
        Assert.Equal(aiding, Ohms(k, ("a", "m"), ("m", "0")), aiding * 1e-5);
        Assert.Equal(opposing, Ohms(k, ("a", "m"), ("0", "m")), opposing * 1e-5);
        Assert.Equal(besideAiding, Ohms(k, ("a", "0"), ("a", "0")), besideAiding * 1e-5);
        Assert.Equal(besideOpposing, Ohms(k, ("a", "0"), ("0", "a")), besideOpposing * 1e-5);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0.999999)]
    public void Coils_that_share_all_their_flux_are_an_ideal_transformer(double k)
    {
        var solved = Solve(
            [new Element.Source("s", "a", "0", 120), new Element.Inductor("p", "a", "0", 0.4), new Element.Inductor("q", "b", "0", 0.1), new Element.Resistor("load", "b", "0", 10)],
            [new Coupling("p", "q", k)]);
        // Closed form: V2 = jωM I1 − jωL2 I2 with I2 = V2/R.
        var (l1, l2, m) = (0.4, 0.1, k * Math.Sqrt(0.4 * 0.1));
        var volts = 120 * (m / l1) / (1 + (new Complex(0, Sixty * (l2 - (m * m / l1))) / 10));
        Assert.True((solved.Elements["load"].Volts - volts).Magnitude < 1e-9 * volts.Magnitude);
    }

    [Fact]
    public void A_resonant_branch_is_solved_to_nine_digits()
    {
        var solved = Solve(
            [new Element.Source("s", "a", "0", 230), new Element.Resistor("r", "a", "b", 2), new Element.Inductor("l", "b", "c", 0.1), new Element.Capacitor("c", "c", "0", 1e6 / (Sixty * Sixty * 0.1))], []);
        Assert.Equal(115, solved.Elements["r"].Amps.Real, 1e-7);
        Assert.Equal(115 * Sixty * 0.1, solved.Elements["c"].Volts.Magnitude, 1e-5);
    }

    [Fact]
    public void A_milliohm_in_series_with_a_megohm_keeps_its_volts()
    {
        var solved = Solve([new Element.Source("s", "a", "0", 230), new Element.Resistor("big", "a", "b", 1e6), new Element.Resistor("small", "b", "c", 1e-3), new Element.Switch("k", "c", "0", true)], []);
        Assert.Equal(230 / (1e6 + 1e-3) * 1e-3, solved.Elements["small"].Volts.Real, 1e-18);
    }

    /// <summary>Ohms of all parts times a figure are the amps over it, whatever the size of the ohms: windings of milliohms and insulation of gigohms.</summary>
    [Theory]
    [InlineData(1e-6)]
    [InlineData(1e-3)]
    [InlineData(1e4)]
    [InlineData(1e9)]
    public void Impedances_that_are_all_larger_draw_so_much_less(double times)
    {
        var (one, other) = (Motor(1, 1), Motor(times, 1));
        Assert.All(one.Elements, element => Same(element.Value.Volts, other.Elements[element.Key].Volts));
        Assert.All(one.Elements, element => Same(element.Value.Amps / times, other.Elements[element.Key].Amps));
        Assert.All(one.Nodes, node => Same(node.Value, other.Nodes[node.Key]));
    }

    /// <summary>A coil of half the henries is the same coil at twice the hertz, and so is a capacitor.</summary>
    [Theory]
    [InlineData(1e-3)]
    [InlineData(5.0 / 6)]
    [InlineData(1e4)]
    public void Only_hertz_times_henries_and_microfarads_count(double times)
    {
        var (one, other) = (Motor(1, 1), Motor(1, times));
        Assert.All(one.Elements, element => Same(element.Value.Amps, other.Elements[element.Key].Amps));
    }

    [Theory]
    [InlineData(true, 0, 23)]
    [InlineData(false, 230, 0)]
    public void An_open_switch_stands_at_the_volts_that_it_holds_off(bool closed, double volts, double amps)
    {
        var solved = Solve([new Element.Source("s", "a", "0", 230), new Element.Resistor("r", "a", "b", 10), new Element.Switch("k", "b", "0", closed)], []);
        Assert.Equal(volts, solved.Elements["k"].Volts.Real, 1e-9);
        Assert.Equal(amps, solved.Elements["k"].Amps.Real, 1e-9);
        Assert.Equal(230, Solve([new Element.Source("s", "a", "0", 230), new Element.Switch("k", "a", "0", false)], []).Elements["k"].Volts.Real, 1e-9);
    }

    [Fact]
    public void Direct_volts_stand_across_a_capacitor_and_push_nothing_through_it()
    {
        var solved = NetworkSolver.Solve(new Network
        {
            Elements = [new Element.Source("s", "a", "0", 12, 180), new Element.Inductor("p", "a", "b", 0.1, 4), new Element.Capacitor("c", "b", "0", 20), new Element.Resistor("r", "b", "0", 8)],
            Hertz = 0,
            Ground = "0",
        }).Value!;
        Assert.Equal((-8, 0), (Math.Round(solved.Elements["c"].Volts.Real, 9), solved.Elements["c"].Amps.Magnitude));
        Assert.Equal(-1, solved.Elements["p"].Amps.Real, 1e-9);
        Assert.Equal(-4, solved.Elements["p"].Volts.Real, 1e-9);
    }

    [Fact]
    public void A_source_that_delivers_has_current_against_its_volts()
    {
        var solved = Solve([new Element.Source("s", "a", "0", 10), new Element.Resistor("r", "a", "0", 5)], []);
        Assert.Equal(-2, solved.Elements["s"].Amps.Real, 1e-12);
        Assert.Equal(2, solved.Elements["r"].Amps.Real, 1e-12);
    }

    [Fact]
    public void Two_sources_side_by_side_are_refused_by_name() => Refused(
        "elements[1]", [new Element.Source("s", "a", "0", 120), new Element.Source("t", "a", "0", 121), new Element.Resistor("r", "a", "0", 5)], []);

    [Fact]
    public void A_floating_part_is_refused() => Refused(
        "ground", [new Element.Source("s", "a", "0", 120), new Element.Resistor("r", "a", "0", 5), new Element.Resistor("q", "x", "y", 5)], []);

    [Fact]
    public void A_ground_that_is_not_there_is_refused() => Refused("ground", [new Element.Resistor("r", "a", "b", 5)], []);

    [Fact]
    public void An_ideal_resonant_loop_is_refused_and_not_answered_with_noise() => Refused(
        "elements",
        [new Element.Source("s", "a", "0", 1), new Element.Inductor("l", "a", "b", 1), new Element.Capacitor("c", "b", "0", 1e6 / (Sixty * Sixty))], []);

    [Fact]
    public void Ideal_coils_on_contradicting_sources_are_refused() => Refused(
        "elements",
        [new Element.Source("s", "a", "0", 120), new Element.Source("t", "b", "0", 50), new Element.Inductor("p", "a", "0", 1), new Element.Inductor("q", "b", "0", 1)],
        [new Coupling("p", "q", 1)]);

    [Fact]
    public void Couplings_that_no_coils_can_have_are_refused() => Refused(
        "couplings",
        [new Element.Source("s", "a", "0", 120), new Element.Inductor("p", "a", "0", 1), new Element.Inductor("q", "a", "0", 1), new Element.Inductor("r", "a", "0", 1)],
        [new Coupling("p", "q", 0.9), new Coupling("q", "r", 0.9), new Coupling("r", "p", -0.9)]);

    [Fact]
    public void An_island_may_take_its_own_zero_where_that_is_asked_for()
    {
        var solved = NetworkSolver.Solve(new Network
        {
            Elements = [new Element.Source("s", "a", "0", 120), new Element.Inductor("p", "a", "0", 1), new Element.Inductor("q", "x", "y", 1)],
            Couplings = [new Coupling("p", "q", 0.5)],
            Hertz = 60,
            Ground = "0",
            IslandsAllowed = true,
        }).Value!;
        Assert.Equal(60, solved.Elements["q"].Volts.Real, 1e-9);
    }

    /// <summary>A capacitor motor with its two windings coupled a little, on a line of some ohms.</summary>
    private static Solution Motor(double ohms, double hertz)
    {
        var answer = NetworkSolver.Solve(new Network
        {
            Elements =
            [
                new Element.Source("s", "line", "0", 230, 30), new Element.Resistor("cord", "line", "a", 0.4 * ohms), new Element.Inductor("main", "a", "0", 0.05 * ohms / hertz, 2 * ohms),
                new Element.Capacitor("c", "a", "b", 40 / ohms / hertz), new Element.Inductor("aux", "b", "0", 0.09 * ohms / hertz, 6 * ohms),
            ],
            Couplings = [new Coupling("main", "aux", 0.2)],
            Hertz = 60 * hertz,
            Ground = "0",
        });
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }

    private static void Same(Complex expected, Complex got) => Assert.True((expected - got).Magnitude <= 1e-9 * expected.Magnitude, $"{got} instead of {expected}");

    private static double Ohms(double k, (string, string) first, (string, string) second)
    {
        var solved = Solve(
            [
                new Element.Source("s", "a", "0", 12),
                new Element.Inductor("1", first.Item1, first.Item2, 0.04, 1.5), new Element.Inductor("2", second.Item1, second.Item2, 0.04, 1.5),
            ],
            k == 0 ? [] : [new Coupling("1", "2", k)]);
        return 12 / solved.Elements["s"].Amps.Magnitude;
    }

    private static Solution Solve(IReadOnlyList<Element> elements, IReadOnlyList<Coupling> couplings)
    {
        var answer = NetworkSolver.Solve(new Network { Elements = elements, Couplings = couplings, Hertz = 60, Ground = "0" });
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }

    private static void Refused(string field, IReadOnlyList<Element> elements, IReadOnlyList<Coupling> couplings)
    {
        var problem = Assert.Single(NetworkSolver.Solve(new Network { Elements = elements, Couplings = couplings, Hertz = 60, Ground = "0" }).Problems);
        Assert.Equal(("impossible-network", field), (problem.Id, problem.Field));
    }
}
