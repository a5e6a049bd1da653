using WireCoach.Rules.Capacitors;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Diagnosis;

/// <summary>The questions that people always ask, answered from the facts of their own case, with figures that unfold to their rule. Pure.</summary>
/// <param name="knowledge">The facts of the trade.</param>
public sealed class Faq(TradeKnowledge knowledge)
{
    private readonly FaqMotor _motor = new(knowledge);
    private readonly FaqCord _cord = new(knowledge);
    private readonly CauseEffects _effects = new(knowledge);

    /// <summary>The ids of the questions that have an answer.</summary>
    public static IReadOnlyList<string> Questions { get; } =
        ["bigger-capacitor", "breaker-trips", "can-reverse", "extension-cord", "needs-volts", "run-230-on-208", "run-60-on-50", "run-on-one-phase", "run-on-other-volts", "spins-both-ways", "worth-repairing"];

    /// <summary>The answer in sentences, or what is missing for it; empty for a question that is not one of <see cref="Questions"/>.</summary>
    /// <param name="question">A question id.</param>
    /// <param name="file">The case.</param>
    public IReadOnlyList<Statement> Answer(string question, CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return question switch
        {
            "bigger-capacitor" => BiggerCapacitor(file),
            "breaker-trips" => BreakerTrips(file),
            "can-reverse" => Reverse(file),
            "extension-cord" => ExtensionCord(file),
            "needs-volts" => NeedsVolts(file),
            "run-230-on-208" => OtherVolts(file),
            "run-60-on-50" => OtherHertz(file),
            "run-on-one-phase" => new FaqOnePhase(knowledge, _motor).Answer(file),
            "run-on-other-volts" => file.Supply?.Volts is null ? [Statement.Of("faq.supply-missing")] : OtherVolts(file),
            "spins-both-ways" => SpinsBothWays(file),
            "worth-repairing" => _motor.WorthRepairing(file),
            _ => [],
        };
    }

    private List<Statement> BiggerCapacitor(CaseFile file)
    {
        var marked = file.Capacitors.FindLast(capacitor => capacitor.Present && capacitor.Microfarads is not null);
        List<Statement> said = file.SpareCapacitor is { } spare ? [.. Offered(marked, spare)] : [Statement.Of("faq.capacitor-no")];
        if (marked is not { Microfarads: { } microfarads })
        {
            said.Add(Statement.Of("faq.capacitor-unread"));
        }
        else
        {
            var (low, high) = CapacitorFit.Allowed(knowledge, new CapacitorPart(microfarads, marked.MicrofaradsTo, marked.Volts, marked.Use));
            said.Add(Statement.Of("faq.capacitor-range").With("low", low).With("high", high));

            said.Add(marked.Volts is { } volts
                ? Statement.Of("faq.capacitor-volts").With("volts", knowledge.Rules["capacitor-replacement"].Quote(volts, "volt", "marked on the old one"))
                : Statement.Of("faq.capacitor-volts-unread"));
        }

        said.Add(Statement.Of("faq.capacitor-kind"));
        said.AddRange(_effects.WeakCapacitor(file));
        return said;
    }

    /// <summary>The very capacitor that is at hand, against the one on the motor; one whose use was not said is taken to be meant for the same place.</summary>
    private List<Statement> Offered(Fact.Capacitor? marked, Fact.Capacitor spare)
    {
        var use = spare.Use is "start" or "run" ? spare.Use : marked?.Use ?? "unknown";
        var judged = CapacitorFit.Of(
            knowledge,
            new CapacitorPart(marked?.Microfarads, marked?.MicrofaradsTo, marked?.Volts, marked?.Use ?? "unknown"),
            new CapacitorPart(spare.Microfarads, spare.MicrofaradsTo, spare.Volts, use));
        return judged.Allowed && spare.Use != use ? [Statement.Of("faq.capacitor-spare-if", ("use", use))]
            : judged.Allowed ? [Statement.Of("faq.capacitor-spare-yes"), judged.Why]
            : [Statement.Of("faq.capacitor-spare-no"), .. judged.Reasons];
    }

