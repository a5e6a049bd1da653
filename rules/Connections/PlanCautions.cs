using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>The cautions that go with a plan, the weightiest first.</summary>
internal static class PlanCautions
{
    public static IReadOnlyList<Caution> Of(Plan plan, SuitedRow suited, PlanRequest request) => [.. All(plan, suited, request)];

    private static IEnumerable<Caution> All(Plan plan, SuitedRow suited, PlanRequest request)
    {
        yield return new("isolate-and-prove-dead", Statement.Of("connections.caution-isolate"));
        if (plan.Layout.Capacitor != "none" || plan.Outer?.Kind.EndsWith("capacitor", StringComparison.Ordinal) == true)
        {
            yield return new("discharge-capacitor", Statement.Of("connections.caution-capacitor"));
        }

        if (plan.Layout.Coils.Any(coil => coil.Role == "series-field"))
        {
            yield return new("runaway", Statement.Of("connections.caution-runaway-series"));
        }

        if (plan.Layout.Coils.Any(coil => coil.Role == "shunt-field"))
        {
            yield return new("runaway", Statement.Of("connections.caution-runaway-field"));
        }

        if (plan.Phases == 3)
        {
            yield return new("three-phase-competent-only", Statement.Of("connections.caution-three-phase"));
        }

        yield return new("wrong-voltage-destroys", Statement.Of("connections.caution-voltage", ("supply", SupplyJudge.Volts(plan.SupplyVolts))));
        if (request.Plate.Numbers("hertz").Count == 0 && request.Supply?.Hertz is > 0)
        {
            yield return new("voltage-unknown", Statement.Of("connections.caution-plate-hertz"));
        }

        if (plan.Layout.Parts.Any(part => part.Kind == "protector"))
        {
            yield return new("protection-not-bypassed", Statement.Of("connections.caution-protector"));
        }

        yield return new("earth-the-frame", Statement.Of("connections.caution-earth"));
        yield return new("insulate-joints", Statement.Of("connections.caution-insulate"));
        yield return new("guard-before-power", Statement.Of("connections.caution-guard"));
        yield return new("driven-load-direction", Statement.Of("connections.caution-direction"));
        yield return new("lead-colours-unreliable", Statement.Of("connections.caution-colours"));
        yield return new("code-deferral", Statement.Of("connections.caution-code"));
        _ = suited;
    }
}
