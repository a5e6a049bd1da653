namespace WireCoach.Rules.Choosing;

/// <summary>Weighted hypotheses about a hidden state: what may be the case, and how likely each is.</summary>
/// <typeparam name="T">A hypothesis.</typeparam>
/// <remarks>Weights are held as natural logarithms and always sum to one as probabilities. Immutable.</remarks>
public sealed class Belief<T>
{
    private readonly T[] _hypotheses;
    private readonly double[] _logWeights;
    private readonly double[] _probabilities;

    private Belief(T[] hypotheses, double[] logWeights)
    {
        _hypotheses = hypotheses;
        _logWeights = Weights.Normalized(logWeights);
        _probabilities = Array.ConvertAll(_logWeights, Math.Exp);
    }

    /// <summary>The hypotheses, in the order in which they were given.</summary>
    public IReadOnlyList<T> Hypotheses => _hypotheses;

    /// <summary>The probability of each hypothesis, 0 to 1, in the same order.</summary>
    public IReadOnlyList<double> Probabilities => _probabilities;

    /// <summary>A belief in hypotheses of these weights.</summary>
    /// <param name="hypotheses">Each with the natural logarithm of its weight on any common scale; negative infinity rules it out.</param>
    /// <exception cref="ArgumentException">There is none, or none is possible.</exception>
    public static Belief<T> Of(IEnumerable<(T Hypothesis, double LogWeight)> hypotheses)
    {
        ArgumentNullException.ThrowIfNull(hypotheses);
        var all = hypotheses.ToList();
        return all.Exists(one => double.IsFinite(one.LogWeight))
            ? new([.. all.Select(one => one.Hypothesis)], [.. all.Select(one => one.LogWeight)])
            : throw new ArgumentException("A belief needs at least one possible hypothesis.", nameof(hypotheses));
    }

    /// <summary>The belief after a piece of evidence; <see langword="null"/> when no hypothesis allows it.</summary>
    /// <param name="logLikelihood">ln P(evidence | hypothesis); negative infinity where it cannot be.</param>
    public Belief<T>? Given(Func<T, double> logLikelihood)
    {
        ArgumentNullException.ThrowIfNull(logLikelihood);
        var weights = new double[_logWeights.Length];
        var possible = false;
        for (var i = 0; i < weights.Length; i++)
        {
            weights[i] = _logWeights[i] + logLikelihood(_hypotheses[i]);
            possible |= double.IsFinite(weights[i]);
        }

        return possible ? new(_hypotheses, weights) : null;
    }

    /// <summary>The probability of all hypotheses of which something holds, 0 to 1.</summary>
    /// <param name="holds">What must hold.</param>
    public double Probability(Func<T, bool> holds)
    {
        ArgumentNullException.ThrowIfNull(holds);
        var sum = 0.0;
        for (var i = 0; i < _hypotheses.Length; i++)
        {
            sum += holds(_hypotheses[i]) ? _probabilities[i] : 0;
        }

        return Math.Min(sum, 1);
    }

    /// <summary>The decision classes by falling probability; equal ones in ordinal order.</summary>
    /// <param name="decision">The instruction that a hypothesis leads to; two hypotheses with one instruction need no test between them.</param>
    public IReadOnlyList<DecisionClass> Classes(Func<T, string> decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        var classes = new Dictionary<string, double>(StringComparer.Ordinal);
        for (var i = 0; i < _hypotheses.Length; i++)
        {
            var name = decision(_hypotheses[i]);
            classes[name] = classes.GetValueOrDefault(name) + _probabilities[i];
        }

        return [.. classes.Select(one => new DecisionClass(one.Key, Math.Min(one.Value, 1)))
            .OrderByDescending(one => one.Probability).ThenBy(one => one.Decision, StringComparer.Ordinal)];
    }

    /// <summary>How undecided the decision still is, in bits; 0 when all hypotheses lead to one instruction.</summary>
    /// <param name="decision">The instruction that a hypothesis leads to.</param>
    public double Entropy(Func<T, string> decision) => Weights.Bits(Classes(decision).Select(one => one.Probability));
}

/// <summary>All hypotheses that lead to the same instruction.</summary>
/// <param name="Decision">The instruction.</param>
/// <param name="Probability">0 to 1.</param>
public sealed record DecisionClass(string Decision, double Probability);
