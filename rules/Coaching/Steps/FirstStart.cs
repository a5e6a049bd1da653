using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>The first start under control, what it draws, its direction, and turning it round.</summary>
internal static class FirstStart
{
    private const string Reversed = "reversed";

    public static Question? Start(Workup work) => Due(work) ? work.Ask.Of("first-start", ("seconds", "5 s")) : null;

    public static Question? Volts(Workup work) =>
        Last(work) is not { Turned: true, Volts: null } || work.Skipped("run-volts") ? null : work.Ask.Of("run-volts");

    public static Question? Amps(Workup work) =>
        Last(work) is not { Turned: true, Amps: null } || work.Skipped("run-current") ? null : work.Ask.Of("run-current");

    public static Question? Speed(Workup work) =>
        Last(work) is not { Turned: true, Rpm: null } || work.Skipped("run-speed") ? null : work.Ask.Of("run-speed");

    public static Question? Direction(Workup work) =>
        Last(work) is not { Turned: true, Direction: null } || work.Skipped("run-direction") ? null : work.Ask.Of("run-direction");

    /// <summary>After a run in the wrong direction: the exchange, once the motor is safe to touch again.</summary>
    public static Question? Reverse(Workup work) =>
        Last(work) is not { Direction: "wrong" } || Exchanged(work) || work.Plan?.Value is not { Reverse.Possible: true } plan
            ? null
            : work.Ask.Of(Reversed, ("swap", Swap(plan.Reverse.Swap))) with { Why = plan.Reverse.Why };

    public static IEnumerable<Statement> Say(Workup work)
    {
        if (Last(work) is not { } run || work.Plan?.Value is not { } plan)
        {
            yield break;
        }

        foreach (var judged in Judge(work, plan, run).Statements)
        {
            yield return judged;
        }

        if (run.Direction == "wrong" && !Exchanged(work))
        {
            yield return plan.Reverse.Possible
                ? Statement.Of("coach.turn-round", ("swap", Swap(plan.Reverse.Swap)))
                : plan.Reverse.Why;
        }
    }

    /// <summary>Whether the motor ran, the right way round, and nothing that was read stands against it.</summary>
    public static bool Verified(Workup work) => Last(work) is { Outcome: "ran" or null, Turned: true, Direction: "right" } run
        && work.Plan?.Value is { } plan && Judge(work, plan, run).Verdict != "stop";

    /// <summary>The run against the plate, for the connection that was made; nothing hangs on the shaft at a first start.</summary>
    private static FirstRunJudgement Judge(Workup work, Plan plan, RunEpisode run) => FirstRun.Judge(
        work.Knowledge, work.File.Plate, plan.PlateVolts, plan.LineAmps?.Value,
        new Fact.Running { Outcome = run.Outcome, Volts = run.Volts, Amps = run.Amps, Rpm = run.Rpm, Direction = run.Direction });

    /// <summary>Whether a start went wrong in a way that is a fault and not a direction.</summary>
    public static string? Fault(Workup work) => Last(work)?.Outcome is "hummed" or "tripped" or "nothing" or "smoke" or "slow" ? Last(work)!.Outcome : null;

    private static bool Due(Workup work) => work.Runs.Count == 0 || (Last(work) is { Direction: "wrong" } && Exchanged(work));

    private static RunEpisode? Last(Workup work) => work.Runs.Count == 0 ? null : work.Runs[^1];

    private static bool Exchanged(Workup work) => work.File.ConfirmedSincePower(Reversed);

    private static string Swap(IReadOnlyList<IReadOnlyList<string>> swap) =>
        string.Join(", then ", swap.Select(pair => string.Join(" and ", pair)));
}
