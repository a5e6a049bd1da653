using WireCoach.Rules.Cases;
using WireCoach.Rules.Quantities;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Safety;

/// <summary>The card that goes with the motor: what it is, what it does, what was found, what to look out for.</summary>
internal static class ReferralCard
{
    private const int Lines = 3;

    public static IReadOnlyList<Statement> Of(TradeKnowledge knowledge, CaseFile file, IEnumerable<GateCondition> holding)
    {
        var lines = new List<Statement>();
        if (file.Application is { } application)
        {
            lines.Add(Statement.Of("safety.card-machine", ("machine", application.Text)));
        }

        if (file.Plate.All.Any())
        {
            lines.Add(Statement.Of("safety.card-plate").With("plate", [.. file.Plate.All.OrderBy(field => field.Key, StringComparer.Ordinal).Select(Figure)]));
        }

        Add(lines, Named(knowledge, file, true), names => Statement.Of("safety.card-does", ("symptoms", names)));
        Add(lines, Named(knowledge, file, false), names => Statement.Of("safety.card-does-not", ("symptoms", names)));
        if (Found(knowledge, file).ToList() is { Count: > 0 } found)
        {
            lines.Add(Statement.Of("safety.card-found").With("found", found));
        }

        lines.AddRange(holding.Where(condition => condition.Tell is not null).Select(condition => Statement.Of($"gate.tell.{condition.Id}")));
        lines.Add(Statement.Of("safety.card-do-not"));
        return lines;
    }

    private static Statement Figure(KeyValuePair<string, PlateValue> field) => field is { Key: "phases", Value.Numbers: [0] }
        ? Statement.Of("safety.card-direct-current")
        : Statement.Of("safety.card-figure", ("value", field.Value.Text), ("unit", PlateUnit.Sign(field.Key))).With("field", Statement.Term(field.Key, "term.plate."));

    private static void Add(List<Statement> lines, string names, Func<string, Statement> line)
    {
        if (names.Length > 0)
        {
            lines.Add(line(names));
        }
    }

    /// <summary>What each test showed last, with its figure where there is one; of three lines that are held against each other, all.</summary>
    private static IEnumerable<Statement> Found(TradeKnowledge knowledge, CaseFile file) => file.BenchTests.Where(test => knowledge.Tests.ContainsKey(test.Test))
        .GroupBy(test => test.Test, StringComparer.Ordinal)
        .Select(shown => (Id: shown.Key, Shown: shown.TakeLast(knowledge.Tests[shown.Key].Value?.Against == "spread" ? Lines : 1).Select(Shown).OfType<Statement>().ToList()))
        .Where(test => test.Shown.Count > 0).Select(test => Statement.Of("safety.found").With("test", Statement.Named($"test.{test.Id}.name")).With("shown", test.Shown));

    private static Statement? Shown(Fact.BenchTest test) => test is { Value: { } value, Unit: { } unit } ? Statement.Word(Units.Text(value, unit))
        : test.Outcome is { } outcome ? Statement.Word(outcome, [$"test.{test.Test}.reading-{outcome}"]) : null;

    private static string Named(TradeKnowledge knowledge, CaseFile file, bool present) => string.Join("; ", file.Symptoms
        .Where(symptom => symptom.Value == present && knowledge.Symptoms.ContainsKey(symptom.Key))
        .Select(symptom => knowledge.Symptoms[symptom.Key].Name).Order(StringComparer.Ordinal));
}
