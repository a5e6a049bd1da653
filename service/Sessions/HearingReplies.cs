using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Safety;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Sessions;

/// <summary>What is answered to a person's own questions; every sentence of it stands in knowledge.</summary>
internal static class HearingReplies
{
    private const int Others = 3;

    public static IEnumerable<Statement> To(Understood understood, Question? asked, TradeKnowledge knowledge, CaseFile file, Faq faq, Func<Assessment> assessed, Func<IReadOnlyList<Statement>> sizes) =>
        Less(understood).Concat(understood.Questions.SelectMany(question => question.Id switch
        {
            "why" => asked is null ? [Idle(assessed().Gate)] : [asked.Why],
            "what-now" => asked is null ? [Idle(assessed().Gate)] : [asked.Text],
            "may-i" => [.. OpenWork.Say(assessed().Gate, knowledge), .. HandOver(assessed().Gate) is { } who ? [who] : Array.Empty<Statement>()],
            "who-to-call" => [HandOver(assessed().Gate) ?? Statement.Of("asked.call")],
            "how-test" when question.Term is { } test && knowledge.Tests.TryGetValue(test, out var guide) => HowTo(guide, assessed().Gate),
            "run-on-other-volts" when understood.Questions.Any(other => other.Id == "run-on-one-phase") => [], // that answer names the volts too
            "how" when understood.Questions.Any(other => other.Id == "how-test") => [],
            "how" => asked is null ? [Idle(assessed().Gate)] : How(asked),
            "what-size" => sizes(),
            "why-cause" => WhyCause(assessed().Causes, knowledge),
            "change-mind" => [.. ElseCould(assessed().Causes, knowledge), .. asked is null ? [] : Meaning(asked).Skip(1)],
            "what-does-that-mean" => asked is null ? [Idle(assessed().Gate)] : Meaning(asked),
            "what-is" when question.Term is { } term && knowledge.Words.Glossary.TryGetValue(term, out var explained) =>
                [Statement.Of("asked.term", ("term", explained.Term), ("text", file.Role == Role.Homeowner ? explained.Plain : explained.Technician))],
            _ when Faq.Questions.Contains(question.Id, StringComparer.Ordinal) => faq.Answer(question.Id, file),
            _ => knowledge.Sentences.Ids.Contains($"asked.{question.Id}") ? [Statement.Named($"asked.{question.Id}")] : new[] { Statement.Of("asked.no-answer") },
        }));

    /// <summary>Why what was done is not enough.</summary>
    private static IEnumerable<Statement> Less(Understood understood) =>
        understood.Answer is { Less: { } missing } ? [Statement.Named(missing)] : [];

    /// <summary>Who takes over; nothing where nobody has to.</summary>
    private static Statement? HandOver(Gate gate) => (gate.KeptFor ?? gate.ReferTo) is { } who ? Statement.Of("asked.hand-over").With("who", Person.Named(who)) : null;

    /// <summary>Where no question is open.</summary>
    private static Statement Idle(Gate gate) => HandOver(gate) ?? Statement.Of("asked.nothing-open");

    /// <summary>What speaks for the leading cause and what against it.</summary>
    private static IReadOnlyList<Statement> WhyCause(IReadOnlyList<RankedCause> causes, TradeKnowledge knowledge) => causes.Count == 0
        ? [Statement.Of("asked.no-cause-yet")]
        :
        [
            Statement.Of("asked.cause", ("cause", knowledge.Causes[causes[0].Id].Name)),
            .. causes[0].For,
            .. causes[0].Against.Count == 0 ? [] : causes[0].Against.Prepend(Statement.Of("asked.cause-against")),
        ];

    private static IReadOnlyList<Statement> ElseCould(IReadOnlyList<RankedCause> causes, TradeKnowledge knowledge) => causes.Count < 2
        ? [Statement.Of("asked.no-cause-yet")]
        : [Statement.Of("asked.else", ("causes", string.Join("; ", causes.Skip(1).Take(Others).Select(cause => knowledge.Causes[cause.Id].Name))))];

    /// <summary>How a test is made, for those alone who may make it.</summary>
    private static IReadOnlyList<Statement> HowTo(TestGuide guide, Gate gate) => gate.KeptFor is null && gate.CouldOpen(guide.Task)
        ? [.. guide.How.Select((_, line) => Statement.Named($"test.{guide.Id}.how-{line + 1}")), .. guide.Outcomes.Select(outcome => Found(Statement.Named($"test.{guide.Id}.reading-{outcome.Id}"), Statement.Named($"test.{guide.Id}.means-{outcome.Id}")))]
        : [Statement.Of("asked.how-not-for-you"), .. gate.KeptFor is null ? gate.Closed.Where(closed => closed.Task == guide.Task).Select(closed => closed.Reason) : [gate.Reason!]];

    private static IReadOnlyList<Statement> How(Question asked) => asked.How.Count == 0 ? [Statement.Of("asked.no-how")] : asked.How;

    private static IEnumerable<Statement> Meaning(Question asked) => [asked.Why, .. asked.Expect.Select(expect => Found(expect.When, expect.Means))];

    private static Statement Found(Statement shown, Statement means) => Statement.Of("asked.found").With("shown", shown).With("means", means);
}
