using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections;

/// <summary>Whether a supply is of the right kind at all: direct or alternating, one or three phases, the plate's frequency.</summary>
internal sealed class SupplyKind(ConnectionFigures figures)
{
    /// <summary>Why the supply does not suit; none where it does.</summary>
    public IEnumerable<Problem> Problems(Layout layout, PlanRequest request, int phases)
    {
        if (phases == 3 && request.Supply is ({ Hertz: 0 } or { System: "single-phase" or "split-phase" }))
        {
            return [Unsuitable("supply.phases", Statement.Of("connections.phases-contradicted"))];
        }

        var direct = request.Supply!.Hertz == 0;
        if (figures.DirectCurrentOnly.Contains(layout.Id))
        {
            return direct ? [] : [Unsuitable("supply.hertz", Statement.Of("connections.direct-motor-on-alternating"))];
        }

        if (direct)
        {
            return figures.EitherCurrent.Contains(layout.Id) ? [] : [Unsuitable("supply.hertz", Statement.Of("connections.alternating-motor-on-direct"))];
        }

        return [.. Plate(layout, request), .. Phases(layout, request, phases), .. Hertz(request)];
    }

    private static IEnumerable<Problem> Plate(Layout layout, PlanRequest request) => request.Plate.Phases is { } plate && plate != PhasesOf(layout)
        ? [Unsuitable("plate.phases", Statement.Of("connections.plate-phases", ("plate", $"{plate}"), ("layout", layout.Name)))]
        : [];

    private IEnumerable<Problem> Phases(Layout layout, PlanRequest request, int phases) => (PhasesOf(layout), phases) switch
    {
        (1, 3) => [Unsuitable("supply.phases", Statement.Of("connections.single-phase-motor-on-three"))],
        (3, 1) => [Unsuitable("supply.phases", Capacitor(request))],
        _ => [],
    };

    private static int PhasesOf(Layout layout) => layout.Family == "three-phase" ? 3 : 1;

    /// <summary>Three-phase motor on one phase: what a run capacitor could do, and where that ends.</summary>
    private Statement Capacitor(PlanRequest request)
    {
        var limits = figures.SinglePhasing;
        var kilowatts = request.Plate.Kilowatts ?? request.Plate.Horsepower * KilowattsPerHorsepower;
        if (kilowatts is not { } power || request.Supply!.Hertz is not { } hertz)
        {
            return Limited(Statement.Of("connections.three-phase-on-one"));
        }

        if (power > limits.MostKilowatts)
        {
            return Statement.Of("connections.three-phase-on-one-too-big").With("most", Quote(limits.MostKilowatts, "kilowatt"))
                .With("power", Units.Text(power, "kilowatt"));
        }

        var volts = request.Supply.Volts!.Value;
        var microfarads = limits.Factor * power * 1000 / (Math.Sqrt(3) * 2 * Math.PI * hertz * volts * volts) * 1e6;
        var quoted = Quoted.Of(microfarads, "microfarad", "connections.single-phasing-capacitor", limits.Source, new TrailStep(
            "run capacitor, an estimate", "C = 2·P ÷ (√3 · 2π·f · U²)",
            $"P {Units.Text(power * 1000, "watt")}, f {Units.Text(hertz, "hertz")}, U {Units.Text(volts, "volt")}", Units.Text(microfarads, "microfarad")));
        return Limited(Statement.Of("connections.three-phase-on-one-estimate").With("microfarads", quoted));
    }

    private const double KilowattsPerHorsepower = 0.745699872;

    private Statement Limited(Statement statement) => statement
        .With("low", Quote(100 * figures.SinglePhasing.PowerShareLow, "percent"))
        .With("high", Quote(100 * figures.SinglePhasing.PowerShareHigh, "percent"))
        .With("start", Quote(100 * figures.SinglePhasing.StartShareHigh, "percent"))
        .With("most", Quote(figures.SinglePhasing.MostKilowatts, "kilowatt"))
        .With("rating", Quote(figures.SinglePhasing.CapacitorVolts, "volt"));

    private Quoted Quote(double value, string unit) => Quoted.Of(value, unit, "connections.single-phasing", figures.SinglePhasing.Source);

    private IEnumerable<Problem> Hertz(PlanRequest request)
    {
        var plates = request.Plate.Numbers("hertz");
        if (request.Supply!.Hertz is not { } supply || plates.Count == 0 || plates.Any(plate => Math.Abs((supply / plate) - 1) <= figures.HertzTolerance.Value + 1e-9))
        {
            return [];
        }

        var plate = plates[0];
        var volts = request.Plate.Volts.MinBy(one => Math.Abs(Math.Log(request.Supply.Volts!.Value / one * plate / supply)));
        var ratio = request.Supply.Volts!.Value / supply / (volts / plate);
        var quoted = Quoted.Of(100 * ratio, "percent", "connections.volts-per-hertz", figures.VoltsPerHertzHigh.Source, new TrailStep(
            "volts per hertz against the plate", "100 × (Us ÷ fs) ÷ (Up ÷ fp)",
            $"{Units.Text(request.Supply.Volts.Value, "volt")}, {Units.Text(supply, "hertz")}; {Units.Text(volts, "volt")}, {Units.Text(plate, "hertz")}",
            Units.Text(100 * ratio, "percent")));
        var statement = ratio > figures.VoltsPerHertzHigh.Value ? Statement.Of("connections.hertz-saturates")
            : ratio < figures.VoltsPerHertzLow.Value ? Statement.Of("connections.hertz-weak")
            : Statement.Of("connections.hertz-needs-maker");
        return [Unsuitable("supply.hertz", statement.With("supply", Units.Text(supply, "hertz")).With("plate", Units.Text(plate, "hertz")).With("percent", quoted))];
    }

    private static Problem Unsuitable(string field, Statement advice) => new("not-ready", field, advice);
}
