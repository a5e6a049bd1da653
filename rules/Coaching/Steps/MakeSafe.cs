namespace WireCoach.Rules.Coaching.Steps;

/// <summary>Isolation and the capacitor: before anything that touches a lead, and again after every time that power was on.</summary>
internal static class MakeSafe
{
    public const string Isolated = "isolated";

    public const string Discharged = "capacitor-discharged";

    public static Question? Isolate(Workup work) =>
        work.Settled(Isolated) ? null : work.Ask.Confirmation(Isolated);

    public static Question? LookForCapacitor(Workup work) =>
        work.Phases is 0 or 3 || work.HasCapacitor is not null || work.Skipped("capacitor") ? null : work.Ask.Of("capacitor");

    /// <summary>Asked of those alone who may go on from there: whoever may only look is not led to do it.</summary>
    public static Question? Discharge(Workup work) =>
        work.HasCapacitor != true || work.Settled(Discharged) || !work.Gate.CouldOpen("measure-dead") ? null : work.Ask.Confirmation(Discharged);

    public static Question? Bridge(Workup work) =>
        work.HasCapacitor != true || work.Chosen("capacitor-bridged")
            ? null
            : work.Ask.Of("capacitor-bridged");
}
