using WireCoach.Rules.Connections;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>A connection that somebody made: the circuit that the joints amount to, and what it gives each winding.</summary>
internal static class CheckFound
{
    private const string Joints = "joints";

    public static Question? AskJoints(Workup work) =>
        work.File.Joints.Count > 0 || work.Skipped(Joints) ? null : work.Ask.Of(Joints);

    /// <summary>The verdict; <see langword="null"/> while the leads, the plate, the supply or the joints are not known.</summary>
    public static CheckResult? Check(Workup work)
    {
        if (work.File.Joints.Count == 0 || Known(work) is not var (layout, tags)
            || work.File.Plate.Volts.Count == 0 || work.File.Supply?.Volts is not { } volts)
        {
            return null;
        }

        var joints = work.File.Joints.Select(joint => new FoundJoint(joint.Leads, joint.Conductor)).ToList();
        return work.Rooms.Checker.Check(FoundMotor.Of(
            work.Rooms.Names, layout, tags, work.File.Plate.Volts.Min(), joints, volts, work.File.Supply.Phases ?? work.Phases ?? 1, FoundMotor.RowOf(layout, tags, joints))
            with { Hertz = work.File.Supply.Hertz is > 0 and var hertz ? hertz : null }).Value;
    }

    public static IEnumerable<Statement> Say(Workup work)
    {
        if (work.FoundConnection is not { } found)
        {
            yield break;
        }

        yield return found.Verdict switch
        {
            Verdict.Correct => Statement.Of("coach.found-correct"),
            Verdict.Incomplete => Statement.Of("coach.found-incomplete"),
            Verdict.Wrong => Statement.Of("coach.found-wrong"),
            _ => Statement.Of("coach.found-dangerous"),
        };
        foreach (var finding in found.Findings)
        {
            yield return finding.Why;
        }

        if (found.Verdict != Verdict.Correct)
        {
            foreach (var seen in found.Seen)
            {
                yield return seen;
            }
        }

        if (found.Change is { } change)
        {
            yield return change.What;
        }
    }

    /// <summary>Which lead carries which marking: proved by readings, or printed on every lead of a layout that has just these.</summary>
    private static (Layout Layout, IReadOnlyDictionary<string, string> Tags)? Known(Workup work)
    {
        if (work.Ends is { Assignment: { } proved, Layout: { } id })
        {
            return (work.Knowledge.Layouts[id], proved);
        }

        var printed = work.File.Leads.Where(lead => lead.Marking is not null).ToList();
        if (printed.Count == 0 || printed.Count != work.File.Leads.Count || printed.DistinctBy(lead => lead.Marking).Count() != printed.Count)
        {
            return null;
        }

        var named = printed.ToDictionary(lead => lead.Marking!, lead => lead.Tag, StringComparer.Ordinal);
        var fits = work.Knowledge.Layouts.Values
            .Where(layout => layout.Leads.Count == named.Count && (work.Phases is not { } phases || (phases == 3) == (layout.Family == "three-phase")))
            .Select(layout => (Layout: layout, Tags: LeadTags.ByMarking(layout, named)))
            .Where(fit => fit.Tags.Count == named.Count).ToList();
        return fits.Count == 1 ? fits[0] : null;
    }
}
