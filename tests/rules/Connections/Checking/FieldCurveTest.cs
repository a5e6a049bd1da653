using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>Torque and current over the speed, against what the fields of a machine have to do.</summary>
public sealed class FieldCurveTest
{
    private static readonly FieldCurve Curve = new(Motors.Knowledge);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_right_connection_has_its_own_peak_and_start_and_a_low_supply_takes_the_square(string layout, string form, string row)
    {
        var right = Right(layout, form, row);
        var points = Curve.Of(right, right);
        Assert.Equal(100, points.Max(point => point.Torque), 1e-6);
        Assert.Equal(100, points[0].Amps, 1e-6);
        Assert.All(points, point => Assert.True(point.Torques.Low <= point.Torque + 1e-9 && point.Torque <= point.Torques.High + 1e-9));
        var low = Curve.Of(right with { SupplyVolts = 0.9 * right.SupplyVolts }, right);
        Assert.All(points.Zip(low), pair =>
        {
            Assert.Equal(0.81 * pair.First.Torque, pair.Second.Torque, 1e-3);
            Assert.Equal(0.9 * pair.First.Amps, pair.Second.Amps, 1e-3);
        });
    }

    [Fact]
    public void Without_a_start_branch_and_with_a_line_lost_there_is_no_torque_at_rest_but_some_at_speed()
    {
        var (single, three) = (Right("capacitor-start-dual-6", "", "low-clockwise"), Right("three-phase-9-star", "", "high-star"));
        var open = single with { Joints = [.. single.Joints.Select(joint => joint with { Leads = [.. joint.Leads.Where(lead => lead != "T8")] })] };
        var lost = three with { Joints = [.. three.Joints.Select(joint => joint.Conductor == "L3" ? joint with { Conductor = null } : joint)] };
        foreach (var (found, right) in new[] { (open, single), (lost, three) })
        {
            var points = Curve.Of(found, right);
            Assert.Equal(0, points[0].Torque, 0.5);
            Assert.True(points.Max(point => point.Torque) > 20);
        }

        Assert.Equal(86.6, Curve.Of(lost, three)[0].Amps, 0.1);
    }

    [Fact]
    public void A_weak_capacitor_costs_starting_torque_and_nothing_once_the_switch_has_opened()
    {
        var right = Right("capacitor-start-dual-6", "", "low-clockwise");
        var weak = Curve.Of(right with { Capacitors = [.. right.Capacitors.Select(capacitor => capacitor with { Left = 0.5 })] }, right);
        var sound = Curve.Of(right, right);
        Assert.InRange(weak[0].Torque / sound[0].Torque, 0.2, 0.85);
        Assert.Equal(sound[^2].Torque, weak[^2].Torque, 1e-6);
    }

    [Fact]
    public void A_reversed_half_draws_far_more_and_a_short_has_no_curve()
    {
        var right = Right("capacitor-start-dual-6", "", "high-clockwise");
        var turned = right with { Joints = [.. right.Joints.Select(joint => joint with { Leads = [.. joint.Leads.Select(lead => lead switch { "T1" => "T2", "T2" => "T1", _ => lead })] })] };
        Assert.InRange(Curve.Of(turned, right)[0].Amps, 150, 500);
        Assert.Empty(Curve.Of(right with { Joints = [.. right.Joints, new FoundJoint(["T1", "T4"])] }, right));
    }

    public static TheoryData<string, string, string> Rows()
    {
        var rows = new TheoryData<string, string, string>();
        foreach (var form in Motors.Knowledge.Layouts.Values.Where(layout => layout.Family is "single-phase" or "three-phase").OrderBy(layout => layout.Id, StringComparer.Ordinal).SelectMany(layout => layout.Forms()))
        {
            foreach (var row in form.Connections)
            {
                rows.Add(form.Id, form.Form ?? string.Empty, row.Id);
            }
        }

        return rows;
    }

    private static FoundConnection Right(string layout, string form, string row)
    {
        var motor = Motors.Knowledge.Layouts[layout].Forms().Single(one => (one.Form ?? string.Empty) == form);
        var line = motor.Connections.Single(one => one.Id == row);
        Dictionary<string, string> tags = [];
        return FoundMotor.Of(new(Motors.Knowledge.Sentences), motor, tags, 115, FoundMotor.JointsOf(line, tags), 115 * line.VoltsShare, motor.Family == "three-phase" ? 3 : 1, line);
    }
}
