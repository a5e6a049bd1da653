using WireCoach.Rules.Connections;
using WireCoach.WebUi.Shell;

namespace WireCoach.WebUi.Desk;

/// <summary>A line of what is to be joined: its name, its leads, and what they go to.</summary>
/// <param name="Name">The joint's name, or that of the part or the cap.</param>
/// <param name="Leads">The tags of the leads.</param>
/// <param name="GoesTo">Where they go.</param>
public sealed record JointLine(string Name, IReadOnlyList<string> Leads, string GoesTo);

/// <summary>What a plan joins, the same on the screen and on paper: the joints, a part outside the motor, what is capped.</summary>
public static class PlanJoints
{
    /// <summary>The lines in the order of the work.</summary>
    public static IReadOnlyList<JointLine> Of(Plan plan, PageWords words) =>
    [
        .. plan.Joints.Select(joint => new JointLine(joint.Name, joint.Leads, joint.Conductor ?? Beyond(plan, joint, words))),
        .. plan.Outer is { } outer ? [new JointLine(words.Term("part", outer.Kind), outer.Between, words["page.terminal-each"])] : Array.Empty<JointLine>(),
        .. plan.Capped.Select(lead => new JointLine(words["page.cap"], [lead], words["page.nothing-else"])),
    ];

    /// <summary>A lead by itself that no conductor goes to gets a part outside the motor.</summary>
    private static string Beyond(Plan plan, PlanJoint joint, PageWords words) => joint.Leads is [var lead] && plan.Outer is { } outer && outer.Between.Contains(lead, StringComparer.Ordinal)
        ? words.Fill("page.only-part", ("part", words.Term("part", outer.Kind)))
        : words["page.nothing-else"];
}
