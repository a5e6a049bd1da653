using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Sessions by the day, week or month in which they were opened; a span without sessions stands there as well.</summary>
internal static class FiguresOverTime
{
    private const int MostDays = 31;
    private const int MostWeeks = 27;
    private const int MostPeriods = 60;
    private const int Week = 7;

    /// <summary>The periods, the earliest first, at most <see cref="MostPeriods"/> of them.</summary>
    public static IReadOnlyList<PeriodFigures> Of(IReadOnlyList<SessionSummary> sessions)
    {
        if (sessions.Count == 0)
        {
            return [];
        }

        var days = sessions.Select(session => DateOnly.FromDateTime(session.CreatedAt.UtcDateTime)).ToList();
        var (first, last) = (days.Min(), days.Max());
        var length = last.DayNumber - first.DayNumber;
        Func<DateOnly, DateOnly> begin = length <= MostDays ? day => day
            : length <= MostWeeks * Week ? day => day.AddDays(-(((int)day.DayOfWeek + 6) % Week))
            : day => new DateOnly(day.Year, day.Month, 1);
        Func<DateOnly, DateOnly> next = length <= MostDays ? day => day.AddDays(1) : length <= MostWeeks * Week ? day => day.AddDays(Week) : day => day.AddMonths(1);
        var held = sessions.Zip(days).ToLookup(one => begin(one.Second), one => one.First);
        var periods = new List<PeriodFigures>();
        for (var period = begin(first); period <= last; period = next(period))
        {
            periods.Add(Count(period, [.. held[period]]));
        }

        return periods.Count <= MostPeriods ? periods : [.. periods.TakeLast(MostPeriods)];
    }

    private static PeriodFigures Count(DateOnly from, IReadOnlyList<SessionSummary> sessions) => new(
        from,
        sessions.Count,
        sessions.Count(session => session.Status == "verified"),
        sessions.Count(session => session.Status == "referred"),
        Median([.. sessions.Select(session => (double)session.Touches)]),
        Median([.. sessions.Select(session => (session.ChangedAt - session.CreatedAt).TotalMinutes)]));

    private static double? Median(double[] values)
    {
        if (values.Length == 0)
        {
            return null;
        }

        Array.Sort(values);
        return values.Length % 2 == 1 ? values[values.Length / 2] : (values[(values.Length / 2) - 1] + values[values.Length / 2]) / 2;
    }
}
