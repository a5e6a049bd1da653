using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>The cautions that go with a plan, the weightiest first; their words are knowledge's.</summary>
internal static class PlanCautions
{
    public static IReadOnlyList<Caution> Of(Plan plan) => [.. Ids(plan).Select(id => new Caution(id, Statement.Of($"caution.{id}")))];

    private static IEnumerable<string> Ids(Plan plan) =>
    [
        "isolate-and-prove-dead",
        .. When(plan.Layout.HasCapacitor, "discharge-capacitor"),
        .. When(plan.Layout.Coils.Any(coil => coil.Role is "series-field" or "shunt-field"), "runaway"),
        .. When(plan.Phases == 3, "three-phase-competent-only"),
        "wrong-voltage-destroys",
        .. When(plan.Layout.Parts.Any(part => part.Kind == "protector"), "protection-not-bypassed"),
        "earth-the-frame", "insulate-joints", "guard-before-power", "driven-load-direction", "lead-colours-unreliable", "code-deferral",
    ];

    private static string[] When(bool applies, string id) => applies ? [id] : [];
}
