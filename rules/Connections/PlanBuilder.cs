using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>Turns a row that suits into a plan in the person's tags.</summary>
internal sealed class PlanBuilder(Layout layout, IReadOnlyDictionary<string, string> tags, PlanRequest request)
{
    private readonly int _phases = SupplyJudge.PhasesOf(request)!.Value;
    private readonly double _supply = request.Supply!.Volts!.Value;

    private bool Direct => request.Supply!.Hertz == 0;

    public Plan Build(SuitedRow suited)
    {
        var row = suited.Row;
        var wiring = new Wiring(layout, row);
        var windings = new WindingVolts(layout, row, tags, suited, _supply).Of(wiring.Chains(_phases));
        var joints = wiring.Joints.Select(joint => new PlanJoint(joint.Name, [.. joint.Markings.Select(marking => tags[marking])], Conductor(joint.Conductor))).ToList();
        var capped = CappedLeads(wiring);
        var plan = new Plan
        {
            Layout = layout,
            Row = row,
            SupplyVolts = _supply,
            PlateVolts = suited.PlateVolts,
            Phases = _phases,
            Joints = joints,
            Capped = [.. capped.Select(marking => tags[marking])],
            Windings = windings,
            LineAmps = suited.PlateAmps is { } amps ? LineAmps(amps, suited) : null,
            ExpectedOhms = new BeforePower(layout, wiring, CoilOhms.Of(layout, tags, request)).Readings(),
            Steps = [],
            Why = [],
            Notes = PlanNotes.Of(layout, row, request),
            Rotation = RotationOf(row),
            SeenFrom = row.Rotation is null ? null : request.Rotation is null ? row.SeenFrom : request.SeenFrom ?? row.SeenFrom,
            Reverse = Reversals.Of(layout, row, tags, Direct),
            Cautions = [],
            Outer = row.OuterPart is { } outer ? new OuterPart(outer.Kind, [tags[outer.From], tags[outer.To]]) : null,
            Circuit = CircuitDrawing.Of(layout, row, wiring, tags, joints, capped),
        };
        var words = new PlanWords(plan, suited, request);
        return plan with { Steps = words.Steps(), Why = words.Why(), Cautions = PlanCautions.Of(plan) };
    }

    private string? Conductor(string? inTable) => (inTable, Direct) switch
    {
        ("+", false) => "L1",
        ("-", false) => "L2",
        ("L1", true) => "+",
        ("L2", true) => "-",
        _ => inTable,
    };

    /// <summary>Every lead without a joint: a lead that lies open is capped.</summary>
    private List<string> CappedLeads(Wiring wiring)
    {
        var used = wiring.Joints.SelectMany(joint => joint.Markings).ToHashSet(StringComparer.Ordinal);
        return [.. layout.Leads.Select(lead => lead.Marking).Where(marking => !used.Contains(marking))];
    }

    private string? RotationOf(LayoutConnection row) => request.Rotation is null
        ? row.Rotation
        : RowChoice.Turned(row.Rotation, row.SeenFrom, request.SeenFrom);

    private static Quoted LineAmps(double amps, SuitedRow suited) => Quoted.Of(amps, "amp", "connections.plate-amps",
        new Source { Title = "the motor's own plate", Place = $"amps at {SupplyJudge.Volts(suited.PlateVolts)}", Basis = SourceBasis.Primary },
        new TrailStep("line amps at full load", "plate amps of this connection", SupplyJudge.Volts(suited.PlateVolts), Units.Text(amps, "amp")));
}
