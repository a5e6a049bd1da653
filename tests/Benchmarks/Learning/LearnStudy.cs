using System.Globalization;
using System.Text.RegularExpressions;
using WireCoach.Knowledge;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;
using WireCoach.Rules.Tests;
using WireCoach.Rules.Tests.Language;

namespace WireCoach.Benchmarks.Learning;

/// <summary>
/// Learns from the sets that may be read how strongly each word speaks for each symptom, what words tell in their order, and how far that and the phrases are to be believed,
/// and, asked to, writes all of it into the knowledge; unjudged, it leaves the belief as it is; asked for the words or the order alone, it leaves the rest.
/// </summary>
/// <remarks>
/// The weights of words are those of a logistic regression for each symptom and each denial, held small; what their order tells is a network that <see cref="Teacher"/> teaches.
/// The belief is learnt from plain told sets only, of whose lines no phrase was ever made, weighed by what the other sets taught: so it is what holds for a message that nobody has read, written as people write.
/// </remarks>
internal static partial class LearnStudy
{
    private const int Fewest = 4;
    private const int Seldom = 2;
    private const int SeldomTogether = 5;
    private const int SeldomMeant = 3;
    private const int Size = 96;
    private const int Filters = 128;
    private const int Kept = 2;
    private const int OneOf = 3;
    private const double Loose = 2;
    private const double Step = 0.2;
    private const double LeastTogether = 2;

