namespace WireCoach.WebUi.Desk;

/// <summary>What the sessions of a span of time amount to.</summary>
public sealed record Figures
{
    public required int Sessions { get; init; }

    public required IReadOnlyList<Count> ByCause { get; init; }

    public required IReadOnlyList<Count> ByLayout { get; init; }

    public required IReadOnlyList<Count> ByStatus { get; init; }

    public required IReadOnlyList<Count> ByRole { get; init; }

    public required IReadOnlyList<Count> ByVerdict { get; init; }

    /// <summary>Cautions shown, and in how many sessions what was asked for them was confirmed.</summary>
    public required IReadOnlyList<CautionCount> Cautions { get; init; }

    /// <summary>Meter touches per session.</summary>
    public required Spread Touches { get; init; }

    /// <summary>Minutes from the first to the last event of a session.</summary>
    public required Spread Minutes { get; init; }

    /// <summary>Sessions that went on after "I can't".</summary>
    public required int NotConfirmed { get; init; }

    /// <summary>What came of asking a language model.</summary>
    public PhrasingFigures? Phrasing { get; init; }

    /// <summary>The same by the day, week or month in which sessions were opened, the earliest first.</summary>
    public IReadOnlyList<PeriodFigures> OverTime { get; init; } = [];
}

/// <summary>How often something occurred.</summary>
public sealed record Count(string Id, int Sessions);

/// <summary>In how many sessions a caution was shown, and in how many of them it was accepted.</summary>
public sealed record CautionCount(string Id, int Shown, int Accepted);

/// <summary>The middle and the far end of a figure over the sessions.</summary>
public sealed record Spread(double Mean, double Median, double Ninetieth);

/// <summary>The sessions that were opened in a day, a week or a month.</summary>
/// <param name="From">Its first day.</param>
/// <param name="Sessions">How many.</param>
/// <param name="Verified">How many of them ended with a motor that was run and found right.</param>
/// <param name="Referred">How many were handed over.</param>
/// <param name="Touches">The median of the meter touches; <see langword="null"/> without sessions.</param>
/// <param name="Minutes">The median of the minutes from the first to the last event.</param>
public sealed record PeriodFigures(DateOnly From, int Sessions, int Verified, int Referred, double? Touches, double? Minutes);
