using System.Buffers;
using System.Text;
using WireCoach.Rules.Cases;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Tests.Store;

/// <summary>Sessions as a store keeps them.</summary>
internal static class StoredSessions
{
    public static DateTimeOffset At { get; } = new(2026, 3, 14, 15, 9, 26, 535, TimeSpan.Zero);

    public static IReadOnlyList<StoredEvent> New(string who, int events)
    {
        var id = SessionId.New(DateTimeOffset.UtcNow);
        return [Opened(id, who), .. Enumerable.Range(2, events - 1).Select(sequence => Taken(id, sequence, new Fact.Reading { From = "1", To = "4", Ohms = sequence / 3.0 }))];
    }

    public static StoredEvent Opened(string id, string? who = null) =>
        new(id, 1, At, new SessionEvent.Opened(Role.Technician, Region.NorthAmerica, who, null, null));

    public static StoredEvent Taken(string id, int sequence, params Fact[] facts) =>
        new(id, sequence, At, new SessionEvent.FactsTaken([.. facts.Select((fact, at) => fact with { FactId = $"f{sequence}-{at}" })], "Ω µ \"quoted\" 漢 🙂 \u2028"));

    public static IEnumerable<string> Lines(IEnumerable<StoredEvent> events) => events.Select(stored =>
    {
        var line = new ArrayBufferWriter<byte>();
        EventFormat.Write(line, stored);
        return Encoding.UTF8.GetString(line.WrittenSpan);
    });
}
