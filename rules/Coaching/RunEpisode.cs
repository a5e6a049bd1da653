using WireCoach.Rules.Cases;

namespace WireCoach.Rules.Coaching;

/// <summary>One start and what was read of it, until the motor was made safe again.</summary>
/// <param name="Outcome">What it did; <see langword="null"/> when only figures were given.</param>
/// <param name="Volts">Volts at the motor.</param>
/// <param name="Amps">Amps in a line.</param>
/// <param name="Rpm">Shaft speed.</param>
/// <param name="Direction"><c>right</c>, <c>wrong</c>, <c>clockwise</c> or <c>counterclockwise</c>.</param>
/// <param name="Celsius">Frame temperature.</param>
internal sealed record RunEpisode(string? Outcome, double? Volts, double? Amps, double? Rpm, string? Direction, double? Celsius)
{
    private const int AllLines = 3;

    /// <summary>When it was started; <see langword="null"/> where the facts carry no time.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Amps that were read line by line beside <see cref="Amps"/>, in their order.</summary>
    public IReadOnlyList<double> Others { get; init; } = [];

    /// <summary>Amps of all three lines; <see langword="null"/> until they were read.</summary>
    public IReadOnlyList<double>? Lines => Others.Count >= AllLines ? [.. Others.TakeLast(AllLines)]
        : Others.Count == AllLines - 1 && Amps is { } first ? [first, .. Others]
        : null;

    /// <summary>Whether the motor turned.</summary>
    public bool Turned => Outcome is "ran" or "slow" || (Outcome is null && (Rpm > 0 || Direction is not null || Amps is not null));

    public RunEpisode With(Fact.Running running) => new(
        running.Outcome ?? Outcome, running.Volts ?? Volts, running.Amps ?? Amps, running.Rpm ?? Rpm, running.Direction ?? Direction, running.Celsius ?? Celsius)
    {
        At = At ?? running.At,
        Others = Others,
    };

    public RunEpisode With(Fact.BenchTest test) => test switch
    {
        { Test: "line-currents", Value: { } amps } => this with { Others = [.. Others, amps] },
        { Test: "frame-heat", Value: { } celsius } => this with { Celsius = celsius },
        _ => this,
    };
}

/// <summary>Cuts the running facts of a case into starts.</summary>
internal static class RunEpisodes
{
    public static IReadOnlyList<RunEpisode> Of(CaseFile file)
    {
        var episodes = new List<RunEpisode>();
        var open = false;
        foreach (var fact in file.Facts)
        {
            switch (fact)
            {
                case Fact.Running running when open:
                    episodes[^1] = episodes[^1].With(running);
                    break;
                case Fact.Running running:
                    episodes.Add(new RunEpisode(null, null, null, null, null, null).With(running));
                    open = true;
                    break;
                case Fact.BenchTest test when open:
                    episodes[^1] = episodes[^1].With(test);
                    break;
                case Fact.Confirm { Id: "isolated", Confirmed: true }:
                    open = false;
                    break;
                default:
                    break;
            }
        }

        return episodes;
    }
}
