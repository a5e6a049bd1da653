using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>All sessions as the list shows them, in memory and in the order of their ids: lists, searches and figures look at nothing else.</summary>
/// <remarks>What many sessions share is kept once, and of the words that find a session only which ones occur, so that a session takes less than a kilobyte.</remarks>
internal sealed class SummaryIndex
{
    private readonly Lock _gate = new();
    private readonly List<Row> _rows = [];
    private readonly WordBook _words = new();
    private readonly SharedTexts _texts = new();

    /// <summary>Takes a session in, or what has become of it.</summary>
    public void Put(SummaryFold fold)
    {
        lock (_gate)
        {
            var row = new Row(_texts.Share(fold.Shown), _words.Of(fold.Words));
            var at = Place(row.Shown.Id);
            if (at < _rows.Count && _rows[at].Shown.Id == row.Shown.Id)
            {
                _rows[at] = row;
            }
            else
            {
                _rows.Insert(at, row);
            }
        }
    }

    public void Remove(string id)
    {
        lock (_gate)
        {
            var at = Place(id);
            if (at < _rows.Count && _rows[at].Shown.Id == id)
            {
                _rows.RemoveAt(at);
            }
        }
    }

    /// <summary>Sessions that fit, the newest first.</summary>
    public SessionPage List(SessionFilter filter)
    {
        var size = Math.Clamp(filter.Size ?? 50, 1, 200);
        lock (_gate)
        {
            var fit = new SummaryFit(filter, _words);
            var (found, total) = (new List<SessionSummary>(), 0);
            var (first, end) = Span(filter.From, filter.To);
            for (var at = end - 1; at >= first; at--)
            {
                if (!fit.Fits(_rows[at].Shown, _rows[at].Words))
                {
                    continue;
                }

                total++;
                if (found.Count <= size && (filter.After is null || string.CompareOrdinal(_rows[at].Shown.Id, filter.After) < 0))
                {
                    found.Add(_rows[at].Shown);
                }
            }

            return new([.. found.Take(size)], total, found.Count > size ? found[size - 1].Id : null);
        }
    }

    /// <summary>All sessions opened in a span of time, the oldest first.</summary>
    public IReadOnlyList<SessionSummary> Between(DateTimeOffset? from, DateTimeOffset? to)
    {
        lock (_gate)
        {
            var (first, end) = Span(from, to);
            return first >= end ? [] : [.. _rows.Slice(first, end - first).Select(row => row.Shown)];
        }
    }

    private (int First, int End) Span(DateTimeOffset? from, DateTimeOffset? to) => (
        from is { } begin ? Place(SessionId.From(begin)) : 0,
        to is { } until ? Place(SessionId.From(until)) : _rows.Count);

    /// <summary>Where an id stands, or would stand.</summary>
    private int Place(string id)
    {
        var (low, high) = (0, _rows.Count);
        if (high > 0 && string.CompareOrdinal(_rows[^1].Shown.Id, id) < 0)
        {
            return high; // most are new
        }

        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = string.CompareOrdinal(_rows[middle].Shown.Id, id) < 0 ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>A session in the list.</summary>
    /// <param name="Shown">What is shown of it.</param>
    /// <param name="Words">The numbers of the words that occur in it.</param>
    private readonly record struct Row(SessionSummary Shown, int[] Words);
}
