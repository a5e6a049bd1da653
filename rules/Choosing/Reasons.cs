namespace WireCoach.Rules.Choosing;

/// <summary>Says from the numbers what speaks for a hypothesis and what against it.</summary>
public static class Reasons
{
    /// <summary>The evidence by how strongly it tells two hypotheses apart: what speaks for the first comes first, what speaks against it last.</summary>
    /// <typeparam name="T">A hypothesis.</typeparam>
    /// <typeparam name="TEvidence">A piece of evidence.</typeparam>
    /// <param name="top">The hypothesis in question.</param>
    /// <param name="rival">The one that it is held against.</param>
    /// <param name="evidence">The evidence.</param>
    /// <param name="logLikelihood">ln P(evidence | hypothesis).</param>
    /// <param name="least">Ratios nearer to zero than this tell nothing and are left out; a natural logarithm, 0 or more.</param>
    public static IReadOnlyList<Reason<TEvidence>> Of<T, TEvidence>(
        T top, T rival, IReadOnlyList<TEvidence> evidence, Func<T, TEvidence, double> logLikelihood, double least = 0.1)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(logLikelihood);
        return [.. evidence
            .Select(one => new Reason<TEvidence>(one, Ratio(logLikelihood(top, one), logLikelihood(rival, one))))
            .Where(reason => Math.Abs(reason.LogRatio) > least)
            .OrderByDescending(reason => reason.LogRatio)];
    }

    private static double Ratio(double top, double rival) =>
        double.IsNegativeInfinity(top) && double.IsNegativeInfinity(rival) ? 0 : top - rival;
}

/// <summary>A piece of evidence and how it weighs.</summary>
/// <typeparam name="TEvidence">A piece of evidence.</typeparam>
/// <param name="Evidence">The piece.</param>
/// <param name="LogRatio">ln of P(evidence | the hypothesis) over P(evidence | its rival); positive speaks for it.</param>
public sealed record Reason<TEvidence>(TEvidence Evidence, double LogRatio)
{
    /// <summary>Whether it speaks for the hypothesis.</summary>
    public bool SpeaksFor => LogRatio > 0;
}
