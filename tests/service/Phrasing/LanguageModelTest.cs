using System.Diagnostics;
using System.Net.Sockets;
using WireCoach.Rules.Cases;
using WireCoach.Service.Phrasing;

namespace WireCoach.Service.Tests.Phrasing;

public sealed class LanguageModelTest
{
    private const string Empty = "{\"id\":\"x\",\"object\":\"chat.completion.chunk\",\"created\":1,\"model\":\"m\",\"choices\":[]}";

    public static TheoryData<string> Troubles => ["slow", "401", "429", "500", "html", "not json", "stalled", "down", "tls", "huge line"];

    [Theory, MemberData(nameof(Troubles))]
    public async Task Whatever_goes_wrong_is_one_request_without_words_and_on_time(string trouble)
    {
        await using var server = new ScriptedModel(Script(trouble));
        var (draft, took) = await Ask(trouble == "down" ? "http://127.0.0.1:9/v1" : $"{(trouble == "tls" ? "https" : "http")}://{server.Address}");
        Assert.Null(draft.Text);
        Assert.NotNull(draft.Failure);
        Assert.True(took < TimeSpan.FromSeconds(4), $"{took}");
        Assert.True(server.Requests <= 1, $"{server.Requests} requests");
    }

    [Theory, InlineData("endless"), InlineData("empty choices"), InlineData("cut off"), InlineData("no text")]
    public async Task An_answer_that_is_no_sentence_is_none_or_is_left_to_the_guard(string trouble)
    {
        await using var server = new ScriptedModel(Script(trouble));
        var (draft, took) = await Ask($"http://{server.Address}");
        Assert.True(draft.Failure is not null || draft.Text is "" || draft.Text!.Length > 200, $"{draft}");
        Assert.True(took < TimeSpan.FromSeconds(4), $"{took}");
        Assert.Equal(1, server.Requests);
    }

    [Fact]
    public async Task A_good_answer_comes_back_whole()
    {
        await using var server = new ScriptedModel(ScriptedModel.Says("The plate decides."));
        Assert.Equal("The plate decides.", (await Ask($"http://{server.Address}")).Draft.Text);
        Assert.Contains("POST /v1/chat/completions", server.LastRequest, StringComparison.Ordinal);
    }

    private static async Task<(Draft Draft, TimeSpan Took)> Ask(string address)
    {
        using var model = new LanguageModel(new PhrasingSettings(new Uri(address), "m", "a-key", TimeSpan.FromSeconds(1.5)));
        var started = Stopwatch.GetTimestamp();
        return (await model.Reword("The plate decides.", Role.Technician, 200, CancellationToken.None), Stopwatch.GetElapsedTime(started));
    }

    private static Func<NetworkStream, CancellationToken, Task> Script(string trouble) => trouble switch
    {
        "slow" => (_, cancel) => Task.Delay(5000, cancel),
        "401" or "429" or "500" => ScriptedModel.Answers(int.Parse(trouble), "application/json", "{\"error\":{\"message\":\"no\"}}"),
        "html" => ScriptedModel.Answers(200, "text/html", "<html><body>Hello</body></html>"),
        "not json" => ScriptedModel.Answers(200, "text/event-stream", "data: {\"id\": oops\n\n"),
        "empty choices" => ScriptedModel.Answers(200, "text/event-stream", $"data: {Empty}\n\ndata: [DONE]\n\n"),
        "cut off" => ScriptedModel.Says("The plate", "length"),
        "no text" => ScriptedModel.Says(""),
        "stalled" => async (stream, cancel) =>
        {
            await ScriptedModel.Begin(stream, cancel);
            await ScriptedModel.Write(stream, ScriptedModel.Piece("The plate"), cancel);
            await Task.Delay(5000, cancel);
        },
        "endless" => async (stream, cancel) =>
        {
            await ScriptedModel.Begin(stream, cancel);
            while (true)
            {
                await ScriptedModel.Write(stream, ScriptedModel.Piece("again and again "), cancel);
            }
        },
        "huge line" => async (stream, cancel) =>
        {
            await ScriptedModel.Begin(stream, cancel);
            await ScriptedModel.Write(stream, "data: " + new string('x', 10 << 20), cancel);
        },
        _ => (stream, cancel) => ScriptedModel.Write(stream, "no handshake\r\n\r\n", cancel),
    };
}
