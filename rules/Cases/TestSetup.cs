namespace WireCoach.Rules.Cases;

/// <summary>How the leads are set up for a test.</summary>
/// <param name="Drive">The leads that are fed.</param>
/// <param name="Tie">Leads tied together for the test.</param>
/// <param name="Read">The leads that are read across.</param>
/// <param name="AppliedVolts">Volts on the driven leads; <see langword="null"/> where nothing is fed.</param>
public sealed record TestSetup(
    IReadOnlyList<string> Drive, IReadOnlyList<IReadOnlyList<string>> Tie, IReadOnlyList<string> Read, double? AppliedVolts);
