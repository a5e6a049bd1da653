using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching.Steps;
using WireCoach.Rules.Language;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching;

/// <summary>Turns the answer to the open question into facts, or says what is wrong with it.</summary>
internal sealed class AnswerReader(TradeKnowledge knowledge)
{
    private static readonly Dictionary<string, string> StartSymptoms = new(StringComparer.Ordinal)
    {
        ["slow"] = "runs-slow",
        ["hummed"] = "hums-no-start",
        ["tripped"] = "trips-at-once",
        ["nothing"] = "silent-no-start",
        ["smoke"] = "smoke-or-burnt-smell",
    };

    private readonly MeterModel _meter = new(knowledge.Identification, null);

    /// <summary>The facts of an answer; empty for an answer in free words, which the listener reads.</summary>
    public Answer<IReadOnlyList<Fact>> Read(CaseFile file, Question asked, QuestionAnswer given)
    {
        if (!string.Equals(given.QuestionId, asked.Id, StringComparison.Ordinal))
        {
            return new Problem("invalid-fact", "questionId", Statement.Of("answer.other-question", ("asked", asked.Id)));
        }

        if (given.Unknown == true)
        {
            return asked.CanBeUnknown
                ? Facts(new Fact.Unknown { Question = asked.Id, How = FactEntry.Form })
                : asked.Kind == QuestionKind.Confirm
                    ? Facts(new Fact.Confirm { Id = asked.Id, Confirmed = false, How = FactEntry.Form })
                    : new Problem("invalid-fact", "unknown", Statement.Of("answer.must-be-known"));
        }

        return asked.Kind switch
        {
            QuestionKind.Confirm when given.Confirmed is { } confirmed =>
                Facts(new Fact.Confirm { Id = asked.Id, Confirmed = confirmed, How = FactEntry.Form }),
            QuestionKind.Choice when given.Choice is { } choice => asked.Options.Any(option => option.Id == choice)
                ? Facts(Chosen(file, asked, choice))
                : new Problem("invalid-fact", "choice", Statement.Of("answer.no-such-option", ("options", string.Join(", ", asked.Options.Select(option => option.Id))))),
            QuestionKind.Quantity when given.Quantity is { } quantity => Measured(file, asked, quantity),
            QuestionKind.Quantity when asked.CanBeOpen && given.Reading is { Open: true, Ohms: null } =>
                Facts(new Fact.BenchTest { Test = asked.About, Outcome = Fact.BenchTest.NoPath, How = FactEntry.Form }),
            QuestionKind.Reading when given.Reading is { } reading => Shown(file, asked, reading),
            QuestionKind.Text when given.Text is not null => Answer<IReadOnlyList<Fact>>.Given([]),
            _ => new Problem("invalid-fact", Member(asked.Kind), Statement.Of("answer.wrong-member", ("member", Member(asked.Kind)))),
        };
    }

    private static string Member(QuestionKind kind) => kind switch
    {
        QuestionKind.Choice => "choice",
        QuestionKind.Quantity => "quantity",
        QuestionKind.Reading => "reading",
        QuestionKind.Confirm => "confirmed",
        _ => "text",
    };

    private static Answer<IReadOnlyList<Fact>> Facts(params IReadOnlyList<Fact> facts) => Answer<IReadOnlyList<Fact>>.Given(facts);

    /// <summary>A start that showed what was told of the motor before.</summary>
    private static Fact.Running AsBefore(CaseFile file) => new()
    {
        Outcome = StartSymptoms.FirstOrDefault(one => file.Symptoms.GetValueOrDefault(one.Value)).Key ?? "ran",
        Direction = file.Symptoms.GetValueOrDefault("wrong-direction") ? "wrong" : null,
        How = FactEntry.Form,
    };

