namespace WireCoach.Rules.Quantities;

/// <summary>A range of which each end is quoted.</summary>
/// <param name="Low">The lower end; <see langword="null"/> where there is none.</param>
/// <param name="High">The upper end; <see langword="null"/> where there is none.</param>
public sealed record QuotedRange(Quoted? Low, Quoted? High);
