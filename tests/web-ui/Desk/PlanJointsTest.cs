using WireCoach.WebUi.Desk;
using WireCoach.WebUi.Tests.Diagrams;

namespace WireCoach.WebUi.Tests.Desk;

/// <summary>What a plan joins, as it is read at the bench.</summary>
public sealed class PlanJointsTest
{
    [Fact]
    public void A_lead_of_the_capacitor_alone_does_not_go_to_nothing_and_the_capacitor_stands_with_the_joints() => Assert.Equal(
        ["J1: R to L1", "J2: C to L2", "J3: S to the run capacitor, nothing else", "run capacitor: R + S to one terminal each"],
        Lines("psc-3", "115", 115).Order(StringComparer.Ordinal));

    [Fact]
    public void Leads_that_meet_in_the_middle_go_to_nothing_else() =>
        Assert.Contains("J3: T2 + T3 + T8 to nothing else", Lines("capacitor-start-dual-6", "115/230", 230));

    [Fact]
    public void A_lead_that_is_not_used_is_capped()
    {
        var plan = Plans.All().Select(one => one.Plan).First(plan => plan.Capped.Count > 0);
        Assert.Equal(plan.Capped, PlanJoints.Of(plan, Plans.Pages).Where(line => line.Name == "Cap").SelectMany(line => line.Leads));
    }

    [Fact]
    public void Every_end_of_a_part_outside_is_named_in_every_plan() => Assert.All(
        Plans.All().Where(one => one.Plan.Outer is not null),
        one => Assert.Contains(PlanJoints.Of(one.Plan, Plans.Pages), line => line.Leads.SequenceEqual(one.Plan.Outer!.Between)));

    private static IEnumerable<string> Lines(string layout, string plate, double volts) =>
        PlanJoints.Of(Plans.Of(layout, plate, volts), Plans.Pages).Select(line => $"{line.Name}: {string.Join(" + ", line.Leads.Order(StringComparer.Ordinal))} to {line.GoesTo}");
}