    private IReadOnlyList<Fact> Chosen(CaseFile file, Question asked, string choice) => asked.About switch
    {
        "lead" when choice == "numbered" => KnowMotor.Numbered(file),
        "lead" when choice == "none" => KnowMotor.Named(file),
        _ when asked.Id.StartsWith(TestGuide.QuestionPrefix, StringComparison.Ordinal) =>
            [new Fact.BenchTest { Test = asked.About, Outcome = choice, How = FactEntry.Form }],
        "instrument" when choice == "none" => [.. asked.Options.Where(option => option.Id != "none").Select(option => Reach(option.Id, false))],
        "instrument" => [Reach(choice, true)],
        "goal" => [new Fact.Goal { Id = choice, How = FactEntry.Form }],
        "supply" => [knowledge.Supplies[choice].Fact()],
        "plate" => [new Fact.Plate { Field = asked.Id["plate.".Length..], Value = PlateValue.Parse(choice), How = FactEntry.Form }],
        "capacitor" when asked.Id == "capacitor" =>
            [new Fact.Capacitor { Present = choice != "none", Use = choice == "two" ? "both" : "unknown", How = FactEntry.Form }],
        "running" => Ran(choice),
        "run-direction" => [new Fact.Running { Direction = choice, How = FactEntry.Form }],
        "armature" => Turned(file, asked, choice),
        "repair" when choice == "runs" => [new Fact.Choice { Question = asked.Id, Option = choice, How = FactEntry.Form }, new Fact.Running { Outcome = "ran", How = FactEntry.Form }, new Fact.Choice { Question = "outcome", Option = "repaired", How = FactEntry.Form }],
        "repair" when choice == Fact.Choice.Same => [new Fact.Choice { Question = asked.Id, Option = choice, How = FactEntry.Form }, AsBefore(file)],
        _ when asked.Setup is { } setup => [Seen(asked, setup, choice)],
        _ => [new Fact.Choice { Question = asked.Id, Option = choice, How = FactEntry.Form }],
    };

    /// <summary>A reading watched while the shaft turns: one that jumps takes the place of the reading at rest.</summary>
    private static IReadOnlyList<Fact> Turned(CaseFile file, Question asked, string choice)
    {
        var said = new Fact.Choice { Question = asked.Id, Option = choice, How = FactEntry.Form };
        return choice == "jumps" && Earlier(file, new Fact.Reading { From = asked.Between![0], To = asked.Between[1] }) is { } still
            ? [said, still with { FactId = string.Empty, ChangesWithShaft = true, Replaces = still.FactId, How = FactEntry.Form }]
            : [said];
    }

    /// <summary>What a first start did; a start that went wrong is also a symptom, of a motor that somebody has just connected.</summary>
    private static IReadOnlyList<Fact> Ran(string outcome)
    {
        var running = new Fact.Running { Outcome = outcome, How = FactEntry.Form };
        return StartSymptoms.TryGetValue(outcome, out var symptom)
            ? [running, Symptom("just-rewired"), Symptom(symptom)]
            : [running];
    }

    private static Fact.Symptom Symptom(string id) => new() { Id = id, How = FactEntry.Form };

    private static Fact.BenchTest Seen(Question asked, TestSetup setup, string outcome) => new()
    {
        Test = asked.About,
        Drive = setup.Drive,
        Tie = setup.Tie,
        Read = setup.Read,
        AppliedVolts = setup.AppliedVolts,
        Outcome = outcome,
        How = FactEntry.Form,
    };

    private static Fact.Instrument Reach(string instrument, bool present) => new() { Id = instrument, Present = present, How = FactEntry.Form };

    private Answer<IReadOnlyList<Fact>> Measured(CaseFile file, Question asked, AnsweredQuantity quantity)
    {
        var unit = asked.Unit!;
        if (UnitFamilies.Convert(quantity.Value, quantity.Unit ?? unit, unit) is not { } value)
        {
            return new Problem("unreadable-quantity", "quantity.unit", Statement.Of("answer.unit-does-not-fit", ("unit", quantity.Unit ?? string.Empty), ("wanted", unit)));
        }

        if (!double.IsFinite(value) || value < 0)
        {
            return new Problem("unreadable-quantity", "quantity.value", Statement.Of("answer.not-below-zero"));
        }

        if (asked.Setup is { AppliedVolts: { } applied } && EndsLimits.Against(knowledge, asked.About, value, applied) is { } tooHigh)
        {
            return new Problem("unreadable-quantity", "quantity.value", tooHigh);
        }

        if (asked.About == "run-current" && BeyondPlate(file, value) is { } slip)
        {
            return new Problem("unreadable-quantity", "quantity.value", slip);
        }

        return Facts(asked.About switch
        {
            _ when asked.Id.StartsWith(TestGuide.QuestionPrefix, StringComparison.Ordinal) && asked.About != "insulation" =>
                new Fact.BenchTest { Test = asked.About, Value = value, Unit = unit, How = FactEntry.Form },
            "insulation" when asked.Id == BeforePower.InsulationTemperature && file.Insulations.LastOrDefault() is { } read =>
                read with { Celsius = value, Replaces = read.FactId, FactId = string.Empty, How = FactEntry.Form },
            "insulation" => new Fact.Insulation { Megohms = value, How = FactEntry.Form },
            "running" => new Fact.Running { Volts = value, How = FactEntry.Form },
            "run-current" when asked.Id.StartsWith(FirstStart.OfLine, StringComparison.Ordinal) => new Fact.BenchTest { Test = "line-currents", Value = value, Unit = unit, How = FactEntry.Form },
            "run-current" => new Fact.Running { Amps = value, How = FactEntry.Form },
            "run-speed" => new Fact.Running { Rpm = value, How = FactEntry.Form },
            _ => new Fact.BenchTest
            {
                Test = asked.Id == Fact.BenchTest.ProbeZero ? asked.Id : asked.About,
                Drive = asked.Setup?.Drive ?? [],
                Tie = asked.Setup?.Tie ?? [],
                Read = asked.Setup?.Read ?? [],
                AppliedVolts = asked.Setup?.AppliedVolts,
                Value = value,
                Unit = unit,
                How = FactEntry.Form,
            },
        });
    }

