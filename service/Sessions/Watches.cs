using System.Collections.Concurrent;

namespace WireCoach.Service.Sessions;

/// <summary>Ends what is done for the last turn of a session when there is a newer one.</summary>
internal sealed class Watches
{
    private readonly ConcurrentDictionary<Watch, string> _running = new();

    /// <summary>Begins to watch a session until the watch is disposed.</summary>
    /// <param name="session">The session.</param>
    /// <param name="cancel">What ends the work besides.</param>
    public Watch Over(string session, CancellationToken cancel)
    {
        var watch = new Watch(_running, CancellationTokenSource.CreateLinkedTokenSource(cancel));
        _running[watch] = session;
        return watch;
    }

    /// <summary>A newer turn was stored. Nobody waits here for the work to end.</summary>
    public void Turned(string session)
    {
        foreach (var (watch, _) in _running.Where(running => running.Value == session))
        {
            watch.End();
        }
    }

    /// <summary>One piece of work for the last turn of a session.</summary>
    internal sealed class Watch(ConcurrentDictionary<Watch, string> running, CancellationTokenSource source) : IDisposable
    {
        /// <summary>The newer turn is answered first: ending a request takes a moment of the machine.</summary>
        private static readonly TimeSpan AfterTheAnswer = TimeSpan.FromMilliseconds(50);

        private readonly Lock _gate = new();
        private bool _over;

        /// <summary>Cancelled when there is a newer turn.</summary>
        public CancellationToken Token { get; } = source.Token;

        public void End()
        {
            lock (_gate)
            {
                if (!_over)
                {
                    source.CancelAfter(AfterTheAnswer);
                }
            }
        }

        public void Dispose()
        {
            running.TryRemove(this, out _);
            lock (_gate)
            {
                _over = true;
            }

            source.Dispose();
        }
    }
}
