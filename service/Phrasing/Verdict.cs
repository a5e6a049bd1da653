namespace WireCoach.Service.Phrasing;

/// <summary>What the guard says of a rewording.</summary>
/// <param name="Reason">Why it is refused, as one word of a closed set; <see langword="null"/> when it says the same.</param>
internal readonly record struct Verdict(string? Reason)
{
    public static Verdict Faithful => default;

    public bool IsFaithful => Reason is null;

    public static Verdict Refused(string reason) => new(reason);
}
