using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching;

/// <summary>Says back what was understood, in the person's own tags, before it counts for anything.</summary>
public static class Echo
{
    private const string History = "history.";

    /// <summary>What a fact says, in one short statement.</summary>
    /// <param name="fact">The fact.</param>
    public static Statement Of(Fact fact) => fact switch
    {
        Fact.Reading reading => Reading(reading),
        Fact.Plate { Of: not null } old => Statement.Of("echo.plate-old", ("field", Words(old.Field)), ("value", old.Value.Text), ("unit", PlateUnit(old))),
        Fact.Plate plate => Statement.Of("echo.plate", ("field", Words(plate.Field)), ("value", plate.Value.Text), ("unit", PlateUnit(plate))),
        Fact.Supply supply => Supply(supply),
        Fact.Symptom symptom => symptom.Present
            ? Statement.Named($"symptom.{symptom.Id}")
            : Statement.Of("echo.symptom-absent", ("symptom", Words(symptom.Id))),
        Fact.Lead lead => lead.Marking is null
            ? Statement.Of("echo.lead", ("tag", lead.Tag))
            : Statement.Of("echo.lead-marked", ("tag", lead.Tag), ("marking", lead.Marking)),
        Fact.Capacitor capacitor => Capacitor(capacitor),
        Fact.BenchTest test => Test(test),
        Fact.Insulation { Celsius: { } celsius } warm => Statement.Of("echo.insulation-at", ("value", Units.Text(warm.Megohms, "megohm")), ("celsius", Units.Text(celsius, "celsius"))),
        Fact.Insulation insulation => Statement.Of("echo.insulation", ("value", Units.Text(insulation.Megohms, "megohm"))),
        Fact.Running running => Running(running),
        Fact.Joint joint => joint.Conductor is null
            ? Statement.Of("echo.joint", ("leads", string.Join(" + ", joint.Leads)))
            : Statement.Of("echo.joint-on", ("leads", string.Join(" + ", joint.Leads)), ("conductor", joint.Conductor)),
        Fact.Goal goal => Statement.Of("echo.goal", ("goal", Words(goal.Id))),
        Fact.Confirm confirm => confirm.Confirmed
            ? Statement.Of("echo.confirmed", ("what", Words(confirm.Id)))
            : Statement.Of("echo.not-confirmed", ("what", Words(confirm.Id))),
        Fact.Instrument instrument => instrument.Present
            ? Statement.Of("echo.instrument", ("instrument", Words(instrument.Id)))
            : Statement.Of("echo.no-instrument", ("instrument", Words(instrument.Id))),
        Fact.Application application => Statement.Of("echo.application", ("application", application.Text)),
        Fact.Choice choice when choice.Question.StartsWith(History, StringComparison.Ordinal) => Statement.Of("echo.history", ("what", Words(choice.Question[History.Length..]))),
        Fact.Choice { Question: "supply.length-metres" } length => Statement.Of("echo.length", ("metres", length.Option)),
        Fact.Choice { Question: "supply.protection-amps" } protection => Statement.Of("echo.protection", ("amps", protection.Option)),
        Fact.Choice choice => Statement.Of("echo.choice", ("question", Words(choice.Question)), ("option", Words(choice.Option))),
        Fact.Unknown unknown => Statement.Of("echo.unknown", ("question", Words(unknown.Question))),
        _ => throw new ArgumentException($"A fact of kind {fact.GetType().Name} cannot be said back.", nameof(fact)),
    };

    /// <summary>What several facts say: leads that were named together in one short statement, everything else fact by fact.</summary>
    /// <param name="facts">The facts of one message.</param>
    public static IEnumerable<Statement> Of(IReadOnlyList<Fact> facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        List<Fact.Lead> plain = [.. facts.OfType<Fact.Lead>().Where(lead => lead.Marking is null)];
        var several = plain.Count > 1;
        foreach (var fact in facts)
        {
            if (several && ReferenceEquals(fact, plain[0]))
            {
                yield return Statement.Of("echo.leads", ("count", $"{plain.Count}"), ("tags", string.Join(", ", plain.Select(lead => lead.Tag))));
            }
            else if (!several || fact is not (Fact.Lead { Marking: null } or Fact.Choice { Question: "leads.count" }))
            {
                yield return Of(fact);
            }
        }
    }

