using WireCoach.Rules.Cases;

namespace WireCoach.WebUi.Desk;

/// <summary>What a session is opened with.</summary>
public sealed record NewSession
{
    /// <summary>Who sits at the other end; needed.</summary>
    public Role? Role { get; init; }

    /// <summary>Which codes, units and supplies apply; needed.</summary>
    public Region? Region { get; init; }

    /// <summary>Ids of the instruments within reach.</summary>
    public IReadOnlyList<string>? Instruments { get; init; }

    /// <summary>Initials or a name, for the shop's own log.</summary>
    public string? Who { get; init; }

    /// <summary>The shop's name for this very motor.</summary>
    public string? MotorTag { get; init; }

    /// <summary>The first words.</summary>
    public string? Text { get; init; }

    /// <summary>The plate by field, in camelCase.</summary>
    public IReadOnlyDictionary<string, PlateValue>? Motor { get; init; }

    /// <summary>A simulated motor instead of a real one.</summary>
    public PracticeChoice? Practice { get; init; }
}

/// <summary>Which motor to simulate.</summary>
/// <param name="Layout">A layout id; <see langword="null"/> lets the seed choose.</param>
/// <param name="Fault">A fault's id; <see langword="null"/> for a sound motor.</param>
/// <param name="Seed">The same seed gives the same motor; <see langword="null"/> lets the service draw one.</param>
/// <param name="Meter">How good its ohmmeter is: <c>good</c>, <c>fair</c> or <c>cheap</c>; <see langword="null"/> for a cheap one.</param>
public sealed record PracticeChoice(string? Layout = null, string? Fault = null, int? Seed = null, string? Meter = null);

/// <summary>A manager's verdict.</summary>
/// <param name="Verdict"><c>ok</c>, <c>redo</c> or <c>note</c>.</param>
/// <param name="Note">In the manager's words.</param>
/// <param name="Who">Who judged.</param>
public sealed record NewReview(string? Verdict, string? Note = null, string? Who = null);
