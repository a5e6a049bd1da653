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
}
