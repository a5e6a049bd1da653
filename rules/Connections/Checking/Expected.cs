using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>What a person would see and hear if this connection were switched on.</summary>
internal static class Expected
{
    public static IReadOnlyList<Statement> Of(Judge judge, double? times, bool turns, TradeKnowledge knowledge) =>
        [.. All(judge, times, turns, knowledge.Rules["check-current"])];

    private static IEnumerable<Statement> All(Judge judge, double? times, bool turns, TradeRule current)
    {
        var rules = judge.Findings.Select(finding => finding.Rule).ToHashSet(StringComparer.Ordinal);
        if (judge.Verdict == Verdict.Correct)
        {
            yield return Statement.Of(rules.Contains("no-start-winding") ? "check.seen-right-no-start" : "check.seen-right");
            yield break;
        }

        if (rules.Contains("line-shorted") || rules.Contains("lead-on-earth"))
        {
            yield return Statement.Of("check.seen-short");
        }

        if (times is { } ratio && ratio > current["growls"] && !(turns && rules.Contains("over-volts")))
        {
            yield return Statement.Of("check.seen-growl").With("times", current.Quote(ratio, "ratio", "this connection at standstill against the right one"));
        }

        if (rules.Contains("start-branch-over-volts"))
        {
            yield return Statement.Of("check.seen-start-burns");
        }

        if (judge.Findings.Any(finding => finding is { Rule: "over-volts", Severity: Severity.Danger }))
        {
            yield return Statement.Of("check.seen-over-volts");
        }

        if (rules.Contains("under-volts"))
        {
            yield return Statement.Of("check.seen-weak");
        }

        if (Enumerable.Range(0, judge.Volts.Count).All(coil => !judge.IsFed(coil)))
        {
            yield return Statement.Of("check.seen-dead");
        }
        else if (!turns)
        {
            yield return Statement.Of("check.seen-hum");
        }
        else if (rules.Contains("lead-open") || rules.Contains("winding-not-fed"))
        {
            yield return Statement.Of("check.seen-half");
        }
    }
}
