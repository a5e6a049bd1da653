using System.Numerics;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Circuits;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Practice;

/// <summary>What the practice motor does when power comes on: the circuit at rest gives torque and current, against those of the right connection.</summary>
internal sealed class PowerUp(TradeKnowledge knowledge, Wound wound, CoupledModel model)
{
    private readonly TradeRule _rule = knowledge.Rules["practice-run"];

    /// <summary>The same motor without its fault: what the right connection would do.</summary>
    private readonly CoupledModel _sound = new(knowledge, wound with { Fault = null });

    private double LowVolts => wound.Machine.Volts[0];

    /// <summary>A first run of these joints on this supply.</summary>
    public Fact.Running Run(IReadOnlyList<Fact.Joint> joints, Fact.Supply supply)
    {
        var volts = supply.Volts ?? LowVolts;
        var fact = new Fact.Running { Volts = volts, How = FactEntry.Probe };
        var at = Joints(joints.Select(joint => (joint.Leads, joint.Conductor)));
        if (at.Lines.Count < 2)
        {
            return fact with { Amps = 0, Outcome = "nothing" };
        }

        var row = RowFor(at, volts);
        var rest = Rest(model, at, volts, OuterPart(at));
        if (rest is null)
        {
            return fact with { Amps = null, Outcome = "tripped" };
        }

        if (rest.Amps < 1e-3 || rest.ArmatureAmps is < 1e-3)
        {
            return fact with { Amps = Math.Round(rest.Amps, 1), Outcome = "nothing" }; // a field alone is heard by nobody
        }

        var right = Right(row);
        if (right is null || rest.Amps > _rule["trips-amps"] * right.Amps || OverVolts(at, volts, row, rest.Degrees))
        {
            return fact with { Amps = right is null ? null : AtStart(rest, right, row), Outcome = "tripped" };
        }

        var strength = Math.Abs(rest.Torque / right.Torque);
        return strength < _rule["hums-below"]
            ? fact with { Amps = AtStart(rest, right, row), Outcome = rest.ArmatureAmps is null ? "hummed" : "tripped" } // direct current does not hum, and nothing holds the current of an armature that stands
            : Turning(fact, row, volts, strength, rest.Torque * (row.Rotation is null ? Right(FirstLike(row)) ?? right : right).Torque > 0);
    }

    /// <summary>The high-voltage connection on the low supply: it turns, or it does not.</summary>
    public Fact.BenchTest Soft(TestSetup setup)
    {
        var at = Joints(setup.Tie.Select(tie => (tie, (string?)null)).Append(([setup.Drive[0]], "L1")).Append(([setup.Drive[1]], "L2")));
        var volts = setup.AppliedVolts ?? LowVolts;
        var rest = Rest(model, at, volts, null);
        var row = RowFor(at, volts);
        var right = Right(row);
        var ran = rest is not null && right is not null && Math.Abs(rest.Torque / right.Torque) >= _rule["hums-below"];
        return new Fact.BenchTest
        {
            Test = "soft-first-run",
            Drive = setup.Drive,
            Tie = setup.Tie,
            Read = setup.Read,
            AppliedVolts = setup.AppliedVolts,
            Outcome = ran ? "ran" : "hummed",
            How = FactEntry.Probe,
        };
    }

