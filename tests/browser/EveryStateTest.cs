using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Playwright;
using WireCoach.Rules.Language;
using WireCoach.Service;
using WireCoach.Service.Access;
using WireCoach.Service.Tests;
using WireCoach.Service.Tests.Conversations;

namespace WireCoach.Browser.Tests;

/// <summary>Every page in every state: empty, filled, refused, handed over, done, failed and printed.</summary>
public sealed class EveryStateTest(Bench bench)
{
    private static readonly string[] Pages =
    [
        "/", "/sessions", "/sessions?text=nobody-wrote-this", "/practice", "/figures", "/calculators", "/calculators/supply", "/demonstration",
        "/demonstration?layout=three-phase-9-star&fault=lost-line", "/demonstration?layout=capacitor-start-dual-6&fault=weak-capacitor", "/retention", "/retention?days=soon", "/retention?days=1",
        "/no-such-page", "/sessions/none", "/sessions/none/log", "/sessions/none/plan", "/sessions/none/readings", "/sessions/none/practice", $"/sessions/{AskedQuestions.Failing}", "/calculators/none",
    ];

    [Theory]
    [InlineData("phone-dark")]
    [InlineData("desk-no-scripts")]
    public async Task No_page_has_anything_to_complain_of(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        foreach (var path in Pages)
        {
            await visitor.Go(path);
            Assert.Equal(1, await visitor.Page.Locator("h1").CountAsync());
            await visitor.Picture($"state{path.Replace('/', '-').Replace('?', '-').Replace('&', '-')}", whole: true);
            await visitor.Check();
        }
    }

    [Theory]
    [InlineData("phone-no-scripts")]
    [InlineData("desk-dark")]
    public async Task No_refusal_of_any_kind_of_answer_has(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        var session = await Open("technician", "Six leads tagged 1 2 3 4 5 6, no marks. Single phase.");
        foreach (var question in AskedQuestions.All(bench.Knowledge).DistinctBy(question => question.Kind))
        {
            bench.Asked.Show(session, question);
            await visitor.Go($"/sessions/{session}");
            if (question.Kind is QuestionKind.Quantity or QuestionKind.Reading)
            {
                await visitor.Page.FillAsync("#value", "much");
            }

            await visitor.Press(visitor.Page.Locator(".ask .answers button.go").First);
            var told = await visitor.Page.Locator(".wrong-line").InnerTextAsync();
            Assert.True(told.Length > 20, $"{question.Kind}: {told}");
            await visitor.Picture($"state-refused-{question.Kind}");
            await visitor.Check();
            if (question.Kind == QuestionKind.Reading)
            {
                await visitor.Page.FillAsync("#value", "1.7");
                await visitor.Page.Locator("label[for='Given-Shown-open']").ClickAsync();
                await visitor.Page.Locator(".ask .answers button.go").First.ClickAsync();
                await visitor.Page.GetByText("over-range is picked as well").WaitForAsync();
                await visitor.Check();
            }
        }
    }

    [Theory]
    [InlineData("phone-dark")]
    [InlineData("desk")]
    public async Task No_state_of_a_job_has(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        var done = await Done();
        var handed = await Open("homeowner", "The grinder smokes and I got a shock from its case.");
        await Answer(handed, ask => new { questionId = ask.GetProperty("id").GetString(), confirmed = false });
        (await bench.Http.PostAsJsonAsync($"/api/sessions/{handed}/facts", new { facts = new[] { new { kind = "instrument", id = "multimeter" } } }, TestContext.Current.CancellationToken)).EnsureSuccessStatusCode();
        await visitor.Go($"/sessions/{handed}");
        Assert.Equal(2, await visitor.Page.Locator(".talk > .caution").CountAsync()); // what is found and who is next stay in view
        Assert.NotEmpty(await visitor.Page.Locator(".standing > li").AllInnerTextsAsync());
        Assert.NotEmpty(await visitor.Page.Locator(".refer .said > li").AllInnerTextsAsync()); // a turn that said nothing new leaves what holds
        var practice = (await Read(await bench.Http.PostAsJsonAsync("/api/sessions", new { role = "technician", region = "na", practice = new { layout = "capacitor-start-dual-6", seed = 8 } }, TestContext.Current.CancellationToken))).GetProperty("id").GetString()!;
        foreach (var (id, pages) in new[] { (done, new[] { "", "/plan", "/log", "/readings" }), (handed, ["", "/plan", "/log", "/readings"]), (practice, ["", "/practice"]) })
        {
            foreach (var page in pages)
            {
                await visitor.Go($"/sessions/{id}{page}");
                await visitor.Picture($"state-{(id == done ? "done" : id == handed ? "handed" : "practice")}{page.Replace('/', '-')}", whole: true);
                await visitor.Check();
                await visitor.Page.EvaluateAsync("() => document.querySelectorAll('details').forEach(one => one.open = true)");
                await visitor.Check();
                await visitor.Page.EmulateMediaAsync(new() { Media = Media.Print, ColorScheme = ColorScheme.Light });
                await visitor.CheckPrinted();
                await visitor.Page.EmulateMediaAsync(new() { Media = Media.Screen, ColorScheme = Device.Of(device).Dark ? ColorScheme.Dark : ColorScheme.Light });
            }
        }

        await visitor.Go($"/sessions/{done}");
        await visitor.Page.FillAsync("#typed", "zzgrumpf");
        await visitor.Press("Send");
        await visitor.Picture("state-not-understood", whole: true);
        await visitor.Check();
        await visitor.Go($"/sessions/{done}/log");
        await visitor.Page.Locator("summary", new() { HasText = "Delete this job" }).ClickAsync();
        await visitor.Press("Delete it");
        await visitor.Picture("state-delete-refused", whole: true);
        await visitor.Check();
    }

