using System.Collections.Immutable;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching.Steps;
using WireCoach.Rules.Windings;

namespace WireCoach.Rules.Coaching;

/// <summary>What a job showed of its motor before a start that went wrong, as outcomes of the tests that would ask for it again.</summary>
internal static class ShownBefore
{
    private static readonly string[] OfEnds = ["series-voltage", "series-impedance", "battery-flick"];

    /// <summary>Outcomes by test id; none where the start was no first start of this connection, or may have burnt what was read before it.</summary>
    public static IReadOnlyDictionary<string, string> Outcomes(Workup work)
    {
        var shown = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        if (FirstStart.Fault(work) is null or "smoke" || work.Plan?.Value is not { } plan || !work.File.Confirmed("connected"))
        {
            return shown.ToImmutable();
        }

        shown["uncouple-load"] = "same"; // nothing hangs on the shaft at a first start
        shown["belt-tension"] = "right";
        shown["starts-per-hour"] = "few";
        if (BeforePower.JointsFit(work))
        {
            if (SupplySeries.Of(work, plan).Judge(work, plan) is { Verdict: "pass" })
            {
                shown["plate"] = "fits";
            }

            if (work.Identification is { Status: IdentificationStatus.Identified } found && found.Windings.All(winding => winding.Ohms is not null))
            {
                shown["resistance"] = "normal";
            }
        }

        if (work.Ends is { Status: EndsStatus.Settled } && work.File.BenchTests.Any(test => test.Drive.Count == 2 && OfEnds.Contains(test.Test, StringComparer.Ordinal)))
        {
            foreach (var test in OfEnds)
            {
                shown[test] = "as-marked";
            }
        }

        return shown.ToImmutable();
    }
}
