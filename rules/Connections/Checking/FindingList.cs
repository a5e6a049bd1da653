using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>What was found of a connection, and the verdict that follows from it.</summary>
internal sealed class FindingList
{
    private readonly List<CheckFinding> _all = [];

    /// <summary>All findings, in the order in which they were found.</summary>
    public IReadOnlyList<CheckFinding> All => _all;

    /// <summary>What the others follow from comes before them, the first of these first.</summary>
    private static readonly string[] Causes = ["supply-missing", "line-not-used", "three-phase-on-single-phase", "single-phase-on-three-lines"];

    /// <summary>What would burn or trip at once, then what the rest follows from, then the rest, the worst first.</summary>
    public IReadOnlyList<CheckFinding> WorstFirst =>
    [
        .. _all.OrderByDescending(finding => finding.Severity == Severity.Danger)
            .ThenBy(finding => Causes.IndexOf(finding.Rule) is var at and >= 0 ? at : Causes.Length)
            .ThenByDescending(finding => finding.Severity),
    ];

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
