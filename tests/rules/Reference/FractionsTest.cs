using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Reference;

public sealed class FractionsTest
{
    [Theory]
    [InlineData("1/6", 1 / 6.0)]
    [InlineData("1 1/2", 1.5)]
    [InlineData("1-1/2", 1.5)]
    [InlineData("7.5", 7.5)]
    [InlineData(" 3/4 ", 0.75)]
    [InlineData("-1", null)]
    [InlineData("1/0", null)]
    [InlineData("ten", null)]
    [InlineData("", null)]
    [InlineData("1 2", null)]
    public void Sizes_are_read_as_the_trade_writes_them(string text, double? size)
    {
        var read = Fractions.Read(text);
        Assert.Equal(size is null, read is null);
        Assert.Equal(size ?? 0, read ?? 0, 1e-12);
    }
}
