using System.Runtime.Intrinsics;
using WireCoach.Rules.Language;

namespace WireCoach.Benchmarks.Learning;

/// <summary>Teaches a <see cref="WordNetwork"/>: by small steps down the slope of what it gets wrong, some of its words and answers hidden each time, so that it leans on none alone.</summary>
internal sealed class Teacher
{
    private const int Rounds = 6;
    private const int Together = 32;
    private const int Longest = 200;
    private const double Hidden = 0.1;
    private const float Dropped = 0.4f;
    private const float Rate = 2e-3f;
    private const int PlainRounds = 4;
    private const float PlainRate = 6e-4f;
    private const double Unusual = 0.25;
    private const double Slowing = 0.8;
    private const float Steepest = 2;
    private const int Between = 8;
    private const float Newest = 0.01f;
    private const float WordSpread = 0.1f;
    private const float RowSpread = 0.03f;
    private const float Seldom = -3;

    private readonly NetworkShape _shape;
    private readonly Random _chance;
    private readonly float[] _weights;
    private readonly float[] _slope;
    private readonly WordNetwork _network;

    private Teacher(NetworkShape shape, int seed)
    {
        (_shape, _chance, _weights, _slope) = (shape, new Random(seed), new float[Rounded(shape.Count)], new float[Rounded(shape.Count)]);
        _network = new WordNetwork(shape, _weights);
        Begin();
        _network.Fill();
    }

    /// <summary>The weights that the lessons teach, all of them first and then mostly what is written plainly: that is what comes.</summary>
    public static float[] Taught(NetworkShape shape, IReadOnlyList<Lesson> lessons, int seed)
    {
        var teacher = new Teacher(shape, seed);
        teacher.Teach(seed, lessons, Rounds, Rate, share: 1);
        teacher.Teach(seed, lessons, PlainRounds, PlainRate, share: Unusual);
        return teacher._weights;
    }

    /// <summary>Some rounds of lessons, all that are plain and some of the others; what stays are the mean weights of late, for each step leans to the last messages.</summary>
    private void Teach(int seed, IReadOnlyList<Lesson> lessons, int rounds, float fastest, double share)
    {
        var (steps, step, mean) = (new Descent(_weights.Length), 0, _weights.ToArray());
        for (var round = 0; round < rounds; round++)
        {
            var order = lessons.Where(lesson => lesson.Plain || _chance.NextDouble() < share).ToArray();
            _chance.Shuffle(order);
            var rate = fastest * (float)Math.Pow(1 - ((double)round / rounds), Slowing);
            foreach (var some in order.Chunk(Together))
            {
                Array.Clear(_slope);
                foreach (var lesson in some)
                {
                    Teach(lesson);
                }

                steps.Down(_weights, _slope, 1f / some.Length, Steepest, rate);
                _network.Fill();
                if (++step % Between == 0)
                {
                    Near(mean, _weights, Math.Max(Newest, (float)Between / (Between + step)));
                }
            }

            Console.WriteLine($"network {seed}: round {round + 1} of {rounds}, {order.Length} messages");
        }

        mean.CopyTo(_weights, 0);
        _network.Fill();
    }

    private static void Near(float[] mean, float[] newest, float share)
    {
        for (var at = 0; at < mean.Length; at++)
        {
            mean[at] += share * (newest[at] - mean[at]);
        }
    }

    private static int Rounded(int count) => (count + Vector256<float>.Count - 1) / Vector256<float>.Count * Vector256<float>.Count;

    private void Begin()
    {
        Spread(0, _shape.Neighbour(0, 0), WordSpread);
        for (var reading = 0; reading < NetworkShape.Readings; reading++)
        {
            Scatter(_shape.Neighbour(reading, 0), _shape.NeighbourBase(reading, 0), NetworkShape.Near * _shape.Size);
        }

        for (var width = 1; width <= NetworkShape.Widest; width++)
        {
            Scatter(_shape.Pattern(width, 0), _shape.Pattern(width + 1, 0), width * _shape.Size);
        }

        Spread(_shape.Row(0), _shape.RowBase(0), RowSpread);
        Array.Fill(_weights, Seldom, _shape.RowBase(0), _shape.Rows);
    }

    /// <summary>Numbers evenly about nought, the nearer to it the more of them are added up.</summary>
    private void Scatter(int from, int to, int added)
    {
        var reach = 1 / MathF.Sqrt(added);
        for (var at = from; at < to; at++)
        {
            _weights[at] = reach * ((2 * _chance.NextSingle()) - 1);
        }
    }

    /// <summary>Numbers about nought, most of them no farther away than this.</summary>
    private void Spread(int from, int to, float far)
    {
        for (var at = from; at < to; at++)
        {
            _weights[at] = far * (float)(Math.Sqrt(-2 * Math.Log(1 - _chance.NextDouble())) * Math.Cos(2 * Math.PI * _chance.NextDouble()));
        }
    }

