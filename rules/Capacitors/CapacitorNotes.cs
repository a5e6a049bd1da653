using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Capacitors;

/// <summary>What there is to say beside the figures, and what an ohmmeter shows.</summary>
internal static class CapacitorNotes
{
    public static IEnumerable<Statement> Of(TradeKnowledge knowledge, CapacitorInput input, Quoted? measured, Quoted? worst, double? microfarads)
    {
        if (microfarads is { } held && worst is not null)
        {
            var joules = CapacitorSafety.Energy(knowledge, held, worst);
            yield return Hazard(knowledge, worst.Value!.Value, joules.Value!.Value)
                ? Statement.Of("capacitors.energy-hazard").With("energy", joules).With("volts", worst)
                : Statement.Of("capacitors.energy").With("energy", joules).With("volts", worst);
        }

        if (UsualMicrofarads.Doubt(knowledge, input) is { } doubt)
        {
            yield return doubt;
        }

        var run = knowledge.Rules["capacitor-band-run"];
        if (measured is not null && input.Marked is { Microfarads: { } marked, MicrofaradsTo: null, TolerancePercent: null, Use: not "start" }
            && Math.Abs(measured.Value!.Value / marked - 1) * 100 is var off && off > run["caution-percent"] && off <= run["unprinted-percent"])
        {
            yield return Statement.Of("capacitors.drifting").With("off", run.Quote(off, "percent", $"{measured.Text} against {Units.Text(marked, "microfarad", 4)}"));
        }

        if (input.Measured is { Volts: not null, Amps: not null })
        {
            yield return Statement.Of("capacitors.live-test");
        }

        if (string.Equals(input.Marked.Use, "unknown", StringComparison.Ordinal) && (input.Marked.Microfarads is not null || input.Candidates.Count > 0))
        {
            yield return Statement.Of("capacitors.use-unknown");
        }

        if (input.Marked.Volts is null && input.MotorVolts is { } volts && input.Marked.Use is "run")
        {
            var rule = knowledge.Rules["capacitor-volts-unreadable"];
            var frequencies = knowledge.Rules["supply-frequencies"];
            var least = volts < rule["line-volts-from"] ? rule["run-volts-low"]
                : input.Hertz.Equals(frequencies["iec-hertz"]) ? rule["run-volts-50"] : rule["run-volts-60"];
            yield return Statement.Of("capacitors.volts-unreadable").With("least", rule.Quote(least, "volt", $"motor for {Units.Text(volts, "volt")}"));
        }

        if (input.BleedOhms is null && input.WithinSeconds is null && worst is not null)
        {
            foreach (var id in (string[])["capacitor-nec-fixed", "capacitor-machine"])
            {
                var rule = knowledge.Rules[id];
                yield return Statement.Of("capacitors.built-in-limit")
                    .With("volts", rule.Quote(rule["volts"], "volt", rule.States)).With("seconds", rule.Quote(rule["seconds"], "second", rule.States));
            }
        }
    }

    /// <summary>What an ohmmeter shows on a capacitor that is discharged and taken off.</summary>
    public static IReadOnlyList<Expectation> Meter(TradeKnowledge knowledge)
    {
        var dead = knowledge.Rules["capacitor-dead"];
        return
        [
            new(Statement.Of("capacitors.meter-climbs"), Statement.Of("capacitors.meter-climbs-means")),
            new(Statement.Of("capacitors.meter-stops"), Statement.Of("capacitors.meter-stops-means")),
            new(Statement.Of("capacitors.meter-low").With("ohms", dead.Quote(dead["short-ohms"], "ohm", "steady")), Statement.Of("capacitors.meter-low-means")),
            new(Statement.Of("capacitors.meter-open"), Statement.Of("capacitors.meter-open-means")),
            new(Statement.Of("capacitors.meter-leaks"), Statement.Of("capacitors.meter-leaks-means")),
            new(Statement.Of("capacitors.meter-case"), Statement.Of("capacitors.meter-case-means")),
        ];
    }

    private static bool Hazard(TradeKnowledge knowledge, double volts, double joules)
    {
        var rule = knowledge.Rules["capacitor-energy-hazard"];
        return joules > (volts > rule["high-volts"] ? rule["high-joules"] : volts >= rule["mid-volts"] ? rule["mid-joules"] : rule["low-joules"]);
    }
}
