namespace WireCoach.Service.Sessions;

/// <summary>One line a turn: the session, the rules that fired, the time it took. Never a person's words, names or readings.</summary>
internal sealed partial class TurnLog(ILogger<TurnLog> log)
{
    public void Turn(string kind, Turned turned, TimeSpan took)
    {
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

    [LoggerMessage(Level = LogLevel.Information, Message = "Turn {Kind} in {Session}: {Facts} facts, {Unheard} not understood, fired {Rules}, asks {Asked}, {Milliseconds} ms")]
    private static partial void Turn(ILogger log, string kind, string session, int facts, int unheard, string rules, string? asked, double milliseconds);
}
