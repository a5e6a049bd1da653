using WireCoach.Rules.Cases;
using WireCoach.Rules.Circuits;

namespace WireCoach.Simulation;

/// <summary>Stator coils that share flux, and a cage at rest as two shorted coils at right angles; solved as a network.</summary>
internal sealed class CoupledCoils(IReadOnlyList<(string From, string To, int Degrees)> coils, double rotorOhms, double ohms = 0.8, bool ownPoles = false, double stray = 0, IReadOnlyList<int>? arcs = null)
{
    private const double Henries = 0.04;
    private const double StatorShare = 0.9;
    private const double RotorShare = 0.92;

    /// <summary>Volts in a like coil on the same axis over the volts applied.</summary>
    public static double Coupling(double rotorOhms) =>
        new CoupledCoils([("a", "b", 0), ("c", "d", 0)], rotorOhms).Volts(new(["a", "b"], [], ["c", "d"], 1));

    /// <summary>The magnitude of the volts read.</summary>
    public double Volts(TestSetup setup) => Solve(setup, new Element.Source("feed", Node(setup.Drive[0], setup), Node(setup.Drive[1], setup), setup.AppliedVolts ?? 1.5)).Magnitude;

    /// <summary>Which way a meter kicks on make.</summary>
    public string Flick(TestSetup setup)
    {
        var volts = Solve(setup, new Element.Source("feed", Node(setup.Drive[0], setup), Node(setup.Drive[1], setup), 1));
        return volts.Magnitude < 0.08 ? "no-kick" : volts.Real > 0 ? "up-on-make" : "down-on-make";
    }

    /// <summary>Ohms of the impedance between the leads read.</summary>
    public double Impedance(TestSetup setup)
    {
        var solution = NetworkSolver.Solve(Net(setup, new Element.Source("feed", Node(setup.Read[0], setup), Node(setup.Read[1], setup), 1)));
        return 1 / solution.Value!.Elements["feed"].Amps.Magnitude;
    }

    private System.Numerics.Complex Solve(TestSetup setup, Element.Source feed)
    {
        var net = Net(setup, feed);
        var meter = new Element.Resistor("meter", Node(setup.Read[0], setup), Node(setup.Read[1], setup), 1e7);
        var solved = NetworkSolver.Solve(net with { Elements = [.. net.Elements, meter] });
        return solved.Value?.Elements["meter"].Volts ?? throw new InvalidOperationException($"{string.Join("; ", solved.Problems.Select(problem => $"{problem.Field} {problem.Advice}"))}: {string.Join(", ", coils)}; {string.Join('-', setup.Drive)} {string.Join('-', setup.Read)}");
    }

    private Network Net(TestSetup setup, Element.Source feed)
    {
        var elements = new List<Element> { feed };
        var couplings = new List<Coupling>();
        for (var one = 0; one < coils.Count; one++)
        {
            elements.Add(new Element.Inductor($"coil {one}", Node(coils[one].From, setup), Node(coils[one].To, setup), Henries, ohms));
            for (var other = 0; other < one; other++)
            {
                couplings.Add(new($"coil {one}", $"coil {other}", Share(one, other) * Cos(coils[one].Degrees - coils[other].Degrees)));
            }
        }

        foreach (var axis in new[] { 0, 90 })
        {
            foreach (var poles in Enumerable.Range(0, coils.Count).Select(Arc).Distinct())
            {
                elements.Add(new Element.Inductor($"cage {axis} {poles}", $"cage {axis} {poles}", $"cage end {axis} {poles}", Henries));
                elements.Add(new Element.Resistor($"cage ohms {axis} {poles}", $"cage {axis} {poles}", $"cage end {axis} {poles}", rotorOhms));
                couplings.AddRange(Enumerable.Range(0, coils.Count).Where(coil => poles == Arc(coil))
                    .Select(coil => new Coupling($"coil {coil}", $"cage {axis} {poles}", RotorShare * Cos(coils[coil].Degrees - axis))));
            }
        }

        return new() { Elements = elements, Couplings = couplings, Hertz = 60, Ground = feed.To, IslandsAllowed = true };
    }

    /// <summary>The stretch of poles that a coil lies on.</summary>
    private int Arc(int coil) => !ownPoles ? 0 : arcs?[coil] ?? coil;

    private double Share(int one, int other) => Arc(one) == Arc(other) ? StatorShare : stray;

    private static string Node(string lead, TestSetup setup) => setup.Tie.FirstOrDefault(tie => tie.Contains(lead, StringComparer.Ordinal)) is { } tie ? tie[0] : lead;

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);
}
