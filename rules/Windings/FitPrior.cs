namespace WireCoach.Rules.Windings;

/// <summary>What is known of a pattern's unknown resistances before anything is read, worked out once for each pattern.</summary>
internal sealed class FitPrior
{
    private const double RangeToDeviation = 0.288675134594812882; // 1/√12: the deviation of a flat range of width one

    private readonly int _size;

    public FitPrior(Pattern pattern)
    {
        _size = pattern.Unknowns.Length;
        Narrow = [.. pattern.Unknowns.Select((usual, unknown) => (unknown, usual)).Where(one => one.usual.Group == PatternNetwork.Protector)];
        Protectors = [.. pattern.Unknowns.Select((usual, unknown) => (unknown, usual)).Where(one => one.usual.Group is PatternNetwork.Protector or "protector" or "protector-2").Select(one => one.unknown)];
        Matrix = new double[_size * _size];
        var pull = new double[_size];
        for (var unknown = 0; unknown < _size; unknown++)
        {
            var usual = pattern.Unknowns[unknown];
            Bell(pull, unknown, -1, usual.LnLow, usual.LnHigh, usual.Tail);
        }

        foreach (var ratio in pattern.Ratios)
        {
            Bell(pull, ratio.Of, ratio.To, ratio.LnLow, ratio.LnHigh, ratio.Tail);
        }

        var factored = (double[])Matrix.Clone();
        LogDeterminant = -2 * Math.Log(Factor(factored, _size));
        Mean = Solved(factored, pull, _size);
        Shares = Array.ConvertAll(pattern.Formulas, UsualShares);
    }

    /// <summary>The inverse of the covariance of the unknowns' logarithms, row by row.</summary>
    public double[] Matrix { get; }

    /// <summary>The mean of the unknowns' logarithms.</summary>
    public double[] Mean { get; }

    /// <summary>ln of the determinant of <see cref="Matrix"/>.</summary>
    public double LogDeterminant { get; }

    /// <summary>By formula: ln of the usual share of each unknown in the sum, its factor taken off.</summary>
    public double[][] Shares { get; }

    /// <summary>Unknowns whose usual range is a limit.</summary>
    public (int Unknown, Unknown Usual)[] Narrow { get; }

    /// <summary>Unknowns that are a protector's.</summary>
    public int[] Protectors { get; }

    private double[] UsualShares(double[] factors)
    {
        var whole = Math.Log(Math.Max(factors.Select((factor, unknown) => factor > 0 ? factor * Math.Exp(Mean[unknown]) : 0).Sum(), 1e-12));
        return [.. factors.Select((factor, unknown) => factor > 0 ? Mean[unknown] - whole : double.NegativeInfinity)];
    }

    private void Bell(double[] pull, int of, int to, double low, double high, double tail)
    {
        var deviation = Math.Sqrt(Math.Pow((high - low) * RangeToDeviation, 2) + (tail * tail));
        var weight = 1 / (deviation * deviation);
        var middle = (low + high) / 2;
        Matrix[(of * _size) + of] += weight;
        pull[of] += weight * middle;
        if (to >= 0)
        {
            Matrix[(to * _size) + to] += weight;
            Matrix[(of * _size) + to] -= weight;
            Matrix[(to * _size) + of] -= weight;
            pull[to] -= weight * middle;
        }
    }

    /// <summary>Cholesky in place, the reciprocals on the diagonal; gives one over the root of the determinant.</summary>
    public static double Factor(double[] matrix, int size)
    {
        var product = 1.0;
        for (var row = 0; row < size; row++)
        {
            var own = matrix.AsSpan(row * size, size);
            for (var column = 0; column < row; column++)
            {
                own[column] = (own[column] - Product(own, matrix.AsSpan(column * size, size), column)) * matrix[(column * size) + column];
            }

            own[row] = 1 / Math.Sqrt(Math.Max(own[row] - Product(own, own, row), 1e-12));
            product *= own[row];
        }

        return product;
    }

    private static double Product(ReadOnlySpan<double> one, ReadOnlySpan<double> other, int count)
    {
        var sum = 0.0;
        for (var at = 0; at < count; at++)
        {
            sum += one[at] * other[at];
        }

        return sum;
    }

    private static double[] Solved(double[] factored, double[] right, int size)
    {
        var solution = (double[])right.Clone();
        SolveInPlace(factored, solution, size);
        return solution;
    }

    /// <summary>Solves with what <see cref="Factor"/> left.</summary>
    public static void SolveInPlace(double[] factored, double[] right, int size)
    {
        for (var row = 0; row < size; row++)
        {
            for (var k = 0; k < row; k++)
            {
                right[row] -= factored[(row * size) + k] * right[k];
            }

            right[row] *= factored[(row * size) + row];
        }

        for (var row = size - 1; row >= 0; row--)
        {
            for (var k = row + 1; k < size; k++)
            {
                right[row] -= factored[(k * size) + row] * right[k];
            }

            right[row] *= factored[(row * size) + row];
        }
    }
}
