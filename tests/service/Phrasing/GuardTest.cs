using WireCoach.Knowledge;
using WireCoach.Service.Phrasing;

namespace WireCoach.Service.Tests.Phrasing;

public sealed class GuardTest
{
    private static readonly WireCoach.Rules.Reference.TradeKnowledge Trade = KnowledgeFolder.Load(KnowledgeFolder.Beside);
    private static readonly Guard Guard = new(Trade.Phrasing);

    [Theory]
    [InlineData("Tie T1 to T4.", "Please tie T1 to T4.")]
    [InlineData("It is a common cause with such motors.", "It's a frequent reason with such motors")]
    [InlineData("The meter shows 12.5 Ω.", "The multimeter displays 12.5 Ω.")]
    [InlineData("Do not push it by hand: it can take fingers.", "Don't push it by hand: it can take fingers.")]
    [InlineData("Don't push it by hand.", "Don’t push it by hand.")]
    [InlineData("Do not touch it. Do not open it.", "Never touch it. Never open it.")]
    [InlineData("Tie T1 to T4.", " Tie  T1 to T4 ")]
    [InlineData("Found: A wire is open.", "Found: wire is open.")]
    [InlineData("Is it open? A wire was cut.", "Is it open? wire was cut.")]
    [InlineData("Stop! A wire was cut.", "Stop! wire was cut.")]
    [InlineData("Look there. A wire was cut.", "Look there. wire was cut.")]
    [InlineData("I am sure of it.", "I'm sure of it.")]
    [InlineData("The nine-lead motor is old.", "The nine lead motor is old.")]
    [InlineData("Look at the rating plate", "Look at the nameplate")]
    [InlineData("The motor isn't able to turn.", "The motor cannot turn.")]
    [InlineData("It isn't a proof", "It is no proof")]
    [InlineData("Unless it's known otherwise, stop.", "Unless known otherwise, stop.")]
    public void The_same_in_other_words_stands(string source, string text) =>
        Assert.Null(Guard.Compare(source, text, Corpus.Leads).Reason);

    [Theory]
    [InlineData("The meter shows 12.5 Ω.", "The meter shows 125 Ω.", "quantity")]
    [InlineData("The meter shows 12.5 MΩ.", "The meter shows 12.5 mΩ.", "quantity")]
    [InlineData("The meter shows 12.5 Ω.", "The meter shows twelve and a half Ω.", "quantity")]
    [InlineData("It may be 40 °C.", "It may be 40 °F.", "quantity")]
    [InlineData("It may be 40 °C.", "It may be 40 C.", "characters")]
    [InlineData("Tie it to + here.", "Tie it to here.", "quantity")]
    [InlineData("It is U = 230 V.", "It is U 230 V.", "quantity")]
    [InlineData("It reads OL here.", "It reads ol here.", "quantity")]
    [InlineData("Give it in mΩ.", "Give it in MΩ.", "quantity")]
    [InlineData("It reads 5 Hz.", "It reads 5 hz.", "quantity")]
    [InlineData("It takes 2 in all.", "It takes 2 on all.", "state")]
    [InlineData("It may be 40 °C.", "It may be 40 C°.", "quantity")]
    [InlineData("The motors' fans hum.", "The motors fans hum.", "mark")]
    [InlineData("Tie T1 to T4.", "Tie T4 to T1.", "lead")]
    [InlineData("Tie T98 to T1.", "Tie T89 to T1.", "lead")]
    [InlineData("C is open here.", "c is open here.", "lead")]
    [InlineData("Tie A to T1.", "Tie to T1.", "lead")]
    [InlineData("Tie C to S.", "Tie S to C.", "lead")]
    [InlineData("Push it (gently) in.", "Push it gently) in.", "mark")]
    [InlineData("It is a start/run winding.", "It is a start run winding.", "mark")]
    [InlineData("The plate decides here.", "The plate decides -here.", "mark")]
    [InlineData("The plate decides here.", "The plate decides here-", "mark")]
    [InlineData("The plate decides here.", "-The plate decides here.", "mark")]
    [InlineData("It shows three volts.", "It shows two volts.", "number")]
    [InlineData("The plate decides for it.", "The plate decides by it.", "grammar")]
    [InlineData("The plate decides nicely.", "The plate decides.", "missing")]
    [InlineData("The plate decides.", "The label decides.", "words")]
    [InlineData("The \u200bplate decides.", "The \u200bplate decides.", "characters")]
    [InlineData("The \u0007plate decides.", "The \u0007plate decides.", "characters")]
    [InlineData("The \ud83d\udc4dplate decides.", "The \ud83d\udc4dplate decides.", "characters")]
    [InlineData("Tie T1 to T4.", "Tie \u04221 to T4.", "characters")]
    [InlineData("Tie T1 to T4.", "Separate T1 from T4.", "verb")]
    [InlineData("Do not touch T1.", "Do touch T1.", "negation")]
    [InlineData("Wait until it stops.", "Wait unless it stops.", "condition")]
    [InlineData("Discharge it before you go on.", "Discharge it after you go on.", "order")]
    [InlineData("It must stay dead.", "It may stay dead.", "modality")]
    [InlineData("Tie T1 to T4 only.", "Tie T1 to T4.", "quantifier")]
    [InlineData("Look at the joints.", "Look at the safe joints.", "hazard")]
    [InlineData("Read T1 to T4.", "Read T1 to T4 with the supply back on.", "state")]
    [InlineData("The plate decides.", "The plate decides?", "mark")]
    [InlineData("The plate decides.", "The plate decides nicely.", "added")]
    [InlineData("The plate decides here.", "The plate here decides.", "moved")]
    [InlineData("No, power stays away.", "No power stays away.", "mark")]
    [InlineData("The plate decides.", "", "empty")]
    [InlineData("The plate decides.", "**The plate decides.**", "characters")]
    [InlineData("The plate decides.", "Plate", "length")]
    public void What_says_something_else_is_refused_by_its_reason(string source, string text, string reason) =>
        Assert.Equal(reason, Guard.Compare(source, text, Corpus.Leads).Reason);

