using System.Globalization;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Practice;

/// <summary>Winds a practice motor from its seed.</summary>
internal static class Winder
{
    public static Answer<Wound> Wind(TradeKnowledge knowledge, string? layout, string? fault, long seed)
    {
        if (layout is not null && !knowledge.Layouts.ContainsKey(layout))
        {
            return new Problem("invalid-fact", "practice.layout", Statement.Of("practice.unknown-layout", ("layout", layout)));
        }

        var chance = new SeededSequence(seed);
        var machines = knowledge.PracticeMachines.Values.Where(machine => layout is null || machine.Layouts.Contains(layout, StringComparer.Ordinal))
            .OrderBy(machine => machine.Id, StringComparer.Ordinal).ToList();
        var pairs = machines.SelectMany(machine => machine.Layouts.Where(id => layout is null || id == layout).Select(id => (Machine: machine, Layout: id)))
            .SelectMany(pair => knowledge.Layouts[pair.Layout].Forms().Select(form => (pair.Machine, Form: form)))
            .Where(pair => Places(pair.Form, fault).Count > 0).ToList();
        if (pairs.Count == 0)
        {
            return new Problem("invalid-fact", "practice.fault", Statement.Of("practice.not-this-fault", ("fault", fault ?? string.Empty), ("layout", layout ?? string.Empty)));
        }

        var (drawn, form) = chance.One(pairs, pair => pair.Form.Weight);
        var machine = Plated(drawn, form);
        var rule = knowledge.Rules["practice-coils"];
        var coils = Coils(knowledge, form, machine, chance);
        for (var draw = 0; draw < 50 && !Works(rule, coils, machine); draw++)
        {
            coils = Coils(knowledge, form, machine, chance);
        }

        var halves = form.Coils.GroupBy(coil => (coil.Group, Axis: coil.Axis % 180)).Any(group => group.Count() > 1);
        return new Wound
        {
            Seed = seed,
            Form = form,
            Machine = machine,
            TagOf = Tags(form, chance),
            Coils = coils,
            Fault = Broken(knowledge, form, fault, chance),
            OnOwnPoles = chance.Unit() < rule["own-poles-chance"] && halves && form.Family == "single-phase",
            Cage = Cage(knowledge, chance),
            Megohms = Megohms(knowledge, fault, chance),
        };
    }

    /// <summary>A form that is joined for a second voltage has both on its plate.</summary>
    private static PracticeMachine Plated(PracticeMachine machine, Layout form) =>
        machine.Volts is [var volts] && machine.Amps is [var amps] && form.Connections.Where(row => !row.Starting).Select(row => row.VoltsShare).Distinct().Order().ToList() is [1, var share]
            ? machine with { Volts = [volts, volts * share], Amps = [amps, amps / share] }
            : machine;

    /// <summary>Whether coils behind brushes leave volts and power for the shaft: a series path that drops most of the plate's volts belongs to no motor, nor does a field that takes most of its power.</summary>
    private static bool Works(TradeRule rule, List<WoundCoil> coils, PracticeMachine machine)
    {
        var (volts, amps) = (machine.Volts[0], machine.Amps[0]);
        return !coils.Exists(coil => coil.Coil.Role == "armature")
            || (coils.Where(coil => coil.Coil.Role is "armature" or "series-field").Sum(coil => coil.Ohms) * amps <= rule["brushed-drop"] * volts
                && coils.TrueForAll(coil => coil.Coil.Role != "shunt-field" || volts / coil.Ohms <= rule["field-amps"] * amps));
    }

    /// <summary>Cage resistance that puts the coupling at rest between its usual bounds.</summary>
    private static double Cage(TradeKnowledge knowledge, SeededSequence chance)
    {
        var rule = knowledge.Rules["practice-coils"];
        var bounds = knowledge.Rules["ends-coupling"];
        for (var draw = 0; draw < 50; draw++)
        {
            var cage = chance.Between(rule["cage-low"], rule["cage-high"]);
            if (CoupledModel.Coupling(rule, cage, 1 / rule["reactance-low"], onOwnPoles: false) is var coupling && coupling > bounds["low"] && coupling < bounds["high"])
            {
                return cage;
            }
        }

        throw new InvalidOperationException("No cage of the practice motor couples as the knowledge says.");
    }

    private static double Megohms(TradeKnowledge knowledge, string? fault, SeededSequence chance)
    {
        var rule = knowledge.Rules["practice-faults"];
        return fault == "moist-insulation" ? chance.Between(rule["moist-megohms-low"], rule["moist-megohms-high"])
            : chance.BetweenRatios(rule["sound-megohms-low"], rule["sound-megohms-high"]);
    }

