using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Heat;

/// <summary>A motor that is about to be started.</summary>
public sealed record StartingMotor
{
    /// <summary>The plate as far as it was read.</summary>
    public required PlateFields Plate { get; init; }

    /// <summary>Whose practice.</summary>
    public Region Region { get; init; }

    /// <summary>Rated volts of the connection that was made.</summary>
    public required double Volts { get; init; }

    /// <summary>Rated amps of that connection; <see langword="null"/> where the plate does not say.</summary>
    public double? Amps { get; init; }

    /// <summary>1 or 3; 0 for direct current.</summary>
    public required int Phases { get; init; }

    /// <summary>The family's id, for example <c>capacitor-start</c>.</summary>
    public string? Family { get; init; }
}

/// <summary>What a start should look like, said before it is made.</summary>
public static class ExpectedStart
{
    private const string SmallInternational = "three-phase-small-iec";

    /// <summary>Amps, time, and how often.</summary>
    /// <param name="knowledge">The facts of the trade.</param>
    /// <param name="motor">The motor.</param>
    public static IReadOnlyList<Statement> Of(TradeKnowledge knowledge, StartingMotor motor)
    {
        ArgumentNullException.ThrowIfNull(motor);
        var time = knowledge.Rules["first-start"];
        var amps = Marked(knowledge, motor) ?? ByCode(knowledge, motor) ?? ByKind(knowledge, motor);
        return
        [
            .. amps is null ? Array.Empty<Statement>() : [amps],
            Statement.Of("heat.expect-start-time")
                .With("normal", time.Quote(time["normal-seconds"], "second", "uncoupled"))
                .With("suspicious", time.Quote(time["suspicious-seconds"], "second", "uncoupled"))
                .With("cut", time.Quote(time["cut-seconds"], "second", "a rotor that stands")),
            .. StartDuty.Expected(knowledge, motor),
        ];
    }

    /// <summary>The plate's own locked-rotor amps, the figure that stands with these volts.</summary>
    private static Statement? Marked(TradeKnowledge knowledge, StartingMotor motor)
    {
        var marked = motor.Plate["lockedRotorAmps"]?.Numbers ?? [];
        var at = marked.Count == motor.Plate.Volts.Count ? motor.Plate.Volts.ToList().FindIndex(volts => volts == motor.Volts) : marked.Count == 1 && motor.Plate.Volts.Count <= 1 ? 0 : -1;
        return at < 0 || marked.Count == 0
            ? null
            : Statement.Of("heat.expect-start-marked").With("amps", knowledge.Rules["locked-rotor-current"].Quote(marked[at], "amp", "plate"));
    }

    private static Statement? ByCode(TradeKnowledge knowledge, StartingMotor motor)
    {
        if (motor.Plate.Text("codeLetter") is not { } letter || motor.Phases == 0
            || PlatePower.Watts(knowledge, motor.Plate.Horsepower, motor.Plate.Kilowatts) / knowledge.Rules["horsepower"]["watts"] is not { } horsepower
            || LockedRotor.FromCodeLetter(knowledge, letter, horsepower, motor.Volts, motor.Phases) is not { Low: { } low } range)
        {
            return null;
        }

        return range.High is { } high
            ? Statement.Of("heat.expect-start-code", ("letter", letter)).With("low", low).With("high", high)
            : Statement.Of("heat.expect-start-code-from", ("letter", letter)).With("low", low);
    }

    /// <summary>What motors of the kind usually draw; a small IEC motor may start as softly as its own row says.</summary>
    private static Statement? ByKind(TradeKnowledge knowledge, StartingMotor motor)
    {
        if (motor.Amps is not { } amps)
        {
            return null;
        }

        var usual = LockedRotor.FromKind(knowledge, LockedRotor.KindOf(motor.Family, motor.Phases), amps);
        var low = motor is { Region: Region.Iec, Phases: 3 } ? LockedRotor.FromKind(knowledge, SmallInternational, amps).Low : usual.Low;
        return Statement.Of("heat.expect-start-kind").With("low", low!).With("high", usual.High!);
    }
}
