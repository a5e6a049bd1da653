using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>The small jobs that are settled from a few facts: a capacitor, an earth, the plate's numbers, whether a repair is worth it.</summary>
internal static class OtherJobs
{
    private const string Marks = "capacitor.marks";
    private const string Fitted = "capacitor-fitted";

    public static Question? CapacitorMarks(Workup work) =>
        work.HasCapacitor == false || Marked(work) is not null || work.Skipped(Marks) ? null : work.Ask.Of(Marks);

    public static Question? CapacitorFitted(Workup work) =>
        work.HasCapacitor != true || Marked(work) is null || work.Settled(Fitted) ? null : work.Ask.Of(Fitted);

    /// <summary>The power of the plate, which decides whether winding work pays.</summary>
    public static Question? Power(Workup work) =>
        work.File.Plate.All.Any() || work.Skipped("plate") ? null : MakeSafe.Isolate(work) ?? work.Ask.Of("plate");

    /// <summary>What the small job comes to so far, or what it lacks.</summary>
    public static IEnumerable<Statement> Say(Workup work) => work.Goal switch
    {
        Goals.ReplaceCapacitor => Capacitor(work),
        Goals.CheckEarth => Earthing(work),
        Goals.WorthRepairing => work.Rooms.Faq.Answer("worth-repairing", work.File).Where(said => said.Id != "faq.worth-likely" || !FindFault.Say(work, shut: false).Any()), // the search has named the cause already
        Goals.CheckNumbers => Numbers(work),
        Goals.Reverse when work.Plan is not { IsGiven: true } => work.Rooms.Faq.Answer("can-reverse", work.File),
        Goals.FitReplacement => Replacement(work),
        Goals.ChangeVoltage when work.File.Plate.Volts is [var only] => [Statement.Of("coach.one-voltage").With("volts", work.Knowledge.Rules["faq-plate-volts"].Quote(only, "volt", "plate"))],
        _ => [],
    };

    /// <summary>Whether the small job has come to its end.</summary>
    public static bool Settled(Workup work) => work.Goal switch
    {
        Goals.ReplaceCapacitor => work.File.Confirmations.TryGetValue(Fitted, out var fitted) && fitted.Confirmed,
        Goals.CheckEarth => JointChecks.Earth(work) is { Verdict: "pass" },
        Goals.CheckNumbers => work.File.Plate.Volts.Count > 0 && work.File.Plate.Amps.Count > 0,
        _ => false,
    };

    /// <summary>Whether it has to be handed on: the earth is broken, or nothing can be read that says which capacitor belongs there.</summary>
    public static bool HandsOn(Workup work) => work.Goal switch
    {
        Goals.CheckEarth when work.IsBesideEarth => false,
        Goals.CheckEarth => JointChecks.Earth(work) is { Verdict: not "pass" } || work.Skipped(Fact.BenchTest.EarthContinuity),
        Goals.ReplaceCapacitor => work.Skipped(Marks) && Marked(work) is null,
        _ => false,
    };

    private static IEnumerable<Statement> Capacitor(Workup work)
    {
        if (work.HasCapacitor == false)
        {
            return [Statement.Of("coach.capacitor-none")];
        }

        return Marked(work) is null
            ? [Statement.Of(work.Skipped(Marks) ? "coach.capacitor-unreadable" : "coach.capacitor-marks-wanted")]
            : work.Rooms.Faq.Answer("bigger-capacitor", work.File).Skip(1).Append(Statement.Of("coach.capacitor-why-it-died"));
    }

    /// <summary>Plate against plate where both were read; else what is to be compared.</summary>
    private static IEnumerable<Statement> Replacement(Workup work) =>
    [
        .. work.File.Plate.All.Any() && work.File.OldPlate.All.Any()
            ? ReplacementMotor.Compare(work.Knowledge, work.File.OldPlate, work.File.Plate)
            : [Statement.Of("coach.replacement-compare")],
        Statement.Of("coach.replacement-colours"),
    ];

    private static IEnumerable<Statement> Earthing(Workup work)
    {
        yield return Statement.Of("coach.earth-first");
        if (JointChecks.EarthIsBroken(work))
        {
            yield return Statement.Named("cause.missing-earth.repair");
        }
        else if (JointChecks.Earth(work) is null && work.Skipped(Fact.BenchTest.EarthContinuity))
        {
            yield return Statement.Of("coach.earth-unmeasured");
        }

        if (work.IsBesideEarth)
        {
            yield return Statement.Of("coach.earth-then");
        }
    }

    private static IEnumerable<Statement> Numbers(Workup work) =>
        !Settled(work) ? [Statement.Of("coach.numbers-wanted")] :
        [.. KnowMotor.Say(work).Any() ? Array.Empty<Statement>() : [Statement.Of("coach.numbers-agree")], .. SideFigures.Supply(work), .. SideFigures.Starts(work)];

    private static Fact.Capacitor? Marked(Workup work) => work.File.Capacitors.FindLast(capacitor => capacitor is { Present: true, Microfarads: not null });
}
