using WireCoach.Rules.Coaching;

namespace WireCoach.Service.Sessions;

/// <summary>The sessions that are being talked in, folded; the longest unused one makes room. One call at a time holds a session.</summary>
internal sealed class LiveSessions(ISessionStore store, Coach coach)
{
    private const int Most = 256;

    private readonly SessionGates _gates = new();
    private readonly LinkedList<LiveSession> _byUse = [];
    private readonly Dictionary<string, LinkedListNode<LiveSession>> _byId = new(StringComparer.Ordinal);
    private readonly Lock _cache = new();

    /// <summary>Waits for a session and holds it; the session is <see langword="null"/> where there is none.</summary>
    public async Task<Held> Hold(string id, CancellationToken cancel)
    {
        var gate = await _gates.Enter(id, cancel);
        try
        {
            return new Held(gate, Cached(id) ?? await Load(id, cancel));
        }
        catch
        {
            gate.Dispose();
            throw;
        }
    }

    /// <summary>Puts a session where it stands now.</summary>
    public void Put(LiveSession session)
    {
        lock (_cache)
        {
            if (_byId.Remove(session.State.Id, out var known))
            {
                _byUse.Remove(known);
            }

            _byId[session.State.Id] = _byUse.AddFirst(session);
            if (_byId.Count > Most)
            {
                _byId.Remove(_byUse.Last!.Value.State.Id);
                _byUse.RemoveLast();
            }
        }
    }

    /// <summary>Forgets a session that there is no more.</summary>
    public void Remove(string id)
    {
        lock (_cache)
        {
            if (_byId.Remove(id, out var known))
            {
                _byUse.Remove(known);
            }
        }
    }

    private LiveSession? Cached(string id)
    {
        lock (_cache)
        {
            if (!_byId.TryGetValue(id, out var known))
            {
                return null;
            }

            _byUse.Remove(known);
            _byUse.AddFirst(known);
            return known.Value;
        }
    }

    private async Task<LiveSession?> Load(string id, CancellationToken cancel)
    {
        if (!SessionId.IsWellFormed(id))
        {
            return null;
        }

        var events = await store.Events(id, cancel);
        if (events.Count == 0)
        {
            return null;
        }

        var state = SessionState.From(events);
        var file = state.Case;
        var live = new LiveSession(state, file, coach.Assess(file), null);
        Put(live);
        return live;
    }

    /// <summary>A session that nobody else changes until this is disposed.</summary>
    public sealed class Held(IDisposable gate, LiveSession? session) : IDisposable
    {
        public LiveSession? Session => session;

        public void Dispose() => gate.Dispose();
    }
}
