using WireCoach.Rules.Quantities;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Reference;

/// <summary>A question as it is written in knowledge: its words, how it is answered, and what it makes a person do.</summary>
public sealed record QuestionCard
{
    /// <summary>A stable id.</summary>
    public required string Id { get; init; }

    /// <summary><c>choice</c>, <c>quantity</c>, <c>reading</c>, <c>confirm</c> or <c>text</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>The kind of fact, or the test id, that the answer fills.</summary>
    public required string About { get; init; }

    /// <summary>The task that a person does to answer it; the gate must allow it.</summary>
    public required string Task { get; init; }

    /// <summary>The question.</summary>
    public required string Text { get; init; }

    /// <summary>The question in plainer words for the homeowner.</summary>
    public string? Homeowner { get; init; }

    /// <summary>Why it is asked.</summary>
    public required string Why { get; init; }

    /// <summary>How to do it, step by step.</summary>
    public IReadOnlyList<string> How { get; init; } = [];

    /// <summary>The options of a choice.</summary>
    public IReadOnlyList<CardOption> Options { get; init; } = [];

    /// <summary>What outcomes would mean, where it is the same in every case.</summary>
    public IReadOnlyList<CardExpectation> Expect { get; init; } = [];

    /// <summary>For a confirmation: further words that say it is done, as phrases.</summary>
    public IReadOnlyList<string> Heard { get; init; } = [];

    /// <summary>The unit id of a quantity.</summary>
    public string? Unit { get; init; }

    /// <summary>For a quantity in ohms: whether over-range answers it too.</summary>
    public bool CanBeOpen { get; init; }

    /// <summary>Whether "I can't tell" moves things on.</summary>
    public bool CanBeUnknown { get; init; } = true;

    /// <summary>Cautions that stand with the question.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Where the figures in its words come from; needed where there are any.</summary>
    public Source? Source { get; init; }

    /// <summary>The sentence ids of its parts: <c>question.ID.text</c>, <c>.why</c>, <c>.how-1</c>, <c>.option-ID</c>, <c>.when-1</c>, <c>.means-1</c>.</summary>
    /// <param name="part">The part's name.</param>
    public string Sentence(string part) => $"question.{Id}.{part}";

    /// <summary>Its words as sentences of the book.</summary>
    public IEnumerable<Sentence> Sentences() =>
    [
        new() { Id = Sentence("text"), Text = Text, Homeowner = Homeowner },
        new() { Id = Sentence("why"), Text = Why },
        .. Statements.Sentence.Steps($"question.{Id}", How, []),
        .. Options.Select(option => new Sentence { Id = Sentence($"option-{option.Id}"), Text = option.Text }),
        .. Expect.SelectMany((expect, at) => new Sentence[]
        {
            new() { Id = Sentence($"when-{at + 1}"), Text = expect.When },
            new() { Id = Sentence($"means-{at + 1}"), Text = expect.Means },
        }),
    ];
}

/// <summary>One option of a choice.</summary>
public sealed record CardOption
{
    /// <summary>The option's id.</summary>
    public required string Id { get; init; }

    /// <summary>What it says.</summary>
    public required string Text { get; init; }

    /// <summary>Short ways of typing it, as phrases of words; <c>+yes</c> and <c>+no</c> stand for any word of consent or refusal.</summary>
    public IReadOnlyList<string> Heard { get; init; } = [];
}

/// <summary>What an outcome would mean.</summary>
public sealed record CardExpectation
{
    /// <summary>The outcome.</summary>
    public required string When { get; init; }

    /// <summary>What follows.</summary>
    public required string Means { get; init; }
}
