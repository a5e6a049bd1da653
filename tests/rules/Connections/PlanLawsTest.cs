using System.Numerics;
using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Connections;

/// <summary>Every plan of every layout, judged by circuit laws alone.</summary>
public sealed class PlanLawsTest
{
    private static readonly double[] Nominal = [110, 115, 120, 200, 208, 220, 230, 240, 380, 400, 415, 440, 460, 480, 690, 800];

    private static readonly string[] Plates =
        ["115", "230", "460", "400", "115/230", "110/220", "115/208-230", "230/460", "208-230/460", "230/400", "220-240/380-415", "400/690", "230/400/460/800", "220-240/380-415/440-480"];

    private static readonly string?[] Rotations = [null, "clockwise", "counterclockwise"];

    private static readonly List<(Layout Form, string Plate, double Volts, string? Rotation, string? End)> Situations =
    [
        .. from form in Motors.Knowledge.Layouts.Values.OrderBy(layout => layout.Id, StringComparer.Ordinal).SelectMany(layout => layout.Forms())
           where form.NotConnected is null
           from plate in Plates
           from volts in Nominal
           where PlateValue.Parse(plate).Numbers.Any(rated => Math.Abs((volts / rated) - 1) < 0.12)
           from rotation in form.Connections.Any(row => row.Rotation is not null) ? Rotations : Rotations.Take(2)
           from end in rotation is null ? new string?[] { null } : ["shaft-end", "opposite-end"]
           select (form, plate, volts, rotation, end),
    ];

    [Fact]
    public void Every_plan_gives_every_winding_its_own_volts_and_shorts_no_line()
    {
        var planned = new HashSet<string>(StringComparer.Ordinal);
        foreach (var one in Situations)
        {
            var request = Tagged(one.Form, one.Plate, one.Volts, one.Rotation, one.End, seed: 7);
            var named = one.Rotation is null ? one.Form.Connections.Select(row => request with { Connection = row.Id }) : [];
            foreach (var plan in named.Prepend(request).Select(each => Motors.Planner.Plan(each).Value).OfType<Plan>().SelectMany(plan => plan.Others.Prepend(plan)))
            {
                Judge(plan, request);
                _ = planned.Add($"{one.Form.Id} {one.Form.Form} {plan.Row.Id}");
            }
        }

        var rows = Motors.Knowledge.Layouts.Values.SelectMany(layout => layout.Forms())
            .SelectMany(form => form.Connections.Select(row => $"{form.Id} {form.Form} {row.Id}"));
        Assert.Empty(rows.Except(planned, StringComparer.Ordinal));
    }

    [Fact]
    public void Tags_change_nothing_but_names() => Gen.Select(Gen.Int[0, Situations.Count - 1], Gen.Int[0, int.MaxValue]).Sample((at, seed) =>
    {
        var one = Situations[at];
        var plain = Motors.Planner.Plan(Motors.Marked(one.Form, one.Plate, one.Volts, Phases(one.Form), Hertz(one.Form), one.Rotation, one.End));
        var request = Tagged(one.Form, one.Plate, one.Volts, one.Rotation, one.End, seed);
        var tagged = Motors.Planner.Plan(request);
        if (plain.Value is not { } expected)
        {
            return !tagged.IsGiven;
        }

        return expected.Joints.Select(joint => string.Join('+', joint.Leads.Select(lead => request.Leads[lead]))).SequenceEqual(tagged.Value!.Joints.Select(joint => string.Join('+', joint.Leads)));
    }, iter: 2000);

    [Fact]
    public void The_other_rotation_turns_the_start_winding_and_nothing_else()
    {
        foreach (var form in Motors.Knowledge.Layouts.Values.SelectMany(layout => layout.Forms()).Where(form => form.Connections.Any(row => row.Rotation is not null) && form.Family == "single-phase"))
        {
            foreach (var (plate, volts) in new[] { ("115/230", 115.0), ("115/230", 230), ("115", 115) })
            {
                var (one, other) = (Tagged(form, plate, volts, "counterclockwise", "opposite-end", 1), Tagged(form, plate, volts, "clockwise", "opposite-end", 1));
                if (Motors.Planner.Plan(one).Value is not { } first || Motors.Planner.Plan(other).Value is not { } second)
                {
                    continue;
                }

                // Counterclockwise seen from the end opposite the shaft: T8 and T1 stand on the same side.
                Assert.Equal((true, false), (StartFollowsMain(first, one), StartFollowsMain(second, other)));
                var turned = first.Reverse.Swap.Aggregate(Wires(first), (wires, pair) => [.. wires.Select(wire => Exchanged(wire, pair[0], pair[1]))]);
                Assert.Equal(Wires(second).Order(StringComparer.Ordinal), turned.Order(StringComparer.Ordinal));
            }
        }
    }

    private static List<string> Wires(Plan plan) => [.. plan.Joints.SelectMany(joint => joint.Leads.Select(lead => $"{lead}@{joint.Conductor ?? "inner " + joint.Leads.Count}"))];

    private static string Exchanged(string wire, string one, string other)
    {
        var at = wire.IndexOf('@', StringComparison.Ordinal);
        return (wire[..at] == one ? other : wire[..at] == other ? one : wire[..at]) + wire[at..];
    }

    private static bool StartFollowsMain(Plan plan, PlanRequest request)
    {
        var bench = new Bench(plan.Layout, request.Leads, plan);
        var (run, start) = (plan.Layout.Coils.First(coil => coil.Role == "run"), plan.Layout.Coils.First(coil => coil.Role == "start"));
        return bench.Volts(run).Real * bench.Volts(start).Real > 0;
    }

