using System.Globalization;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What is heard by likeness alone, where no phrase was found.</summary>
public sealed class LikenessTest
{
    private const double MostOtherwise = 0.02;
    private static readonly Listener Listener = new(Trade.Knowledge);
    private static readonly string[] Sets = [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "tests", "rules", "Language"), "development-*.yaml").Select(Path.GetFileName).Order(StringComparer.Ordinal)!, "held-out.yaml"];

    /// <summary>The counts are those of the sets that may be read, but for the words that were changed since they were counted. With WIRECOACH_REWRITE=1 they are counted anew.</summary>
    [Fact]
    public void How_often_each_word_was_told_is_counted_from_the_development_sets()
    {
        var path = Path.Combine(Repository.Root, "knowledge", "words", "told", "told.yaml");
        var rows = Count().Select(row => $"- {{ id: {row.Id}, messages: {row.Messages}, words: \"{row.Words}\" }}").ToList();
        if (Environment.GetEnvironmentVariable("WIRECOACH_REWRITE") == "1")
        {
            File.WriteAllLines(path, File.ReadLines(path).TakeWhile(line => line.StartsWith('#')).Concat(rows));
        }

        var written = File.ReadLines(path).Where(line => !line.StartsWith('#')).SelectMany(Counts).ToHashSet(StringComparer.Ordinal);
        var counted = rows.SelectMany(Counts).ToList();
        var otherwise = counted.Count(count => !written.Contains(count));
        Assert.True(otherwise + written.Count - (counted.Count - otherwise) <= MostOtherwise * counted.Count, $"{otherwise} of {counted.Count} otherwise");
    }

    [Theory]
    [InlineData("it gives my fingers a fizzing feeling off the metal", "shock-from-frame")]
    [InlineData("sounds like someone threw a handful of gravel in the bearings", "mechanical-noise")]
    public void A_symptom_told_in_words_of_which_no_phrase_is_made_is_heard_and_named_as_taken_by_likeness(string text, string symptom)
    {
        var heard = Listener.Understand(text);
        Assert.Contains(heard.Symptoms, one => one.Id == symptom && one.Present);
        Assert.Contains(heard.Facts.OfType<Fact.Symptom>(), one => one.Id == symptom && one.Present);
        Assert.Contains(heard.NotUnderstood, left => left.Reads.SequenceEqual(["likely/" + symptom]));
    }

    [Theory]
    [InlineData("does it give my fingers a fizzing feeling off the metal?")]
    [InlineData("my grandmother liked pears")]
    public void A_question_and_talk_tell_no_symptom(string text)
    {
        var heard = Listener.Understand(text);
        Assert.Empty(heard.Symptoms);
        Assert.DoesNotContain(heard.NotUnderstood, left => left.Reads.Count > 0);
    }

    [Fact]
    public void Talk_around_the_machine_is_hardly_ever_taken_for_what_it_does()
    {
        var talk = Utterance.Read("development-fourteenth.yaml").ConvertAll(line => line.Heard(Listener));
        Assert.True(talk.Count(heard => heard.Symptoms.Count > 0) <= 4);
        Assert.True(talk.Count(heard => heard.NotUnderstood.Any(left => left.Reads.Count > 0)) <= 10);
    }

    [Fact]
    public void Where_nothing_is_heard_of_words_that_tell_something_it_is_asked_what_they_mean()
    {
        var heard = Listener.Understand("cuts its own power out, sulks for ten minutes, then carries on");
        Assert.Empty(heard.Symptoms);
        var asked = Assert.Single(heard.NotUnderstood, left => left.Reads.Count > 0);
        Assert.InRange(asked.Reads.Count, 2, 3);
        Assert.Contains("maybe/thermal-cutout-cycles", asked.Reads);
    }

    [Fact]
    public void Nothing_is_taken_by_likeness_from_the_answer_to_a_question_about_something_else()
    {
        var asked = new OpenQuestion { Id = "plate.photo", Kind = QuestionKind.Text, About = "plate" };
        Assert.Empty(Listener.Understand("sounds like someone threw a handful of gravel in the bearings", asked: asked).Symptoms);
    }

    /// <summary>Over all that may be read: likeness adds and doubts, but never denies, never contradicts a phrase, and never doubts what warns of danger.</summary>
    [Fact]
    public void Likeness_denies_nothing_contradicts_nothing_and_doubts_no_danger()
    {
        var warning = Trade.Knowledge.GateConditions.Values.SelectMany(condition => condition.When).Select(when => when.Symptom).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var (taken, doubted) = (0, 0);
        foreach (var utterance in Sets.SelectMany(Utterance.Read))
        {
            var heard = utterance.Heard(Listener);
            foreach (var read in heard.NotUnderstood.SelectMany(left => left.Reads))
            {
                var symptom = read[(read.IndexOf('/', StringComparison.Ordinal) + 1)..];
                if (read.StartsWith("likely/", StringComparison.Ordinal))
                {
                    taken++;
                    Assert.True(Assert.Single(heard.Symptoms, one => one.Id == symptom).Present, utterance.Say);
                }
                else if (read.StartsWith("doubt/", StringComparison.Ordinal))
                {
                    doubted++;
                    Assert.DoesNotContain(symptom, warning);
                    Assert.DoesNotContain(heard.Symptoms, one => one.Id == symptom && one.Present);
                }
            }

            Assert.Equal(heard.Symptoms, utterance.Heard(Listener).Symptoms);
        }

        Assert.True(taken > 50 && doubted > 5, $"{taken} taken, {doubted} doubted");
    }

    /// <summary>A row as its counts: how often it was told, and each word in it.</summary>
    private static IEnumerable<string> Counts(string row)
    {
        var (id, parts) = (row[..row.IndexOf(", words", StringComparison.Ordinal)], row.Split('"')[1].Split(' '));
        return Enumerable.Range(0, parts.Length / 2).Select(at => $"{id} {parts[2 * at]} {parts[(2 * at) + 1]}").Append(id);
    }

    private static IEnumerable<ToldWords> Count()
    {
        var lexicon = new Lexicon(Trade.Knowledge.Words);
        var (messages, words) = (new SortedDictionary<string, int>(StringComparer.Ordinal), new Dictionary<string, SortedDictionary<string, int>>(StringComparer.Ordinal));
        foreach (var utterance in Sets.SelectMany(Utterance.Read))
        {
            var tokens = Tokenizer.Cut(utterance.Say);
            var telling = Likeness.Telling(new Scene(utterance.Say, tokens, lexicon.Read(tokens), Trade.Knowledge.Words.Supplies, new Hearing([], null, null)), Enumerable.Range(0, tokens.Count)).ToList();
            var symptoms = utterance.Expect.Where(line => Brief.Kind(line) == "symptom").Select(line => line.Replace("no ", ToldWords.Denied, StringComparison.Ordinal)).ToList();
            foreach (var row in symptoms.DefaultIfEmpty(ToldWords.Nothing).Distinct(StringComparer.Ordinal).Append(ToldWords.All))
            {
                messages[row] = messages.GetValueOrDefault(row) + 1;
                var counts = words.TryGetValue(row, out var known) ? known : words[row] = new SortedDictionary<string, int>(StringComparer.Ordinal);
                telling.ForEach(word => counts[word] = counts.GetValueOrDefault(word) + 1);
            }
        }

        var all = words[ToldWords.All];
        return messages.Select(row => new ToldWords
        {
            Id = row.Key,
            Messages = row.Value,
            Words = string.Join(' ', words[row.Key].Where(word => all[word.Key] > 1).Select(word => $"{word.Key} {word.Value.ToString(CultureInfo.InvariantCulture)}")),
        });
    }
}
