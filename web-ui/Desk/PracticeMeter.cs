using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;

namespace WireCoach.WebUi.Desk;

/// <summary>What the meter of a practice motor takes by itself.</summary>
public static class PracticeMeter
{
    /// <summary>Whether a question is answered by one press: the probes together, two leads, a bench test, the insulation or the first start; joints are made by hand and only told.</summary>
    public static bool Answers(Question asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return asked.Id is "probe-zero" or "first-start" || asked.About == "insulation" || (asked.Kind == QuestionKind.Reading ? asked.About == "resistance" && asked.Between is not null : asked.Setup is not null);
    }
}
