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
    [InlineData(401, "{\"error\":{\"message\":\"no\"}}")]
    [InlineData(429, "{\"error\":{\"message\":\"later\"}}")]
    [InlineData(500, "<html>oops</html>")]
    [InlineData(200, "<html>oops</html>")]
    public async Task A_model_that_fails_leaves_the_exact_words_one_notice_and_no_storm(int status, string body)
    {
        await using var model = new ScriptedModel(ScriptedModel.Answers(status, "application/json", body));
        var said = await Hold(model, times: 4);
        Assert.Empty(said.Answer.GetProperty("items").EnumerateArray());
        Assert.Equal("resting", said.Answer.GetProperty("state").GetString());
        Assert.NotEmpty(said.Answer.GetProperty("notice").GetString()!);
        Assert.Equal(3, model.Requests);
        Assert.NotEmpty(said.Sentences);
        Assert.DoesNotContain(Key, said.Log + said.Answer, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        ServiceFixture.Release(_folder.FullName);
        _folder.Delete(recursive: true);
    }

    private async Task<(JsonElement Answer, List<string> Sentences, string Log)> Hold(ScriptedModel model, int times)
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var factory = new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
            .UseSetting("Data:Folder", _folder.FullName)
            .UseSetting("Phrasing:Endpoint", $"http://{model.Address}").UseSetting("Phrasing:Model", "m").UseSetting("Phrasing:Key", Key));
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
