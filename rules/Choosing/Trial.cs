namespace WireCoach.Rules.Choosing;

/// <summary>A test that could be made: what may come out of it under each hypothesis, and what it costs.</summary>
/// <typeparam name="T">A hypothesis.</typeparam>
public sealed record Trial<T>
{
    /// <summary>A stable id; the last tie-break is its ordinal order.</summary>
    public required string Id { get; init; }

    /// <summary>What it costs on any positive scale: seconds of a person's time, and tools to fetch.</summary>
    public required double Cost { get; init; }

    /// <summary>What may come out, each once.</summary>
    public required IReadOnlyList<string> Outcomes { get; init; }

    /// <summary>P(outcome | hypothesis) for the outcome at an index of <see cref="Outcomes"/>; over all outcomes it sums to one.</summary>
    public required Func<T, int, double> Probability { get; init; }

    /// <summary>Among tests that tell equally much for their cost the lowest goes first: short instructions, leads that are already in the hand.</summary>
    public int Order { get; init; }
}

/// <summary>A test that was chosen.</summary>
/// <typeparam name="T">A hypothesis.</typeparam>
/// <param name="Trial">The test.</param>
/// <param name="Bits">The expected fall of the entropy of the decision by this test alone, in bits.</param>
/// <param name="BitsPerCost">The same for its cost, or for its and the following tests' cost when it was looked further ahead.</param>
public sealed record Choice<T>(Trial<T> Trial, double Bits, double BitsPerCost);
