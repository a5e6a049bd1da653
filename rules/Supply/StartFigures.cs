using WireCoach.Rules.Cases;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Supply;

/// <summary>How a motor starts on its supply, and what a three-phase motor would need on one phase.</summary>
public sealed record StartFigures
{
    /// <summary>Line amps of a reduced start; <see langword="null"/> for a direct start.</summary>
    public Quoted? ReducedAmps { get; init; }

    /// <summary>Share of the direct start's torque.</summary>
    public Quoted? ReducedTorque { get; init; }

    /// <summary>Seconds to run up; <see langword="null"/> without inertia, speed and torque.</summary>
    public Quoted? RunUpSeconds { get; init; }

    /// <summary>Starts an hour; <see langword="null"/> without a speed, or beyond the table.</summary>
    public Quoted? StartsPerHour { get; init; }

    /// <summary>Least rest between starts in s.</summary>
    public Quoted? RestSeconds { get; init; }

    /// <summary>The capacitor and what is left of the motor on one phase; <see langword="null"/> where it is not asked, or may not be.</summary>
    public OnePhaseEstimate? OnePhase { get; init; }

    /// <summary>Line amps of a drive that makes three phases of one.</summary>
    public Quoted? DriveInputAmps { get; init; }

    internal static SupplyPlan Beside(TradeKnowledge knowledge, SupplyInput input, SupplyPlan plan)
    {
        var hertz = input.PlateHertz ?? input.Hertz ?? knowledge.Rules["supply-frequencies"][input.Region == Region.Iec ? "iec-hertz" : "na-hertz"];
        var watts = PlatePower.Watts(knowledge, input.Horsepower, input.Kilowatts);
        var horsepower = watts / knowledge.Rules["horsepower"]["watts"];
        var (current, torque) = Reduced(knowledge, input);
        var speed = input.Rpm is { } rpm ? PlateSpeed.Of(knowledge, rpm, hertz) : null;
        var starts = input.Phases == 3 && horsepower is { } size && speed is { Fits: true }
            ? Starting.PerHour(knowledge, size, speed.Poles, input.LoadKilogramSquareMetres * knowledge.Rules["starts-per-hour"]["pound-square-feet-per-kilogram-square-metre"]).Value
            : null;
        var one = input.SinglePhaseVolts is { } volts && watts is { } shaft && input.PlateVolts is { } winding
            ? OnOnePhase.Estimate(knowledge, shaft, winding, volts, hertz)
            : null;
        return plan with
        {
            Start = new StartFigures
            {
                ReducedAmps = current is not null && plan.StartingAmps is { } direct
                    ? knowledge.Rules["start-reduced"].Quote(current.Value!.Value * direct.Value!.Value, "amp", $"{current.Text} × {direct.Text}", null, direct.Trail) : null,
                ReducedTorque = torque,
                RunUpSeconds = input is { LoadKilogramSquareMetres: { } inertia, AcceleratingNewtonMetres: { } mean, Rpm: { } reached }
                    ? Starting.RunUp(knowledge, inertia, reached, mean) : null,
                StartsPerHour = starts?.Starts,
                RestSeconds = starts?.RestSeconds,
                OnePhase = one?.Value,
                DriveInputAmps = input is { SinglePhaseVolts: { } line, Efficiency: { } efficiency, PowerFactor: { } powerFactor } && horsepower is { } power
                    ? OnOnePhase.DriveInput(knowledge, power, line, efficiency, powerFactor) : null,
            },
            Notes = [.. plan.Notes, .. OnePhaseNotes(one, input)],
        };
    }

    /// <summary>The shares of a reduced start; the IEC starting current already is that of its starter.</summary>
    private static (Quoted? Current, Quoted? Torque) Reduced(TradeKnowledge knowledge, SupplyInput input)
    {
        var (current, torque) = input switch
        {
            { Starter: "star-delta" } => Starting.StarDelta(knowledge),
            { Starter: "autotransformer", Tap: { } tap } => Starting.Autotransformer(knowledge, tap),
            _ => ((Quoted?)null, (Quoted?)null),
        };
        return (input.Region == Region.Iec && input.Starter is "star-delta" ? null : current, torque);
    }

    private static IEnumerable<Statement> OnePhaseNotes(Answer<OnePhaseEstimate>? one, SupplyInput input) =>
        one is null ? []
        : one.IsGiven ? [Statement.Of("supply.one-phase", ("volts", Units.Text(input.SinglePhaseVolts!.Value, "volt")))
            .With("capacitor", one.Value.Microfarads).With("low", one.Value.PowerWatts.Low!).With("high", one.Value.PowerWatts.High!).Resting(one.Value.CapacitorVolts)]
        : one.Problems.Select(problem => problem.Advice);
}
