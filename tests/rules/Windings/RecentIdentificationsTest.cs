using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>What was found is given again for the same input, and only for the same input.</summary>
public sealed class RecentIdentificationsTest
{
    private static readonly TradeKnowledge Knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);

    private static readonly IdentificationInput Four = new()
    {
        Leads = ["1", "2", "3", "4"],
        HasCapacitor = true,
        CapacitorBridged = true,
        Readings = [IdentifierTest.Ohms("1-2", 2.0), IdentifierTest.Open("1-3"), IdentifierTest.Ohms("3-4", 6.4)],
    };

    [Fact]
    public void The_same_readings_are_not_searched_again()
    {
        var identifier = new Identifier(Knowledge);
        Assert.Same(Give(identifier, Four), Give(identifier, Four with { Readings = [.. Four.Readings] }));
    }

    [Fact]
    public void Nothing_is_kept_where_nothing_may_be() =>
        Assert.NotSame(Give(new(Knowledge, remembered: 0), Four), Give(new(Knowledge, remembered: 0), Four));

    [Fact]
    public void The_oldest_goes_first()
    {
        var identifier = new Identifier(Knowledge, remembered: 1);
        var first = Give(identifier, Four);
        _ = Give(identifier, Four with { Leads = ["1", "2", "3", "5"], Readings = [.. Four.Readings.Take(2)] });
        Assert.NotSame(first, Give(identifier, Four));
    }

    /// <summary>Inputs that differ in one thing each.</summary>
    public static TheoryData<string, IdentificationInput> Others() => new()
    {
        { "a figure", Four with { Readings = [IdentifierTest.Ohms("1-2", 2.1), .. Four.Readings.Skip(1)] } },
        { "a sign", Four with { Readings = [new Fact.Reading { From = "1", To = "2", Kick = true }, .. Four.Readings.Skip(1)] } },
        { "the shaft", Four with { Readings = [Four.Readings[0] with { ChangesWithShaft = true }, .. Four.Readings.Skip(1)] } },
        { "the order", Four with { Readings = [.. Four.Readings.Reverse()] } },
        { "the tags", Four with { Leads = ["1", "2", "4", "3"] } },
        { "the meter", Four with { Meter = new() { Percent = 3, Counts = 5 } } },
        { "the capacitor", Four with { HasCapacitor = false } },
        { "its bridge", Four with { CapacitorBridged = null } },
        { "the plate", Four with { Plate = Four.Plate.With("phases", PlateValue.Of(3)) } },
        { "the speeds", Four with { Plate = Four.Plate.With("rpm", PlateValue.Of(1740)) } },
        { "what the capacitor is for", Four with { CapacitorUse = "run" } },
        { "the frame", Four with { CheckFrame = !Four.CheckFrame } },
        { "what cannot be read", Four with { Unreadable = [("1", "4")] } },
        { "a marking", Four with { Markings = new Dictionary<string, string>(StringComparer.Ordinal) { ["1"] = "T1" } } },
    };

    [Theory]
    [MemberData(nameof(Others))]
    public void Another_input_is_searched_by_itself(string what, IdentificationInput other)
    {
        var identifier = new Identifier(Knowledge);
        Assert.True(!ReferenceEquals(Give(identifier, Four), Give(identifier, other)), $"{what} was taken for the same");
    }

    private static Identification Give(Identifier identifier, IdentificationInput input) => identifier.Identify(input).Value!;
}
