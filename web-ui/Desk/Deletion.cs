namespace WireCoach.WebUi.Desk;

/// <summary>That a session was deleted: all that is left of it.</summary>
/// <param name="Id">The session's id.</param>
/// <param name="At">When.</param>
/// <param name="Who">Who deleted it, where that was said.</param>
/// <param name="Why">Why, in their words.</param>
public sealed record Deletion(string Id, DateTimeOffset At, string? Who, string Why);