    private Fact.Running Turning(Fact.Running fact, LayoutConnection row, double volts, double strength, bool asRow)
    {
        var chance = new SeededSequence(wound.Seed, "run");
        var share = volts / (LowVolts * row.VoltsShare);
        var kind = wound.Machine.Hertz is null ? "direct-" : string.Empty;
        var synchronous = wound.Machine.Hertz is { } hertz ? 120 * hertz / (2 * Math.Floor(60 * hertz / wound.Machine.Rpm)) : wound.Machine.Rpm * 1.05;
        if (wound.Form.Family == "commutator" || synchronous < wound.Machine.Rpm)
        {
            synchronous = wound.Machine.Rpm * 1.1;
        }

        var rowClockwise = row.Rotation is null ? new SeededSequence(wound.Seed, "direction").Unit() < 0.5 || wound.Machine.Phases == 3
            : (row.Rotation == "clockwise") == (row.SeenFrom == "shaft-end");
        return fact with
        {
            Amps = Math.Round(PlateAmps(row) * share * chance.Between(_rule[$"{kind}no-load-low"], _rule[$"{kind}no-load-high"]), 1),
            Rpm = Math.Round(Pace(row) * (synchronous - (_rule["no-load-slip"] * (synchronous - wound.Machine.Rpm))), 0),
            Direction = asRow == rowClockwise ? "clockwise" : "counterclockwise",
            SeenFrom = "shaft-end",
            Outcome = strength < _rule["weak-below"] ? "slow" : "ran",
        };
    }

    /// <summary>Amps while it stands, on the scale of what motors of its kind draw at a start.</summary>
    private double AtStart(Standstill rest, Standstill right, LayoutConnection row)
    {
        var table = knowledge.Tables["starting-current"];
        var family = knowledge.Families.Values.First(kind => kind.Layouts.Contains(wound.Form.Id, StringComparer.Ordinal)).Id;
        var kind = table.Row(family) ?? table.Row(wound.Form.Family switch { "commutator" => "commutator", "three-phase" => "design-b", _ => family == "two-value" ? "capacitor-start" : "single-phase" })!;
        return Math.Round(rest.Amps / right.Amps * PlateAmps(row) * (table.Number(kind, "low")!.Value + table.Number(kind, "high")!.Value) / 2, 1);
    }

    private double PlateAmps(LayoutConnection row)
    {
        var at = wound.Machine.Volts.Select((plate, index) => (plate, index)).MinBy(pair => Math.Abs(pair.plate - (LowVolts * row.VoltsShare))).index;
        return wound.Machine.Amps[Math.Min(at, wound.Machine.Amps.Count - 1)];
    }

    /// <summary>Speed over that of the plate: half of it on twice the poles, and far above it without the field that holds it.</summary>
    private double Pace(LayoutConnection row) => row.For == "slow" ? 0.5
        : row.For == "first-winding" ? _rule["first-winding-speed"]
        : wound.Fault is { Id: "field-open" } open && wound.Coils.Any(coil => coil.Coil.Id == open.At && coil.Coil.Role == "shunt-field") ? _rule["runaway"]
        : 1;

    /// <summary>Whether a winding that works would stand above its volts.</summary>
    private bool OverVolts(Joined at, double volts, LayoutConnection row, double[]? degrees)
    {
        if (wound.Form.Family == "commutator")
        {
            return volts > _rule["trips-volts"] * LowVolts * row.VoltsShare;
        }

        var (elements, couplings) = model.Build(at.Node, wound.Hertz, turning: true, switchClosed: false, bridged: false, degrees);
        if (!Feed(elements, at, volts) || CoupledModel.Solve(elements, couplings, wound.Hertz, at.Ground).Value is not { } solution)
        {
            return true;
        }

        return wound.Coils.Select((coil, index) => (coil.Coil, Volts: solution.Elements[$"coil {index}"].Volts.Magnitude))
            .Where(coil => coil.Coil.Role is "run" or "phase" && !(coil.Coil.Id == wound.Fault?.At && wound.Fault.Id.StartsWith("open-", StringComparison.Ordinal))) // what is broken bears volts and no current
            .Any(coil => coil.Volts > _rule["trips-volts"] * LowVolts * row.RatedShares.GetValueOrDefault(coil.Coil.Group, coil.Coil.RatedShare));
    }

    private Standstill? Right(LayoutConnection row) => Rest(_sound, Joints(row), LowVolts * row.VoltsShare, row.OuterPart);

    /// <summary>Where no table gives a direction, the first row of its kind turns the way that the motor calls its own.</summary>
    private LayoutConnection FirstLike(LayoutConnection row) => wound.Form.Connections.FirstOrDefault(other => other.For == row.For && !other.Starting) ?? row;

