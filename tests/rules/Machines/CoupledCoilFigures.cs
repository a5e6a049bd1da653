using System.Numerics;
using System.Text.Json;
using WireCoach.Rules.Circuits;
using static WireCoach.Rules.Tests.Machines.MachineVectorsTest;

namespace WireCoach.Rules.Tests.Machines;

/// <summary>The figures of the coupled-coil vectors by their names in the file; every one of them comes out of the network solver.</summary>
internal static class CoupledCoilFigures
{
    private const double Hertz = 60;
    private const double Omega = 2 * Math.PI * Hertz;

    public static Dictionary<string, double> Of(JsonElement inputs) => inputs switch
    {
        _ when Has(inputs, "R_rotor") => WithRotor(inputs),
        _ when Has(inputs, "E") => DeltaLoop(inputs),
        _ when Has(inputs, "M_over_L") => OpenPhases(inputs),
        _ when Has(inputs, "L_aid") || Has(inputs, "L_total") => FromTotals(inputs),
        _ when Has(inputs, "V") => SideBySide(inputs),
        _ when Has(inputs, "M") => Inductances(inputs),
        _ => OverCoupling(inputs),
    };

    private static bool Has(JsonElement inputs, string name) => inputs.TryGetProperty(name, out _);

    /// <summary>The mutual inductance from what both polarities read; fed back, the solver must read the same again.</summary>
    private static Dictionary<string, double> FromTotals(JsonElement inputs)
    {
        var aiding = Number(inputs, "L_aid", Number(inputs, "L_total"));
        var sum = Has(inputs, "L_opp") ? (aiding + Number(inputs, "L_opp")) / 2 : Number(inputs, "L1") + Number(inputs, "L2");
        var second = Has(inputs, "L2") ? Number(inputs, "L2") : sum / (Number(inputs, "ratio", 1) + 1);
        var (first, mutual) = (sum - second, (aiding - sum) / 2);
        Assert.Equal(aiding, Series(first, second, mutual, true), 1e-9 * aiding);
        Assert.Equal(sum - (2 * mutual), Series(first, second, mutual, false), 1e-9 * aiding);
        return new() { ["M"] = mutual, ["L1"] = first, ["L2"] = second, ["L_each"] = second, ["k"] = mutual / Math.Sqrt(first * second) };
    }

    private static Dictionary<string, double> Inductances(JsonElement inputs)
    {
        var (first, second) = (Number(inputs, "L1"), Number(inputs, "L2"));
        var mutuals = inputs.GetProperty("M");
        if (mutuals.ValueKind == JsonValueKind.Array)
        {
            return mutuals.EnumerateArray().SelectMany((mutual, at) => new[]
            {
                KeyValuePair.Create($"L_aid_{at + 1}", Series(first, second, mutual.GetDouble(), true)), KeyValuePair.Create($"L_opp_{at + 1}", Series(first, second, mutual.GetDouble(), false)),
            }).ToDictionary();
        }

        var m = mutuals.GetDouble();
        double Parallel(bool aiding) => Ohms(0, first, 0, second, m, false, aiding).Imaginary / Omega;
        return new() { ["L_aid"] = Series(first, second, m, true), ["L_opp"] = Series(first, second, m, false), ["L_par_aid"] = Parallel(true), ["L_par_opp"] = Parallel(false) };
    }

    private static Dictionary<string, double> OverCoupling(JsonElement inputs)
    {
        var (r, l) = (Number(inputs, "R_each"), Number(inputs, "L_each"));
        return new[] { 0, 0.2, 0.4, 0.6, 0.8, 0.9, 0.95 }.SelectMany(k => new[] { (true, true), (true, false), (false, true), (false, false) }.Select(way => KeyValuePair.Create(
            $"{k}.{(way.Item1 ? "Z_series" : "Z_par")}_{(way.Item2 ? "aid" : "opp")}", Ohms(r, l, r, l, k * l, way.Item1, way.Item2).Magnitude))).ToDictionary();
    }

    private static Dictionary<string, double> SideBySide(JsonElement inputs)
    {
        var figures = new Dictionary<string, double>();
        foreach (var way in new[] { "aid", "opp" })
        {
            var (first, second, line) = Parallel(inputs, way == "aid");
            figures[$"I1_{way}"] = first.Magnitude;
            figures[$"I1_{way}_deg"] = Angle(first);
            figures[$"I2_{way}"] = second.Magnitude;
            figures[$"I2_{way}_deg"] = Angle(second);
            figures[$"I_line_{way}"] = line.Magnitude;
            figures[$"I_line_{way}_deg"] = Angle(line);
            figures[$"Zmag_{way}"] = Number(inputs, "V") / line.Magnitude;
            figures[$"P_{way}"] = Number(inputs, "V") * line.Real;
            figures[$"I_loop_{way}"] = (first - second).Magnitude / 2;
        }

        figures["ratio_line_current"] = figures["I_line_opp"] / figures["I_line_aid"];
        return figures;
    }

