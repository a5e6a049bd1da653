using System.Collections.Concurrent;
using WireCoach.Service.Observing;

namespace WireCoach.Service.Phrasing;

/// <summary>How often a model was asked since the start, and what came of it.</summary>
internal sealed class Tally(Meters? meters = null)
{
    private readonly ConcurrentDictionary<string, int> _refused = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, int> _failed = new(StringComparer.Ordinal);
    private int _reworded;

    public void Reworded()
    {
        Interlocked.Increment(ref _reworded);
        meters?.Reworded("faithful");
    }

    public void Refused(string reason) => Count(_refused, reason);

    public void Failed(string reason) => Count(_failed, reason);

    public PhrasingFigures Figures(bool on)
    {
        var (refused, failed) = (Sorted(_refused), Sorted(_failed));
        var asked = _reworded + refused.Values.Sum() + failed.Values.Sum();
        return new(on, asked, _reworded, asked == 0 ? 0 : (double)_reworded / asked, refused, failed);
    }

    private void Count(ConcurrentDictionary<string, int> counts, string reason)
    {
        counts.AddOrUpdate(reason, 1, (_, count) => count + 1);
        meters?.Reworded(reason);
    }

    private static SortedDictionary<string, int> Sorted(ConcurrentDictionary<string, int> counts) => new(counts, StringComparer.Ordinal);
}

/// <summary>Figures for the manager, since the service was started.</summary>
/// <param name="On">Whether a model is configured.</param>
/// <param name="Asked">Sentences that were sent.</param>
/// <param name="Reworded">Those whose rewording said the same.</param>
/// <param name="ShareReworded">The same as a share, 0 to 1.</param>
/// <param name="Refused">Those whose rewording was refused, by reason.</param>
/// <param name="Failed">Those without an answer, by reason.</param>
internal sealed record PhrasingFigures(
    bool On, int Asked, int Reworded, double ShareReworded, IReadOnlyDictionary<string, int> Refused, IReadOnlyDictionary<string, int> Failed);
