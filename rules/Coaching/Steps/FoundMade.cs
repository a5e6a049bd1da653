using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>A connection that somebody made, judged as each motor that its leads may belong to.</summary>
/// <param name="Motors">What it amounts to in each.</param>
internal sealed record FoundMade(IReadOnlyList<FoundAs> Motors)
{
    /// <summary>The verdict that holds whichever motor it is; <see langword="null"/> where it is right in one and not in another.</summary>
    public CheckResult? Agreed => Motors.Select(motor => motor.Result.Verdict == Verdict.Correct).Distinct().Count() == 1 ? Merged() : null;

    /// <summary>The joints that put it right, whichever motor it is.</summary>
    public IReadOnlyList<FoundJoint>? Mended =>
        Agreed is { Change.Joints: var joints } ? joints : Plan is { } plan ? [.. plan.Joints.Select(joint => new FoundJoint(joint.Leads, joint.Conductor)), .. plan.Capped.Select(lead => new FoundJoint([lead]))] : null;

    /// <summary>The connection for this supply; <see langword="null"/> where there is none or it depends on the motor.</summary>
    public Plan? Plan => Motors.Select(motor => motor.Plan.Value).ToList() is [{ } first, .. var rest]
        && rest.TrueForAll(other => other is not null && Same(first, other)) ? first : null;

    private CheckResult Merged()
    {
        var (first, rest) = (Motors[0].Result, Motors.Skip(1).Select(motor => motor.Result).ToList());
        return rest.Count == 0 ? first : first with
        {
            Verdict = Motors.Max(motor => motor.Result.Verdict),
            Findings = [.. first.Findings.Where(one => rest.TrueForAll(other => other.Findings.Any(finding => $"{finding.Why}" == $"{one.Why}")))],
            Seen = [.. first.Seen.Where(one => rest.TrueForAll(other => other.Seen.Any(seen => $"{seen}" == $"{one}")))],
            Change = rest.TrueForAll(other => $"{other.Change?.What}" == $"{first.Change?.What}") ? first.Change : null,
        };
    }

    private static bool Same(Plan one, Plan other) =>
        one.Joints.Select(Joint).ToHashSet(StringComparer.Ordinal).SetEquals(other.Joints.Select(Joint));

    private static string Joint(PlanJoint joint) => $"{joint.Conductor} {string.Join(' ', joint.Leads.Order(StringComparer.Ordinal))}";
}

/// <summary>A connection judged as that of one motor.</summary>
/// <param name="Layout">The motor.</param>
/// <param name="Result">What it amounts to.</param>
/// <param name="Plan">How it is connected for this supply.</param>
internal sealed record FoundAs(Layout Layout, CheckResult Result, Statements.Answer<Plan> Plan);

/// <summary>The joints as they stand now: as told, and as changed since.</summary>
internal static class JointsMade
{
    /// <summary>The question by which a person says that the joints were changed.</summary>
    public const string Changed = "joints-changed";

    public const string AsSaid = "as-said";

    private const string Otherwise = "otherwise";

    /// <summary>The joints after all that was told.</summary>
    /// <param name="file">The case.</param>
    /// <param name="mended">The joints as they were to be changed, from those before.</param>
    public static IReadOnlyList<FoundJoint> Of(CaseFile file, Func<IReadOnlyList<FoundJoint>, IReadOnlyList<FoundJoint>?> mended)
    {
        var joints = new List<FoundJoint>();
        DateTimeOffset? turn = null;
        foreach (var fact in file.Facts)
        {
            switch (fact)
            {
                case Fact.Choice { Question: Changed, Option: Otherwise }:
                    joints.Clear();
                    break;
                case Fact.Choice { Question: Changed, Option: AsSaid }:
                    joints = [.. mended(joints) ?? joints];
                    break;
                case Fact.Joint joint when joint.At != turn && Restates(file, joint.At, joints):
                    joints = [new FoundJoint(joint.Leads, joint.Conductor)];
                    turn = joint.At;
                    break;
                case Fact.Joint joint:
                    joints.Add(new FoundJoint(joint.Leads, joint.Conductor));
                    turn = joint.At;
                    break;
                default:
                    break;
            }
        }

        return joints;
    }

    /// <summary>One turn that names every lead that is joined tells the whole connection anew.</summary>
    private static bool Restates(CaseFile file, DateTimeOffset? at, List<FoundJoint> joints)
    {
        var named = file.Joints.Where(joint => joint.At == at).SelectMany(joint => joint.Leads).ToHashSet(StringComparer.Ordinal);
        return joints.Count > 0 && joints.SelectMany(joint => joint.Leads).All(named.Contains);
    }
}
