using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>The plate, the supply and the leads: what can be read without touching anything.</summary>
internal static class KnowMotor
{
    public const string Numbering = "leads-numbered";
    public const string OtherLeads = "other-leads";

    private const string NewPlate = "plate-new";

    public static Question? Plate(Workup work) =>
        work.File.Plate.All.Any() || work.Skipped("plate") || work.Skipped(NewPlate) ? null : work.Ask.Of("plate");

    /// <summary>Of a motor that replaces another: its own plate, then that of the motor that comes off.</summary>
    public static Question? BothPlates(Workup work) =>
        !work.File.Plate.All.Any() && !work.Skipped(NewPlate) ? work.Ask.Of(NewPlate)
        : !work.File.OldPlate.All.Any() && !work.Skipped(PlateOwner.OldPlate) ? work.Ask.Of(PlateOwner.OldPlate)
        : null;

    public static Question? PlateVolts(Workup work) =>
        work.File.Plate.Volts.Count > 0 || work.Skipped("plate.volts") ? null : work.Ask.Of("plate.volts");

    public static Question? PlateAmps(Workup work) =>
        work.File.Plate.Amps.Count > 0 || work.File.Plate.Volts.Count == 0 || work.Skipped("plate.amps") ? null : work.Ask.Of("plate.amps");

    public static Question? Phases(Workup work) =>
        work.Phases is not null || work.Skipped("plate.phases") ? null : work.Ask.Of("plate.phases");

    public static Question? Supply(Workup work) =>
        work.File.Supply?.Volts is not null || work.Skipped("supply")
            ? null
            : work.Ask.Of("supply") with { Options = work.Ask.Supplies(work.File.Region, work.Phases) };

    /// <summary>The leads by their own names; where only their number was said, the offer to number them; where some were named by the way, whether they are all.</summary>
    public static Question? Leads(Workup work) =>
        work.File.Leads.Count > 1 ? null
        : work.File.SpokenLeads.ToList() is { Count: > 1 } spoken && !work.File.Choices.ContainsKey(OtherLeads) ? work.Ask.Of(OtherLeads, ("leads", string.Join(", ", spoken)))
        : Counted(work.File) is { } count && !work.File.Choices.ContainsKey(Numbering) ? work.Ask.Of(Numbering, ("count", count))
        : work.Ask.Of("leads");

    /// <summary>What the plate says of itself: fields that do not go together.</summary>
    public static IEnumerable<Statement> Say(Workup work) => work.File.Plate.All.Any()
        ? PlateReading.Check(work.Knowledge, work.File.Plate, work.File.Region).Findings.Select(finding => finding.Why)
        : [];

    /// <summary>Leads 1 to the number that was said.</summary>
    public static IReadOnlyList<Fact> Numbered(CaseFile file) =>
        file.Choices.TryGetValue(Fact.Choice.LeadCount, out var said) && int.TryParse(said, NumberStyles.None, CultureInfo.InvariantCulture, out var count)
            ? [.. Enumerable.Range(1, count).Select(number => new Fact.Lead { Tag = number.ToString(CultureInfo.InvariantCulture), How = FactEntry.Form })]
            : [];

    /// <summary>Leads that show where nobody named them: printed marks that are joined; in readings 1 to the number that was said, or just as many names as were said.</summary>
    public static IReadOnlyList<Fact> Implied(CaseFile file, IReadOnlyList<Fact> facts)
    {
        var after = facts.Aggregate(file, (known, fact) => known.With(fact));
        string[] named = [.. after.ReadLeads.Distinct(StringComparer.Ordinal)];
        string[] joined = [.. after.Joints.SelectMany(joint => joint.Leads).Distinct(StringComparer.Ordinal)];
        if (after.Leads.Count == 0 && joined.Length > 0 && Array.TrueForAll(joined, IsMarking))
        {
            return [.. joined.Select(mark => new Fact.Lead { Tag = mark, Marking = mark, How = FactEntry.Typed })];
        }

        if (after.Leads.Count > 0 || named.Length == 0 || Counted(after) is not { } said)
        {
            return [];
        }

        var count = int.Parse(said, CultureInfo.InvariantCulture);
        return Array.TrueForAll(named, tag => int.TryParse(tag, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= count) ? Numbered(after)
            : named.Length == count && !Array.Exists(named, tag => char.IsDigit(tag[0])) ? [.. named.Select(tag => new Fact.Lead { Tag = tag, How = FactEntry.Typed })]
            : [];
    }

    /// <summary>Leads under the names by which they were spoken of.</summary>
    public static IReadOnlyList<Fact> Named(CaseFile file) => [.. file.SpokenLeads.Select(tag => new Fact.Lead { Tag = tag, How = FactEntry.Form })];

    private static bool IsMarking(string tag) => char.IsAsciiLetterUpper(tag[0]) && char.IsAsciiDigit(tag[^1]);

    private static string? Counted(CaseFile file) =>
        file.Choices.TryGetValue(Fact.Choice.LeadCount, out var said) && int.TryParse(said, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 1 and <= 16
            ? said
            : null;
}
