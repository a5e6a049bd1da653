using WireCoach.Rules.Cases;

namespace WireCoach.WebUi.Desk;

/// <summary>Which sessions to list; a member that is left out does not narrow.</summary>
public sealed record SessionFilter
{
    /// <summary>Words that occur in the session.</summary>
    public string? Text { get; init; }

    public string? Who { get; init; }

    public string? MotorTag { get; init; }

    public Role? Role { get; init; }

    public string? Status { get; init; }

    /// <summary>A cause id that was among the likely ones.</summary>
    public string? Cause { get; init; }

    /// <summary>A caution id that was shown.</summary>
    public string? Caution { get; init; }

    /// <summary>None but these ids.</summary>
    public IReadOnlyList<string>? Only { get; init; }

    /// <summary>Opened at or after.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Opened before.</summary>
    public DateTimeOffset? To { get; init; }

    /// <summary>The last verdict.</summary>
    public string? Verdict { get; init; }

    /// <summary>The <see cref="SessionPage.Next"/> of the page before.</summary>
    public string? After { get; init; }

    /// <summary>How many at most, 1 to 200.</summary>
    public int? Size { get; init; }
}

/// <summary>A page of sessions, the newest first.</summary>
/// <param name="Items">The sessions.</param>
/// <param name="Total">How many fit the filter in all.</param>
/// <param name="Next">What to send as <c>after</c> for the next page; <see langword="null"/> on the last.</param>
public sealed record SessionPage(IReadOnlyList<SessionSummary> Items, int Total, string? Next);

/// <summary>What the list shows of a session.</summary>
public sealed record SessionSummary
{
    public required string Id { get; init; }

    public required Role Role { get; init; }

    public required Region Region { get; init; }

    public required string Status { get; init; }

    public required DateTimeOffset CreatedAt { get; init; }

    public required DateTimeOffset ChangedAt { get; init; }

    public string? Who { get; init; }

    public string? MotorTag { get; init; }

    public bool Practice { get; init; }

    /// <summary>The person's first words, shortened; where nothing was typed, what the motor drives.</summary>
    public string? Title { get; init; }

    /// <summary>The open question's text.</summary>
    public string? Asked { get; init; }

    public string? Goal { get; init; }

    /// <summary>The layout that was found.</summary>
    public string? Layout { get; init; }

    /// <summary>The likely causes, the likeliest first.</summary>
    public IReadOnlyList<string> Causes { get; init; } = [];

    /// <summary>The cautions that were shown.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>What was confirmed.</summary>
    public IReadOnlyList<string> Confirmed { get; init; } = [];

    /// <summary>What was asked to be confirmed and could not be.</summary>
    public IReadOnlyList<string> NotConfirmed { get; init; } = [];

    /// <summary>How often a meter was put on.</summary>
    public int Touches { get; init; }

    /// <summary>Facts taken, also those that were replaced or retracted later.</summary>
    public int Facts { get; init; }

    /// <summary>Facts taken back.</summary>
    public int Retracted { get; init; }

    /// <summary>Events in the log.</summary>
    public int Events { get; init; }

    /// <summary>The last verdict.</summary>
    public string? Verdict { get; init; }
}
