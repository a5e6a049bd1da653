using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;
using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Tests.Language;

/// <summary>What is heard by likeness alone, where no phrase was found.</summary>
public sealed class LikenessTest
{
    private const double MostOff = 0.15;
    private const double FewOff = 5;
    private const double MostOffInOrder = 0.25;
    private const double FewOffInOrder = 25;
    private const int OneOf = 8;
    private static readonly Listener Listener = new(Trade.Knowledge);
    private static readonly Vocabulary Words = Trade.Knowledge.Words;
    private static readonly List<Utterance> Lines = [.. ToldSets.Files.SelectMany(Utterance.Read)];

    /// <summary>
    /// What was learnt belongs to the sets and the concepts as they are: as many messages told each row, and the chances that the words give it, without their order and with it, add up to about as many.
    /// <c>learn write</c> of the benchmarks learns anew.
    /// </summary>
    [Fact]
    public void What_was_learnt_of_words_is_that_of_the_sets_that_may_be_read()
    {
        var told = ToldSets.Rows(Lines.Select(ToldSets.Symptoms));
        Assert.All(Words.Told.Values, row => Assert.Equal(told[row.Id], row.Messages));

        var likeness = new Likeness(Words, Trade.Knowledge.Rules["likeness"], []);
        var asked = Some().ToList();
        var scores = asked.AsParallel().AsOrdered().Select(line => likeness.Scores(line.Weighed(Listener).Counted)).ToList();
        var expected = ToldSets.Rows(asked.Select(ToldSets.Symptoms));
        Assert.All(Enumerable.Range(0, likeness.Names.Count), row =>
        {
            var here = expected.GetValueOrDefault(likeness.Names[row]);
            Assert.InRange(scores.Sum(line => Chance(line[row].Apart)), (here * (1 - MostOff)) - FewOff, (here * (1 + MostOff)) + FewOff);
            Assert.InRange(scores.Sum(line => Chance(line[row].InOrder)), (here * (1 - MostOffInOrder)) - FewOffInOrder, (here * (1 + MostOffInOrder)) + FewOffInOrder);
        });
    }

