namespace WireCoach.Browser.Tests;

/// <summary>Somebody who has never seen it, from the start page to the first figure on a meter.</summary>
public sealed class NewcomerTest(Bench bench)
{
    /// <summary>Words that somebody who reads slowly, two hundred in a minute, reads in clearly under one.</summary>
    private const int MostWords = 185;

    /// <summary>Words that are read before a button is reached: what stands above it, unfolded.</summary>
    private const string ReadBefore = """
        button => {
          const texts = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
          let words = 0;
          for (let text = texts.nextNode(); text; text = texts.nextNode()) {
            const above = button.contains(text) || button.compareDocumentPosition(text) & Node.DOCUMENT_POSITION_PRECEDING;
            if (above && !text.parentElement.closest('.unseen') && text.parentElement.checkVisibility({ visibilityProperty: true })) {
              words += text.textContent.split(/\s+/).filter(word => /[A-Za-z0-9]/.test(word)).length;
            }
          }
          return words;
        }
        """;

    [Fact]
    public async Task The_first_reading_on_a_practice_motor_takes_five_touches_and_a_minute_of_reading_with_every_caution()
    {
        await using var visitor = await bench.Visit(Device.Phone);
        await visitor.Go("/");
        var (touches, words, cautions) = (0, 0, new List<string>());
        for (var target = visitor.Page.GetByText("Start with a practice motor"); touches < 20; target = visitor.Page.Locator(".ask .once, .probe button").First)
        {
            var reads = await target.EvaluateAsync<bool>("button => button.closest('.probe') !== null");
            cautions.AddRange(await visitor.Page.Locator(".caution").AllInnerTextsAsync());
            words += await target.EvaluateAsync<int>(ReadBefore);
            touches++;
            await visitor.Press(target);
            if (reads)
            {
                break;
            }
        }

        Assert.Equal(5, touches);
        Assert.InRange(words, 100, MostWords);
        Assert.All(new[] { "isolate-and-prove-dead", "discharge-capacitor" }, id => Assert.Contains(cautions, shown => shown.Contains(bench.Knowledge.Cautions[id].What, StringComparison.Ordinal) && shown.Contains(bench.Knowledge.Cautions[id].Why, StringComparison.Ordinal)));
        Assert.Contains((await visitor.Read()).GetProperty("facts").EnumerateArray(), fact => fact.GetProperty("kind").GetString() == "bench-test" && fact.GetProperty("how").GetString() == "probe");
    }
}
