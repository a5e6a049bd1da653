using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Words among their neighbours and patterns of words in a row, on a network that is small enough to reckon by hand.</summary>
public sealed class WordNetworkTest
{
    private const int Not = 0;
    private const int Hum = 1;
    private const int Loud = 0;
    private const float Basis = -3;
    private const float Weight = 2;
    private static readonly NetworkShape Shape = new(Words: 2, Meanings: 1, Rows: 2, Size: 8, Filters: 8);

    [Theory]
    [InlineData(new[] { Not, Hum }, 2.0)]
    [InlineData(new[] { Hum, Not }, 0.0)]
    [InlineData(new[] { Not, 2, Hum }, 0.0)]
    [InlineData(new[] { 2, 2, 2, Not, Hum, 2 }, 2.0)]
    [InlineData(new[] { Not, Hum, Not, Hum }, 2.0)]
    [InlineData(new int[0], 0.0)]
    public void A_pattern_answers_where_it_fits_best_and_only_in_its_order(int[] words, double fit) =>
        Assert.Equal([Basis + (Weight * fit), 0], NotHum().Odds([.. words.Select(word => (word, Array.Empty<int>()))]));

    [Fact]
    public void What_a_word_means_counts_beside_it() =>
        Assert.Equal(Basis + (Weight * 5), NotHum().Odds([(Not, []), (Hum, [Loud])])[0]);

    [Theory]
    [InlineData(new[] { Hum }, 1.0)]
    [InlineData(new[] { Not, Hum }, 1.0 + (4 * 0.75))]
    [InlineData(new[] { Not, 2, Hum }, 4 * 0.75)]
    [InlineData(new[] { Hum, Not }, 1.0)]
    public void A_word_takes_on_what_its_neighbours_make_of_it_as_far_as_its_gate_is_open(int[] words, double look)
    {
        var weights = new float[Shape.Count];
        const int beforeIt = (NetworkShape.Near / 2) - 1;
        weights[Shape.Word(Hum) + 1] = 1;
        weights[Shape.Word(Not)] = 1;
        weights[Shape.Neighbour(0, 1) + (beforeIt * Shape.Size)] = 4;
        weights[Shape.Neighbour(0, Shape.Size + 1) + (beforeIt * Shape.Size)] = 1;
        weights[Shape.Pattern(1, 0) + 1] = 1;
        weights[Shape.Row(0)] = 1;
        Assert.Equal(look, new WordNetwork(Shape, weights).Odds([.. words.Select(word => (word, Array.Empty<int>()))])[0], 1e-5);
    }

    [Fact]
    public void What_is_kept_is_read_again_as_near_as_its_steps_allow()
    {
        var chance = new Random(7);
        var weights = Enumerable.Range(0, Shape.Count).Select(_ => (float)(chance.NextDouble() - 0.5)).ToArray();
        var read = WordNetwork.Read(Shape, WordNetwork.Written(Shape, weights));
        for (var message = 0; message < 50; message++)
        {
            var said = Enumerable.Range(0, chance.Next(1, 12)).Select(_ => (chance.Next(3), chance.Next(2) == 0 ? Array.Empty<int>() : [Loud])).ToList();
            Assert.All(new WordNetwork(Shape, weights).Odds(said).Zip(read.Odds(said)), two => Assert.Equal(two.First, two.Second, 0.05));
        }

        Assert.Equal(WordNetwork.Written(Shape, weights), WordNetwork.Written(Shape, weights));
    }

    [Theory]
    [InlineData(8, 8)]
    [InlineData(16, 24)]
    [InlineData(24, 40)]
    public void Patterns_that_look_together_answer_as_each_by_itself(int size, int filters)
    {
        var chance = new Random(size);
        var shape = new NetworkShape(Words: 20, Meanings: 5, Rows: 3, size, filters);
        var weights = Enumerable.Range(0, shape.Count).Select(_ => (float)(chance.NextDouble() - 0.5)).ToArray();
        var network = new WordNetwork(shape, weights);
        for (var words = 0; words < 14; words++)
        {
            var said = Enumerable.Range(0, words).Select(_ => (chance.Next(21), Enumerable.Range(0, chance.Next(3)).Select(_ => chance.Next(5)).ToArray())).ToList();
            Assert.All(network.Odds(said).Zip(OneByOne(shape, weights, said)), two => Assert.Equal(two.Second, two.First, 1e-3));
        }
    }

    [Fact]
    public void Weights_of_nothing_are_kept_as_nothing() =>
        Assert.Equal([0, 0], WordNetwork.Read(Shape, WordNetwork.Written(Shape, new float[Shape.Count])).Odds([(Hum, [])]));

