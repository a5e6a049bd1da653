using System.Globalization;
using WireCoach.Rules.Language;

namespace WireCoach.Benchmarks.Learning;

/// <summary>Learns what symptoms and denials make of each other, by messages that nobody learnt from: on the odds that their words give, a logistic regression for each, held small.</summary>
internal sealed class RowsTogether
{
    private const double Least = 0.05;
    private const double Held = 6;
    private readonly double[][] _odds;
    private readonly double[][] _alone;
    private readonly bool[][] _told;
    private readonly double[][] _weights;

    /// <param name="odds">The logarithm of the odds of each row in each message.</param>
    /// <param name="told">Whether the message told it.</param>
    public RowsTogether(double[][] odds, bool[][] told)
    {
        (_odds, _told) = (odds, told);
        _alone = [.. odds.Select(row => row.Select(Beside.Chance).ToArray())];
        _weights = [.. Enumerable.Range(0, odds.Length).AsParallel().AsOrdered().Select(Fit)];
    }

    /// <summary>How likely each row of each message then is.</summary>
    public double[][] Chances() => [.. _odds.Select((row, at) => row.Select((_, message) => Beside.Chance(Odds(at, message, _weights[at]))).ToArray())];

    /// <summary>A row as it is kept.</summary>
    public string Written(int row, string[] names)
    {
        var others = names.Select((name, at) => (name, Weight: _weights[row][at])).Where(other => Math.Abs(other.Weight) >= Least);
        return string.Create(CultureInfo.InvariantCulture, $"- {{ id: {names[row]}, own: {_weights[row][^1]:0.00}, others: \"{string.Join(' ', others.Select(other => string.Create(CultureInfo.InvariantCulture, $"{other.name} {other.Weight:0.00}")))}\" }}");
    }

    private double[] Fit(int row) => Slope.Lowest(new double[_odds.Length + 1], weights =>
    {
        var (value, gradient) = (Held / 2 * weights.Sum(weight => weight * weight), weights.Select(weight => Held * weight).ToArray());
        for (var message = 0; message < _told[row].Length; message++)
        {
            var odds = Odds(row, message, weights);
            var told = _told[row][message];
            value += Slope.Miss(told ? odds : -odds);
            var pull = Beside.Chance(odds) - (told ? 1 : 0);
            gradient[^1] += pull;
            for (var other = 0; other < _odds.Length; other++)
            {
                gradient[other] += other == row ? 0 : pull * _alone[other][message];
            }
        }

        return (value, gradient);
    });

    private double Odds(int row, int message, double[] weights)
    {
        var sum = _odds[row][message] + weights[^1];
        for (var other = 0; other < _odds.Length; other++)
        {
            sum += other == row ? 0 : weights[other] * _alone[other][message];
        }

        return sum;
    }
}
