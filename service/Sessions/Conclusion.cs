using WireCoach.Rules.Coaching;
using WireCoach.Rules.Windings;
using WireCoach.WebUi.Desk;

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

    /// <summary>What the same facts lead to now otherwise than it was decided then.</summary>
    public static IReadOnlyList<Difference> Differences(SessionEvent.Concluded? then, Assessment today)
    {
        if (then is null)
        {
            return [];
        }

        var now = Of(today);
        var pairs = new Difference[]
        {
            new("status", [then.Status], [now.Status]),
            new("goal", Given(then.Goal), Given(now.Goal)),
            new("layout", Given(then.Layout), Given(now.Layout)),
            new("cause", then.Causes, now.Causes),
        };
        return [.. pairs.Where(pair => !pair.Then.SequenceEqual(pair.Now, StringComparer.Ordinal))];
    }

    private static IReadOnlyList<string> Given(string? id) => id is null ? [] : [id];

    public static bool Same(SessionEvent.Concluded now, SessionEvent.Concluded? before) =>
        before is not null && now.Status == before.Status && now.Goal == before.Goal && now.Layout == before.Layout
        && now.Causes.SequenceEqual(before.Causes, StringComparer.Ordinal);
}
