using System.Text.Json;

namespace WireCoach.Browser.Tests;

/// <summary>A sentence in other words stands in the place of the exact ones, marked, with the exact ones a touch away.</summary>
public sealed class RewordingsTest(Bench bench)
{
    private const string Symptom = "1.5 kW single phase motor on the stirrer, 230 V 50 Hz. It hums and does not start.";

    [Theory]
    [InlineData("phone")]
    [InlineData("desk")]
    public async Task A_reworded_sentence_is_marked_and_keeps_its_exact_words(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        var exact = await Begin(visitor);
        await Answer(visitor, new { state = "ready", sequence = 1, mark = "Reworded. The exact words", items = new[] { new { id = "x", exact, text = "In <b>other</b> words." } } });
        var details = visitor.Page.Locator("ul.said details.exact").First;
        await details.WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
        await visitor.Page.EvaluateAsync("document.querySelectorAll('.follows > details').forEach(one => one.open = true)");
        Assert.Equal("In <b>other</b> words.", await visitor.Page.Locator("ul.said > li:has(details.exact) > p").First.TextContentAsync());
        Assert.False(await details.Locator("p").IsVisibleAsync());
        await details.Locator("summary").FocusAsync();
        await visitor.Page.Keyboard.PressAsync("Enter");
        Assert.True(await details.Locator("p").IsVisibleAsync());
        Assert.Equal(exact, await details.Locator("p").TextContentAsync());
        Assert.True((await details.Locator("summary").BoundingBoxAsync())!.Height >= 44);
        await visitor.Picture("reworded", whole: true);
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task A_model_that_does_not_answer_is_one_quiet_line_under_the_exact_words()
    {
        await using var visitor = await bench.Visit(Device.Phone);
        var exact = await Begin(visitor);
        await Answer(visitor, new { state = "resting", sequence = 1, notice = "The language model does not answer.", mark = "x", items = Array.Empty<object>() });
        await visitor.Page.Locator(".unreworded").WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
        Assert.Equal(1, await visitor.Page.Locator(".unreworded").CountAsync());
        Assert.Contains(exact, await visitor.Page.Locator("ul.said > li > p").AllTextContentsAsync());
    }

    private static async Task<string> Begin(Visitor visitor)
    {
        await visitor.Go("/");
        await visitor.Page.FillAsync("#words", Symptom);
        await visitor.Press("Begin");
        return (await visitor.Page.Locator("ul.said > li > p").First.TextContentAsync())!;
    }

    private static async Task Answer(Visitor visitor, object answer)
    {
        await visitor.Page.RouteAsync("**/api/sessions/*/rewordings", route => route.FulfillAsync(new() { ContentType = "application/json", Body = JsonSerializer.Serialize(answer) }));
        await visitor.Page.ReloadAsync();
    }
}