    [Theory]
    [InlineData("Do not bypass the protector.", "Do not simply bypass the protector.")]
    [InlineData("The fan is broken.", "The fan is damaged.")]
    [InlineData("A few motors lack it.", "Few motors lack it.")]
    [InlineData("A third of it is missing.", "The third of it is missing.")]
    [InlineData("The insulation meter shows it.", "The insulation multimeter shows it.")]
    [InlineData("The meter shows 5 mohm.", "The meter shows 5 Mohm.")]
    [InlineData("Stop, motor is hot and it turns.", "Stop motor is hot, and it turns.")]
    [InlineData("It is red-black and blue.", "It is red black-and blue.")]
    public void Small_words_and_signs_that_turn_the_meaning_are_no_fillers(string source, string text) =>
        Assert.False(Guard.Compare(source, text, new HashSet<string> { "red", "black", "blue" }).IsFaithful);

    [Fact]
    public void What_is_far_longer_or_far_shorter_is_not_even_read()
    {
        var (longest, source) = (new string('a', 2000), new string('a', 20));
        Assert.Equal((null, "length"), (Guard.Compare(longest, longest, Corpus.Leads).Reason, Guard.Compare(longest + "a", longest + "a", Corpus.Leads).Reason));
        Assert.Equal(("words", "length"), (Guard.Compare(source, new string('b', Guard.Longest(source)), Corpus.Leads).Reason, Guard.Compare(source, new string('b', Guard.Longest(source) + 1), Corpus.Leads).Reason));
        Assert.Equal(("words", "length"), (Guard.Compare(source, new string('b', 7), Corpus.Leads).Reason, Guard.Compare(source, new string('b', 6), Corpus.Leads).Reason));
    }

    [Theory]
    [InlineData("A is open.", "Is open.")]
    [InlineData("Found: A is open.", "Found: is open.")]
    [InlineData("Read a to B.", "Read to B.")]
    [InlineData("Tie close to B.", "Tie near B.")]
    public void A_lead_that_is_called_like_an_article_is_a_lead(string source, string text) =>
        Assert.Equal("lead", Guard.Compare(source, text, new HashSet<string> { "A", "a", "B", "close" }).Reason);

    [Theory]
    [InlineData("how often it is started", "often how it is started")]
    [InlineData("It is too often started.", "Often it is too started.")]
    public void How_often_is_no_often_of_the_whole(string source, string text) => Assert.False(Guard.Compare(source, text, Corpus.Leads).IsFaithful);

