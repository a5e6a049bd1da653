using System.Numerics;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>A motor wired as a plan says, solved by a few lines of circuit law that share nothing with the planner.</summary>
/// <remarks>
/// It knows the insides of the motor and the joints, not the table. Coils are alike impedances; a start winding is a thousand times
/// higher, so that it follows the others, and so is a shunt field; a series field is lower; switches and protectors conduct, capacitors conduct as well (they are in series with the start winding).
/// </remarks>
internal sealed class Bench
{
    private readonly Dictionary<string, string> _parent = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Complex> _volts;

    public Bench(Layout layout, IReadOnlyDictionary<string, string> tags, Plan plan)
    {
        Layout = layout;
        foreach (var joint in plan.Joints)
        {
            foreach (var tag in joint.Leads)
            {
                Tie($"joint {joint.Name}", NodeOf(tags, tag));
            }

            if (joint.Conductor is { } conductor)
            {
                Tie($"joint {joint.Name}", $"line {conductor}");
            }
        }

        Lines = plan.Joints.Select(joint => joint.Conductor).OfType<string>().ToList();
        Shorted = Lines.Select(line => Root($"line {line}")).Distinct(StringComparer.Ordinal).Count() < Lines.Count;
        foreach (var part in layout.Parts)
        {
            Tie(part.From, part.To);
        }

        if (plan.Outer is { } outer)
        {
            Tie(NodeOf(tags, outer.Between[0]), NodeOf(tags, outer.Between[1]));
        }

        _volts = Solve(Lines.ToDictionary(line => Root($"line {line}"), line => Line(line, plan.Phases, plan.SupplyVolts), StringComparer.Ordinal));
    }

    public Layout Layout { get; }

    public IReadOnlyList<string> Lines { get; }

    public bool Shorted { get; }

    /// <summary>Volts of a coil's start against its finish.</summary>
    public Complex Volts(LayoutCoil coil) => _volts.GetValueOrDefault(Root(coil.From)) - _volts.GetValueOrDefault(Root(coil.To));

    /// <summary>What makes its field: the volts, but of a series field the current, which counts as the armature's volts.</summary>
    public Complex Effect(LayoutCoil coil) => coil.Role == "series-field" ? Volts(coil) * Siemens(coil) : Volts(coil);

    /// <summary>Whether current flows in it.</summary>
    public bool Carries(LayoutCoil coil) => Volts(coil).Magnitude > 1e-6;

    private static double Siemens(LayoutCoil coil) => coil.Role switch { "start" or "shunt-field" => 1e-4, "series-field" => 1e4, _ => 1 };

    private string NodeOf(IReadOnlyDictionary<string, string> tags, string tag) =>
        Layout.Leads.Where(lead => tags[lead.Marking] == tag).Select(lead => lead.Node ?? lead.Marking).Single();

    private string Root(string node)
    {
        while (_parent.TryGetValue(node, out var parent) && parent != node)
        {
            node = parent;
        }

        return node;
    }

    private void Tie(string one, string other) => _parent[Root(one)] = Root(other);

    private static Complex Line(string line, int phases, double volts) => phases == 3
        ? line == "N" ? 0 : Complex.FromPolarCoordinates(volts / Math.Sqrt(3), line switch { "L1" => 0, "L2" => -2, _ => 2 } * Math.PI / 3)
        : line is "L1" or "+" ? volts : 0;

    /// <summary>Kirchhoff's current law at every free node, by plain elimination; a node without any way to a line stays at zero.</summary>
    private Dictionary<string, Complex> Solve(Dictionary<string, Complex> known)
    {
        var branches = Layout.Coils.Select(coil => (From: Root(coil.From), To: Root(coil.To), Siemens: Siemens(coil))).Where(branch => branch.From != branch.To).ToList();
        var free = branches.SelectMany(branch => new[] { branch.From, branch.To }).Distinct(StringComparer.Ordinal).Where(node => !known.ContainsKey(node)).ToList();
        var rows = free.Select(_ => new Complex[free.Count + 1]).ToArray();
        foreach (var (from, to, siemens) in branches)
        {
            foreach (var (node, other) in new[] { (from, to), (to, from) })
            {
                if (free.IndexOf(node) is var at and >= 0)
                {
                    rows[at][at] += siemens;
                    if (known.TryGetValue(other, out var volts))
                    {
                        rows[at][free.Count] += siemens * volts;
                    }
                    else
                    {
                        rows[at][free.IndexOf(other)] -= siemens;
                    }
                }
            }
        }

        for (var pivot = 0; pivot < free.Count; pivot++)
        {
            for (var row = 0; row < free.Count && rows[pivot][pivot].Magnitude > 1e-12; row++)
            {
                var factor = row == pivot ? 0 : rows[row][pivot] / rows[pivot][pivot];
                for (var column = 0; column <= free.Count && factor != 0; column++)
                {
                    rows[row][column] -= factor * rows[pivot][column];
                }
            }
        }

        var solved = free.Select((node, at) => (node, Volts: rows[at][at].Magnitude > 1e-12 ? rows[at][free.Count] / rows[at][at] : 0));
        return known.Concat(solved.Select(one => KeyValuePair.Create(one.node, one.Volts))).ToDictionary(StringComparer.Ordinal);
    }
}
