using WireCoach.Rules.Coaching;
using WireCoach.Rules.Windings;

namespace WireCoach.Service.Sessions;

/// <summary>What the log and the list keep of an assessment.</summary>
internal static class Conclusion
{
    private const int MostCauses = 3;

    public static SessionEvent.Concluded Of(Assessment assessment) => new(
        assessment.Status,
        assessment.Goal,
        assessment.Identification is { Status: IdentificationStatus.Identified, Layouts: [var layout, ..] } ? layout.Id : null,
        [.. assessment.Causes.Take(MostCauses).Select(cause => cause.Id)]);

    public static bool Same(SessionEvent.Concluded now, SessionEvent.Concluded? before) =>
        before is not null && now.Status == before.Status && now.Goal == before.Goal && now.Layout == before.Layout
        && now.Causes.SequenceEqual(before.Causes, StringComparer.Ordinal);
}