    private static Dictionary<string, double> WithRotor(JsonElement inputs)
    {
        var (l, rotor) = (Number(inputs, "L_each"), Number(inputs, "L_rotor"));
        Complex Amps(bool aiding) => -Solved(
            [
                new Element.Source("V", "a", "0", Number(inputs, "V")), new Element.Inductor("1", "a", "m", l, Number(inputs, "R_each")),
                aiding ? new Element.Inductor("2", "m", "0", l, Number(inputs, "R_each")) : new Element.Inductor("2", "0", "m", l, Number(inputs, "R_each")),
                new Element.Inductor("cage", "0", "r", rotor), new Element.Resistor("bars", "r", "0", Number(inputs, "R_rotor")),
            ],
            [Of("1", "2", Number(inputs, "M"), l, l), Of("1", "cage", Number(inputs, "M_rotor"), l, rotor), Of("2", "cage", Number(inputs, "M_rotor"), l, rotor)]).Elements["V"].Amps;
        var figures = new Dictionary<string, double>();
        foreach (var (way, amps) in new[] { ("aid", Amps(true)), ("opp", Amps(false)) })
        {
            var ohms = Number(inputs, "V") / amps;
            figures[$"Z_{way}.re"] = ohms.Real;
            figures[$"Z_{way}.im"] = ohms.Imaginary;
            figures[$"Zmag_{way}"] = ohms.Magnitude;
            figures[$"angle_{way}_deg"] = Angle(ohms);
            figures[$"I_12V_{way}"] = amps.Magnitude;
            figures[$"P_12V_{way}"] = Number(inputs, "V") * amps.Real;
        }

        figures["ratio"] = figures["Zmag_aid"] / figures["Zmag_opp"];
        return figures;
    }

    private static Dictionary<string, double> DeltaLoop(JsonElement inputs)
    {
        var (volts, ohms) = (Number(inputs, "E"), Pair(inputs, "Z"));
        Element[] Loop(double turned) =>
        [
            new Element.Source("A", "1", "0", volts), new Element.Source("B", "2", "1", volts, -120), new Element.Source("C", "3", "2", volts, 120 + turned),
            new Element.Resistor("R", "3", "r", 3 * ohms.Real), new Element.Inductor("L", "r", "x", 3 * ohms.Imaginary / Omega),
        ];
        return new()
        {
            ["V_open_corner_ok"] = Solved(Loop(0), []).Nodes["3"].Magnitude,
            ["V_open_corner_reversed"] = Solved(Loop(180), []).Nodes["3"].Magnitude,
            ["I_loop"] = Solved([.. Loop(180), new Element.Switch("corner", "x", "0", true)], []).Elements["corner"].Amps.Magnitude,
        };
    }

    private static Dictionary<string, double> OpenPhases(JsonElement inputs)
    {
        var (l, k) = (Number(inputs, "L"), Number(inputs, "M_over_L"));
        Solution Fed(bool turned) => Solved(
            [
                new Element.Source("V", "a", "0", Number(inputs, "V")), new Element.Inductor("A", "a", "0", l), new Element.Inductor("B", "b", "star", l),
                turned ? new Element.Inductor("C", "star", "c", l) : new Element.Inductor("C", "c", "star", l),
            ],
            [new("A", "B", k), new("A", "C", k), new("B", "C", k)]);
        return new()
        {
            ["V_B"] = Fed(false).Elements["B"].Volts.Magnitude,
            ["V_BC_bucking"] = (Fed(false).Nodes["b"] - Fed(false).Nodes["c"]).Magnitude,
            ["V_BC_in_phase_series"] = (Fed(true).Nodes["b"] - Fed(true).Nodes["c"]).Magnitude,
        };
    }

    private static double Series(double first, double second, double mutual, bool aiding) => Ohms(0, first, 0, second, mutual, true, aiding).Imaginary / Omega;

    private static Complex Ohms(double r1, double l1, double r2, double l2, double mutual, bool series, bool aiding)
    {
        var (from, to) = series ? ("m", "0") : ("a", "0");
        (from, to) = aiding ? (from, to) : (to, from);
        return -1 / Solved(
            [new Element.Source("V", "a", "0", 1), new Element.Inductor("1", "a", series ? "m" : "0", l1, r1), new Element.Inductor("2", from, to, l2, r2)],
            [Of("1", "2", mutual, l1, l2)]).Elements["V"].Amps;
    }

    private static (Complex First, Complex Second, Complex Line) Parallel(JsonElement inputs, bool aiding)
    {
        var (l1, l2) = (Number(inputs, "L1"), Number(inputs, "L2"));
        var solved = Solved(
            [
                new Element.Source("V", "a", "0", Number(inputs, "V")), new Element.Inductor("1", "a", "0", l1, Number(inputs, "R1")),
                aiding ? new Element.Inductor("2", "a", "0", l2, Number(inputs, "R2")) : new Element.Inductor("2", "0", "a", l2, Number(inputs, "R2")),
            ],
            [Of("1", "2", Number(inputs, "M"), l1, l2)]);
        return (solved.Elements["1"].Amps, aiding ? solved.Elements["2"].Amps : -solved.Elements["2"].Amps, -solved.Elements["V"].Amps);
    }

    private static Coupling Of(string first, string second, double mutual, double one, double other) => new(first, second, mutual / Math.Sqrt(one * other));

    private static Solution Solved(IReadOnlyList<Element> elements, IReadOnlyList<Coupling> couplings)
    {
        var answer = NetworkSolver.Solve(new Network { Elements = elements, Couplings = couplings, Hertz = Hertz, Ground = "0", IslandsAllowed = true });
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }
}
