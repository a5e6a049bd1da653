using System.Text.Json;
using System.Text.Json.Serialization;
using WireCoach.Rules.Cases;
using static WireCoach.Service.Endpoints.Calc.CapacitorEndpoint;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Reads a part of a set as an object or as bare microfarads: <c>[40, 5]</c> is as good as <c>[{"microfarads": 40}, …]</c>.</summary>
internal sealed class PartBodyConverter : JsonConverter<PartBody>
{
    public override PartBody Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.TokenType switch
    {
        JsonTokenType.Number => new MarksBody { Microfarads = PlateValue.Of(reader.GetDouble()) },
        JsonTokenType.StartObject => JsonSerializer.Deserialize<MarksBody>(ref reader, options) ?? new(),
        _ => throw new JsonException(), // the reader says where
    });

    public override void Write(Utf8JsonWriter writer, PartBody value, JsonSerializerOptions options) =>
        throw new NotSupportedException("Parts only come in.");
}
