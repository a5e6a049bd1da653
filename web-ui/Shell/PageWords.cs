using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.WebUi.Shell;

/// <summary>The sentences of the pages; like all others they live in knowledge.</summary>
public sealed class PageWords(SentenceBook sentences)
{
    /// <summary>A sentence without gaps.</summary>
    /// <param name="id">Its id; write it as a literal, so that the convention test finds it.</param>
    public string this[string id] => sentences[id].Text;

    /// <summary>A sentence with gaps.</summary>
    public string Fill(string id, params ReadOnlySpan<(string Name, string Text)> gaps)
    {
        var statement = Statement.Named(id);
        foreach (var (name, text) in gaps)
        {
            statement = statement.With(name, text);
        }

        return sentences.Render(statement);
    }

    /// <summary>A statement of the rules, as this reader gets it.</summary>
    public string Say(Statement statement, Role role = Role.Technician) => sentences.Render(statement, role);

    /// <summary>What stands where a plan would: that it is still to come, or why none is given.</summary>
    public string NoPlan(SessionView session) => session.Assessment.NoPlan is { } why ? Say(why, session.Role) : this["page.no-plan"];

    /// <summary>What facts say, one after the other.</summary>
    public string Say(IReadOnlyList<Fact> facts, Role role) => string.Join(" · ", Echo.Of(facts).Select(fact => Say(fact, role)));

    /// <summary>What a job is called in a list: the shop's name for the motor, or what was said first.</summary>
    public string Name(SessionSummary session) => session.MotorTag ?? session.Title ?? this["page.this-motor"];

    /// <summary>A word of the contract as people read it, for example a status, a role or a cause.</summary>
    public string Term(string kind, string id) => TermOrNull(kind, id) ?? id.Replace('-', ' ');

    /// <summary>The same, where knowledge has a word for it.</summary>
    public string? TermOrNull(string kind, string id) =>
        sentences.Ids.Contains($"term.{kind}.{id}") ? sentences[$"term.{kind}.{id}"].Text
        : sentences.Ids.Contains($"{kind}.{id}.name") ? sentences[$"{kind}.{id}.name"].Text
        : null;
}
