using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching;

/// <summary>What to ask and say next: calls the other rooms and puts their answers in order. Pure.</summary>
/// <param name="knowledge">The facts of the trade.</param>
public sealed class Coach(TradeKnowledge knowledge)
{
    /// <summary>Everything that the rules say of a case.</summary>
    /// <param name="file">The case.</param>
    public Assessment Assess(CaseFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        _ = knowledge;
        return new Assessment { Status = "open", Goal = file.Goals.LastOrDefault() };
    }

    /// <summary>The facts that an answer to the open question amounts to.</summary>
    /// <param name="file">The case.</param>
    /// <param name="asked">The open question.</param>
    /// <param name="given">The answer.</param>
    public Answer<IReadOnlyList<Fact>> Read(CaseFile file, Question asked, QuestionAnswer given) =>
        throw new NotSupportedException();
}
