using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;

namespace WireCoach.Service.Tests.Phrasing;

/// <summary>The whole service with a model beside it, a good one and bad ones.</summary>
public sealed class PhrasingOverHttpTest : IDisposable
{
    private const string Marker = "ZQXMARKER";
    private const string Key = "ZQX-secret-key";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wirecoach-");

    [Fact]
    public async Task What_passed_comes_back_and_no_word_of_a_person_nor_the_key_goes_astray()
    {
        await using var model = new ScriptedModel(ScriptedModel.Says("Most likely so far: ⟦1⟧"));
        var said = await Hold(model, times: 1);
        var item = Assert.Single(said.Answer.GetProperty("items").EnumerateArray());
        Assert.Equal(item.GetProperty("exact").GetString(), item.GetProperty("text").GetString() + ".");
        Assert.Contains(item.GetProperty("exact").GetString(), said.Sentences);
        Assert.Contains(Key, model.AllRequests, StringComparison.Ordinal);
        Assert.DoesNotContain(Marker, model.AllRequests, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("faithful", said.Log, StringComparison.Ordinal);
        Assert.DoesNotContain(Key, said.Log, StringComparison.Ordinal);
        Assert.DoesNotContain(Marker, said.Log, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("401", "status-401", 3)]
    [InlineData("429", "status-429", 3)]
    [InlineData("500", "status-500", 3)]
    [InlineData("html", "unreadable", 3)]
    [InlineData("not json", "unreadable", 3)]
    [InlineData("10 MB in one line", "too-large-or-broken", 3)]
    [InlineData("10 MB of spaces", "too-large-or-broken", 3)]
    [InlineData("slow", "time", 3)]
    [InlineData("stalled", "time", 3)]
    [InlineData("no tls", "unreachable", 3)]
    [InlineData("down", "unreachable", 0)]
    public async Task A_model_that_fails_leaves_the_exact_words_one_notice_and_no_storm(string trouble, string failure, int asked)
    {
        await using var model = new ScriptedModel(Troubles.Script(trouble));
        var said = await Hold(model, times: 5, trouble);
        Assert.Equal("resting", said.Answer.GetProperty("state").GetString());
        Assert.NotEmpty(said.Answer.GetProperty("notice").GetString()!);
        Assert.Equal(asked, model.Requests);
        Assert.Single(said.Log.Split('\n'), line => line.Contains($"\"Failure\":\"{failure}\"", StringComparison.Ordinal));
        AssertNothingChanged(said);
    }

    [Theory]
    [InlineData("cut off", "empty")]
    [InlineData("no text", "empty")]
    [InlineData("hostile", "tokens")]
    [InlineData("wrong", "negation")]
    [InlineData("leads made up", "characters")]
    [InlineData("endless", "tokens")]
    public async Task A_model_that_says_something_else_is_refused_and_not_asked_again(string trouble, string reason)
    {
        await using var model = new ScriptedModel(Troubles.Script(trouble));
        var said = await Hold(model, times: 4, trouble);
        Assert.Equal("ready", said.Answer.GetProperty("state").GetString());
        Assert.Equal(JsonValueKind.Null, said.Answer.GetProperty("notice").ValueKind);
        Assert.Equal(2, model.Requests); // two sentences of this reply may be sent
        Assert.Contains(reason, said.Log, StringComparison.Ordinal);
        AssertNothingChanged(said);
    }

    public void Dispose() => TestFolder.Delete(_folder);

    private static void AssertNothingChanged((JsonElement Answer, List<string> Sentences, string Log) said)
    {
        Assert.Empty(said.Answer.GetProperty("items").EnumerateArray());
        Assert.Contains(said.Sentences, sentence => sentence.StartsWith("Most likely so far: ", StringComparison.Ordinal));
        Assert.DoesNotContain(Key, said.Log + said.Answer, StringComparison.Ordinal);
        Assert.DoesNotContain(Marker, said.Log, StringComparison.OrdinalIgnoreCase);
    }

    private async Task<(JsonElement Answer, List<string> Sentences, string Log)> Hold(ScriptedModel model, int times, string trouble = "")
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var factory = new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
            .UseSetting("Data:Folder", _folder.FullName)
            .UseSetting("Phrasing:Endpoint", Troubles.Address(trouble, model)).UseSetting("Phrasing:TimeoutSeconds", Troubles.IsEndedByTime(trouble) ? "3" : "60").UseSetting("Phrasing:Model", "m").UseSetting("Phrasing:Key", Key));
        using var client = factory.CreateClient();
        using var begun = await client.PostAsJsonAsync(
            "/api/sessions", new { role = "technician", region = "iec", who = $"{Marker}who", motorTag = $"{Marker}tag" }, cancel);
        var session = await begun.Content.ReadFromJsonAsync<JsonElement>(cancel);
        using var heard = await client.PostAsJsonAsync(
            $"/api/sessions/{session.GetProperty("id").GetString()}/messages", new { text = $"{Marker} 1.5 kW single phase motor, 230 V 50 Hz. It hums and does not start." }, cancel);
        var reply = await heard.Content.ReadFromJsonAsync<JsonElement>(cancel);
        var sentences = reply.GetProperty("say").EnumerateArray().Select(said => said.GetProperty("text").GetString()!).ToList();
        var answer = default(JsonElement);
        for (var again = 0; again < times; again++)
        {
            answer = await client.GetFromJsonAsync<JsonElement>($"/api/sessions/{session.GetProperty("id").GetString()}/rewordings", cancel);
        }

        return (answer, sentences, await Log(cancel));
    }

    private async Task<string> Log(CancellationToken cancel)
    {
        var log = new StringBuilder();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(_folder.FullName, "logs")))
        {
            using var reader = new StreamReader(new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite));
            log.Append(await reader.ReadToEndAsync(cancel));
        }

        return log.ToString();
    }
}
