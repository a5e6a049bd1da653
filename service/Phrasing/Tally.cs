using System.Globalization;
using System.Text.Json;
using WireCoach.Service.Hosting;
using WireCoach.Service.Observing;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Phrasing;

/// <summary>How often a model was asked, day by day, and what came of it; kept in a small file that outlives the service.</summary>
internal sealed class Tally
{
    private const string FileName = "rewordings.json";
    private const string Good = "reworded";
    private const string Refusal = "refused:";
    private const string Failure = "failed:";

    private readonly Lock _gate = new();
    private readonly string _path;
    private readonly TimeProvider _clock;
    private readonly bool _on;
    private readonly ILogger<Tally> _log;
    private readonly Meters? _meters;
    private readonly SortedDictionary<string, SortedDictionary<string, int>> _days;

    /// <param name="folder">The data folder.</param>
    /// <param name="clock">The time.</param>
    /// <param name="log">Where trouble with the file is told.</param>
    /// <param name="settings">The model, where one is configured.</param>
    /// <param name="meters">What is told to a collector besides.</param>
    public Tally(DataFolder folder, TimeProvider clock, ILogger<Tally> log, PhrasingSettings? settings = null, Meters? meters = null)
    {
        (_path, _clock, _log, _on, _meters) = (Path.Combine(folder.Path, FileName), clock, log, settings is not null, meters);
        _days = Read();
    }

    public void Reworded() => Count(Good, "faithful");

    public void Refused(string reason) => Count(Refusal + reason, reason);

    public void Failed(string reason) => Count(Failure + reason, reason);

    /// <summary>The figures of the days from one time to another.</summary>
    public PhrasingFigures Figures(DateTimeOffset? from = null, DateTimeOffset? to = null)
    {
        var (first, last) = (from is { } begin ? Day(begin) : "", to is { } end ? Day(end) : "~");
        SortedDictionary<string, int> Sum(string kind)
        {
            lock (_gate)
            {
                return new(
                    _days.Where(day => string.CompareOrdinal(day.Key, first) >= 0 && string.CompareOrdinal(day.Key, last) <= 0)
                        .SelectMany(day => day.Value).Where(count => count.Key.StartsWith(kind, StringComparison.Ordinal))
                        .GroupBy(count => count.Key[kind.Length..]).ToDictionary(count => count.Key, count => count.Sum(each => each.Value)),
                    StringComparer.Ordinal);
            }
        }

        var (good, refused, failed) = (Sum(Good).Values.Sum(), Sum(Refusal), Sum(Failure));
        var asked = good + refused.Values.Sum() + failed.Values.Sum();
        return new(_on, asked, good, Share(good, asked), Share(refused.Values.Sum(), asked), refused, failed);
    }

    private static double Share(int part, int all) => all == 0 ? 0 : (double)part / all;

    private static string Day(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private void Count(string outcome, string verdict)
    {
        _meters?.Reworded(verdict);
        lock (_gate)
        {
            var today = Day(_clock.GetUtcNow());
            if (!_days.TryGetValue(today, out var counts))
            {
                _days[today] = counts = new(StringComparer.Ordinal);
            }

            counts[outcome] = counts.GetValueOrDefault(outcome) + 1;
            Write();
        }
    }

    /// <summary>Beside the old file first, so that there is always a whole one.</summary>
    private void Write()
    {
        try
        {
            using (var file = new FileStream(_path + ".new", FileMode.Create, FileAccess.Write))
            {
                JsonSerializer.Serialize(file, _days);
                file.Flush(flushToDisk: true);
            }

            File.Move(_path + ".new", _path, overwrite: true);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            _log.LogWarning("The figures of rewordings could not be written: {Trouble}", wrong.Message); // counted again with the next one
        }
    }

    private SortedDictionary<string, SortedDictionary<string, int>> Read()
    {
        try
        {
            if (File.Exists(_path) && JsonSerializer.Deserialize<SortedDictionary<string, SortedDictionary<string, int>>>(File.ReadAllBytes(_path)) is { } days)
            {
                return new(days, StringComparer.Ordinal);
            }
        }
        catch (Exception wrong) when (wrong is JsonException or IOException or UnauthorizedAccessException)
        {
            _log.LogWarning("The figures of rewordings could not be read and begin anew; the old ones are kept as {Name}: {Trouble}", FileName + ".damaged", wrong.Message);
            PutAside();
        }

        return new(StringComparer.Ordinal);
    }

    private void PutAside()
    {
        try
        {
            File.Move(_path, _path + ".damaged", overwrite: true);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            _log.LogWarning("They could not be put aside: {Trouble}", wrong.Message);
        }
    }
}
