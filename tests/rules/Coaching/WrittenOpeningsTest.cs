using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Coaching;

/// <summary>What is said and asked of facts that are brought together, as it was looked at: connections that somebody made, wishes, figures beside the job, small jobs.</summary>
public sealed class WrittenOpeningsTest
{
    private const string Safe = "confirm isolated";
    private const string SixLeads = $"{Safe}; goal check-connection; plate volts 115/230; plate amps 8.8/4.4; plate phases 1; marks T1 T2 T3 T4 T5 T8";
    private const string NineLeads = $"{Safe}; goal check-connection; plate volts 230/460; plate amps 10/5; plate phases 3; marks T1 T2 T3 T4 T5 T6 T7 T8 T9";
    private const string ThreePhases = $"iec; {Safe}; plate volts 230/400; plate amps 4.6/2.7; plate phases 3; plate hertz 50; marks U1 U2 V1 V2 W1 W2";
    private const string Sizes = "goal check-numbers; plate hp 1.5; plate volts 115/230; plate amps 15/7.5; plate rpm 1740; plate hertz 60; plate phases 1";

    private const string Planned = $"{Safe}; goal connect; plate hp 1.5; plate volts 230; plate amps 5; plate rpm 1740; plate hertz 60; plate phases 3; lead 1; lead 2; lead 3; reading 1 2 3.1; reading 1 3 3.1; reading 2 3 3.1; supply 230 3";

