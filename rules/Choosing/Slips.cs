namespace WireCoach.Rules.Choosing;

/// <summary>Finds the one piece of evidence that does not go with the rest.</summary>
public static class Slips
{
    /// <summary>The evidence whose removal helps the best hypothesis most; <see langword="null"/> when no single one would help enough.</summary>
    /// <typeparam name="T">A hypothesis.</typeparam>
    /// <typeparam name="TEvidence">A piece of evidence.</typeparam>
    /// <param name="hypotheses">Each with the natural logarithm of its weight before the evidence.</param>
    /// <param name="evidence">The evidence.</param>
    /// <param name="logLikelihood">ln P(evidence | hypothesis).</param>
    /// <param name="logSlip">ln of P(a slip) × P(this evidence | a slip): what it costs to disbelieve one piece.</param>
    public static Slip<TEvidence>? Best<T, TEvidence>(
        IReadOnlyList<(T Hypothesis, double LogWeight)> hypotheses,
        IReadOnlyList<TEvidence> evidence,
        Func<T, TEvidence, double> logLikelihood,
        double logSlip)
    {
        ArgumentNullException.ThrowIfNull(hypotheses);
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(logLikelihood);
        var without = double.NegativeInfinity;
        var with = new double[evidence.Count];
        Array.Fill(with, double.NegativeInfinity);
        foreach (var (hypothesis, weight) in hypotheses)
        {
            var each = evidence.Select(one => logLikelihood(hypothesis, one)).ToArray();
            var impossible = each.Count(double.IsNegativeInfinity);
            var sum = each.Where(double.IsFinite).Sum();
            without = Math.Max(without, impossible == 0 ? weight + sum : double.NegativeInfinity);
            for (var i = 0; i < each.Length; i++)
            {
                var rest = double.IsFinite(each[i]) ? (impossible == 0 ? sum - each[i] : double.NegativeInfinity)
                    : impossible == 1 ? sum : double.NegativeInfinity;
                with[i] = Math.Max(with[i], weight + rest + logSlip);
            }
        }

        var at = evidence.Count == 0 ? -1 : Array.IndexOf(with, with.Max());
        return at >= 0 && with[at] > without ? new(evidence[at], with[at] - without) : null;
    }
}

/// <summary>A piece of evidence that is better disbelieved.</summary>
/// <typeparam name="TEvidence">A piece of evidence.</typeparam>
/// <param name="Evidence">The piece.</param>
/// <param name="LogGain">How much better the best story becomes without it, as a natural logarithm; infinite when no story holds with it.</param>
public sealed record Slip<TEvidence>(TEvidence Evidence, double LogGain);