    [Fact]
    public void No_unfaithful_rewording_of_the_corpus_passes_and_few_faithful_ones_are_lost()
    {
        var sources = Corpus.OneIn(5, Corpus.Sources(Trade));
        var (good, bad) = (Corpus.Faithful(sources).ToList(), Corpus.Unfaithful(sources, seed: 3).ToList());
        Assert.True(good.Count >= 400 && bad.Count >= 600, $"{good.Count} faithful, {bad.Count} unfaithful");
        Assert.DoesNotContain(bad, pair => Guard.Compare(pair.Source, pair.Text, Corpus.Leads).IsFaithful);
        Assert.True(good.Count(pair => !Guard.Compare(pair.Source, pair.Text, Corpus.Leads).IsFaithful) <= good.Count * 0.10);
    }

    [Fact]
    public void A_fluent_writer_may_move_clauses_but_never_what_they_bind()
    {
        var sources = Corpus.Sources(Trade);
        var (good, bad) = (NaturalCorpus.Faithful(sources).ToList(), NaturalCorpus.Unfaithful(sources).ToList());
        Assert.True(good.Count >= 150 && bad.Count >= 200, $"{good.Count} faithful, {bad.Count} unfaithful");
        Assert.DoesNotContain(bad, pair => Guard.Compare(pair.Source, pair.Text, Corpus.Leads).IsFaithful);
        Assert.True(good.Count(pair => !Guard.Compare(pair.Source, pair.Text, Corpus.Leads).IsFaithful) <= good.Count * 0.10);
    }

    [Fact]
    public void No_unfaithful_rewording_by_hand_passes_and_few_faithful_ones_are_lost()
    {
        var (good, bad) = HandCorpus.Read();
        bad.AddRange(HandCorpus.Read(HandCorpus.Free).Bad);
        Assert.True(good.Count >= 100 && bad.Count >= 150, $"{good.Count} faithful, {bad.Count} unfaithful");
        Assert.DoesNotContain(bad, pair => Guard.Compare(pair.Source, pair.Text, Corpus.Leads).IsFaithful);
        Assert.True(good.Count(pair => pair.Kind == HandCorpus.Lost) <= good.Count * 0.10);
    }

    [Theory]
    [InlineData("rewordings.txt")]
    [InlineData(HandCorpus.Free)]
    public void What_is_followed_of_the_good_ones_stays_followed_and_what_is_lost_is_marked(string file) => Assert.DoesNotContain(
        HandCorpus.Read(file).Good, pair => Guard.Compare(pair.Source, pair.Text, Corpus.Leads).IsFaithful != (pair.Kind != HandCorpus.Lost));

    [Theory]
    [InlineData("The motor stalls if the load sticks.", "If the load sticks, the motor stalls.")]
    [InlineData("If the load sticks, the motor stalls.", "If the load sticks, then the motor stalls.")]
    [InlineData("The motor hums; the fan is dirty.", "The motor hums. The fan is dirty.")]
    [InlineData("The old motor hums loudly. The fan is dirty.", "The old motor hums loudly, and the fan is dirty.")]
    [InlineData("The motor is hot, but the fan turns.", "The motor is hot but the fan turns.")]
    [InlineData("The fan turns as it should; the motor hums.", "The fan turns as it should. The motor hums.")]
    [InlineData("When the load sticks, then the motor stalls.", "When the load sticks, the motor stalls.")]
    [InlineData("Whenever the load sticks, then the motor stalls.", "Whenever the load sticks, the motor stalls.")]
    [InlineData("The old motor stalls if the load sticks.", "The old motor stalls, if the load sticks.")]
    [InlineData("Measure if the load sticks.", "If the load sticks, measure.")]
    [InlineData("The fan hums in the old dusty dirty grimy shop.", "In the old dusty dirty grimy shop the fan hums.")]
    [InlineData("Is it so? No, power stays.", "Is it so? No: power stays.")]
    [InlineData("It is so; no, power stays.", "It is so; no: power stays.")]
    [InlineData("It is so! No, power stays.", "It is so! No: power stays.")]
    [InlineData("After it stops wait until it has been cooled.", "After it stops wait until it is cooled.")]
    [InlineData("50 only.", "Only 50.")]
    [InlineData("It fits 50 Hz only, it says.", "It fits only 50 Hz, it says.")]
    [InlineData("It usually hums there.", "Usually it hums there.")]
    [InlineData("It often hums there.", "Often it hums there.")]
    [InlineData("It is likely dusty there.", "Likely it is dusty there.")]
    [InlineData("It takes 40 µF of it at least.", "It takes at least 40 µF of it.")]
    [InlineData("40 µF at most.", "At most 40 µF.")]
    [InlineData("40 at most.", "At most 40.")]
    [InlineData("The plate decides.", ", the plate decides.")]
    [InlineData("The plate decides.", "The plate decides,")]
    [InlineData("The fan usually hums in the shop.", "In the shop the fan usually hums.")]
    [InlineData("It must hum loudly, dusty.", "It must hum loudly dusty.")]
    [InlineData("T1 must hum there, and never turns.", "T1 must hum there and never turns.")]
    public void Whole_clauses_may_move(string source, string text) => Assert.Null(Guard.Compare(source, text, Corpus.Leads).Reason);

