using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching.Steps;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching;

/// <summary>Says back what was understood, in the person's own tags, before it counts for anything.</summary>
public static class Echo
{
    private const string History = "history.";
    private static readonly HashSet<string> Repairs = [Fact.Choice.RepairMade, Fact.Choice.AfterRepair];

    /// <summary>What a fact says, in one short statement.</summary>
    /// <param name="fact">The fact.</param>
    public static Statement Of(Fact fact) => fact switch
    {
        Fact.Reading reading => Reading(reading),
        Fact.Plate { Of: not null } old => Statement.Of("echo.plate-old", ("value", old.Value.Text), ("unit", PlateUnit.Sign(old.Field, old.Unit))).With("field", Statement.Term(old.Field, "term.plate.")),
        Fact.Plate { Field: "phases", Value.Numbers: [0] } => Statement.Of("echo.plate-direct-current"),
        Fact.Plate plate => Statement.Of("echo.plate", ("value", plate.Value.Text), ("unit", PlateUnit.Sign(plate.Field, plate.Unit))).With("field", Statement.Term(plate.Field, "term.plate.")),
        Fact.Supply supply => Supply(supply),
        Fact.Symptom symptom => symptom.Present
            ? Statement.Named($"symptom.{symptom.Id}")
            : Statement.Of("echo.symptom-absent").With("symptom", Statement.Term(symptom.Id, "symptom.")),
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
        Fact.Goal goal => Statement.Of("echo.goal").With("goal", Statement.Term(goal.Id, "term.goal.")),
        Fact.Confirm confirm => confirm.Confirmed
            ? Statement.Of("echo.confirmed").With("what", Statement.Term(confirm.Id, "term.confirmed."))
            : Statement.Of("echo.not-confirmed").With("what", Statement.Term(confirm.Id, "term.confirmed.")),
        Fact.Instrument instrument => instrument.Present
            ? Statement.Of("echo.instrument").With("instrument", Statement.Term(instrument.Id, "term.instrument."))
            : Statement.Of("echo.no-instrument").With("instrument", Statement.Term(instrument.Id, "term.instrument.")),
        Fact.Application application => Statement.Of("echo.application", ("application", application.Text)),
        Fact.Choice choice when choice.Question.StartsWith(History, StringComparison.Ordinal) => Statement.Of("echo.history").With("what", Statement.Term(choice.Question[History.Length..], "term.history.")),
        Fact.Choice choice when choice.Question.StartsWith(Fact.Choice.Danger, StringComparison.Ordinal) => Statement.Of("echo.danger").With("what", Statement.Term(choice.Question[Fact.Choice.Danger.Length..], "term.danger.")),
        Fact.Choice choice when choice.Question.StartsWith(Fact.Choice.Doubted, StringComparison.Ordinal) => Statement.Of("echo.doubted").With("what", Statement.Term(choice.Question[Fact.Choice.Doubted.Length..], "symptom.")),
        Fact.Choice choice when choice.Question.StartsWith(Fact.Choice.Unsettled, StringComparison.Ordinal) => Statement.Of("echo.unsettled").With("what", Statement.Term(choice.Question[Fact.Choice.Unsettled.Length..], "term.unsettled.")),
        Fact.Choice { Question: "supply.length-metres" } length => Statement.Of("echo.length", ("metres", length.Option)),
        Fact.Choice { Question: "supply.protection-amps" } protection => Statement.Of("echo.protection", ("amps", protection.Option)),
        Fact.Choice choice when choice.Question.Split('.') is [var card, var cause] && Repairs.Contains(card) =>
            Statement.Of("echo.repair").With("cause", Statement.Word(Statement.Spoken(cause), [$"cause.{cause}.name"])).With("option", Statement.Term(choice.Option, $"question.{card}.option-")),
        Fact.Choice choice when choice.Question.Split('.') is [FindWindings.RingLeads, var first, var second] => Statement.Of("echo.ring-leads", ("lead", $"{(choice.Option == "first" ? first : second)}")),
        Fact.Choice choice when choice.Question.Split('.') is [var card, var from, var to] => Statement.Of("echo.choice-between", ("from", from), ("to", to))
            .With("question", Statement.Term(card, "term.asked.")).With("option", Statement.Term(choice.Option, $"question.{card}.option-", $"term.option.{card}-")),
        Fact.Choice choice => Statement.Of("echo.choice").With("question", Statement.Term(choice.Question, "term.asked.")).With("option", Statement.Term(choice.Option, $"question.{choice.Question}.option-", $"term.option.{choice.Question}-")),
        Fact.Unknown unknown => Statement.Of("echo.unknown").With("question", Asked(unknown.Question)),
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
            else if (!several || fact is not (Fact.Lead { Marking: null } or Fact.Choice { Question: Fact.Choice.LeadCount }))
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

    private static Statement Supply(Fact.Supply supply) => Statement.Of("echo.supply").With("supply", (Statement[])
    [
        .. supply.Volts is { } volts ? [Figure(volts, "volt")] : Array.Empty<Statement>(),
        .. supply.Phases is { } phases ? [Statement.Term($"{phases}", "question.plate.phases.option-")] : Array.Empty<Statement>(),
        .. supply.Hertz is { } hertz ? [Figure(hertz, "hertz")] : Array.Empty<Statement>(),
    ]);

    private static Statement Capacitor(Fact.Capacitor capacitor)
    {
        if (!capacitor.Present)
        {
            return Statement.Of($"echo.no-{Named(capacitor)}");
        }

        Statement[] parts =
        [
            .. capacitor.Microfarads is { } marked
                ? [capacitor.MicrofaradsTo is { } to ? Statement.Of("echo.capacitor-range", ("from", Units.Number(marked)), ("to", Units.Text(to, "microfarad"))) : Figure(marked, "microfarad")]
                : Array.Empty<Statement>(),
            .. capacitor.Volts is { } volts ? [Figure(volts, "volt")] : Array.Empty<Statement>(),
            .. capacitor.AcrossVolts is { } across ? [Statement.Of("echo.capacitor-across", ("volts", Units.Text(across, "volt")))] : Array.Empty<Statement>(),
            .. capacitor.ThroughAmps is { } through ? [Statement.Of("echo.capacitor-through", ("amps", Units.Text(through, "amp")))] : Array.Empty<Statement>(),
            .. capacitor.MeasuredMicrofarads is { } measured ? [Statement.Of("echo.capacitor-measured", ("microfarads", Units.Text(measured, "microfarad")))] : Array.Empty<Statement>(),
        ];
        return capacitor.Spare ? Statement.Of("echo.capacitor-spare").With("marks", parts)
            : parts.Length == 0 ? Statement.Of($"echo.{Named(capacitor)}") : Statement.Of($"echo.{Named(capacitor)}-marked").With("marks", parts);
    }

    /// <summary>By what it is for: of two, each has its own marks.</summary>
    private static string Named(Fact.Capacitor capacitor) => capacitor.Use switch { "start" => "start-capacitor", "run" => "run-capacitor", _ => "capacitor" };

    private static Statement Test(Fact.BenchTest test)
    {
        var result = test.Value is { } value ? Figure(value, test.Unit ?? "ratio") : Statement.Term(test.Outcome ?? "no-result", $"test.{test.Test}.reading-", "question.ends-outcome.option-", "term.outcome.");
        var named = Statement.Word(Statement.Spoken(test.Test), [$"term.test.{test.Test}", $"test.{test.Test}.name"]);
        return test.Read.Count == 2
            ? Statement.Of("echo.test-between", ("from", test.Read[0]), ("to", test.Read[1])).With("test", named).With("result", result)
            : Statement.Of("echo.test").With("test", named).With("result", result);
    }

    private static Statement Running(Fact.Running running) => Statement.Of("echo.running").With("what", (Statement[])
    [
        .. running.Outcome is { } outcome ? [Statement.Term(outcome, "question.first-start.option-", "term.outcome.")] : Array.Empty<Statement>(),
        .. running.Volts is { } volts ? [Figure(volts, "volt")] : Array.Empty<Statement>(),
        .. running.Amps is { } amps ? [Figure(amps, "amp")] : Array.Empty<Statement>(),
        .. running.Rpm is { } rpm ? [Statement.Word(Units.Text(rpm, "rpm", 4))] : Array.Empty<Statement>(),
        .. running.Direction is { } direction ? [Statement.Term(direction, "term.direction.")] : Array.Empty<Statement>(),
    ]);

    /// <summary>A question by the words for its kind; which leads it is about stands behind a point in its id.</summary>
    private static Statement Asked(string question)
    {
        var kind = question.Split('.')[0];
        return kind == "test"
            ? Statement.Word(Statement.Spoken(question[5..]), [$"{question}.name"])
            : Statement.Word(Statement.Spoken(question), [$"term.asked.{question}", $"question.{question}.text", $"term.asked.{kind}"]);
    }

    private static Statement Figure(double value, string unit) => Statement.Word(Units.Text(value, unit));
}