    [Fact]
    public void Every_concept_that_words_were_learnt_by_is_there()
    {
        var meanings = Words.Told.Values.SelectMany(row => row.Words.Split(' ').Where((_, at) => at % 2 == 0)).Concat(Words.Order.Values.Single().Meanings.Split(' ')).Where(word => word.Contains('@', StringComparison.Ordinal));
        Assert.Empty(meanings.Select(word => word.TrimStart('-', '@')).Where(concept => !Words.Concepts.ContainsKey(concept) && !Words.Supplies.ContainsKey(concept.Replace("supply.", string.Empty, StringComparison.Ordinal))).Distinct());
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
    [InlineData("I have never had to press the reset on it", "thermal-cutout-cycles")]
    [InlineData("barely a whisper from the bearings", "mechanical-noise")]
    public void What_is_all_but_certainly_denied_is_taken_so_and_named_as_taken(string text, string symptom)
    {
        var heard = Listener.Understand(text);
        Assert.False(Assert.Single(heard.Symptoms, one => one.Id == symptom).Present);
        Assert.Contains(heard.NotUnderstood, left => left.Reads.SequenceEqual(["likely-not/" + symptom]));
    }

    /// <summary>What the figures say is not taken otherwise because of the words around them.</summary>
    [Theory]
    [InlineData("put the tach on, plate says 1725 its doing 1140", "runs-fast")]
    [InlineData("when the blade bites it trips the breaker", "trips-at-once")]
    [InlineData("none of the leads read to frame", "leads-unmarked")]
    [InlineData("black and white 3.2, red and yellow 3.3, blue and orange 8.9 rest open", "unequal-phase-currents")]
    public void What_was_read_is_not_taken_for_what_it_is_not(string text, string symptom) =>
        Assert.DoesNotContain(Listener.Understand(text, ["1", "2", "3"]).Symptoms, one => one.Id == symptom);

    [Theory]
    [InlineData("would it growl with a bad bearing?")]
    [InlineData("my grandmother taught at the village school")]
    [InlineData("it has a capacitor")]
    [InlineData("the cord is on the bench")]
    [InlineData("does it turn left or right")]
    public void A_question_and_talk_tell_no_symptom(string text)
    {
        var heard = Listener.Understand(text);
        Assert.Empty(heard.Symptoms);
        Assert.DoesNotContain(heard.NotUnderstood, left => left.Reads.Any(read => read.StartsWith("likely/", StringComparison.Ordinal) || read.StartsWith("maybe/", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("which capacitor do I need, the start cap is gone, it says 161-193 uF 250 VAC", false)]
    [InlineData("the run capacitor is dead", false)]
    [InlineData("the run capacitor has blown its top off", true)]
    public void A_capacitor_that_is_gone_or_dead_need_not_bulge(string text, bool bulges) =>
        Assert.Equal(bulges, Listener.Understand(text).Symptoms.Any(one => one is { Id: "capacitor-swollen", Present: true }));

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
        var heard = Listener.Understand("it has lost its spirit");
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

    /// <summary>Over much of what may be read: likeness adds, denies and doubts, but never contradicts a phrase, and never denies what warns of danger.</summary>
    [Fact]
    public void Likeness_contradicts_nothing_and_denies_no_danger()
    {
        var stopping = Trade.Knowledge.GateConditions.Values.Where(condition => condition.Stops).SelectMany(condition => condition.When).Select(when => when.Symptom).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var (taken, denied, doubted) = (0, 0, 0);
        foreach (var (utterance, heard) in Some().AsParallel().AsOrdered().Select(line => (line, line.Heard(Listener))))
        {
            foreach (var read in heard.NotUnderstood.SelectMany(left => left.Reads))
            {
                var symptom = read[(read.IndexOf('/', StringComparison.Ordinal) + 1)..];
                if (read.StartsWith("likely/", StringComparison.Ordinal))
                {
                    taken++;
                    Assert.True(Assert.Single(heard.Symptoms, one => one.Id == symptom).Present, utterance.Say);
                }
                else if (read.StartsWith("likely-not/", StringComparison.Ordinal))
                {
                    denied++;
                    Assert.DoesNotContain(symptom, stopping);
                    Assert.False(Assert.Single(heard.Symptoms, one => one.Id == symptom).Present, utterance.Say);
                }
                else if (read.StartsWith("doubt/", StringComparison.Ordinal))
                {
                    doubted++;
                    Assert.Contains(heard.Facts.OfType<Fact.Choice>(), choice => choice.Question == Fact.Choice.Doubted + symptom);
                    Assert.DoesNotContain(heard.Symptoms, one => one.Id == symptom && one.Present);
                }
            }

            Assert.Equal(heard.Symptoms, utterance.Heard(Listener).Symptoms);
        }

        Assert.True(taken > 50 && denied > 5 && doubted > 5, $"{taken} taken, {denied} denied, {doubted} doubted");
    }

    /// <summary>Of what stops all work a doubt counts for the gate as its telling does, so asking after it takes no warning away.</summary>
    [Theory]
    [InlineData("The lathe is in a damp workshop and it hums when I switch it on", "got-wet")]
    [InlineData("The plug of the stirrer goes soft and hot, but I can smell nothing.", "smoke-or-burnt-smell")]
    public void A_danger_that_the_words_all_but_rule_out_is_asked_after(string text, string symptom)
    {
        var heard = Listener.Understand(text);
        Assert.DoesNotContain(heard.Symptoms, one => one.Id == symptom);
        Assert.Contains(heard.Facts.OfType<Fact.Choice>(), choice => choice.Question == Fact.Choice.Doubted + symptom);
    }

    /// <summary>Lines of all sets.</summary>
    private static IEnumerable<Utterance> Some() => Lines.Where((_, at) => at % OneOf == 0);

    private static double Chance(double odds) => 1 / (1 + Math.Exp(-odds));
}
