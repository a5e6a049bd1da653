using System.Diagnostics.CodeAnalysis;

namespace WireCoach.Rules.Statements;

/// <summary>What is wrong with an input: an answer, not an exception.</summary>
/// <param name="Id">One of the contract's problem ids, for example <c>invalid-fact</c> or <c>not-ready</c>.</param>
/// <param name="Field">The offending member, as a path in camelCase.</param>
/// <param name="Advice">One sentence of advice.</param>
public sealed record Problem(string Id, string Field, Statement Advice)
{
    /// <summary>What is missing before the question can be answered; empty unless the id is <c>not-ready</c>.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];

    /// <summary>A member is needed and was left out.</summary>
    /// <param name="field">The member, as a path.</param>
    public static Problem NotGiven(string field) => new("invalid-fact", field, Statement.Of("problem.missing", ("field", field)));
}

/// <summary>Either the value asked for, or what is wrong with the question.</summary>
/// <typeparam name="T">The value.</typeparam>
public sealed class Answer<T>
    where T : class
{
    private Answer(T? value, IReadOnlyList<Problem> problems) => (Value, Problems) = (value, problems);

    /// <summary>The value, or <see langword="null"/> where there are problems.</summary>
    public T? Value { get; }

    /// <summary>What is wrong; empty where there is a value.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>Whether there is a value.</summary>
    [MemberNotNullWhen(true, nameof(Value))]
    public bool IsGiven => Value is not null;

    /// <summary>What is made of the value, or the same refusal.</summary>
    /// <typeparam name="TOther">What it becomes.</typeparam>
    /// <param name="made">Makes it.</param>
    public Answer<TOther> Then<TOther>(Func<T, TOther> made)
        where TOther : class => IsGiven ? Answer<TOther>.Given(made(Value)) : Answer<TOther>.Refused(Problems);

    /// <summary>A good answer.</summary>
    /// <param name="value">The value.</param>
    public static implicit operator Answer<T>(T value) => new(value, []);

    /// <summary>A good answer, where the value is an interface.</summary>
    /// <param name="value">The value.</param>
    public static Answer<T> Given(T value) => new(value, []);

    /// <summary>A refusal.</summary>
    /// <param name="problem">What is wrong.</param>
    public static implicit operator Answer<T>(Problem problem) => new(null, [problem]);

    /// <summary>A refusal with several reasons.</summary>
    /// <param name="problems">What is wrong, at least one.</param>
    public static Answer<T> Refused(IReadOnlyList<Problem> problems) => new(null, problems);
}