    private static readonly Coach Coach = new(Trade.Knowledge);
    private static readonly DateTimeOffset Morning = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    /// <summary>Facts apart by semicolons, turns by bars; after a walk to its end whatever can be left open is left open, and whatever has to be done is done.</summary>
    private static readonly string[] Openings =
    [
        $"{SixLeads}; supply 115 1; joint T1+T3+T8 L1; joint T2+T4+T5 L2",
        $"{SixLeads}; supply 230 1; joint T1+T3+T8 L1; joint T2+T4+T5 L2 | choice joints-changed as-said",
        $"{SixLeads}; supply 230 1; joint T1 L1; joint T2+T3+T8; joint T4+T5 L2",
        $"{SixLeads}; supply 115 1; joint T1 L1; joint T2+T3+T8; joint T4+T5 L2 | choice joints-changed left",
        $"{SixLeads}; supply 115 1; joint T1+T4+T8 L1; joint T2+T3+T5 L2 | choice joints-changed otherwise | joint T1+T3+T8 L1; joint T2+T4+T5 L2",
        $"{SixLeads}; supply 115 1; joint T1+T3 L1; joint T2+T4+T5 L2 | joint T8 L1",
        $"{SixLeads}; supply 115 1; joint T1+T3+T8 L1; joint T2+T4+T5 L2 | joint T1+T3+T5 L1; joint T2+T4+T8 L2",
        $"{SixLeads.Replace("115/230", "230", StringComparison.Ordinal)}; supply 230 1; joint T1 L1; joint T2+T3+T8; joint T4+T5 L2 | unknown plate.volts",
        $"{NineLeads}; supply 230 3; joint T1+T7 L1; joint T2+T8 L2; joint T3+T9 L3; joint T4+T5+T6 | reading T4 T7 open | reading T1 T9 open | reading T2 T7 open",
        $"{NineLeads}; supply 230 3; joint T1+T6+T7 L1; joint T2+T4+T8 L2; joint T3+T5+T9 L3 | reading T4 T9 1.8",
        $"{NineLeads}; supply 230 3; joint T1+T6+T7 L1; joint T2+T4+T8 L2; joint T3+T5+T9 L3 | reading T7 T8 1.8",
        $"{NineLeads}; supply 460 3; joint T1 L1; joint T2 L2; joint T3 L3; joint T4+T7; joint T5+T8; joint T6+T9",
        $"{NineLeads}; supply 460 3; joint T1+T7 L1; joint T2+T8 L2; joint T3+T9 L3; joint T4+T5+T6",
        $"{ThreePhases}; goal check-connection; supply 400 3 50; joint U1 L1; joint V1 L2; joint W1 L3; joint U2+V2+W2",
        $"{ThreePhases}; goal check-connection; supply 400 3 50; joint U1+W2 L1; joint V1+U2 L2; joint W1+V2 L3",
        $"{ThreePhases}; goal check-connection; supply 230 3 50; joint U1 L1; joint V1 L2; joint W1 L3; joint U2+V2+W2",
        $"{ThreePhases}; goal check-connection; supply 400 3 50; joint U1 L1; joint V2 L2; joint W1 L3; joint U2+V1+W2",
        $"{ThreePhases}; goal check-connection; supply 400 3 50; joint U1 L1; joint U2 L2; joint W1 L3; joint V1+V2+W2",
        $"{ThreePhases}; goal check-connection; supply 400 3 50",
        $"{ThreePhases}; goal check-connection; joint U1 L1; joint V1 L2; joint W1 L3; joint U2+V2+W2",
        $"{ThreePhases}; goal connect; supply 400 3 50; choice connection delta",
        $"{ThreePhases}; goal connect; supply 400 3 50; choice connection star",
        $"{ThreePhases}; goal connect; supply 230 3 50; choice connection 230",
        $"{ThreePhases}; goal connect; supply 230 3 50; choice connection 400",
        $"{ThreePhases}; goal connect; supply 400 3 50; choice connection 690",
        $"{ThreePhases}; goal connect; choice connection star",
        $"{NineLeads}; goal connect; supply 460 3; choice connection high",
        $"{NineLeads}; goal connect; supply 460 3; choice connection 230",
        $"{NineLeads}; goal connect; supply 230 3; choice connection low",
        $"{SixLeads}; goal connect; supply 115 1; choice connection high",
        $"{Sizes}",
        $"{Sizes}; supply 208 1; sizes",
        $"{Sizes}; supply 240 1; choice supply.length-metres 45; sizes",
        "plate hp 1.5; plate volts 115/230; plate amps 15/7.5; plate phases 1; supply 277 1",
        "plate hp 1.5; plate volts 115/230; plate amps 15/7.5; plate phases 1; supply 120 1",
        "iec; goal check-numbers; plate kilowatts 2.2; plate volts 230/400; plate amps 8.7/5; plate rpm 1430; plate hertz 50; plate phases 3; supply 400 3 50; choice supply.length-metres 40; sizes",
        "goal check-numbers; plate hp 1; plate volts 90; plate amps 10; plate rpm 1750; plate phases 0; sizes",
        "goal check-numbers; plate hp 7.5; plate volts 230; plate amps 2; plate rpm 1750; plate hertz 60; plate phases 3",
        "homeowner; goal check-numbers; plate hp 0.5; plate volts 115; plate amps 8; plate rpm 1725; plate hertz 60; plate phases 1",
        "sizes; plate volts 115",
        "symptom runs-hot; plate volts 460; plate phases 3; test supply-voltage 452 volt; test supply-voltage 460 volt; test supply-voltage 440 volt; test line-currents 4 amp; test line-currents 4.9 amp; test line-currents 4.2 amp",
        "capacitor 200 250 start 120; symptom hums-no-start",
        "capacitor 30 370 run 29.5",
        "goal replace-capacitor; confirm isolated; capacitor none",
        "goal replace-capacitor; confirm isolated; capacitor 30 370 run 0; spare 45 440; confirm capacitor-discharged | confirm capacitor-fitted",
        "goal replace-capacitor; confirm isolated; capacitor; unknown capacitor.marks",
        "goal change-voltage; plate volts 230; plate phases 1",
        "goal reverse; plate phases 1; choice family shaded-pole",
        "goal fit-replacement; confirm isolated; plate hp 1; plate volts 230; plate rpm 1725; old hp 1; old volts 230; old rpm 3450",
        "goal fit-replacement; confirm isolated; unknown plate-new; unknown plate-old",
        "goal earth-check; confirm isolated; capacitor none; test earth-continuity 0.2 ohm",
        "goal earth-check; confirm isolated; capacitor none; test earth-continuity 7 ohm",
        "goal earth-check; confirm isolated; capacitor none; unknown earth-continuity",
        "goal worth-repairing; plate hp 0.5; symptom smoke-or-burnt-smell",
        "plate volts 230; test cold-resistance 4.1 ohm; test cold-celsius 20 celsius; test ambient-celsius 22 celsius; plate insulationClass B; test hot-resistance 5.2 ohm",
        "plate volts 230; test cold-resistance 4.1 ohm; test cold-celsius 20 celsius; test ambient-celsius 22 celsius; unknown plate.insulationClass; test hot-resistance 5.2 ohm",
        "plate volts 230; test hot-resistance 5.2 ohm | test cold-resistance 4.1 ohm | unknown cold-celsius",
        "goal connect; confirm isolated; plate phases 1; plate volts 230; capacitor none; choice leads.count 4",
        "goal connect; confirm isolated; plate phases 1; plate volts 230; capacitor none; choice leads.count 4; implied 1 2 3.5",
        "goal connect; confirm isolated; plate phases 1; plate volts 230; capacitor none; choice leads.count 3; implied red black 3.5; implied red blue 8.1",
        "goal connect; confirm isolated; plate phases 1; plate volts 230; capacitor none; implied red black 3.5",
        "goal connect; confirm isolated; plate phases 1; plate volts 230; capacitor none; choice leads.count 4; implied 1 5 3.5",
        "goal connect; confirm isolated; plate phases 1; plate volts 230; capacitor none; choice leads.count 3; implied red 2 3.5; implied red blue 8.1",
        "goal check-connection; joint T1+T3 L1; joint T2+T4 L2",
        "goal check-connection; joint T1+red L1; joint T2+T4 L2",
        "choice leads.count 4; supply 230 1",
        "symptom motor-replaced; lead a",
        "symptom supply-changed",
        "symptom leads-unmarked; not hums-no-start",
        "across 120 1.13",
        "iec; across 120 1.13",
        "supply 120 1 50 | across 120 1.13",
        $"{Planned} | ran direction right | ran outcome ran | ran volts 228 | ran amps 4.2 | test line-currents 4.1 amp; test line-currents 4.3 amp | ran rpm 1760",
        $"{Planned} | ran rpm 0",
        $"{Planned} | ran outcome ran; ran amps 9.5",
        $"{Planned} | ran outcome ran; ran volts 190",
        $"{Planned} | ran outcome ran; ran rpm 900",
        $"{Planned} | ran outcome ran; test line-currents 4 amp; test line-currents 4.1 amp; test line-currents 0.1 amp",
        $"{Planned} | ran outcome ran; ran direction wrong | confirm isolated | confirm reversed | ran outcome ran; ran direction right",
        $"{Planned} | ran outcome slow",
        $"{Planned} | ran outcome hummed | confirm isolated",
        $"{Planned} | test supply-voltage 230 volt | test supply-voltage 210 volt | test supply-voltage 250 volt",
        $"{Planned} | test supply-voltage 300 volt | test supply-voltage 231 volt | test supply-voltage 229 volt; test supply-voltage 230 volt",
        $"{Planned}; insulation 0.5",
        $"{Planned}; insulation 3 | insulation 3 60",
        $"{Planned}; insulation 40 20; test earth-continuity 0.4 ohm",
        $"{Planned.Replace("plate phases 3; ", "choice family three-phase; ", StringComparison.Ordinal)}; insulation 40 20",
        $"{Planned}; walk",
        $"{Safe}; goal connect; lead 1; lead 2; reading 1 2 3.1; walk",
        $"{Safe}; goal connect; plate volts 115; plate phases 1; lead 1; lead 2; lead 3; lead 4; reading 1 2 3.1; reading 3 4 9.2; reading 1 3 open; walk",
        $"{Safe}; goal identify-leads; plate phases 1; capacitor; lead 1; lead 2; lead 3; reading 1 2 30; reading 2 3 12; reading 1 3 18; walk",
        $"{Safe}; goal identify-leads; lead a; lead b; lead c; reading a b 3.1; reading b c 3.1; reading a c 3.1; walk",
        $"{Safe}; goal connect; plate volts 115/230; plate phases 1; capacitor none; lead 1; lead 2; lead 3; lead 4; reading 1 2 1.7; reading 3 4 1.9; reading 1 3 open; walk",
        $"{Safe}; goal connect; plate volts 90; plate phases 0; lead 1; lead 2; lead 3; lead 4; reading 1 2 1.7; reading 3 4 190; reading 1 3 open; walk",
        $"{Safe}; goal connect; plate volts 230; plate phases 1; capacitor; lead 1; lead 2; lead 3; lead 4; reading 1 2 9; reading 3 4 9; reading 1 3 open; walk",
        $"{Safe}; goal connect; plate volts 230; plate phases 1; lead 1; lead 2; lead 3; reading 1 frame 12; walk",
        $"{SixLeads}; supply 115 1; walk",
        $"{SixLeads}; walk",
        $"{NineLeads}; goal connect; walk",
        "goal diagnose; walk",
        "goal replace-capacitor; walk",
        "goal fit-replacement; walk",
        "goal earth-check; walk",
        "goal check-numbers; walk",
        "goal change-voltage; walk",
        "plate volts 230; test hot-resistance 5.2 ohm; walk",
        "goal check-numbers; plate volts 115; plate phases 1; unknown plate.amps",
        "goal replace-capacitor; confirm isolated; capacitor 30 370 run 0; unknown capacitor.marks",
        "capacitor 30 370 run 26",
        "capacitor 200 250 start 190",
        "capacitor 200 250 unknown 190",
        $"{Planned} | ran outcome hummed | ran outcome ran",
        $"{Planned} | ran direction wrong | ran direction right | ran volts 231",
        $"{Safe}; goal connect; plate volts 115; plate phases 1; lead 1; lead 2; reading 1 2 3.1; choice brushes no; capacitor none; choice several-speeds single; walk",
        $"{Safe}; goal connect; plate volts 90; plate phases 0; lead 1; lead 2; reading 1 2 1.4; choice turn-shaft.1.2 jumps; walk",
        $"{Safe}; goal connect; plate volts 230; plate phases 1; capacitor; lead 1; lead 2; lead 3; lead 4; reading 1 2 9; reading 3 4 9; reading 1 3 open; choice capacitor-use run; choice capacitor-wires outside; choice several-speeds single; walk",
        $"{Safe}; goal connect; plate volts 230; plate phases 1; capacitor 5 440 run 0; lead 1; lead 2; lead 3; reading 1 2 30; reading 2 3 12; reading 1 3 18; choice both-ways both; walk",
        $"{Safe}; goal connect; plate volts 230; plate phases 1; capacitor 5 440 run 0; lead 1; lead 2; lead 3; reading 1 2 30; reading 2 3 12; reading 1 3 18; choice both-ways one; choice several-speeds single; walk",
        $"{Safe}; goal connect; plate volts 230; plate phases 1; capacitor 5 440 run 0; lead 1; lead 2; lead 3; lead 4; reading 1 2 12; reading 1 3 20; reading 1 4 34; reading 2 3 8; reading 2 4 46; reading 3 4 54; choice several-speeds several; walk",
        $"{Safe}; goal identify-leads; plate phases 3; lead 1; lead 2; lead 3; lead 4; lead 5; lead 6; reading 1 4 3.1; reading 2 5 3.1; reading 3 6 3.1; reading 1 2 open; reading 1 3 open; reading 2 3 open; choice several-speeds single; no low-voltage-ac; no battery; walk",
        $"{Safe}; goal identify-leads; plate phases 3; lead 1; lead 2; lead 3; reading 1 2 3.1; reading 2 3 3.1; reading 1 3 4.9; walk",
        $"{Safe}; goal connect; plate volts 230; plate phases 3; lead 1; lead 2; lead 3; reading 1 2 3.1; reading 2 3 open; reading 1 3 open; walk",
        "symptom just-rewired",
        "symptom stood-unused; lead a; lead b",
        "not smoke-or-burnt-smell; not no-start",
        "symptom shock-from-frame; goal connect",
        "choice supply.protection-amps 20; choice supply.length-metres 30; old volts 230; instrument battery; no battery; application the brine pump; choice unsettled.leads said; choice history.moved told; choice danger.smoke said; choice repair-made.open-run-winding done; unknown reading.1.2; unknown test.capacitance",
    ];

