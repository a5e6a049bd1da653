using System.Numerics;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>Every single slip on a plan, and whether the bench's own circuit laws still see the same motor.</summary>
internal sealed class Slips
{
    private readonly Plan _plan;
    private readonly Dictionary<string, string> _tags;
    private readonly Bench _right;

    public Slips(Plan plan)
    {
        (_plan, _tags) = (plan, plan.Layout.Leads.ToDictionary(lead => lead.Marking, lead => lead.Marking, StringComparer.Ordinal));
        _right = new Bench(plan.Layout, _tags, plan);
    }

    /// <summary>Two leads exchanged; a lead left off; a lead in another joint; two joints without the same conductor made one.</summary>
    public IEnumerable<(string Slip, IReadOnlyList<FoundJoint> Joints)> All()
    {
        var joints = _plan.Joints.Select(joint => new FoundJoint(joint.Leads, joint.Conductor)).Concat(_plan.Capped.Select(lead => new FoundJoint([lead]))).ToList();
        var leads = joints.SelectMany(joint => joint.Leads).ToList();
        foreach (var (one, other) in leads.SelectMany((one, at) => leads.Skip(at + 1).Select(other => (one, other))))
        {
            yield return ($"{one} and {other} exchanged", [.. joints.Select(joint => joint with { Leads = [.. joint.Leads.Select(lead => lead == one ? other : lead == other ? one : lead)] })]);
        }

        foreach (var lead in leads)
        {
            List<FoundJoint> without = [.. joints.Select(joint => joint with { Leads = [.. joint.Leads.Where(one => one != lead)] })];
            yield return ($"{lead} left off", [.. without, new FoundJoint([lead])]);
            foreach (var to in without.Where(joint => joint.Leads.Count > 0 || joint.Conductor is not null))
            {
                yield return ($"{lead} moved to {string.Join('+', to.Leads)}", [.. without.Select(joint => joint == to ? joint with { Leads = [.. joint.Leads, lead] } : joint)]);
            }
        }

        foreach (var (one, other) in joints.SelectMany((one, at) => joints.Skip(at + 1).Select(other => (one, other))))
        {
            yield return ($"{string.Join('+', one.Leads)} joined with {string.Join('+', other.Leads)}", [.. joints, new FoundJoint([one.Leads[0], other.Leads[0]])]);
        }
    }

    /// <summary>Every coil still works at its volts, coils of one axis still add up, and three phases still turn one way.</summary>
    public bool IsHarmless(IReadOnlyList<FoundJoint> joints)
    {
        var slipped = new Bench(_plan.Layout, _tags, _plan with { Joints = [.. joints.Select((joint, index) => new PlanJoint($"J{index + 1}", joint.Leads, joint.Conductor))], Capped = [] });
        return !slipped.Shorted && _plan.Layout.Coils.All(coil => Math.Abs(slipped.Effect(coil).Magnitude - _right.Effect(coil).Magnitude) < 1e-3 * _plan.SupplyVolts)
            && _plan.Layout.Coils.Where(_right.Carries).GroupBy(Group).All(axis => axis.All(coil => Same(slipped, axis.First(), coil)))
            && (_plan.Phases == 1 || Turns(slipped));
    }

    private static string Group(LayoutCoil coil) => coil.Role switch { "armature" => "armature", "series-field" or "shunt-field" => "field", "start" => "start", _ => $"{coil.Axis}" };

    private bool Same(Bench slipped, LayoutCoil first, LayoutCoil coil) => Near(
        slipped.Effect(coil) * Complex.Conjugate(slipped.Effect(first)), _right.Effect(coil) * Complex.Conjugate(_right.Effect(first)));

    /// <summary>The three axes follow each other by the same turn, in one order or the other.</summary>
    private bool Turns(Bench slipped)
    {
        var axes = _plan.Layout.Coils.Where(_right.Carries).DistinctBy(coil => coil.Axis).ToList();
        Complex[] Steps(Bench bench) => [.. axes.Select((coil, at) => bench.Effect(coil) * Complex.Conjugate(bench.Effect(axes[(at + 1) % axes.Count])))];
        var (before, after) = (Steps(_right), Steps(slipped));
        return before.Zip(after).All(step => Near(step.First, step.Second)) || before.Zip(after).All(step => Near(step.First, Complex.Conjugate(step.Second)));
    }

    private bool Near(Complex one, Complex other) => (one - other).Magnitude < 1e-3 * _plan.SupplyVolts * _plan.SupplyVolts;
}
