using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>What sessions amount to.</summary>
internal static class FiguresFold
{
    public static Figures Of(IReadOnlyList<SessionSummary> sessions) => new()
    {
        Sessions = sessions.Count,
        ByCause = Count(sessions.Select(session => session.Causes.Count == 0 ? null : session.Causes[0])),
        ByLayout = Count(sessions.Select(session => session.Layout)),
        ByStatus = Count(sessions.Select(session => session.Status)),
        ByRole = Count(sessions.Select(session => session.Role.ToString().ToLowerInvariant())),
        ByVerdict = Count(sessions.Select(session => session.Verdict)),
        Cautions = [.. sessions
            .SelectMany(session => session.Cautions.Select(caution => (caution, accepted: session.Confirmed.Contains(caution, StringComparer.Ordinal))))
            .GroupBy(shown => shown.caution, StringComparer.Ordinal)
            .Select(caution => new CautionCount(caution.Key, caution.Count(), caution.Count(shown => shown.accepted)))
            .OrderByDescending(caution => caution.Shown).ThenBy(caution => caution.Id, StringComparer.Ordinal)],
        Touches = SpreadOf(sessions.Select(session => (double)session.Touches)),
        Minutes = SpreadOf(sessions.Select(session => (session.ChangedAt - session.CreatedAt).TotalMinutes)),
        NotConfirmed = sessions.Count(session => session.NotConfirmed.Count > 0),
    };

    private static List<Count> Count(IEnumerable<string?> ids) =>
    [
        .. ids.OfType<string>().GroupBy(id => id, StringComparer.Ordinal)
            .Select(id => new Count(id.Key, id.Count()))
            .OrderByDescending(count => count.Sessions).ThenBy(count => count.Id, StringComparer.Ordinal),
    ];

    private static Spread SpreadOf(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted.Length == 0 ? new(0, 0, 0) : new(sorted.Average(), At(sorted, 0.5), At(sorted, 0.9));
    }

    private static double At(double[] sorted, double share) => sorted[(int)Math.Round((sorted.Length - 1) * share)];
}
