using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Meter readings in the ways in which they are written, and what looks like one.</summary>
public sealed class ReadingsTest
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    [Theory]
    [InlineData("T1 to T4 reads 4.2")]
    [InlineData("T1 to T4 4.2 ohm")]
    [InlineData("T1 to T4 is about 4.2 ohm")]
    [InlineData("T1 to T4: 4.2")]
    [InlineData("T1 to T4 = 4.2")]
    [InlineData("T1 to T4 ~ 4.2")]
    [InlineData("T1 to T4 ≈ 4.2")]
    [InlineData("T1 to T4 (4.2)")]
    [InlineData("T1 to T4, 4.2 ohm")]
    [InlineData("T1 to T4, reads 4.2 ohm")]
    [InlineData("T1 to T4 I get 4.2")]
    [InlineData("T1 to T4 shows me 4.2")]
    [InlineData("T1 to T4 comes out at 4.2")]
    [InlineData("T1 to T4 4R2")]
    [InlineData("T1 to T4 4R2 ohm")]
    [InlineData("T1-T4 4.2")]
    [InlineData("T1 - T4 4.2")]
    [InlineData("T1 -> T4 4.2")]
    [InlineData("T1 → T4 4.2")]
    [InlineData("T1/T4 4.2")]
    [InlineData("T1 against T4 4.2")]
    [InlineData("T1 onto T4 4.2")]
    [InlineData("T1 with T4 is 4.2")]
    [InlineData("T1 and T4 is 4.2")]
    [InlineData("T1 & T4 is 4.2")]
    [InlineData("T1 + T4 is 4.2")]
    [InlineData("T1 and T4: 4.2")]
    [InlineData("T1 and T4 = 4.2")]
    [InlineData("T1 and T4 4.2 ohm")]
    [InlineData("T1 T4 is 4.2 ohm")]
    [InlineData("between T1 and T4 4.2")]
    [InlineData("between T1 and T4, 4.2")]
    [InlineData("in between T1 and T4 4.2 ohm")]
    [InlineData("between T1 and T4 I get 4.2 ohm")]
    [InlineData("4.2 between T1 and T4")]
    [InlineData("4.2 roughly between T1 and T4")]
    [InlineData("4.2 ohm about between T1 and T4")]
    [InlineData("4.2 ohm T1-T4")]
    [InlineData("4.2 ohm on T1-T4")]
    [InlineData("4.2 ohm across T1-T4")]
    [InlineData("4.2 ohm across T1 and T4")]
    [InlineData("4.2 ohm from T1 to T4")]
    [InlineData("4.2 ohm at T1-T4")]
    [InlineData("4.2 ohm for T1-T4")]
    public void The_ohms_of_two_leads_are_heard(string text) => Assert.Equal("reading T1 T4 4.2", Heard(text));

    /// <summary>What is measured from the frame to a row of leads is never a reading between two of them.</summary>
    [Theory]
    [InlineData("frame to T1, T2 and T4 open", "reading T1 frame open; reading T2 frame open; reading T4 frame open")]
    [InlineData("frame to each lead open", "reading T1 frame open; reading T2 frame open; reading T4 frame open")]
    [InlineData("frame to all leads OL", "reading T1+T2+T4 frame open")]
    [InlineData("ground to T1 and T2 each 0.4", "reading T1 earth 0.4; reading T2 earth 0.4")]
    [InlineData("frame to T1 and T2 0.4", "")]
    [InlineData("no continuity from any lead to the frame", "reading T1 frame open; reading T2 frame open; reading T4 frame open")]
    [InlineData("none of the leads read to frame", "reading T1 frame open; reading T2 frame open; reading T4 frame open")]
    [InlineData("no wire shows continuity to the case", "reading T1 frame open; reading T2 frame open; reading T4 frame open")]
    [InlineData("no lead goes to the frame", "")]
    [InlineData("T1 and T2 4.2, rest open", "reading T1 T2 4.2; reading T1 T4 open; reading T2 T4 open")]
    [InlineData("T1 and T2 230, T4 is the third", "")]
    [InlineData("T1 and T2 4.2 to frame", "")]
    public void Readings_of_several_leads_are_heard(string text, string brief) =>
        Assert.Equal(brief, string.Join("; ", Brief.Of(Listener.Understand(text, ["T1", "T2", "T4"])).Where(line => line.StartsWith("reading", StringComparison.Ordinal))));

    [Theory]
    [InlineData("T1 and T4 4.2")]
    [InlineData("T1 and T4, 4.2 ohm")]
    [InlineData("T1 and T4 hum")]
    [InlineData("T1 to T1 4.2")]
    [InlineData("T1 to T4 4-6")]
    [InlineData("T1 to T4 4/6")]
    [InlineData("T1 to T4 4 - 6")]
    [InlineData("T1 to T4 -4.2")]
    [InlineData("T1 to T4 4.2 amps")]
    [InlineData("T1 to T4, 4.2")]
    [InlineData("it was 4.2. between T1 and T4")]
    [InlineData("4.2 ohm, 5.1 T2-T3")]
    [InlineData("U1 U1 12 ohm")]
    [InlineData("a to b 4.2")]
    [InlineData("c to b 4.2")]
    [InlineData("a to r 4.2")]
    [InlineData("c to the store 4.2")]
    [InlineData("C to R")]
    public void No_reading_is_made_of_what_may_be_something_else(string text) => Assert.DoesNotContain("reading", Heard(text), StringComparison.Ordinal);

    [Theory]
    [InlineData("T1 to T4 OL", "open")]
    [InlineData("T1 to T4, open", "open")]
    [InlineData("T1 to T4 beeps", "short")]
    [InlineData("T1 to T4 dead short", "short")]
    [InlineData("T1 to T4 jumps then OL", "kick")]
    [InlineData("T1 to T4 OL after a jump", "kick")]
    [InlineData("T1 to T4 12.5k", "12500")]
    [InlineData("T1 to T4 12.5 k", "12500")]
    [InlineData("T1 to T4 12 kilohm", "12000")]
    [InlineData("T1 to T4 1.2 megohm", "1200000")]
    [InlineData("dead short between T1 and T4", "short")]
    [InlineData("open circuit between T1 and T4", "open")]
    [InlineData("U1 U2 open", null)]
    public void What_the_meter_shows_is_kept(string text, string? shown) => Assert.Equal(shown is null ? "reading U1 U2 open" : $"reading T1 T4 {shown}", Heard(text));

    [Theory]
    [InlineData("T1 to T4 and T2 to T5 read 4.2 ohm", "reading T1 T4 4.2; reading T2 T5 4.2")]
    [InlineData("T1 to T4, T2 to T5 both 4.2 ohm", "reading T1 T4 4.2; reading T2 T5 4.2")]
    [InlineData("T1 to T4 also T2 to T5 reads 4.2 ohm", "reading T1 T4 4.2; reading T2 T5 4.2")]
    [InlineData("T1 to T4 & T2 to T5 reads 4.2 ohm", "reading T1 T4 4.2; reading T2 T5 4.2")]
    [InlineData("T1 to T4 and T2 to T5, all read 4.2 ohm", "reading T1 T4 4.2; reading T2 T5 4.2")]
    [InlineData("T1 and T4, T5 and T6 read 4.2 ohm", "reading T1 T4 4.2; reading T5 T6 4.2")]
    [InlineData("T1 to T4, T2 to T5, T3 to T6 are all 4.2 ohm", "reading T1 T4 4.2; reading T2 T5 4.2; reading T3 T6 4.2")]
    [InlineData("T1 to T4 is 4.2, T2 to T5 the same", "reading T1 T4 4.2; reading T2 T5 4.2")]
    [InlineData("T1 to T4 OL, T1 to T2 0.4", "reading T1 T4 open; reading T1 T2 0.4")]
    [InlineData("T1 to T4 dead short and T1 to T2 0.4", "reading T1 T4 short; reading T1 T2 0.4")]
    [InlineData("T1 to T4, 4.2 ohm T2-T5", "reading T2 T5 4.2")]
    [InlineData("3.9, 4.2 between T1 and T4", "reading T1 T4 4.2")]
    public void A_figure_is_of_every_pair_that_waits_for_it(string text, string readings) =>
        Assert.Equal(readings, string.Join("; ", Brief.Of(Listener.Understand(text)).Where(line => line.StartsWith("reading", StringComparison.Ordinal))));

    [Theory]
    [InlineData("5.1 ohm T1-T2, 5.2 T2-T3, 5.3 T1-T3", "reading T1 T2 5.1; reading T2 T3 5.2; reading T1 T3 5.3")]
    [InlineData("5.1 ohm T1-T2 and 5.2 T2-T3", "reading T1 T2 5.1; reading T2 T3 5.2")]
    [InlineData("5.1 ohm T1-T2; 5.2 T2-T3", "reading T1 T2 5.1; reading T2 T3 5.2")]
    [InlineData("5.1 ohm T1-T2 5.2 T2-T3", "reading T1 T2 5.1; reading T2 T3 5.2")]
    [InlineData("5.1 ohm T1-T2 5.2 ohm T2-T3 5.3 ohm T1-T3", "reading T1 T2 5.1; reading T2 T3 5.2; reading T1 T3 5.3")]
    [InlineData("T1-T2 5.1 ohm T2-T3 5.2 ohm", "reading T1 T2 5.1; reading T2 T3 5.2")]
    [InlineData("they differ by 0.1 ohm T1-T2 5.1 T2-T3 5.2", "reading T1 T2 5.1; reading T2 T3 5.2")]
    public void In_a_row_figures_stand_before_their_pairs_or_behind_them(string text, string readings) => Assert.Equal(readings, Heard(text));

    [Theory]
    [InlineData("one probe on black and the other on white: 4.2")]
    [InlineData("one probe on black and the other on white 4.2")]
    [InlineData("one probe on black and the second on white 4.2")]
    [InlineData("one probe on black and the second to white: 4.2")]
    [InlineData("one probe on black and the other to white 4.2 ohm")]
    public void Where_each_probe_lies_tells_the_pair(string text) => Assert.Equal("reading black white 4.2", Heard(text));

    [Theory]
    [InlineData("probes together 0.3", true)]
    [InlineData("the probes alone read 0.3 ohm", true)]
    [InlineData("one probe on black and the red on white 4.2 ohm", false)]
    [InlineData("one probe on black and the other on white", false)]
    public void One_probe_on_a_lead_is_not_the_probes_together(string text, bool alone) =>
        Assert.Equal(alone, Brief.Of(Listener.Understand(text)).Contains("bench probe-zero 0.3"));

    [Theory]
    [InlineData("C to R 4.2", "reading C R 4.2")]
    [InlineData("c to s open", "reading c s open")]
    [InlineData("s to r 4.2", "reading s r 4.2")]
    [InlineData("r to c 4.2", "reading r c 4.2")]
    [InlineData("a-b 4.2", "reading a b 4.2")]
    [InlineData("between a and b 4.2 ohm", "reading a b 4.2")]
    public void Single_letters_are_leads_between_a_sign_and_of_a_sealed_compressor(string text, string reading) => Assert.Equal(reading, Heard(text));

    [Theory]
    [InlineData("T1 to frame OL", "reading T1 frame open")]
    [InlineData("T1 to frame 90k", "reading T1 frame 90000")]
    [InlineData("T1 to frame 100k", "insulation 0.1")]
    [InlineData("T1 to frame 0.1 megohm", "insulation 0.1")]
    [InlineData("0.1 megohm T1 to frame", "insulation 0.1")]
    [InlineData("T1 to T4 1.2 megohm", "reading T1 T4 1200000")]
    [InlineData("T1 to frame 20 megohm at 21 C", "insulation 20 C=21")]
    [InlineData("T1 to frame 20 megohm @ 21 C", "insulation 20 C=21")]
    [InlineData("T1 to frame 20 megohm (21 C)", "insulation 20 C=21")]
    [InlineData("T1 to frame 20 megohm at 68 F", "insulation 20 C=20")]
    [InlineData("all leads to frame 0.1 megohm", "insulation 0.1")]
    [InlineData("all leads to frame 20 megohm at 21 C", "insulation 20 C=21")]
    [InlineData("all leads to frame 5 ohm", "reading all frame 5")]
    [InlineData("no continuity to earth", "reading all earth open")]
    public void Ohms_to_the_frame_are_a_reading_or_insulation_by_their_size(string text, string brief) => Assert.Equal(brief, Heard(text));

    [Theory]
    [InlineData("all leads to frame OL", "reading red+blue frame open")]
    [InlineData("all leads together to frame OL", "reading red+blue frame open")]
    [InlineData("all leads against frame OL", "reading red+blue frame open")]
    [InlineData("all leads - frame OL", "reading red+blue frame open")]
    [InlineData("all leads on frame OL", "reading red+blue frame open")]
    [InlineData("all leads OL to frame", "reading red+blue frame open")]
    [InlineData("open to the frame", "reading red+blue frame open")]
    [InlineData("all leads to frame dead short", "reading red+blue frame short")]
    [InlineData("each lead to frame OL", "reading red frame open; reading blue frame open")]
    [InlineData("each lead open circuit to frame", "reading red frame open; reading blue frame open")]
    [InlineData("red frame 0.4", "reading red frame 0.4")]
    [InlineData("red to the frame 0.4", "reading red frame 0.4")]
    [InlineData("red - case open", "reading red frame open")]
    [InlineData("it just hums, to the frame", "hums-no-start")]
    public void All_leads_are_read_together_and_each_one_alone(string text, string brief) => Assert.Equal(brief, Heard(text, "red", "blue"));

    [Theory]
    [InlineData("white with black to red 4.2", "reading white+black red 4.2")]
    [InlineData("1+2 to 3 is 4.2", "reading 1+2 3 4.2")]
    [InlineData("1 and 2 tied together to frame OL", "reading 1+2 frame open")]
    [InlineData("1, 2 and 3 joined to frame 5 ohm", "reading 1+2+3 frame 5")]
    [InlineData("1 and 2 together to frame 40 megohm", "insulation 40")]
    [InlineData("1, 2 and 3 to frame open", "reading 1 frame open; reading 2 frame open; reading 3 frame open")]
    [InlineData("red and blue both to frame OL", "reading red frame open; reading blue frame open")]
    [InlineData("red and blue each to black 4.2", "reading red black 4.2; reading blue black 4.2")]
    [InlineData("red and blue to black 4.2 ohm", "")]
    [InlineData("1 and 2 to 3 4.2", "")]
    [InlineData("1 to 2, 3 and 4 open", "")]
    [InlineData("1 to 2 and 3 4.2", "")]
    [InlineData("1-2 and 3-4 both 1.2 ohm", "reading 1 2 1.2; reading 3 4 1.2")]
    [InlineData("1 to 2 4.2, 3 and 4 is open", "reading 1 2 4.2; reading 3 4 open")]
    [InlineData("six motor leads 1 to 6, 4.2 ohm between 1 and 2", "reading 1 2 4.2")]
    [InlineData("1 to 6, 4.2 ohm between 1 and 2", "reading 1 2 4.2")]
    [InlineData("1 to 6, 4.2 ohm", "reading 1 6 4.2")]
    public void Several_leads_are_read_held_together_or_one_by_one_and_left_alone_where_it_may_be_either(string text, string brief) =>
        Assert.Equal(brief, Heard(text, "1", "2", "3", "4", "5", "6", "red", "blue", "black", "white"));

    [Theory]
    [InlineData("no continuity to the earth pin", "reading frame earth open")]
    [InlineData("no continuity to the frame", "reading all frame open")]
    [InlineData("all leads open to the earth pin", "reading all earth open")]
    public void Only_the_way_to_earth_that_was_asked_for_is_from_the_frame(string text, string reading) =>
        Assert.Equal([reading], Brief.Of(Listener.Understand(text, asked: new OpenQuestion { Id = "earth-continuity", Kind = QuestionKind.Quantity, About = "earth-continuity", Unit = "ohm", CanBeOpen = true })));

    [Fact]
    public void The_winding_is_as_warm_as_is_said_beside_its_ohms()
    {
        var heard = Listener.Understand("T1 to T4 4.2 ohm at 21 C, T2 to T5 4.3").Facts.OfType<Rules.Cases.Fact.Reading>().ToList();
        Assert.Equal([21.0, null], heard.Select(reading => reading.Celsius));
        Assert.Null(Assert.Single(Listener.Understand("T1 to T4 4.2 ohm, 21 C").Facts.OfType<Rules.Cases.Fact.Reading>()).Celsius);
    }

    [Theory]
    [InlineData("T1 to T4 4.2 changes as I turn the shaft", true)]
    [InlineData("T1 to T4 4.2. The shaft turns", false)]
    public void Ohms_that_change_with_the_shaft_are_marked(string text, bool changes) =>
        Assert.Equal(changes, Assert.Single(Listener.Understand(text).Facts.OfType<Rules.Cases.Fact.Reading>()).ChangesWithShaft);

    /// <summary>"1 to 6" behind a count names them all: the figure behind is of another pair.</summary>
    [Theory]
    [InlineData("six leads 1 to 6, ")]
    [InlineData("six leads, 1 to 6, ")]
    [InlineData("six leads: 1 to 6, ")]
    [InlineData("six leads (1 to 6, ")]
    [InlineData("six leads - 1 to 6, ")]
    [InlineData("six leads numbered 1 to 6, ")]
    [InlineData("six leads called 1 to 6, ")]
    [InlineData("six leads marked 1 to 6, ")]
    [InlineData("six leads tagged 1 to 6, ")]
    [InlineData("six leads, 1-6, ")]
    [InlineData("six leads, 1 through 6, ")]
    [InlineData("six leads, 1 thru 6, ")]
    [InlineData("6 leads, 1 to 6, ")]
    [InlineData("six loose leads, 1 to 6, ")]
    public void Names_of_counted_leads_are_no_pair(string names) =>
        Assert.Equal("count 6; lead 1; lead 2; lead 3; lead 4; lead 5; lead 6; reading 1 2 4.2", Heard(names + "4.2 ohm between 1 and 2"));

    [Theory]
    [InlineData("six leads, 1 to 3 4.2 ohm", "count 6; reading 1 3 4.2")]
    [InlineData("six leads, 2 to 6 4.2 ohm", "count 6; reading 2 6 4.2")]
    [InlineData("six leads, 1 and 6 is 4.2 ohm", "count 6; reading 1 6 4.2")]
    public void Other_numbers_behind_a_count_are_a_pair(string text, string brief) => Assert.Equal(brief, Heard(text));

    [Theory]
    [InlineData("red blue 21", "reading red blue 21")]
    [InlineData("red/blue is 4.2 ohm", "reading red blue 4.2")]
    [InlineData("red green 0.4", "")]
    [InlineData("1 2 4.2", "reading 1 2 4.2")]
    [InlineData("1 2 3 ohm", "reading 1 2 3")]
    [InlineData("1 2 3", "")]
    [InlineData("1 to 2 4.2 3 to 1 4.3", "reading 1 2 4.2; reading 3 1 4.3")]
    [InlineData("1 to 2 is 3 to 1", "")]
    public void Leads_that_are_known_need_nothing_between_them(string text, string brief) => Assert.Equal(brief, Heard(text, "red", "blue", "1", "2", "3"));

    private static string Heard(string text, params string[] leads) => string.Join("; ", Brief.Of(Listener.Understand(text, leads)));
}
