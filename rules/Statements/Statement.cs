using WireCoach.Rules.Quantities;

namespace WireCoach.Rules.Statements;

/// <summary>Something that the engine wants said: the id of a sentence in knowledge, and what goes into its gaps.</summary>
/// <remarks>Rules never hold prose. The sentence itself lives in <c>knowledge/sentences</c>, so that it can be read, translated and tested as text.</remarks>
public sealed class Statement
{
    private static readonly Dictionary<string, string> NoGaps = [];
    private static readonly Dictionary<string, IReadOnlyList<Statement>> NoParts = [];

    private Statement(string id, IReadOnlyDictionary<string, string> gaps, IReadOnlyList<Quoted> quotes) =>
        (Id, Gaps, Quotes) = (id, gaps, quotes);

    private Statement(Statement other) => (Id, Gaps, Quotes, Parts, Words) = (other.Id, other.Gaps, other.Quotes, other.Parts, other.Words);

    /// <summary>The id of the sentence.</summary>
    public string Id { get; private init; }

    /// <summary>The text for each gap of the sentence, by name.</summary>
    public IReadOnlyDictionary<string, string> Gaps { get; private init; }

    /// <summary>The quoted values that the sentence prints; no other number may stand in it.</summary>
    public IReadOnlyList<Quoted> Quotes { get; private init; }

    /// <summary>The gaps that are filled with sentences of their own, one after the other.</summary>
    internal IReadOnlyDictionary<string, IReadOnlyList<Statement>> Parts { get; private init; } = NoParts;

    /// <summary>The sentences that say the same, the best first, and what is said where knowledge has none of them.</summary>
    internal (IReadOnlyList<string> Ids, string Spoken)? Words { get; private init; }

    /// <summary>A word for an id: by the first of some sentences that knowledge has, or else as it is spoken.</summary>
    /// <param name="spoken">What is said where knowledge has none of the sentences.</param>
    /// <param name="ids">Ids of sentences, the best first.</param>
    public static Statement Word(string spoken, params IReadOnlyList<string> ids) => new(ids.Count > 0 ? ids[0] : spoken, NoGaps, []) { Words = (ids, spoken) };

    /// <summary>What a thing of knowledge is called: by a sentence for it, or else by its id as words.</summary>
    /// <param name="id">The id of the thing.</param>
    /// <param name="beginnings">How the ids of such sentences begin.</param>
    public static Statement Term(string id, params IReadOnlyList<string> beginnings) => Word(Spoken(id), [.. beginnings.Select(begun => begun + id)]);

    /// <summary>A statement from a sentence id and the texts of its gaps.</summary>
    /// <param name="id">The id of a sentence in knowledge; write it as a literal, so that the convention test finds it.</param>
    /// <param name="gaps">The gaps by name: tags, names and other text that is not a number of the engine.</param>
    public static Statement Of(string id, params ReadOnlySpan<(string Name, string Text)> gaps)
    {
        var texts = new Dictionary<string, string>(gaps.Length, StringComparer.Ordinal);
        foreach (var (name, text) in gaps)
        {
            texts.Add(name, text);
        }

        return new Statement(id, texts, []);
    }

    /// <summary>The same statement with a quoted value in one more gap.</summary>
    /// <param name="gap">The gap's name.</param>
    /// <param name="value">The value; its text is printed, the rest unfolds on the page.</param>
    public Statement With(string gap, Quoted value) => new(this) { Gaps = Filled(gap, value.Text), Quotes = [.. Quotes, value] };

    /// <summary>The same statement with text in one more gap.</summary>
    /// <param name="gap">The gap's name.</param>
    /// <param name="text">The text.</param>
    public Statement With(string gap, string text) => new(this) { Gaps = Filled(gap, text) };

    /// <summary>The same statement with further statements in one more gap, one after the other.</summary>
    /// <param name="gap">The gap's name.</param>
    /// <param name="parts">What is said there.</param>
    public Statement With(string gap, params IReadOnlyList<Statement> parts) =>
        new(this) { Parts = new Dictionary<string, IReadOnlyList<Statement>>(Parts, StringComparer.Ordinal) { [gap] = parts } };

    /// <summary>The same gaps and quotes under another sentence, for sentences whose id is made from data.</summary>
    /// <param name="id">The id of a sentence in knowledge.</param>
    public Statement As(string id) => new(this) { Id = id, Words = null };

    /// <summary>A statement whose sentence id is made from data, for example a caution's or a question's.</summary>
    /// <param name="id">The id of a sentence in knowledge.</param>
    public static Statement Named(string id) => new(id, new Dictionary<string, string>(StringComparer.Ordinal), []);

    /// <summary>The same statement carrying values that stand behind it but are not printed in it.</summary>
    /// <param name="values">The values.</param>
    public Statement Resting(params IEnumerable<Quoted> values) => new(this) { Quotes = [.. Quotes, .. values] };

    /// <summary>The id with all that fills its gaps: statements that say the same are written the same, and no others.</summary>
    public override string ToString() => Gaps.Count + Parts.Count == 0 ? Id
        : $"{Id} ({string.Join(", ", Gaps.Select(gap => $"{gap.Key}: {gap.Value}").Concat(Parts.Select(gap => $"{gap.Key}: {string.Join("; ", gap.Value)}")))})";

    /// <summary>An id as words: <c>hums-no-start</c> and <c>serviceFactor</c> read as they are spoken.</summary>
    /// <param name="id">The id.</param>
    public static string Spoken(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        var words = new System.Text.StringBuilder(id.Length + 4);
        foreach (var letter in id)
        {
            _ = char.IsUpper(letter) && words.Length > 0 && !char.IsUpper(words[^1]) ? words.Append(' ').Append(char.ToLowerInvariant(letter))
                : letter is '-' or '.' ? words.Append(' ')
                : words.Append(letter);
        }

        return words.ToString();
    }

    private Dictionary<string, string> Filled(string gap, string text) => new(Gaps, StringComparer.Ordinal) { [gap] = text };
}