    /// <summary>Adds to the slope what one message makes of it.</summary>
    private void Teach(Lesson lesson)
    {
        var said = lesson.Said.Take(Longest).Select(word => _chance.NextDouble() < Hidden ? word with { Word = _shape.Unknown } : word).ToList();
        var looks = _network.Patterns.Looks(said.Count);
        for (var at = 0; at < said.Count; at++)
        {
            _network.Look(said[at], _network.Patterns.Place(looks, at));
        }

        var kept = Drop(looks);
        var read = new List<(float[] Looks, float[] Sums)>();
        foreach (var reading in _network.Readings)
        {
            var sums = reading.Sums(_network.Patterns.Words(looks), said.Count);
            read.Add(([.. looks], sums));
            _network.Read(looks, sums);
        }

        var (features, places) = _network.Patterns.Strongest(looks, said.Count);
        var heard = Drop(features);
        var pulls = new float[features.Length];
        for (var row = 0; row < _shape.Rows; row++)
        {
            var weights = _weights.AsSpan(_shape.Row(row), features.Length);
            var chance = 1 / (1 + MathF.Exp(-(_weights[_shape.RowBase(row)] + WordNetwork.Product(weights, features))));
            var pull = chance - (lesson.Told.Contains(row) ? 1 : 0);
            _slope[_shape.RowBase(row)] += pull;
            WordNetwork.Add(features, _slope.AsSpan(_shape.Row(row), features.Length), pull);
            WordNetwork.Add(weights, pulls, pull);
        }

        Back(said, BackThroughReadings(read, BackThroughPatterns(looks, places, [.. pulls.Zip(heard, (pull, share) => pull * share)])), kept);
    }

    /// <summary>From the patterns back to the words as they were read.</summary>
    private float[] BackThroughPatterns(float[] looks, int[] places, float[] pulls)
    {
        var back = new float[looks.Length];
        for (var feature = 0; feature < pulls.Length; feature++)
        {
            if (places[feature] < 0 || pulls[feature] == 0)
            {
                continue;
            }

            var width = (feature / _shape.Filters) + 1;
            var (from, length) = (_shape.Pattern(width, feature % _shape.Filters), width * _shape.Size);
            _slope[_shape.PatternBase(feature)] += pulls[feature];
            WordNetwork.Add(looks.AsSpan(places[feature], length), _slope.AsSpan(from, length), pulls[feature]);
            WordNetwork.Add(_weights.AsSpan(from, length), back.AsSpan(places[feature], length), pulls[feature]);
        }

        return back;
    }

    /// <summary>From the words as they were read back to the words as they stand.</summary>
    private float[] BackThroughReadings(List<(float[] Looks, float[] Sums)> read, float[] back)
    {
        for (var reading = read.Count - 1; reading >= 0; reading--)
        {
            var (looks, sums) = read[reading];
            var before = back.ToArray();
            var pulls = new float[_shape.Sums];
            for (var at = 0; at * pulls.Length < sums.Length; at++)
            {
                Neighbours.Back(sums.AsSpan(at * pulls.Length, pulls.Length), _network.Patterns.Place(back, at), pulls);
                WordNetwork.Add(pulls, _slope.AsSpan(_shape.NeighbourBase(reading, 0), pulls.Length));
                var seen = _network.Patterns.About(looks, at);
                var pulled = _network.Patterns.About(before, at);
                for (var sum = 0; sum < pulls.Length; sum++)
                {
                    var from = _shape.Neighbour(reading, sum);
                    WordNetwork.Add(seen, _slope.AsSpan(from, seen.Length), pulls[sum]);
                    WordNetwork.Add(_weights.AsSpan(from, seen.Length), pulled, pulls[sum]);
                }
            }

            back = before;
        }

        return back;
    }

    /// <summary>From the words as they stand to what stands for them.</summary>
    private void Back(List<(int Word, int[] Meanings)> said, float[] back, float[] kept)
    {
        for (var at = 0; at < back.Length; at++)
        {
            back[at] *= kept[at];
        }

        for (var at = 0; at < said.Count; at++)
        {
            var pull = _network.Patterns.Place(back, at);
            WordNetwork.Add(pull, _slope.AsSpan(_shape.Word(said[at].Word), pull.Length));
            foreach (var meaning in said[at].Meanings)
            {
                WordNetwork.Add(pull, _slope.AsSpan(_shape.Meaning(meaning), pull.Length));
            }
        }
    }

    /// <summary>Hides some of the numbers and makes up for them by the others; answers what is left of each.</summary>
    private float[] Drop(float[] numbers)
    {
        var kept = new float[numbers.Length];
        for (var at = 0; at < numbers.Length; at++)
        {
            kept[at] = numbers[at] == 0 || _chance.NextSingle() < Dropped ? 0 : 1 / (1 - Dropped);
            numbers[at] *= kept[at];
        }

        return kept;
    }
}
