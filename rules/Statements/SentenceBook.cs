using System.Text;
using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Statements;

/// <summary>All sentences, and how a statement becomes one.</summary>
public sealed class SentenceBook
{
    private readonly Dictionary<string, Sentence> _sentences;

    /// <summary>A book of the given sentences.</summary>
    /// <param name="sentences">Each id once.</param>
    /// <exception cref="ArgumentException">An id stands twice.</exception>
    public SentenceBook(IEnumerable<Sentence> sentences) =>
        _sentences = sentences.ToDictionary(sentence => sentence.Id, StringComparer.Ordinal);

    /// <summary>The ids of all sentences.</summary>
    public IReadOnlyCollection<string> Ids => _sentences.Keys;

    /// <summary>The sentence with this id.</summary>
    /// <param name="id">A sentence id.</param>
    /// <exception cref="KeyNotFoundException">There is no such sentence: a wrong program or a wrong knowledge file.</exception>
    public Sentence this[string id] => _sentences.TryGetValue(id, out var sentence)
        ? sentence
        : throw new KeyNotFoundException($"There is no sentence '{id}' in knowledge/sentences.");

    /// <summary>The finished sentence.</summary>
    /// <param name="statement">What to say.</param>
    /// <param name="role">Who reads it; the homeowner gets the plainer wording where there is one.</param>
    /// <exception cref="KeyNotFoundException">The sentence, or a text for one of its gaps, is missing.</exception>
    public string Render(Statement statement, Role role = Role.Technician)
    {
        if (statement.Words is { } words && words.Ids.FirstOrDefault(_sentences.ContainsKey) is var id)
        {
            return id is null ? words.Spoken : Template(id, role);
        }

        return Fill(Template(statement.Id, role), statement, role);
    }

    /// <summary>A sentence within another begins small, unless its first word is a sign or an abbreviation.</summary>
    private static string Within(string text) => text.Length > 1 && char.IsUpper(text[0]) && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    private string Template(string id, Role role) => role == Role.Homeowner ? this[id].Homeowner ?? this[id].Text : this[id].Text;

    private string Fill(string template, Statement statement, Role role)
    {
        var text = new StringBuilder(template.Length + 32);
        for (var at = 0; at < template.Length;)
        {
            var open = template.IndexOf('{', at);
            if (open < 0)
            {
                return text.Append(template, at, template.Length - at).ToString();
            }

            var close = template.IndexOf('}', open);
            var gap = template[(open + 1)..close];
            text.Append(template, at, open - at).Append(statement.Gaps.TryGetValue(gap, out var filled) ? filled
                : statement.Parts.TryGetValue(gap, out var parts) ? string.Join(", ", parts.Select(part => Within(Render(part, role))))
                : throw new KeyNotFoundException($"The sentence '{statement.Id}' has a gap '{gap}' that nothing fills."));
            at = close + 1;
        }

        return text.ToString();
    }
}
