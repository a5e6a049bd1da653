using WireCoach.Rules.Choosing;

namespace WireCoach.Rules.Windings;

/// <summary>A pair of leads that could be read next, and how much the reading is expected to tell.</summary>
internal sealed record Probe(int First, int Second, double Bits);

/// <summary>How much each possible reading is expected to tell, in bits.</summary>
/// <remarks>
/// Leads that no reading touches yet are all alike, so one or two of them stand for all. What a meter may show over a pair is open, a
/// kick, a figure that an explanation predicts, or a new figure; the part of that which is mere chance under each explanation is taken off.
/// </remarks>
internal sealed class Probing
{
    private const double Step = 0.08;
    private const int NewFigure = int.MaxValue;

    private readonly IReadOnlyList<Leaf> _leaves;
    private readonly double[] _weights;
    private readonly IReadOnlyList<Measured> _readings;
    private readonly double _kickSeen;
    private readonly int[] _known;
    private readonly Dictionary<int, double> _signs = [];
    private readonly List<int>[] _free;
    private double _chance;
    private double _open;
    private double _kick;
    private double _new;

    public Probing(IReadOnlyList<Leaf> leaves, double[] weights, IReadOnlyList<Measured> readings, double kickSeen)
    {
        (_leaves, _weights, _readings, _kickSeen) = (leaves, weights, readings, kickSeen);
        _known = [.. leaves.Select(Known)];
        _free = [.. leaves.Select(Free)];
    }

    /// <summary>The readings that tell most, the best first; those already taken and those that cannot be taken are left out.</summary>
    public IReadOnlyList<Probe> Ranked(int leads, Func<int, int, bool> allowed)
    {
        var touched = Enumerable.Range(0, leads).Where(lead => _leaves[0].TerminalOf[lead] >= 0).ToArray();
        var fresh = Enumerable.Range(0, leads).Except(touched).ToArray();
        var inHand = _readings.Count == 0 ? -1 : InHand();
        var probes = new List<Probe>();
        foreach (var first in touched)
        {
            foreach (var second in touched.Where(second => second > first && allowed(first, second) && !Taken(first, second)))
            {
                probes.Add(new(first, second, Bits((at, weight) => Between(_leaves[at], weight, _known[at], _leaves[at].TerminalOf[first], _leaves[at].TerminalOf[second]))));
            }

            if (fresh.FirstOrDefault(lead => allowed(first, lead), -1) is var one and >= 0)
            {
                probes.Add(new(first, one, Bits((at, weight) => ToFresh(at, weight, _leaves[at].TerminalOf[first]))));
            }
        }

        if ((from a in fresh from b in fresh where a < b && allowed(a, b) select (a, b)).FirstOrDefault((-1, -1)) is var (x, y) && x >= 0)
        {
            probes.Add(new(x, y, Bits(BothFresh)));
        }

        return [.. probes
            .OrderByDescending(probe => Math.Round(probe.Bits, 6))
            .ThenBy(probe => probe.First == inHand || probe.Second == inHand ? 0 : 1)
            .ThenBy(probe => probe.First).ThenBy(probe => probe.Second)];
    }

    /// <summary>The lead that the last two readings share, else the first of the last.</summary>
    private int InHand()
    {
        var last = _readings[^1];
        var before = _readings.Count > 1 ? _readings[^2] : last;
        return before.Touches(last.First) ? last.First : before.Touches(last.Second) ? last.Second : last.First;
    }

    private bool Taken(int first, int second) => _readings.Any(reading => reading.First == first && reading.Second == second);

    private int Known(Leaf leaf)
    {
        var known = 0;
        foreach (var reading in _readings.Where(reading => reading.Showed == Showed.Ohms && leaf.LinkOf(reading.First, reading.Second) == Link.Ohms))
        {
            var factors = leaf.Pattern.Formulas[leaf.Pattern.Formula[leaf.TerminalOf[reading.First]][leaf.TerminalOf[reading.Second]]];
            for (var unknown = 0; unknown < factors.Length; unknown++)
            {
                known |= factors[unknown] > 0 ? 1 << unknown : 0;
            }
        }

        return known;
    }

    private double Bits(Action<int, double> add)
    {
        _signs.Clear();
        (_chance, _open, _kick, _new) = (0, 0, 0, 0);
        for (var index = 0; index < _leaves.Count; index++)
        {
            if (_weights[index] > 1e-9)
            {
                add(index, _weights[index]);
            }
        }

        return Math.Max(0, Weights.Bits(_signs.Values) + Weights.Surprise(_open) + Weights.Surprise(_kick) + Weights.Surprise(_new) - _chance);
    }

    private void ToFresh(int at, double weight, int terminal)
    {
        var free = _free[at];
        foreach (var other in free)
        {
            Between(_leaves[at], weight / free.Count, _known[at], terminal, other);
        }
    }

    private void BothFresh(int at, double weight)
    {
        var free = _free[at];
        var share = weight / (free.Count * (free.Count - 1) / 2);
        for (var first = 0; first < free.Count; first++)
        {
            for (var second = first + 1; second < free.Count; second++)
            {
                Between(_leaves[at], share, _known[at], free[first], free[second]);
            }
        }
    }

    private static List<int> Free(Leaf leaf)
    {
        var free = new List<int>(leaf.Pattern.Count);
        for (var terminal = 0; terminal < leaf.Pattern.Count; terminal++)
        {
            if (Array.IndexOf(leaf.TerminalOf, terminal) < 0)
            {
                free.Add(terminal);
            }
        }

        return free;
    }

    private void Between(Leaf leaf, double weight, int known, int first, int second)
    {
        switch (leaf.Pattern.Links[first][second])
        {
            case Link.Open:
                _open += weight;
                break;
            case Link.Kick:
                _kick += weight * _kickSeen;
                _open += weight * (1 - _kickSeen);
                _chance += weight * (Weights.Surprise(_kickSeen) + Weights.Surprise(1 - _kickSeen));
                break;
            default:
                Add(Figure(leaf, known, leaf.Pattern.Formulas[leaf.Pattern.Formula[first][second]]), weight);
                break;
        }
    }

    private static int Figure(Leaf leaf, int known, double[] factors)
    {
        var sum = 0.0;
        for (var unknown = 0; unknown < factors.Length; unknown++)
        {
            if (factors[unknown] > 0)
            {
                if ((known & (1 << unknown)) == 0)
                {
                    return NewFigure;
                }

                sum += factors[unknown] * Math.Exp(leaf.LnOhms[unknown]);
            }
        }

        return (int)Math.Round(Math.Log(Math.Max(sum, 1e-3)) / Step);
    }

    private void Add(int sign, double weight)
    {
        if (sign == NewFigure)
        {
            _new += weight;
        }
        else
        {
            _signs[sign] = _signs.GetValueOrDefault(sign) + weight;
        }
    }
}
