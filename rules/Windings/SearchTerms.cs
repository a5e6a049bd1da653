namespace WireCoach.Rules.Windings;

/// <summary>What the meter may show over each kind of link.</summary>
internal sealed class SearchTerms
{
    public static readonly SearchTerms Nothing = new(0.5, 1, double.MaxValue);

    private const double LnOhmsRange = 12.4; // 0.02 Ω to 5 kΩ: where a figure may lie that has no ground at all
    private const double LnRoot2Pi = 0.91893853320467274;

    private const int Shows = 1 + (int)Showed.Anything;

    private readonly double _slipSpread;
    private readonly double[] _log = new double[Shows * (1 + (int)Link.Kick)];

    public SearchTerms(double kickSeen, double slipSpread, double protectorMost)
    {
        _slipSpread = slipSpread;
        LnProtectorMost = Math.Log(protectorMost);
        for (var at = 0; at < _log.Length; at++)
        {
            _log[at] = ((Link)(at / Shows), (Showed)(at % Shows)) switch
            {
                (Link.Open, Showed.Open) => 0,
                (Link.Ohms, Showed.Ohms or Showed.Beep) => 0,
                (Link.Kick, Showed.Kick) => Math.Log(kickSeen),
                (Link.Kick, Showed.Open) => Math.Log(1 - kickSeen),
                (Link.Ohms, Showed.NotOpen) => 0,
                (_, Showed.Anything) => 0,
                _ => double.NegativeInfinity,
            };
        }
    }

    /// <summary>ln of the ohms above which nothing is a protector.</summary>
    public double LnProtectorMost { get; }

    /// <summary>ln of the density in the middle of a bell.</summary>
    /// <param name="deviation">Its deviation.</param>
    public static double LogOfPeak(double deviation) => -Math.Log(deviation) - LnRoot2Pi;

    /// <summary>ln of the density of a mistaken figure's logarithm.</summary>
    /// <param name="off">How far it is from what is really there, as a logarithm; <see langword="null"/> where there is nothing.</param>
    public double LogOfMistake(double? off) =>
        off is { } far ? -(0.5 * far * far / (_slipSpread * _slipSpread)) - Math.Log(_slipSpread) - LnRoot2Pi : -Math.Log(LnOhmsRange);

    /// <summary>ln of how likely the meter shows this over that.</summary>
    public double LogOf(Link link, Showed showed) => _log[((int)link * Shows) + (int)showed];
}
