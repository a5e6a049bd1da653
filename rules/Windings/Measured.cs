namespace WireCoach.Rules.Windings;

/// <summary>What a meter showed.</summary>
internal enum Showed
{
    /// <summary>Over-range.</summary>
    Open,

    /// <summary>Moved, then over-range; or a steady figure far above any winding.</summary>
    Kick,

    /// <summary>Steady ohms.</summary>
    Ohms,

    /// <summary>A beep without a figure.</summary>
    Beep,

    /// <summary>Open, as it was said, but it is not believed: there is a path.</summary>
    NotOpen,

    /// <summary>A figure or a kick that is not believed: anything may be there.</summary>
    Anything,
}

/// <summary>A reading between two leads as the search uses it.</summary>
/// <param name="Index">Its place among the readings that came in.</param>
/// <param name="First">A lead's number, the lower.</param>
/// <param name="Second">Another lead's number, the higher.</param>
/// <param name="Showed">What the meter showed.</param>
/// <param name="Ohms">The figure without the test leads.</param>
/// <param name="Error">One standard deviation of the figure in ohms.</param>
internal sealed record Measured(int Index, int First, int Second, Showed Showed, double Ohms, double Error)
{
    /// <summary>ln of the ohms.</summary>
    public double LnOhms { get; } = Math.Log(Math.Max(Ohms, Error / 2));

    /// <summary>Whether a figure was shown that is not believed.</summary>
    public bool Mistaken { get; init; }

    /// <summary>One standard deviation of <see cref="LnOhms"/>.</summary>
    public double LnError { get; } = Showed == Showed.Ohms ? Math.Max(Error / Math.Max(Ohms, Error), 1e-4) : 1;

    /// <summary>Whether the meter found a path.</summary>
    public bool Conducts => Showed is Showed.Ohms or Showed.Beep;

    public bool Touches(int lead) => First == lead || Second == lead;
}
