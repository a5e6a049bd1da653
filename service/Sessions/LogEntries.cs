using System.Buffers;
using System.Text.Json;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>Events as people read them in the log.</summary>
internal static class LogEntries
{
    public static LogEntry Of(StoredEvent stored)
    {
        var entry = new LogEntry
        {
            Sequence = stored.Sequence,
            At = stored.At,
            Type = EventFormat.TypeOf(stored.Event),
            Written = Written(stored),
        };
        return stored.Event switch
        {
            SessionEvent.Opened opened => entry with { Who = opened.Who, Text = opened.MotorTag },
            SessionEvent.FactsTaken taken => entry with { Text = taken.Words, Facts = taken.Facts, Id = taken.Question },
            SessionEvent.Retracted retracted => entry with { Id = retracted.FactId },
            SessionEvent.Said said => entry with { Id = said.Id, Text = said.Text, Rules = said.Rules },
            SessionEvent.CautionShown caution => entry with { Id = caution.Id, Text = caution.Text, Rules = caution.Rules },
            SessionEvent.Concluded now => entry with { Id = now.Status, Text = now.Goal },
            SessionEvent.Asked asked => entry with { Id = asked.Id, Text = asked.Text },
            SessionEvent.Reviewed reviewed => entry with { Id = reviewed.Verdict, Text = reviewed.Note, Who = reviewed.Who },
            SessionEvent.Closed => entry,
            SessionEvent.Deleted deleted => entry with { Text = deleted.Why, Who = deleted.Who },
            _ => throw new StoreException($"The log does not know the event '{entry.Type}'."),
        };
    }

    private static JsonElement Written(StoredEvent stored)
    {
        var line = new ArrayBufferWriter<byte>(512);
        EventFormat.Write(line, stored);
        using var json = JsonDocument.Parse(EventFormat.JsonOf(line.WrittenMemory[..^1]));
        return json.RootElement.Clone();
    }
}