    [Fact]
    public void Each_opening_is_answered_as_it_was_looked_at() =>
        Sheets.Hold("openings.txt", Openings.Select(opening => (opening, (object)Turns(opening).ToList())));

    private static IEnumerable<Turn> Turns(string opening)
    {
        var role = opening.StartsWith("homeowner", StringComparison.Ordinal) ? Role.Homeowner : Role.Technician;
        var file = CaseFile.From(new CaseOpening(role, opening.StartsWith("iec", StringComparison.Ordinal) ? Region.Iec : Region.NorthAmerica), []);
        HashSet<string> said = [];
        foreach (var (turn, at) in opening.Split(" | ").Select((turn, at) => (turn, at)))
        {
            IReadOnlyList<Fact> facts = [.. turn.Split("; ").SelectMany(Facts).Select(fact => fact with { At = Morning.AddMinutes(at) })];
            facts = [.. Coach.Implied(file, facts), .. facts.Select(fact => Coach.Completed(file, fact))];
            file = PracticeAnswers.Add(file, facts);
            var assessed = Spoken.Whole(Coach.Assess(file));
            yield return Told(turn, facts, file, assessed, said);
        }

        for (var left = 0; left < 14 && opening.EndsWith("walk", StringComparison.Ordinal) && Coach.Assess(file).Next is { } next && (next.CanBeUnknown || next.Kind == QuestionKind.Confirm); left++)
        {
            IReadOnlyList<Fact> facts = [next.CanBeUnknown ? new Fact.Unknown { Question = next.Id } : new Fact.Confirm { Id = next.Id }];
            file = PracticeAnswers.Add(file, facts);
            yield return Told(string.Empty, facts, file, Spoken.Whole(Coach.Assess(file)), said);
        }
    }

