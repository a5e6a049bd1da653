using System.Numerics;
using System.Text.Json;
using WireCoach.Rules.Machines;

namespace WireCoach.Rules.Tests.Machines;

/// <summary>Every expected figure of every machine vector, each within the vector's own tolerance.</summary>
public sealed class MachineVectorsTest
{
    private static readonly JsonElement[] All = [.. Vectors.Of("machines.json").GetProperty("vectors").EnumerateArray()];

    private static readonly Dictionary<string, Func<JsonElement, Dictionary<string, double>>> Models = new(StringComparer.Ordinal)
    {
        ["drf-half"] = SinglePhaseFigures.Of,
        ["drf-approx-Xm-at-terminals"] = SinglePhaseFigures.Approximate,
        ["param-tests"] = SinglePhaseFigures.Tests,
        ["locked-rotor-two-branch"] = TwoWindingFigures.Locked,
        ["phasor-sum"] = TwoWindingFigures.Sum,
        ["two-winding-drf"] = TwoWindingFigures.Running,
        ["two-phase-symmetrical-components"] = TwoWindingFigures.TwoPhase,
        ["three-phase-T"] = ThreePhaseFigures.Of,
        ["three-phase-tests"] = ThreePhaseFigures.Tests,
        ["three-phase-one-line-open"] = ThreePhaseFigures.LineOpen,
        ["three-phase-unbalanced-supply"] = ThreePhaseFigures.Unbalanced,
        ["power-balance"] = ThreePhaseFigures.PowerBalance,
        ["nema-unbalance"] = ThreePhaseFigures.UnequalVolts,
        ["coupled-coils"] = CoupledCoilFigures.Of,
    };

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_figure_of_the_vector_is_met(string id)
    {
        var vector = All.Single(item => item.GetProperty("id").GetString() == id);
        var got = Models[vector.GetProperty("model").GetString()!](vector.GetProperty("inputs"));
        var tolerance = vector.GetProperty("tolerance").GetDouble();
        Assert.All(Flat(vector.GetProperty("expected")), figure =>
        {
            Assert.True(got.ContainsKey(figure.Key), $"{id} asks for {figure.Key}");
            Assert.True(Math.Abs(got[figure.Key] - figure.Value) <= tolerance * Math.Max(Math.Abs(figure.Value), 1e-3), $"{id} {figure.Key}: {got[figure.Key]} instead of {figure.Value}");
        });
    }

    [Theory]
    [InlineData("CR-01")]
    [InlineData("CR-03")]
    public void The_curve_over_slip_is_met(string id)
    {
        var vector = All.Single(item => item.GetProperty("id").GetString() == id);
        var (machine, feed) = TwoWindingFigures.Machine(vector.GetProperty("inputs"));
        Assert.All(vector.GetProperty("table").GetProperty("rows").EnumerateArray(), row =>
        {
            var point = machine.At(feed, row[0].GetDouble(), new Losses());
            Assert.Equal(row[1].GetDouble(), point.Line.Torque, 1e-4 * row[1].GetDouble());
            Assert.Equal(row[2].GetDouble(), point.MainAmps.Magnitude, 1e-4 * row[2].GetDouble());
            Assert.Equal(row[3].GetDouble(), point.StartAmps.Magnitude, 1e-4 * row[3].GetDouble());
            Assert.Equal(row[4].GetDouble(), point.Line.Amps, 1e-4 * row[4].GetDouble());
        });
    }

    public static TheoryData<string> Ids() => [.. Every];

    private static readonly string[] Every = [.. All.Select(item => item.GetProperty("id").GetString()!)];

    /// <summary>The published vectors bear odd numbers; none of them may be missing from the file.</summary>
    [Theory]
    [InlineData("SP", 17)]
    [InlineData("PT", 3)]
    [InlineData("TW", 15)]
    [InlineData("CR", 5)]
    [InlineData("3P", 7)]
    [InlineData("SPH", 5)]
    [InlineData("UNB", 3)]
    [InlineData("CC", 23)]
    public void No_published_vector_is_left_out(string kind, int last) =>
        Assert.Equal(Enumerable.Range(1, last).Where(number => number % 2 == 1).Select(number => $"{kind}-{number:D2}"), Every.Where(id => id.StartsWith(kind + "-", StringComparison.Ordinal)));

    private static IEnumerable<KeyValuePair<string, double>> Flat(JsonElement expected) => expected.TryGetProperty("rows", out var rows) ? Table(expected, rows) : expected.EnumerateObject().SelectMany(member =>
        member.Value.ValueKind == JsonValueKind.Array
            ? member.Value.EnumerateArray().Select((part, index) => KeyValuePair.Create($"{member.Name}.{(index == 0 ? "re" : "im")}", part.GetDouble()))
            : [KeyValuePair.Create(member.Name, member.Value.GetDouble())]);

    private static IEnumerable<KeyValuePair<string, double>> Table(JsonElement expected, JsonElement rows) => rows.EnumerateArray().SelectMany(row =>
        expected.GetProperty("columns").EnumerateArray().Zip(row.EnumerateArray()).Skip(1).Select(cell => KeyValuePair.Create($"{row[0].GetDouble()}.{cell.First.GetString()}", cell.Second.GetDouble())));

    internal static double Angle(Complex phasor) => phasor.Phase * 180 / Math.PI;

    internal static double Number(JsonElement inputs, string name, double otherwise = 0) =>
        inputs.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble() : otherwise;

    internal static BenchReading Reading(JsonElement inputs, string name) =>
        inputs.GetProperty(name) is var values ? new BenchReading(values[0].GetDouble(), values[1].GetDouble(), values[2].GetDouble()) : null!;

    internal static Complex Pair(JsonElement inputs, string name) =>
        inputs.GetProperty(name) is var values ? new Complex(values[0].GetDouble(), values[1].GetDouble()) : default;
}
