using WireCoach.Rules.Cases;
using WireCoach.Rules.Windings;
using WireCoach.Simulation;

namespace WireCoach.Rules.Tests.Windings;

/// <summary>Sound motors that are met less often: none is called faulty, nor given the windings of another kind.</summary>
public sealed class OddMotorsTest
{
    private static readonly Identifier Identifier = new(Trade.Knowledge);

    [Theory]
    [InlineData("universal motor, tapped field", "armature A1 A2 2.6; series-field F1 F2 1.5; speed-tap F2 F3 1.0", null)]
    [InlineData("shaded pole, two speeds", "run C H 33; speed-tap H L 12", false)]
    [InlineData("brake and thermistors beside three leads", "phase U n 1.4; phase V n 1.4; phase W n 1.41; other B1 B2 26; other P1 P2 590", null)]
    [InlineData("brake and thermistors beside six leads", "phase T1 T4 6; phase T2 T5 6.1; phase T3 T6 6; other B1 B2 480; other P1 P2 160", null)]
    [InlineData("fan whose capacitor winding comes from the lowest speed", "run C H 34; speed-tap H L 9; start L K 60", true)]
    [InlineData("fan whose capacitor winding comes from the middle", "run C H 34; speed-tap H L 9; start H K 60", true)]
    public void Sound_motors_are_not_called_faulty_nor_another_kind(string name, string coils, bool? capacitor)
    {
        for (var seed = 0; seed < 3; seed++)
        {
            var (motor, chance) = (Made(name, coils, seed), new Random(seed));
            var meter = new SimulatedMeter(chance, 2, 1, 0, 0.01);
            var leads = motor.Tags;
            var readings = from one in leads from other in leads where leads.IndexOf(one) < leads.IndexOf(other)
                           select motor.Read(one, other).Ohms is { } ohms ? new Fact.Reading { From = one, To = other, Ohms = meter.Show(ohms) } : new Fact.Reading { From = one, To = other, Open = true };
            var found = Identifier.Identify(new() { Leads = leads, Readings = [.. readings], HasCapacitor = capacitor, CapacitorBridged = capacitor, Meter = new() { Percent = 2, Counts = 1, TestLeadOhms = 0 } }).Value!;
            Assert.NotEqual(IdentificationStatus.Faulty, found.Status);
            Assert.True(found.Status != IdentificationStatus.Identified || Judge.IsRight(motor, found), $"seed {seed}: {string.Join(", ", found.Windings.Select(winding => $"{winding.Role} {string.Join('-', winding.Leads.Select(motor.NodeOf))}"))}");
        }
    }

    /// <summary>Two fans in one box, or a stepper, read like one tapped fan with a break: which of them it is, a look tells, and no place of a break is named before.</summary>
    [Theory]
    [InlineData("two fans with a capacitor each", "run C H 20; start C K 35; run T1 T2 20; start T1 T3 35")]
    [InlineData("two fans of unlike size", "run C H 24; start C K 61; run T1 T2 90; start T1 T3 130")]
    [InlineData("stepper with two tapped windings", "run C H 5; run C K 5; run T1 T2 5; run T1 T3 5")]
    public void Two_motors_in_one_box_are_not_called_a_broken_one(string name, string coils)
    {
        var motor = Made(name, coils, 1);
        var input = Table(motor);
        var found = Identifier.Identify(input).Value!;
        Assert.Equal((IdentificationStatus.CannotTell, 0), (found.Status, found.Faults.Count));
        Assert.Contains("windings.one-motor-or-two", found.Notes.Select(note => note.Id));
        Assert.Contains("psc-tapped", found.Undecided);
        Assert.Equal(IdentificationStatus.CannotTell, Identifier.Identify(input with { Looks = new() { Speeds = false, Brushes = false, BothWays = false } }).Value!.Status);
        Assert.Equal(IdentificationStatus.Faulty, Identifier.Identify(input with { Looks = new() { Speeds = true, Brushes = false, BothWays = false, CapacitorOutside = true }, HasCapacitor = true, CapacitorUse = "run" }).Value!.Status);
    }

    /// <summary>Of two groups that a break left, no reading tells between which ends it lies.</summary>
    [Fact]
    public void A_break_that_may_lie_at_several_places_is_said_of_none_of_them_as_a_fact()
    {
        var fan = Table(Made("open between two speeds", "run C H 14; speed-tap M L 4; start C K 30", 1)) with { HasCapacitor = true, CapacitorUse = "run", Looks = new() { Speeds = true, Brushes = false, BothWays = false, CapacitorOutside = true } };
        var several = Identifier.Identify(fan).Value!;
        Assert.Equal(IdentificationStatus.Faulty, several.Status);
        Assert.True(several.Faults.Select(fault => string.Join('-', fault.Leads)).Distinct().Count() > 1);
        Assert.All(several.Faults, fault => Assert.Equal("windings.open-here-or-there", fault.Why.Id));

        var star = Made("a star with an open arm", "phase T1 n 5; phase T2 n 5; phase T0 n 0.001", 1);
        star.Lead("9", "T3");
        star.Tags.Add("9");
        var one = Identifier.Identify(Table(star) with { Plate = PlateFields.Empty.With("phases", PlateValue.Of(3)), HasCapacitor = false, Looks = new() { Brushes = false, Speeds = false } }).Value!;
        Assert.Equal(["windings.open"], one.Faults.Select(fault => fault.Why.Id).Distinct());
    }

    /// <summary>A break that leaves a lead by itself is no second motor.</summary>
    [Fact]
    public void A_tapped_fan_with_a_lead_that_reads_to_nothing_is_broken()
    {
        var motor = Made("open at the low end", "run C H 14; speed-tap H M 4; start C K 30", 1);
        motor.Lead("9", "L");
        motor.Tags.Add("9");
        Assert.Equal(IdentificationStatus.Faulty, Identifier.Identify(Table(motor)).Value!.Status);
    }

    /// <summary>Every pair, read twice with a good meter.</summary>
    private static IdentificationInput Table(SimulatedMotor motor)
    {
        var readings = from one in motor.Tags from other in motor.Tags where motor.Tags.IndexOf(one) < motor.Tags.IndexOf(other)
                       select motor.Read(one, other).Ohms is { } ohms ? new Fact.Reading { From = one, To = other, Ohms = Math.Round(ohms, 1) } : new Fact.Reading { From = one, To = other, Open = true };
        return new() { Leads = motor.Tags, Readings = [.. readings, .. readings], Meter = new() { Percent = 0.5, Counts = 1, TestLeadOhms = 0 } };
    }

    private static SimulatedMotor Made(string name, string coils, int seed)
    {
        var motor = new SimulatedMotor { Layout = name };
        var ends = coils.Split("; ").Select(coil => coil.Split(' ')).ToList();
        var nodes = ends.SelectMany(coil => coil[1..3]).Where(node => char.IsUpper(node[0])).Distinct(StringComparer.Ordinal).ToArray();
        new Random(seed).Shuffle(nodes);
        for (var lead = 0; lead < nodes.Length; lead++)
        {
            motor.Lead($"{lead + 1}", nodes[lead]);
            motor.Tags.Add($"{lead + 1}");
        }

        foreach (var coil in ends)
        {
            motor.Coil(coil[1], coil[2], double.Parse(coil[3], null));
            motor.Windings.Add((coil[0], [.. coil[1..3].Where(node => char.IsUpper(node[0])).Select(motor.TagOf).Order(StringComparer.Ordinal)]));
        }

        return motor;
    }
}
