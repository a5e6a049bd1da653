namespace WireCoach.Service.Phrasing;

/// <summary>Leaves a model alone for a while after it failed several times in a row.</summary>
internal sealed class Breaker(TimeProvider clock)
{
    private const int Failures = 3;

    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(60);

    private readonly Lock _gate = new();
    private int _failed;
    private DateTimeOffset _until;

    public bool IsOpen
    {
        get
        {
            lock (_gate)
            {
                return clock.GetUtcNow() < _until;
            }
        }
    }

    public void Worked()
    {
        lock (_gate)
        {
            _failed = 0;
        }
    }

    /// <summary>Counts a failure.</summary>
    /// <returns>Whether the rest begins with it.</returns>
    public bool Failed()
    {
        lock (_gate)
        {
            if (++_failed < Failures)
            {
                return false;
            }

            // One more failure after the rest is enough to begin the next one.
            _failed = Failures - 1;
            _until = clock.GetUtcNow() + Rest;
            return true;
        }
    }
}
