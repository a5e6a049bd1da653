using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>Every row of every layout, made as its table says.</summary>
public sealed class FoundMotorTest
{
    private const double Low = 115;
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly ConnectionChecker Checker = new(Knowledge);
    private static readonly Dictionary<string, string> NoTags = [];

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_row_of_the_table_is_right(string layout, string form, string row)
    {
        var (motor, line) = Find(layout, form, row);
        var result = Checker.Check(Made(motor, line, FoundMotor.JointsOf(line, NoTags))).Value!;
        Assert.Equal([], result.Findings.Where(finding => finding.Severity > Severity.Note).Select(finding => $"{finding.Rule} {string.Join(' ', finding.About)}"));
        Assert.Equal(Verdict.Correct, result.Verdict);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_order_in_which_the_coils_are_listed_changes_nothing(string layout, string form, string row)
    {
        var (motor, line) = Find(layout, form, row);
        var found = Made(motor, line, FoundMotor.JointsOf(line, NoTags));
        var (one, other) = (Checker.Check(found).Value!, Checker.Check(found with { Coils = [.. found.Coils.Reverse()] }).Value!);
        Assert.Equal((one.Verdict, one.Rotation, one.PhaseOrder), (other.Verdict, other.Rotation, other.PhaseOrder));
        Assert.Equal(one.Coils.Select(Shown), other.Coils.Reverse().Select(Shown));

        static string Shown(CheckedCoil coil) => $"{coil.Id} {coil.Volts:F3} {coil.PercentOfRated:F3}";
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_same_row_with_one_lead_left_off_is_not(string layout, string form, string row)
    {
        var (motor, line) = Find(layout, form, row);
        var joints = FoundMotor.JointsOf(line, NoTags);
        foreach (var lead in line.Lines.Values.SelectMany(leads => leads))
        {
            var off = joints.Select(joint => joint with { Leads = [.. joint.Leads.Where(other => other != lead)] }).Append(new FoundJoint([lead])).ToList();
            Assert.NotEqual(Verdict.Correct, Checker.Check(Made(motor, line, off)).Value!.Verdict);
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_row_is_known_by_its_joints_whatever_the_order_of_the_conductors(string layout, string form, string row)
    {
        var (motor, line) = Find(layout, form, row);
        var joints = FoundMotor.JointsOf(line, NoTags);
        var conductors = joints.Select(joint => joint.Conductor).OfType<string>().ToList();
        var turned = joints.Select(joint => joint with { Conductor = joint.Conductor is { } one ? conductors[(conductors.IndexOf(one) + 1) % conductors.Count] : null, Leads = [.. joint.Leads.Reverse()] }).Reverse().ToList();
        var known = FoundMotor.RowOf(motor, NoTags, turned);
        if (line.Starting)
        {
            Assert.Null(known);
            return;
        }

        Assert.Equal(Verdict.Correct, Checker.Check(Made(motor, known!, turned)).Value!.Verdict);
        Assert.Null(FoundMotor.RowOf(motor, NoTags, [.. turned.SkipLast(1)]));
        Assert.Equal(known, FoundMotor.RowOf(motor, NoTags, [.. turned.Where(joint => joint.Conductor is not null || joint.Leads.Count > 1)])); // a lead alone counts for nothing
        Assert.Equal(known, FoundMotor.RowOf(motor, NoTags, [.. turned.SelectMany(joint => joint.Conductor is null ? [joint] : joint.Leads.Select(lead => joint with { Leads = [lead] }))]));
        Assert.Null(FoundMotor.RowOf(motor, NoTags, [.. turned.Select(joint => joint.Conductor == conductors[0] ? joint with { Conductor = null } : joint)]));
    }

    [Fact]
    public void Tags_may_be_called_as_anything()
    {
        var (motor, line) = Find("capacitor-start-dual-6", string.Empty, "high-clockwise");
        var tags = new Dictionary<string, string> { ["T1"] = "s1", ["T2"] = "red", ["T3"] = "3", ["T4"] = "L1", ["T5"] = "n", ["T8"] = "T1" };
        var found = FoundMotor.Of(new(Knowledge.Sentences), motor, tags, Low, FoundMotor.JointsOf(line, tags), 230, 1, line);
        Assert.Equal(Verdict.Correct, Checker.Check(found).Value!.Verdict);
    }

    public static TheoryData<string, string, string> Rows()
    {
        var rows = new TheoryData<string, string, string>();
        foreach (var form in Knowledge.Layouts.Values.OrderBy(layout => layout.Id, StringComparer.Ordinal).SelectMany(layout => layout.Forms()))
        {
            foreach (var row in form.Connections)
            {
                rows.Add(form.Id, form.Form ?? string.Empty, row.Id);
            }
        }

        return rows;
    }

    private static (Layout Motor, LayoutConnection Row) Find(string layout, string form, string row)
    {
        var motor = Knowledge.Layouts[layout].Forms().Single(one => (one.Form ?? string.Empty) == form);
        return (motor, motor.Connections.Single(one => one.Id == row));
    }

    private static FoundConnection Made(Layout motor, LayoutConnection row, IReadOnlyList<FoundJoint> joints) =>
        FoundMotor.Of(new(Knowledge.Sentences), motor, NoTags, Low, joints, Low * row.VoltsShare, motor.Family == "three-phase" ? 3 : 1, row);
}
