using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>What reads like no winding and no protector is not called one, nor a motor with something the matter.</summary>
public sealed class NoWindingTest
{
    private static readonly Identifier Identifier = new(Trade.Knowledge);

    [Theory]
    [InlineData("A-B 4900, A-C 15000, B-C 20000, A-B 4900")]
    [InlineData("A-B 4900, A-B 4900")]
    [InlineData("A-B 3100, C-D 3200, A-C open, A-D open, B-C open, B-D open")]
    public void Thousands_of_ohms_are_neither_winding_nor_protector(string table)
    {
        var found = Of(table);
        Assert.Equal(IdentificationStatus.CannotTell, found.Status);
        Assert.Empty(found.Windings);
        Assert.Empty(found.Faults);
        Assert.Contains(found.Notes[0].Id, new[] { "windings.no-winding", "windings.nothing-fits" });
    }

    [Theory]
    [InlineData("A-B 4900, A-C open, B-C open")]
    [InlineData("A-B 60, A-C 15000, B-C 20000")]
    [InlineData("A-B 4900, A-C 15000, B-C 20000")]
    public void A_protector_reads_next_to_nothing(string table) => Assert.DoesNotContain(Of(table).Windings, winding => winding.Role == "protector");

    /// <summary>A protector beside a run winding that is broken: what hangs on its far end is not in the way of the meter.</summary>
    [Fact]
    public void A_protector_beside_a_broken_winding_is_still_one()
    {
        var found = Of("A-B 0.1, A-C open, B-C open");
        Assert.Equal(IdentificationStatus.Faulty, found.Status);
        Assert.Contains(found.Faults, fault => fault.Id == "open-run-winding");
    }

    private static Identification Of(string table)
    {
        var readings = table.Split(", ").Select(one => one.Split(' ')).Select(one => new Fact.Reading
        {
            From = one[0].Split('-')[0],
            To = one[0].Split('-')[1],
            Ohms = one[1] == "open" ? null : double.Parse(one[1], null),
            Open = one[1] == "open",
        }).ToList();
        string[] leads = [.. readings.SelectMany(reading => new[] { reading.From, reading.To }).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        return Identifier.Identify(new() { Leads = leads, Readings = readings }).Value!;
    }
}