    private static readonly double[] Limits = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];

    public static void Run(string[] args)
    {
        var knowledge = KnowledgeFolder.Load(Path.Combine(Repository.Root, "knowledge"));
        var listener = new Listener(knowledge);
        if (args is ["say", .. var said])
        {
            Array.ForEach(said, text => Say(text, listener, new Likeness(knowledge.Words, knowledge.Rules["likeness"], [])));
            return;
        }

        var lines = ToldSets.Files.SelectMany(file => Utterance.Read(file).ConvertAll(line => Line.Of(line, file, listener))).ToList();
        var rows = ToldSets.Rows(lines.Select(line => line.Expected)).Where(row => row.Value >= Fewest).ToList();
        var words = lines.SelectMany(line => line.Words).CountBy(word => word, StringComparer.Ordinal).Where(word => word.Value >= (CountedWords.IsPair(word.Key) ? SeldomTogether : Seldom)).Select(word => word.Key).Order(StringComparer.Ordinal).ToList();
        var places = WordOrder.Numbered(words);
        lines.ForEach(line => line.Places = [.. line.Words.Where(places.ContainsKey).Select(word => places[word])]);
        var ordered = Usual(lines, line => line.InOrder.Select(word => word.Name).Where(IsPlain), Seldom);
        var meanings = Usual(lines, line => line.InOrder.SelectMany(word => word.Meanings), SeldomMeant);
        var names = rows.ConvertAll(row => row.Key);
        var shape = new NetworkShape(ordered.Count, meanings.Count, rows.Count, Size, Filters);
        var (numbers, meant) = (WordOrder.Numbered(ordered), WordOrder.Numbered(meanings));
        lines.ForEach(line => line.Lesson = new([.. line.InOrder.Select(word => WordOrder.Numbered(word, numbers, meant))], [.. line.Expected.Select(row => names.IndexOf(row)).Where(row => row >= 0)], ToldSets.IsPlain(line.File)));
        Console.WriteLine($"{lines.Count} lines, {rows.Count} rows, {words.Count} words and pairs, {ordered.Count} words in order, {meanings.Count} meanings, {shape.Count} weights of the network");

        if (args.Contains("words"))
        {
            Write(rows, words, lines, knowledge);
            return;
        }

        var apart = args.Contains("unjudged") || args.Contains("order") ? [] : Apart(lines);
        var others = lines.FindAll(line => !apart.Contains(line.File));
        List<List<Line>> lessons = [.. apart.Count > 0 ? Enumerable.Repeat(others, Kept) : [], .. args.Contains("write") ? Enumerable.Repeat(lines, Kept) : []];
        var networks = lessons.Select((taught, seed) => (taught, seed)).AsParallel().AsOrdered().Select(one => Teacher.Taught(shape, one.taught.ConvertAll(line => line.Lesson!), one.seed)).ToList();
        Console.WriteLine($"{networks.Count} networks taught");

        if (apart.Count > 0)
        {
            Judge(Unseen(others, lines.FindAll(line => apart.Contains(line.File) && line.Lesson!.Plain), names, words.Count, networks[..Kept].ConvertAll(weights => new WordNetwork(shape, weights))), args.Contains("write"));
        }

        if (args.Contains("write"))
        {
            if (!args.Contains("order"))
            {
                Write(rows, words, lines, knowledge);
            }

            WriteOrder(ordered, meanings, networks.TakeLast(Kept).Select(network => WordNetwork.Written(shape, network)));
        }
    }

    /// <summary>How far all of it is to be believed, by messages that nobody learnt from.</summary>
    private static void Judge(List<Judged> likelihoods, bool write)
    {
        var belief = Believe(likelihoods);
        double[][] odds = [.. likelihoods.GroupBy(one => one.Row).Select(row => row.Select(one => one.Inputs.Sum(input => input.Value * belief[input.Name])).ToArray())];
        bool[][] told = [.. likelihoods.GroupBy(one => one.Row).Select(row => row.Select(one => one.IsTold).ToArray())];
        string[] names = [.. likelihoods.Select(one => one.Row).Distinct(StringComparer.Ordinal)];
        var together = new RowsTogether(odds, told);
        Print(likelihoods, [.. odds.SelectMany(row => row).Select(Beside.Chance)]);
        Console.WriteLine(string.Join(", ", belief.Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Key}: {one.Value:0.00}"))));
        Print(likelihoods, [.. together.Chances().SelectMany(row => row)]);
        if (write)
        {
            WriteBelief(belief);
            Keep("beside", [.. names.Select((_, row) => together.Written(row, names))]);
        }
    }

    /// <summary>What one message is likely to tell, and which of its words speak for and against it.</summary>
    private static void Say(string text, Listener listener, Likeness likeness)
    {
        var (counted, phrases) = listener.Weighing(text, [], asked: null, region: null);
        Console.WriteLine($"{text}{Environment.NewLine}  phrases: {string.Join(", ", phrases)}");
        var (chances, scores) = (likeness.Chances(counted, phrases), likeness.Scores(counted));
        foreach (var row in Enumerable.Range(0, chances.Length).Where(row => phrases.Contains(likeness.Names[row]) || chances[row] > likeness.Limit("conceivable")).OrderByDescending(row => chances[row]))
        {
            var speaking = counted.Words.Select(word => (Word: word, Weight: likeness.Weight(word, row))).Where(word => word.Weight != 0).OrderByDescending(word => word.Weight);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {chances[row]:0.00} {likeness.Names[row]}: in order {scores[row].InOrder:0.0}, apart {scores[row].Apart:0.0}: {string.Join(' ', speaking.Select(word => string.Create(CultureInfo.InvariantCulture, $"{word.Word} {word.Weight:0.0}")))}"));
        }
    }

    /// <summary>One told set of three, kept apart to judge by.</summary>
    private static HashSet<string> Apart(List<Line> lines) =>
        [.. lines.Select(line => line.File).Where(ToldSets.IsTold).Distinct(StringComparer.Ordinal).Where((_, at) => at % OneOf == 0)];

    /// <summary>Each row of some lines, by what others taught.</summary>
    private static List<Judged> Unseen(List<Line> taught, List<Line> asked, List<string> rows, int words, List<WordNetwork> networks)
    {
        var inOrder = asked.ConvertAll(line => networks.ConvertAll(network => network.Odds(line.Lesson!.Said)));
        return [.. rows.Select((row, place) => (row, place)).AsParallel().AsOrdered().SelectMany(one =>
        {
            var weights = Fit(taught, one.row, words);
            return asked.Select((line, at) => new Judged(line, one.row, (Score(line, weights), inOrder[at].Average(odds => odds[one.place])))).ToList();
        })];
    }

    private static List<string> Usual(List<Line> lines, Func<Line, IEnumerable<string>> of, int seldom) =>
        [.. lines.SelectMany(line => of(line).Distinct(StringComparer.Ordinal)).CountBy(word => word, StringComparer.Ordinal).Where(word => word.Value >= seldom).Select(word => word.Key).Order(StringComparer.Ordinal)];

    /// <summary>Whether a word can stand in a row of words between quotation marks.</summary>
    private static bool IsPlain(string word) => !word.AsSpan().ContainsAny(['"', '\\', ' ']);

    /// <summary>The weights of the words for one row, the last that of no word, looked for from those that are known on.</summary>
    private static double[] Fit(List<Line> lines, string row, int words, double[]? known = null)
    {
        var told = lines.ConvertAll(line => line.Expected.Contains(row));
        return Slope.Lowest(known ?? new double[words + 1], weights =>
        {
            var (value, gradient) = (0.5 * weights.Sum(weight => weight * weight), weights.ToArray());
            for (var at = 0; at < lines.Count; at++)
            {
                var odds = Score(lines[at], weights);
                var chance = Beside.Chance(odds);
                value += Loose * Slope.Miss(told[at] ? odds : -odds);
                var pull = Loose * (chance - (told[at] ? 1 : 0));
                gradient[words] += pull;
                foreach (var place in lines[at].Places)
                {
                    gradient[place] += pull;
                }
            }

            return (value, gradient);
        });
    }

    /// <summary>How far words and phrases are believed, by the name of each figure.</summary>
    private static Dictionary<string, double> Believe(List<Judged> judged)
    {
        var inputs = judged.ConvertAll(one => one.Inputs.Select(input => input.Value).ToArray());
        var found = Slope.Lowest(new double[inputs[0].Length], weights =>
        {
            var (value, gradient) = (0.5 * weights.Sum(weight => weight * weight), weights.ToArray());
            for (var at = 0; at < inputs.Count; at++)
            {
                var odds = inputs[at].Zip(weights, (input, weight) => input * weight).Sum();
                value += Slope.Miss(judged[at].IsTold ? odds : -odds);
                var pull = Beside.Chance(odds) - (judged[at].IsTold ? 1 : 0);
                for (var input = 0; input < weights.Length; input++)
                {
                    gradient[input] += pull * inputs[at][input];
                }
            }

            return (value, gradient);
        });
        return judged[0].Inputs.Zip(found, (input, weight) => (input.Name, weight)).ToDictionary(one => one.Name, one => one.weight, StringComparer.Ordinal);
    }

    private static double Score(Line line, double[] weights)
    {
        var sum = weights[^1];
        foreach (var place in line.Places)
        {
            sum += weights[place];
        }

        return sum;
    }

    private static void Print(List<Judged> judged, double[] likely)
    {
        var chances = judged.Zip(likely, (one, chance) => (one, Chance: chance)).ToList();
        Console.WriteLine($"{"likely above",12}{"recall",8}{"precision",10}{"  of what no phrase tells: right of taken",42}{"  of what a phrase tells: wrong of left out",44}");
        var meant = judged.Count(one => one.IsTold);
        foreach (var limit in Limits)
        {
            var heard = chances.FindAll(one => one.Chance > limit);
            var right = heard.Count(one => one.one.IsTold);
            var taken = chances.FindAll(one => one.Chance > limit && one.Chance <= limit + 0.1 && !one.one.Phrase && !one.one.Row.StartsWith(ToldWords.Denied, StringComparison.Ordinal));
            var left = chances.FindAll(one => one.Chance <= limit && one.Chance > limit - 0.1 && one.one.Phrase);
            Console.WriteLine($"{limit,12:0.0}{(double)right / meant,8:0.000}{(double)right / heard.Count,10:0.000}{taken.Count(one => one.one.IsTold),30} of {taken.Count,8}{left.Count(one => one.one.IsTold),32} of {left.Count,8}");
        }

        var phrases = judged.FindAll(one => one.Phrase);
        Console.WriteLine($"phrases alone: {(double)phrases.Count(one => one.IsTold) / meant:0.000} {(double)phrases.Count(one => one.IsTold) / phrases.Count:0.000}");
    }

    private static void Write(List<KeyValuePair<string, int>> rows, List<string> words, List<Line> lines, TradeKnowledge knowledge)
    {
        var likeness = new Likeness(knowledge.Words, knowledge.Rules["likeness"], []);
        var written = rows.AsParallel().AsOrdered().Select(row =>
        {
            var weights = Fit(lines, row.Key, words.Count, Known(likeness, knowledge.Words, row.Key, words));
            var speaking = words.Select((word, at) => (word, Rounded: Math.Round(weights[at] / Step))).Where(one => Math.Abs(one.Rounded) >= (CountedWords.IsPair(one.word) ? LeastTogether : 1))
                .Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.word} {one.Rounded * Step:0.0}"));
            return string.Create(CultureInfo.InvariantCulture, $"- {{ id: {row.Key}, messages: {row.Value}, before: {weights[^1]:0.00}, words: \"{string.Join(' ', speaking)}\" }}");
        }).ToList();
        Keep("told", written);
    }

    /// <summary>What was learnt before of a row, as far as its words are still there.</summary>
    private static double[]? Known(Likeness likeness, Vocabulary known, string row, List<string> words) =>
        likeness.Names.ToList().IndexOf(row) is var place and >= 0 ? [.. words.Select(word => likeness.Weight(word, place)), known.Told[row].Before] : null;

    private static void WriteOrder(List<string> words, List<string> meanings, IEnumerable<string> weights) =>
        Keep("order", [$"- {{ id: words-in-order, size: {Size}, filters: {Filters}, words: \"{string.Join(' ', words)}\", meanings: \"{string.Join(' ', meanings)}\", weights: [{string.Join(", ", weights.Select(one => $"\"{one}\""))}] }}"]);

    /// <summary>Writes what was learnt, under the words that say what it is.</summary>
    private static void Keep(string name, IReadOnlyList<string> written)
    {
        var path = Path.Combine(Repository.Root, "knowledge", "words", name, $"{name}.yaml");
        File.WriteAllLines(path, File.ReadLines(path).TakeWhile(line => line.StartsWith('#')).Concat(written).ToList());
    }

    private static void WriteBelief(Dictionary<string, double> belief)
    {
        var path = Path.Combine(Repository.Root, "knowledge", "limits", "likeness.yaml");
        File.WriteAllText(path, Figure().Replace(File.ReadAllText(path), figure => belief.TryGetValue(figure.Groups[1].Value, out var found) ? string.Create(CultureInfo.InvariantCulture, $"{figure.Groups[1].Value}: {found:0.00}") : figure.Value));
    }

    [GeneratedRegex(@"([a-z-]+): (-?[0-9.]+)", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Figure();

    /// <summary>One line of a set, as it is weighed.</summary>
    private sealed record Line(string File, IReadOnlyList<string> Words, IReadOnlyList<CountedWord> InOrder, HashSet<string> Phrases, HashSet<string> Expected)
    {
        public int[] Places { get; set; } = [];

        public Lesson? Lesson { get; set; }

        public static Line Of(Utterance said, string file, Listener listener)
        {
            var (counted, phrases) = said.Weighed(listener);
            return new(file, counted.Words, counted.InOrder, [.. phrases], ToldSets.Symptoms(said));
        }
    }

    /// <summary>One row of one line, by its words alone.</summary>
    private sealed record Judged(Line Line, string Row, (double Apart, double InOrder) Scores)
    {
        public bool IsTold => Line.Expected.Contains(Row);

        public bool Phrase => Line.Phrases.Contains(Row);

        public IReadOnlyList<(string Name, double Value)> Inputs { get; } = [.. Likeness.Inputs(Scores, Line.Phrases.Contains(Row), Line.Phrases.Contains(Likeness.Contrary(Row)), Line.Phrases.Count, Likeness.IsDenial(Row))];
    }
}
