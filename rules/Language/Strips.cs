using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace WireCoach.Rules.Language;

/// <summary>Columns of weights, laid out so that many of them look at several words at once: most of what it costs to read a message is spent here.</summary>
/// <remarks>Each sum runs over the numbers of a word in their order, on every machine.</remarks>
/// <param name="size">Numbers of one word, and weights of one column.</param>
/// <param name="columns">How many columns are needed.</param>
internal sealed class Strips(int size, int columns)
{
    /// <summary>So many words are looked at together: behind the last of a message there is room for as many.</summary>
    public const int Together = 4;

    private const int Eight = 8;
    private const int Strip = 3 * Eight;
    private readonly float[] _strips = new float[Filled(columns) * size];

    /// <summary>The columns, with those that fill up the last strip.</summary>
    public int Columns { get; } = Filled(columns);

    /// <summary>Takes over the weights of one column.</summary>
    public void Fill(int column, ReadOnlySpan<float> weights)
    {
        var to = (column / Strip * Strip * size) + (column % Strip);
        for (var number = 0; number < size; number++)
        {
            _strips[to + (number * Strip)] = weights[number];
        }
    }

    /// <summary>How much room it takes what the columns make of so many words.</summary>
    public int Room(int words) => (words + Together - 1) / Together * Together * Columns;

    /// <summary>What each column makes of each word, word by word.</summary>
    /// <param name="looks">What stands for the words, one behind the other.</param>
    /// <param name="words">How many there are.</param>
    /// <param name="fits">Where the sums go.</param>
    public void Fit(ReadOnlySpan<float> looks, int words, Span<float> fits)
    {
        for (var column = 0; column < Columns; column += Strip)
        {
            for (var first = 0; first < words; first += Together)
            {
                Four(column, looks.Slice(first * size, Together * size), fits.Slice((first * Columns) + column, ((Together - 1) * Columns) + Strip)); // one strip looks at all words while it is at hand
            }
        }
    }

    private static int Filled(int columns) => (columns + Strip - 1) / Strip * Strip;

    /// <summary>What the columns of one strip make of four words.</summary>
    private void Four(int column, ReadOnlySpan<float> looks, Span<float> fits)
    {
        ref var strips = ref MemoryMarshal.GetArrayDataReference(_strips);
        ref var one = ref MemoryMarshal.GetReference(looks);
        ref var two = ref Unsafe.Add(ref one, size);
        ref var three = ref Unsafe.Add(ref two, size);
        ref var four = ref Unsafe.Add(ref three, size);
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

        Put(fits, one1, one2, one3);
        Put(fits[Columns..], two1, two2, two3);
        Put(fits[(2 * Columns)..], three1, three2, three3);
        Put(fits[(3 * Columns)..], four1, four2, four3);
    }

    private static void Put(Span<float> fits, Vector256<float> first, Vector256<float> second, Vector256<float> third)
    {
        first.CopyTo(fits);
        second.CopyTo(fits[Eight..]);
        third.CopyTo(fits[(Eight + Eight)..]);
    }
}