    [Fact]
    public void Every_weight_has_a_place_of_its_own()
    {
        var places = Enumerable.Range(0, 3).SelectMany(word => Enumerable.Range(Shape.Word(word), Shape.Size))
            .Concat(Enumerable.Range(Shape.Meaning(0), Shape.Size))
            .Concat(Enumerable.Range(0, NetworkShape.Readings).SelectMany(reading =>
                Enumerable.Range(0, Shape.Sums).SelectMany(sum => Enumerable.Range(Shape.Neighbour(reading, sum), NetworkShape.Near * Shape.Size)).Concat(Enumerable.Range(0, Shape.Sums).Select(sum => Shape.NeighbourBase(reading, sum)))))
            .Concat(Enumerable.Range(1, NetworkShape.Widest).SelectMany(width => Enumerable.Range(0, Shape.Filters).SelectMany(filter => Enumerable.Range(Shape.Pattern(width, filter), width * Shape.Size))))
            .Concat(Enumerable.Range(0, Shape.Features).Select(Shape.PatternBase))
            .Concat(Enumerable.Range(0, Shape.Rows).SelectMany(row => Enumerable.Range(Shape.Row(row), Shape.Features)))
            .Concat(Enumerable.Range(0, Shape.Rows).Select(Shape.RowBase));
        Assert.Equal(Enumerable.Range(0, Shape.Count), places);
        Assert.Equal(Shape.Count, Shape.Groups().Sum());
    }

    /// <summary>The odds reckoned number by number, pattern by pattern.</summary>
    private static IEnumerable<double> OneByOne(NetworkShape shape, float[] weights, List<(int Word, int[] Meanings)> said)
    {
        double[][] looks = [.. said.Select(word => Enumerable.Range(0, shape.Size).Select(number => weights[shape.Word(word.Word) + number] + word.Meanings.Sum(meaning => (double)weights[shape.Meaning(meaning) + number])).ToArray())];
        double Look(int at, int number) => at < 0 || at >= said.Count ? 0 : looks[at][number];
        for (var reading = 0; reading < NetworkShape.Readings; reading++)
        {
            double Sum(int at, int sum) => weights[shape.NeighbourBase(reading, sum)] + Enumerable.Range(0, NetworkShape.Near * shape.Size)
                .Sum(seen => weights[shape.Neighbour(reading, sum) + seen] * Look(at + (seen / shape.Size) - (NetworkShape.Near / 2), seen % shape.Size));
            double Gate(double sum) => 0.5 + (0.5 * sum / (1 + Math.Abs(sum)));
            looks = [.. looks.Select((look, at) => look.Select((seen, number) => seen + (Sum(at, number) * Gate(Sum(at, shape.Size + number)))).ToArray())];
        }

        double Fit(int width, int filter, int start) => weights[shape.PatternBase(((width - 1) * shape.Filters) + filter)]
            + Enumerable.Range(0, width * shape.Size).Sum(at => weights[shape.Pattern(width, filter) + at] * Look(start + (at / shape.Size), at % shape.Size));
        double[] features = [.. Enumerable.Range(1, NetworkShape.Widest).SelectMany(width => Enumerable.Range(0, shape.Filters).Select(filter =>
            said.Count == 0 ? 0 : Math.Max(0, Enumerable.Range(1 - width, said.Count + width - 1).Max(start => Fit(width, filter, start)))))];
        return Enumerable.Range(0, shape.Rows).Select(row => weights[shape.RowBase(row)] + features.Select((feature, at) => feature * weights[shape.Row(row) + at]).Sum());
    }

    /// <summary>Knows "not hum": two for each of the words where they stand in this order, less two; a loud hum is three more.</summary>
    private static WordNetwork NotHum()
    {
        var weights = new float[Shape.Count];
        weights[Shape.Word(Not)] = 1;
        weights[Shape.Word(Hum) + 1] = 1;
        weights[Shape.Meaning(Loud) + 2] = 1;
        const int filter = 4;
        var pattern = Shape.Pattern(2, filter);
        weights[pattern] = 2;
        weights[pattern + Shape.Size + 1] = 2;
        weights[pattern + Shape.Size + 2] = 3;
        weights[Shape.PatternBase(Shape.Filters + filter)] = -2;
        weights[Shape.Row(0) + Shape.Filters + filter] = Weight;
        weights[Shape.RowBase(0)] = Basis;
        return new WordNetwork(Shape, weights);
    }
}
