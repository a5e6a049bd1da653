using System.Text.Json.Serialization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Coaching;
using WireCoach.Rules.Quantities;

namespace WireCoach.WebUi.Desk;

/// <summary>A session as it stands.</summary>
public sealed record SessionView
{
    public required string Id { get; init; }

    public required Role Role { get; init; }

    public required Region Region { get; init; }

    /// <summary><c>open</c>, <c>ready</c>, <c>verified</c>, <c>referred</c> or <c>closed</c>.</summary>
    public required string Status { get; init; }

    public required DateTimeOffset CreatedAt { get; init; }

    public required DateTimeOffset ChangedAt { get; init; }

    public string? Who { get; init; }

    public string? MotorTag { get; init; }

    /// <summary>The person's own name for the motor, or what it drives.</summary>
    [JsonIgnore]
    public string? Motor => MotorTag ?? Case.Application?.Text;

    /// <summary>The simulated motor, where there is one.</summary>
    public PracticeChoice? Practice { get; init; }

    /// <summary>The place of the last event in the session's log; moves with everything that is stored.</summary>
    public required int Sequence { get; init; }

    /// <summary>The facts that count: neither replaced nor retracted.</summary>
    public required IReadOnlyList<Fact> Facts { get; init; }

    /// <summary>What the rules say of it now.</summary>
    public required Assessment Assessment { get; init; }

    /// <summary>The last reply, so that a page shows it again after a reload.</summary>
    public Reply? Last { get; init; }

    /// <summary>The conversation so far.</summary>
    public required IReadOnlyList<Turn> Turns { get; init; }

    /// <summary>The last verdict, or <see langword="null"/>.</summary>
    public Review? Review { get; init; }

    /// <summary>The same facts, folded: leads, readings, plate.</summary>
    [JsonIgnore]
    public CaseFile Case { get; init; } = default!;
}

/// <summary>What comes back to a person's words, answer or reading.</summary>
public sealed record Reply
{
    /// <summary>Who reads it.</summary>
    [JsonIgnore]
    public Role Role { get; init; }

    /// <summary>The facts that were taken from it.</summary>
    public required IReadOnlyList<Fact> Understood { get; init; }

    /// <summary>Words that were not understood, said back.</summary>
    public required IReadOnlyList<Unheard> NotUnderstood { get; init; }

    /// <summary>What is said, in order.</summary>
    public required IReadOnlyList<Said> Say { get; init; }

    /// <summary>The open question.</summary>
    public Question? Ask { get; init; }

    public required Assessment Assessment { get; init; }

    /// <summary>The place of the last event in the session's log.</summary>
    public required int Sequence { get; init; }
}

/// <summary>Words that were not understood.</summary>
/// <param name="Text">The person's own words.</param>
public sealed record Unheard(string Text);

/// <summary>A finished sentence.</summary>
/// <param name="Id">The sentence's id.</param>
/// <param name="Text">The sentence as this reader gets it.</param>
/// <param name="Reworded">Whether a model reworded it.</param>
/// <param name="Quotes">The values behind the numbers in it.</param>
public sealed record Said(string Id, string Text, bool Reworded, IReadOnlyList<Quoted> Quotes);

/// <summary>One exchange: what the person gave and what was said and asked then.</summary>
public sealed record Turn
{
    /// <summary>The place of its first event in the log.</summary>
    public required int Sequence { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>The person's words, or <see langword="null"/> for a form, a button or a probe.</summary>
    public string? Words { get; init; }

    /// <summary>The facts that were taken.</summary>
    public IReadOnlyList<Fact> Facts { get; init; } = [];

    /// <summary>The id of the fact that was taken back.</summary>
    public string? Retracted { get; init; }

    public IReadOnlyList<Unheard> NotUnderstood { get; init; } = [];

    /// <summary>What was said for the first time or anew.</summary>
    public IReadOnlyList<LoggedSentence> Say { get; init; } = [];

    /// <summary>The question that was asked then.</summary>
    public LoggedSentence? Asked { get; init; }
}

/// <summary>A sentence as it was shown then.</summary>
/// <param name="Id">The sentence's, caution's or question's id.</param>
/// <param name="Text">What stood there.</param>
/// <param name="Rules">The rules behind it.</param>
public sealed record LoggedSentence(string Id, string Text, IReadOnlyList<string> Rules);

/// <summary>A verdict as it was stored.</summary>
/// <param name="Verdict"><c>ok</c>, <c>redo</c> or <c>note</c>.</param>
/// <param name="Note">In the manager's words.</param>
/// <param name="Who">Who judged.</param>
/// <param name="At">When.</param>
/// <param name="Upon">The place of the last event that it had before it.</param>
public sealed record Review(string Verdict, string? Note, string? Who, DateTimeOffset At, int Upon);
