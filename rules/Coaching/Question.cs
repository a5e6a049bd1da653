using System.Text.Json.Serialization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Coaching;

/// <summary>The one thing that is asked next. A client that knows the motor can answer from these members without reading the sentences.</summary>
public sealed record Question
{
    /// <summary>A stable id of what is asked, for example <c>supply.volts</c> or <c>reading.1.4</c>.</summary>
    public required string Id { get; init; }

    /// <summary>How it is answered.</summary>
    public required QuestionKind Kind { get; init; }

    /// <summary>The question.</summary>
    public required Statement Text { get; init; }

    /// <summary>Why it is asked.</summary>
    public required Statement Why { get; init; }

    /// <summary>How to take the reading or do the step.</summary>
    public IReadOnlyList<Statement> How { get; init; } = [];

    /// <summary>The kind of fact, or the test id, that the answer fills.</summary>
    public required string About { get; init; }

    /// <summary>The task that a person does to answer it; never one that the gate refuses.</summary>
    public required string Task { get; init; }

    /// <summary>The options of a choice.</summary>
    public IReadOnlyList<QuestionOption> Options { get; init; } = [];

    /// <summary>The unit id of a quantity.</summary>
    public string? Unit { get; init; }

    /// <summary>The two leads of a reading; the second may be <c>frame</c> or <c>earth</c>.</summary>
    public IReadOnlyList<string>? Between { get; init; }

    /// <summary>How the leads are set up for the test.</summary>
    public TestSetup? Setup { get; init; }

    /// <summary>What each outcome would mean.</summary>
    public IReadOnlyList<Expectation> Expect { get; init; } = [];

    /// <summary>Whether a quantity may be answered by <c>reading: {open: true}</c> too, where the meter shows over-range.</summary>
    public bool CanBeOpen { get; init; }

    /// <summary>Whether "I can't tell" moves things on.</summary>
    public bool CanBeUnknown { get; init; } = true;

    /// <summary>The ids of the cautions that stand with it.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}

/// <summary>One option of a choice.</summary>
/// <param name="Id">The option's id.</param>
/// <param name="Text">What it says.</param>
public sealed record QuestionOption(string Id, Statement Text);

/// <summary>The answer to a question, as it comes from a page or a client; exactly one member is given.</summary>
public sealed record QuestionAnswer
{
    /// <summary>The question that is answered.</summary>
    public required string QuestionId { get; init; }

    /// <summary>The option's id.</summary>
    public string? Choice { get; init; }

    /// <summary>A number with its unit.</summary>
    public AnsweredQuantity? Quantity { get; init; }

    /// <summary>A meter reading.</summary>
    public AnsweredReading? Reading { get; init; }

    /// <summary>Done (<see langword="true"/>) or cannot.</summary>
    public bool? Confirmed { get; init; }

    /// <summary>Free words.</summary>
    public string? Text { get; init; }

    /// <summary>"I can't tell."</summary>
    public bool? Unknown { get; init; }
}

/// <summary>A number with its unit.</summary>
/// <param name="Value">The number.</param>
/// <param name="Unit">A unit id; the question's own where it is left out.</param>
public sealed record AnsweredQuantity(double Value, string? Unit = null);

/// <summary>A meter reading; exactly one member is given.</summary>
public sealed record AnsweredReading
{
    /// <summary>Ohms as shown.</summary>
    public double? Ohms { get; init; }

    /// <summary>Over-range.</summary>
    public bool? Open { get; init; }

    /// <summary>No more than the probes.</summary>
    public bool? Short { get; init; }

    /// <summary>Moved, then over-range.</summary>
    public bool? Kick { get; init; }
}
