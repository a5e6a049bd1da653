using WireCoach.Rules.Heat;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>Whether a supply is of the right kind at all: direct or alternating, one or three phases, the plate's frequency.</summary>
internal sealed class SupplyKind(TradeKnowledge knowledge)
{
    private readonly ConnectionFigures _figures = knowledge.Connections;

    /// <summary>Why the supply does not suit; none where it does.</summary>
    public IEnumerable<Problem> Problems(Layout layout, PlanRequest request, int phases)
    {
        if (phases == 3 && request.Supply is ({ Hertz: 0 } or { System: "single-phase" or "split-phase" }))
        {
            return [Unsuitable("supply.phases", Statement.Of("connections.phases-contradicted"))];
        }

        var direct = request.Supply!.Hertz == 0;
        if (_figures.DirectCurrentOnly.Contains(layout.Id))
        {
            return direct ? [] : [Unsuitable("supply.hertz", Statement.Of("connections.direct-motor-on-alternating"))];
        }

        if (direct)
        {
            return _figures.EitherCurrent.Contains(layout.Id) ? [] : [Unsuitable("supply.hertz", Statement.Of("connections.alternating-motor-on-direct"))];
        }

        return [.. Plate(layout, request), .. Phases(layout, request, phases), .. Hertz(request)];
    }

    private static IEnumerable<Problem> Plate(Layout layout, PlanRequest request) => request.Plate.Phases is { } plate && plate != PhasesOf(layout)
        ? [Unsuitable("plate.phases", Statement.Of("connections.plate-phases", ("plate", $"{plate}"), ("layout", layout.Name)))]
        : [];

    private IEnumerable<Problem> Phases(Layout layout, PlanRequest request, int phases) => (PhasesOf(layout), phases) switch
    {
        (1, 3) => [Unsuitable("supply.phases", Statement.Of("connections.single-phase-motor-on-three"))],
        (3, 1) => [Unsuitable("supply.phases", OnOnePhase.Advice(knowledge, PlatePower.Watts(knowledge, request.Plate.Horsepower, request.Plate.Kilowatts), request.Supply!.Volts, request.Supply.Hertz))],
        _ => [],
    };

    private static int PhasesOf(Layout layout) => layout.Family == "three-phase" ? 3 : 1;

    private IEnumerable<Problem> Hertz(PlanRequest request)
    {
        var plates = request.Plate.Numbers("hertz");
        if (request.Supply!.Hertz is not { } supply || plates.Count == 0 || plates.Any(plate => Math.Abs((supply / plate) - 1) <= _figures.HertzTolerance.Value + 1e-9))
        {
            return [];
        }

        var plate = plates[0];
        var volts = request.Plate.Volts.MinBy(one => Math.Abs(Math.Log(request.Supply.Volts!.Value / one * plate / supply)));
        var ratio = request.Supply.Volts!.Value / supply / (volts / plate);
        var quoted = Quoted.Of(100 * ratio, "percent", "connections.volts-per-hertz", _figures.VoltsPerHertzHigh.Source, new TrailStep(
            "volts per hertz against the plate", "100 × (Us ÷ fs) ÷ (Up ÷ fp)",
            $"{Units.Text(request.Supply.Volts.Value, "volt")}, {Units.Text(supply, "hertz")}; {Units.Text(volts, "volt")}, {Units.Text(plate, "hertz")}",
            Units.Text(100 * ratio, "percent")));
        var statement = ratio > _figures.VoltsPerHertzHigh.Value ? Statement.Of("connections.hertz-saturates")
            : ratio < _figures.VoltsPerHertzLow.Value ? Statement.Of("connections.hertz-weak")
            : Statement.Of("connections.hertz-needs-maker");
        return [Unsuitable("supply.hertz", statement.With("supply", Units.Text(supply, "hertz")).With("plate", Units.Text(plate, "hertz")).With("percent", quoted))];
    }

    private static Problem Unsuitable(string field, Statement advice) => new("not-ready", field, advice);
}
