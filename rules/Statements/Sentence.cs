namespace WireCoach.Rules.Statements;

/// <summary>A sentence that people read, with gaps written as <c>{name}</c>.</summary>
public sealed record Sentence
{
    /// <summary>A stable id, <c>room.what</c> in kebab-case.</summary>
    public required string Id { get; init; }

    /// <summary>The sentence as the technician reads it.</summary>
    public required string Text { get; init; }

    /// <summary>The sentence in plainer words for the homeowner; the same gaps, or fewer.</summary>
    public string? Homeowner { get; init; }

    /// <summary>Steps one after the other: <c>OF.how-1</c> and so on.</summary>
    /// <param name="of">What is done.</param>
    /// <param name="how">Each step.</param>
    /// <param name="home">The same steps for the homeowner, where they are others.</param>
    public static IEnumerable<Sentence> Steps(string of, IReadOnlyList<string> how, IReadOnlyList<string> home) =>
        how.Select((step, at) => new Sentence { Id = $"{of}.how-{at + 1}", Text = step, Homeowner = home.ElementAtOrDefault(at) });
}
