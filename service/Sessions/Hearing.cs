using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Sessions;

/// <summary>What a person's words amount to in a session.</summary>
internal sealed class Hearing(FactCheck check)
{
    /// <summary>The words in a session as it stands.</summary>
    public Answer<Given> Hear(LiveSession live, string? text) => Hear(live.Case, live.Assessment.Next, live.State.Turns, text);

    /// <summary>The words with a question open.</summary>
    public Answer<Given> Hear(CaseFile file, Question? asked, IReadOnlyList<Turn> turns, string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return Refusals.Empty("text");
        }

        if (text.Length > FactCheck.TextLength)
        {
            return Refusals.TooLong("text", FactCheck.TextLength);
        }

        _ = (check, file, asked, turns);
        return new Given { Words = text, NotUnderstood = [text] };
    }
}
