using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>Searches for the one change to the joints that makes a connection right.</summary>
internal static class SmallestChange
{
    private const int MostLeads = 14;

    /// <summary>The first change that is right: two ends exchanged, a lead moved, two joints made one.</summary>
    public static Change? Of(FoundNodes nodes, ConnectionChecker checker)
    {
        var joints = Plain(nodes);
        var leads = joints.SelectMany(joint => joint.Leads).Order(StringComparer.Ordinal).ToList();
        if (leads.Count > MostLeads)
        {
            return null;
        }

        return Candidates(nodes, joints, [.. leads.Where(nodes.IsKnown)], [.. leads.Where(lead => !nodes.IsKnown(lead))]).FirstOrDefault(change =>
            checker.VerdictOf(nodes.Found with { Joints = change.Joints }) == Verdict.Correct);
    }

    /// <summary>The joints with every loose lead as a joint of its own, and joints of one conductor as one.</summary>
    private static List<FoundJoint> Plain(FoundNodes nodes)
    {
        var found = nodes.Found;
        var joined = found.Joints.Where(joint => joint.Leads.Count > 0 || joint.Conductor is not null)
            .GroupBy(joint => joint.Conductor ?? $"\u0001{string.Join(' ', joint.Leads)}", StringComparer.Ordinal)
            .Select(group => new FoundJoint([.. group.SelectMany(joint => joint.Leads).Distinct(StringComparer.Ordinal)], group.First().Conductor)).ToList();
        var named = joined.SelectMany(joint => joint.Leads).ToHashSet(StringComparer.Ordinal);
        var ends = found.Coils.SelectMany(coil => new[] { coil.From, coil.To }).ToList();
        var loose = ends.Where(end => !named.Contains(end) && ends.Count(other => other == end) == 1
            && FoundNodes.Parts(found).All(part => part.From != end && part.To != end));
        return [.. joined, .. loose.Select(end => new FoundJoint([end]))];
    }

    private static IEnumerable<Change> Candidates(FoundNodes nodes, List<FoundJoint> joints, List<string> leads, List<string> strays)
    {
        foreach (var stray in strays)
        {
            yield return new(Statement.Of("check.change-cap", ("lead", stray)), Moved(joints, stray, null));
        }

        foreach (var (joint, lead) in joints.SelectMany(joint => joint.Leads.Select(lead => (joint, lead))).Where(place => joints.Count(other => other.Leads.Contains(place.lead)) > 1))
        {
            yield return new(Statement.Of("check.change-take-out", ("lead", lead), ("joint", Name(joint, lead))), Without(joints, joint, lead));
        }

        foreach (var joint in joints.Where(joint => joint.Conductor is null && joint.Leads.Count > 2)) // of two, taking one out is enough
        {
            yield return new(Statement.Of("check.change-undo", ("joint", string.Join(" + ", joint.Leads))), [.. joints.Where(other => other != joint)]);
        }

        foreach (var line in nodes.MissingLines)
        {
            foreach (var joint in joints.Where(joint => joint.Conductor is null))
            {
                yield return new(Statement.Of("check.change-line", ("line", line), ("joint", Name(joint))), [.. joints.Select(other => other == joint ? joint with { Conductor = line } : other)]);
            }
        }

        foreach (var (one, other) in Pairs(joints))
        {
            yield return new(Statement.Of("check.change-join", ("one", Name(one)), ("other", Name(other))), Joined(joints, one, other));
        }

        foreach (var (one, other) in Pairs(leads))
        {
            yield return new(Statement.Of("check.change-swap", ("one", one), ("other", other)), Swapped(joints, one, other));
        }

        foreach (var lead in leads)
        {
            foreach (var joint in joints.Where(joint => !joint.Leads.Contains(lead)))
            {
                yield return new(Statement.Of("check.change-move", ("lead", lead), ("joint", Name(joint))), Moved(joints, lead, joint));
            }

            yield return new(Statement.Of("check.change-cap", ("lead", lead)), Moved(joints, lead, null));
        }
    }

    private static IEnumerable<(T One, T Other)> Pairs<T>(List<T> all) =>
        all.SelectMany((one, index) => all.Skip(index + 1).Select(other => (one, other)));

    private static List<FoundJoint> Without(List<FoundJoint> joints, FoundJoint from, string lead) =>
        [.. joints.Select(joint => joint == from ? joint with { Leads = [.. joint.Leads.Where(one => one != lead)] } : joint)];

    private static List<FoundJoint> Joined(List<FoundJoint> joints, FoundJoint one, FoundJoint other) =>
        one.Conductor is not null && other.Conductor is not null
            ? joints
            : [.. joints.Where(joint => joint != one && joint != other), new FoundJoint([.. one.Leads, .. other.Leads], one.Conductor ?? other.Conductor)];

    private static List<FoundJoint> Swapped(List<FoundJoint> joints, string one, string other) =>
        [.. joints.Select(joint => joint with { Leads = [.. joint.Leads.Select(lead => lead == one ? other : lead == other ? one : lead)] })];

    private static List<FoundJoint> Moved(List<FoundJoint> joints, string lead, FoundJoint? to) =>
        [.. joints.Select(joint => joint with { Leads = joint == to ? [.. joint.Leads, lead] : [.. joint.Leads.Where(one => one != lead)] })];

    private static string Name(FoundJoint joint, string? without = null) =>
        joint.Conductor ?? string.Join(" + ", joint.Leads.Where(lead => lead != without));
}
