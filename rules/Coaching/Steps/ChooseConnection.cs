using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>The connection for the supply at hand, in the direction that the runs so far have shown to be right.</summary>
internal static class ChooseConnection
{
    /// <summary>The plan, or what it lacks; <see langword="null"/> before it is known which lead carries which marking.</summary>
    public static Answer<Plan>? Plan(Workup work)
    {
        if (work.Ends?.Assignment is not { } assignment || work.Ends.Layout is not { } layout)
        {
            return null;
        }

        return Plan(work, layout, assignment);
    }

    /// <summary>The plan for leads that carry these markings; the phases where the supply's were not said.</summary>
    public static Answer<Plan> Plan(Workup work, string layout, IReadOnlyDictionary<string, string> leads, int? phases = null)
    {
        var request = WishedConnection.In(work, Request(work, layout, leads, phases));
        var plan = work.Rooms.Planner.Plan(request);
        return plan.IsGiven && Turned(work) && plan.Value.Rotation is { } rotation
            ? work.Rooms.Planner.Plan(request with { Rotation = Opposite(rotation), SeenFrom = plan.Value.SeenFrom })
            : plan;
    }

    /// <summary>What is asked of the planner for leads that carry these markings.</summary>
    public static PlanRequest Request(Workup work, string layout, IReadOnlyDictionary<string, string> leads, int? phases = null) => new()
    {
        Layout = layout,
        Leads = leads,
        Form = FormWithoutCapacitor(work, layout, leads),
        Plate = work.Plate,
        DirectionUnproved = work.Ends?.DirectionUnproved == true,
        Supply = Supply(work) is { Phases: null } said ? said with { Phases = phases } : Supply(work),
        Capacitor = work.File.Capacitors.LastOrDefault(capacitor => capacitor.Present),
        Windings = [.. (work.Identification?.Windings ?? []).Where(Measured).SelectMany(winding => Sections(work, winding))],
    };

    /// <summary>The form with these leads that has no capacitor, where somebody looked and found none, and the start winding comes out: one that lies across a half inside is in that half's ohms already.</summary>
    private static string? FormWithoutCapacitor(Workup work, string layout, IReadOnlyDictionary<string, string> leads) =>
        work.File.Capacitors.IsEmpty || work.File.Capacitors.Exists(capacitor => capacitor.Present) || work.Identification?.Windings.Any(winding => winding.Role == "start") != true ? null
        : work.Knowledge.Layouts[layout].Forms().FirstOrDefault(form => !form.HasCapacitor && form.Leads.Count == leads.Count
            && form.Leads.All(lead => leads.Keys.Any(marking => LeadTags.Names(lead, marking))))?.Form;

    /// <summary>Whether an odd number of starts went the wrong way: then the other row of the table holds.</summary>
    public static bool Turned(Workup work) => work.Runs.Count(run => run.Direction == "wrong") % 2 == 1;

    public static Question? Missing(Workup work)
    {
        if (work.Plan is not { IsGiven: false } refused)
        {
            return null;
        }

        var missing = refused.Problems.SelectMany(problem => problem.Missing).ToList();
        return missing.Exists(what => what.StartsWith("plate.volts", StringComparison.Ordinal)) ? KnowMotor.PlateVolts(work)
            : missing.Exists(what => what.StartsWith("plate.phases", StringComparison.Ordinal)) ? KnowMotor.Phases(work)
            : missing.Exists(what => what.StartsWith("supply", StringComparison.Ordinal)) ? SupplyAgain(work)
            : null;
    }

    public static IEnumerable<Statement> Say(Workup work)
    {
        foreach (var said in WishedConnection.Say(work))
        {
            yield return said;
        }

        if (work.Plan is not { } plan)
        {
            yield break;
        }

        if (!plan.IsGiven)
        {
            foreach (var problem in plan.Problems.Where(problem => !IsAsked(work, problem)))
            {
                yield return problem.Advice;
            }

            yield break;
        }

        yield return Statement.Of("coach.plan", ("joints", Joints(plan.Value)));
        foreach (var why in plan.Value.Why)
        {
            yield return why;
        }
    }

    /// <summary>A supply of which nothing was said yet is asked for, and not missed beforehand.</summary>
    private static bool IsAsked(Workup work, Problem problem) =>
        work.File.Supply is null && !work.Skipped("supply") && problem.Field.StartsWith("supply.", StringComparison.Ordinal);

    /// <summary>The joints of a plan in one line, with every lead that goes nowhere: one that is not named is one that somebody joins to something.</summary>
    public static string Joints(Plan plan) => string.Join(" · ",
    [
        .. plan.Joints.Select(joint => Joint(plan, joint)),
        .. plan.Outer is { } outer ? [$"{Name(outer)} between {outer.Between[0]} and {outer.Between[1]}"] : Array.Empty<string>(),
        .. plan.Capped.Select(lead => $"{lead} capped alone"),
    ]);

    private static string Joint(Plan plan, PlanJoint joint) => (joint, plan.Outer) switch
    {
        ({ Conductor: { } conductor }, _) => $"{joint.Name}: {string.Join(" + ", joint.Leads)} to {conductor}",
        ({ Leads: [var lead] }, { } outer) when outer.Between.Contains(lead, StringComparer.Ordinal) => $"{joint.Name}: {lead}, to the {Name(outer)} alone",
        _ => $"{joint.Name}: {string.Join(" + ", joint.Leads)}, to nothing else",
    };

    private static string Name(OuterPart part) => part.Kind.Replace('-', ' ');

    private static Question? SupplyAgain(Workup work) => work.Skipped("supply")
        ? null
        : work.Ask.Of("supply") with { Options = work.Ask.Supplies(work.File.Region, work.Phases) };

    /// <summary>The supply as said; a single-phase motor sees one phase of any supply, so that part may go unsaid. Direct current, which has no phases, is one pair of lines without a frequency to the planner.</summary>
    private static Fact.Supply? Supply(Workup work) => work.File.Supply switch
    {
        { Phases: 0 } direct => direct with { Phases = 1, Hertz = 0 },
        { Phases: null, System: null } said when work.Phases == 1 => said with { Phases = 1 },
        var said => said,
    };

    private static bool Measured(Winding winding) => winding is { Ohms: > 0, Junction: false, Leads.Count: 2 };

    /// <summary>A winding, and of one with taps its sections as far as they were read by themselves.</summary>
    private static IEnumerable<MeasuredWinding> Sections(Workup work, Winding winding)
    {
        yield return new(winding.Leads[0], winding.Leads[1], winding.Ohms!.Value);
        if (winding.Taps is not { Count: > 0 } taps)
        {
            yield break;
        }

        IReadOnlyList<string> points = [winding.Leads[0], .. taps, winding.Leads[1]];
        foreach (var (from, to) in points.Zip(points.Skip(1)))
        {
            if (work.File.Readings.FindLast(reading => reading.IsOfPair(from, to))?.Ohms is { } shown)
            {
                yield return new(from, to, Math.Max(0, shown - (MeterInput.ProbeOhms(work.File.BenchTests) ?? 0)));
            }
        }
    }

    private static string Opposite(string rotation) => rotation == "clockwise" ? "counterclockwise" : "clockwise";
}
