using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;
using WireCoach.Rules.Practice;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>Whole jobs on simulated motors: what is asked, in which order, and how it ends; and what becomes of it where one answer is another.</summary>
public sealed class WholeJobTest
{
    private const string Dead = "isolated probe-zero frame reading reading-again supply";
    private const string Prove = "connected insulation joint-ohms joints-to-frame earth-continuity";
    private const string Power = "shaft-free-guarded protected-supply supply-voltage first-start";
    private const string Run = "run-volts run-current run-speed run-direction";

    private static readonly Coach Coach = new(Trade.Knowledge);
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("three-phase-6", "", $"isolated probe-zero frame reading ends-instrument ends supply {Prove} {Power} {Run} > verified")]
    [InlineData("psc-3", "", $"isolated capacitor-discharged capacitor-off probe-zero frame reading reading-again supply connected insulation capacitor-refitted joint-ohms joints-to-frame earth-continuity {Power} {Run} > verified")]
    [InlineData("dual-voltage-4", "", $"isolated probe-zero frame reading reading-again ends-instrument ends supply {Prove} {Power} {Run} > verified")]
    [InlineData("split-phase-4", "", $"{Dead} {Prove} {Power} {Run} > verified")]
    [InlineData("split-phase-4", "insulation 0.4", $"{Dead} connected insulation insulation joint-ohms joints-to-frame earth-continuity {Power} {Run} > verified")]
    [InlineData("split-phase-4", "insulation 4", $"{Dead} connected insulation insulation-temperature insulation joint-ohms joints-to-frame earth-continuity {Power} {Run} > verified")]
    [InlineData("split-phase-4", "insulation ?", $"{Dead} {Prove} > open")]
    [InlineData("split-phase-4", "joint-ohms open", $"{Dead} connected insulation joint-ohms joint-ohms joints-to-frame earth-continuity {Power} {Run} > verified")]
    [InlineData("split-phase-4", "joint-ohms 40", $"{Dead} connected insulation joint-ohms joint-ohms joints-to-frame earth-continuity {Power} {Run} > verified")]
    [InlineData("split-phase-4", "joints-to-frame 3", $"{Dead} connected insulation joint-ohms joints-to-frame joints-to-frame earth-continuity {Power} {Run} > verified")]
    [InlineData("split-phase-4", "earth-continuity 4", $"{Dead} {Prove} earth-continuity {Power} {Run} > verified")]
    [InlineData("split-phase-4", "protected-supply no", $"{Dead} {Prove} shaft-free-guarded protected-supply protected-supply supply-voltage first-start {Run} > verified")]
    [InlineData("split-phase-4", "connected no", $"{Dead} connected {Prove} {Power} {Run} > verified")]
    [InlineData("psc-3", "capacitor-refitted no", $"isolated capacitor-discharged capacitor-off probe-zero frame reading reading-again supply connected insulation capacitor-refitted capacitor-refitted joint-ohms joints-to-frame earth-continuity {Power} {Run} > verified")]
    [InlineData("psc-3", "capacitor-discharged no", $"isolated capacitor-discharged > referred")]
    [InlineData("split-phase-4", "shaft-free-guarded no", $"{Dead} {Prove} shaft-free-guarded protected-supply > referred")]
    [InlineData("split-phase-4", "earth-continuity ?", $"{Dead} {Prove} > open")]
    [InlineData("split-phase-4", "run-volts ?", $"{Dead} {Prove} {Power} {Run} > verified")]
    [InlineData("split-phase-4", "isolated no", $"isolated > referred")]
    [InlineData("split-phase-4", "first-start hummed", $"{Dead} {Prove} {Power} isolated test > referred")]
    [InlineData("split-phase-4", "first-start slow", $"{Dead} {Prove} {Power} isolated test > referred")]
    [InlineData("split-phase-4", "first-start tripped", $"{Dead} {Prove} {Power} isolated test > referred")]
    [InlineData("split-phase-4", "first-start nothing", $"{Dead} {Prove} {Power} isolated test > referred")]
    [InlineData("split-phase-4", "first-start smoke", $"{Dead} {Prove} {Power} isolated test > referred")]
    [InlineData("split-phase-4", "run-direction wrong", $"{Dead} {Prove} {Power} {Run} isolated reversed shaft-free-guarded first-start {Run} > verified")]
    [InlineData("split-phase-4", "run-direction ?", $"{Dead} {Prove} {Power} {Run} > ready")]
    [InlineData("split-phase-4", "run-current 40", $"{Dead} {Prove} {Power} run-volts run-current > open")]
    [InlineData("split-phase-4", "supply-voltage 60", $"{Dead} {Prove} shaft-free-guarded protected-supply supply-voltage supply-voltage first-start {Run} > verified")]
    [InlineData("split-phase-4", "supply ?", $"{Dead} > open")]
    [InlineData("split-phase-4", "probe-zero ?", $"{Dead} {Prove} {Power} {Run} > verified")]
    [InlineData("split-phase-4", "frame ?", $"{Dead} {Prove} {Power} {Run} > verified")]
    [InlineData("split-phase-4", "frame 900", $"isolated probe-zero frame frame-lead frame reading reading-again supply {Prove} {Power} {Run} > verified")]
    [InlineData("split-phase-4", "run-speed 900", $"{Dead} {Prove} {Power} run-volts run-current run-speed > open")]
    public void A_job_goes_in_order(string layout, string but, string stages)
    {
        var motor = PracticeMotor.Make(Trade.Knowledge, layout, null, 4).Value!;
        var file = PracticeAnswers.Add(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), []), [.. motor.Opening(), .. Listener.Understand("which wire goes where, help me hook it up").Facts]);
        var (asked, last) = (new List<string>(), string.Empty);
        var assessed = Spoken.Whole(Coach.Assess(file));
        for (var turn = 0; turn < 60 && assessed.Next is { } next; turn++)
        {
            var stage = next.Id.Split('.')[0];
            var facts = but.Split(' ') is [var at, var other] && at == stage && !asked.Contains(stage) ? PracticeAnswers.Of(file, next, other) : PracticeAnswers.Of(file, next, motor);
            if (asked.Count == 0 || asked[^1] != stage || next.Id == last)
            {
                asked.Add(stage);
            }

            last = next.Id;
            Assert.NotEmpty(facts);
            file = PracticeAnswers.Add(file, facts);
            assessed = Spoken.Whole(Coach.Assess(file));
        }

        var fault = asked.IndexOf("test"); // which test comes first is the diagnosis' own
        var went = $"{string.Join(' ', fault < 0 ? asked : asked[..(fault + 1)])} > {assessed.Status}";
        Assert.True(stages == went, $"{went}: {string.Join(' ', assessed.Say)}");
    }

    [Theory]
    [InlineData(1.2, "ready")]
    [InlineData(2.4, "verified")]
    public void Lines_far_apart_without_load_are_no_proof_until_they_are_read_alike(double third, string status)
    {
        var motor = PracticeMotor.Make(Trade.Knowledge, "three-phase-3", null, 4).Value!;
        var file = PracticeAnswers.Add(CaseFile.From(new CaseOpening(Role.Technician, Region.Iec), []), [.. motor.Opening(), .. Listener.Understand("which wire goes where, help me hook it up").Facts]);
        for (var turn = 0; turn < 60 && Coach.Assess(file).Next is { } next; turn++)
        {
            file = PracticeAnswers.Add(file, next.Id switch
            {
                "run-current" => PracticeAnswers.Of(file, next, "2.7"),
                "run-current.l2" => PracticeAnswers.Of(file, next, "2.6"),
                "run-current.l3" => PracticeAnswers.Of(file, next, $"{third}"),
                _ => PracticeAnswers.Of(file, next, motor),
            });
        }

        var assessed = Spoken.Whole(Coach.Assess(file));
        Assert.Equal(status, assessed.Status);
        Assert.Equal(status == "ready", assessed.Say.Any(said => said.Id == "heat.run-lines-apart"));
        Assert.Equal(status == "verified", assessed.Say.Any(said => said.Id == "heat.rise-offer"));
        var again = PracticeAnswers.Add(file, [.. new[] { 3.0, 3.1, 2.9 }.Select(amps => new Fact.BenchTest { Test = "line-currents", Value = amps, Unit = "amp" })]);
        Assert.Equal("verified", Coach.Assess(again).Status);
    }

    [Theory]
    [InlineData("900")]
    [InlineData("40000")]
    public void A_path_to_the_frame_that_no_lead_shows_alone_ends_without_a_plan(string second)
    {
        var motor = PracticeMotor.Make(Trade.Knowledge, "split-phase-4", null, 4).Value!;
        var file = PracticeAnswers.Add(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), []), [.. motor.Opening(), .. Listener.Understand("which wire goes where, help me hook it up").Facts]);
        var bundles = 0;
        for (var turn = 0; turn < 40 && Coach.Assess(file).Next is { } next; turn++)
        {
            file = PracticeAnswers.Add(file, next.Id.StartsWith("frame.", StringComparison.Ordinal) ? PracticeAnswers.Of(file, next, bundles++ == 0 ? "900" : second) : PracticeAnswers.Of(file, next, motor));
        }

        var assessed = Spoken.Whole(Coach.Assess(file));
        Assert.Equal(2, bundles);
        Assert.Null(assessed.Plan);
        Assert.Equal("open", assessed.Status);
        Assert.Empty(assessed.Identification!.Faults);
        Assert.Contains(assessed.Say, said => said.Id == "windings.frame-path-again");
        Assert.DoesNotContain(assessed.Say, said => said.Id is "windings.grounded" or "windings.shop-tells");
    }

    [Theory]
    [InlineData(4, 300)]
    [InlineData(400, 300)]
    [InlineData(400, -60)]
    public void Insulation_that_cannot_be_judged_is_read_again_and_nothing_is_energised_on_it(double megohms, double celsius)
    {
        var motor = PracticeMotor.Make(Trade.Knowledge, "split-phase-4", null, 4).Value!;
        var file = PracticeAnswers.Add(CaseFile.From(new CaseOpening(Role.Technician, Region.NorthAmerica), []), [.. motor.Opening(), .. Listener.Understand("which wire goes where, help me hook it up").Facts]);
        for (var turn = 0; turn < 40 && Coach.Assess(file).Next is { } next && next.Id != "insulation"; turn++)
        {
            file = PracticeAnswers.Add(file, PracticeAnswers.Of(file, next, motor));
        }

        var told = PracticeAnswers.Add(file, [new Fact.Insulation { Megohms = megohms, Celsius = celsius }]);
        Assert.Equal("insulation", Coach.Assess(told).Next!.Id);
        Assert.Contains(Coach.Assess(PracticeAnswers.Add(told, [new Fact.Unknown { Question = "insulation" }])).Say, said => said.Id == "coach.unproved");
        Assert.NotEqual("insulation", Coach.Assess(PracticeAnswers.Add(told, [new Fact.Insulation { Megohms = 400, Celsius = 20 }])).Next!.Id);
    }
}
