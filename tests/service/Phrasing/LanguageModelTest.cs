using WireCoach.Rules.Cases;
using WireCoach.Service.Phrasing;

namespace WireCoach.Service.Tests.Phrasing;

public sealed class LanguageModelTest
{
    private static readonly TimeSpan Short = TimeSpan.FromSeconds(1.5);
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(60);

    public static TheoryData<string> Failures => ["slow", "401", "429", "500", "html", "not json", "stalled", "down", "no tls", "10 MB in one line", "10 MB of spaces"];

    [Theory, MemberData(nameof(Failures))]
    public async Task Whatever_goes_wrong_is_one_request_without_words_and_on_time(string trouble)
    {
        await using var server = new ScriptedModel(Troubles.Script(trouble));
        var draft = await Ask(Troubles.Address(trouble, server), Troubles.IsEndedByTime(trouble) ? Short : Long);
        Assert.Null(draft.Text);
        Assert.NotNull(draft.Failure);
        Assert.Equal(Troubles.IsEndedByTime(trouble), draft.Failure == "time"); // the other troubles end long before the time is up
        Assert.True(server.Requests <= 1, $"{server.Requests} requests");
    }

    [Theory, InlineData("endless"), InlineData("empty choices"), InlineData("cut off"), InlineData("no text")]
    public async Task An_answer_that_is_no_sentence_is_none_or_is_left_to_the_guard(string trouble)
    {
        await using var server = new ScriptedModel(Troubles.Script(trouble));
        var draft = await Ask($"http://{server.Address}", Long);
        Assert.True(draft.Failure is not null || draft.Text is "" || draft.Text!.Length > 200, $"{draft}");
        Assert.NotEqual("time", draft.Failure);
        Assert.Equal(1, server.Requests);
    }

    [Fact]
    public async Task A_good_answer_comes_back_whole()
    {
        await using var server = new ScriptedModel(ScriptedModel.Says("The plate decides."));
        Assert.Equal("The plate decides.", (await Ask($"http://{server.Address}", Long)).Text);
        Assert.Contains("POST /v1/chat/completions", server.LastRequest, StringComparison.Ordinal);
    }

    private static async Task<Draft> Ask(string address, TimeSpan limit)
    {
        using var model = new LanguageModel(new PhrasingSettings(new Uri(address), "m", "a-key", limit));
        return await model.Reword("The plate decides.", Role.Technician, 200, CancellationToken.None).WaitAsync(Long, TestContext.Current.CancellationToken);
    }
}
