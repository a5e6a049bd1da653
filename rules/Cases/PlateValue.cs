using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace WireCoach.Rules.Cases;

/// <summary>The value of a plate field: one number, several numbers of which a connection takes one (115/230), or text.</summary>
/// <param name="Numbers">The numbers in the order of the plate; empty for text.</param>
/// <param name="Text">The value as it was written.</param>
[JsonConverter(typeof(PlateValueConverter))]
public sealed record PlateValue(IReadOnlyList<double> Numbers, string Text)
{
    /// <summary>The only or first number.</summary>
    [JsonIgnore]
    public double? Number => Numbers.Count == 0 ? null : Numbers[0];

    /// <summary>A value of numbers.</summary>
    /// <param name="numbers">In the order of the plate.</param>
    public static PlateValue Of(params IReadOnlyList<double> numbers) =>
        new(numbers, string.Join('/', numbers.Select(number => number.ToString("0.####", CultureInfo.InvariantCulture))));

    /// <summary>Reads "115/230", "208-230/460", "10.4" or plain text.</summary>
    /// <param name="text">The value as written.</param>
    public static PlateValue Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var numbers = new List<double>();
        foreach (var part in text.Split(['/', '-', '−', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (!double.TryParse(part, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
            {
                return new([], text.Trim());
            }

            numbers.Add(number);
        }

        if (text.TrimStart() is ['-' or '−', ..] && numbers.Count > 0)
        {
            numbers[0] = -numbers[0]; // a sign stays, so that the check can refuse it
        }

        return new(numbers, text.Trim());
    }
}

/// <summary>Writes numbers as a number or an array and text as text; reads any of the three.</summary>
internal sealed class PlateValueConverter : JsonConverter<PlateValue>
{
    public override PlateValue Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.Number:
                return PlateValue.Of(Finite(ref reader));
            case JsonTokenType.String:
                return PlateValue.Parse(reader.GetString()!);
            case JsonTokenType.StartArray:
                var numbers = new List<double>();
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                {
                    numbers.Add(reader.TokenType == JsonTokenType.Number
                        ? Finite(ref reader)
                        : throw new JsonException("A plate value is a number, a list of numbers or a text."));
                }

                return PlateValue.Of(numbers);
            default:
                throw new JsonException("A plate value is a number, a list of numbers or a text.");
        }
    }

    public override void Write(Utf8JsonWriter writer, PlateValue value, JsonSerializerOptions options)
    {
        if (value.Numbers.Count == 0)
        {
            writer.WriteStringValue(value.Text);
        }
        else if (value.Numbers.Count == 1)
        {
            writer.WriteNumberValue(value.Numbers[0]);
        }
        else
        {
            writer.WriteStartArray();
            foreach (var number in value.Numbers)
            {
                writer.WriteNumberValue(number);
            }

            writer.WriteEndArray();
        }
    }

    private static double Finite(ref Utf8JsonReader reader) =>
        reader.TryGetDouble(out var number) && double.IsFinite(number) ? number : throw new JsonException("A number on a plate is finite.");
}
