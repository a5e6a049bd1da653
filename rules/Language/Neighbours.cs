using System.Buffers;
using System.Runtime.Intrinsics;

namespace WireCoach.Rules.Language;

/// <summary>
/// One reading of each word among its neighbours: each of its numbers takes on what the words about it make of it, as far as a gate that they move as well is open.
/// So "not" before it, or what "it" speaks of, is in the word before any pattern looks at it.
/// </summary>
/// <remarks>The gate has no power in it that machines reckon differently: each sum, product and quotient is the same everywhere.</remarks>
internal sealed class Neighbours
{
    private const int Eight = 8;
    private const int Before = NetworkShape.Near / 2;
    private readonly NetworkShape _shape;
    private readonly int _reading;
    private readonly float[] _bases;
    private readonly Strips _strips;

    public Neighbours(NetworkShape shape, int reading, float[] weights)
    {
        (_shape, _reading, _bases, _strips) = (shape, reading, new float[shape.Sums], new Strips(shape.Size, NetworkShape.Near * shape.Sums));
        Fill(weights);
    }

    /// <summary>Takes over the weights as they are now.</summary>
    public void Fill(float[] weights)
    {
        weights.AsSpan(_shape.NeighbourBase(_reading, 0), _bases.Length).CopyTo(_bases);
        for (var place = 0; place < NetworkShape.Near; place++)
        {
            for (var sum = 0; sum < _bases.Length; sum++)
            {
                _strips.Fill((place * _bases.Length) + sum, weights.AsSpan(_shape.Neighbour(_reading, sum) + (place * _shape.Size), _shape.Size));
            }
        }
    }

    /// <summary>The sums of each word, one behind the other: what may be added to each of its numbers, then what opens the gate of each.</summary>
    public float[] Sums(ReadOnlySpan<float> looks, int words)
    {
        var sums = new float[words * _bases.Length];
        var fits = ArrayPool<float>.Shared.Rent(_strips.Room(words));
        _strips.Fit(looks, words, fits);
        for (var at = 0; at < words; at++)
        {
            var here = sums.AsSpan(at * _bases.Length, _bases.Length);
            _bases.CopyTo(here);
            for (var place = Math.Max(0, Before - at); place < NetworkShape.Near && at + place - Before < words; place++)
            {
                WordNetwork.Add(fits.AsSpan(((at + place - Before) * _strips.Columns) + (place * _bases.Length), _bases.Length), here);
            }
        }

        ArrayPool<float>.Shared.Return(fits);
        return sums;
    }

    /// <summary>Adds to the numbers of one word what its sums let through.</summary>
    public static void Take(ReadOnlySpan<float> sums, Span<float> look)
    {
        for (var at = 0; at < look.Length; at += Eight)
        {
            var gate = Open(Vector256.Create(sums.Slice(look.Length + at, Eight)));
            (Vector256.Create<float>(look.Slice(at, Eight)) + (Vector256.Create(sums.Slice(at, Eight)) * gate)).CopyTo(look[at..]);
        }
    }

    /// <summary>How strongly what pulls at the numbers of one word pulls at each of its sums.</summary>
    public static void Back(ReadOnlySpan<float> sums, ReadOnlySpan<float> pull, Span<float> pulls)
    {
        for (var at = 0; at < pull.Length; at += Eight)
        {
            var (added, opening, here) = (Vector256.Create(sums.Slice(at, Eight)), Vector256.Create(sums.Slice(pull.Length + at, Eight)), Vector256.Create(pull.Slice(at, Eight)));
            var far = Vector256<float>.One + Vector256.Abs(opening);
            (here * Open(opening)).CopyTo(pulls[at..]);
            (here * added * Vector256.Create(0.5f) / (far * far)).CopyTo(pulls[(pull.Length + at)..]);
        }
    }

    /// <summary>How far a gate is open: half at nought, all but wholly or hardly far from it.</summary>
    public static Vector256<float> Open(Vector256<float> sum) =>
        Vector256.Create(0.5f) + (Vector256.Create(0.5f) * sum / (Vector256<float>.One + Vector256.Abs(sum)));
}
