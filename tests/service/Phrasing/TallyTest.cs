using Microsoft.Extensions.Logging.Abstractions;
using WireCoach.Service.Hosting;
using WireCoach.Service.Phrasing;

namespace WireCoach.Service.Tests.Phrasing;

public sealed class TallyTest : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wirecoach-");
    private readonly Clock _clock = new();

    [Fact]
    public void Figures_outlive_the_service()
    {
        var before = Begin();
        before.Reworded();
        before.Refused("negation");
        before.Refused("negation");
        before.Failed("time");
        var after = Begin();
        after.Refused("lead");
        var figures = after.Figures();
        Assert.Equal((5, 1, 0.2, 0.6), (figures.Asked, figures.Reworded, figures.ShareReworded, figures.ShareRefused));
        Assert.Equal("lead 1, negation 2", string.Join(", ", figures.Refused.Select(reason => $"{reason.Key} {reason.Value}")));
        Assert.Equal(1, figures.Failed["time"]);
    }

    [Fact]
    public void Only_the_days_that_are_asked_for_count()
    {
        var tally = Begin();
        tally.Reworded();
        _clock.Now += TimeSpan.FromDays(2);
        tally.Refused("lead");
        Assert.Equal(1, Begin().Figures(from: _clock.Now.AddHours(-1)).Asked);
        Assert.Equal(1, Begin().Figures(to: _clock.Now.AddDays(-1)).Reworded);
        Assert.Equal(0, Begin().Figures(from: _clock.Now.AddDays(1)).Asked);
    }

    [Theory]
    [InlineData("{\"2026-01-01\": {\"rewor")]
    [InlineData("[1, 2]")]
    [InlineData("")]
    public void A_damaged_file_is_put_aside_and_stops_nothing(string content)
    {
        var file = Path.Combine(_folder.FullName, "rewordings.json");
        File.WriteAllText(file, content);
        var tally = Begin();
        tally.Reworded();
        Assert.Equal(1, Begin().Figures().Asked);
        Assert.Equal(content, File.ReadAllText(file + ".damaged"));
    }

    [Fact]
    public void A_folder_that_takes_nothing_stops_nothing()
    {
        var tally = Begin();
        _folder.Delete(recursive: true);
        tally.Reworded();
        Assert.Equal(1, tally.Figures().Asked);
        _folder.Create();
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private Tally Begin() => new(new DataFolder(_folder.FullName), _clock, NullLogger<Tally>.Instance);

    private sealed class Clock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
