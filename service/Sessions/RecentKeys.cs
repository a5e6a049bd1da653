namespace WireCoach.Service.Sessions;

/// <summary>The keys of the sessions opened last, so that a double tap opens one.</summary>
internal sealed class RecentKeys
{
    private const int Most = 1000;

    private readonly Lock _gate = new();
    private readonly Queue<string> _order = new();
    private readonly Dictionary<string, string> _sessions = new(StringComparer.Ordinal);

    public string? Find(string key)
    {
        lock (_gate)
        {
            return _sessions.GetValueOrDefault(key);
        }
    }

    public void Add(string key, string session)
    {
        lock (_gate)
        {
            if (_sessions.TryAdd(key, session))
            {
                _order.Enqueue(key);
            }

            if (_order.Count > Most)
            {
                _sessions.Remove(_order.Dequeue());
            }
        }
    }
}
