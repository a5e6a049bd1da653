using WireCoach.Rules.Statements;

namespace WireCoach.WebUi.Desk;

/// <summary>The cautions of a job: those of its plan and those of the case as it stands.</summary>
public static class PlanCautions
{
    /// <summary>Each once, those of the plan first.</summary>
    public static IReadOnlyList<Caution> Of(SessionView session)
    {
        ArgumentNullException.ThrowIfNull(session);
        return [.. (session.Assessment.Plan?.Cautions ?? []).Concat(session.Assessment.Cautions).DistinctBy(caution => caution.Id, StringComparer.Ordinal)];
    }
}
