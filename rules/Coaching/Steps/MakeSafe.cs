namespace WireCoach.Rules.Coaching.Steps;

/// <summary>Isolation and the capacitor: before anything that touches a lead, and again after every time that power was on.</summary>
internal static class MakeSafe
{
    private const string MeasureDead = "measure-dead";

    public const string Isolated = "isolated";

    public const string Discharged = "capacitor-discharged";

    public static Question? Isolate(Workup work) =>
        work.Settled(Isolated) ? null : work.Ask.Confirmation(Isolated);

    public static Question? LookForCapacitor(Workup work) =>
        work.Phases is 0 or 3 || work.HasCapacitor is not null || work.Skipped("capacitor") ? null : work.Ask.Of("capacitor");

    /// <summary>Asked of those alone who may go on from there, and after all that must stand before such work: whoever may only look is not led to do it, and nobody in training does it alone.</summary>
    public static Question? Discharge(Workup work) =>
        work.HasCapacitor != true || work.Settled(Discharged) || !work.Gate.CouldOpen(MeasureDead) ? null : work.Ask.Confirmation(Discharged) with { Task = MeasureDead };

    public static Question? Bridge(Workup work) =>
        work.HasCapacitor != true || work.Chosen("capacitor-bridged")
            ? null
            : work.Ask.Of("capacitor-bridged");
}
