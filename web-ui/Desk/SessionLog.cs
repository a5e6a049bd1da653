using System.Text.Json;
using WireCoach.Rules.Cases;

namespace WireCoach.WebUi.Desk;

/// <summary>Everything that was written of a session.</summary>
/// <param name="Session">As it stands.</param>
/// <param name="Entries">In the order in which they were written.</param>
/// <param name="Differences">What today's rules make of the same facts otherwise than the rules of then.</param>
public sealed record SessionLog(SessionView Session, IReadOnlyList<LogEntry> Entries, IReadOnlyList<Difference> Differences);

/// <summary>A decision that today's rules take otherwise.</summary>
/// <param name="What"><c>status</c>, <c>goal</c>, <c>layout</c> or <c>cause</c>.</param>
/// <param name="Then">The ids that were decided then.</param>
/// <param name="Now">The ids that the same facts lead to now.</param>
public sealed record Difference(string What, IReadOnlyList<string> Then, IReadOnlyList<string> Now);

/// <summary>One event of the log.</summary>
public sealed record LogEntry
{
    public required int Sequence { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary><c>opened</c>, <c>facts-taken</c>, <c>retracted</c>, <c>said</c>, <c>caution-shown</c>, <c>concluded</c>, <c>asked</c>, <c>reviewed</c> or <c>closed</c>.</summary>
    public required string Type { get; init; }

    /// <summary>The words: a person's, a sentence, a question, a note.</summary>
    public string? Text { get; init; }

    /// <summary>The id of what was said, asked, shown, retracted or judged.</summary>
    public string? Id { get; init; }

    /// <summary>The rules behind it.</summary>
    public IReadOnlyList<string> Rules { get; init; } = [];

    /// <summary>The facts that were taken.</summary>
    public IReadOnlyList<Fact> Facts { get; init; } = [];

    /// <summary>Who did it, where that was said.</summary>
    public string? Who { get; init; }

    /// <summary>The event as it was written.</summary>
    public JsonElement Written { get; init; }
}
