using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Language;

/// <summary>What was understood of a message, and what was not.</summary>
public sealed record Understood
{
    /// <summary>Everything that can enter the case, in the order in which it was said; symptoms, goals and the answer to the open question are among them.</summary>
    public IReadOnlyList<Fact> Facts { get; init; } = [];

    /// <summary>The symptoms among the facts: seen or denied.</summary>
    public IReadOnlyList<HeardSymptom> Symptoms { get; init; } = [];

    /// <summary>Role ids that the words point to; a hint, never a decision.</summary>
    public IReadOnlyList<string> RoleHints { get; init; } = [];

    /// <summary>The goal that was named last, or <see langword="null"/>.</summary>
    public string? Goal { get; init; }

    /// <summary>What the person asked.</summary>
    public IReadOnlyList<HeardQuestion> Questions { get; init; } = [];

    /// <summary>Words that matter for safety, whatever else was said.</summary>
    public IReadOnlyList<HeardDanger> Dangers { get; init; } = [];

    /// <summary>The answer to the open question, where the message holds one; its facts are among <see cref="Facts"/> too, marked by <see cref="AnswerFacts"/>.</summary>
    public HeardAnswer? Answer { get; init; }

    /// <summary>The facts among <see cref="Facts"/> that are nothing but the answer to the open question.</summary>
    public IReadOnlyList<Fact> AnswerFacts { get; init; } = [];

    /// <summary>The facts among <see cref="Facts"/> that were said as a correction: each takes the place of the latest like one.</summary>
    public IReadOnlyList<Fact> Corrections { get; init; } = [];

    /// <summary>Those facts that "everything else is open" told: of a pair that was read before by itself they say nothing.</summary>
    public IReadOnlyList<Fact> OtherPairs { get; init; } = [];

    /// <summary>Whether the words name the plate as the place where figures were read.</summary>
    public bool SpeaksOfPlate { get; init; }

    /// <summary>"Thanks", "ok", "got it": nothing was said of the motor, and nothing is left to understand.</summary>
    public bool IsCourtesy { get; init; }

    /// <summary>"Undo", "scratch that": the last facts are to be retracted.</summary>
    public bool Undo { get; init; }

    /// <summary>"Skip", "can't measure that", "don't know".</summary>
    public bool Skip { get; init; }

    /// <summary>What was not understood, in the person's own words; never dropped.</summary>
    public IReadOnlyList<Leftover> NotUnderstood { get; init; } = [];
}

/// <summary>A symptom that was heard.</summary>
/// <param name="Id">A symptom id.</param>
/// <param name="Present"><see langword="false"/> for a denial ("doesn't even hum").</param>
/// <param name="Span">The words.</param>
public sealed record HeardSymptom(string Id, bool Present, string Span);

/// <summary>A question that was heard.</summary>
/// <param name="Id">What is asked, for example <c>why</c>, <c>what-is</c>, <c>bigger-capacitor</c>.</param>
/// <param name="Term">For <c>what-is</c>: the glossary term's id; for <c>records</c>: words in it that nothing is known of, which may name a machine.</param>
/// <param name="Span">The words.</param>
public sealed record HeardQuestion(string Id, string? Term, string Span);

/// <summary>Words that matter for safety.</summary>
/// <param name="Id">What it is, for example <c>shock-felt</c>, <c>protection-bypassed</c>.</param>
/// <param name="Span">The words.</param>
public sealed record HeardDanger(string Id, string Span);

/// <summary>Words that were not understood, or that read in more than one way.</summary>
/// <param name="Text">The words.</param>
/// <param name="Reads">What they may mean, as <c>kind/id</c>; <c>aside/</c> and a symptom where they name it without telling it of this motor as it is now, <c>likely/</c> and one that was taken for told because people tell it in the like words, <c>likely-not/</c> and one that was taken for denied so, <c>doubt/</c> and one that was not because they tell it in quite other words, <c>maybe/</c> and those that come nearest to words of which nothing was made, <c>part/</c> and a confirmation of which they say a part; empty where nothing fits.</param>
public sealed record Leftover(string Text, IReadOnlyList<string> Reads)
{
    /// <summary>Words that nothing fits.</summary>
    /// <param name="text">The words.</param>
    public Leftover(string text)
        : this(text, [])
    {
    }
}

/// <summary>The answer to the open question; exactly one member is given.</summary>
public sealed record HeardAnswer
{
    /// <summary>The question's id.</summary>
    public required string QuestionId { get; init; }

    /// <summary>The option's id.</summary>
    public string? Choice { get; init; }

    /// <summary>A number in the question's unit.</summary>
    public double? Value { get; init; }

    /// <summary>The unit id of <see cref="Value"/>.</summary>
    public string? Unit { get; init; }

    /// <summary>A meter reading; its leads are those of the question.</summary>
    public Fact.Reading? Reading { get; init; }

    /// <summary>Done (<see langword="true"/>) or cannot.</summary>
    public bool? Confirmed { get; init; }

    /// <summary>Something is done that is less than what was to be confirmed: the id of the sentence that says what is missing.</summary>
    public string? Less { get; init; }

    /// <summary>Free words.</summary>
    public string? Text { get; init; }

    /// <summary>"I can't tell", "skip".</summary>
    public bool Unknown { get; init; }
}
