using WireCoach.Rules.Cases;
using WireCoach.Rules.Choosing;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Diagnosis;

/// <summary>What the answers need to know of the motor at hand.</summary>
/// <param name="knowledge">The facts of the trade.</param>
internal sealed class FaqMotor(TradeKnowledge knowledge)
{
    private readonly Diagnostician _diagnostician = new(knowledge);
    private readonly IReadOnlyDictionary<string, TaskAccess> _open = TaskAccess.Everywhere(knowledge, TaskAccess.Open);

    public bool IsThreePhase(CaseFile file) => Family(file) == "three-phase";

    /// <summary>The kind of motor where only one is left; <see langword="null"/> where several are.</summary>
    public string? Family(CaseFile file)
    {
        var weights = CandidateFamilies.Weights(file, _diagnostician.Model, sealedCircuit: false);
        return weights.Count(weight => weight > 0) == 1 ? _diagnostician.Model.Families[Array.FindIndex(weights, weight => weight > 0)].Id : null;
    }

    /// <summary>Plate amps of the connection for this supply.</summary>
    public static double? Amps(CaseFile file) => Outcomes.RatedAmps(file);

    /// <summary>Starting amps as usual for its kind.</summary>
    public QuotedRange? StartAmps(CaseFile file) => Amps(file) is { } amps
        ? LockedRotor.FromKind(knowledge, LockedRotor.KindOf(Family(file), IsThreePhase(file) ? 3 : 1), amps)
        : null;

    /// <summary>Whether the repair is worth it: as firmly as it is known what work it takes, or else what remains and what decides.</summary>
    public List<Statement> WorthRepairing(CaseFile file)
    {
        if (file.Symptoms.Count == 0 && file.BenchTests.Count == 0)
        {
            return [Statement.Of("faq.worth-symptoms-missing")];
        }

        if (file.BenchTests.Exists(test => test is { Test: "look-and-smell", Outcome: "burnt-winding" })) // seen, it costs the most, whatever else is wrong beside it
        {
            return [Statement.Of("faq.worth-burnt"), Power(file) ?? Statement.Of("faq.worth-power-missing")];
        }

        var thought = _diagnostician.Think(file, _open, sealedCircuit: false);
        var (belief, decisions) = (thought.Belief, thought.Decisions);
        var sure = knowledge.Rules["diagnosis-settled"]["one"];
        if (belief.Probability(wrong => !wrong.Causes.Any(IsLarge)) >= sure)
        {
            return decisions[0].Share >= sure ? [Likely(decisions[0].Likeliest), Statement.Of("faq.worth-part")] : [Statement.Of("faq.worth-part-whichever")];
        }

        var large = Likeliest(belief, IsLarge);
        return belief.Probability(wrong => wrong.Causes.Any(IsWindingWork)) >= sure ? [Likely(large), Power(file) ?? Statement.Of("faq.worth-power-missing")]
            : belief.Probability(wrong => wrong.Causes.Any(IsNewMotor)) >= sure ? [Likely(large), Statement.Of("faq.worth-motor")]
            : [Statement.Of("faq.worth-open", ("part", Likeliest(belief, cause => !IsLarge(cause)).Name), ("large", large.Name)), .. IsWindingWork(large) && Power(file) is { } power ? [power] : Array.Empty<Statement>()];
    }

    private static Statement Likely(Cause cause) => Statement.Of("faq.worth-likely", ("cause", cause.Name));

    private static Cause Likeliest(Belief<Hypothesis> belief, Func<Cause, bool> of) =>
        belief.Hypotheses.SelectMany(wrong => wrong.Causes).Where(of).Distinct().MaxBy(cause => belief.Probability(wrong => wrong.Causes.Contains(cause)))!;

    /// <summary>What winding work pays at this power; <see langword="null"/> where the power is not known.</summary>
    private Statement? Power(CaseFile file)
    {
        var rule = knowledge.Rules["faq-worth-repairing"];
        return (file.Plate.Horsepower ?? (file.Plate.Kilowatts * 1000 / knowledge.Rules["horsepower"]["watts"])) is { } horsepower
            ? (horsepower < rule["rewind-from-horsepower"] ? Statement.Of("faq.worth-replace") : Statement.Of("faq.worth-rewind"))
                .With("power", rule.Quote(horsepower, "horsepower", "plate"))
                .With("limit", rule.Quote(rule["rewind-from-horsepower"], "horsepower", "limit"))
            : null;
    }

    private static bool IsLarge(Cause cause) => IsWindingWork(cause) || IsNewMotor(cause);

    private static bool IsNewMotor(Cause cause) => cause.Decision == "replace-motor";

    private static bool IsWindingWork(Cause cause) => cause.Decision is "rewind" or "replace-rotor" or "armature-work";
}
