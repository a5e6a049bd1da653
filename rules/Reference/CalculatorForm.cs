using WireCoach.Rules.Statements;

namespace WireCoach.Rules.Reference;

/// <summary>A calculator as a person meets it: what it asks for, in words, and where a conversation offers it.</summary>
public sealed record CalculatorForm
{
    /// <summary>The calculator's name in the contract.</summary>
    public required string Id { get; init; }

    /// <summary>Its heading.</summary>
    public required string Title { get; init; }

    /// <summary>What it answers.</summary>
    public required string Lead { get; init; }

    /// <summary>What to mind before its figures are used.</summary>
    public required string Caution { get; init; }

    /// <summary>Whether it is for those who may measure and plan: a conversation at home does not offer it.</summary>
    public bool ForTrade { get; init; }

    /// <summary>Questions of the conversation beside which it is offered.</summary>
    public IReadOnlyList<string> Questions { get; init; } = [];

    /// <summary>A motor of the dairy as an example, by field.</summary>
    public required IReadOnlyDictionary<string, string> Sample { get; init; }

    /// <summary>What it asks for, in groups.</summary>
    public required IReadOnlyList<CalculatorGroup> Groups { get; init; }

    /// <summary>All fields in their order.</summary>
    public IEnumerable<CalculatorField> Fields => Groups.SelectMany(group => group.Fields);

    /// <summary>The sentence id of one of its parts.</summary>
    /// <param name="part">The part's name, for example <c>title</c> or <c>volts.label</c>.</param>
    public string Sentence(string part) => $"calculator.{Id}.{part}";

    /// <summary>Its words as sentences of the book.</summary>
    public IEnumerable<Sentence> Sentences() =>
    [
        new() { Id = Sentence("title"), Text = Title },
        new() { Id = Sentence("lead"), Text = Lead },
        new() { Id = Sentence("caution"), Text = Caution },
        .. Groups.Select((group, at) => new Sentence { Id = Sentence($"group-{at + 1}"), Text = group.Title }),
        .. Fields.SelectMany(field => new Sentence[]
        {
            new() { Id = Sentence($"{field.Name}.label"), Text = field.Label },
            new() { Id = Sentence($"{field.Name}.why"), Text = field.Why },
        }),
        .. Fields.SelectMany(field => field.Options.Select(option => new Sentence { Id = Sentence($"{field.Name}.option-{option.Id}"), Text = option.Text })),
    ];
}

/// <summary>Fields that belong together.</summary>
public sealed record CalculatorGroup
{
    /// <summary>What they are about.</summary>
    public required string Title { get; init; }

    /// <summary>Whether they are folded away until they are wanted.</summary>
    public bool More { get; init; }

    /// <summary>The fields.</summary>
    public required IReadOnlyList<CalculatorField> Fields { get; init; }
}

/// <summary>One field.</summary>
public sealed record CalculatorField
{
    /// <summary>The member of the contract that it fills, as a path: <c>volts</c>, <c>measured.amps</c>, <c>readings[0].megohms</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Its label.</summary>
    public required string Label { get; init; }

    /// <summary>Where it is found and why it matters.</summary>
    public required string Why { get; init; }

    /// <summary><c>number</c>, <c>numbers</c>, <c>text</c>, <c>choice</c> or <c>yes</c>.</summary>
    public string Kind { get; init; } = "number";

    /// <summary>The unit id of a number.</summary>
    public string? Unit { get; init; }

    /// <summary>An example of what to write.</summary>
    public string? Example { get; init; }

    /// <summary>The options of a choice.</summary>
    public IReadOnlyList<CardOption> Options { get; init; } = [];

    /// <summary>Members that get the same value.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    /// <summary>Members that get a value of their own as soon as this field is filled in.</summary>
    public IReadOnlyDictionary<string, double> With { get; init; } = new Dictionary<string, double>(StringComparer.Ordinal);

    /// <summary>What of a case it is filled with, for example <c>plate.rpm</c> or <c>supply.volts</c>.</summary>
    public string? From { get; init; }
}
