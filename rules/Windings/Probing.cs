using System.Numerics;
using WireCoach.Rules.Choosing;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Windings;

/// <summary>A pair of leads that could be read next.</summary>
/// <param name="First">A lead's number.</param>
/// <param name="Second">Another lead's number.</param>
/// <param name="Bits">How much the reading is expected to tell.</param>
/// <param name="Worth">How much it tells for the touch that it may cost.</param>
internal sealed record Probe(int First, int Second, double Bits, double Worth);

/// <summary>How much each possible reading is expected to tell, in bits, and how likely it is to be one too many.</summary>
/// <remarks>
/// Every winding is measured in the end, so that a reading over a coil is no loss, whatever it tells; what is lost is a reading that finds nothing.
/// Leads that no reading touches yet are all alike, so one or two of them stand for all. What a meter may show over a pair is open, a
/// kick, a figure that an explanation predicts, or a new figure; the part of that which is mere chance under each explanation is taken off.
/// </remarks>
internal sealed class Probing
{
    private const double Step = 0.08;
    private const int NewFigure = int.MaxValue;
    private const int Most = 32;

    private readonly IReadOnlyList<Leaf> _leaves;
    private readonly double[] _weights;
    private readonly IReadOnlyList<Measured> _readings;
    private readonly double _kickSeen;
    private readonly double _wasted;
    private readonly int[] _known;
    private readonly Dictionary<int, double> _signs = [];
    private readonly int[] _free;
    private readonly int[] _places = new int[Most];
    private readonly (int First, int Second)[] _figures;
    private double _chance;
    private double _open;
    private double _kick;
    private double _new;
    private double _useful;
    private bool _joined;

    /// <summary>By lead a number that it shares with all leads to which readings join it.</summary>
    private readonly int[] _partOf;

    /// <summary>By explanation the terminals whose group takes further readings though it hangs together, as bits.</summary>
    private readonly int[] _unmeasured;

    public Probing(IReadOnlyList<Leaf> leaves, double[] weights, IReadOnlyList<Measured> readings, IdentificationFigures figures)
    {
        (_leaves, _weights, _readings, _kickSeen, _wasted) = (leaves, weights, readings, figures.KickSeen.Value, figures.ReadingWasted.Value);
        _figures = [.. readings.Where(reading => reading.Showed == Showed.Ohms).Select(reading => (reading.First, reading.Second)).Distinct()];
        _partOf = Parts(leaves[0].TerminalOf.Length, _figures);
        _known = new int[leaves.Count];
        _free = new int[leaves.Count];
        _unmeasured = new int[leaves.Count];
        for (var at = 0; at < leaves.Count; at++)
        {
            (_known[at], _free[at], _unmeasured[at]) = (leaves[at].Known(readings), Free(leaves[at]), Unmeasured(leaves[at]));
        }
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
                _joined = _partOf[first] == _partOf[second];
                probes.Add(Probe(first, second, (at, weight) => Between(at, weight, _leaves[at].TerminalOf[first], _leaves[at].TerminalOf[second])));
            }

