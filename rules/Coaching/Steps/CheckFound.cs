using WireCoach.Rules.Connections;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>A connection that somebody made: the circuit that the joints amount to, and what it gives each winding.</summary>
internal static class CheckFound
{
    private const string Joints = "joints";

    private const string DecidingReading = "found-reading";

    public static Question? AskJoints(Workup work) =>
        JointsOf(work).Count > 0 || work.Skipped(Joints) ? null : work.Ask.Of(Joints);

    /// <summary>All voltages of a plate that gave one only, where the leads make connections for several.</summary>
    public static Question? AskVolts(Workup work) =>
        Unrated(work) is not null && !work.Skipped("plate.volts") ? work.Ask.Of("plate.volts") : null;

    /// <summary>The reading that tells the motors apart in which the same joints are right in one and wrong in another.</summary>
    public static Question? Decide(Workup work) =>
        work.Made is { Motors.Count: > 1, Agreed: null or { Verdict: not Verdict.Correct } } && FoundLayouts.Deciding(work) is var (from, to)
            ? work.Ask.Reading(DecidingReading, from, to)
            : null;

    /// <summary>After a verdict other than right: whether the joints were changed.</summary>
    public static Question? AskChange(Workup work)
    {
        if (work.FoundConnection is null or { Verdict: Verdict.Correct } || work.Skipped(JointsMade.Changed)
            || work.File.Choices.GetValueOrDefault(JointsMade.Changed) == "left")
        {
            return null;
        }

        var asked = work.Ask.Of(JointsMade.Changed);
        return work.Made!.Mended is null ? asked with { Options = [.. asked.Options.Where(option => option.Id != JointsMade.AsSaid)] } : asked;
    }

    /// <summary>The id of the question for a reading between two leads.</summary>
    public static string ReadingOf(string from, string to) => $"{DecidingReading}.{from}.{to}";

    /// <summary>The verdict in every motor that it may be; <see langword="null"/> while the leads, the plate, the supply or the joints are not known.</summary>
    public static FoundMade? Check(Workup work) => JointsOf(work) is { Count: > 0 } joints ? Judged(work, joints) : null;

    public static IEnumerable<Statement> Say(Workup work)
    {
        if (work.Made is not { } made)
        {
            return Unrated(work) is { } unrated ? [unrated] : [];
        }

        var motors = string.Join(" / ", made.Motors.Select(motor => motor.Layout.Name));
        return made.Agreed is { } found
            ? [Verdicts(found.Verdict), .. made.Motors.Count > 1 ? [Statement.Of("coach.found-either", ("motors", motors))] : Array.Empty<Statement>(), .. Findings(made, found)]
            :
            [
                Statement.Of(
                    "coach.found-depends", ("motors", motors),
                    ("right", string.Join(" / ", made.Motors.Where(motor => motor.Result.Verdict == Verdict.Correct).Select(motor => motor.Layout.Name)))),
            ];
    }

    private static Statement Verdicts(Verdict verdict) => verdict switch
    {
        Verdict.Correct => Statement.Of("coach.found-correct"),
        Verdict.Incomplete => Statement.Of("coach.found-incomplete"),
        Verdict.Wrong => Statement.Of("coach.found-wrong"),
        _ => Statement.Of("coach.found-dangerous"),
    };

    private static IEnumerable<Statement> Findings(FoundMade made, CheckResult found)
    {
        IEnumerable<Statement> why = found.Findings.Select(finding => finding.Why);
        return found.Verdict == Verdict.Correct ? why : [.. why, .. found.Seen, .. WayOut(made, found)];
    }

    /// <summary>The smallest change; where no single one is enough, the connection for this supply or why there is none.</summary>
    private static IEnumerable<Statement> WayOut(FoundMade made, CheckResult found) =>
        found.Change is { } change ? [change.What]
        : made.Plan is { } plan ? [Statement.Of("coach.found-plan", ("joints", ChooseConnection.Joints(plan)))]
        : made.Motors.Count == 1 ? made.Motors[0].Plan.Problems.Select(problem => problem.Advice)
        : [];

    private static Statement? Unrated(Workup work) => work.File.Supply?.Volts is null || work.File.Plate.Volts.Count == 0 || JointsOf(work) is not { Count: > 0 } joints
        ? null
        : Planned(work, joints).Select(motor => Unrated(motor.Plan)).FirstOrDefault(advice => advice is not null);

    private static IReadOnlyList<FoundJoint> JointsOf(Workup work) => JointsMade.Of(work.File, joints => Judged(work, joints)?.Mended);

    private static FoundMade? Judged(Workup work, IReadOnlyList<FoundJoint> joints)
    {
        if (work.File.Plate.Volts.Count == 0 || work.File.Supply?.Volts is not { } volts)
        {
            return null;
        }

        var motors = Planned(work, joints).Select(motor => (motor.Layout, motor.Plan, Result: Checked(work, motor.Layout, motor.Tags, joints, volts)))
            .Where(motor => motor.Result is not null).Select(motor => new FoundAs(motor.Layout, motor.Result!, motor.Plan)).ToList();
        return motors.Count == 0 || motors.Exists(motor => Unrated(motor.Plan) is not null) ? null : new FoundMade(motors);
    }

    /// <summary>The motors that it may be, without those that the plate's voltages rule out.</summary>
    private static List<(Layout Layout, IReadOnlyDictionary<string, string> Tags, Answer<Plan> Plan)> Planned(Workup work, IReadOnlyList<FoundJoint> joints)
    {
        var all = FoundLayouts.Of(work)
            .Select(motor => (motor.Layout, motor.Tags, Plan: ChooseConnection.Plan(work, motor.Layout.Id, motor.Tags, joints.Any(joint => joint.Conductor == "L3") ? 3 : null))).ToList();
        var left = all.FindAll(motor => Advice(motor.Plan, "connections.plate-does-not-fit-layout") is null);
        return left.Count > 0 ? left : all;
    }

    /// <summary>What a winding is made for is not known where the plate gives one voltage of several.</summary>
    private static Statement? Unrated(Answer<Plan> plan) => Advice(plan, "connections.one-voltage-of-several");

    private static Statement? Advice(Answer<Plan> plan, string id) => plan.Problems.FirstOrDefault(problem => problem.Advice.Id == id)?.Advice;

    private static CheckResult? Checked(
        Workup work, Layout layout, IReadOnlyDictionary<string, string> tags, IReadOnlyList<FoundJoint> joints, double volts) =>
        work.Rooms.Checker.Check(FoundMotor.Of(
            work.Rooms.Names, layout, tags, work.File.Plate.Volts.Min(), joints, volts, work.File.Supply!.Phases ?? work.Phases ?? 1, FoundMotor.RowOf(layout, tags, joints))
            with { Hertz = work.File.Supply.Hertz is > 0 and var hertz ? hertz : null }).Value;
}
