using System.Text.Json;
using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Tests.Cases;

/// <summary>A field of a plate is a number, several of them, or words.</summary>
public sealed class PlateValueTest
{
    [Theory]
    [InlineData("115/230", 115.0, 230.0)]
    [InlineData("208-230/460", 208.0, 230.0, 460.0)]
    [InlineData(" 10.4 ", 10.4)]
    [InlineData("220−240", 220.0, 240.0)]
    [InlineData("-5", -5.0)]
    [InlineData("−5/6", -5.0, 6.0)]
    [InlineData("CONT")]
    [InlineData("S2 30 min")]
    [InlineData("1,5")]
    [InlineData("-")]
    public void It_is_read_as_it_is_written(string text, params double[] numbers)
    {
        var read = PlateValue.Parse(text);
        Assert.Equal(numbers, read.Numbers);
        Assert.Equal(text.Trim(), read.Text);
        Assert.Equal(numbers.Length > 0 ? numbers[0] : null, read.Number);
    }

    [Theory]
    [InlineData("230", "230", "230")]
    [InlineData("[115,230]", "[115,230]", "115/230")]
    [InlineData("[10.40001]", "10.40001", "10.4")]
    [InlineData("\"115/230\"", "[115,230]", "115/230")]
    [InlineData("\"CONT\"", "\"CONT\"", "CONT")]
    [InlineData("[]", "\"\"", "")]
    public void It_is_sent_as_it_was_given(string given, string sent, string text)
    {
        var read = JsonSerializer.Deserialize<PlateValue>(given)!;
        Assert.Equal(text, read.Text);
        Assert.Equal(sent, JsonSerializer.Serialize(read));
    }

    [Theory]
    [InlineData("true", "a list of numbers or a text")]
    [InlineData("[115,\"230\"]", "a list of numbers or a text")]
    [InlineData("[115", null)]
    [InlineData("1e999", "finite")]
    public void Anything_else_is_refused(string given, string? because)
    {
        var refused = Assert.ThrowsAny<JsonException>(() => JsonSerializer.Deserialize<PlateValue>(given));
        Assert.Contains(because ?? "", refused.Message, StringComparison.Ordinal);
    }
}