    private Standstill? Rest(CoupledModel motor, Joined at, double volts, LayoutPart? outer)
    {
        if (wound.Form.Family == "commutator")
        {
            return Direct(motor, at, volts);
        }

        var slow = Alternating(motor, at, volts, outer, null);
        return wound.Form.Id == "two-speed-6" && Alternating(motor, at, volts, outer, Consequent()) is { } fast && slow is { } other && Math.Abs(fast.Torque) > Math.Abs(other.Torque)
            ? fast : slow;
    }

    private Standstill? Alternating(CoupledModel motor, Joined at, double volts, LayoutPart? outer, double[]? degrees)
    {
        var (elements, couplings) = motor.Build(at.Node, wound.Hertz, turning: false, switchClosed: true, bridged: false, degrees);
        if (outer is not null)
        {
            var (from, to) = (at.Node(wound.Form.NodeOf(outer.From)), at.Node(wound.Form.NodeOf(outer.To)));
            elements.Add(outer.Kind == "switch" ? new Element.Switch("outer", from, to, closed: true) : motor.CapacitorOf("outer", outer.Kind, from, to));
        }

        if (!Feed(elements, at, volts) || CoupledModel.Solve(elements, couplings, wound.Hertz, at.Ground).Value is not { } solution)
        {
            return null;
        }

        Complex direct = 0, across = 0;
        for (var index = 0; index < wound.Coils.Count; index++)
        {
            var coil = wound.Coils[index];
            var force = solution.Elements[$"coil {index}"].Amps * Math.Sqrt(coil.Ohm);
            var angle = (degrees?[index] ?? coil.Degrees) * Math.PI / 180;
            direct += force * Math.Cos(angle);
            across += force * Math.Sin(angle);
        }

        var (forward, backward) = (direct + (Complex.ImaginaryOne * across), direct - (Complex.ImaginaryOne * across));
        var torque = Math.Pow(forward.Magnitude, 2) - Math.Pow(backward.Magnitude, 2);
        if (wound.Form.Id == "shaded-pole-2")
        {
            torque = Math.Pow(direct.Magnitude, 2); // the shading rings start it, always the same way
        }

        return new(torque, Amps(solution), degrees);
    }

    private Standstill? Direct(CoupledModel motor, Joined at, double volts)
    {
        var (elements, _) = motor.Build(at.Node, 0, turning: true, switchClosed: true, bridged: false);
        if (!Feed(elements, at, volts) || CoupledModel.Solve(elements, [], 0, at.Ground).Value is not { } solution)
        {
            return null;
        }

        double field = 0, armature = 0;
        for (var index = 0; index < wound.Coils.Count; index++)
        {
            var amps = solution.Elements[$"coil {index}"].Amps.Real;
            field += wound.Coils[index].Coil.Role == "armature" ? 0 : amps * Math.Sqrt(wound.Coils[index].Ohm);
            armature += wound.Coils[index].Coil.Role == "armature" ? amps : 0;
        }

        return new(armature * (wound.Form.Id == "dc-permanent-magnet" ? 1 : field), Amps(solution), null) { ArmatureAmps = Math.Abs(armature) };
    }

    private static double Amps(Solution solution) =>
        solution.Elements.Where(element => element.Key.StartsWith("line ", StringComparison.Ordinal)).Select(element => element.Value.Amps.Magnitude).DefaultIfEmpty(0).Max();

    /// <summary>Adds the sources; false where two lines are tied together.</summary>
    private static bool Feed(List<Element> elements, Joined at, double volts)
    {
        var lines = at.Lines;
        if (lines.Distinct(StringComparer.Ordinal).Count() < lines.Count)
        {
            return false;
        }

        if (lines.Count == 3)
        {
            for (var phase = 0; phase < 3; phase++)
            {
                elements.Add(new Element.Source($"line {phase}", lines[phase], "\0neutral", volts / Math.Sqrt(3), -120 * phase));
            }
        }
        else if (lines.Count == 2)
        {
            elements.Add(new Element.Source("line 0", lines[0], lines[1], volts, 0));
        }

        return true;
    }

