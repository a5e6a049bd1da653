using System.Buffers;
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
    private readonly NetworkShape _shape;
    private readonly float[] _bases;
    private readonly Strips[] _strips;

    public PatternBank(NetworkShape shape, float[] weights)
    {
        _shape = shape;
        _bases = new float[shape.Features];
        _strips = [.. Enumerable.Range(1, NetworkShape.Widest).Select(width => new Strips(shape.Size, width * shape.Filters))];
        Fill(weights);
    }

    /// <summary>Takes over the patterns as they are now.</summary>
    public void Fill(float[] weights)
    {
        weights.AsSpan(_shape.PatternBase(0), _bases.Length).CopyTo(_bases);
        for (var width = 1; width <= NetworkShape.Widest; width++)
        {
            for (var column = 0; column < width * _shape.Filters; column++)
            {
                var (place, filter) = Math.DivRem(column, _shape.Filters);
                _strips[width - 1].Fill(column, weights.AsSpan(_shape.Pattern(width, filter) + (place * _shape.Size), _shape.Size));
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

        var fits = ArrayPool<float>.Shared.Rent(_strips[^1].Room(words));
        for (var width = 1; width <= NetworkShape.Widest; width++)
        {
            _strips[width - 1].Fit(Words(looks), words, fits);
            for (var filter = 0; filter < _shape.Filters; filter += Eight)
            {
                Best(width, filter, fits, words, features, places);
            }
        }

        ArrayPool<float>.Shared.Return(fits);
        return (features, places);
    }

    /// <summary>What stands for so many words, empty, with empty words before and behind them and up to a whole group.</summary>
    public float[] Looks(int words) => new float[(words + Edge + Math.Max(Edge, Strips.Together)) * _shape.Size];

    /// <summary>The words of a message, without the empty ones before them.</summary>
    public ReadOnlySpan<float> Words(float[] looks) => looks.AsSpan(Edge * _shape.Size);

    /// <summary>The numbers of a word and of those about it.</summary>
    public Span<float> About(float[] looks, int at) => looks.AsSpan((at + Edge - (NetworkShape.Near / 2)) * _shape.Size, NetworkShape.Near * _shape.Size);

    /// <summary>Where the numbers of a word stand among those of a message.</summary>
    public Span<float> Place(float[] looks, int at) => looks.AsSpan((at + Edge) * _shape.Size, _shape.Size);

    /// <summary>Where eight patterns of one width fit best.</summary>
    private void Best(int width, int filter, float[] fits, int words, float[] features, int[] places)
    {
        var (columns, feature) = (_strips[width - 1].Columns, ((width - 1) * _shape.Filters) + filter);
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
