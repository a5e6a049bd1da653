using System.Net;
using System.Text.Json;
using WireCoach.Service.Observing;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Access;

/// <summary>Who signed in, from where, and who was refused: one line each, on disk before the answer. Never a code.</summary>
internal sealed class SignInAudit(string folder, TimeProvider clock, Meters meters)
{
    private readonly Lock _gate = new();

    /// <param name="role">As whom.</param>
    /// <param name="peer">From where.</param>
    /// <param name="outcome"><c>signed-in</c>, <c>refused</c>, <c>too-many</c> or <c>signed-out</c>.</param>
    public void Write(AccessRole role, IPAddress? peer, string outcome)
    {
        var line = JsonSerializer.SerializeToUtf8Bytes(new { at = clock.GetUtcNow().UtcDateTime, role = role.ToString(), peer = peer?.ToString(), outcome });
        meters.SignIn(role.ToString(), outcome);
        lock (_gate)
        {
            using var file = new FileStream(Path.Combine(folder, "sign-ins.jsonl"), FileMode.Append, FileAccess.Write, FileShare.Read);
            file.Write([.. line, EventFormat.LineFeed]);
            file.Flush(flushToDisk: true);
        }
    }
}
