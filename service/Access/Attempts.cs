using System.Net;
using System.Threading.RateLimiting;

namespace WireCoach.Service.Access;

/// <summary>Bounds how often a code may be guessed: from one address, and from all of them together.</summary>
internal sealed class Attempts : IDisposable
{
    public const int AMinute = 5;
    private const int AnHour = 60;

    private readonly PartitionedRateLimiter<IPAddress> _perPeer = PartitionedRateLimiter.Create<IPAddress, IPAddress>(peer => RateLimitPartition.GetFixedWindowLimiter(
        peer, _ => new FixedWindowRateLimiterOptions { PermitLimit = AMinute, Window = TimeSpan.FromMinutes(1) }));

    private readonly FixedWindowRateLimiter _all = new(new() { PermitLimit = AnHour, Window = TimeSpan.FromHours(1) });

    /// <summary>Whether one more may be tried.</summary>
    public bool Take(IPAddress? peer)
    {
        using var own = _perPeer.AttemptAcquire(peer ?? IPAddress.None);
        if (!own.IsAcquired)
        {
            return false;
        }

        using var all = _all.AttemptAcquire();
        return all.IsAcquired;
    }

    public void Dispose()
    {
        _perPeer.Dispose();
        _all.Dispose();
    }
}
