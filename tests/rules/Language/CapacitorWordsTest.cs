using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Which capacitor a figure is of: the motor's own or one that is offered, for starting or for running.</summary>
public sealed class CapacitorWordsTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("can I use a bigger capacitor? mine is 30 uF 370 V run cap and I have a 35 uF 440 V", 30.0, 35.0)]
    [InlineData("run cap is 30 uF, can I put a 35 uF in?", 30.0, 35.0)]
    [InlineData("can I use a 35 uF instead of the 30 uF", 30.0, 35.0)]
    [InlineData("is it ok to fit a 35 uF 440 V", null, 35.0)]
    [InlineData("the cap is 30 uF 370 V", 30.0, null)]
    [InlineData("start cap 189 uF and run cap 30 uF, is that ok?", 30.0, null)]
    [InlineData("can I put a 40 uF in where it says 25 uF run cap", 25.0, 40.0)]
    [InlineData("can I put a 40 uF in place of a 25 uF", 25.0, 40.0)]
    [InlineData("the cap says 25 uF can I use 40", 25.0, 40.0)]
    [InlineData("I only have a 30 uF, the plate says 25", 25.0, 30.0)]
    [InlineData("would a 35 do instead of a 25 uF run cap", 25.0, 35.0)]
    [InlineData("mine is 25 uF and I have a 30", 25.0, 30.0)]
    [InlineData("it came with a 25 uF and I found a 30 uF in the drawer", 25.0, 30.0)]
    [InlineData("I have a cap that reads 24 uF, plate says 25", 25.0, null)]
    [InlineData("can I run 2 of 25 uF in parallel", null, 25.0)]
    public void A_capacitor_that_is_offered_is_not_the_one_on_the_motor(string text, double? own, double? spare)
    {
        var file = CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), Listener.Understand(text).Facts);
        Assert.Equal(own, file.Capacitors.LastOrDefault()?.Microfarads);
        Assert.Equal(spare, file.SpareCapacitor?.Microfarads);
        Assert.Empty(Listener.Understand(text).Dangers);
    }

    [Theory]
    [InlineData("I have a 30 uF run cap and a 100 uF start cap", "30 run, 100 start")]
    [InlineData("a 30 uF 370 V run cap and a 189-227 uF start cap", "30 run, 189 start")]
    [InlineData("start cap 189 uF and run cap 30 uF", "189 start, 30 run")]
    [InlineData("plate: 1.1 kW 7.1 A 2800 min-1 C 30 uF 450 V", "30 unknown")]
    public void Each_of_two_capacitors_is_for_what_stands_beside_it(string text, string uses) =>
        Assert.Equal(uses, string.Join(", ", Listener.Understand(text).Facts.OfType<Fact.Capacitor>().Select(one => $"{one.Microfarads} {one.Use}")));
}
