using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Statements;

namespace WireCoach.Service.Sessions;

/// <summary>What a person gave in one request, checked.</summary>
internal sealed record Given
{
    /// <summary>The facts in it, still without ids.</summary>
    public IReadOnlyList<Fact> Facts { get; init; } = [];

    /// <summary>The words, where it was typed.</summary>
    public string? Words { get; init; }

    /// <summary>The words that were not understood.</summary>
    public IReadOnlyList<string> NotUnderstood { get; init; } = [];

    /// <summary>Of the words that were not understood, those that can mean one thing or another.</summary>
    public IReadOnlyList<Leftover> Doubtful { get; init; } = [];

    /// <summary>The question that it answers.</summary>
    public string? Question { get; init; }

    /// <summary>The ids of the facts that it takes back.</summary>
    public IReadOnlyList<string> Retracted { get; init; } = [];

    /// <summary>Answers to what the person asked.</summary>
    public IReadOnlyList<Statement> Answers { get; init; } = [];

    /// <summary>The client's key of the request.</summary>
    public string? Key { get; init; }

    /// <summary>A print of the request's body.</summary>
    public string? Print { get; init; }
}
