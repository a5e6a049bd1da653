namespace WireCoach.Service.Sessions;

/// <summary>Lets one call at a time into a session, and calls of different sessions past each other; a job that is only being opened goes by its key.</summary>
internal sealed class SessionGates
{
    private readonly Dictionary<string, Gate> _gates = new(StringComparer.Ordinal);

    /// <summary>Waits until nobody else is in the session; disposing what it gives leaves it.</summary>
    public async Task<IDisposable> Enter(string session, CancellationToken cancel)
    {
        Gate? gate;
        lock (_gates)
        {
            if (!_gates.TryGetValue(session, out gate))
            {
                _gates.Add(session, gate = new Gate(this, session));
            }

            gate.Callers++;
        }

        try
        {
            await gate.Turn.WaitAsync(cancel);
            return gate;
        }
        catch
        {
            Leave(gate);
            throw;
        }
    }

    private void Leave(Gate gate)
    {
        lock (_gates)
        {
            if (--gate.Callers == 0)
            {
                _gates.Remove(gate.Session);
                gate.Turn.Dispose();
            }
        }
    }

    private sealed class Gate(SessionGates gates, string session) : IDisposable
    {
        public string Session => session;

        public SemaphoreSlim Turn { get; } = new(1, 1);

        public int Callers { get; set; }

        public void Dispose()
        {
            Turn.Release();
            gates.Leave(this);
        }
    }
}
