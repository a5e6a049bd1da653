using System.Net.Http.Json;
using System.Text.Json;
using WireCoach.Rules.Language;

namespace WireCoach.Browser.Tests;

/// <summary>Every question that knowledge has, in front of somebody with one hand free.</summary>
public sealed class EveryQuestionTest(Bench bench)
{
    private const int Devices = 3;

    [Theory]
    [InlineData("technician", "phone", 0)]
    [InlineData("technician", "desk-dark", 1)]
    [InlineData("homeowner", "phone-dark", 2)]
    public async Task Question_and_answer_are_seen_without_scrolling(string role, string device, int turn)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        var opened = await bench.Http.PostAsJsonAsync("/api/sessions", new { role, region = "na", text = "Six leads tagged 1 2 3 4 5 6, no marks. It hums." }, TestContext.Current.CancellationToken);
        var session = (await opened.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetString()!;
        var kinds = new HashSet<QuestionKind>();
        var wrong = new List<string>();
        var warned = 0;
        foreach (var (at, question) in AskedQuestions.All(bench.Knowledge).Index())
        {
            bench.Asked.Show(session, question);
            await visitor.Go($"/sessions/{session}");
            await visitor.Picture($"asked-{question.Id}-{role}");
            warned = Math.Max(warned, await visitor.Page.Locator(".talk > .caution").CountAsync());
            wrong.AddRange((await visitor.Unseen()).Select(one => $"{question.Id}: {one}"));
            var first = kinds.Add(question.Kind);
            if (first || at % Devices == turn)
            {
                await visitor.Check(); // each question on one of the devices, each kind on all
            }

            if (first)
            {
                await visitor.CheckNarrow();
            }
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
        Assert.Equal(Enum.GetValues<QuestionKind>().Length, kinds.Count);
        Assert.Equal(2, warned);
    }
}
