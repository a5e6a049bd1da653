using WireCoach.Rules.Cases;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Diagnosis;

/// <summary>A measured capacitor speaks of itself and not of the other one.</summary>
public sealed class CapacitorReadingsTest
{
    private static readonly TradeKnowledge Knowledge = Trade.Knowledge;
    private static readonly Diagnostician Diagnostician = new(Knowledge);
    private static readonly IReadOnlyDictionary<string, TaskAccess> Open = TaskAccess.Everywhere(Knowledge, TaskAccess.Open);
    private static readonly Fact.Capacitor Start = new() { Use = "start", Microfarads = 189 };
    private static readonly Fact.Capacitor Run = new() { Use = "run", Microfarads = 30 };

    public static TheoryData<string, string, Fact[]> Readings() => new()
    {
        { "to run, faded", "run weak", [Run with { MeasuredMicrofarads = 12 }] },
        { "to run, sound", "run good", [Run with { MeasuredMicrofarads = 29 }] },
        { "for the start, with next to nothing", "start open", [Start with { MeasuredMicrofarads = 6.6 }] },
        { "both", "start good, run weak", [Start with { MeasuredMicrofarads = 190 }, Run with { MeasuredMicrofarads = 12 }] },
        { "one against its own marks, though the other's were read last", "start weak", [Start, Run, new Fact.Capacitor { Use = "start", MeasuredMicrofarads = 100 }] },
        { "of a size that is only made for the start", "start open", [new Fact.Capacitor { Microfarads = 170 }, Value(6.6)] },
        { "a marked range", "start weak", [new Fact.Capacitor { Microfarads = 88, MicrofaradsTo = 106 }, Value(50)] },
        { "of a size that is only made to run", "run weak", [new Fact.Capacitor { Microfarads = 7.5, MeasuredMicrofarads = 4.1 }] },
        { "of a size that may be either", "? weak", [new Fact.Capacitor { Microfarads = 50, MeasuredMicrofarads = 20 }] },
        { "of a use that was chosen", "run weak", [new Fact.Capacitor { Microfarads = 50, MeasuredMicrofarads = 20 }, new Fact.Choice { Question = "capacitor-use", Option = "run" }] },
        { "of two in one answer", "? open", [new Fact.Capacitor { Use = "both" }, Start, new Fact.BenchTest { Test = "capacitance", Outcome = "open" }] },
        { "the only one that is known", "run open", [Run, new Fact.BenchTest { Test = "capacitance", Outcome = "open" }] },
        { "called by a name that its kind of motor has not", "? weak", [Run with { MeasuredMicrofarads = 12 }, new Fact.Choice { Question = "family", Option = "capacitor-start" }] },
        { "measured again", "run good", [Run with { MeasuredMicrofarads = 12 }, Run with { MeasuredMicrofarads = 29 }] },
        { "the latest of one whose kind is not known", "? open", [Start with { MeasuredMicrofarads = 190 }, Run, new Fact.BenchTest { Test = "capacitance", Outcome = "open" }] },
        { "by volts and amps, a reactance of 270 ohms", "run weak", [Run with { AcrossVolts = 270, ThroughAmps = 1 }, new Fact.Supply { Hertz = 60 }] },
        { "by volts and amps of unknown hertz", "", [Run with { AcrossVolts = 270, ThroughAmps = 1 }] },
        { "a spare", "", [Run, Run with { Spare = true, MeasuredMicrofarads = 12 }] },
        { "without marks", "", [new Fact.Capacitor { Use = "run", MeasuredMicrofarads = 12 }] },
        { "against the marks of the other", "", [Start, new Fact.Capacitor { Use = "run", MeasuredMicrofarads = 12 }] },
    };

    [Theory]
    [MemberData(nameof(Readings))]
    public void A_reading_is_of_the_capacitor_that_was_measured(string capacitor, string read, Fact[] facts)
    {
        var shown = new CapacitorReadings(Diagnostician.Model).Of(Knowledge.Tests["capacitance"], File(facts)).Select(one => $"{one.Kind ?? "?"} {one.Outcome}");
        Assert.True(read == string.Join(", ", shown), $"{capacitor}: {string.Join(", ", shown)}");
    }

    [Theory]
    [InlineData("run", 12, "run-capacitor-weak")]
    [InlineData("run", 1, "run-capacitor-open")]
    [InlineData("start", 12, "start-capacitor-weak")]
    [InlineData("start", 1, "start-capacitor-open")]
    public void The_cause_is_the_capacitor_of_that_kind(string use, double microfarads, string cause)
    {
        var report = Diagnostician.Examine(File([new Fact.Symptom { Id = "hums-no-start" }, Run with { Use = use, MeasuredMicrofarads = microfarads }]), Open);
        Assert.Equal(cause, report.Causes[0].Id);
        Assert.True(report.Causes[0].Probability > 0.5);
    }

    [Fact]
    public void A_sound_run_capacitor_says_nothing_of_the_one_for_the_start()
    {
        Fact[] motor = [new Fact.Symptom { Id = "hums-no-start" }, new Fact.Choice { Question = "family", Option = "two-value" }, Start, Run];
        double Share(string cause, params Fact[] facts) => Diagnostician.Think(File([.. motor, .. facts]), Open, sealedCircuit: false).Belief.Probability(one => one.Causes.Any(part => part.Id == cause));
        var (before, after) = (Share("start-capacitor-open"), Share("start-capacitor-open", Run with { MeasuredMicrofarads = 29 }));
        Assert.InRange(after, before, 1);
        Assert.InRange(Share("run-capacitor-open", Run with { MeasuredMicrofarads = 29 }), 0, Share("run-capacitor-open") / 10);
    }

    /// <summary>All else that was found tells of a sound start, and still nobody who measured it is left without it.</summary>
    [Fact]
    public void A_capacitor_that_measures_dead_is_named_whatever_speaks_against_it()
    {
        Fact[] running =
        [
            new Fact.Choice { Question = "family", Option = "capacitor-start" }, new Fact.Capacitor { Microfarads = 170 },
            .. new[] { "runs-hot", "trips-after-running" }.Select(id => new Fact.Symptom { Id = id }),
            .. new[] { ("start-current-after-two-seconds", "falls"), ("capacitor-look", "sound"), ("run-direction", "right"), ("half-run", "runs"), ("start-relay", "works") }.Select(shown => new Fact.BenchTest { Test = shown.Item1, Outcome = shown.Item2 }),
        ];
        Assert.DoesNotContain(Diagnostician.Examine(File(running), Open).Causes, cause => cause.Id == "start-capacitor-open");
        Assert.Contains(Diagnostician.Examine(File([.. running, Value(6.6)]), Open).Causes, cause => cause.Id == "start-capacitor-open");
        Assert.DoesNotContain(Diagnostician.Examine(File([.. running, Value(172)]), Open).Causes, cause => cause.Id == "start-capacitor-open");
    }

    private static Fact.BenchTest Value(double microfarads) => new() { Test = "capacitance", Value = microfarads, Unit = "microfarad" };

    private static CaseFile File(Fact[] facts) => CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), facts);
}
