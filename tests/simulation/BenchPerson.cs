using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Windings;

namespace WireCoach.Simulation;

/// <summary>Somebody who measures what is asked, and may make one mistake.</summary>
internal sealed class BenchPerson(SimulatedMotor motor, SimulatedMeter meter, Random chance, bool mistaken, bool looks = false, params string[] tests)
{
    private readonly int _mistakeAt = mistaken ? chance.Next(1, 7) : -1;
    private int _touches;

    public List<Fact.Reading> Readings { get; } = [];

    /// <summary>Results of tests between windings.</summary>
    public List<Fact.BenchTest> Tests { get; } = [];

    public int Touches => _touches;

    /// <summary>Those of the touches that were asked for only to bear out what earlier ones said.</summary>
    public int BorneOut { get; private set; }

    public void Measure(string from, string to)
    {
        _touches++;
        var (ohms, kick) = motor.Read(from, to);
        if (_touches == _mistakeAt)
        {
            (ohms, kick) = Mistake(ohms);
        }

        Readings.Add(ohms is { } value ? new() { From = from, To = to, Ohms = meter.Show(value) }
            : kick && chance.NextDouble() < 0.7 ? new() { From = from, To = to, Kick = true }
            : new() { From = from, To = to, Open = true });
    }

    /// <summary>Follows the identifier until it asks no more; a pair that was asked again replaces nothing, both stand.</summary>
    public Identification Follow(Identifier identifier, IdentificationInput input, int most = 60)
    {
        for (; ; )
        {
            var found = identifier.Identify(input with { Leads = motor.Tags, Readings = Readings, Meter = Said, Tests = Tests, TestsAllowed = tests }).Value!;
            if (found.Status == IdentificationStatus.CannotTell && found.Next is null && Looked(found, input) is { } more && _touches < most)
            {
                input = more;
                continue;
            }

            if (found.Next is { Setup: { } setup } && _touches < most)
            {
                // A look costs nothing, so it comes before a test.
                if (Looked(found, input) is { } seen)
                {
                    input = seen;
                    continue;
                }

                Test(found.Next.Kind, setup);
                continue;
            }

            if (found.Next is null || found.Status is IdentificationStatus.Identified or IdentificationStatus.Faulty || _touches >= most)
            {
                return found;
            }

            if (found.Status == IdentificationStatus.CannotTell)
            {
                Bridge(found.Next);
                input = input with { CapacitorBridged = true };
            }

            BorneOut += found.Next.Why.Id is "windings.one-slip-would-turn-it" or "windings.would-show-a-slip" or "windings.read-again" ? 1 : 0;
            Measure(found.Next.From, found.Next.To);
        }
    }

    /// <summary>Feeds one winding and reads another; a mistake shows anything.</summary>
    private void Test(string test, TestSetup setup)
    {
        _touches++;
        var (volts, outcome) = motor.Test(test, setup);
        if (_touches == _mistakeAt)
        {
            (volts, outcome) = (volts is null ? null : setup.AppliedVolts * 0.7 * chance.NextDouble(), outcome is null ? null : outcome == "no-kick" ? "up-on-make" : "no-kick");
        }

        Tests.Add(new() { Test = test, Drive = setup.Drive, Read = setup.Read, AppliedVolts = setup.AppliedVolts, Value = volts is { } read ? Math.Round(read, 2) : null, Unit = volts is null ? null : "volt", Outcome = outcome });
    }

    /// <summary>What a person who can looks for where the ohms leave kinds open; <see langword="null"/> when all was looked at.</summary>
    private IdentificationInput? Looked(Identification found, IdentificationInput input)
    {
        if (!looks || found.Undecided.Count == 0)
        {
            return null;
        }

        if (input.Looks?.Brushes == true && motor.Windings.Exists(winding => winding.Role == "armature") && !Readings.Exists(reading => reading.ChangesWithShaft))
        {
            var armature = motor.Windings.Find(winding => winding.Role == "armature").Tags;
            var at = Readings.FindIndex(reading => reading.Ohms is not null && armature.Contains(reading.From) && armature.Contains(reading.To));
            if (at >= 0)
            {
                Readings[at] = Readings[at] with { ChangesWithShaft = true };
                return input;
            }
        }

        if (input.Looks?.Brushes == true && input.RingLeads.Count == 0 && motor.Windings.Find(winding => winding.Role == "rotor").Tags is { } ring)
        {
            return input with { RingLeads = ring };
        }

        var seen = input with { HasCapacitor = motor.CapacitorUse != "none", CapacitorUse = motor.CapacitorUse is "start" or "run" ? motor.CapacitorUse : null, Looks = motor.Looks };
        return seen == input ? null : seen;
    }

    /// <summary>Asked whether the capacitor is in the way: bridges it; the earlier reading no longer counts.</summary>
    private void Bridge(NextReading pair)
    {
        motor.BridgeCapacitors();
        Readings.RemoveAll(reading => reading.Ohms is null && new[] { reading.From, reading.To }.Order().SequenceEqual(new[] { pair.From, pair.To }.Order()));
    }

    public MeterInput Said => new() { Percent = meter.Percent, Counts = meter.Counts, TestLeadOhms = meter.LeadOhms, Zeroed = false };

    /// <summary>A slip: nothing where something is, something where nothing is, or another figure.</summary>
    private (double? Ohms, bool Kick) Mistake(double? ohms)
    {
        var other = 0.5 * Math.Exp(chance.NextDouble() * Math.Log(60));
        return ohms is null ? (other, false) : chance.Next(2) == 0 ? (null, false) : (ohms.Value * Math.Exp(((2 * chance.NextDouble()) - 1) * Math.Log(4)), false);
    }
}
