using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace WireCoach.Rules.Language;

/// <summary>
/// Tells symptoms by words in their order: each word is read among its neighbours, then patterns of one to five words in a row answer, each as strongly as it fits anywhere in the message.
/// </summary>
/// <remarks>All sums run in one order on every machine, so the same message has the same odds everywhere.</remarks>
internal sealed class WordNetwork
{
    private const int Eight = 8;
    private const int Four = 4;
    private const float Finest = sbyte.MaxValue;
    private readonly NetworkShape _shape;
    private readonly float[] _weights;

    public WordNetwork(NetworkShape shape, float[] weights) =>
        (_shape, _weights, Readings, Patterns) = (shape, weights, [.. Enumerable.Range(0, NetworkShape.Readings).Select(reading => new Neighbours(shape, reading, weights))], new PatternBank(shape, weights));

    /// <summary>How each word is read among its neighbours, reading by reading.</summary>
    public IReadOnlyList<Neighbours> Readings { get; }

    /// <summary>Its patterns, laid out to look at words.</summary>
    public PatternBank Patterns { get; }

    /// <summary>Takes over the weights as they were taught since.</summary>
    public void Fill()
    {
        Patterns.Fill(_weights);
        foreach (var reading in Readings)
        {
            reading.Fill(_weights);
        }
    }

    /// <summary>The weights as they are kept: each group of them its largest, then all in steps of a hundred and twenty-seventh of that.</summary>
    public static string Written(NetworkShape shape, float[] weights)
    {
        var (bytes, at) = (new List<byte>(), 0);
        foreach (var length in shape.Groups())
        {
            var group = weights.AsSpan(at, length);
            var most = Largest(group);
            bytes.AddRange(BitConverter.GetBytes(most));
            foreach (var weight in group)
            {
                bytes.Add((byte)(sbyte)Math.Round(most == 0 ? 0 : weight / most * Finest));
            }

            at += length;
        }

        return Convert.ToBase64String(CollectionsMarshal.AsSpan(bytes));
    }

    /// <summary>The network that was kept.</summary>
    public static WordNetwork Read(NetworkShape shape, string written)
    {
        var (bytes, weights, from, at) = (Convert.FromBase64String(written), new float[shape.Count], 0, 0);
        foreach (var length in shape.Groups())
        {
            var most = BitConverter.ToSingle(bytes, from);
            from += sizeof(float);
            for (var weight = 0; weight < length; weight++)
            {
                weights[at++] = (sbyte)bytes[from++] * (most / Finest);
            }
        }

        return new WordNetwork(shape, weights);
    }

    /// <summary>The logarithm of the odds of each row.</summary>
    public double[] Odds(IReadOnlyList<(int Word, int[] Meanings)> said)
    {
        var looks = Patterns.Looks(said.Count);
        for (var at = 0; at < said.Count; at++)
        {
            Look(said[at], Patterns.Place(looks, at));
        }

        foreach (var reading in Readings)
        {
            Read(looks, reading.Sums(Patterns.Words(looks), said.Count));
        }

        var (features, _) = Patterns.Strongest(looks, said.Count);
        var odds = new double[_shape.Rows];
        for (var row = 0; row < odds.Length; row++)
        {
            odds[row] = _weights[_shape.RowBase(row)] + Product(features, _weights.AsSpan(_shape.Row(row), features.Length));
        }

        return odds;
    }

    /// <summary>Adds what stands for a word and its meanings.</summary>
    public void Look((int Word, int[] Meanings) said, Span<float> look)
    {
        Add(_weights.AsSpan(_shape.Word(said.Word), look.Length), look);
        foreach (var meaning in said.Meanings)
        {
            Add(_weights.AsSpan(_shape.Meaning(meaning), look.Length), look);
        }
    }

    /// <summary>Adds to what stands for the words what their sums let through.</summary>
    public void Read(float[] looks, float[] sums)
    {
        for (var at = 0; at * _shape.Sums < sums.Length; at++)
        {
            Neighbours.Take(sums.AsSpan(at * _shape.Sums, _shape.Sums), Patterns.Place(looks, at));
        }
    }

    /// <summary>Adds one row of numbers, so many times, to another of the same length.</summary>
    public static void Add(ReadOnlySpan<float> what, Span<float> to, float times = 1)
    {
        for (var at = 0; at < to.Length; at += Eight)
        {
            (At(to, at) + (At(what, at) * times)).CopyTo(to[at..]);
        }
    }

    /// <summary>The sum of the products of two rows of numbers of one length, a multiple of eight.</summary>
    public static float Product(ReadOnlySpan<float> one, ReadOnlySpan<float> other)
    {
        var ones = Eights(one);
        var others = Eights(other);
        var (first, second, third, fourth) = (Vector256<float>.Zero, Vector256<float>.Zero, Vector256<float>.Zero, Vector256<float>.Zero);
        var at = 0;
        for (; at + Four <= ones.Length; at += Four)
        {
            first = Vector256.FusedMultiplyAdd(ones[at], others[at], first);
            second = Vector256.FusedMultiplyAdd(ones[at + 1], others[at + 1], second);
            third = Vector256.FusedMultiplyAdd(ones[at + 2], others[at + 2], third);
            fourth = Vector256.FusedMultiplyAdd(ones[at + 3], others[at + 3], fourth);
        }

        for (; at < ones.Length; at++)
        {
            first = Vector256.FusedMultiplyAdd(ones[at], others[at], first);
        }

        return Vector256.Sum(first + second + (third + fourth));
    }

    private static ReadOnlySpan<Vector256<float>> Eights(ReadOnlySpan<float> numbers) => MemoryMarshal.Cast<float, Vector256<float>>(numbers);

    private static Vector256<float> At(ReadOnlySpan<float> numbers, int at) => Vector256.Create(numbers.Slice(at, Eight));

    private static float Largest(ReadOnlySpan<float> group)
    {
        var most = 0f;
        foreach (var weight in group)
        {
            most = Math.Max(most, Math.Abs(weight));
        }

        return most;
    }
}
