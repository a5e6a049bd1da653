using WireCoach.Rules.Coaching;

namespace WireCoach.Service.Sessions;

/// <summary>What the log and the list keep of an assessment.</summary>
internal static class Conclusion
{
    public static SessionEvent.Concluded Of(Assessment assessment) => new(assessment.Status, assessment.Goal, null, []);

    public static bool Same(SessionEvent.Concluded now, SessionEvent.Concluded? before) =>
        before is not null && now.Status == before.Status && now.Goal == before.Goal && now.Layout == before.Layout
        && now.Causes.SequenceEqual(before.Causes, StringComparer.Ordinal);
}
