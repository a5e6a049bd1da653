using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Simulation;

namespace WireCoach.Service.Tests.Conversations;

/// <summary>Any motor on a bench, written down by hand as coils with their axes; knows circuit laws and nothing of the rules.</summary>
/// <remarks>A coil is "role from to ohms degrees"; an end in lower case stays inside.</remarks>
internal sealed class WoundBench
{
    private const double Probes = 0.2;
    private const double RotorOhms = 3.1;

    private readonly List<(string Role, string From, string To, double Ohms, int Degrees)> _coils;
    private readonly CoupledCoils _field;
    private readonly Dictionary<string, string> _tagOf;

    /// <param name="coils">The coils.</param>
    /// <param name="seed">Hides the leads behind numbers.</param>
    /// <param name="capacitor">Whether the start coils are read through a capacitor until it is bridged.</param>
    public WoundBench(string coils, int seed, bool capacitor)
    {
        _coils = [.. coils.Split("; ").Select(coil => coil.Split(' ')).Select(coil => (coil[0], coil[1], coil[2],
            double.Parse(coil[3], CultureInfo.InvariantCulture), int.Parse(coil[4], CultureInfo.InvariantCulture)))];
        string[] marks = [.. _coils.SelectMany(coil => new[] { coil.From, coil.To }).Distinct(StringComparer.Ordinal).Where(end => char.IsUpper(end[0]))];
        var numbers = Enumerable.Range(1, marks.Length).Select(number => number.ToString(CultureInfo.InvariantCulture)).ToArray();
        new Random(seed).Shuffle(numbers);
        _tagOf = marks.Zip(numbers).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal);
        Tags = [.. numbers.OrderBy(int.Parse)];
        HasCapacitor = capacitor;
        _field = new([.. _coils.Select(coil => (Node(coil.From), Node(coil.To), coil.Degrees))], RotorOhms);
    }

    public IReadOnlyList<string> Tags { get; }

    public bool HasCapacitor { get; }

    /// <summary>What is printed on the capacitor.</summary>
    public string CapacitorUse { get; init; } = "run";

    /// <summary>Whether its control turns it both ways.</summary>
    public bool BothWays { get; init; }

    /// <summary>Whether it has speeds to choose from.</summary>
    public bool SeveralSpeeds => Tags.Count is 5 or 6 && (_coils.Count(coil => coil.Role == "run") > 2 || _coils.Exists(coil => coil.From == "T11"));

    /// <summary>Whether the capacitor's wires end on the leads.</summary>
    public bool CapacitorOutside { get; init; }

    /// <summary>Whether the capacitors are bridged for the ohmmeter.</summary>
    public bool Bridged { get; set; }

    /// <summary>What the meter shows between two leads; <see langword="null"/> is over-range.</summary>
    public double? Ohms(string from, string to, IReadOnlyList<string[]> ties) => from == "frame" || to == "frame" ? null
        : Ohmmeter(ties).Read(Joint(from, ties), Joint(to, ties)).Ohms is { } ohms ? Math.Round(ohms + Probes, ohms > 200 ? 0 : 1) : null;

    /// <summary>Whether the figure jumps while the shaft is turned.</summary>
    public bool JumpsWithShaft(string from, string to) =>
        _coils.Exists(coil => coil.Role == "armature" && new[] { Node(coil.From), Node(coil.To) }.Order().SequenceEqual(new[] { from, to }.Order()));

    public bool HasBrushes => _coils.Exists(coil => coil.Role is "armature" or "rotor");

    /// <summary>Whether a lead comes from the brushes on slip rings.</summary>
    public bool IsAtRings(string tag) => _coils.Exists(coil => coil.Role == "rotor" && Node(coil.From) == tag);

    public double Volts(TestSetup setup) => Math.Round(_field.Volts(setup), 1);

    public string Flick(TestSetup setup) => _field.Flick(setup);

    /// <summary>The volts of each coil with these joints on the lines, over the line volts, from its start to its end; the start branch draws little, as at speed.</summary>
    public IReadOnlyList<(string Role, System.Numerics.Complex Volts, int Degrees)> Powered(IReadOnlyList<(string[] Leads, string? Line)> joints)
    {
        var nodes = _coils.SelectMany(coil => new[] { Node(coil.From), Node(coil.To) }).Distinct(StringComparer.Ordinal).ToDictionary(node => node, node => node, StringComparer.Ordinal);
        foreach (var (leads, line) in joints)
        {
            foreach (var lead in leads)
            {
                nodes[lead] = line ?? $"joint {leads[0]}";
            }
        }

        var lines = joints.Select(joint => joint.Line).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        var net = new Rules.Circuits.Network
        {
            Elements =
            [
                .. lines.Contains("L3", StringComparer.Ordinal)
                    ? lines.Select((line, at) => (Rules.Circuits.Element)new Rules.Circuits.Element.Source($"line {line}", line, "ground", 1 / Math.Sqrt(3), -120 * (line[1] - '1')))
                    : [new Rules.Circuits.Element.Source("line", lines.Order(StringComparer.Ordinal).First(line => line is "L1" or "+"), "ground", 1),
                       new Rules.Circuits.Element.Source("return", lines.First(line => line is not ("L1" or "+")), "ground", 0)],
                .. _coils.Select((coil, at) => new Rules.Circuits.Element.Resistor($"coil {at}", nodes[Node(coil.From)], nodes[Node(coil.To)],
                    coil.Role switch { "start" or "shunt-field" => 1e5, "series-field" => 0.001, _ => 1 })),
            ],
            Hertz = 60,
            Ground = "ground",
            IslandsAllowed = true,
        };
        var solved = Rules.Circuits.NetworkSolver.Solve(net).Value!;
        return [.. _coils.Select((coil, at) => (coil.Role, solved.Elements[$"coil {at}"].Volts, coil.Degrees))];
    }

    private string Node(string end) => _tagOf.GetValueOrDefault(end, end);

    private static string Joint(string node, IReadOnlyList<string[]> ties) => ties.FirstOrDefault(tie => tie.Contains(node))?[0] ?? node;

    private SimulatedMotor Ohmmeter(IReadOnlyList<string[]> ties)
    {
        var motor = new SimulatedMotor { Layout = string.Empty };
        foreach (var (_, from, to, ohms, _) in _coils.Where(coil => Bridged || !HasCapacitor || coil.Role != "start"))
        {
            motor.Coil(Joint(Node(from), ties), Joint(Node(to), ties), ohms);
        }

        return motor;
    }
}