    private static Dictionary<string, string> Tags(Layout form, SeededSequence chance)
    {
        var letters = chance.Unit() < 0.2;
        var tags = Enumerable.Range(0, form.Leads.Count).Select(at => letters ? ((char)('A' + at)).ToString() : (at + 1).ToString(CultureInfo.InvariantCulture));
        return form.Leads.Zip(chance.Shuffled(tags)).ToDictionary(pair => pair.First.Marking, pair => pair.Second, StringComparer.Ordinal);
    }

    private static List<WoundCoil> Coils(TradeKnowledge knowledge, Layout form, PracticeMachine machine, SeededSequence chance)
    {
        var rule = knowledge.Rules["practice-coils"];
        var ohms = new Dictionary<string, double>(StringComparer.Ordinal);
        var first = form.Ohms.Count > 0 ? form.Ohms[0].Of : form.Coils[0].Group;
        ohms[first] = chance.BetweenRatios(machine.OhmsLow, machine.OhmsHigh);
        foreach (var ratio in form.Ratios)
        {
            var drawn = chance.BetweenRatios(ratio.Low, ratio.High);
            if (ohms.TryGetValue(ratio.To, out var below))
            {
                ohms[ratio.Of] = below * drawn;
            }
            else if (ohms.TryGetValue(ratio.Of, out var above))
            {
                ohms[ratio.To] = above / drawn;
            }
        }

        var reactance = ohms[first] * chance.Between(rule["reactance-low"], rule["reactance-high"]);
        return [.. form.Coils.Select(coil =>
        {
            var turns = coil.Group == first ? 1 : coil.Role is "speed-tap" or "shunt-field" ? Math.Sqrt(ohms[coil.Group] / ohms[first])
                : chance.Between(rule["start-turns-low"], rule["start-turns-high"]);
            var spread = 1 + chance.Between(-rule["alike-spread"], rule["alike-spread"]);
            return new WoundCoil(coil, ohms[coil.Group] * spread, reactance * turns * turns, coil.Role == "armature" ? 90 : coil.Axis);
        })];
    }

    /// <summary>The coils or parts of a form at which a fault can be; one empty name for a sound motor or for the whole of it.</summary>
    public static IReadOnlyList<string> Places(Layout form, string? fault)
    {
        IReadOnlyList<string> Coils(params string[] roles) => [.. form.Coils.Where(coil => roles.Contains(coil.Role, StringComparer.Ordinal)).Select(coil => coil.Id)];
        IReadOnlyList<string> Parts(string kind) => [.. form.Parts.Where(part => part.Kind == kind).Select(part => part.Id)];
        return fault switch
        {
            null or "moist-insulation" => [string.Empty],
            "open-run-winding" or "shorted-run-turns" => Coils("run", "speed-tap"),
            "open-start-winding" or "shorted-start-turns" => Coils("start"),
            "open-phase-winding" or "shorted-phase-turns" => Coils("phase"),
            "field-open" => Coils("series-field", "shunt-field"),
            "grounded-winding" => [.. form.Coils.Select(coil => coil.Id)],
            "start-switch-stuck-open" or "start-switch-stuck-closed" => Parts("switch"),
            "start-capacitor-open" or "start-capacitor-weak" or "start-capacitor-shorted" => Parts("start-capacitor"),
            "run-capacitor-open" or "run-capacitor-weak" or "run-capacitor-shorted" => Parts("run-capacitor"),
            "protector-open" => Parts("protector"),
            "run-half-reversed" => [.. form.Coils.Where(coil => coil.Role == "run" && form.Coils.Count(other => other.Group == coil.Group) == 2
                && form.Leads.Any(lead => lead.Marking == coil.From) && form.Leads.Any(lead => lead.Marking == coil.To)).Select(coil => coil.Id)],
            _ => [],
        };
    }

    private static WoundFault? Broken(TradeKnowledge knowledge, Layout form, string? fault, SeededSequence chance)
    {
        if (fault is null)
        {
            return null;
        }

        var rule = knowledge.Rules["practice-faults"];
        var at = chance.One(Places(form, fault));
        return new(fault, at, fault switch
        {
            "shorted-run-turns" or "shorted-start-turns" or "shorted-phase-turns" => 1 - chance.Between(rule["shorted-low"], rule["shorted-high"]),
            "grounded-winding" => chance.Between(0, rule["ground-ohms"]),
            "start-capacitor-weak" or "run-capacitor-weak" => rule["weak-capacitor"],
            _ => 0,
        });
    }
}
