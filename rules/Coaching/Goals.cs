using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Coaching;

/// <summary>What a person wants where they did not say it: it shows in what they brought.</summary>
internal static class Goals
{
    public const string Connect = "connect";

    public const string Diagnose = "diagnose";

    public const string CheckConnection = "check-connection";

    public const string Reverse = "reverse";

    public const string ChangeVoltage = "change-voltage";

    public const string FitReplacement = "fit-replacement";

    public const string ReplaceCapacitor = "replace-capacitor";

    public const string CheckEarth = "earth-check";

    public const string WorthRepairing = "worth-repairing";

    public const string CheckNumbers = "check-numbers";

    /// <summary>Symptoms that tell of a wiring job rather than of a fault.</summary>
    private static readonly HashSet<string> WiringJobs = new(StringComparer.Ordinal) { "leads-unmarked", "motor-replaced", "supply-changed" };

    /// <summary>What happened to a motor before: alone it makes one look for a fault, beside a wiring job it does not.</summary>
    private static readonly HashSet<string> Circumstances = new(StringComparer.Ordinal) { "just-rewired", "stood-unused" };

    /// <summary>What was said last, or else what shows.</summary>
    public static string? Of(CaseFile file) => Last(file) ?? (file.OldPlate.All.Any() ? FitReplacement : From(file));

    /// <summary>What was said last; that the fault is wanted too does not end the question whether it is worth it.</summary>
    private static string? Last(CaseFile file) =>
        file.Goals.LastOrDefault() is Diagnose && file.Goals.FindLast(goal => goal != Diagnose) is WorthRepairing ? WorthRepairing : file.Goals.LastOrDefault();

    /// <summary>The job in the middle of which the earth was spoken of, which goes on once that is dealt with; <see langword="null"/> where the earth is all that is wanted.</summary>
    public static string? BesideEarth(CaseFile file)
    {
        var before = file.Facts.FindIndex(file.Facts.FindLastIndex(fact => fact is Fact.Goal { Id: not CheckEarth }) + 1, fact => fact is Fact.Goal { Id: CheckEarth });
        return before < 0 ? null : Of(CaseFile.From(file.Opening, file.Facts.Take(before)));
    }

    /// <summary>The first thing that tells: a later symptom of a motor that is being connected does not turn the job into another.</summary>
    private static string? From(CaseFile file) => file.Facts.Where(fact => !IsCircumstance(fact)).Select(Told).FirstOrDefault(goal => goal is not null)
        ?? (file.Leads.Count > 0 ? Connect // nothing but their names, which stand beside a complaint as well
            : file.Facts.Any(IsCircumstance) ? Diagnose
            : file.Choices.ContainsKey(Fact.Choice.LeadCount) && file.Supply?.Volts is not null ? Connect // how many leads and what supply, and nothing amiss
            : null);

    private static bool IsCircumstance(Fact fact) => fact is Fact.Symptom { Present: true } symptom && Circumstances.Contains(symptom.Id);

    private static string? Told(Fact fact) => fact switch
    {
        Fact.Symptom { Present: true } symptom => WiringJobs.Contains(symptom.Id) ? Connect : Diagnose,
        Fact.Joint => CheckConnection,
        Fact.Reading or Fact.Choice { Question: Fact.Choice.Connection } => Connect,
        _ => null,
    };
}
