using WireCoach.Rules.Cases;
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
    private readonly Dictionary<string, TaskAccess> _open = knowledge.GateTasks.Keys.ToDictionary(task => task, _ => TaskAccess.Open, StringComparer.Ordinal);

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

    /// <summary>Whether the repair that the likeliest cause calls for is worth it.</summary>
    public List<Statement> WorthRepairing(CaseFile file)
    {
        if (file.Symptoms.Count == 0 && file.BenchTests.Count == 0)
        {
            return [Statement.Of("faq.worth-symptoms-missing")];
        }

        var report = _diagnostician.Examine(file, _open);
        var rule = knowledge.Rules["faq-worth-repairing"];
        var burnt = file.BenchTests.Exists(test => test is { Test: "look-and-smell", Outcome: "burnt-winding" }); // seen, it costs the most, whatever else is wrong beside it
        var cause = report.Causes.Select(one => (Cause: knowledge.Causes[one.Id], one.Probability)).Where(one => !burnt || IsWindingWork(one.Cause))
            .GroupBy(one => one.Cause.Decision, StringComparer.Ordinal).MaxBy(same => same.Sum(one => one.Probability))?.First().Cause;
        var said = new List<Statement>();
        if (cause is not null)
        {
            said.Add(Statement.Of("faq.worth-likely", ("cause", cause.Name)));
        }

        if (cause is not null && !IsWindingWork(cause))
        {
            said.Add(Statement.Of("faq.worth-part"));
            return said;
        }

        var watts = knowledge.Rules["horsepower"]["watts"];
        if ((file.Plate.Horsepower ?? (file.Plate.Kilowatts * 1000 / watts)) is not { } horsepower)
        {
            said.Add(Statement.Of("faq.worth-power-missing"));
            return said;
        }

        said.Add((horsepower < rule["rewind-from-horsepower"] ? Statement.Of("faq.worth-replace") : Statement.Of("faq.worth-rewind"))
            .With("power", rule.Quote(horsepower, "horsepower", "plate"))
            .With("limit", rule.Quote(rule["rewind-from-horsepower"], "horsepower", "limit")));
        return said;
    }

    private static bool IsWindingWork(Cause cause) => cause.Decision is "rewind" or "replace-rotor" or "armature-work";
}
