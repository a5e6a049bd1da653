using WireCoach.Knowledge;
using WireCoach.Rules.Reference;
using WireCoach.Service.Phrasing;

namespace WireCoach.Service.Tests.Phrasing;

/// <summary>What each kind of word lets a clause do. The sentences are frames: only the places of their words matter.</summary>
public sealed class BindingTest
{
    private static readonly PhrasingWords Words = KnowledgeFolder.Load(KnowledgeFolder.Beside).Phrasing;
    private static readonly Guard Guard = new(Words);

    /// <summary>A word of each class; the places in which it matters most are tried with each of them.</summary>
    private static readonly Dictionary<string, string> OfClass = new(StringComparer.Ordinal)
    {
        ["word"] = "dusty", ["grammar"] = "you", ["number"] = "three", ["verb"] = "tied", ["negation"] = "never", ["condition"] = "where", ["order"] = "later",
        ["modality"] = "maybe", ["quantifier"] = "higher", ["focus"] = "only", ["hazard"] = "harmless", ["state"] = "hot", ["lead"] = "T1", ["quantity"] = "5 V",
    };

    [Theory]
    [InlineData("The old motor hums loudly. The fan is # dirty.", "The old motor hums loudly, and the fan is # dirty.", "word grammar number hazard state quantity")]
    [InlineData("The old motor is # dirty. The fan hums loudly.", "The old motor is # dirty, and the fan hums loudly.", "word grammar number hazard state quantity")]
    [InlineData("The motor stalls # if the load sticks.", "If the load sticks, the motor stalls #.", "word grammar number verb hazard state lead quantity")]
    [InlineData("The motor stalls # before the load sticks.", "Before the load sticks, the motor stalls #.", "word grammar verb hazard state lead")]
    [InlineData("The motor stalls # after the load sticks.", "After the load sticks, the motor stalls #.", "word grammar verb hazard state lead")]
    [InlineData("The motor stalls # until the load sticks.", "Until the load sticks, the motor stalls #.", "word grammar verb hazard state lead")]
    [InlineData("The fan # hums if the load sticks.", "If the load sticks, the fan # hums.", "word grammar number verb negation modality quantifier focus hazard state lead quantity")]
    [InlineData("The fan hums if the load # sticks.", "If the load # sticks, the fan hums.", "word grammar number verb negation modality quantifier focus hazard state lead quantity")]
    [InlineData("The fan # hums because the load sticks.", "Because the load sticks, the fan # hums.", "word grammar number verb modality quantifier focus hazard state lead quantity")]
    [InlineData("The fan # hums although the load sticks.", "Although the load sticks, the fan # hums.", "word grammar number verb modality quantifier focus hazard state lead quantity")]
    [InlineData("The fan # hums in the shop.", "In the shop the fan # hums.", "word grammar number modality quantifier state quantity")]
    [InlineData("The fan hums in the # shop.", "In the # shop the fan hums.", "word grammar number modality quantifier state quantity")]
    [InlineData("The old motor hums # dusty.", "The old motor hums, # dusty.", "word grammar")]
    [InlineData("The old motor # hums dusty.", "The old motor #, hums dusty.", "word grammar")]
    [InlineData("The fan is # dirty: the motor hums loudly.", "The fan is # dirty; the motor hums loudly.", "word grammar number verb order quantifier focus hazard state lead quantity")]
    [InlineData("The fan is # dirty; the motor hums loudly.", "The fan is # dirty. The motor hums loudly.", "word grammar number verb negation order modality quantifier focus hazard state lead quantity")]
    public void A_word_moves_with_its_clause_or_holds_it_by_its_class(string source, string text, string stands) =>
        Assert.Equal(stands.Split(' '), OfClass.Where(word => Stands(source, text, word.Value)).Select(word => word.Key));

    [Fact]
    public void A_clause_that_depends_moves_as_a_whole_whatever_it_begins_with() =>
        Assert.All(Words.Binding.Conditions, word => Assert.True(Stands("The motor stalls # the load sticks.", $"{Large(word)} the load sticks, the motor stalls.", word), word));

    [Fact]
    public void A_place_moves_as_a_whole_whatever_it_begins_with() =>
        Assert.All(Words.Binding.Places, word => Assert.True(Stands("The motor hums # the shop.", $"{Large(word)} the shop the motor hums.", word), word));

    [Fact]
    public void A_statement_with_a_word_that_points_stays_where_it_is() => Assert.All(Words.Binding.Pointing, word =>
    {
        Assert.False(Stands("The fan # hums if the load sticks.", "If the load sticks, the fan # hums.", word), word);
        Assert.False(Stands("The fan # hums if the load sticks badly; stop.", "If the load sticks badly the fan # hums; stop.", word), word);
        Assert.True(Stands("The fan hums if the load # sticks.", "If the load # sticks, the fan hums.", word) || Words.Binding.Leaning.Contains(word), word);
    });

    [Fact]
    public void A_word_that_lends_weight_keeps_a_place_from_moving() =>
        Assert.All(Words.Binding.Focus, word => Assert.False(Stands("The fan # hums in the shop.", "In the shop the fan # hums.", word), word));

    [Fact]
    public void A_word_that_leans_on_what_follows_lets_no_clause_come_behind_it() =>
        Assert.All([.. Words.Binding.Leaning, "shortly"], word => Assert.False(Stands("The motor stalls # if the load sticks.", "If the load sticks, the motor stalls #.", word), word));

    [Fact]
    public void Statements_strung_together_are_not_moved_apart() =>
        Assert.All(Words.Binding.Joiners, word => Assert.False(Stands("The motor hums # stalls if the load sticks.", "If the load sticks, the motor hums # stalls.", word), word));

    [Fact]
    public void A_statement_behind_a_colon_is_one_by_its_subject() => Assert.All(Words.Binding.Subjects, word =>
    {
        Assert.True(Stands("The fan must turn: # hums loudly.", "The fan must turn; # hums loudly.", word), word);
        Assert.True(Stands("If the fan turns, # hums loudly.", "If the fan turns # hums loudly.", word), word);
    });

    [Fact]
    public void A_word_in_front_takes_a_comma_or_a_colon() =>
        Assert.All(Words.Binding.Openers, word => Assert.True(Stands($"{Large(word)}, the motor hums.", $"{Large(word)}: the motor hums.", word), word));

    [Fact]
    public void Once_that_counts_is_no_when() => Assert.All(Words.Binding.Counting, word => Assert.False(Stands("It stops once # it hums.", "It stops when # it hums.", word), word));

    [Theory]
    [InlineData("Wait until # it turns.")]
    [InlineData("Wait before # it turns.")]
    [InlineData("Wait after # it turns.")]
    [InlineData("Wait when # it turns.")]
    [InlineData("Wait once it hums, until # it turns.")]
    public void What_has_been_done_by_a_time_is_done(string frame)
    {
        Assert.True(Stands(frame.Replace("# it turns", "it has been cooled", StringComparison.Ordinal), frame.Replace("# it turns", "it is cooled", StringComparison.Ordinal), ""), frame);
        Assert.True(Stands(frame.Replace("# it turns", "they have been cooled", StringComparison.Ordinal), frame.Replace("# it turns", "they are cooled", StringComparison.Ordinal), ""), frame);
    }

    private static bool Stands(string source, string text, string word) =>
        Guard.Compare(source.Replace("#", word, StringComparison.Ordinal), text.Replace("#", word, StringComparison.Ordinal), Corpus.Leads).IsFaithful;

    private static string Large(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