    /// <summary>Amps that no motor with this plate draws, not even held fast: a slip of the finger or of the meter's range.</summary>
    private Statement? BeyondPlate(CaseFile file, double amps) =>
        file.Plate["amps"]?.Numbers is { Count: > 0 } plate && amps > knowledge.Rules["first-run-amps"]["never-times"] * plate.Max()
            ? Statement.Of("answer.amps-beyond-plate", ("amps", Units.Number(amps)), ("plate", Units.Number(plate.Max())))
            : null;

    private Answer<IReadOnlyList<Fact>> Shown(CaseFile file, Question asked, AnsweredReading shown)
    {
        var given = (shown.Ohms is null ? 0 : 1) + (shown.Open == true ? 1 : 0) + (shown.Short == true ? 1 : 0) + (shown.Kick == true && shown.Open != true ? 1 : 0);
        if (given != 1)
        {
            return new Problem("invalid-fact", "reading", Statement.Of("answer.one-of-reading"));
        }

        if (shown.Ohms is { } ohms && (!double.IsFinite(ohms) || ohms < 0 || ohms > 1e9))
        {
            return new Problem("unreadable-quantity", "reading.ohms", Statement.Of("answer.not-below-zero"));
        }

        var open = shown.Open == true || shown.Kick == true;
        if (asked.About == Fact.BenchTest.JointResistance)
        {
            return Facts(new Fact.BenchTest
            {
                Test = asked.About,
                Tie = asked.Setup?.Tie ?? [],
                Read = asked.Setup?.Read ?? asked.Between!,
                Value = shown.Short == true ? 0 : shown.Ohms,
                Unit = "ohm",
                Outcome = open ? "open" : null,
                How = FactEntry.Form,
            });
        }

        var (from, to) = (asked.Between![0], asked.Between[1]);
        var reading = new Fact.Reading
        {
            From = from,
            To = to,
            Ohms = shown.Ohms,
            Open = open,
            Short = shown.Short == true,
            Kick = shown.Kick == true,
            Together = asked.Setup is { Tie: [var held, ..] } ? [.. held.Where(lead => lead != from)] : [],
            How = FactEntry.Form,
        };
        return Facts(Earlier(file, reading) is { } earlier && !Agree(earlier, reading)
            ? reading with { Replaces = earlier.FactId, ChangesWithShaft = earlier.ChangesWithShaft }
            : reading);
    }

    /// <summary>The last reading of the same leads.</summary>
    private static Fact.Reading? Earlier(CaseFile file, Fact.Reading again) => file.Readings.FindLast(reading => reading.FactId.Length > 0 && again.IsOfSame(reading));

    /// <summary>Whether a reading taken again bears out the earlier one: then both count. Else it takes the earlier one's place; both stay in the log.</summary>
    /// <remarks>Of several leads held together only whether there is a path counts: its ohms are of none of them.</remarks>
    private bool Agree(Fact.Reading one, Fact.Reading other) => other.Together.Count > 0 ? one.Open == other.Open
        : one is { Ohms: { } first } && other is { Ohms: { } second }
        ? Math.Abs(first - second) <= _meter.CannotTell(first, second)
        : (one.Ohms, one.Open, one.Short, one.Kick) == (other.Ohms, other.Open, other.Short, other.Kick);
}
