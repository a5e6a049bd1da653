using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What is heard by likeness alone, where no phrase was found.</summary>
public sealed class LikenessTest
{
    private const double MostOff = 0.1;
    private const double FewOff = 3;
    private static readonly Listener Listener = new(Trade.Knowledge);
    private static readonly string[] Sets = ToldSets.Files;

    /// <summary>What was learnt belongs to the sets as they are: as many messages told each row, and the chances that the words alone give it add up to about as many. <c>learn write</c> of the benchmarks learns anew.</summary>
    [Fact]
    public void What_was_learnt_of_words_is_that_of_the_sets_that_may_be_read()
    {
        var lines = Sets.SelectMany(Utterance.Read).ToList();
        var told = ToldSets.Rows(lines.Select(ToldSets.Symptoms));
        Assert.All(Trade.Knowledge.Words.Told.Values, row => Assert.Equal(told[row.Id], row.Messages));

        var likeness = new Likeness(Trade.Knowledge.Words.Told, Trade.Knowledge.Rules["likeness"], []);
        var (sums, words) = (new double[likeness.Names.Count], new HashSet<string>(StringComparer.Ordinal));
        foreach (var said in lines.Select(line => line.Weighed(Listener).Words))
        {
            words.UnionWith(said);
            var scores = likeness.Scores(said);
            for (var row = 0; row < sums.Length; row++)
            {
                sums[row] += 1 / (1 + Math.Exp(-scores[row]));
            }
        }

        Assert.DoesNotContain(Trade.Knowledge.Words.Told.Values.SelectMany(row => row.Words.Split(' ').Where((_, at) => at % 2 == 0)), word => !words.Contains(word));
        Assert.All(likeness.Names.Zip(sums), row => Assert.InRange(row.Second, (told[row.First] * (1 - MostOff)) - FewOff, (told[row.First] * (1 + MostOff)) + FewOff));
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
    [InlineData("would it growl with a bad bearing?")]
    [InlineData("my grandmother liked pears")]
    public void A_question_and_talk_tell_no_symptom(string text)
    {
        var heard = Listener.Understand(text);
        Assert.Empty(heard.Symptoms);
        Assert.DoesNotContain(heard.NotUnderstood, left => left.Reads.Any(read => read.StartsWith("likely/", StringComparison.Ordinal) || read.StartsWith("maybe/", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_question_beside_them_casts_no_doubt_on_what_is_told()
    {
        var heard = Listener.Understand("could a bad capacitor make it growl? if I flick the blade it goes. the bulb in the room dips");
        Assert.Equal(["lights-dim", "starts-if-spun"], heard.Symptoms.Where(one => one.Present).Select(one => one.Id).Order(StringComparer.Ordinal));
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
        var heard = Listener.Understand("the old strength has gone out of it");
        Assert.Empty(heard.Symptoms);
        var asked = Assert.Single(heard.NotUnderstood, left => left.Reads.Count > 0);
        Assert.InRange(asked.Reads.Count, 1, 3);
        Assert.Contains("maybe/low-torque", asked.Reads);
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
        var stopping = Trade.Knowledge.GateConditions.Values.Where(condition => condition.Stops).SelectMany(condition => condition.When).Select(when => when.Symptom).OfType<string>().ToHashSet(StringComparer.Ordinal);
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
                    Assert.DoesNotContain(symptom, stopping);
                    Assert.Contains(heard.Facts.OfType<Fact.Choice>(), choice => choice.Question == Fact.Choice.Doubted + symptom);
                    Assert.DoesNotContain(heard.Symptoms, one => one.Id == symptom && one.Present);
                }
            }

            Assert.Equal(heard.Symptoms, utterance.Heard(Listener).Symptoms);
        }

        Assert.True(taken > 50 && doubted > 5, $"{taken} taken, {doubted} doubted");
    }
}
