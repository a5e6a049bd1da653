namespace WireCoach.Rules.Diagnosis;

/// <summary>What the gate says of one task.</summary>
/// <param name="Refused">Not open to this person in this case.</param>
/// <param name="Needs">The confirmations that it still waits for; empty where it is open or refused.</param>
public sealed record TaskAccess(bool Refused, IReadOnlyList<string> Needs)
{
    /// <summary>Open at once.</summary>
    public static TaskAccess Open { get; } = new(false, []);
}
