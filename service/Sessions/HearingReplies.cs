using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Diagnosis;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Sessions;

/// <summary>What is answered to a person's own questions; every sentence of it stands in knowledge.</summary>
internal static class HearingReplies
{
    public static IEnumerable<Statement> To(Understood understood, Question? asked, TradeKnowledge knowledge, CaseFile file, Faq faq) =>
        understood.Questions.SelectMany(question => question.Id switch
        {
            "why" => asked is null ? [Statement.Of("asked.nothing-open")] : [asked.Why],
            "what-now" => asked is null ? [Statement.Of("asked.nothing-open")] : [asked.Text],
            "how" => asked is null ? [Statement.Of("asked.nothing-open")] : How(asked),
            "what-does-that-mean" => asked is null ? [Statement.Of("asked.nothing-open")] : Meaning(asked),
            "what-is" when question.Term is { } term && knowledge.Words.Glossary.TryGetValue(term, out var explained) =>
                [Statement.Of("asked.term", ("term", explained.Term), ("text", file.Role == Role.Homeowner ? explained.Plain : explained.Technician))],
            _ when Faq.Questions.Contains(question.Id, StringComparer.Ordinal) => faq.Answer(question.Id, file),
            _ => knowledge.Sentences.Ids.Contains($"asked.{question.Id}") ? [Statement.Named($"asked.{question.Id}")] : new[] { Statement.Of("asked.no-answer") },
        });

    private static IReadOnlyList<Statement> How(Question asked) => asked.How.Count == 0 ? [Statement.Of("asked.no-how")] : asked.How;

    private static IEnumerable<Statement> Meaning(Question asked) => [asked.Why, .. asked.Expect.SelectMany(expect => (Statement[])[expect.When, expect.Means])];
}
