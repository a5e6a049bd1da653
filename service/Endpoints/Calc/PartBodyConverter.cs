using System.Text.Json;
using System.Text.Json.Serialization;
using WireCoach.Rules.Cases;
using static WireCoach.Service.Endpoints.Calc.CapacitorEndpoint;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>Reads a part of a set as an object or as bare microfarads: <c>[40, 5]</c> is as good as <c>[{"microfarads": 40}, …]</c>.</summary>
internal sealed class PartBodyConverter : JsonConverter<PartBody>
{
    public override PartBody Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.Number)
        {
            return new PartBody(PlateValue.Of(reader.GetDouble()), null, null, null, null, null);
        }

        var members = JsonSerializer.Deserialize<Members>(ref reader, options) ?? new Members();
        return new PartBody(members.Microfarads, members.MicrofaradsTo, members.Volts, members.Use, members.Type, members.TolerancePercent);
    }

    public override void Write(Utf8JsonWriter writer, PartBody value, JsonSerializerOptions options) =>
        throw new NotSupportedException("Parts only come in.");

    private sealed record Members
    {
        public PlateValue? Microfarads { get; init; }

        public double? MicrofaradsTo { get; init; }

        public double? Volts { get; init; }

        public string? Use { get; init; }

        public string? Type { get; init; }

        public double? TolerancePercent { get; init; }
    }
}
