using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>What was found before never stands in for what other facts would find.</summary>
public sealed class RecentIdentificationsTest
{
    private static readonly IdentificationInput Plain = new()
    {
        Leads = ["1", "2", "3", "4"],
        Readings = [Read("1", "2", 2.1), Read("3", "4", 6.4), Read("1", "3", null)],
    };

    public static TheoryData<string, IdentificationInput> Others => new()
    {
        { nameof(IdentificationInput.Leads), Plain with { Leads = ["1", "2", "3", "4", "5"] } },
        { nameof(IdentificationInput.Markings), Plain with { Markings = new Dictionary<string, string> { ["1"] = "T1" } } },
        { nameof(IdentificationInput.Plate), Plain with { Plate = PlateFields.Empty.With("rpm", PlateValue.Of([1725])) } },
        { nameof(IdentificationInput.HasCapacitor), Plain with { HasCapacitor = true } },
        { nameof(IdentificationInput.CapacitorUse), Plain with { CapacitorUse = "run" } },
        { nameof(IdentificationInput.CapacitorBridged), Plain with { CapacitorBridged = true } },
        { nameof(IdentificationInput.Looks), Plain with { Looks = new() { BothWays = true } } },
        { nameof(IdentificationInput.RingLeads), Plain with { RingLeads = ["1"] } },
        { nameof(IdentificationInput.Meter), Plain with { Meter = new MeterInput { TestLeadOhms = 0.2 } } },
        { nameof(IdentificationInput.Readings), Plain with { Readings = [Read("1", "2", 2.1), Read("3", "4", 6.4), Read("1", "3", 900)] } },
        { nameof(IdentificationInput.Tests), Plain with { Tests = [new() { Test = "induced-voltage", Drive = ["1", "2"], Read = ["3", "4"], AppliedVolts = 12, Value = 6 }] } },
        { nameof(IdentificationInput.TestsAllowed), Plain with { TestsAllowed = ["induced-voltage"] } },
        { nameof(IdentificationInput.TestVolts), Plain with { TestVolts = 24 } },
        { nameof(IdentificationInput.Unreadable), Plain with { Unreadable = [("2", "3")] } },
        { nameof(IdentificationInput.Shortcuts), Plain with { Shortcuts = true } },
        { nameof(IdentificationInput.CheckFrame), Plain with { CheckFrame = true } },
    };

    [Fact]
    public void Every_part_of_the_question_is_told_apart() =>
        Assert.Equal(typeof(IdentificationInput).GetProperties().Select(part => part.Name).Order(), Others.Select(row => row.Data.Item1).Order());

    [Theory]
    [MemberData(nameof(Others))]
    public void A_question_that_differs_in_one_part_is_answered_afresh(string part, IdentificationInput other)
    {
        var memo = new RecentIdentifications(8);
        memo.Of(Plain, () => Found(1));
        Assert.True(memo.Of(other, () => Found(2)).TouchesSoFar == 2, part);
        Assert.Equal(1, memo.Of(Plain with { Readings = [.. Plain.Readings.Select(reading => reading with { Span = "said", At = DateTimeOffset.UnixEpoch })] }, () => Found(3)).TouchesSoFar);
    }

    [Fact]
    public void No_more_are_kept_than_were_asked_for()
    {
        var memo = new RecentIdentifications(1);
        memo.Of(Plain, () => Found(1));
        memo.Of(Plain with { HasCapacitor = true }, () => Found(2));
        Assert.Equal(3, memo.Of(Plain, () => Found(3)).TouchesSoFar);
    }

    private static Identification Found(int touches) => new() { Status = IdentificationStatus.CannotTell, TouchesSoFar = touches, ExpectedTouchesLeft = 0 };

    private static Fact.Reading Read(string from, string to, double? ohms) => new() { From = from, To = to, Ohms = ohms, Open = ohms is null };
}
