using WireCoach.Rules.Connections.Checking;

namespace WireCoach.Rules.Tests.Connections.Checking;

/// <summary>Where capacitor and switch may stand.</summary>
public sealed class PartPlacesTest
{
    private static readonly ConnectionChecker Checker = new(Trade.Knowledge);

    [Theory]
    [InlineData("M1", "A1", "L1:M1,x L2:M2,A2", "x", Verdict.Correct)] // capacitor from the line to the start winding
    [InlineData("x", "A1", "L1:M1,x L2:M2,A2", "M1", Verdict.Correct)] // the other way round
    [InlineData("M1", "M2", "L1:M1,A1 L2:M2,A2", null, Verdict.Wrong)] // across the line
    [InlineData("M1", "q", "L1:A1,q L2:M2,A2", "q", Verdict.Wrong)] // in series with the run winding
    [InlineData("M1", "A1", "L1:M1,A1 L2:M2,A2", null, Verdict.Wrong)] // bridged
    [InlineData("A1", "q", "L1:M1 L2:M2,A2", "q", Verdict.Incomplete)] // the far end lies open
    public void A_run_capacitor_belongs_in_series_with_the_start_winding(string from, string to, string joints, string? lead, Verdict verdict)
    {
        _ = lead;
        var result = Checker.Check(Motor(joints, capacitor: new(from, to, 10))).Value!;
        Assert.Equal(verdict, result.Verdict);
    }

    [Fact]
    public void A_capacitor_in_the_line_is_misplaced_and_leaves_the_one_of_the_start_branch_in_circuit()
    {
        var found = Connected.Of(Connected.Split, "L1:p L2:M2,A2 ~:M1,s", phases: 1) with { Capacitors = [new("p", "M1", 10), new("s", "A1", 10)] };
        Assert.Equal("capacitor-misplaced Wrong main", Connected.Told(Connected.Checked(found)));
    }

    [Theory]
    [InlineData("L1:1,8 L2:4,5 ~:2,3,6,7", true)]
    [InlineData("L1:1,7 L2:4,5 ~:2,3,6,8", true)]
    [InlineData("L1:1,8 L2:4,6 ~:2,3,5,7", true)]
    [InlineData("L1:1,7 L2:4,6 ~:2,3,5,8", true)]
    [InlineData("L1:1,8 L2:4,5 ~:2,3 ~:6,7", false)] // a string of their own
    [InlineData("L1:1,6,8 L2:4 ~:2,3,5,7", false)] // side by side
    [InlineData("L1:1,6,7 L2:4 ~:2,3,5,8", false)]
    [InlineData("L1:1 L2:4,5 ~:2,3,6", false)] // the other half lies loose
    public void Start_halves_that_meet_where_the_run_halves_meet_stay_fed(string joints, bool fed) =>
        Assert.Equal(fed, Connected.Checked(Connected.Of([.. Connected.AllHalves.Select(coil => coil with { RatedVolts = 115 })], joints, phases: 1)).Findings.Any(finding => finding.Rule == "start-stays-fed"));

    [Theory]
    [InlineData("A1", "q", "L1:M1,q L2:M2,A2", Verdict.Correct)]
    [InlineData("M1", "q", "L1:A1,q L2:M2,A2", Verdict.Wrong)]
    [InlineData("A1", "q", "L1:M1,A1,q L2:M2,A2", Verdict.Wrong)]
    [InlineData("M1", "M2", "L1:M1,A1 L2:M2,A2", Verdict.Dangerous)]
    public void A_start_switch_belongs_in_series_with_the_start_winding(string from, string to, string joints, Verdict verdict) =>
        Assert.Equal(verdict, Checker.Check(Motor(joints, contact: new(from, to))).Value!.Verdict);