    private static Turn Told(string turn, IReadOnlyList<Fact> facts, CaseFile file, Assessment assessed, HashSet<string> said) => new()
    {
        SaidBack = [.. Echo.Of(facts).Select(one => Trade.Knowledge.Sentences.Render(one)).Where(said.Add)],
        Says = [.. assessed.Say.Concat(turn.Contains("sizes", StringComparison.Ordinal) ? Coach.Sizes(file) : []).Select(one => $"{one}").Where(said.Add)],
        Checked = [.. assessed.Checks.Select(check => $"{check.Id}, {check.Expect}, {check.Got}, {check.Verdict}")],
        Stands = $"{assessed.Goal} {assessed.Status}{(assessed.Plan is { } plan ? $", {plan.Layout.Id} {plan.Row.Id}" : "")}{string.Concat(assessed.PlanMissing.Select(missing => $", no {missing}"))}{(assessed.Found is { } found ? $", found {found.Verdict}" : "")}{(Coach.IsRunning(file) ? ", running" : "")}",
        Asks = assessed.Next is { } next ? $"{next.Id} for {next.Task}: {string.Join(' ', next.Options.Select(option => option.Id))}" : "nothing",
    };

    /// <summary>A fact in the short way in which the openings are written.</summary>
    private static IReadOnlyList<Fact> Facts(string told) => told.Split(' ') switch
    {
        ["iec" or "homeowner" or "sizes" or "walk"] => [],
        ["goal", var id] => [new Fact.Goal { Id = id }],
        ["confirm", var id] => [new Fact.Confirm { Id = id }],
        ["symptom", var id] => [new Fact.Symptom { Id = id }],
        ["not", var id] => [new Fact.Symptom { Id = id, Present = false }],
        ["unknown", var question] => [new Fact.Unknown { Question = question }],
        ["choice", var question, var option] => [new Fact.Choice { Question = question, Option = option }],
        ["plate", var field, var value] => [new Fact.Plate { Field = field == "hp" ? "horsepower" : field, Value = PlateValue.Parse(value) }],
        ["old", var field, var value] => [new Fact.Plate { Field = field == "hp" ? "horsepower" : field, Value = PlateValue.Parse(value), Of = "old" }],
        ["marks", .. var marks] => [.. marks.Select(mark => new Fact.Lead { Tag = mark, Marking = mark })],
        ["lead", var tag] => [new Fact.Lead { Tag = tag }],
        ["supply", var volts, var phases, .. var hertz] => [new Fact.Supply { Volts = Number(volts), Phases = (int)Number(phases), Hertz = hertz is [var said] ? Number(said) : 60 }],
        ["joint", var leads, .. var conductor] => [new Fact.Joint { Leads = leads.Split('+'), Conductor = conductor is [var line] ? line : null }],
        ["reading" or "implied", var from, var to, "open"] => [new Fact.Reading { From = from, To = to, Open = true }],
        ["reading" or "implied", var from, var to, var ohms] => [new Fact.Reading { From = from, To = to, Ohms = Number(ohms) }],
        ["test", var test, var value, var unit] => [new Fact.BenchTest { Test = test, Value = Number(value), Unit = unit }],
        ["capacitor"] => [new Fact.Capacitor()],
        ["capacitor", "none"] => [new Fact.Capacitor { Present = false }],
        ["capacitor", var marked, var volts, var use, var measured] => [new Fact.Capacitor { Microfarads = Number(marked), Volts = Number(volts), Use = use, MeasuredMicrofarads = measured == "0" ? null : Number(measured) }],
        ["across", var volts, var amps] => [new Fact.Capacitor { AcrossVolts = Number(volts), ThroughAmps = Number(amps) }],
        ["ran", "outcome", var outcome] => [new Fact.Running { Outcome = outcome }],
        ["ran", "direction", var direction] => [new Fact.Running { Direction = direction }],
        ["ran", "volts", var volts] => [new Fact.Running { Volts = Number(volts) }],
        ["ran", "amps", var amps] => [new Fact.Running { Amps = Number(amps) }],
        ["ran", "rpm", var rpm] => [new Fact.Running { Rpm = Number(rpm) }],
        ["insulation", var megohms, .. var celsius] => [new Fact.Insulation { Megohms = Number(megohms), Celsius = celsius is [var warm] ? Number(warm) : null }],
        ["spare", var marked, var volts] => [new Fact.Capacitor { Microfarads = Number(marked), Volts = Number(volts), Spare = true }],
        ["instrument", var id] => [new Fact.Instrument { Id = id }],
        ["no", var id] => [new Fact.Instrument { Id = id, Present = false }],
        ["application", .. var words] => [new Fact.Application { Text = string.Join(' ', words) }],
        _ => throw new ArgumentException($"'{told}' is no fact.", nameof(told)),
    };

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private sealed record Turn
    {
        public required IReadOnlyList<string> SaidBack { get; init; }

        public required IReadOnlyList<string> Says { get; init; }

        public required IReadOnlyList<string> Checked { get; init; }

        public required string Stands { get; init; }

        public required string Asks { get; init; }
    }
}
