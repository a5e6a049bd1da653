using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Playwright;
using WireCoach.Service;
using WireCoach.Service.Tests;
using WireCoach.Service.Tests.Phrasing;

namespace WireCoach.Browser.Tests;

/// <summary>From a model server to the page: what passed the guard is marked, the exact words are a touch away, all else changes nothing.</summary>
public sealed class RewordingsTest(Bench bench) : IDisposable
{
    private const string Symptom = "1.5 kW single phase motor on the stirrer, 230 V 50 Hz. It hums and does not start.";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wirecoach-");

    [Theory]
    [InlineData("phone")]
    [InlineData("desk")]
    public async Task A_reworded_sentence_is_marked_and_keeps_its_exact_words(string device)
    {
        await using var model = new ScriptedModel(ScriptedModel.Says("Most probably so far: ⟦1⟧."));
        await using var service = Beside(model);
        using var client = service.CreateClient();
        await using var visitor = await bench.Visit(Device.Of(device), client);
        await Begin(visitor);
        var details = visitor.Page.Locator("ul.said details.exact");
        await details.First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await visitor.Page.EvaluateAsync("document.querySelectorAll('.follows > details').forEach(one => one.open = true)");
        var shown = await visitor.Page.Locator("ul.said > li:has(details.exact) > p").First.TextContentAsync();
        var exact = shown!.Replace("Most probably", "Most likely", StringComparison.Ordinal);
        Assert.StartsWith("Most probably so far: ", shown, StringComparison.Ordinal);
        Assert.Contains(exact, (await visitor.Read()).GetProperty("last").GetProperty("say").EnumerateArray().Select(said => said.GetProperty("text").GetString()));
        Assert.False(await details.First.Locator("p").IsVisibleAsync());
        await Touch(details.First.Locator("summary"), device);
        Assert.True(await details.First.Locator("p").IsVisibleAsync());
        Assert.Equal(exact, await details.First.Locator("p").TextContentAsync());
        Assert.True((await details.First.Locator("summary").BoundingBoxAsync())!.Height >= 44);
        await visitor.Picture("reworded", whole: true);
        await visitor.Check();
    }

    [Theory]
    [InlineData("hostile")]
    [InlineData("wrong")]
    [InlineData("endless")]
    public async Task What_the_guard_refuses_is_never_seen(string trouble)
    {
        await using var model = new ScriptedModel(Troubles.Script(trouble));
        await using var service = Beside(model);
        using var client = service.CreateClient();
        await using var visitor = await bench.Visit(Device.Phone, client);
        var said = await Begin(visitor);
        await Ended(visitor, client);
        Assert.Equal(said, await Sentences(visitor));
        Assert.True(model.Requests > 0);
        Assert.Equal(0, await visitor.Page.Locator("details.exact, .unreworded").CountAsync());
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task A_model_that_does_not_answer_is_one_quiet_line_under_the_exact_words()
    {
        await using var model = new ScriptedModel(Troubles.Script("500"));
        await using var service = Beside(model);
        using var client = service.CreateClient();
        await using var visitor = await bench.Visit(Device.Phone, client);
        var said = await Begin(visitor);
        await Ended(visitor, client);
        await visitor.Page.ReloadAsync();
        await visitor.Page.Locator(".unreworded").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        Assert.Equal(1, await visitor.Page.Locator(".unreworded").CountAsync());
        Assert.Equal(said, await Sentences(visitor));
        Assert.Equal(3, model.Requests);
    }

    [Fact]
    public async Task Without_scripts_there_are_the_engines_words_and_nothing_is_asked()
    {
        await using var model = new ScriptedModel(ScriptedModel.Says("Most probably so far: ⟦1⟧."));
        await using var service = Beside(model);
        using var client = service.CreateClient();
        await using var visitor = await bench.Visit(Device.Of("phone-no-scripts"), client);
        Assert.Contains(await Begin(visitor), sentence => sentence.StartsWith("Most likely so far: ", StringComparison.Ordinal));
        Assert.Equal(0, model.Requests);
    }

    public void Dispose() => TestFolder.Delete(_folder);

    private WebApplicationFactory<Program> Beside(ScriptedModel model)
    {
        var service = new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
            .UseSetting("urls", "http://127.0.0.1:0").UseSetting("Data:Folder", _folder.FullName)
            .UseSetting("Phrasing:Endpoint", $"http://{model.Address}").UseSetting("Phrasing:Model", "m").UseSetting("Phrasing:TimeoutSeconds", "60"));
        service.UseKestrel();
        service.StartServer();
        return service;
    }

    private static async Task<IReadOnlyList<string>> Begin(Visitor visitor)
    {
        await visitor.Go("/");
        await visitor.Page.FillAsync("#words", Symptom);
        await visitor.Press("Begin");
        return await Sentences(visitor);
    }

    /// <summary>Until the page's own request has ended: the model is then free for the next one.</summary>
    private static async Task Ended(Visitor visitor, HttpClient client)
    {
        string state;
        while ((state = await State()) is "busy" or "overtaken")
        {
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        Assert.Contains(state, (string[])["ready", "resting"]);

        await visitor.Page.WaitForLoadStateAsync(LoadState.NetworkIdle);

        async Task<string> State() => (await client.GetFromJsonAsync<JsonElement>($"/api/sessions/{visitor.Session}/rewordings")).GetProperty("state").GetString()!;
    }

    private static Task<IReadOnlyList<string>> Sentences(Visitor visitor) => visitor.Page.Locator("ul.said > li > p").AllTextContentsAsync();

    private static Task Touch(ILocator target, string device) => device == "phone" ? target.TapAsync() : target.ClickAsync();
}
