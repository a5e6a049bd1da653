using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;
using WireCoach.Service.Endpoints.Calc;

namespace WireCoach.Service.Json;

/// <summary>How records become the contract's JSON: camelCase, kebab-case choices, statements as sentences, sources as one line.</summary>
internal static class WireJson
{
    /// <param name="options">What to configure.</param>
    /// <param name="sentences">The words of statements.</param>
    /// <param name="role">Who reads them.</param>
    public static void Configure(JsonSerializerOptions options, SentenceBook sentences, Role role = Role.Technician)
    {
        options.PropertyNamingPolicy = JsonNamingPolicy.CamelCase;
        options.PropertyNameCaseInsensitive = true;
        options.AllowOutOfOrderMetadataProperties = true;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.RespectNullableAnnotations = true;
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        options.TypeInfoResolver = (options.TypeInfoResolver ?? new DefaultJsonTypeInfoResolver()).WithAddedModifier(NeedsKind);
        options.Converters.Add(new StatementConverter(sentences, role));
        options.Converters.Add(new PlanConverter());
        options.Converters.Add(new SourceConverter());
        options.Converters.Add(new FiniteConverter());
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
    }

    /// <summary>A fact without its kind is a wrong body, not a wrong program.</summary>
    private static void NeedsKind(JsonTypeInfo type)
    {
        if (type.Type == typeof(Fact))
        {
            type.CreateObject = () => throw new JsonException("A fact needs its kind.");
        }
    }

    /// <summary>A statement leaves as its finished sentence; it never comes in.</summary>
    private sealed class StatementConverter(SentenceBook sentences, Role role) : JsonConverter<Statement>
    {
        public override Statement Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new JsonException("Sentences are made here; they cannot be sent.");

        public override void Write(Utf8JsonWriter writer, Statement value, JsonSerializerOptions options) =>
            writer.WriteStringValue(sentences.Render(value, role));
    }

    /// <summary>A plan leaves in the members of the contract, wherever it stands.</summary>
    private sealed class PlanConverter : JsonConverter<Plan>
    {
        public override Plan Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new JsonException("Plans are made here; they cannot be sent.");

        public override void Write(Utf8JsonWriter writer, Plan value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, PlanView.Of(value), options);
    }

    /// <summary>A number that is too large for a number is refused; one that came out as none leaves as null.</summary>
    private sealed class FiniteConverter : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.Number && reader.TryGetDouble(out var number) && double.IsFinite(number)
                ? number
                : throw new JsonException("A finite number is needed here.");

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (double.IsFinite(value))
            {
                writer.WriteNumberValue(value);
            }
            else
            {
                writer.WriteNullValue();
            }
        }
    }

    /// <summary>A source leaves as one line.</summary>
    private sealed class SourceConverter : JsonConverter<Source>
    {
        public override Source Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            new() { Title = reader.GetString() ?? string.Empty };

        public override void Write(Utf8JsonWriter writer, Source value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.ToString());
    }
}
