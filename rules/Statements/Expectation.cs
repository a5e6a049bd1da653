namespace WireCoach.Rules.Statements;

/// <summary>What an outcome would mean.</summary>
/// <param name="When">The outcome.</param>
/// <param name="Means">What follows.</param>
public sealed record Expectation(Statement When, Statement Means);
