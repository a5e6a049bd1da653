namespace WireCoach.Rules.Choosing;

/// <summary>Arithmetic of weights and of information.</summary>
public static class Weights
{
    /// <summary>ln of a sum of exponentials, without overflow; negative infinity for none.</summary>
    /// <param name="logs">Natural logarithms.</param>
    public static double LogSum(ReadOnlySpan<double> logs)
    {
        var top = double.NegativeInfinity;
        foreach (var log in logs)
        {
            top = Math.Max(top, log);
        }

        if (double.IsNegativeInfinity(top))
        {
            return top;
        }

        var sum = 0.0;
        foreach (var log in logs)
        {
            sum += Math.Exp(log - top);
        }

        return top + Math.Log(sum);
    }

    /// <summary>Log weights shifted so that their exponentials sum to one.</summary>
    /// <param name="logs">Natural logarithms, at least one of them finite.</param>
    public static double[] Normalized(ReadOnlySpan<double> logs)
    {
        var sum = LogSum(logs);
        var normalized = new double[logs.Length];
        for (var i = 0; i < logs.Length; i++)
        {
            normalized[i] = logs[i] - sum;
        }

        return normalized;
    }

    /// <summary>The entropy of a distribution in bits.</summary>
    /// <param name="probabilities">Zero or more each, summing to one.</param>
    public static double Bits(IEnumerable<double> probabilities)
    {
        ArgumentNullException.ThrowIfNull(probabilities);
        return Math.Max(0, probabilities.Sum(Surprise));
    }

    /// <summary>−p·log₂ p: what one possibility adds to the entropy, in bits.</summary>
    /// <param name="probability">0 to 1.</param>
    public static double Surprise(double probability) => probability > 0 ? -probability * Math.Log2(probability) : 0;
}
