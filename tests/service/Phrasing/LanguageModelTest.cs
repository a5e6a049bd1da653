using System.Diagnostics;
using WireCoach.Rules.Cases;
using WireCoach.Service.Phrasing;

namespace WireCoach.Service.Tests.Phrasing;

public sealed class LanguageModelTest
{
    public static TheoryData<string> Failures => ["slow", "401", "429", "500", "html", "not json", "stalled", "down", "no tls", "10 MB in one line", "10 MB of spaces"];

    [Theory, MemberData(nameof(Failures))]
    public async Task Whatever_goes_wrong_is_one_request_without_words_and_on_time(string trouble)
    {
        await using var server = new ScriptedModel(Troubles.Script(trouble));
        var (draft, took) = await Ask(Troubles.Address(trouble, server));
        Assert.Null(draft.Text);
        Assert.NotNull(draft.Failure);
        Assert.True(took < TimeSpan.FromSeconds(4), $"{took}");
        Assert.True(server.Requests <= 1, $"{server.Requests} requests");
    }

    [Theory, InlineData("endless"), InlineData("empty choices"), InlineData("cut off"), InlineData("no text")]
    public async Task An_answer_that_is_no_sentence_is_none_or_is_left_to_the_guard(string trouble)
    {
        await using var server = new ScriptedModel(Troubles.Script(trouble));
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
}
