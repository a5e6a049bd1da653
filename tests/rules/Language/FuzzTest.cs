using CsCheck;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Whatever is typed, the listener answers, the same each time, and in time.</summary>
public sealed class FuzzTest(ITestOutputHelper output)
{
    private static readonly Listener Listener = new(Trade.Knowledge);

    private static readonly string[] Pieces =
    [
        "1", "2", "-", "/", ",", ".", " ", "1-4", "T1", "U1", "red", "Brn/Wht", "to", "and", "between", "frame", "is", "ohm", "kΩ", "3R3", "1/2", "½", "7 ½ HP", "0.0032k", "OL", "nothing",
        "hums", "won't", "no", "smell", "start", "spin", "by hand", "breaker", "trips", "V", "A", "115/230", "µF", "53-64", "MFD", "all", "each", "together", "on", "L1", "what is a", "why", "\n", "🙂",
        "°C", "-5", "1e9", "999999999999999999999999999999", "the", "motor", "probes", "single phase", "240", "cap", "not", "but", "(", ")", "=", "é", "\0", "Ω", "..", "--", "//",
    ];

    private static readonly string?[] Abouts = ["reading", "supply", "plate", "running", "resistance", "lead", "capacitor", null];

    private static readonly Gen<string> Piece = Gen.Int[0, Pieces.Length - 1].Select(at => Pieces[at]);

    [Fact]
    public void Any_text_is_answered_and_every_fact_is_whole() =>
        Gen.String[0, 300].Sample(Check, iter: 3000);

    [Fact]
    public void Any_jumble_of_trade_words_is_answered_and_every_fact_is_whole() =>
        Piece.Array[0, 60].Select(pieces => string.Join(' ', pieces)).Sample(Check, iter: 4000);

    [Fact]
    public void Any_open_question_takes_any_answer() =>
        Gen.Select(Piece.Array[0, 12], Gen.Enum<QuestionKind>(), Gen.Int[0, Abouts.Length - 1].Select(at => Abouts[at]))
            .Sample((pieces, kind, about) => Listener.Understand(
                string.Concat(pieces),
                ["1", "4", "red"],
                new OpenQuestion { Id = "question", Kind = kind, About = about, Unit = "volt", Between = ["1", "4"], Options = [new OpenOption("yes", "Yes, one"), new OpenOption("none", "No")] },
                Region.Iec) is not null);

    /// <summary>What is looked at and made again for each word shows in what is allocated, on any machine; the time itself is the study <c>listen</c>.</summary>
    [Theory]
    [InlineData("1-4 1.7, ")]
    [InlineData("a")]
    [InlineData("between 1 and ")]
    [InlineData("1/2/3/4-")]
    [InlineData("((((")]
    [InlineData("1,000,000 ")]
    [InlineData("red to blue to red to ")]
    [InlineData("no not never ")]
    [InlineData("230 V ")]
    [InlineData("12 ")]
    public void Twice_the_text_makes_about_twice_the_work(string piece)
    {
        var (some, twice) = (Repeated(piece, Listener.LongestText / 4), Repeated(piece, Listener.LongestText / 2));
        _ = (Allocated(some), Allocated(twice)); // what is made once is made
        var ratio = (double)Allocated(twice) / Allocated(some);
        output.WriteLine($"{ratio:0.00} for \"{piece}\"");
        Assert.InRange(ratio, 1, 2.5);
    }

    private static string Repeated(string piece, int length) => string.Concat(Enumerable.Repeat(piece, length / piece.Length));

    private static long Allocated(string text)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        Listener.Understand(text);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private static void Check(string text)
    {
        var heard = Listener.Understand(text, ["1", "4", "red"], null, Region.NorthAmerica);
        var again = Listener.Understand(text, ["1", "4", "red"], null, Region.NorthAmerica);
        Assert.Equal(Brief.Of(heard), Brief.Of(again));
        Assert.All(heard.Facts.OfType<Fact.Reading>(), reading =>
        {
            Assert.NotEqual(reading.From, reading.To);
            Assert.True(reading.Open || reading.Short || (reading.Ohms is { } ohms && double.IsFinite(ohms) && ohms >= 0));
        });
        Assert.All(heard.Facts, fact => Assert.Contains(fact.Span!, text, StringComparison.Ordinal));
    }
}
