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
        foreach (var (plan, about) in Plans())
        {
            foreach (var found in new[] { Seen(plan), Known(plan) })
            {
                var result = checker.Check(found);
                Assert.True(result.IsGiven, $"{about}: {string.Join("; ", result.Problems.Select(problem => Motors.Knowledge.Sentences.Render(problem.Advice)))}");
                Assert.True(result.Value.Verdict == Verdict.Correct, $"{about}: {result.Value.Verdict} {string.Join("; ", result.Value.Findings.Select(finding => Motors.Knowledge.Sentences.Render(finding.Why)))}");
            }

            checkedRows++;
        }

        Assert.True(checkedRows > 90, $"{checkedRows}");
    }

    /// <summary>No lead of any plan may be exchanged with one of another joint, or left off, unseen; except where the exchange gives the same circuit, or another row.</summary>
    [Fact]
    public void Every_wrong_exchange_and_every_missing_lead_of_a_plan_is_caught()
    {
        var checker = new ConnectionChecker(Motors.Knowledge);
        var caught = 0;
        foreach (var (plan, about) in Plans())
        {
            var (found, bench) = (Known(plan), new Slips(plan));
            foreach (var (slip, joints) in bench.All())
            {
                var verdict = checker.VerdictOf(found with { Joints = joints });
                Assert.True(verdict != Verdict.Correct || bench.IsHarmless(joints), $"{about}: {slip} is called correct");
                caught += verdict == Verdict.Correct ? 0 : 1;
            }
        }

        Assert.True(caught > 3000, $"{caught}");
    }

    /// <summary>A plan for every row of every form.</summary>
    private static IEnumerable<(Plan Plan, string About)> Plans()
    {
        foreach (var form in Motors.Knowledge.Layouts.Values.OrderBy(layout => layout.Id, StringComparer.Ordinal).SelectMany(layout => layout.Forms()).Where(form => form.NotConnected is null))
        {
            var plate = string.Join('/', form.Connections.Select(row => Math.Round(230 * row.VoltsShare)).Distinct().Order());
            var hertz = form.Id.StartsWith("dc-", StringComparison.Ordinal) ? 0 : 60;
            foreach (var row in form.Connections)
            {
                yield return (
                    Motors.Planned(Motors.Marked(form, plate, Math.Round(230 * row.VoltsShare), form.Family == "three-phase" ? 3 : 1, hertz) with { Connection = row.Id }),
                    $"{form.Id} {form.Form} {row.Id}");
            }
        }
    }

    /// <summary>The plan with the insides of the motor as the layout has them.</summary>
    private static FoundConnection Known(Plan plan) => FoundMotor.Of(
        new(Motors.Knowledge.Sentences), plan.Layout, plan.Layout.Leads.ToDictionary(lead => lead.Marking, lead => lead.Marking, StringComparer.Ordinal), plan.PlateVolts / plan.Row.VoltsShare,
        [.. plan.Joints.Select(joint => new FoundJoint(joint.Leads, joint.Conductor))], plan.SupplyVolts, plan.Phases, plan.Row) with { Hertz = plan.Layout.Id.StartsWith("dc-", StringComparison.Ordinal) ? 0 : 60 };

    /// <summary>The plan as a person would describe it who sees coils, joints and what hangs outside.</summary>
    private static FoundConnection Seen(Plan plan)
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
            Hertz = plan.Layout.Id.StartsWith("dc-", StringComparison.Ordinal) ? 0 : 60,
            Capacitors = capacitor is null ? [] : [capacitor],
            Switches = relay is null ? [] : [relay],
            Protectors = [[.. layout.Leads.Where(lead => layout.Parts.Any(part => part.Kind.StartsWith("protector", StringComparison.Ordinal)
                && (part.From == (lead.Node ?? lead.Marking) || part.To == (lead.Node ?? lead.Marking)))).Select(lead => lead.Marking)]],
        };
    }
}
