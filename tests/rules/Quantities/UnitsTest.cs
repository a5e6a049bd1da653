using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Tests.Quantities;

/// <summary>How figures are written, and which units stand for the same thing.</summary>
public sealed class UnitsTest
{
    [Theory]
    [InlineData("ohm", "1.5 Ω")]
    [InlineData("kilohm", "1.5 kΩ")]
    [InlineData("megohm", "1.5 MΩ")]
    [InlineData("volt", "1.5 V")]
    [InlineData("amp", "1.5 A")]
    [InlineData("milliamp", "1.5 mA")]
    [InlineData("watt", "1.5 W")]
    [InlineData("kilowatt", "1.5 kW")]
    [InlineData("horsepower", "1.5 hp")]
    [InlineData("hertz", "1.5 Hz")]
    [InlineData("rpm", "1.5 rpm")]
    [InlineData("microfarad", "1.5 µF")]
    [InlineData("joule", "1.5 J")]
    [InlineData("second", "1.5 s")]
    [InlineData("minute", "1.5 min")]
    [InlineData("celsius", "1.5 °C")]
    [InlineData("kelvin", "1.5 K")]
    [InlineData("percent", "1.5 %")]
    [InlineData("newton-metre", "1.5 N·m")]
    [InlineData("pound-foot", "1.5 lb·ft")]
    [InlineData("metre", "1.5 m")]
    [InlineData("degree", "1.5°")]
    [InlineData("square-millimetre", "1.5 mm²")]
    [InlineData("ratio", "1.5")]
    [InlineData("count", "1.5")]
    [InlineData("awg", "1.5")]
    public void A_figure_is_written_with_its_sign(string unit, string text)
    {
        Assert.Equal(text, Units.Text(1.5, unit));
        Assert.Contains(unit, Units.Ids);
    }

    [Theory]
    [InlineData(0, 3, "0")]
    [InlineData(-0.0125, 2, "-0.013")] // half goes away from nothing
    [InlineData(1234.4, 3, "1234")] // whole figures stay
    [InlineData(99.95, 3, "100")]
    [InlineData(2.50, 3, "2.5")]
    [InlineData(120, 3, "120")] // a nought of a whole figure stays
    [InlineData(0.000123456, 4, "0.0001235")]
    [InlineData(1e-15, 3, "0")]
    public void A_number_has_as_many_figures_as_are_asked_for(double value, int figures, string text) => Assert.Equal(text, Units.Number(value, figures));

    [Fact]
    public void What_is_no_figure_is_not_printed_as_one()
    {
        Assert.Equal(("?", "3 V"), (Units.Given(double.NaN, "volt"), Units.Given(3, "volt")));
        Assert.Contains("finite", Assert.Throws<ArgumentOutOfRangeException>("value", () => Units.Number(double.PositiveInfinity)).Message, StringComparison.Ordinal);
        Assert.Contains("'furlong'", Assert.Throws<ArgumentException>("unit", () => Units.Sign("furlong")).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, "kilohm", "ohm", 2000.0)]
    [InlineData(2, "megohm", "kilohm", 2000.0)]
    [InlineData(20, "milliamp", "amp", 0.02)]
    [InlineData(750, "watt", "kilowatt", 0.75)]
    [InlineData(2, "minute", "second", 120.0)]
    [InlineData(80, "percent", "ratio", 0.8)]
    [InlineData(3, "volt", "volt", 3.0)]
    [InlineData(3, "horsepower", "horsepower", 3.0)]
    [InlineData(3, "volt", "amp", null)]
    [InlineData(3, "hertz", "rpm", null)]
    [InlineData(3, "celsius", "count", null)]
    [InlineData(3, "watt", "volt", null)]
    [InlineData(3, "amp", "rpm", null)]
    [InlineData(3, "second", "hertz", null)]
    [InlineData(3, "ohm", "ratio", null)]
    [InlineData(3, "percent", "celsius", null)]
    [InlineData(3, "count", "microfarad", null)]
    [InlineData(300, "second", "minute", 5.0)]
    [InlineData(0.5, "kilowatt", "watt", 500.0)]
    [InlineData(0.5, "ratio", "percent", 50.0)]
    [InlineData(4, "amp", "milliamp", 4000.0)]
    [InlineData(4700, "ohm", "megohm", 0.0047)]
    [InlineData(3, "microfarad", "ratio", null)]
    [InlineData(3, "furlong", "ohm", null)]
    [InlineData(3, "ohm", "furlong", null)]
    public void Units_of_one_kind_are_converted_and_others_are_not(double value, string from, string to, double? converted)
    {
        var read = UnitFamilies.Convert(value, from, to);
        Assert.Equal(converted is null, read is null);
        Assert.Equal(converted ?? 0, read ?? 0, 1e-9);
    }
}
