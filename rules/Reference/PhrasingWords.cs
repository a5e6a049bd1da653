namespace WireCoach.Rules.Reference;

/// <summary>The words by which a rewording is compared with the sentence it was made from.</summary>
public sealed record PhrasingWords
{
    /// <summary>First parts of the ids of sentences that may be reworded at all.</summary>
    public required IReadOnlyList<string> Rooms { get; init; }

    /// <summary>Words that may be added and left out freely.</summary>
    public required IReadOnlyList<string> Fillers { get; init; }

    /// <summary>Words that carry meaning by themselves, by class.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<string>> Classes { get; init; }

    /// <summary>Writings that mean the same, the one they are compared by first.</summary>
    public required IReadOnlyList<IReadOnlyList<string>> Synonyms { get; init; }

    /// <summary>Turns of several words that mean the same although their words are of other classes.</summary>
    public required IReadOnlyList<IReadOnlyList<string>> Phrases { get; init; }
}
