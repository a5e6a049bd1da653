using WireCoach.Rules.Coaching;
using WireCoach.Rules.Statements;
using WireCoach.Service.Observing;

namespace WireCoach.Service.Sessions;

/// <summary>One line a turn: the session, the rules that fired, the time it took; and the same for the meters. Never a person's words, names or readings.</summary>
internal sealed partial class TurnLog(ILogger<TurnLog> log, Meters meters)
{
    /// <param name="kind">How it came: <c>open</c>, <c>message</c>, <c>answer</c> …</param>
    /// <param name="turned">What it brought.</param>
    /// <param name="before">Where the rules stood before it.</param>
    /// <param name="took">How long it took, with its storing.</param>
    public void Turn(string kind, Turned turned, Assessment? before, TimeSpan took)
    {
        meters.Turn(kind, turned, before is { Gate: { Stop: true } or { ReferOut: true } }, took);
        if (!log.IsEnabled(LogLevel.Information))
        {
            return;
        }

        var rules = turned.Events.SelectMany(stored => stored.Event switch
        {
            SessionEvent.Said said => said.Rules.Append(said.Id),
            SessionEvent.CautionShown caution => caution.Rules.Append(caution.Id),
            _ => [],
        });
        Turn(
            log,
            kind,
            turned.After.State.Id,
            turned.Reply.Understood.Count,
            turned.Reply.NotUnderstood.Count,
            string.Join(' ', rules.Distinct(StringComparer.Ordinal)),
            turned.Reply.Ask?.About,
            Math.Round(took.TotalMilliseconds, 2));
    }

    /// <summary>A turn that was refused, and stored nothing.</summary>
    public void Refused(string kind, Problem problem) => meters.Refused(kind, problem);

    /// <summary>What a turn brought is on disk, or could not be put there.</summary>
    public void Commit(bool stored, TimeSpan took) => meters.Commit(stored, took);

    [LoggerMessage(Level = LogLevel.Information, Message = "Turn {Kind} in {Session}: {Facts} facts, {Unheard} not understood, fired {Rules}, asks {Asked}, {Milliseconds} ms")]
    private static partial void Turn(ILogger log, string kind, string session, int facts, int unheard, string rules, string? asked, double milliseconds);
}
