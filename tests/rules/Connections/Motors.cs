using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>Motors of the bench with plates and supplies.</summary>
internal static class Motors
{
    public static TradeKnowledge Knowledge { get; } = Trade.Knowledge;

    public static Planner Planner { get; } = new(Knowledge);

    /// <summary>A request with every lead tagged by its own marking.</summary>
    public static PlanRequest Marked(Layout form, string plateVolts, double volts, int phases, double hertz, string? rotation = null, string? seenFrom = null) => new()
    {
        Layout = form.Id,
        Form = form.Form,
        Leads = form.Leads.ToDictionary(lead => lead.Marking, lead => lead.Marking, StringComparer.Ordinal),
        Plate = PlateFields.Empty.With("volts", PlateValue.Parse(plateVolts)),
        Supply = new Fact.Supply { Volts = volts, Phases = phases, Hertz = hertz },
        Rotation = rotation,
        SeenFrom = seenFrom,
    };

    public static PlanRequest Marked(string layout, string plateVolts, double volts, int phases, double hertz, string? rotation = null, string? seenFrom = null) =>
        Marked(Knowledge.Layouts[layout], plateVolts, volts, phases, hertz, rotation, seenFrom);

    public static Plan Planned(PlanRequest request)
    {
        var answer = Planner.Plan(request);
        Assert.True(answer.IsGiven, string.Join("; ", answer.Problems.Select(problem => $"{problem.Id} {problem.Field}: {Knowledge.Sentences.Render(problem.Advice)}")));
        return answer.Value;
    }

    /// <summary>"J1:1-&gt;L1 J2:6+5-&gt;L2 J3:4+2+3", sorted within a joint.</summary>
    public static string Joints(Plan plan) => string.Join(' ', plan.Joints.Select(joint =>
        $"{joint.Name}:{string.Join('+', joint.Leads.Order(StringComparer.Ordinal))}{(joint.Conductor is null ? "" : "->" + joint.Conductor)}"));
}
