using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Connections.Checking;

/// <summary>What is wrong with the way the conductors of the supply reach the motor, whatever its windings.</summary>
internal static class SupplyFindings
{
    public static void Add(FoundNodes nodes, FindingList findings)
    {
        foreach (var line in nodes.Lines.OrderBy(line => line.Key))
        {
            var (conductors, names) = (line.Value.Where(FoundNodes.IsLine).ToList(), nodes.NamesOn(line.Key).ToList());
            if (conductors.Count > 1)
            {
                findings.Add("line-shorted", Severity.Danger, [.. conductors, .. names], Statement.Of(
                    "check.line-shorted", ("conductors", string.Join(" + ", conductors)), ("leads", string.Join(" + ", names))));
            }

            if (line.Value.Contains("PE") && names.Count > 0)
            {
                findings.Add("lead-on-earth", Severity.Danger, names, Statement.Of("check.lead-on-earth", ("leads", string.Join(" + ", names))));
            }
        }

        foreach (var stray in nodes.StrayLeads)
        {
            findings.Add("unknown-lead", Severity.Note, [stray], Statement.Of("check.unknown-lead", ("lead", stray)));
        }

        Lines(nodes, findings);
    }

    private static void Lines(FoundNodes nodes, FindingList findings)
    {
        if (nodes.Conductors.Count(FoundNodes.IsLine) < 2)
        {
            findings.Add("supply-missing", Severity.Open, [.. nodes.Conductors], Statement.Of("check.supply-missing"));
        }
        else if (nodes.Phases == 3)
        {
            foreach (var line in nodes.MissingLines)
            {
                findings.Add("line-not-used", Severity.Open, [line], Statement.Of("check.line-not-used", ("line", line)));
            }
        }
        else if (nodes.Coils.Any(coil => coil.Coil!.IsPhase))
        {
            findings.Add("three-phase-on-single-phase", Severity.Wrong, [], Statement.Of("check.three-phase-on-single-phase"));
        }
    }
}
