using WireCoach.Rules.Statements;

namespace WireCoach.WebUi.Desk;

/// <summary>How long the shop keeps its jobs.</summary>
/// <param name="Days">Days after the last entry; <see langword="null"/> keeps them until somebody deletes them.</param>
public sealed record Retention(int? Days)
{
    /// <summary>As many jobs as are deleted at once.</summary>
    public const int MostAtOnce = 500;

    /// <summary>The longest time that can be asked for.</summary>
    public const int MostDays = 36_500;

    private const int Page = 200;

    /// <summary>The jobs without an entry since a time, the latest first, at most <see cref="MostAtOnce"/>.</summary>
    public static async Task<Answer<IReadOnlyList<SessionSummary>>> Older(ICoachDesk desk, DateTimeOffset than, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(desk);
        var found = new List<SessionSummary>();
        string? after = null;
        do
        {
            var page = await desk.List(new SessionFilter { To = than, After = after, Size = Page }, cancel);
            if (!page.IsGiven)
            {
                return Answer<IReadOnlyList<SessionSummary>>.Refused(page.Problems);
            }

            found.AddRange(page.Value.Items.Where(session => session.ChangedAt < than));
            after = page.Value.Next;
        }
        while (after is not null && found.Count < MostAtOnce);
        return found.Count <= MostAtOnce ? found : [.. found.Take(MostAtOnce)];
    }
}
