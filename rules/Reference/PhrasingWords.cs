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

    /// <summary>Words by which clauses and values hold together.</summary>
    public required BindingWords Binding { get; init; }

    /// <summary>Writings that mean the same, the one they are compared by first.</summary>
    public required IReadOnlyList<IReadOnlyList<string>> Synonyms { get; init; }

    /// <summary>Turns of several words that mean the same although their words are of other classes.</summary>
    public required IReadOnlyList<IReadOnlyList<string>> Phrases { get; init; }
}

/// <summary>Words that bind others to themselves: what hangs on them may move only with them.</summary>
public sealed record BindingWords
{
    /// <summary>Words that string statements together.</summary>
    public required IReadOnlyList<string> Joiners { get; init; }

    /// <summary>Words that begin a clause on which a statement depends.</summary>
    public required IReadOnlyList<string> Conditions { get; init; }

    /// <summary>Words that begin a place, a time or a means.</summary>
    public required IReadOnlyList<string> Places { get; init; }

    /// <summary>Words that take their meaning from a neighbour; a clause with one of them stays where it is.</summary>
    public required IReadOnlyList<string> Pointing { get; init; }

    /// <summary>Words that lend their weight to what stands beside them.</summary>
    public required IReadOnlyList<string> Focus { get; init; }

    /// <summary>Words that, standing last, take hold of what comes behind: long before, except when.</summary>
    public required IReadOnlyList<string> Leaning { get; init; }

    /// <summary>Words with which a statement of its own begins.</summary>
    public required IReadOnlyList<string> Subjects { get; init; }

    /// <summary>Words in front of a statement that a comma or a colon may follow.</summary>
    public required IReadOnlyList<string> Openers { get; init; }

    /// <summary>Words after "once" by which it counts and is no "when".</summary>
    public required IReadOnlyList<string> Counting { get; init; }
}
