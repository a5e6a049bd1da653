namespace WireCoach.WebUi.Desk;

/// <summary>One step of a session: what a person gave, and all that followed from it until the next.</summary>
/// <param name="Asked">The question that was open then; <see langword="null"/> at the beginning.</param>
/// <param name="Entries">The entries in their order; the first is what the person did.</param>
public sealed record TimelineStep(string? Asked, IReadOnlyList<LogEntry> Entries)
{
    /// <summary>When it was.</summary>
    public DateTimeOffset At => Entries[0].At;

    /// <summary>What the person did.</summary>
    public IReadOnlyList<LogEntry> Given => [.. Entries.Where(entry => entry.Type is not ("said" or "caution-shown" or "concluded" or "asked"))];

    /// <summary>What stays in view: cautions and decisions.</summary>
    public IReadOnlyList<LogEntry> InView => [.. Entries.Where(entry => entry.Type is "caution-shown" or "concluded")];

    /// <summary>What the coach said, behind a touch. Its question stands with the step that answers it.</summary>
    public IReadOnlyList<LogEntry> Folded => [.. Entries.Where(entry => entry.Type == "said")];

    /// <summary>What stands behind an entry: the rules of a sentence, or the sentence where it rests on none; behind a decision all that was said with it.</summary>
    /// <param name="entry">An entry of this step.</param>
    public IReadOnlyList<string> Behind(LogEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Type switch
        {
            "concluded" => [.. Folded.SelectMany(Behind).Distinct(StringComparer.Ordinal)],
            "said" when entry.Rules.Count == 0 && entry.Id is { } id && !id.StartsWith("reply.", StringComparison.Ordinal) => [id],
            "caution-shown" when entry.Id is { } caution => [caution],
            _ => entry.Rules,
        };
    }

    /// <summary>The question that this step left open.</summary>
    public string? Leaves => Entries.LastOrDefault(entry => entry.Type == "asked")?.Text;

    /// <summary>The steps of a log: everything of one turn bears the same time.</summary>
    /// <param name="entries">The log in its order.</param>
    public static IReadOnlyList<TimelineStep> Of(IReadOnlyList<LogEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var steps = new List<TimelineStep>();
        string? asked = null;
        for (var at = 0; at < entries.Count;)
        {
            var held = entries.Skip(at).TakeWhile(entry => entry.At == entries[at].At).ToList();
            steps.Add(new TimelineStep(asked, held));
            asked = steps[^1].Leaves ?? (steps[^1].Given.Any(entry => entry.Type == "facts-taken") ? null : asked);
            at += held.Count;
        }

        return steps;
    }
}
