using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>The steps of a plan and its reasons.</summary>
internal sealed class PlanWords(Plan plan, SuitedRow suited, PlanRequest request)
{
    /// <summary>In the order of the work: dead, earth, joints, insulation, meter, first start, direction.</summary>
    public IReadOnlyList<Statement> Steps() =>
    [
        plan.Layout.HasCapacitor ? Statement.Of("connections.step-make-safe-capacitor") : Statement.Of("connections.step-make-safe"),
        Statement.Of("connections.step-earth"),
        .. plan.Joints.Select(Joint),
        .. plan.Outer is { } outer ? [Outer(outer)] : Array.Empty<Statement>(),
        .. plan.Capped.Count > 0 ? [Statement.Of("connections.step-cap", ("leads", string.Join(", ", plan.Capped)))] : Array.Empty<Statement>(),
        .. HasInnerCapacitor ? [Statement.Of("connections.step-capacitor-back")] : Array.Empty<Statement>(),
        Statement.Of("connections.step-insulate"),
        .. Meter(),
        plan.Phases == 3 ? Statement.Of("connections.step-first-start-three") : Statement.Of("connections.step-first-start"),
        Direction(),
    ];

    /// <summary>Why series or parallel, star or delta, and where the start branch sits.</summary>
    public IReadOnlyList<Statement> Why() =>
        [Supply(), .. Run(), .. Start(), .. Hertz()];

    private bool HasInnerCapacitor => plan.Layout.Parts.Any(part => part.IsCapacitor);

    private Statement Joint(PlanJoint joint)
    {
        (string, string)[] gaps = [("joint", joint.Name), ("leads", string.Join(" + ", joint.Leads)), ("conductor", joint.Conductor ?? string.Empty)];
        return (joint.Conductor, joint.Leads.Count) switch
        {
            (null, 1) => Statement.Of("connections.step-joint-outer", gaps),
            (null, _) => Statement.Of("connections.step-joint-inner", gaps),
            ("L2", _) when plan.Phases == 1 => Statement.Of("connections.step-joint-second-line", gaps),
            (_, 1) => Statement.Of("connections.step-joint-one", gaps),
            _ => Statement.Of("connections.step-joint-line", gaps),
        };
    }

    private static Statement Outer(OuterPart outer)
    {
        (string, string)[] gaps = [("first", outer.Between[0]), ("second", outer.Between[1])];
        return outer.Kind switch
        {
            "run-capacitor" => Statement.Of("connections.step-run-capacitor", gaps),
            _ => Statement.Of("connections.step-start-relay", gaps),
        };
    }

    private IEnumerable<Statement> Meter()
    {
        var lines = plan.ExpectedOhms.Where(one => one.Between.All(name => plan.Joints.Any(joint => joint.Name == name && joint.Conductor is not null))).ToList();
        foreach (var reading in lines.Take(plan.Phases == 3 ? 1 : lines.Count))
        {
            var (first, second) = (("first", reading.Between[0]), ("second", reading.Between[1]));
            yield return reading.Ohms is { } ohms
                ? plan.Phases == 3
                    ? Statement.Of("connections.step-meter-three").With("ohms", ohms)
                    : Statement.Of("connections.step-meter", first, second).With("ohms", ohms)
                : Statement.Of("connections.step-meter-unmeasured", first, second);
        }

        yield return Statement.Of("connections.step-meter-frame");
    }

    private Statement Direction()
    {
        if (!plan.Reverse.Possible)
        {
            return request.Rotation is null
                ? Statement.Of("connections.direction-fixed")
                : Statement.Of("connections.direction-cannot-be-asked", ("rotation", request.Rotation));
        }

        var swap = string.Join("; ", plan.Reverse.Swap.Select(pair => string.Join(" ↔ ", pair)));
        var other = plan.SeenFrom == "shaft-end" ? "opposite-end" : "shaft-end";
        return (plan, request) switch
        {
            ({ Rotation: { } rotation, SeenFrom: { } end }, { DirectionUnproved: false }) => Statement.Of(request.Rotation is null ? "connections.direction-standard" : "connections.direction-asked",
                ("rotation", rotation), ("opposite", RowChoice.Turned(rotation, end, other)!), ("swap", swap))
                .With("end", End(end)).With("other", End(other)),
            (_, { Rotation: not null }) => Statement.Of("connections.direction-turned", ("swap", swap)),
            _ => Statement.Of("connections.direction-first-run", ("swap", swap)),
        };
    }

    private static Statement End(string end) => Statement.Word(end, [$"term.end.{end}"]);

    private Statement Supply()
    {
        var deviation = Quoted.Of(100 * suited.Deviation, "percent", "connections.supply-deviation",
            new Source { Title = "arithmetic", Place = "supply against plate", Basis = SourceBasis.Computed },
            new TrailStep("deviation of the supply", "100 × (supply ÷ plate − 1)",
                $"{SupplyJudge.Volts(plan.SupplyVolts)}, {SupplyJudge.Volts(plan.PlateVolts)}", Units.Text(100 * suited.Deviation, "percent")));
        return (Math.Abs(suited.Deviation) < 0.0005
                ? Statement.Of("connections.why-supply-equal").Resting(deviation)
                : Statement.Of("connections.why-supply").With("percent", deviation))
            .With("supply", SupplyJudge.Volts(plan.SupplyVolts)).With("plate", SupplyJudge.Volts(plan.PlateVolts));
    }

    private Statement[] Hertz() => request.Plate.Numbers("hertz").Count == 0 && request.Supply?.Hertz is > 0 and var hertz
        ? [Statement.Of("connections.why-plate-hertz", ("supply", Units.Text(hertz, "hertz")))]
        : [];

    private IEnumerable<Statement> Run()
    {
        var main = plan.Windings.Where(winding => winding is { Role: "run" or "phase", Branch: false }).ToList();
        if (main.Count == 0)
        {
            return [];
        }

        var share = main[0].Volts.Value!.Value / plan.SupplyVolts;
        var sentence = (main[0].Role, share) switch
        {
            ("run", < 0.9) => Statement.Of("connections.why-series"),
            ("run", _) when main.Count > 1 => Statement.Of("connections.why-parallel"),
            ("run", _) => Statement.Of("connections.why-single"),
            (_, > 0.9) => Statement.Of("connections.why-delta"),
            (_, > 0.55 and < 0.6) => Statement.Of("connections.why-star"),
            (_, > 0.45 and < 0.55) => Statement.Of("connections.why-delta-series"),
            _ => Statement.Of("connections.why-star-series"),
        };
        return [sentence.With("volts", main[0].Volts).With("percent", main[0].PercentOfRated).With("supply", SupplyJudge.Volts(plan.SupplyVolts))];
    }

    private IEnumerable<Statement> Start()
    {
        var starts = plan.Windings.Where(winding => winding.Role == "start").ToList();
        var runs = plan.Windings.Where(winding => winding.Role == "run").ToList();
        if (starts.Count == 0 || runs.Count < 2 || starts[0].Volts.Value > 0.9 * plan.SupplyVolts)
        {
            return [];
        }

        return
        [
            (starts.Count == 1 ? Statement.Of("connections.why-midpoint") : Statement.Of("connections.why-start-series"))
                .With("volts", starts[0].Volts).With("supply", SupplyJudge.Volts(plan.SupplyVolts)),
        ];
    }
}
