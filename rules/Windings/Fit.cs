namespace WireCoach.Rules.Windings;

/// <summary>How well readings in ohms go with a pattern, whatever its unknown resistances are.</summary>
/// <remarks>
/// Works in logarithms. Each unknown has a broad bell around its usual range, ratios of unknowns likewise; the readings are bells of the
/// meter's width. The unknowns are fitted by Gauss and Newton and integrated out by Laplace's method, so that equalities and ratios count
/// and absolute ohms hardly do.
/// </remarks>
internal sealed class Fit
{
    private const double LongestStep = 1;
    private const double Close = 5e-3; // the next step would be its square, which is small against the error of any meter

    private readonly double[][] _formulas;
    private readonly int[] _only;
    private readonly double[] _lnFactor;
    private readonly KnownRatio[] _ratios;
    private readonly FitPrior _before;
    private readonly double[] _prior;
    private readonly double[] _mean;
    private readonly double[] _hessian;
    private readonly double[] _step;
    private readonly double[] _shares;
    private readonly bool[] _guessed;

    public Fit(Pattern pattern)
    {
        _formulas = pattern.Formulas;
        (_only, _lnFactor) = (pattern.OnlyUnknown, pattern.LnFactor);
        _ratios = pattern.Ratios;
        _before = pattern.Before;
        (_prior, _mean) = (_before.Matrix, _before.Mean);
        Size = pattern.Unknowns.Length;
        Values = new double[Size];
        _hessian = new double[Size * Size];
        _step = new double[Size];
        _shares = new double[Size];
        _guessed = new bool[Size];
    }

    /// <summary>How many unknowns there are.</summary>
    public int Size { get; }

    /// <summary>The natural logarithms of the unknowns after the last fit.</summary>
    public double[] Values { get; }

    /// <summary>The greatest distance of a reading from what the fit predicts, in standard deviations, after the last fit.</summary>
    public double Worst { get; private set; }

    /// <summary>ln of the density of the readings' logarithms against that of figures that are just right and of which nothing else was known.</summary>
    /// <param name="count">How many readings.</param>
    /// <param name="formulas">The formula of each.</param>
    /// <param name="lnOhms">The logarithm of each.</param>
    /// <param name="lnErrors">The standard deviation of each logarithm.</param>
    public double LogEvidence(int count, ReadOnlySpan<int> formulas, ReadOnlySpan<double> lnOhms, ReadOnlySpan<double> lnErrors)
    {
        Worst = 0;
        if (count == 0)
        {
            Array.Copy(_mean, Values, Size);
            return 0;
        }

        Start(count, formulas, lnOhms);
        var determinant = 0.0;
        for (var round = 0; round < 12; round++)
        {
            determinant = Step(count, formulas, lnOhms, lnErrors, out var moved, out var plain);
            if (moved < Close || (plain && moved < LongestStep))
            {
                break; // Where each reading is one unknown the first step is exact.
            }
        }

        return 0.5 * (_before.LogDeterminant - determinant) - (0.5 * Misfit(count, formulas, lnOhms, lnErrors)) - OutsideRange();
    }

    /// <summary>The ln of what a formula gives.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="lnOhms">ln of the unknowns.</param>
    public double LnPredicted(int formula, double[] lnOhms) => _only[formula] is var only and >= 0 ? lnOhms[only] + _lnFactor[formula] : LnSum(_formulas[formula], lnOhms);

    private void Start(int count, ReadOnlySpan<int> formulas, ReadOnlySpan<double> lnOhms)
    {
        Array.Copy(_mean, Values, Size);
        _guessed.AsSpan().Clear();
        for (var reading = 0; reading < count; reading++)
        {
            if (_only[formulas[reading]] < 0)
            {
                Guess(_before.Shares[formulas[reading]], lnOhms[reading]);
            }
        }

        // A formula of one unknown says it outright, so it overrules the guesses from sums.
        for (var reading = 0; reading < count; reading++)
        {
            if (_only[formulas[reading]] is var only and >= 0)
            {
                Values[only] = lnOhms[reading] - _lnFactor[formulas[reading]];
            }
        }
    }

