using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>What was found of a connection, and the verdict that follows from it.</summary>
internal sealed class FindingList
{
    private readonly List<CheckFinding> _all = [];

    /// <summary>All findings, in the order in which they were found.</summary>
    public IReadOnlyList<CheckFinding> All => _all;

    /// <summary>The findings, the worst first.</summary>
    public IReadOnlyList<CheckFinding> WorstFirst => [.. _all.OrderByDescending(finding => finding.Severity)];

    /// <summary>The verdict: that of the worst finding.</summary>
    public Verdict Verdict => _all.Select(finding => finding.Severity).DefaultIfEmpty(Severity.Note).Max() switch
    {
        Severity.Danger => Verdict.Dangerous,
        Severity.Wrong => Verdict.Wrong,
        Severity.Open => Verdict.Incomplete,
        _ => Verdict.Correct,
    };

    /// <summary>Adds a finding.</summary>
    public void Add(string rule, Severity severity, IReadOnlyList<string> about, Statement why) => _all.Add(new(rule, severity, about, why));

    /// <summary>Adds findings.</summary>
    public void AddRange(IEnumerable<CheckFinding> findings) => _all.AddRange(findings);
}