    [Theory]
    [InlineData("The motor stalls if the load sticks.", "If the motor stalls, the load sticks.")]
    [InlineData("If the load sticks, stop and measure.", "Stop and measure if the load sticks.")]
    [InlineData("If the load sticks, the motor stalls only.", "The motor stalls only if the load sticks.")]
    [InlineData("It is not weak because the fan is dirty.", "Because the fan is dirty, it is not weak.")]
    [InlineData("If the load sticks, the motor stalls. The fan is dirty.", "If the load sticks, the motor stalls; the fan is dirty.")]
    [InlineData("The load sticks. If the fan is dirty, it stalls.", "The load sticks. It stalls if the fan is dirty.")]
    [InlineData("After the load sticks, the motor stalls shortly.", "The motor stalls shortly after the load sticks.")]
    [InlineData("No motor hums. The fan is dirty.", "No motor hums, and the fan is dirty.")]
    [InlineData("The old motor hums loudly. The fan is dusty, dirty, grimy.", "The old motor hums loudly, and the fan is dusty, dirty, grimy.")]
    [InlineData("Never do this: stop it; go on.", "Never do this: stop it. Go on.")]
    [InlineData("Hums if the load sticks.", "If the load sticks, hums.")]
    [InlineData("The motor stalls if the load sticks or slips.", "If the load sticks or slips, the motor stalls.")]
    [InlineData("The fan hums in the old dusty dirty grimy sooty shop.", "In the old dusty dirty grimy sooty shop the fan hums.")]
    [InlineData("In the shop the fan hums loudly.", "The fan hums in the shop loudly.")]
    [InlineData("It hums there. Usually it stops.", "It hums there. . ")]
    [InlineData("Stop it before it turns.", "Stop it until it turns.")]
    [InlineData("Do not stop it, wait before it turns.", "Do not stop it, wait until it turns.")]
    [InlineData("Do not stop it and wait before it turns.", "Do not stop it and wait until it turns.")]
    [InlineData("It has been cooled.", "It is cooled.")]
    [InlineData("It is very often started.", "Often it is very started.")]
    [InlineData("It stops not once it hums.", "It stops not when it hums.")]
    [InlineData("It stops more than once it hums.", "It stops more than when it hums.")]
    [InlineData("Stop at once it hums.", "Stop at when it hums.")]
    [InlineData("The plate decides.", ", and the plate decides.")]
    [InlineData("If the load sticks, stop.", "If the load sticks,")]
    [InlineData("It must hum there.", "It must hum there, and")]
    [InlineData("The old motor hums loudly and the fan is dirty there.", "The old motor hums badly and the fan is dirty there.")]
    [InlineData("It is not hot, because the fan is dirty.", "It is not hot because the fan is dirty.")]
    [InlineData("The oiled bearing is small.", "The bearing of oil is small.")]
    [InlineData("Do not stop it and before it turns wait.", "Do not stop it and until it turns wait.")]
    [InlineData("If the fan hums at T1, it stops.", "If the fan hums at T1 it stops.")]
    [InlineData("It just hums there, and it turns.", "It just hums there and it turns.")]
    public void A_clause_that_could_bind_elsewhere_stays(string source, string text) => Assert.False(Guard.Compare(source, text, Corpus.Leads).IsFaithful);

    [Fact]
    public void Lone_halves_of_signs_and_control_signs_are_refused_without_a_fault()
    {
        foreach (var text in new[] { "The plate \ud800 decides.", "The\0plate decides.", "\u202eThe plate decides." })
        {
            Assert.Equal("characters", Guard.Compare("The plate decides.", text, Corpus.Leads).Reason);
        }
    }
}
