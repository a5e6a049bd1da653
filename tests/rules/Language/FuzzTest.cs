using System.Diagnostics;
using CsCheck;
using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Language;

namespace WireCoach.Rules.Tests.Language;

/// <summary>Whatever is typed, the listener answers, the same each time, and in time.</summary>
public sealed class FuzzTest(ITestOutputHelper output)
{
    private static readonly Listener Listener = new(KnowledgeFolder.Load(KnowledgeFolder.Beside));

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

    [Fact]
    public void Time_grows_with_length_and_no_faster()
    {
        string[] hard = ["1-4 1.7, ", "a", "between 1 and ", "1/2/3/4-", "won't start but hums when I spin it by hand and ", "((((", "1,000,000 ", "red to blue to red to ", "no not never ", "230 V ", "12 "];
        foreach (var piece in hard)
        {
            var text = string.Concat(Enumerable.Repeat(piece, Listener.LongestText / piece.Length));
            Listener.Understand(text[..2000]);
            var watch = Stopwatch.StartNew();
            Listener.Understand(text);
            output.WriteLine($"{watch.Elapsed.TotalMilliseconds,8:0.0} ms for {text.Length} characters of \"{piece}\"");
            Assert.True(watch.ElapsedMilliseconds < 3000, $"{watch.ElapsedMilliseconds} ms for \"{piece}\"");
        }
    }

    [Fact]
    public void A_message_of_three_hundred_characters_takes_about_half_a_millisecond()
    {
        const string text = "brine pump motor from fernhollow, plate says 3/4 hp 115/230 10.4/5.2A 1140, single phase, cap on top. six wires no marks. going on 240. it just hums and if I give it a flick it goes, smells a bit hot, no smoke though. 1-4 is 1.7, 1-2 nothing, 2-6 1.7, 3-5 3.6. what should I check next?";
        var times = new List<double>();
        for (var round = 0; round < 300; round++)
        {
            var watch = Stopwatch.StartNew();
            Listener.Understand(text);
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        times.Sort();
        output.WriteLine($"median {times[150]:0.000} ms for {text.Length} characters");
        Assert.True(times[150] < 10, $"median {times[150]:0.000} ms"); // a loose bound for a busy machine; the figure itself is printed
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
