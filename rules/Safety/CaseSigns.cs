using System.Text.RegularExpressions;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Insulation;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Safety;

/// <summary>What the gate needs to know of a case: which conditions hold since when, and which confirmations still count.</summary>
internal sealed partial class CaseSigns
{
    private readonly TradeKnowledge _knowledge;
    private readonly CaseFile _file;
    private readonly int _poweredAt;
    private readonly int _isolatedAt;
    private readonly List<Spoken> _machines;

    public CaseSigns(TradeKnowledge knowledge, CaseFile file)
    {
        (_knowledge, _file) = (knowledge, file);
        _poweredAt = Math.Max(file.PoweredAt, file.Facts.FindLastIndex(PutsPowerOn));
        _isolatedAt = file.Confirmations.TryGetValue("isolated", out var isolated) ? isolated.Position : -1;
        // every machine that was named counts: a danger is taken back by retracting it, not by saying something else
        _machines = [.. file.Facts.Index().Where(fact => fact.Item is Fact.Application).Select(fact => Heard(fact.Index, (Fact.Application)fact.Item))];
    }

    /// <summary>Where in the order of facts a trigger became true; <see langword="null"/> where it is not.</summary>
    public int? Position(GateTrigger trigger, string role) => trigger switch
    {
        { Symptom: { } symptom } => Told(symptom),
        { Test: { } test } => Last(fact => fact is Fact.BenchTest measured && measured.Test == test && measured.Value > trigger.Above) is var at and >= 0 ? at : null,
        { Phases: { } phases } => True(_file.Supply?.Phases == phases || _file.Plate.Phases == phases
            || (phases == 3 && _file.Supply?.System?.StartsWith("three-phase", StringComparison.Ordinal) == true)),
        // a 400/690 V motor on 400 V is an ordinary motor: with a choice of volts it is the supply that decides, and it is asked for before power
        { VoltsAbove: { } volts } => True(_file.Supply?.Volts > volts || (_file.Plate.Volts.Count > 0 && _file.Plate.Volts.All(rated => rated > volts))),
        { FedTooHigh: true } => True(Connected.Against(_file) == "low-on-high"),
        { Unknown: { } question } => True(_file.Unknowns.Contains(question)),
        { Capacitor: { } sort } => True(sort == CapacitorOf()),
        { Denied: { } confirmation } => True(_file.Confirmations.TryGetValue(confirmation, out var said) && !said.Confirmed),
        { MegohmsBelow: { } megohms } => True(_file.Insulations.Count > 0 && _file.Insulations[^1].Megohms < megohms),
        { Danger: { } danger } => _file.Choices.ContainsKey(SafetyGate.DangerQuestion(danger))
            ? Last(fact => fact is Fact.Choice choice && choice.Question == SafetyGate.DangerQuestion(danger)) : null,
        { Goal: { } goal } => True(_file.Goals.Contains(goal)),
        { Question: { } question } => True(_file.Choices.TryGetValue(question, out var option) && trigger.Options.Contains(option, StringComparer.Ordinal)),
        { Roles.Count: > 0 } => True(trigger.Roles.Contains(role, StringComparer.Ordinal)),
        _ => Worded(trigger),
    };

    /// <summary>Whether a confirmation counts now.</summary>
    /// <param name="id">The confirmation.</param>
    /// <param name="since">It must have come after this place in the order of facts; −1 for any.</param>
    public bool Meets(string id, int since)
    {
        var confirmation = _knowledge.Confirmations[id];
        var first = 1 + (confirmation.LapsesWithPower ? Math.Max(since, _poweredAt)
            : confirmation.LapsesWithIsolation ? Math.Max(since, _isolatedAt)
            : since);
        return (_file.Confirmations.TryGetValue(id, out var said) && said.Confirmed && said.Position >= first)
            || (confirmation.MetByInsulation && _file.Facts.FindLastIndex(fact => fact is Fact.Insulation) >= first && InsulationJudge.Last(_knowledge, _file) is { Verdict: "pass" })
            || (confirmation.MetByEarth && _file.Facts.FindLastIndex(fact => CaseFile.EarthOhms(fact) is not null) is var earth && earth >= first
                && CaseFile.EarthOhms(_file.Facts[earth]) is { } ohms && EarthJudge.Judge(_knowledge, ohms, _file.Region).Value is { Verdict: "pass" });
    }

    /// <summary>Whether a symptom was denied after this place in the order of facts.</summary>
    public bool IsDenied(string symptom, int since) => since >= 0 && Last(fact => fact is Fact.Symptom { Present: false } said && said.Id == symptom) > since;

    /// <summary>What was told, and what may have been: to warn, a doubt is enough.</summary>
    private int? Told(string symptom) => _file.Symptoms.TryGetValue(symptom, out var present)
        ? present ? Last(fact => fact is Fact.Symptom said && said.Id == symptom) : null
        : _file.Choices.ContainsKey(Fact.Choice.Doubted + symptom) ? Last(fact => fact is Fact.Choice choice && choice.Question == Fact.Choice.Doubted + symptom) : null;

    private static int? True(bool holds) => holds ? -1 : null;

    private int? Worded(GateTrigger trigger) => _machines.FindLast(machine =>
        trigger.Applications.Any(application => application == machine.Application)
        || trigger.Words.Any(word => machine.Words.Contains($" {word} ", StringComparison.Ordinal) || machine.Words.Contains($" {word}s ", StringComparison.Ordinal)))?.Position;

    private static Spoken Heard(int position, Fact.Application application)
    {
        var words = NotWord().Replace(application.Text.ToLowerInvariant(), " ");
        return new(position, application.ApplicationId, $" {words} {words.Replace('-', ' ')} ");
    }

    private int Last(Predicate<Fact> match) => _file.Facts.FindLastIndex(match);

    /// <summary>Results of tests that are done with power on tell that power was on.</summary>
    private bool PutsPowerOn(Fact fact) => fact is Fact.Running
        || (fact is Fact.BenchTest test && _knowledge.Tests.TryGetValue(test.Test, out var known) && _knowledge.GateTasks[known.Task].Group == "powered");

    /// <summary><c>present</c>, <c>possible</c>, or <see langword="null"/> where there is none.</summary>
    private string? CapacitorOf()
    {
        if (_file.Capacitors.Any(capacitor => capacitor.Present) || _file.Symptoms.GetValueOrDefault("capacitor-swollen")
            || _file.Plate["capacitor"] is not null || _file.Plate["microfarads"] is not null)
        {
            return "present";
        }

        if (_file.HasNoCapacitor)
        {
            return null;
        }

        var layout = _file.Choices.GetValueOrDefault("layout") is { } id ? _knowledge.Layouts.GetValueOrDefault(id) : null;
        var family = _file.Choices.GetValueOrDefault("family") is { } name ? _knowledge.Families.GetValueOrDefault(name) : null;
        return (layout, family) switch
        {
            ({ Capacitor: "none" } wound, _) => _knowledge.Families.GetValueOrDefault(wound.Family) is { HasCapacitor: null } ? "possible" : null,
            ({ }, _) => "present",
            (_, { HasCapacitor: { } has }) => has ? "present" : null,
            _ => _file.Plate.Phases == 3 ? null : "possible",
        };
    }

    [GeneratedRegex(@"[^\p{L}\p{Nd}/-]+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex NotWord();

    /// <summary>A machine as it was named, and where in the order of facts.</summary>
    private sealed record Spoken(int Position, string? Application, string Words);
}
