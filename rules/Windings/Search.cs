namespace WireCoach.Rules.Windings;

/// <summary>Lays leads on the terminals of one pattern, one after another, as far as the readings allow it. Leads that no reading touches are left out, being all alike.</summary>
/// <remarks>Keeps its scratch space from run to run; one for each pattern of an identification.</remarks>
internal sealed class Search
{
    private const double Hopeless = 4.5;
    private const double Rounding = 1e-3;
    private const double Slack = 2; // what the approximation of the fit may be off
    private const double Least = 0.03;
    private const int MostKept = 20_000;
    private const int IndexBits = 6;
    private static readonly double[] Ln = [.. Enumerable.Range(0, 64).Select(count => Math.Log(count))];

    private SearchPlan _plan = SearchPlan.Nothing;
    private SearchTerms _terms = SearchTerms.Nothing;
    private Harvest? _harvest;
    private Naming? _naming;
    private readonly int[] _terminalOf;
    private readonly int[] _usedMask;
    private readonly int[] _freeOfClass;
    private readonly Fit _fit;
    private readonly double[] _saidLn;
    private readonly double[] _saidError;
    private readonly bool _hasSums;
    private readonly double[] _weightOf;
    private readonly double[] _sumOf;
    private readonly Dictionary<UInt128, Fitted> _fitted = [];
    private readonly int _formulaBits;
    private readonly Fitted?[] _begun;
    private Measured[] _placed = [];
    private int[] _placedAs = [];
    private int _count;
    private int _said; // the unknowns that a figure laid so far says by itself, as bits
    private bool _everyLead;
    private int[] _formulas = [];
    private int[] _figures = [];
    private double[] _lnOhms = [];
    private double[] _lnErrors = [];

    public Search(Pattern pattern, double logPrior)
    {
        (Pattern, LogPrior, _fit) = (pattern, logPrior, new Fit(pattern));
        _terminalOf = new int[pattern.Count];
        Array.Fill(_terminalOf, -1);
        _usedMask = new int[pattern.Blocks.Length];
        _begun = new Fitted?[pattern.Count + 1];
        _freeOfClass = new int[pattern.Blocks.Length];
        foreach (var block in pattern.Blocks)
        {
            _freeOfClass[block.Class]++;
        }

        _saidLn = new double[pattern.Unknowns.Length];
        _saidError = new double[_saidLn.Length];
        _hasSums = Array.Exists(pattern.OnlyUnknown, only => only < 0);
        _formulaBits = int.Log2(pattern.Formulas.Length + 1) + 1;
        _weightOf = new double[_saidLn.Length + pattern.Formulas.Length];
        _sumOf = new double[_weightOf.Length];
    }

    /// <summary>The pattern.</summary>
    public Pattern Pattern { get; }

    /// <summary>ln of its weight in this identification.</summary>
    public double LogPrior { get; }

    /// <summary>Adds all ways to lay the leads on the pattern, until there are more than may be looked at.</summary>
    public void Run(SearchPlan plan, SearchTerms terms, Harvest harvest)
    {
        (_plan, _terms, _harvest) = (plan, terms, harvest);
        if (_fitted.Count > MostKept)
        {
            _fitted.Clear();
        }

        if (_formulas.Length < plan.Readings.Length)
        {
            _placed = new Measured[plan.Readings.Length];
            _placedAs = new int[plan.Readings.Length];
            _formulas = new int[plan.Readings.Length];
            _figures = new int[plan.Readings.Length];
            _lnOhms = new double[plan.Readings.Length];
            _lnErrors = new double[plan.Readings.Length];
        }

        // Where every lead is laid, each way of it stands for equally many: what that costs is known before the first lead is.
        _everyLead = plan.Order.Length == Pattern.Count;
        var log = LogPrior + (_everyLead ? Pattern.LogShare : 0);
        if (!harvest.Drops(log + plan.Peaks + Slack))
        {
            Place(0, log);
        }
    }

    private static double LnOf(int count) => count < Ln.Length ? Ln[count] : Math.Log(count);

