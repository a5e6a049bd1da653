using WireCoach.Rules.Connections;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Endpoints.Calc;

/// <summary>A plan as the contract writes it: plain numbers, with the trail of each beside it.</summary>
internal sealed record PlanView
{
    public required string Layout { get; init; }

    public string? Form { get; init; }

    public required string Connection { get; init; }

    public required IReadOnlyList<PlanJoint> Joints { get; init; }

    public required IReadOnlyList<string> Capped { get; init; }

    public OuterPart? Outer { get; init; }

    public required IReadOnlyList<WindingView> PerWinding { get; init; }

    public double? LineAmps { get; init; }

    public required IReadOnlyList<OhmsView> ExpectedOhms { get; init; }

    public required IReadOnlyList<Statement> Steps { get; init; }

    public required IReadOnlyList<Statement> Why { get; init; }

    public required IReadOnlyList<Statement> Notes { get; init; }

    public string? Rotation { get; init; }

    public string? SeenFrom { get; init; }

    public required Reversal Reverse { get; init; }

    public required IReadOnlyList<Caution> Cautions { get; init; }

    public required IReadOnlyList<PlanView> Others { get; init; }

    public required IReadOnlyList<TrailStep> Trail { get; init; }

    public static PlanView Of(Plan plan) => new()
    {
        Layout = plan.Layout.Id,
        Form = plan.Layout.Form,
        Connection = plan.Row.Id,
        Joints = plan.Joints,
        Capped = plan.Capped,
        Outer = plan.Outer,
        PerWinding = [.. plan.Windings.Select(WindingView.Of)],
        LineAmps = plan.LineAmps?.Value,
        ExpectedOhms = [.. plan.ExpectedOhms.Select(one => new OhmsView(one.Between, WindingView.Clean(one.Ohms?.Value), one.Note))],
        Steps = plan.Steps,
        Why = plan.Why,
        Notes = plan.Notes,
        Rotation = plan.Rotation,
        SeenFrom = plan.SeenFrom,
        Reverse = plan.Reverse,
        Cautions = plan.Cautions,
        Others = [.. plan.Others.Select(Of)],
        Trail =
        [
            .. plan.Windings.SelectMany(winding => winding.PercentOfRated.Trail.Concat(winding.Amps?.Trail ?? [])).Distinct(),
            .. plan.LineAmps?.Trail ?? [],
            .. plan.ExpectedOhms.SelectMany(one => one.Ohms?.Trail ?? []),
        ],
    };
}

/// <summary>What one winding gets.</summary>
internal sealed record WindingView(
    string Coil, string Role, IReadOnlyList<string> Leads, double Volts, double AngleDegrees, double PercentOfRated, bool Branch, double? Amps)
{
    public static WindingView Of(PlannedWinding winding) => new(
        winding.Coil, winding.Role, winding.Leads, Clean(winding.Volts.Value)!.Value, Clean(winding.AngleDegrees)!.Value,
        Clean(winding.PercentOfRated.Value)!.Value, winding.Branch, Clean(winding.Amps?.Value));

    /// <summary>Without the last binary digits of a division.</summary>
    public static double? Clean(double? value) => value is { } number ? Math.Round(number, 9) : null;
}

/// <summary>What a meter shows between two joints; ohms are null where it reads open or the windings were not measured.</summary>
internal sealed record OhmsView(IReadOnlyList<string> Between, double? Ohms, Statement Note);