    private static Statement Reading(Fact.Reading reading)
    {
        var from = reading.Together.Count == 0 ? reading.From : string.Join(" + ", [reading.From, .. reading.Together]);
        return reading switch
        {
            { Kick: true } => Statement.Of("echo.reading-kick", ("from", from), ("to", reading.To)),
            { Open: true } => Statement.Of("echo.reading-open", ("from", from), ("to", reading.To)),
            { Short: true } => Statement.Of("echo.reading-short", ("from", from), ("to", reading.To)),
            _ => Statement.Of("echo.reading", ("from", from), ("to", reading.To), ("value", Units.Text(reading.Ohms ?? 0, "ohm"))),
        };
    }

    private static Statement Supply(Fact.Supply supply)
    {
        string[] parts =
        [
            .. supply.Volts is { } volts ? [Units.Text(volts, "volt")] : Array.Empty<string>(),
            .. supply.Phases is { } phases ? [phases == 1 ? "single-phase" : "three-phase"] : Array.Empty<string>(),
            .. supply.Hertz is { } hertz ? [Units.Text(hertz, "hertz")] : Array.Empty<string>(),
        ];
        return Statement.Of("echo.supply", ("supply", string.Join(", ", parts)));
    }

    private static Statement Capacitor(Fact.Capacitor capacitor)
    {
        if (!capacitor.Present)
        {
            return Statement.Of("echo.no-capacitor");
        }

        string[] parts =
        [
            .. capacitor.Microfarads is { } marked ? [capacitor.MicrofaradsTo is { } to ? $"{Units.Number(marked)} to {Units.Text(to, "microfarad")}" : Units.Text(marked, "microfarad")] : Array.Empty<string>(),
            .. capacitor.Volts is { } volts ? [Units.Text(volts, "volt")] : Array.Empty<string>(),
            .. capacitor.AcrossVolts is { } across ? [$"{Units.Text(across, "volt")} across it"] : Array.Empty<string>(),
            .. capacitor.ThroughAmps is { } through ? [$"{Units.Text(through, "amp")} through it"] : Array.Empty<string>(),
            .. capacitor.MeasuredMicrofarads is { } measured ? [$"measured {Units.Text(measured, "microfarad")}"] : Array.Empty<string>(),
        ];
        return capacitor.Spare ? Statement.Of("echo.capacitor-spare", ("marks", string.Join(", ", parts)))
            : parts.Length == 0 ? Statement.Of("echo.capacitor") : Statement.Of("echo.capacitor-marked", ("marks", string.Join(", ", parts)));
    }

    private static Statement Test(Fact.BenchTest test)
    {
        var result = test.Value is { } value ? Units.Text(value, test.Unit ?? "ratio") : Words(test.Outcome ?? "no-result");
        return test.Read.Count == 2
            ? Statement.Of("echo.test-between", ("test", Words(test.Test)), ("from", test.Read[0]), ("to", test.Read[1]), ("result", result))
            : Statement.Of("echo.test", ("test", Words(test.Test)), ("result", result));
    }

    private static Statement Running(Fact.Running running)
    {
        string[] parts =
        [
            .. running.Outcome is { } outcome ? [Words(outcome)] : Array.Empty<string>(),
            .. running.Volts is { } volts ? [Units.Text(volts, "volt")] : Array.Empty<string>(),
            .. running.Amps is { } amps ? [Units.Text(amps, "amp")] : Array.Empty<string>(),
            .. running.Rpm is { } rpm ? [Units.Text(rpm, "rpm", 4)] : Array.Empty<string>(),
            .. running.Direction is { } direction ? [$"direction {Words(direction)}"] : Array.Empty<string>(),
        ];
        return Statement.Of("echo.running", ("what", string.Join(", ", parts)));
    }

    /// <summary>The sign behind a plate value: of the unit that was given, or of the field's own.</summary>
    private static string PlateUnit(Fact.Plate plate)
    {
        var unit = plate.Unit ?? plate.Field switch
        {
            "volts" => "volt",
            "amps" => "amp",
            "horsepower" => "horsepower",
            "kilowatts" => "kilowatt",
            "rpm" => "rpm",
            "hertz" => "hertz",
            _ => "count",
        };
        return Units.Ids.Contains(unit) && Units.Sign(unit) is { Length: > 0 } sign ? $" {sign}" : string.Empty;
    }

    /// <summary>An id as words: <c>hums-no-start</c> and <c>serviceFactor</c> read as they are spoken.</summary>
    private static string Words(string id)
    {
        var words = new System.Text.StringBuilder(id.Length + 4);
        foreach (var letter in id)
        {
            _ = char.IsUpper(letter) && words.Length > 0 && !char.IsUpper(words[^1]) ? words.Append(' ').Append(char.ToLowerInvariant(letter))
                : letter is '-' or '.' ? words.Append(' ')
                : words.Append(letter);
        }

        return words.ToString();
    }
}
