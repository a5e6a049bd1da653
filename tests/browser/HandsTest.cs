using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Playwright;

namespace WireCoach.Browser.Tests;

/// <summary>For tired people with dirty hands and a bad network: double taps, slow answers, one touch to undo.</summary>
public sealed class HandsTest(Bench bench)
{
    [Theory]
    [InlineData("phone")]
    [InlineData("phone-no-scripts")]
    public async Task What_was_given_at_once_is_taken_back_at_once(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        await visitor.Page.FillAsync("#words", "Six leads tagged 1 2 3 4 5 6, no marks. Single phase.");
        await visitor.Press("Begin");
        await visitor.Pick("Yes, done");
        await visitor.Press(visitor.Page.Locator(".ask button.go").First);
        var before = await Counted(visitor);
        await visitor.Page.FillAsync("#typed", "1-4 is 1.7, 1-2 nothing, 2-6 1.7");
        await visitor.Press("Send");
        Assert.Equal(before + 3, await Counted(visitor));
        var undo = visitor.Page.Locator(".ask .facts li");
        Assert.Equal(1, await undo.CountAsync());
        Assert.Contains("1 to 4", await undo.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("2 to 6", await undo.InnerTextAsync(), StringComparison.Ordinal);
        await visitor.Press(undo.Locator("button"));
        Assert.Equal(before, await Counted(visitor));
        Assert.All(await visitor.Page.Locator(".trail > li").AllInnerTextsAsync(), line => Assert.Contains(line, char.IsLetter));
        Assert.Empty(visitor.Complaints);
    }

    [Theory]
    [InlineData("/", "#begin-now")]
    [InlineData("/practice", "form button.go")]
    public async Task Two_taps_open_one_job(string path, string button)
    {
        await using var visitor = await bench.Visit(Device.Phone with { Scripts = false });
        await visitor.Go(path);
        var key = await visitor.Page.Locator("input[name='Form.Key']").GetAttributeAsync("value");
        Assert.True(key!.Length > 20);
        await visitor.Press(visitor.Page.Locator(button).First);
        var first = visitor.Session;

        // the same form once more, as a second tap sends it
        await visitor.Page.GoBackAsync();
        await visitor.Page.Locator("input[name='Form.Key']").EvaluateAsync("(field, key) => field.value = key", key);
        await visitor.Press(visitor.Page.Locator(button).First);
        Assert.Equal(first, visitor.Session);
    }

    [Fact]
    public async Task Whoever_waits_sees_that_something_goes_on()
    {
        await using var visitor = await bench.Visit(Device.Phone);
        await visitor.Go("/");
        var busy = visitor.Page.Locator("#busy");
        Assert.False(await busy.IsVisibleAsync());
        var seen = new TaskCompletionSource();
        await visitor.Page.RouteAsync("**/*", async route =>
        {
            if (route.Request.Method == "POST")
            {
                await seen.Task; // the network is as slow as it takes
            }

            await route.ContinueAsync();
        });
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await busy.WaitForAsync(new() { State = WaitForSelectorState.Visible });
        await visitor.Picture("busy");
        seen.SetResult();
        await visitor.Page.Locator("#asked").WaitForAsync();
        await busy.WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task Units_keep_their_signs_where_answers_begin_large()
    {
        await using var visitor = await bench.Visit(Device.Phone);
        var session = await (await bench.Http.PostAsJsonAsync("/api/sessions", new { role = "technician", region = "na" }, TestContext.Current.CancellationToken)).Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken);
        var id = session.GetProperty("id").GetString()!;
        var asked = AskedQuestions.All(bench.Knowledge).ToList();
        bench.Asked.Show(id, asked.First(question => question.Kind == WireCoach.Rules.Language.QuestionKind.Reading));
        await visitor.Go($"/sessions/{id}");
        Assert.Equal(["Ω", "kΩ", "MΩ"], await visitor.Page.Locator(".units label").AllInnerTextsAsync());
        bench.Asked.Show(id, asked.First(question => question.Id == "test.turn-by-hand"));
        await visitor.Go($"/sessions/{id}");
        Assert.StartsWith("Turns freely", (await visitor.Page.Locator(".tile label").AllInnerTextsAsync())[0], StringComparison.Ordinal);
        bench.Asked.Show(id, asked.First(question => question.Id == "test.look-and-smell"));
        await visitor.Go($"/sessions/{id}");
        Assert.All(await visitor.Page.Locator(".tile label").AllInnerTextsAsync(), answer => Assert.True(char.IsUpper(answer[0]), answer));
    }

    /// <summary>A danger told of after the plug was pulled stands above the question when it is first said, and a job that is to be handed over begins with what is found.</summary>
    [Fact]
    public async Task A_danger_that_was_just_told_of_is_the_first_thing_that_is_seen()
    {
        await using var visitor = await bench.Visit(Device.Phone);
        var opened = await bench.Http.PostAsJsonAsync("/api/sessions", new { role = "homeowner", region = "na", text = "The grinder hums. The plug is out." }, TestContext.Current.CancellationToken);
        await visitor.Go($"/sessions/{(await opened.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetString()}");
        await visitor.Page.FillAsync("#typed", "I got a tingle from the case");
        await visitor.Press("Send");
        Assert.DoesNotContain("out", await visitor.Page.Locator(".safe").InnerTextAsync(), StringComparison.Ordinal); // the plug is asked for once more
        Assert.StartsWith("Danger. Stop.", await visitor.Page.Locator(".talk > .caution").First.InnerTextAsync(), StringComparison.Ordinal);
        var said = visitor.Page.Locator(".follows .first");
        Assert.True(await said.CountAsync() == 0 || !(await said.InnerTextAsync()).StartsWith("Not asked for", StringComparison.Ordinal));
        Assert.Empty(await visitor.Unseen());
    }

    private async Task<int> Counted(Visitor visitor) =>
        (await bench.Http.GetFromJsonAsync<JsonElement>($"/api/sessions/{visitor.Session}", TestContext.Current.CancellationToken)).GetProperty("facts").EnumerateArray().Count(fact => fact.GetProperty("kind").GetString() == "reading");
}