    private List<Statement> NeedsVolts(CaseFile file)
    {
        if (file.Plate.Volts.Count == 0)
        {
            return [Statement.Of("faq.needs-plate")];
        }

        var (low, high) = (file.Plate.Volts.Min(), file.Plate.Volts.Max());
        List<Statement> said = [low < high ? Statement.Of("faq.needs-either").With("low", Plate(low)).With("high", Plate(high)) : Statement.Of("faq.needs-one").With("volts", Plate(low))];
        if (file.Supply?.Volts is { } supply)
        {
            said.Add(SupplyMatch.Volts(knowledge, Outcomes.RatedVolts(file)!.Value, supply).Why);
        }

        return said;
    }

    private Quoted Plate(double volts) => knowledge.Rules["faq-plate-volts"].Quote(volts, "volt", "the plate");

    private List<Statement> OtherVolts(CaseFile file)
    {
        var band = knowledge.Rules["supply-208"];
        var supply = file.Supply?.Volts ?? knowledge.Supplies.Values.Select(offer => offer.Volts).Where(volts => volts >= band["least"] && volts <= band["most"]).DefaultIfEmpty(band["most"]).First();
        if (file.Plate.Volts.Count == 0)
        {
            return [Statement.Of("faq.volts-missing")];
        }

        var rated = file.Plate.Volts.MinBy(volts => Math.Abs(Math.Log(volts / supply)));
        var judged = SupplyMatch.Volts(knowledge, rated, supply);
        var said = new List<Statement>
        {
            judged.Verdict.Split('-')[0] switch
            {
                "ok" when file.Plate.Volts.Count > 1 => Statement.Of("faq.volts-yes-joined").With("plate", Plate(rated)),
                "ok" => Statement.Of("faq.volts-yes"),
                "out" => Statement.Of("faq.volts-no"),
                _ => Statement.Of("faq.volts-only-if-marked"),
            },
            judged.Why,
        };
        if (supply < rated && !judged.Verdict.StartsWith("ok", StringComparison.Ordinal))
        {
            said.Add(Statement.Of("faq.volts-torque").With("torque", SupplyMatch.Torque(knowledge, rated, supply)));
            if (FaqMotor.Amps(file) is { } amps)
            {
                said.Add(Statement.Of("faq.volts-amps").With("amps", knowledge.Rules["faq-amps-at-low-volts"].Quote(
                    amps * rated / supply, "amp", $"{Units.Text(amps, "amp")}, {Units.Text(rated, "volt")}, {Units.Text(supply, "volt")}")));
            }
        }

        return said;
    }

    private List<Statement> OtherHertz(CaseFile file)
    {
        if (file.Plate.Volts.Count == 0 || file.Plate.Hertz is not { } plate || file.Supply is not { Hertz: { } hertz, Volts: { } volts })
        {
            return [Statement.Of("faq.hertz-missing")];
        }

        var rated = file.Plate.Volts.MinBy(one => Math.Abs(Math.Log(one / volts)));
        var judged = SupplyMatch.VoltsPerHertz(knowledge, volts, hertz, rated, plate);
        var said = new List<Statement> { judged.Why };
        if (plate != hertz && file.Capacitors.Any(capacitor => capacitor.Present))
        {
            said.Add(Statement.Of("faq.hertz-capacitor"));
        }

        return said;
    }

    private List<Statement> ExtensionCord(CaseFile file)
    {
        var said = new List<Statement> { Statement.Of("faq.cord-if") };
        var start = _motor.StartAmps(file);
        if (start is { Low: { } low, High: { } high })
        {
            said.Add(Statement.Of("faq.cord-start").With("low", low).With("high", high));
        }
        else
        {
            said.Add(Statement.Of("faq.amps-missing"));
        }

        var least = knowledge.Tests["voltage-at-motor-starting"].Value!.Bands.First(band => band.Outcome == "sags").To!.Value;
        said.Add(Statement.Of("faq.cord-torque")
            .With("share", knowledge.Rules["faq-least-start-volts"].Quote(least * 100, "percent", "volts at the motor while it starts, of the plate's"))
            .With("torque", SupplyMatch.Torque(knowledge, 1, least)));
        said.AddRange(_cord.Drop(file, start));
        return said;
    }

