using WireCoach.Rules.Cases;
using WireCoach.Service.Sessions;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>Sessions by day, week or month.</summary>
public sealed class FiguresOverTimeTest
{
    private static readonly DateTimeOffset Monday = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(0, 1)]
    [InlineData(31, 32)]
    [InlineData(32, 5)]
    [InlineData(180, 26)]
    [InlineData(200, 7)]
    [InlineData(3000, 60)]
    public void A_span_has_few_periods_without_a_gap_and_counts_every_session_in_reach(int days, int periods)
    {
        var sessions = new[] { Session(0), Session(days), Session(days) };
        var found = FiguresOverTime.Of(sessions);
        Assert.Equal(periods, found.Count);
        Assert.Equal(found.Select(period => period.From).Order().Distinct(), found.Select(period => period.From));
        Assert.True(found[^1].Sessions >= 2);
        if (periods < 60)
        {
            Assert.Equal(3, found.Sum(period => period.Sessions));
        }
    }

    [Fact]
    public void A_period_knows_how_its_sessions_ended_and_its_middle_figures()
    {
        var only = Assert.Single(FiguresOverTime.Of([Session(0, "verified", 4, 10), Session(0, "referred", 8, 20), Session(0, "open", 9, 90), Session(0, "verified", 1, 30)]));
        Assert.Equal(new PeriodFigures(new DateOnly(2026, 3, 2), 4, 2, 1, 6, 25), only);
    }

    [Fact]
    public void Without_sessions_there_is_nothing_to_plot() => Assert.Empty(FiguresOverTime.Of([]));

    private static SessionSummary Session(int day, string status = "open", int touches = 0, int minutes = 0) => new()
    {
        Id = Guid.NewGuid().ToString("N"), Role = Role.Technician, Region = Region.NorthAmerica, Status = status, CreatedAt = Monday.AddDays(day), ChangedAt = Monday.AddDays(day).AddMinutes(minutes), Touches = touches,
    };
}
