namespace WireCoach.Rules.Statements;

/// <summary>A caution.</summary>
/// <param name="Id">A caution id of the contract.</param>
/// <param name="Text">The caution.</param>
public sealed record Caution(string Id, Statement Text);
