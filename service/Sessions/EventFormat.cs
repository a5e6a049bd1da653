using System.Buffers;
using System.Globalization;
using System.IO.Hashing;
using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace WireCoach.Service.Sessions;

/// <summary>One event as one line: eight hex digits of CRC-32, a space, JSON, a line feed.</summary>
internal static class EventFormat
{
    /// <summary>The version of the line's shape; a reader refuses a newer one.</summary>
    public const int Version = 1;

    public const byte LineFeed = (byte)'\n';

    private const int Header = 9;

    private static readonly Dictionary<string, Type> Types = new(StringComparer.Ordinal)
    {
        ["opened"] = typeof(SessionEvent.Opened),
        ["facts-taken"] = typeof(SessionEvent.FactsTaken),
        ["retracted"] = typeof(SessionEvent.Retracted),
        ["said"] = typeof(SessionEvent.Said),
        ["caution-shown"] = typeof(SessionEvent.CautionShown),
        ["concluded"] = typeof(SessionEvent.Concluded),
        ["asked"] = typeof(SessionEvent.Asked),
        ["reviewed"] = typeof(SessionEvent.Reviewed),
        ["closed"] = typeof(SessionEvent.Closed),
        ["deleted"] = typeof(SessionEvent.Deleted),
    };

    private static readonly Dictionary<Type, string> Names = Types.ToDictionary(pair => pair.Value, pair => pair.Key);

    private static readonly JsonSerializerOptions Json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        AllowOutOfOrderMetadataProperties = true,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The version of this engine.</summary>
    public static string Engine { get; } = Assembly.GetExecutingAssembly().GetName().Version!.ToString(3);

    public static string TypeOf(SessionEvent happened) => Names[happened.GetType()];

    /// <summary>Appends the event's line, with its line feed.</summary>
    public static void Write(ArrayBufferWriter<byte> lines, StoredEvent stored)
    {
        var json = new ArrayBufferWriter<byte>(512);
        using (var writer = new Utf8JsonWriter(json, new JsonWriterOptions { Encoder = Json.Encoder }))
        {
            writer.WriteStartObject();
            writer.WriteNumber("v", Version);
            writer.WriteString("session", stored.Session);
            writer.WriteNumber("seq", stored.Sequence);
            writer.WriteString("at", stored.At.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture));
            writer.WriteString("type", TypeOf(stored.Event));
            writer.WritePropertyName("body");
            JsonSerializer.Serialize(writer, stored.Event, stored.Event.GetType(), Json);
            if (stored.Key is not null)
            {
                writer.WriteString("key", stored.Key);
            }

            if (stored.Print is not null)
            {
                writer.WriteString("print", stored.Print);
            }

            writer.WriteString("engine", stored.Engine);
            writer.WriteEndObject();
        }

        Crc32.HashToUInt32(json.WrittenSpan).TryFormat(lines.GetSpan(Header), out _, "x8", CultureInfo.InvariantCulture);
        lines.GetSpan(Header)[Header - 1] = (byte)' ';
        lines.Advance(Header);
        lines.Write(json.WrittenSpan);
        lines.Write([LineFeed]);
    }

    /// <summary>Whether a line, without its line feed, is as it was written.</summary>
    public static bool IsWhole(ReadOnlySpan<byte> line)
    {
        if (line.Length < Header + 2 || line[Header - 1] != (byte)' ')
        {
            return false;
        }

        Span<byte> expected = stackalloc byte[Header - 1];
        Crc32.HashToUInt32(line[Header..]).TryFormat(expected, out _, "x8", CultureInfo.InvariantCulture);
        return expected.SequenceEqual(line[..(Header - 1)]);
    }

    /// <summary>Whether a line says that its session was deleted. Within a text a quote is escaped, so nobody's words look like this.</summary>
    public static bool IsDeletion(ReadOnlySpan<byte> line) => line.IndexOf("\"type\":\"deleted\""u8) >= 0;

    /// <summary>The session of a whole line.</summary>
    public static string SessionOf(ReadOnlySpan<byte> line)
    {
        var json = new Utf8JsonReader(line[Header..]);
        while (json.Read())
        {
            if (json.TokenType == JsonTokenType.PropertyName && json.ValueTextEquals("session"u8))
            {
                return json.Read() ? json.GetString()! : string.Empty;
            }
        }

        return string.Empty;
    }

    /// <summary>The JSON of a line.</summary>
    public static ReadOnlyMemory<byte> JsonOf(ReadOnlyMemory<byte> line) => line[Header..];

    /// <summary>The event of a whole line.</summary>
    /// <exception cref="StoreException">A newer version wrote it.</exception>
    public static StoredEvent Read(ReadOnlyMemory<byte> line)
    {
        using var json = JsonDocument.Parse(JsonOf(line));
        var root = json.RootElement;
        var version = root.GetProperty("v").GetInt32();
        var type = root.GetProperty("type").GetString()!;
        if (version > Version || !Types.TryGetValue(type, out var shape))
        {
            throw new StoreException($"The journal holds an event '{type}' of version {version}, which a newer WireCoach wrote; this one reads up to version {Version}.");
        }

        return new StoredEvent(
            root.GetProperty("session").GetString()!,
            root.GetProperty("seq").GetInt32(),
            root.GetProperty("at").GetDateTimeOffset(),
            (SessionEvent)root.GetProperty("body").Deserialize(shape, Json)!)
        {
            Key = Optional(root, "key"),
            Print = Optional(root, "print"),
            Engine = Optional(root, "engine") ?? string.Empty,
        };
    }

    private static string? Optional(JsonElement root, string name) =>
        root.TryGetProperty(name, out var member) ? member.GetString() : null;
}
