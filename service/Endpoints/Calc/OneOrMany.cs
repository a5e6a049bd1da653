using System.Text.Json;
using System.Text.Json.Serialization;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Reads one object as a list of one.</summary>
internal sealed class OneOrMany<T> : JsonConverter<IReadOnlyList<T>>
{
    public override IReadOnlyList<T>? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.StartArray
            ? JsonSerializer.Deserialize<List<T>>(ref reader, options)
            : [JsonSerializer.Deserialize<T>(ref reader, options)!];

    public override void Write(Utf8JsonWriter writer, IReadOnlyList<T> value, JsonSerializerOptions options) =>
        throw new NotSupportedException("Bodies only come in.");
}
