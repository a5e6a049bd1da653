namespace WireCoach.Rules.Windings;

/// <summary>How well readings in ohms go with a pattern, whatever its unknown resistances are.</summary>
/// <remarks>
/// Works in logarithms. Each unknown has a broad bell around its usual range, ratios of unknowns likewise; the readings are bells of the
/// meter's width. The unknowns are fitted by Newton's method and integrated out by Laplace's, so that equalities and ratios count and
/// absolute ohms hardly do. Where a sum comes out too great the bend of its logarithm is counted: without it an unknown that should be
/// next to nothing is thrown to and fro for ever.
/// </remarks>
internal sealed class Fit
{
    private const double LongestStep = 1;
    private const double Close = 0.02; // the next step would be about its square, which is small against the error of any meter
    private const int MostSteps = 12;
    private const double LeastOhms = 1e-6;

    private readonly (int Unknown, double Factor)[][] _formulas;
    private readonly int[] _only;
    private readonly double[] _lnFactor;
    private readonly KnownRatio[] _ratios;
    private readonly FitPrior _before;
    private readonly double[] _prior;
    private readonly double[] _mean;
    private readonly double[] _hessian;
    private readonly double[] _step;
    private readonly double[] _ohms;
    private readonly double[] _shares;

    public Fit(Pattern pattern)
    {
        _formulas = pattern.Terms;
        (_only, _lnFactor) = (pattern.OnlyUnknown, pattern.LnFactor);
        _ratios = pattern.Ratios;
        _before = pattern.Before;
        (_prior, _mean) = (_before.Matrix, _before.Mean);
        Size = pattern.Unknowns.Length;
        Values = new double[Size];
        _hessian = new double[Size * Size];
        _step = new double[Size];
        _ohms = new double[Size];
        _shares = new double[Size];
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
    /// <param name="before">A fit of some of the readings, from which to go on; <see langword="null"/> for none.</param>
    public double LogEvidence(int count, ReadOnlySpan<int> formulas, ReadOnlySpan<double> lnOhms, ReadOnlySpan<double> lnErrors, Fitted? before)
    {
        Worst = 0;
        if (count == 0)
        {
            Array.Copy(_mean, Values, Size);
            return 0;
        }

        Start(count, formulas, lnOhms, before);
        var root = 1.0;
        for (var round = 0; round < MostSteps; round++)
        {
            var plain = Slope(count, formulas, lnOhms, lnErrors);
            root = FitPrior.Factor(_hessian, Size);
            if (Step() is var moved && (moved < Close || (plain && moved < LongestStep)))
            {
                break; // Where each reading is one unknown the first step is exact.
            }
        }

        return (0.5 * _before.LogDeterminant) + Math.Log(root) - (0.5 * Misfit(count, formulas, lnOhms, lnErrors)) - OutsideRange();
    }

    /// <summary>The ln of what a formula gives.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="lnOhms">ln of the unknowns.</param>
    public double LnPredicted(int formula, double[] lnOhms)
    {
        if (_only[formula] is var only and >= 0)
        {
            return lnOhms[only] + _lnFactor[formula];
        }

        var sum = 0.0;
        foreach (var (unknown, factor) in _formulas[formula])
        {
            sum += factor * Math.Exp(lnOhms[unknown]);
        }

        return Math.Log(Math.Max(sum, LeastOhms));
    }

    private void Start(int count, ReadOnlySpan<int> formulas, ReadOnlySpan<double> lnOhms, Fitted? before)
    {
        var known = before?.Unknowns ?? 0;
        for (var unknown = 0; unknown < Size; unknown++)
        {
            Values[unknown] = (known & (1 << unknown)) != 0 ? before!.LnOhms[unknown] : _mean[unknown];
        }

        var guessed = 0;
        for (var reading = 0; reading < count; reading++)
        {
            if (_only[formulas[reading]] < 0)
            {
                Guess(formulas[reading], lnOhms[reading], known, ref guessed);
            }
        }

        // A formula of one unknown says it outright, so it overrules the guesses from sums.
        for (var reading = 0; reading < count; reading++)
        {
            if (_only[formulas[reading]] is var only and >= 0 && (known & (1 << only)) == 0)
            {
                Values[only] = lnOhms[reading] - _lnFactor[formulas[reading]];
            }
        }
    }

    /// <summary>Splits a sum as it would be split if all were as usual.</summary>
    private void Guess(int formula, double lnOhms, int known, ref int guessed)
    {
        foreach (var (unknown, _) in _formulas[formula])
        {
            var bit = 1 << unknown;
            if ((known & bit) == 0)
            {
                var guess = lnOhms + _before.Shares[formula][unknown];
                Values[unknown] = (guessed & bit) != 0 ? Math.Min(Values[unknown], guess) : guess;
                guessed |= bit;
            }
        }
    }

    /// <summary>The matrix of the next step and its right side where the unknowns stand now; says whether each reading is one unknown.</summary>
    private bool Slope(int count, ReadOnlySpan<int> formulas, ReadOnlySpan<double> lnOhms, ReadOnlySpan<double> lnErrors)
    {
        FromPrior();
        var plain = true;
        for (var reading = 0; reading < count; reading++)
        {
            var formula = formulas[reading];
            var weight = 1 / (lnErrors[reading] * lnErrors[reading]);
            if (_only[formula] is var only and >= 0)
            {
                _step[only] += weight * (lnOhms[reading] - Values[only] - _lnFactor[formula]);
                _hessian[(only * Size) + only] += weight;
                continue;
            }

            plain = false;
            Sum(_formulas[formula], lnOhms[reading], weight);
        }

        return plain;
    }

    /// <summary>What is known beforehand; gives its squares.</summary>
    private double FromPrior()
    {
        _prior.AsSpan().CopyTo(_hessian);
        var squares = 0.0;
        for (var row = 0; row < Size; row++)
        {
            var pull = 0.0;
            for (var column = 0; column < Size; column++)
            {
                pull += _prior[(row * Size) + column] * (Values[column] - _mean[column]);
            }

            _step[row] = -pull;
            squares += pull * (Values[row] - _mean[row]);
            _ohms[row] = Math.Exp(Values[row]);
        }

        return squares;
    }

    /// <summary>What a reading adds that is a sum of several unknowns.</summary>
    private void Sum((int Unknown, double Factor)[] terms, double lnOhms, double weight)
    {
        var sum = Ohms(terms);
        var (off, part) = (lnOhms - Math.Log(sum), 1 / sum);
        var bend = Math.Max(-off, 0);
        for (var one = 0; one < terms.Length; one++)
        {
            var (row, factor) = terms[one];
            var share = _shares[one] = factor * _ohms[row] * part;
            var weighed = weight * share;
            _step[row] += weighed * off;
            _hessian[(row * Size) + row] += weighed * (share + (bend * (1 - share)));
            for (var other = 0; other < one; other++)
            {
                // Only the lower half is looked at, and terms are in the order of the unknowns.
                _hessian[(row * Size) + terms[other].Unknown] += weighed * _shares[other] * (1 - bend);
            }
        }
    }

    private double Ohms((int Unknown, double Factor)[] terms)
    {
        var sum = 0.0;
        foreach (var (unknown, factor) in terms)
        {
            sum += factor * _ohms[unknown];
        }

        return Math.Max(sum, LeastOhms);
    }

    /// <summary>The squares of what is off after the last step.</summary>
    private double Misfit(int count, ReadOnlySpan<int> formulas, ReadOnlySpan<double> lnOhms, ReadOnlySpan<double> lnErrors)
    {
        var squares = FromPrior();
        for (var reading = 0; reading < count; reading++)
        {
            var formula = formulas[reading];
            var ln = _only[formula] is var only and >= 0 ? Values[only] + _lnFactor[formula] : Math.Log(Ohms(_formulas[formula]));
            var off = (lnOhms[reading] - ln) / lnErrors[reading];
            Worst = Math.Max(Worst, Math.Abs(off));
            squares += off * off;
        }

        return squares;
    }

    /// <summary>Goes one step; gives how far it went.</summary>
    private double Step()
    {
        FitPrior.SolveInPlace(_hessian, _step, Size);
        var moved = 0.0;
        for (var unknown = 0; unknown < Size; unknown++)
        {
            var by = Math.Clamp(_step[unknown], -LongestStep, LongestStep);
            Values[unknown] += by;
            moved = Math.Max(moved, Math.Abs(by));
        }

        return moved;
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
}
