using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>A session as pages and clients see it.</summary>
internal static class Views
{
    public static SessionView Of(LiveSession live)
    {
        var state = live.State;
        return new SessionView
        {
            Id = state.Id,
            Role = state.Opened.Role,
            Region = state.Opened.Region,
            Status = state.Status,
            CreatedAt = state.CreatedAt,
            ChangedAt = state.ChangedAt,
            Who = state.Opened.Who,
            MotorTag = state.Opened.MotorTag,
            Practice = state.Opened.Practice,
            Sequence = state.Sequence,
            Facts = live.Case.Facts,
            Case = live.Case,
            Assessment = live.Assessment,
            Last = Reply(live),
            Turns = state.Turns,
            Review = state.Review,
        };
    }

    /// <summary>The last reply, also after a restart.</summary>
    public static Reply Reply(LiveSession live) =>
        live.Last ?? (live.State.Turns.IsEmpty ? Reply(live, new Turn { Sequence = 1, At = live.State.CreatedAt }) : Reply(live, live.State.Turns[^1]));

    /// <summary>The reply to a request that was stored before; <see langword="null"/> for a new one.</summary>
    public static Reply? Repeated(LiveSession live, string? key, string? print)
    {
        if (key is not null && live.State.Keys.TryGetValue(key, out var sequence))
        {
            return live.State.Turns[^1].Sequence == sequence ? Reply(live) : Reply(live, live.State.Turns.Find(turn => turn.Sequence == sequence));
        }

        return key is null && print is not null && print == live.State.Print ? Reply(live) : null;
    }

    private static Reply Reply(LiveSession live, Turn? turn) => new()
    {
        Role = live.Case.Role,
        Understood = turn?.Facts ?? [],
        NotUnderstood = turn?.NotUnderstood ?? [],
        Say = [.. (turn?.Say ?? []).Select(sentence => new Said(sentence.Id, sentence.Text, false, []))],
        Ask = live.Assessment.Next,
        Assessment = live.Assessment,
        Sequence = live.State.Sequence,
    };
}
