using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Writes what was understood as short lines, so that expectations can be read and compared.</summary>
internal static class Brief
{
    private static readonly HashSet<string> Kinds =
    [
        "reading", "plate", "supply", "capacitor", "insulation", "bench", "running", "joint", "confirm", "goal", "instrument", "application",
        "lead", "unknown", "choice", "question", "danger", "undo", "count",
    ];

    /// <summary>The kind of an expected or heard line.</summary>
    public static string Kind(string line) => line.Split(' ')[0] is var kind && Kinds.Contains(kind) ? kind : "symptom";

    public static List<string> Of(Understood heard) =>
    [
        .. heard.Symptoms.Select(symptom => symptom.Present ? symptom.Id : "no " + symptom.Id),
        .. heard.Facts.Select(Line).OfType<string>().Where(line => line != "danger").Distinct(StringComparer.Ordinal),
        .. heard.Questions.Select(question => question.Term is null ? $"question {question.Id}" : $"question {question.Id} {question.Term}"),
        .. heard.Dangers.Select(danger => $"danger {danger.Id}"),
        .. heard.Undo ? ["undo"] : Array.Empty<string>(),
    ];

    private static string? Line(Fact fact) => fact switch
    {
        Fact.Reading reading => $"reading {string.Join('+', reading.Together.Prepend(reading.From))} {reading.To} {Shown(reading)}",
        Fact.Plate plate => $"plate {plate.Field} {(plate.Value.Numbers.Count > 0 ? string.Join('/', plate.Value.Numbers.Select(Number)) : plate.Value.Text)}",
        Fact.Supply supply => Parts("supply", ("volts", supply.Volts), ("phases", supply.Phases), ("hertz", supply.Hertz)) + (supply.System is null ? "" : $" system={supply.System}"),
        Fact.Capacitor { Present: false } => "capacitor none",
        Fact.Capacitor capacitor => Capacitor(capacitor),
        Fact.Insulation insulation => Parts($"insulation {Number(insulation.Megohms)}", ("V", insulation.TestVolts), ("C", insulation.Celsius)),
        Fact.BenchTest { Test: "look-and-smell" } => null,
        Fact.BenchTest test => $"bench {test.Test} {(test.Value is { } value ? Number(value) : test.Outcome)}",
        Fact.Running running => Parts("running", ("V", running.Volts), ("A", running.Amps), ("rpm", running.Rpm)) + (running.Direction is null ? "" : $" dir={running.Direction}") + (running.Outcome is null ? "" : $" {running.Outcome}"),
        Fact.Joint joint => $"joint {string.Join(' ', joint.Leads)} > {joint.Conductor ?? "nothing"}",
        Fact.Confirm confirm => $"confirm {confirm.Id} {(confirm.Confirmed ? "yes" : "no")}",
        Fact.Goal goal => $"goal {goal.Id}",
        Fact.Instrument instrument => $"{(instrument.Present ? "instrument" : "instrument no")} {instrument.Id}",
        Fact.Application => "application",
        Fact.Lead lead => $"lead {lead.Tag}",
        Fact.Unknown unknown => $"unknown {unknown.Question}",
        Fact.Choice choice => choice.Question == "leads.count" ? $"count {choice.Option}" : null,
        _ => null,
    };

    private static string Capacitor(Fact.Capacitor capacitor)
    {
        var range = capacitor.MicrofaradsTo is { } to ? $"-{Number(to)}" : "";
        var marked = capacitor.Microfarads is { } microfarads ? $" uF={Number(microfarads)}{range}" : "";
        return Parts($"capacitor{marked}", ("measured", capacitor.MeasuredMicrofarads), ("V", capacitor.Volts)) + (capacitor.Use == "unknown" ? "" : $" use={capacitor.Use}");
    }

    private static string Shown(Fact.Reading reading) => reading.Kick ? "kick" : reading.Open ? "open" : reading.Short ? "short" : Number(reading.Ohms!.Value);

    private static string Parts(string kind, params (string Name, double? Value)[] parts) =>
        kind + string.Concat(parts.Where(part => part.Value is not null).Select(part => $" {part.Name}={Number(part.Value!.Value)}"));

    private static string Number(double value) => Math.Round(value, 3).ToString("0.###", CultureInfo.InvariantCulture);
}