    /// <summary>In a winding that changes its poles the second half of each phase turns round and the phases change their order.</summary>
    private double[] Consequent() => [.. wound.Coils.Select(coil =>
        (((360 - coil.Degrees) % 360) + (coil.Coil.Id.EndsWith('2') ? 180 : 0)) % 360)];

    private LayoutConnection RowFor(Joined at, double volts)
    {
        var rows = wound.Form.Connections.Count > 0 ? wound.Form.Connections : knowledge.Layouts[wound.Form.Id].Connections;
        var same = rows.Where(row => !row.Starting && row.Lines.Count == at.Lines.Count && Shape(Joints(row)) == Shape(at)).ToList();
        return (same.Count > 0 ? same : rows.Where(row => !row.Starting)).MinBy(row => Math.Abs((LowVolts * row.VoltsShare) - volts))!;
    }

    private LayoutPart? OuterPart(Joined at)
    {
        var rows = wound.Form.Connections.Where(row => row.OuterPart is not null).ToList();
        return (rows.Find(row => Shape(Joints(row)) == Shape(at)) ?? rows.FirstOrDefault())?.OuterPart;
    }

    private string Shape(Joined at) => string.Join('|', wound.Form.Leads
        .GroupBy(lead => at.Node(wound.Form.NodeOf(lead.Marking)), StringComparer.Ordinal)
        .Select(joint => (at.Lines.Contains(joint.Key, StringComparer.Ordinal) ? "line " : string.Empty) + string.Join('+', joint.Select(lead => lead.Marking).Order(StringComparer.Ordinal)))
        .Order(StringComparer.Ordinal));

    private Joined Joints(LayoutConnection row) => Joints(row.Lines
        .Select(line => ((IReadOnlyList<string>)[.. line.Value.Select(mark => wound.TagOf[mark])], (string?)line.Key))
        .Concat(row.Joints.Select(joint => ((IReadOnlyList<string>)[.. joint.Select(mark => wound.TagOf[mark])], (string?)null))));

    private Joined Joints(IEnumerable<(IReadOnlyList<string> Leads, string? Conductor)> joints)
    {
        var joint = new Dictionary<string, string>(StringComparer.Ordinal);
        var lines = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var (leads, conductor) in joints)
        {
            var nodes = leads.Select(wound.NodeOf).Select(node => joint.GetValueOrDefault(node, node)).ToList();
            var name = conductor is not null && lines.TryGetValue(conductor, out var known) ? known : nodes[0];
            foreach (var key in joint.Where(pair => nodes.Contains(pair.Value, StringComparer.Ordinal)).Select(pair => pair.Key).Concat(nodes).ToList())
            {
                joint[key] = name;
            }

            if (conductor is not (null or "PE" or "earth"))
            {
                lines[conductor] = name;
            }
        }

        return new(joint, [.. lines.Values.Select(node => joint.GetValueOrDefault(node, node))]);
    }

    /// <summary>Torque on any scale, with its sense, line amps, and the axes of the poles that the connection makes.</summary>
    private sealed record Standstill(double Torque, double Amps, double[]? Degrees)
    {
        /// <summary>Amps through the brushes; <see langword="null"/> where it has none.</summary>
        public double? ArmatureAmps { get; init; }
    }

    /// <summary>Nodes by joint, and the joints that are on lines, in the order of the conductors' names.</summary>
    private sealed record Joined(IReadOnlyDictionary<string, string> Joint, IReadOnlyList<string> Lines)
    {
        public string Ground => Lines.Count == 3 ? "\0neutral" : Lines[1];

        public string Node(string node) => Joint.GetValueOrDefault(node, node);
    }
}