    /// <summary>Splits a sum as it would be split if all were as usual.</summary>
    private void Guess(double[] lnShares, double lnOhms)
    {
        for (var unknown = 0; unknown < Size; unknown++)
        {
            if (!double.IsNegativeInfinity(lnShares[unknown]))
            {
                var guess = lnOhms + lnShares[unknown];
                Values[unknown] = _guessed[unknown] ? Math.Min(Values[unknown], guess) : guess;
                _guessed[unknown] = true;
            }
        }
    }

    private double Step(int count, ReadOnlySpan<int> formulas, ReadOnlySpan<double> lnOhms, ReadOnlySpan<double> lnErrors, out double moved, out bool plain)
    {
        plain = true;
        Array.Copy(_prior, _hessian, _prior.Length);
        for (var row = 0; row < Size; row++)
        {
            _step[row] = 0;
            for (var column = 0; column < Size; column++)
            {
                _step[row] -= _prior[(row * Size) + column] * (Values[column] - _mean[column]);
            }
        }

        for (var reading = 0; reading < count; reading++)
        {
            var weight = 1 / (lnErrors[reading] * lnErrors[reading]);
            if (_only[formulas[reading]] is var only and >= 0)
            {
                _step[only] += weight * (lnOhms[reading] - Values[only] - _lnFactor[formulas[reading]]);
                _hessian[(only * Size) + only] += weight;
                continue;
            }

            plain = false;
            Sum(_formulas[formulas[reading]], lnOhms[reading], weight);
        }

        var determinant = FitPrior.Factor(_hessian, Size);
        FitPrior.SolveInPlace(_hessian, _step, Size);
        moved = 0;
        for (var unknown = 0; unknown < Size; unknown++)
        {
            var by = Math.Clamp(_step[unknown], -LongestStep, LongestStep);
            Values[unknown] += by;
            moved = Math.Max(moved, Math.Abs(by));
        }

        return determinant;
    }

    /// <summary>What a reading adds that is a sum of several unknowns.</summary>
    private void Sum(double[] factors, double lnOhms, double weight)
    {
        var predicted = LnSum(factors, Values);
        for (var unknown = 0; unknown < Size; unknown++)
        {
            _shares[unknown] = factors[unknown] > 0 ? factors[unknown] * Math.Exp(Values[unknown] - predicted) : 0;
        }

        for (var row = 0; row < Size; row++)
        {
            _step[row] += weight * _shares[row] * (lnOhms - predicted);
            for (var column = 0; column < Size; column++)
            {
                _hessian[(row * Size) + column] += weight * _shares[row] * _shares[column];
            }
        }
    }

    private double Misfit(int count, ReadOnlySpan<int> formulas, ReadOnlySpan<double> lnOhms, ReadOnlySpan<double> lnErrors)
    {
        var sum = 0.0;
        for (var row = 0; row < Size; row++)
        {
            for (var column = 0; column < Size; column++)
            {
                sum += _prior[(row * Size) + column] * (Values[row] - _mean[row]) * (Values[column] - _mean[column]);
            }
        }

        for (var reading = 0; reading < count; reading++)
        {
            var off = (lnOhms[reading] - LnPredicted(formulas[reading], Values)) / lnErrors[reading];
            Worst = Math.Max(Worst, Math.Abs(off));
            sum += off * off;
        }

        return sum;
    }

    /// <summary>What ratios cost that lie outside the range in which they are met: the bells are too wide at their feet.</summary>
    private double OutsideRange()
    {
        var cost = 0.0;
        foreach (var ratio in _ratios)
        {
            var ln = Values[ratio.Of] - Values[ratio.To];
            var outside = Math.Max(Math.Max(ratio.LnLow - ln, ln - ratio.LnHigh), 0) / ratio.Tail;
            cost += outside * outside;
        }

        foreach (var (unknown, usual) in _before.Narrow)
        {
            var outside = Math.Max(Values[unknown] - usual.LnHigh, 0) / usual.Tail;
            cost += outside * outside;
        }

        return cost;
    }

    private static double LnSum(double[] factors, double[] lnOhms)
    {
        var sum = 0.0;
        for (var unknown = 0; unknown < factors.Length; unknown++)
        {
            sum += factors[unknown] > 0 ? factors[unknown] * Math.Exp(lnOhms[unknown]) : 0;
        }

        return Math.Log(Math.Max(sum, 1e-6));
    }
}
