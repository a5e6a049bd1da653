using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace WireCoach.Rules.Language;

/// <summary>
/// The patterns of a <see cref="WordNetwork"/>, laid out so that many of them look at several words at once: most of what it costs to read a message is spent here.
/// </summary>
/// <remarks>Each sum runs over the numbers of a word in their order, then over the words, on every machine.</remarks>
internal sealed class PatternBank
{
    private const int Edge = NetworkShape.Widest - 1;
    private const int Eight = 8;
    private const int Strip = 3 * Eight;
    private const int Together = 4;
    private readonly NetworkShape _shape;
    private readonly float[] _bases;
    private readonly float[][] _strips;

    public PatternBank(NetworkShape shape, float[] weights)
    {
        _shape = shape;
        _bases = new float[shape.Features];
        _strips = [.. Enumerable.Range(1, NetworkShape.Widest).Select(width => new float[Columns(width) * shape.Size])];
        Fill(weights);
    }

    /// <summary>Takes over the patterns as they are now.</summary>
    public void Fill(float[] weights)
    {
        weights.AsSpan(_shape.PatternBase(0), _bases.Length).CopyTo(_bases);
        for (var width = 1; width <= NetworkShape.Widest; width++)
        {
            var strips = _strips[width - 1];
            for (var column = 0; column < width * _shape.Filters; column++)
            {
                var (place, filter) = Math.DivRem(column, _shape.Filters);
                var from = _shape.Pattern(width, filter) + (place * _shape.Size);
                var to = (column / Strip * Strip * _shape.Size) + (column % Strip);
                for (var number = 0; number < _shape.Size; number++)
                {
                    strips[to + (number * Strip)] = weights[from + number];
                }
            }
        }
    }

    /// <summary>How strongly each pattern answers where it fits best, and at which number of the message that begins; −1 where it fits nowhere.</summary>
    /// <param name="looks">What stands for the words, with empty words before and behind them.</param>
    /// <param name="words">How many words there are.</param>
    public (float[] Features, int[] Places) Strongest(float[] looks, int words)
    {
        var (features, places) = (new float[_shape.Features], new int[_shape.Features]);
        Array.Fill(places, -1);
        if (words == 0)
        {
            return (features, places);
        }

        var rounded = (words + Together - 1) / Together * Together;
        var fits = ArrayPool<float>.Shared.Rent(rounded * Columns(NetworkShape.Widest));
        for (var width = 1; width <= NetworkShape.Widest; width++)
        {
            for (var first = 0; first < words; first += Together)
            {
                Fit(width, looks.AsSpan((first + Edge) * _shape.Size, Together * _shape.Size), fits.AsSpan(first * Columns(width), Together * Columns(width)));
            }

            for (var filter = 0; filter < _shape.Filters; filter += Eight)
            {
                Best(width, filter, fits, words, features, places);
            }
        }

        ArrayPool<float>.Shared.Return(fits);
        return (features, places);
    }

    /// <summary>What stands for so many words, empty, with empty words before and behind them and up to a whole group.</summary>
    public float[] Looks(int words) => new float[(words + Edge + Math.Max(Edge, Together)) * _shape.Size];

    /// <summary>Where the numbers of a word stand among those of a message.</summary>
    public Span<float> Place(float[] looks, int at) => looks.AsSpan((at + Edge) * _shape.Size, _shape.Size);

    private int Columns(int width) => ((width * _shape.Filters) + Strip - 1) / Strip * Strip;

    /// <summary>What each place of each pattern makes of four words.</summary>
    private void Fit(int width, ReadOnlySpan<float> looks, Span<float> fits)
    {
        var (size, columns) = (_shape.Size, Columns(width));
        ref var strips = ref MemoryMarshal.GetArrayDataReference(_strips[width - 1]);
        ref var one = ref MemoryMarshal.GetReference(looks);
        ref var two = ref Unsafe.Add(ref one, size);
        ref var three = ref Unsafe.Add(ref two, size);
        ref var four = ref Unsafe.Add(ref three, size);
        for (var column = 0; column < columns; column += Strip)
        {
            var at = (nuint)(column * size);
            var (one1, one2, one3) = (Vector256<float>.Zero, Vector256<float>.Zero, Vector256<float>.Zero);
            var (two1, two2, two3) = (Vector256<float>.Zero, Vector256<float>.Zero, Vector256<float>.Zero);
            var (three1, three2, three3) = (Vector256<float>.Zero, Vector256<float>.Zero, Vector256<float>.Zero);
            var (four1, four2, four3) = (Vector256<float>.Zero, Vector256<float>.Zero, Vector256<float>.Zero);
            for (var number = 0; number < size; number++, at += Strip)
            {
                var first = Vector256.LoadUnsafe(ref strips, at);
                var second = Vector256.LoadUnsafe(ref strips, at + Eight);
                var third = Vector256.LoadUnsafe(ref strips, at + Eight + Eight);
                var look = Vector256.Create(Unsafe.Add(ref one, number));
                (one1, one2, one3) = (Vector256.FusedMultiplyAdd(look, first, one1), Vector256.FusedMultiplyAdd(look, second, one2), Vector256.FusedMultiplyAdd(look, third, one3));
                look = Vector256.Create(Unsafe.Add(ref two, number));
                (two1, two2, two3) = (Vector256.FusedMultiplyAdd(look, first, two1), Vector256.FusedMultiplyAdd(look, second, two2), Vector256.FusedMultiplyAdd(look, third, two3));
                look = Vector256.Create(Unsafe.Add(ref three, number));
                (three1, three2, three3) = (Vector256.FusedMultiplyAdd(look, first, three1), Vector256.FusedMultiplyAdd(look, second, three2), Vector256.FusedMultiplyAdd(look, third, three3));
                look = Vector256.Create(Unsafe.Add(ref four, number));
                (four1, four2, four3) = (Vector256.FusedMultiplyAdd(look, first, four1), Vector256.FusedMultiplyAdd(look, second, four2), Vector256.FusedMultiplyAdd(look, third, four3));
            }

            Put(fits[column..], one1, one2, one3);
            Put(fits[(columns + column)..], two1, two2, two3);
            Put(fits[((2 * columns) + column)..], three1, three2, three3);
            Put(fits[((3 * columns) + column)..], four1, four2, four3);
        }
    }

    private static void Put(Span<float> fits, Vector256<float> first, Vector256<float> second, Vector256<float> third)
    {
        first.CopyTo(fits);
        second.CopyTo(fits[Eight..]);
        third.CopyTo(fits[(Eight + Eight)..]);
    }

    /// <summary>Where eight patterns of one width fit best.</summary>
    private void Best(int width, int filter, float[] fits, int words, float[] features, int[] places)
    {
        var (columns, feature) = (Columns(width), ((width - 1) * _shape.Filters) + filter);
        var basis = Vector256.Create(_bases.AsSpan(feature, Eight));
        var (best, where) = (Vector256<float>.Zero, Vector256.Create(-1));
        for (var start = 1 - width; start < words; start++)
        {
            var fit = basis;
            for (var place = Math.Max(0, -start); place < width && start + place < words; place++)
            {
                fit += Vector256.Create(fits.AsSpan(((start + place) * columns) + (place * _shape.Filters) + filter, Eight));
            }

            var better = Vector256.GreaterThan(fit, best);
            best = Vector256.ConditionalSelect(better, fit, best);
            where = Vector256.ConditionalSelect(better.AsInt32(), Vector256.Create((start + Edge) * _shape.Size), where);
        }

        best.CopyTo(features.AsSpan(feature));
        where.CopyTo(places.AsSpan(feature));
    }
}
