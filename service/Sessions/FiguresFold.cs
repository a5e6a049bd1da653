using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>What sessions amount to, in one pass over them.</summary>
internal sealed class FiguresFold
{
    private readonly Dictionary<string, int> _causes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _layouts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _statuses = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _roles = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _verdicts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _cautions = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _accepted = new(StringComparer.Ordinal);
    private readonly List<double> _touches = [];
    private readonly List<double> _minutes = [];
    private int _notConfirmed;

    public static Figures Of(IReadOnlyList<SessionSummary> sessions)
    {
        var fold = new FiguresFold();
        foreach (var session in sessions)
        {
            fold.Add(session);
        }

        return fold.Figures();
    }

    private void Add(SessionSummary session)
    {
        Count(_causes, session.Causes.Count == 0 ? null : session.Causes[0]);
        Count(_layouts, session.Layout);
        Count(_statuses, session.Status);
        Count(_roles, session.Role.ToString().ToLowerInvariant());
        Count(_verdicts, session.Verdict);
        foreach (var caution in session.Cautions)
        {
            Count(_cautions, caution);
            Count(_accepted, session.Confirmed.Contains(caution, StringComparer.Ordinal) ? caution : null);
        }

        _touches.Add(session.Touches);
        _minutes.Add((session.ChangedAt - session.CreatedAt).TotalMinutes);
        _notConfirmed += session.NotConfirmed.Count > 0 ? 1 : 0;
    }

    private Figures Figures() => new()
    {
        Sessions = _touches.Count,
        ByCause = Most(_causes),
        ByLayout = Most(_layouts),
        ByStatus = Most(_statuses),
        ByRole = Most(_roles),
        ByVerdict = Most(_verdicts),
        Cautions = [.. Most(_cautions).Select(caution => new CautionCount(caution.Id, caution.Sessions, _accepted.GetValueOrDefault(caution.Id)))],
        Touches = SpreadOf(_touches),
        Minutes = SpreadOf(_minutes),
        NotConfirmed = _notConfirmed,
    };

    private static void Count(Dictionary<string, int> counts, string? id)
    {
        if (id is not null)
        {
            System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(counts, id, out _)++;
        }
    }

    private static List<Count> Most(Dictionary<string, int> counts) =>
    [
        .. counts.Select(count => new Count(count.Key, count.Value))
            .OrderByDescending(count => count.Sessions).ThenBy(count => count.Id, StringComparer.Ordinal),
    ];

    private static Spread SpreadOf(List<double> values)
    {
        values.Sort();
        return values.Count == 0 ? new(0, 0, 0) : new(values.Average(), At(values, 0.5), At(values, 0.9));
    }

    private static double At(List<double> sorted, double share) => sorted[(int)Math.Round((sorted.Count - 1) * share)];
}
