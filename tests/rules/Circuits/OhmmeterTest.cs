using System.Text.Json;
using WireCoach.Rules.Circuits;

namespace WireCoach.Rules.Tests.Circuits;

/// <summary>Expected ohms come from exact fractions, worked out twice in two ways (see the vectors' file).</summary>
public sealed class OhmmeterTest
{
    private static readonly JsonElement[] Networks =
        [.. Vectors.Of("ohmmeter.json").GetProperty("networks").EnumerateArray()];

    [Theory]
    [MemberData(nameof(Ids))]
    public void It_reads_every_pair_of_a_known_winding(string id)
    {
        var network = Networks.Single(item => item.GetProperty("id").GetString() == id);
        var coils = network.GetProperty("coils").EnumerateArray().Select(coil => new Wire(
            coil.GetProperty("from").GetString()!, coil.GetProperty("to").GetString()!, Number(coil.GetProperty("ohms"))));
        var joins = network.GetProperty("joins").EnumerateArray()
            .Select(join => (IReadOnlyList<string>)[.. join.EnumerateArray().Select(lead => lead.GetString()!)]);
        var readings = network.GetProperty("readings").EnumerateArray().ToList();
        var read = Ohmmeter.Read(coils, joins, readings.Select(reading => (reading.GetProperty("a").GetString()!, reading.GetProperty("b").GetString()!)));
        Assert.All(readings.Zip(read), pair =>
        {
            var (expected, got) = (Number(pair.First.GetProperty("ohms")), pair.Second);
            Assert.Equal(expected is null, got is null);
            Assert.Equal(expected ?? 0, got ?? 0, 1e-6 * Math.Max(1, expected ?? 0));
        });
    }

    public static TheoryData<string> Ids() => [.. Networks.Select(network => network.GetProperty("id").GetString()!)];

    /// <summary>The published networks bear odd numbers; none of them may be missing from the file.</summary>
    [Fact]
    public void No_published_network_is_left_out() =>
        Assert.Equal(Enumerable.Range(1, 55).Where(number => number % 2 == 1).Select(number => $"N{number:D2}"), Networks.Select(network => network.GetProperty("id").GetString()));

    [Fact]
    public void A_milliohm_beside_a_gigaohm_keeps_its_digits()
    {
        var read = Ohmmeter.Read([new("A", "B", 1e-3), new("B", "C", 1e9), new("C", "A", 1e9)], null, [("A", "B"), ("A", "C")]);
        Assert.Equal(1e-3 / (1 + (1e-3 / 2e9)), read[0]!.Value, 1e-15);
        Assert.Equal((1e9 + 1e-3) / (2 + 1e-12), read[1]!.Value, 1e-2);
    }

    [Fact]
    public void Joined_leads_read_zero_and_leads_apart_read_open()
    {
        var read = Ohmmeter.Read([new("T1", "T4", 2), new("T2", "T5", 0), new("T3", "T6", null)], [["T4", "T7"]], [("T4", "T7"), ("T2", "T5"), ("T1", "T2"), ("T3", "T6"), ("T1", "T7"), ("T1", "X")]);
        Assert.Equal([0, 0, null, null, 2, null], read);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void Ohms_that_cannot_be_are_refused_by_the_wire_that_has_them(double ohms) =>
        Assert.Contains("between T1 and T4", Assert.Throws<ArgumentException>("wires", () => new Ohmmeter([new("T2", "T5", 2), new("T1", "T4", ohms)])).Message, StringComparison.Ordinal);

    private static double? Number(JsonElement value) => value.ValueKind == JsonValueKind.Null ? null : value.GetDouble();
}
