using WireCoach.Rules.Connections;
using WireCoach.Rules.Connections.Checking;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>What the planner plans, the checker calls correct.</summary>
public sealed class PlannedCheckTest
{
    [Fact]
    public void Every_planned_connection_is_found_correct()
    {
        var checker = new ConnectionChecker(Motors.Knowledge);
        var checkedRows = 0;
        foreach (var form in Motors.Knowledge.Layouts.Values.OrderBy(layout => layout.Id, StringComparer.Ordinal).SelectMany(layout => layout.Forms())
            .Where(form => form.NotConnected is null && form.Family is "single-phase" or "three-phase"))
        {
            var plate = string.Join('/', form.Connections.Select(row => Math.Round(230 * row.VoltsShare)).Distinct().Order());
            foreach (var row in form.Connections.Where(row => !row.Starting))
            {
                var plan = Motors.Planned(Motors.Marked(form, plate, Math.Round(230 * row.VoltsShare), form.Family == "three-phase" ? 3 : 1, 60) with { Connection = row.Id });
                // What each part of a tapped winding is made for is not known; and at its second speed half of a constant-power winding turns
                // over by design (poles by consequence), which a check of one connection cannot know.
                if (plan.Windings.Any(winding => winding.Coils.Count > 1) || (form.Form == "constant-power" && row.Id == "fast"))
                {
                    continue;
                }

                var result = checker.Check(Found(plan));
                Assert.True(result.IsGiven, $"{form.Id} {form.Form} {row.Id}: {string.Join("; ", result.Problems.Select(problem => Motors.Knowledge.Sentences.Render(problem.Advice)))}");
                Assert.True(result.Value.Verdict == Verdict.Correct, $"{form.Id} {form.Form} {row.Id}: {result.Value.Verdict} {string.Join("; ", result.Value.Findings.Select(finding => Motors.Knowledge.Sentences.Render(finding.Why)))}");
                checkedRows++;
            }
        }

        Assert.True(checkedRows > 40);
    }

    /// <summary>The plan as a person would describe it who sees coils, joints and what hangs outside.</summary>
    private static FoundConnection Found(Plan plan)
    {
        var (layout, row) = (plan.Layout, plan.Row);
        var tags = layout.Leads.ToDictionary(lead => lead.Marking, lead => lead.Marking, StringComparer.Ordinal);
        var capacitor = plan.Outer is { } outer && outer.Kind.EndsWith("capacitor", StringComparison.Ordinal) ? new FoundCapacitor(outer.Between[0], outer.Between[1]) : null;
        var relay = plan.Outer is { Kind: "switch" } contact ? new FoundSwitch(contact.Between[0], contact.Between[1]) : null;
        return new FoundConnection
        {
            Coils =
            [
                .. layout.Coils.Select(coil => new FoundCoil(
                    coil.Id, CoilOhms.LeadAt(layout, tags, coil.From), CoilOhms.LeadAt(layout, tags, coil.To), coil.Role,
                    row.RatedShares.GetValueOrDefault(coil.Group, coil.RatedShare) * plan.PlateVolts / row.VoltsShare,
                    layout.Family == "three-phase" ? coil.Axis switch { 0 => "a", 120 => "b", _ => "c" } : coil.Axis == 90 ? "start" : "main",
                    MayRest: plan.Windings.All(winding => !winding.Coils.Contains(coil.Id)))),
            ],
            Joints = [.. plan.Joints.Select(joint => new FoundJoint(joint.Leads, joint.Conductor))],
            SupplyVolts = plan.SupplyVolts,
            Phases = plan.Phases,
            Hertz = 60,
            Capacitor = capacitor,
            Switch = relay,
            Protector = [.. layout.Leads.Where(lead => layout.Parts.Any(part => part.Kind.StartsWith("protector", StringComparison.Ordinal)
                && (part.From == (lead.Node ?? lead.Marking) || part.To == (lead.Node ?? lead.Marking)))).Select(lead => lead.Marking)],
        };
    }
}
