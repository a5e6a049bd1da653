using System.Text.Json.Serialization;

namespace WireCoach.Rules.Language;

/// <summary>The question that stands open when a person types: it decides how a bare "1.7", "OL", "yes" or "240" is read.</summary>
public sealed record OpenQuestion
{
    /// <summary>The question's id.</summary>
    public required string Id { get; init; }

    /// <summary>How it is answered.</summary>
    public required QuestionKind Kind { get; init; }

    /// <summary>The kind of fact, the test id or the plate field that the answer fills.</summary>
    public string? About { get; init; }

    /// <summary>The unit id of a quantity.</summary>
    public string? Unit { get; init; }

    /// <summary>The two leads of a reading; the second may be <c>frame</c> or <c>earth</c>.</summary>
    public IReadOnlyList<string>? Between { get; init; }

    /// <summary>Whether a quantity may be open, too.</summary>
    public bool CanBeOpen { get; init; }

    /// <summary>The options of a choice.</summary>
    public IReadOnlyList<OpenOption> Options { get; init; } = [];
}

/// <summary>One option of an open choice.</summary>
/// <param name="Id">The option's id.</param>
/// <param name="Text">What it says.</param>
public sealed record OpenOption(string Id, string Text);

/// <summary>How an open question is answered.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<QuestionKind>))]
public enum QuestionKind
{
    /// <summary>One of the options.</summary>
    [JsonStringEnumMemberName("choice")]
    Choice,

    /// <summary>A number with a unit.</summary>
    [JsonStringEnumMemberName("quantity")]
    Quantity,

    /// <summary>Ohms, open or short between two leads.</summary>
    [JsonStringEnumMemberName("reading")]
    Reading,

    /// <summary>Done, or cannot.</summary>
    [JsonStringEnumMemberName("confirm")]
    Confirm,

    /// <summary>Free words.</summary>
    [JsonStringEnumMemberName("text")]
    Text,
}
