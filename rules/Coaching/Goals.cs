using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Coaching;

/// <summary>What a person wants where they did not say it: it shows in what they brought.</summary>
internal static class Goals
{
    public const string Connect = "connect";

    public const string Diagnose = "diagnose";

    public const string CheckConnection = "check-connection";

    /// <summary>Symptoms that tell of a wiring job rather than of a fault.</summary>
    private static readonly HashSet<string> WiringJobs = new(StringComparer.Ordinal) { "leads-unmarked", "motor-replaced", "supply-changed" };

    public static string? From(CaseFile file)
    {
        if (file.Symptoms.Any(symptom => symptom.Value && !WiringJobs.Contains(symptom.Key)))
        {
            return Diagnose;
        }

        if (file.Joints.Count > 0)
        {
            return CheckConnection;
        }

        return file.Symptoms.Any(symptom => symptom.Value) || file.Readings.Count > 0 || file.Leads.Count > 1 ? Connect : null;
    }
}