    private bool Place(int depth, double log)
    {
        if (depth == _plan.Order.Length)
        {
            return AddLeaf(log);
        }

        _begun[depth] = depth == 0 ? null : _begun[depth - 1];
        if (_harvest!.Drops(log + _plan.Peaks + Slack) || IsLost(depth, log))
        {
            return true;
        }

        // Among all n! assignments the next lead takes each free terminal equally often.
        log -= _everyLead ? 0 : LnOf(Pattern.Count - depth);
        var seen = 0L;
        foreach (var block in Pattern.Blocks)
        {
            var mask = _usedMask[block.Index];
            var copies = 1;
            if (mask == 0)
            {
                if ((seen & (1L << block.Class)) != 0)
                {
                    continue;
                }

                seen |= 1L << block.Class;
                copies = _freeOfClass[block.Class];
            }

            foreach (var (place, size) in block.Orbits(mask))
            {
                if (!Try(depth, block, place, log + (_everyLead ? 0 : LnOf(size * copies))))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private bool Try(int depth, Block block, int place, double log)
    {
        var lead = _plan.Order[depth];
        var terminal = block.Terminals[place];
        var mask = _usedMask[block.Index];
        _terminalOf[lead] = terminal;
        var (before, said) = (_count, _said);
        var allowed = Allowed(depth, ref log);
        var more = true;
        if (allowed)
        {
            _usedMask[block.Index] = mask | (1 << place);
            _freeOfClass[block.Class] -= mask == 0 ? 1 : 0;
            more = Place(depth + 1, log);
            _freeOfClass[block.Class] += mask == 0 ? 1 : 0;
            _usedMask[block.Index] = mask;
        }

        (_count, _said) = (before, said);
        _terminalOf[lead] = -1;
        return more;
    }

    private bool Allowed(int depth, ref double log)
    {
        foreach (var reading in _plan.Checks[depth])
        {
            var (first, second) = (_terminalOf[reading.First], _terminalOf[reading.Second]);
            log += _terms.LogOf(Pattern.Links[first][second], reading.Showed);
            if (double.IsNegativeInfinity(log))
            {
                return false;
            }

            if (reading.Showed == Showed.Ohms)
            {
                var formula = Pattern.Formula[first][second];
                if (!Agrees(reading, formula) || !IsInOrder(reading, formula))
                {
                    return false;
                }

                (_placed[_count], _placedAs[_count]) = (reading, formula);
                _count++;
            }
        }

        return true;
    }

    /// <summary>Whether a figure is not less than one of a part of its way, nor more than one that takes in all of it.</summary>
    private bool IsInOrder(Measured reading, int formula)
    {
        for (var at = 0; _hasSums && at < _count; at++)
        {
            var (other, otherAs) = (_placed[at], _placedAs[at]);
            var above = reading.LnOhms - other.LnOhms;
            if (Math.Abs(above) > (Hopeless * (reading.LnError + other.LnError)) + Least
                && (above > 0 ? Pattern.Within[formula][otherAs] : Pattern.Within[otherAs][formula]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether a figure goes with an earlier one that says the same unknown; far beyond the meter's error it never will.</summary>
    private bool Agrees(Measured reading, int formula)
    {
        var unknown = Pattern.OnlyUnknown[formula];
        if (unknown < 0)
        {
            return true;
        }

        var ln = reading.LnOhms - Pattern.LnFactor[formula];
        if ((_said & (1 << unknown)) != 0)
        {
            return Math.Abs(ln - _saidLn[unknown]) <= (Hopeless * (reading.LnError + _saidError[unknown])) + Least;
        }

        _said |= 1 << unknown;
        (_saidLn[unknown], _saidError[unknown]) = (ln, reading.LnError);
        return true;
    }

    /// <summary>How a figure that is not believed comes about: most mistakes stay within a few times of what is really there.</summary>
    private double Mistaken(double[] lnOhms)
    {
        var log = 0.0;
        foreach (var reading in _plan.Readings)
        {
            if (reading is { Showed: Showed.Anything, Mistaken: true })
            {
                var formula = Pattern.Formula[_terminalOf[reading.First]][_terminalOf[reading.Second]];
                log += _terms.LogOfMistake(formula < 0 ? null : reading.LnOhms - _fit.LnPredicted(formula, lnOhms));
            }
        }

        return log;
    }

    /// <summary>Whether the leads laid so far already go so badly with their figures that the rest cannot mend it.</summary>
    private bool IsLost(int depth, double log) =>
        _hasSums && _plan.Tells[depth] && depth + 2 <= _plan.Order.Length
        && _harvest!.Drops(log + (_begun[depth] = Evidence(Gather(_plan.Laid[depth]), _begun[depth - 1])).Log + _plan.Peaks + Slack);

    /// <summary>The fit of the figures that were gathered last; many ways to lay the leads come to the same sums, with a slip or without, and those are fitted once.</summary>
    /// <param name="count">How many figures.</param>
    /// <param name="before">The fit of some of them.</param>
    private Fitted Evidence(int count, Fitted? before)
    {
        var bits = IndexBits + _formulaBits;
        var key = UInt128.One;
        for (var at = 0; at < count; at++)
        {
            if (_figures[at] >> IndexBits != 0 || (at + 1) * bits >= 127)
            {
                return Fit(count, before); // more figures than a key can name
            }

            key = (key << bits) | (UInt128)(uint)((_figures[at] << _formulaBits) | _formulas[at]);
        }

        return _fitted.TryGetValue(key, out var known) ? known : _fitted[key] = Fit(count, before);
    }

    private Fitted Fit(int count, Fitted? before)
    {
        var unknowns = 0;
        for (var at = 0; at < count; at++)
        {
            unknowns |= Pattern.UnknownsOf[_formulas[at]];
        }

        return new(_fit.LogEvidence(count, _formulas, _lnOhms, _lnErrors, before), [.. _fit.Values], _fit.Worst, unknowns);
    }

    private int Gather(Measured[] readings)
    {
        var count = 0;
        foreach (var reading in readings)
        {
            var (first, second) = (_terminalOf[reading.First], _terminalOf[reading.Second]);
            if (reading.Showed == Showed.Ohms && Pattern.Links[first][second] == Link.Ohms)
            {
                _formulas[count] = Pattern.Formula[first][second];
                _figures[count] = reading.Index;
                _lnOhms[count] = reading.LnOhms;
                _lnErrors[count] = reading.LnError;
                count++;
            }
        }

        return count;
    }

    private bool AddLeaf(double log)
    {
        var count = Gather(_plan.Readings);
        if (_harvest!.Drops(log + _plan.Peaks - AtLeast(count)))
        {
            return true;
        }

        var fitted = Evidence(count, _plan.Order.Length == 0 ? null : _begun[_plan.Order.Length - 1]);
        if (HasNoProtector(fitted))
        {
            return true;
        }

        log += _plan.Peaks + fitted.Log + Mistaken(fitted.LnOhms);
        return _harvest.Drops(log) || _harvest.Add(new(Pattern, _plan.IsAsRead ? [.. _terminalOf] : (_naming ??= new(Pattern)).Of(_terminalOf, _plan.AsRead), log, fitted.LnOhms, fitted.Worst));
    }

    /// <summary>Whether what would be a protector reads more than any: there is no such motor, however badly all others fit.</summary>
    private bool HasNoProtector(Fitted fitted) => Array.Exists(Pattern.Before.Protectors, protector =>
        (fitted.Unknowns & (1 << protector)) != 0 && fitted.LnOhms[protector] > _terms.LnProtectorMost);

    /// <summary>What the figures cost at least: only figures of one and the same thing are held against each other.</summary>
    private double AtLeast(int count)
    {
        Array.Clear(_weightOf);
        Array.Clear(_sumOf);
        var squares = 0.0;
        for (var reading = 0; reading < count; reading++)
        {
            var formula = _formulas[reading];
            var only = Pattern.OnlyUnknown[formula];
            var at = only < 0 ? _saidLn.Length + formula : only;
            var ln = _lnOhms[reading] - (only < 0 ? 0 : Pattern.LnFactor[formula]);
            var weight = 1 / (_lnErrors[reading] * _lnErrors[reading]);
            _weightOf[at] += weight;
            _sumOf[at] += weight * ln;
            squares += weight * ln * ln;
        }

        for (var at = 0; at < _weightOf.Length; at++)
        {
            squares -= _weightOf[at] > 0 ? _sumOf[at] * _sumOf[at] / _weightOf[at] : 0;
        }

        return (0.5 * squares) - Rounding;
    }
}