    /// <summary>A job from before the rules changed: its log says what they make of it now.</summary>
    [Theory]
    [InlineData("phone")]
    [InlineData("desk-dark")]
    public async Task What_todays_rules_decide_otherwise_stands_beside_what_was_decided(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        var session = await Open("technician", "The grinder hums and starts when it is spun.");
        bench.Asked.Decide(session, [new("status", ["ready"], ["open"]), new("layout", [], ["capacitor-start-4"]), new("cause", ["worn-bearing"], ["start-switch-stuck-open", "start-capacitor-open"])]);
        await visitor.Go($"/sessions/{session}/log");
        await visitor.Picture("state-decided-otherwise", whole: true);
        var rows = await visitor.Page.Locator("section:has(#today) tbody tr").AllInnerTextsAsync();
        Assert.Equal(3, rows.Count);
        Assert.Contains("ready to check", rows[0], StringComparison.Ordinal);
        Assert.Contains("nothing", rows[1], StringComparison.Ordinal);
        Assert.Contains(bench.Knowledge.Causes["start-switch-stuck-open"].Name, rows[2], StringComparison.Ordinal);
        Assert.Contains("Rule:", await visitor.Page.Locator(".logged-concluded").First.InnerTextAsync(), StringComparison.Ordinal);
        await visitor.Check();
    }

    /// <summary>The door of a service that is shared.</summary>
    [Theory]
    [InlineData("phone-dark")]
    [InlineData("desk")]
    public async Task The_door_has_nothing_either(string device)
    {
        var folder = Directory.CreateTempSubdirectory("wirecoach-");
        foreach (var role in Enum.GetValues<AccessRole>())
        {
            new AccessCodes(folder.FullName).Set(role, $"a-code-for-{role}");
        }

        await using (var shared = new WebApplicationFactory<Program>().WithWebHostBuilder(host => host
            .UseSetting("Data:Folder", folder.FullName).UseSetting("Sharing:Address", "http://127.0.0.1:0").UseSetting("Sharing:Proxy", "127.0.0.1").UseSetting("Sharing:Hosts", "127.0.0.1")))
        {
            shared.UseKestrel();
            using var client = shared.CreateClient();
            await using var visitor = await bench.Visit(Device.Of(device), client);
            await visitor.Page.SetExtraHTTPHeadersAsync(new Dictionary<string, string> { ["X-Forwarded-Proto"] = "https" });
            await visitor.Go("/sign-in");
            await visitor.Picture("state-door", whole: true);
            await visitor.Check();
        }

        TestFolder.Delete(folder);
    }

    private async Task<string> Done()
    {
        var session = await Open("technician", TechnicianTest.FirstWords);
        var answers = new BenchAnswers(new BenchMotor(TechnicianTest.Tags, 1.5, 3.4)) { Supply = 240 };
        for (var turn = 0; turn < 60; turn++)
        {
            var assessed = (await bench.Http.GetFromJsonAsync<JsonElement>($"/api/sessions/{session}", TestContext.Current.CancellationToken)).GetProperty("assessment");
            if (assessed.GetProperty("next").ValueKind != JsonValueKind.Object)
            {
                break;
            }

            await Answer(session, ask => answers.Answer(ask, assessed.GetProperty("plan")));
        }

        return session;
    }

    private async Task Answer(string session, Func<JsonElement, object> answer)
    {
        var ask = (await bench.Http.GetFromJsonAsync<JsonElement>($"/api/sessions/{session}", TestContext.Current.CancellationToken)).GetProperty("assessment").GetProperty("next");
        (await bench.Http.PostAsJsonAsync($"/api/sessions/{session}/answers", answer(ask), TestContext.Current.CancellationToken)).EnsureSuccessStatusCode();
    }

    private async Task<string> Open(string role, string text) =>
        (await Read(await bench.Http.PostAsJsonAsync("/api/sessions", new { role, region = "na", text }, TestContext.Current.CancellationToken))).GetProperty("id").GetString()!;

    private static async Task<JsonElement> Read(HttpResponseMessage response)
    {
        using (response)
        {
            return await response.EnsureSuccessStatusCode().Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken);
        }
    }
}