    [Fact]
    public void Two_alike_windings_may_change_places_behind_the_capacitor_and_turn_the_other_way()
    {
        CheckResult Of(string line) => Checker.Check(new FoundConnection
        {
            Coils = [new("one", "C", "X", "run", 230, "main", 20), new("two", "C", "Y", "run", 230, "start", 20)],
            Joints = [new([line], "L1"), new(["C"], "L2")],
            SupplyVolts = 230,
            Phases = 1,
            Hertz = 50,
            Capacitors = [new("X", "Y", 10)],
        }).Value!;
        var (one, other) = (Of("X"), Of("Y"));
        Assert.Equal((Verdict.Correct, Verdict.Correct), (one.Verdict, other.Verdict));
        Assert.Equal((FieldRotation.MainFollowsStart, FieldRotation.StartFollowsMain), (one.Rotation, other.Rotation));
    }

    [Fact]
    public void Two_windings_straight_on_the_line_do_not_turn_without_a_capacitor()
    {
        var found = Motor("L1:M1,A1 L2:M2,A2");
        var alike = found with { Coils = [.. found.Coils.Select(coil => coil with { Role = "run", Ohms = 20 })] };
        Assert.NotEqual(Verdict.Dangerous, Checker.Check(alike).Value!.Verdict);
    }

    [Fact]
    public void Two_start_halves_whose_middle_is_tied_to_the_run_halves_stay_fed_past_the_switch()
    {
        var result = Checker.Check(BenchMotor.EightHigh.Found(BenchMotor.EightHigh.Nets("L1:1,8 L2:4,5 2,3,6,7"))).Value!;
        Assert.Equal(Verdict.Wrong, result.Verdict);
        Assert.Contains(result.Findings, finding => finding.Rule == "start-stays-fed");
        Assert.NotNull(Checker.Check(BenchMotor.EightHigh.Found(BenchMotor.EightHigh.Nets("L1:1,8 L2:4,5 2,3 6,7"))).Value!.Rotation);
    }

    [Fact]
    public void The_high_connection_on_the_low_supply_gives_every_coil_half_its_volts()
    {
        var result = Checker.Check(BenchMotor.SixHigh.Found(BenchMotor.SixHigh.Nets(BenchMotor.SixHigh.Tables[0])) with { SupplyVolts = 115 }).Value!;
        Assert.Equal(Verdict.Wrong, result.Verdict);
        Assert.All(result.Coils, coil => Assert.Equal(50, coil.PercentOfRated!.Value, 0.1));
    }

    [Fact]
    public void An_opposed_half_is_said_with_its_growl()
    {
        var result = Checker.Check(BenchMotor.SixHigh.Found(BenchMotor.SixHigh.Nets("L1:2 L2:4,5 1,3,8"))).Value!;
        Assert.InRange(result.StartingTimes!.Value, 2, 5);
        Assert.Contains(result.Seen, said => said.Id == "check.seen-growl");
    }

    [Theory]
    [InlineData("DV6 high")]
    [InlineData("DV6 low")]
    [InlineData("DV8 high")]
    [InlineData("DV8 low")]
    [InlineData("SP4")]
    public void Both_rows_of_a_table_turn_opposite_ways(string name)
    {
        var motor = BenchMotor.All.Single(one => one.Name == name);
        Assert.Equal(
            [FieldRotation.MainFollowsStart, FieldRotation.StartFollowsMain],
            motor.Tables.Select(table => Checker.Check(motor.Found(motor.Nets(table))).Value!.Rotation!.Value));
    }

    private static FoundConnection Motor(string joints, FoundCapacitor? capacitor = null, FoundSwitch? contact = null) => new()
    {
        Coils = [new("main", "M1", "M2", "run", 230, "main", 10), new("start", "A1", "A2", "start", 230, "start", 25)],
        Joints =
        [
            .. joints.Split(' ').Select(joint => joint.Split(':')).Select(joint => new FoundJoint(joint[1].Split(','), joint[0] == "-" ? null : joint[0])),
        ],
        SupplyVolts = 230,
        Phases = 1,
        Hertz = 60,
        Capacitors = capacitor is null ? [] : [capacitor],
        Switches = contact is null ? [] : [contact],
    };
}
