using WireCoach.Rules.Cases;
using WireCoach.Rules.Connections;
using WireCoach.Rules.Heat;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching.Steps;

/// <summary>The first start under control, what it draws, its direction, and turning it round.</summary>
internal static class FirstStart
{
    /// <summary>How the question for the amps of a second and third line begins.</summary>
    public const string OfLine = "run-current.";

    /// <summary>The question whose answer is what a start did.</summary>
    public const string Asked = "first-start";

    private const string Reversed = "reversed";
    private const string DirectionAsked = "run-direction";
    private static readonly string[] OtherLines = ["L2", "L3"];

    public static Question? Start(Workup work) => Due(work) ? work.Ask.Of(Asked, ("seconds", "5 s")) : null;

    public static Question? Volts(Workup work) =>
        Running(work) is not { Volts: null } || work.Skipped("run-volts") ? null : work.Ask.Of("run-volts");

    public static Question? Amps(Workup work) =>
        Running(work) is not { Amps: null, Lines: null } || work.Skipped("run-current") ? null
            : work.Ask.Of("run-current") is var asked && work.Plan?.Value is { Phases: 3 } ? asked : asked with { How = [.. asked.How.Take(1)] };

    /// <summary>The other lines of a three-phase motor: one alone tells neither a lost phase nor a bad winding.</summary>
    public static Question? Lines(Workup work)
    {
        if (work.Plan?.Value is not { Phases: 3 } || Running(work) is not { Amps: not null, Lines: null } run)
        {
            return null;
        }

        var line = OtherLines[run.Others.Count];
        var id = OfLine + line.ToLowerInvariant();
        return work.Skipped(id) ? null : work.Ask.Of("run-current-line", ("line", line)) with { Id = id };
    }

    public static Question? Speed(Workup work) =>
        Running(work) is not { Rpm: null } || work.Skipped("run-speed") ? null : work.Ask.Of("run-speed");

    public static Question? Direction(Workup work) =>
        Running(work) is not { Direction: null } || work.Skipped(DirectionAsked) ? null : work.Ask.Of(DirectionAsked);

    /// <summary>After a run in the wrong direction: the exchange, once the motor is safe to touch again.</summary>
    public static Question? Reverse(Workup work) =>
        Last(work) is not { Direction: "wrong" } || Exchanged(work) || work.Plan?.Value is not { Reverse.Possible: true } plan
            ? null
            : work.Ask.Of(Reversed, ("swap", Swap(plan.Reverse.Swap))) with { Why = plan.Reverse.Why };

    /// <summary>What the start that is asked for should look like.</summary>
    public static IEnumerable<Statement> Expected(Workup work) =>
        work.Plan?.Value is { } plan ? ExpectedStart.Of(work.Knowledge, Motor(work, plan)) : [];

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

        if (StartDuty.Judge(work.Knowledge, Motor(work, plan), [.. work.Runs.Select(one => one.At).OfType<DateTimeOffset>()]) is { } often)
        {
            yield return often;
        }

        if (run is { Turned: true, Direction: null } && work.Skipped(DirectionAsked))
        {
            yield return Statement.Of("coach.direction-unseen");
        }

        if (run.Direction == "wrong" && !Exchanged(work))
        {
            yield return plan.Reverse.Possible
                ? Statement.Of("coach.turn-round", ("swap", Swap(plan.Reverse.Swap)))
                : plan.Reverse.Why;
        }
    }

    /// <summary>Whether the motor ran, the right way round, and nothing that was read stands against it or leaves it unsettled.</summary>
    public static bool Verified(Workup work) => Last(work) is { Outcome: "ran" or null, Turned: true, Direction: "right" } run
        && work.Plan?.Value is { } plan && Judge(work, plan, run).Verdict is not ("stop" or "unsettled");

    /// <summary>The last run where the shaft turned and nothing wants it off: only then is it gone on with.</summary>
    private static RunEpisode? Running(Workup work) => Last(work) is { Turned: true } run && !Stops(work) ? run : null;

    /// <summary>Whether something that the last run showed wants it off.</summary>
    public static bool Stops(Workup work) => Last(work) is { } run && work.Plan?.Value is { } plan && Judge(work, plan, run).Verdict == "stop";

    /// <summary>Whether the motor has to come off after the last run, or turn round: that is said before the plan.</summary>
    public static bool WentWrong(Workup work) => Stops(work) || Fault(work) is not null || Last(work) is { Direction: "wrong" };

    /// <summary>The run against the plate, for the connection that was made; nothing hangs on the shaft at a first start.</summary>
    private static FirstRunJudgement Judge(Workup work, Plan plan, RunEpisode run) => FirstRun.Judge(
        work.Knowledge, work.File.Plate, plan.PlateVolts, plan.LineAmps?.Value,
        new Fact.Running { Outcome = run.Outcome, Volts = run.Volts, Amps = run.Amps, Rpm = run.Rpm, Direction = run.Direction, Celsius = run.Celsius }, lines: run.Lines);

    private static StartingMotor Motor(Workup work, Plan plan) => new()
    {
        Plate = work.File.Plate,
        Region = work.File.Region,
        Volts = plan.PlateVolts,
        Amps = plan.LineAmps?.Value,
        Phases = plan.Phases,
        Family = work.Knowledge.Families.Values.FirstOrDefault(family => family.Layouts.Contains(plan.Layout.Id, StringComparer.Ordinal))?.Id,
    };

    /// <summary>Whether a start went wrong in a way that is a fault and not a direction.</summary>
    public static string? Fault(Workup work) => Last(work)?.Outcome is "hummed" or "tripped" or "nothing" or "smoke" or "slow" ? Last(work)!.Outcome : null;

    private static bool Due(Workup work) => work.Runs.Count == 0 || (Last(work) is { Direction: "wrong" } && Exchanged(work));

    private static RunEpisode? Last(Workup work) => work.Runs.Count == 0 ? null : work.Runs[^1];

    private static bool Exchanged(Workup work) => work.File.ConfirmedSincePower(Reversed);

    private static string Swap(IReadOnlyList<IReadOnlyList<string>> swap) =>
        string.Join(", then ", swap.Select(pair => string.Join(" and ", pair)));
}
