namespace WireCoach.Rules.Quantities;

/// <summary>How far figures that should be alike are apart.</summary>
internal static class Spread
{
    /// <summary>The greatest deviation from their mean, in percent of it.</summary>
    public static double Percent(IReadOnlyList<double> values) => 100 * values.Max(value => Math.Abs(value - values.Average())) / values.Average();
}
