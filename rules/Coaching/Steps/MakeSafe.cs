namespace WireCoach.Rules.Coaching.Steps;

/// <summary>Isolation and the capacitor: before anything that touches a lead, and again after every time that power was on.</summary>
internal static class MakeSafe
{
    private const string MeasureDead = "measure-dead";

    private const string Bridged = "capacitor-bridged";

    private const string Apart = "capacitor-off";

    public const string Isolated = "isolated";

    public const string Discharged = "capacitor-discharged";

    public static Question? Isolate(Workup work) =>
        work.Settled(Isolated) ? null : work.Ask.Confirmation(Isolated);

    /// <summary>The same again once power was on: nobody lays a hand on a shaft or a lead after a start that they have not made safe.</summary>
    public static Question? IsolateAgain(Workup work) =>
        work.Gate.IsIsolated || work.File.Confirmations[Isolated] is { Confirmed: false } ? null : work.Ask.Confirmation(Isolated);

    public static Question? LookForCapacitor(Workup work) =>
        work.Phases is 0 or 3 || work.HasCapacitor is not null || work.Skipped("capacitor") ? null : work.Ask.Of("capacitor");

    /// <summary>Asked of those alone who may go on from there, and after all that must stand before such work: whoever may only look is not led to do it, and nobody in training does it alone.</summary>
    public static Question? Discharge(Workup work) =>
        work.HasCapacitor != true || work.Settled(Discharged) || !work.Gate.CouldOpen(MeasureDead) ? null : work.Ask.Confirmation(Discharged) with { Task = MeasureDead };

    /// <summary>Out of the way of the meter: bridged, or taken off where a bridge would tie two leads together.</summary>
    public static Question? Bridge(Workup work) =>
        work.HasCapacitor != true || work.Chosen(Apart) || IsApart(work) ? null
            : HasCapacitorOutside(work) ? work.Ask.Of(Apart)
            : work.Chosen(Bridged) ? null
            : work.Ask.Of(Bridged);

    /// <summary>Whether the capacitor is out of the way of the meter; <see langword="null"/> where nobody said.</summary>
    public static bool? IsOutOfTheWay(Workup work) => IsApart(work) ? true
        : work.File.Choices.GetValueOrDefault(Bridged) is { } bridged ? bridged == "bridged" && !HasCapacitorOutside(work)
        : work.File.Choices.ContainsKey(Apart) ? false
        : null;

    /// <summary>Whether the capacitor was taken off where both its wires are known to end at leads that are measured.</summary>
    private static bool IsApart(Workup work) => HasCapacitorOutside(work)
        && (work.File.Choices.GetValueOrDefault(Apart) ?? work.File.Choices.GetValueOrDefault(Bridged)) == "off";

    private static bool HasCapacitorOutside(Workup work) => work.File.Choices.GetValueOrDefault(FindWindings.CapacitorWires) == "outside";
}