    private static void Judge(Plan plan, PlanRequest request)
    {
        var about = $"{plan.Layout.Id} {plan.Layout.Form} {plan.Row.Id} on {plan.SupplyVolts} V, plate {request.Plate.Text("volts")}";
        var bench = new Bench(plan.Layout, request.Leads, plan);
        Assert.False(bench.Shorted, about);
        Assert.Equal(request.Leads.Values.Order(StringComparer.Ordinal), plan.Joints.SelectMany(joint => joint.Leads).Concat(plan.Capped).Order(StringComparer.Ordinal));
        Assert.InRange(plan.SupplyVolts / plan.PlateVolts, 0.9 - 1e-9, 1.1 + 1e-9);
        if (plan.Layout.Family == "commutator" || plan.Layout.Coils.Any(coil => coil.Role == "speed-tap"))
        {
            Assert.All(plan.Windings, winding => Assert.Equal(plan.SupplyVolts, winding.Volts.Value!.Value, 1e-6 * plan.SupplyVolts));
            return;
        }

        Assert.Equal(plan.Layout.Coils.Where(bench.Carries).Select(coil => coil.Id), plan.Windings.Select(winding => winding.Coil));
        foreach (var winding in plan.Windings)
        {
            var coil = plan.Layout.Coils.First(one => one.Id == winding.Coil);
            var rated = plan.Row.RatedShares.GetValueOrDefault(coil.Group, coil.RatedShare) * plan.PlateVolts / plan.Row.VoltsShare;
            var volts = bench.Volts(coil);
            Assert.Equal(volts.Magnitude, winding.Volts.Value!.Value, 2e-3 * plan.SupplyVolts);
            Assert.Equal(0, Complex.Abs(Complex.FromPolarCoordinates(1, winding.AngleDegrees * Math.PI / 180) - (volts / volts.Magnitude)), 0.01);
            Assert.True(Math.Abs((volts.Magnitude / rated / (plan.SupplyVolts / plan.PlateVolts)) - 1) < 0.01, $"{about}: {winding.Coil} gets {volts.Magnitude:F1} V, made for {rated:F1} V");
        }

        Aid(plan, bench, about);
        Design(plan, bench, request, about);
    }

    /// <summary>Where the plate gives every voltage of the motor, the lowest tells what each coil is made for, whatever row was taken.</summary>
    private static void Design(Plan plan, Bench bench, PlanRequest request, string about)
    {
        var volts = request.Plate.Volts;
        if (volts.Max() < 1.5 * volts.Min() && plan.Layout.Connections.Any(row => row.VoltsShare > 1))
        {
            return;
        }

        var lowest = volts.Where(each => each < 1.3 * volts.Min()).ToList();
        var marked = volts.Where(each => Math.Abs((plan.SupplyVolts / each) - 1) < 0.1 + 1e-9).ToList();
        Assert.All(plan.Layout.Coils.Where(bench.Carries), coil => Assert.True(
            marked.Exists(each => lowest.Exists(low => Math.Abs((bench.Volts(coil).Magnitude * each / plan.SupplyVolts / (low * plan.Row.RatedShares.GetValueOrDefault(coil.Group, coil.RatedShare))) - 1) < 0.11)),
            $"{about}: {coil.Id} gets {bench.Volts(coil).Magnitude:F1} V on a plate of {request.Plate.Text("volts")}"));
    }

    /// <summary>Coils on one axis pull together; the axes of three phases stand 120° apart in time, all turning one way.</summary>
    private static void Aid(Plan plan, Bench bench, string about)
    {
        var carrying = plan.Layout.Coils.Where(bench.Carries).ToList();
        foreach (var axis in carrying.GroupBy(coil => (coil.Role, coil.Axis)))
        {
            var first = bench.Volts(axis.First());
            Assert.True(plan.Layout.Id == "two-speed-6" || axis.All(coil => Angle(bench.Volts(coil) / first) is < 1 and > -1), $"{about}: halves of {axis.Key} oppose");
        }

        if (plan.Phases == 3)
        {
            var phases = carrying.GroupBy(coil => coil.Axis).OrderBy(axis => axis.Key).Select(axis => bench.Volts(axis.First())).ToList();
            Assert.Equal(3, phases.Count);
            var steps = new[] { Angle(phases[1] / phases[0]), Angle(phases[2] / phases[1]), Angle(phases[0] / phases[2]) };
            Assert.True(steps.All(step => Math.Abs(step + 120) < 1) || (plan.Layout.Id == "two-speed-6" && steps.All(step => Math.Abs(step - 120) < 1)), $"{about}: phases step {string.Join(", ", steps)}");
        }
    }

    private static double Angle(Complex ratio) => ratio.Phase * 180 / Math.PI;

    private static int Phases(Layout form) => form.Family == "three-phase" ? 3 : 1;

    private static double Hertz(Layout form) => form.Id.StartsWith("dc-", StringComparison.Ordinal) ? 0 : 60;

    /// <summary>The tags 1, 2, 3, … dealt out by a seed.</summary>
    private static PlanRequest Tagged(Layout form, string plate, double volts, string? rotation, string? end, int seed)
    {
        var tags = Enumerable.Range(1, form.Leads.Count).Select(tag => $"{tag}").ToArray();
        new Random(seed).Shuffle(tags);
        return Motors.Marked(form, plate, volts, Phases(form), Hertz(form), rotation, end) with
        {
            Leads = form.Leads.Zip(tags).ToDictionary(pair => pair.First.Marking, pair => pair.Second, StringComparer.Ordinal),
        };
    }
}