    private List<Statement> SpinsBothWays(CaseFile file) => _motor.IsThreePhase(file)
        ? [Statement.Of("faq.both-ways-three-phase"), .. _effects.LostLine(), Statement.Of("faq.both-ways-hands-off")]
        : [Statement.Of("faq.both-ways"), Statement.Of("faq.both-ways-where"), Statement.Of("faq.both-ways-hands-off")];

    private List<Statement> BreakerTrips(CaseFile file)
    {
        var said = new List<Statement> { Statement.Of("faq.breaker-never-larger") };
        var seen = file.Symptoms.Where(symptom => symptom.Value).Select(symptom => symptom.Key).ToHashSet(StringComparer.Ordinal);
        if (seen.Contains("trips-earth-fault-device"))
        {
            said.Add(Statement.Of("faq.breaker-earth"));
        }

        if (seen.Contains("trips-at-once"))
        {
            said.Add(Statement.Of("faq.breaker-at-once"));
            said.Add(_motor.StartAmps(file) is { Low: { } low, High: { } high }
                ? Statement.Of("faq.breaker-start").With("low", low).With("high", high)
                : Statement.Of("faq.amps-missing"));
        }

        if (seen.Contains("trips-after-running") || seen.Contains("thermal-cutout-cycles"))
        {
            said.Add(file.Runs.FindLast(run => run.Amps is not null)?.Amps is { } drawn && FaqMotor.Amps(file) is { } plate
                ? Statement.Of("faq.breaker-load")
                    .With("drawn", knowledge.Rules["faq-amps-drawn"].Quote(drawn, "amp", "measured"))
                    .With("plate", knowledge.Rules["faq-amps-drawn"].Quote(plate, "amp", "plate"))
                : Statement.Of("faq.breaker-after-a-while"));
        }

        if (said.Count == 1)
        {
            said.Add(Statement.Of("faq.breaker-when"));
        }

        return said;
    }

    private List<Statement> Reverse(CaseFile file)
    {
        var said = new List<Statement>();
        if (file.Choices.GetValueOrDefault("layout") is { } id && knowledge.Layouts.TryGetValue(id, out var layout))
        {
            var swaps = layout.Connections.SelectMany(row => row.ReverseSwap).Select(pair => string.Join(" ↔ ", pair)).Distinct(StringComparer.Ordinal).ToList();
            said.Add(layout.NotReversible is { } reason ? Statement.Named(reason)
                : swaps.Count > 0 ? Statement.Of("faq.reverse-swap", ("pairs", string.Join("; ", swaps)))
                : layout.Family == "three-phase" ? Statement.Of("faq.reverse-two-lines")
                : Statement.Of("faq.reverse-unknown"));
        }
        else
        {
            said.Add(_motor.Family(file) switch
            {
                "three-phase" => Statement.Of("faq.reverse-two-lines"),
                "split-phase" or "capacitor-start" or "two-value" => Statement.Of("faq.reverse-start-ends"),
                "psc" => Statement.Of("faq.reverse-psc"),
                "shaded-pole" => Statement.Of("faq.reverse-never"),
                "commutator" => Statement.Of("faq.reverse-armature"),
                "dc" => Statement.Of("faq.reverse-dc"),
                "sealed" => Statement.Of("faq.reverse-sealed"),
                _ => Statement.Of("faq.reverse-unknown"),
            });
        }

        if (!_motor.IsThreePhase(file) && _motor.Family(file) != "dc") // a permanent-magnet motor does turn with its two leads
        {
            said.Add(Statement.Of("faq.reverse-not-the-plug"));
        }

        said.Add(Statement.Of("faq.reverse-load"));
        return said;
    }
}
