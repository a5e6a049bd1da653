using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>"Everything else open" tells of each pair that was not named, where the leads are known.</summary>
public sealed class OtherPairsTest
{
    private static readonly string[] Leads = ["1", "2", "3", "4"];
    private static readonly OpenQuestion Asked = new() { Id = "reading", Kind = QuestionKind.Reading, About = "resistance", Between = ["1", "3"] };
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("1-2 is 3 ohms, everything else open")]
    [InlineData("1-2 3 ohms, all the others read OL")]
    [InlineData("1 to 2 is 3 ohm and open on all the other pairs")]
    [InlineData("1-2 3 ohms. nothing on everything else")]
    public void Each_pair_that_was_not_named_is_open(string text)
    {
        Assert.Equal(["1-2 3", "1-3 open", "1-4 open", "2-3 open", "2-4 open", "3-4 open"], Readings(text, Leads));
        Assert.Equal(["1-2 3", "1-3 open", "1-4 open", "2-3 open", "2-4 open", "3-4 open"], Readings(text, Leads, Asked));
    }

    [Theory]
    [InlineData("everything else open", 6)]
    [InlineData("all other pairs are open", 6)]
    [InlineData("the others are open", 0)]
    public void Beside_no_reading_it_is_heard_where_it_says_what_it_speaks_of(string text, int pairs) => Assert.Equal(pairs, Readings(text, Leads).Count);

    [Fact]
    public void Leads_that_the_message_names_count_too() =>
        Assert.Equal(["blue-red 3", "blue-white open", "red-white open"], Readings("three leads: red, blue, white. red to blue 3 ohms, all others open", []));

    [Fact]
    public void Leads_that_are_counted_and_numbered_count_too_and_are_no_reading()
    {
        var read = Readings("six leads 1 to 6, 1-2 is 3, all the others open", []);
        Assert.Equal(15, read.Count);
        Assert.Contains("1-6 open", read);
    }

    [Fact]
    public void Leads_of_the_pairs_that_it_tells_count_too() =>
        Assert.Equal(["1-2 4", "1-3 open", "1-4 open", "2-3 open", "2-4 open", "3-4 9"], Readings("1-2 4 ohms, 3-4 9 ohms, everything else open", []));

    [Theory]
    [InlineData("1-2 4 ohms, 3-4 9 ohms, 2-3 keeps changing, everything else open")]
    [InlineData("1-2 4 ohms, 3-4 9 ohms, could not get 2 to 3, everything else open")]
    [InlineData("leads 1-4. 1-2 4 ohms, 3-4 9 ohms, 3-2 unsure, everything else open")]
    public void A_pair_that_is_named_is_none_of_the_others(string text)
    {
        Assert.Equal(["1-2 4", "1-3 open", "1-4 open", "2-4 open", "3-4 9"], Readings(text, []));
        Assert.Equal(["1-2 4", "1-3 open", "1-4 open", "2-4 open", "3-4 9"], Readings(text, Leads));
    }

    [Fact]
    public void Where_no_leads_are_known_by_name_it_is_said_back()
    {
        var heard = Listener.Understand("six leads, 1-2 is 3 ohms, everything else open");
        Assert.Equal(["1-2 3"], Written(heard));
        Assert.Equal("everything else open", Assert.Single(heard.NotUnderstood).Text);
    }

    [Theory]
    [InlineData("1-2 3 ohms, everything else to the frame OL")]
    [InlineData("1-2 is 3 ohms, not everything else is open")]
    [InlineData("1-2 is 3 ohms and the rest is 5 ohms")]
    [InlineData("1-2 is 3 ohms, everything else later")]
    public void Other_words_tell_of_no_other_pair(string text) => Assert.DoesNotContain(Written(Listener.Understand(text, Leads)), line => line.EndsWith("open", StringComparison.Ordinal) && !line.Contains("frame", StringComparison.Ordinal));

    [Fact]
    public void What_it_told_is_marked_so_that_a_reading_of_the_pair_itself_stands()
    {
        var heard = Listener.Understand("1-2 is 3 ohms, everything else open", Leads);
        Assert.Equal(5, heard.OtherPairs.Count);
        Assert.All(heard.OtherPairs, fact => Assert.True(Assert.IsType<Fact.Reading>(fact).Open));
    }

    private static List<string> Readings(string text, string[] leads, OpenQuestion? asked = null) => Written(Listener.Understand(text, leads, asked));

    private static List<string> Written(Understood heard) =>
        [.. heard.Facts.OfType<Fact.Reading>().Select(reading => $"{string.Join('-', new[] { reading.From, reading.To }.Order(StringComparer.Ordinal))} {(reading.Open ? "open" : reading.Ohms)}").Order(StringComparer.Ordinal)];
}
