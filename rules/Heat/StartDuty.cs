using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>How often a motor may be started, and whether it was started too often.</summary>
public static class StartDuty
{
    private static readonly string[] WithStartCapacitor = ["capacitor-start", "two-value"];

    /// <summary>What it stands, said before it is started.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="motor">The motor.</param>
    public static IEnumerable<Statement> Expected(TradeKnowledge knowledge, StartingMotor motor)
    {
        ArgumentNullException.ThrowIfNull(motor);
        if (ByTable(knowledge, motor) is { } table)
        {
            yield return Statement.Of("heat.expect-starts-table").With("starts", table.Starts).With("rest", table.RestSeconds);
        }
        else if (PerHour(knowledge, motor) is { } starts)
        {
            var rule = knowledge.Rules["start-capacitor-duty"];
            yield return Statement.Of("heat.expect-starts-capacitor").With("starts", starts).With("seconds", rule.Quote(rule["seconds"], "second", "one start"));
        }

        var trials = knowledge.Rules["start-trials"];
        yield return Statement.Of("heat.expect-tries").With("tries", trials.Quote(trials["tries"], "count", "bench")).With("rest", Rest(trials));
    }

    /// <summary>What the times of its starts say; <see langword="null"/> where they are not too many, or not known.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="motor">The motor.</param>
    /// <param name="starts">When it was started, in order.</param>
    public static Statement? Judge(TradeKnowledge knowledge, StartingMotor motor, IReadOnlyList<DateTimeOffset> starts)
    {
        ArgumentNullException.ThrowIfNull(motor);
        ArgumentNullException.ThrowIfNull(starts);
        if (starts.Count == 0)
        {
            return null;
        }

        var rule = knowledge.Rules["start-trials"];
        var hour = Within(starts, rule["hour-minutes"]);
        if ((ByTable(knowledge, motor)?.Starts ?? PerHour(knowledge, motor)) is { } allowed && hour > allowed.Value)
        {
            return Statement.Of("heat.starts-too-many", ("count", Units.Number(hour))).With("starts", allowed);
        }

        var row = Within(starts, rule["rest-minutes"]);
        return row >= rule["tries"] ? Statement.Of("heat.starts-in-a-row", ("count", Units.Number(row))).With("rest", Rest(rule)) : null;
    }

    private static Quoted Rest(TradeRule rule) => rule.Quote(rule["rest-minutes"], "minute", "rest");

    private static int Within(IReadOnlyList<DateTimeOffset> starts, double minutes) => starts.Count(start => (starts[^1] - start).TotalMinutes < minutes);

    private static Quoted? PerHour(TradeKnowledge knowledge, StartingMotor motor)
    {
        var rule = knowledge.Rules["start-capacitor-duty"];
        return WithStartCapacitor.Contains(motor.Family, StringComparer.Ordinal) ? rule.Quote(rule["starts"], "count", "an hour") : null;
    }

    /// <summary>The table's row of a three-phase motor of known power and poles.</summary>
    private static StartsPerHour? ByTable(TradeKnowledge knowledge, StartingMotor motor) =>
        motor is { Phases: 3, Plate.Rpm: { } rpm }
        && PlatePower.Watts(knowledge, motor.Plate.Horsepower, motor.Plate.Kilowatts) / knowledge.Rules["horsepower"]["watts"] is { } horsepower
        && Speed(knowledge, rpm, motor.Plate.Hertz) is { Fits: true } speed
            ? Starting.PerHour(knowledge, horsepower, speed.Poles, null).Value
            : null;

    private static PlateSpeed? Speed(TradeKnowledge knowledge, double rpm, double? hertz) =>
        hertz is { } known ? PlateSpeed.Of(knowledge, rpm, known) : PlateSpeed.AtEitherFrequency(knowledge, rpm) is [var only] ? only : null;
}
