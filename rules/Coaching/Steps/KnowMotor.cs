using WireCoach.Rules.Nameplate;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>The plate, the supply and the leads: what can be read without touching anything.</summary>
internal static class KnowMotor
{
    public static Question? Plate(Workup work) =>
        work.File.Plate.All.Any() || work.Skipped("plate") ? null : work.Ask.Of("plate");

    public static Question? PlateVolts(Workup work) =>
        work.File.Plate.Volts.Count > 0 || work.Skipped("plate.volts") ? null : work.Ask.Of("plate.volts");

    public static Question? PlateAmps(Workup work) =>
        work.File.Plate.Amps.Count > 0 || work.File.Plate.Volts.Count == 0 || work.Skipped("plate.amps") ? null : work.Ask.Of("plate.amps");

    public static Question? Phases(Workup work) =>
        work.Phases is not null || work.Skipped("plate.phases") ? null : work.Ask.Of("plate.phases");

    public static Question? Supply(Workup work) =>
        work.File.Supply?.Volts is not null || work.Skipped("supply")
            ? null
            : work.Ask.Of("supply") with { Options = work.Ask.Supplies(work.File.Region) };

    public static Question? Leads(Workup work) =>
        work.File.Leads.Count > 1 ? null : work.Ask.Of("leads");

    /// <summary>What the plate says of itself: fields that do not go together.</summary>
    public static IEnumerable<Statement> Say(Workup work) => work.File.Plate.All.Any()
        ? PlateReading.Check(work.Knowledge, work.File.Plate, work.File.Region).Findings.Select(finding => finding.Why)
        : [];
}
