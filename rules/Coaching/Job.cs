using WireCoach.Rules.Coaching.Steps;

namespace WireCoach.Rules.Coaching;

/// <summary>The steps of a job in their order; the first that has something to ask asks it.</summary>
internal static class Job
{
    private delegate Question? Step(Workup work);

    private static readonly Step[] Identify =
    [
        MakeSafe.Isolate, KnowMotor.Plate, KnowMotor.Phases, MakeSafe.LookForCapacitor, MakeSafe.Discharge, MakeSafe.Bridge,
        KnowMotor.Leads, FindWindings.ProbeZero, FindWindings.Frame, FindWindings.NextReading, FindEnds.Next,
    ];

    private static readonly Step[] Choose = [KnowMotor.PlateVolts, KnowMotor.PlateAmps, KnowMotor.Supply, ChooseConnection.Missing];

    /// <summary>Printed marks save the readings; without them the joints are taken apart and the leads told first.</summary>
    private static readonly Step[] CheckMade =
    [
        MakeSafe.Isolate, KnowMotor.Plate, KnowMotor.PlateVolts, KnowMotor.Phases, KnowMotor.Supply, KnowMotor.Leads, CheckFound.AskJoints,
        CheckFound.AskVolts, CheckFound.Decide,
    ];

    private static readonly Step[] NewCapacitor =
    [
        MakeSafe.Isolate, MakeSafe.LookForCapacitor, OtherJobs.CapacitorMarks, MakeSafe.Discharge, OtherJobs.CapacitorFitted,
    ];

    private static readonly Step[] Earthed = [MakeSafe.Isolate, MakeSafe.LookForCapacitor, MakeSafe.Discharge, BeforePower.Earth];

    /// <summary>In the middle of another job the earth is made good and read before that goes on.</summary>
    private static readonly Step[] EarthedAgain = [.. Earthed[..^1], BeforePower.EarthAgain];

    private static readonly Step[] Numbers = [KnowMotor.Plate, KnowMotor.PlateVolts, KnowMotor.PlateAmps, KnowMotor.Phases];

    private static readonly Step[] Prove =
    [
        BeforePower.Connected, BeforePower.Insulation, BeforePower.Temperature, BeforePower.CapacitorBack, BeforePower.JointOhms, BeforePower.JointsToFrame,
        BeforePower.Earth,
    ];

    private static readonly Step[] Power =
    [
        BeforePower.Shaft, BeforePower.Protection, BeforePower.SupplyVolts, FirstStart.Reverse, FirstStart.Start,
        FirstStart.Volts, FirstStart.Amps, FirstStart.Lines, FirstStart.Speed, FirstStart.Direction,
    ];

    /// <summary>What the job wants to know next, before the gate has been asked.</summary>
    public static Question? Wanted(Workup work) => HeatUnderLoad.Next(work) ?? work.Goal switch
    {
        null => work.Ask.Of("goal"),
        _ when work.Repaired => null,
        Goals.WorthRepairing when OtherJobs.Power(work) is { } power => power,
        _ when work.LooksForFault => FindFault.Next(work),
        Goals.CheckConnection => work.FoundConnection is null
            ? First(CheckMade, work) ?? First(Identify, work)
            : First([MakeSafe.Isolate, CheckFound.Decide, CheckFound.AskChange], work),
        "identify-leads" => First(Identify, work),
        Goals.ReplaceCapacitor => First(NewCapacitor, work),
        Goals.CheckEarth when work.IsBesideEarth => First(EarthedAgain, work),
        Goals.CheckEarth => JointChecks.EarthIsBroken(work) ? null : First(Earthed, work),
        Goals.CheckNumbers => First(Numbers, work),
        Goals.FitReplacement when First([MakeSafe.Isolate, KnowMotor.BothPlates], work) is { } plates => plates,
        _ => First(Identify, work) ?? (work.Plan is null ? null : First(Choose, work) ?? (work.Plan.IsGiven ? ToPower(work) : null)), // leads or ends that cannot be told give no plan, whatever the supply
    };

    private static Question? ToPower(Workup work) =>
        BeforePower.Again(work) ?? First(Prove, work) ?? (BeforePower.Unproved(work).Any() ? null : First(Power, work));

    private static Question? First(IEnumerable<Step> steps, Workup work) =>
        steps.Select(step => step(work)).FirstOrDefault(question => question is not null);
}