            if (fresh.FirstOrDefault(lead => allowed(first, lead), -1) is var one and >= 0)
            {
                _joined = false;
                probes.Add(Probe(first, one, (at, weight) => ToFresh(at, weight, _leaves[at].TerminalOf[first])));
            }
        }

        if ((from a in fresh from b in fresh where a < b && allowed(a, b) select (a, b)).FirstOrDefault((-1, -1)) is var (x, y) && x >= 0)
        {
            _joined = false;
            probes.Add(Probe(x, y, BothFresh));
        }

        return [.. probes
            .OrderByDescending(probe => Math.Round(probe.Worth, 6))
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

    private static int[] Parts(int leads, (int First, int Second)[] figures)
    {
        int[] part = [.. Enumerable.Range(0, leads)];
        foreach (var (first, second) in figures)
        {
            var (keep, drop) = (part[first], part[second]);
            part = Array.ConvertAll(part, one => one == drop ? keep : one);
        }

        return part;
    }

    private int Unmeasured(Leaf leaf)
    {
        var bits = 0;
        foreach (var group in leaf.Pattern.Groups)
        {
            var (parts, untouched, read) = (0, group.Terminals.Length, 0);
            for (var lead = 0; lead < leaf.TerminalOf.Length; lead++)
            {
                if (group.Holds(leaf.TerminalOf[lead]))
                {
                    parts |= 1 << _partOf[lead];
                    untouched--;
                }
            }

            foreach (var (first, _) in _figures)
            {
                read += group.Holds(leaf.TerminalOf[first]) ? 1 : 0;
            }

            bits |= group.Spans - read > BitOperations.PopCount((uint)parts) + untouched - 1 ? group.Bits : 0;
        }

        return bits;
    }

    private Probe Probe(int first, int second, Action<int, double> add)
    {
        _signs.Clear();
        (_chance, _open, _kick, _new, _useful) = (0, 0, 0, 0, 0);
        for (var index = 0; index < _leaves.Count; index++)
        {
            if (_weights[index] > 1e-9)
            {
                add(index, _weights[index]);
            }
        }

        var bits = Math.Max(0, Weights.Bits(_signs.Values) + Weights.Surprise(_open) + Weights.Surprise(_kick) + Weights.Surprise(_new) - _chance);
        return new(first, second, bits, bits / (_wasted + Math.Max(0, 1 - _useful))); // what is none of those that must be taken in any case is a touch lost
    }

    private void ToFresh(int at, double weight, int terminal)
    {
        var free = Places(_free[at]);
        foreach (var other in free)
        {
            Between(at, weight / free.Length, terminal, other);
        }
    }

    private void BothFresh(int at, double weight)
    {
        var free = Places(_free[at]);
        var share = weight / (free.Length * (free.Length - 1) / 2);
        for (var first = 0; first < free.Length; first++)
        {
            for (var second = first + 1; second < free.Length; second++)
            {
                Between(at, share, free[first], free[second]);
            }
        }
    }

    /// <summary>The terminals that bits stand for.</summary>
    private ReadOnlySpan<int> Places(int bits)
    {
        var count = 0;
        for (var left = bits; left != 0; left &= left - 1)
        {
            _places[count++] = BitOperations.TrailingZeroCount(left);
        }

        return _places.AsSpan(0, count);
    }

    /// <summary>The terminals on which no lead is laid, as bits.</summary>
    private static int Free(Leaf leaf)
    {
        var free = (1 << leaf.Pattern.Count) - 1;
        foreach (var terminal in leaf.TerminalOf)
        {
            free &= terminal < 0 ? free : ~(1 << terminal);
        }

        return free;
    }

    private void Between(int at, double weight, int first, int second)
    {
        var leaf = _leaves[at];
        _useful += IsNeeded(at, leaf.Pattern, first, second) ? weight : 0;
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
                Add(Figure(leaf, _known[at], leaf.Pattern.Formula[first][second]), weight);
                break;
        }
    }

    /// <summary>Whether a reading has to be taken in any case, because a winding rests on it, or that it is broken.</summary>
    private bool IsNeeded(int at, Pattern pattern, int first, int second)
    {
        if (pattern.Links[first][second] != Link.Open)
        {
            return !_joined || (_unmeasured[at] & (1 << first)) != 0;
        }

        foreach (var (one, other) in pattern.Breaks)
        {
            if ((one == first && other == second) || (one == second && other == first))
            {
                return true;
            }
        }

        return false;
    }

    private static int Figure(Leaf leaf, int known, int formula) => (leaf.Pattern.UnknownsOf[formula] & ~known) != 0
        ? NewFigure
        : (int)Math.Round(Math.Log(Math.Max(leaf.Ohms(formula), 1e-3)) / Step);

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
