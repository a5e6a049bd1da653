using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Language;

namespace WireCoach.WebUi.Desk;

/// <summary>What the meter of a practice motor takes by itself.</summary>
public static class PracticeMeter
{
    private static readonly string[] Steps = ["probe-zero", "shaft-drag", "ring-leads", "first-start", "supply-voltage"];
    private static readonly string[] Tests = ["insulation", Fact.BenchTest.EarthContinuity, "armature"];

    /// <summary>Whether a question is answered by one press: the probes together, two leads or joints, a bench test, what the shaft does, what comes before power, the first start; joints are made by hand and only told.</summary>
    public static bool Answers(Question asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return Steps.Contains(asked.Id.Split('.')[0], StringComparer.Ordinal) || Tests.Contains(asked.About, StringComparer.Ordinal)
            || (asked.Kind == QuestionKind.Reading ? asked.About is "resistance" or "joint-resistance" && asked.Between is not null : asked.Setup is not null);
    }
}
