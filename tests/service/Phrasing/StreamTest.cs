using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;

namespace WireCoach.Service.Tests.Phrasing;

/// <summary>Rewordings come one by one while the conversation goes on, and end with it.</summary>
public sealed class StreamTest : IDisposable
{
    /// <summary>Half of what the model is given: whatever ends by itself within it was not ended by that limit.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wirecoach-");
    private readonly TaskCompletionSource _hungUp = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource _askedAgain = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private int _asked;

    [Fact]
    public async Task The_first_sentence_is_there_while_the_model_still_thinks_about_the_second()
    {
        await using var model = new ScriptedModel(FirstThenNever);
        await using var service = Service(model);
        using var client = service.CreateClient();
        var id = await Begin(client);
        using var stream = await Open(client, id);
        var (kind, item) = await Next(stream);
        Assert.Equal("reworded", kind);
        Assert.Equal(item.GetProperty("exact").GetString(), item.GetProperty("text").GetString() + ".");
        Assert.False(_hungUp.Task.IsCompleted);
    }

    [Fact]
    public async Task A_newer_turn_is_answered_at_once_and_ends_the_work_for_the_older_one()
    {
        await using var model = new ScriptedModel(FirstThenNever);
        await using var service = Service(model);
        using var client = service.CreateClient();
        var id = await Begin(client);
        using var stream = await Open(client, id);
        await Next(stream);
        await Soon(_askedAgain.Task);
        using var turn = await client.PostAsJsonAsync($"/api/sessions/{id}/messages", new { text = "why?" }, TestContext.Current.CancellationToken);
        Assert.True(turn.IsSuccessStatusCode);
        var (kind, ended) = await Next(stream);
        Assert.Equal(("end", "overtaken"), (kind, ended.GetProperty("state").GetString()));
        await Soon(_hungUp.Task);
        var figures = await client.GetFromJsonAsync<JsonElement>("/api/phrasing", TestContext.Current.CancellationToken);
        Assert.Equal("1 of 1", $"{figures.GetProperty("reworded")} of {figures.GetProperty("asked")}"); // who left did not make the model fail
    }

    [Fact]
    public async Task A_page_that_goes_ends_the_work()
    {
        await using var model = new ScriptedModel(FirstThenNever);
        await using var service = Service(model);
        service.UseKestrel();
        service.StartServer();
        using var client = service.CreateClient();
        var id = await Begin(client);
        var stream = await Open(client, id);
        await Next(stream);
        await Soon(_askedAgain.Task);
        stream.Dispose();
        await Soon(_hungUp.Task);
    }

    [Fact]
    public async Task Figures_of_rewordings_are_the_managers_and_outlive_a_restart()
    {
        await using var model = new ScriptedModel(ScriptedModel.Says("Never likely so far: ⟦1⟧."));
        for (var start = 0; start < 2; start++)
        {
            await using var service = Service(model);
            using var client = service.CreateClient();
            var id = await Begin(client);
            await client.GetStringAsync($"/api/sessions/{id}/rewordings", TestContext.Current.CancellationToken);
        }

        await using var again = Service(model);
        using var manager = again.CreateClient();
        var figures = (await manager.GetFromJsonAsync<JsonElement>("/api/figures", TestContext.Current.CancellationToken)).GetProperty("phrasing");
        Assert.Equal((4, 0, 1.0), (figures.GetProperty("asked").GetInt32(), figures.GetProperty("reworded").GetInt32(), figures.GetProperty("shareRefused").GetDouble()));
        Assert.Equal(4, figures.GetProperty("refused").EnumerateObject().Sum(reason => reason.Value.GetInt32()));
        var page = await manager.GetStringAsync("/figures", TestContext.Current.CancellationToken);
        Assert.Contains("4 (100 %)", page, StringComparison.Ordinal);
        Assert.Contains("a not was changed", page, StringComparison.Ordinal);
        Assert.Equal(0, (await manager.GetFromJsonAsync<JsonElement>("/api/phrasing?to=2020-01-01T00:00:00Z", TestContext.Current.CancellationToken)).GetProperty("asked").GetInt32());
    }

    public void Dispose() => TestFolder.Delete(_folder);

    /// <summary>Answers the first sentence and lets the second hang until the caller hangs up.</summary>
    private async Task FirstThenNever(NetworkStream stream, CancellationToken cancel)
    {
        if (Interlocked.Increment(ref _asked) == 1)
        {
            await ScriptedModel.Says("Most likely so far: ⟦1⟧")(stream, cancel);
            return;
        }

        _askedAgain.TrySetResult();
        try
        {
            Assert.Equal(0, await stream.ReadAsync(new byte[1], cancel));
        }
        catch (IOException)
        {
            // Hung up the hard way.
        }

        _hungUp.TrySetResult();
    }

    private WebApplicationFactory<Program> Service(ScriptedModel model) => new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
        .UseSetting("Data:Folder", _folder.FullName).UseSetting("urls", "http://127.0.0.1:0").UseSetting("Phrasing:Endpoint", $"http://{model.Address}")
        .UseSetting("Phrasing:Model", "m").UseSetting("Phrasing:TimeoutSeconds", "120"));

    private static Task Soon(Task awaited) => awaited.WaitAsync(Patience, TestContext.Current.CancellationToken);

    private static async Task<string> Begin(HttpClient client)
    {
        var cancel = TestContext.Current.CancellationToken;
        using var begun = await client.PostAsJsonAsync("/api/sessions", new { role = "technician", region = "iec" }, cancel);
        var id = (await begun.Content.ReadFromJsonAsync<JsonElement>(cancel)).GetProperty("id").GetString()!;
        using var heard = await client.PostAsJsonAsync($"/api/sessions/{id}/messages", new { text = "1.5 kW single phase motor, 230 V 50 Hz. It hums and does not start." }, cancel);
        Assert.True(heard.IsSuccessStatusCode);
        return id;
    }

    private static async Task<StreamReader> Open(HttpClient client, string id) =>
        new(await client.GetStreamAsync($"/api/sessions/{id}/rewordings/stream", TestContext.Current.CancellationToken));

    private static async Task<(string Kind, JsonElement What)> Next(StreamReader stream)
    {
        var (kind, what) = ("", "");
        while (await stream.ReadLineAsync(TestContext.Current.CancellationToken).AsTask().WaitAsync(Patience) is { Length: > 0 } line)
        {
            (kind, what) = line.StartsWith("event: ", StringComparison.Ordinal) ? (line[7..], what) : (kind, line[6..]);
        }

        return (kind, JsonSerializer.Deserialize<JsonElement>(what));
    }
}
