using System.Net.Http.Json;
using System.Text.Json;

namespace WireCoach.Browser.Tests;

/// <summary>The office: finding jobs, taking them along, seeing how they went over time, and letting old ones go.</summary>
public sealed class ManagerTest(Bench bench)
{
    [Theory]
    [InlineData("phone", "Manager", "how did the agitator job of last week go")]
    [InlineData("desk", "Technician", "show me the jobs of the agitator")]
    [InlineData("desk-no-scripts", "Manager", "what happened with the agitator last month")]
    public async Task Whoever_asks_after_an_earlier_job_is_led_to_the_list_and_begins_none(string device, string role, string words)
    {
        var looked = await Open(new { role = "technician", region = "na", text = "The agitator hums and does not start." });
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        await visitor.Page.Locator($"label[for=role-{role}]").ClickAsync();
        await visitor.Page.FillAsync("#words", words);
        await visitor.Press("Begin");
        Assert.Equal("/", new Uri(visitor.Page.Url).AbsolutePath);
        await visitor.Picture("manager-sought", whole: true);
        await Look(visitor);
        await visitor.Press(visitor.Page.Locator("a.go", new() { HasText = "Look among the jobs" }));
        Assert.Equal("?text=agitator", new Uri(visitor.Page.Url).Query);
        Assert.Contains(await visitor.Page.Locator(".rows a").AllAsync(), row => row.GetAttributeAsync("href").Result!.Contains(looked, StringComparison.Ordinal));
        Assert.Empty(visitor.Complaints);
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("desk")]
    public async Task Who_asks_after_a_job_that_was_never_here_is_told_so_and_offered_all_of_them(string device)
    {
        await Open(new { role = "technician", region = "na", text = "The agitator hums and does not start." });
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/");
        await visitor.Page.Locator("label[for=role-Manager]").ClickAsync();
        await visitor.Page.FillAsync("#words", "how did the bandsaw job of last week go");
        await visitor.Press("Begin");
        var card = await visitor.Page.Locator("section[aria-labelledby=asked]").InnerTextAsync();
        Assert.Contains("No job on record here speaks of “bandsaw”", card, StringComparison.Ordinal);
        Assert.DoesNotContain("0 found", card, StringComparison.Ordinal);
        await visitor.Picture("manager-sought-none", whole: true);
        await Look(visitor);
        await visitor.Press(visitor.Page.Locator("a.go", new() { HasText = "Look through all jobs" }));
        Assert.Equal("/sessions", new Uri(visitor.Page.Url).PathAndQuery);
        Assert.NotEqual(0, await visitor.Page.Locator(".rows a").CountAsync());
        Assert.Empty(visitor.Complaints);
    }

    [Fact]
    public async Task Whoever_means_a_new_job_all_the_same_begins_it()
    {
        await using var visitor = await bench.Visit(Device.Phone);
        await visitor.Go("/");
        await visitor.Page.FillAsync("#words", "Show me the jobs of the curd mill.");
        await visitor.Press("Begin");
        await visitor.Press("Begin a new job with these words");
        Assert.NotEmpty(visitor.Session);
        Assert.Contains("Jobs and Figures", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(visitor.Complaints);
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("desk")]
    [InlineData("desk-no-scripts")]
    [InlineData("desk-dark")]
    public async Task Jobs_are_found_by_choices_and_taken_along(string device)
    {
        var who = $"F. Holm {device}";
        var first = await Open(new { role = "technician", region = "na", who, motorTag = $"brine pump {device}", text = "It hums and does not start." });
        var second = await Open(new { role = "technician", region = "na", who, motorTag = $"=cmd {device}", text = "It trips the breaker at once." });
        await Open(new { role = "technician", region = "na", who = $"K. Dahl {device}", text = "It hums and does not start." });
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/sessions");
        await visitor.Page.Locator("summary", new() { HasText = "More filters" }).ClickAsync();
        await visitor.Page.SelectOptionAsync("#who", who);
        await visitor.Picture("manager-filters", whole: true);
        await Look(visitor);
        await visitor.Press("Show");
        Assert.Equal(2, await visitor.Page.Locator(".rows a").CountAsync());
        var cause = (await visitor.Page.Locator("#cause option").AllAsync()).Count;
        Assert.Equal(bench.Knowledge.Causes.Count + 1, cause);

        // a caution that both were shown, then one that neither was
        await visitor.Page.SelectOptionAsync("#caution", "isolate-and-prove-dead");
        await visitor.Press("Show");
        Assert.Equal(2, await visitor.Page.Locator(".rows a").CountAsync());
        await visitor.Page.SelectOptionAsync("#caution", "stop-water");
        await visitor.Press("Show");
        Assert.Equal(0, await visitor.Page.Locator(".rows a").CountAsync());
        await visitor.Picture("manager-none", whole: true);
        await Look(visitor);
        await visitor.Page.Locator(".active a", new() { HasText = "Caution shown" }).ClickAsync();
        await visitor.Page.GetByText("Found: 2").WaitForAsync();
        await visitor.Picture("manager-found", whole: true);
        await Look(visitor);
        Assert.Equal(1, await visitor.Page.Locator(".active a").CountAsync());

        // all that the filters show, then one of them
        var table = await Download(visitor, "As a table (CSV)");
        Assert.Equal(3, table.Trim().Split("\r\n").Length);
        Assert.Contains(first, table, StringComparison.Ordinal);
        Assert.Contains("'=cmd", table, StringComparison.Ordinal);
        await visitor.Page.Locator($"#take-{second}").CheckAsync();
        var logs = JsonDocument.Parse(await Download(visitor, "Whole logs (JSON)")).RootElement;
        Assert.Equal([second], logs.EnumerateArray().Select(log => log.GetProperty("session").GetProperty("id").GetString()!));
        Assert.True(logs[0].GetProperty("entries").GetArrayLength() > 3);
        Assert.Empty(visitor.Complaints);
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("desk")]
    [InlineData("desk-dark")]
    public async Task Figures_over_time_are_pictures_with_a_table_beside_them(string device)
    {
        await Open(new { role = "technician", region = "na", text = "It hums and does not start." });
        await using var visitor = await bench.Visit(Device.Of(device));
        var before = await Counted();
        await visitor.Go("/figures");
        Assert.Equal(3, await visitor.Page.Locator("svg.diagram[role=img]").CountAsync());
        await visitor.Page.Locator("summary", new() { HasText = "As a table" }).First.ClickAsync();
        await visitor.Picture("manager-figures", whole: true);
        Assert.Equal(0, await visitor.Page.EvaluateAsync<int>("() => [...document.querySelectorAll('td.count')].filter(cell => { const lines = document.createRange(); lines.selectNodeContents(cell); return new Set([...lines.getClientRects()].map(box => Math.round(box.top))).size > 1; }).length"));
        await Look(visitor);
        var sum = (await visitor.Page.Locator("section[aria-labelledby=plot-sessions] td").AllInnerTextsAsync()).Sum(text => int.Parse(text, System.Globalization.CultureInfo.InvariantCulture));
        Assert.InRange(sum, before, await Counted()); // other visitors open jobs meanwhile
        await visitor.Page.FillAsync("#from", "2001-01-01");
        await visitor.Page.FillAsync("#to", "2001-01-02");
        await visitor.Press("Show");
        Assert.Contains("Nothing to count yet", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await Look(visitor);
    }

    private async Task<int> Counted() =>
        (await bench.Http.GetFromJsonAsync<JsonElement>("/api/figures", TestContext.Current.CancellationToken)).GetProperty("sessions").GetInt32();

    [Theory]
    [InlineData("phone")]
    [InlineData("desk-no-scripts")]
    public async Task What_would_go_by_age_is_shown_first(string device)
    {
        await using var visitor = await bench.Visit(Device.Of(device));
        await visitor.Go("/sessions");
        await visitor.Press("How long jobs are kept");
        await visitor.Page.FillAsync("#days", "soon");
        await visitor.Press("Show what would go");
        Assert.Contains("whole number of days", await visitor.Page.Locator("#wrong").InnerTextAsync(), StringComparison.Ordinal);
        await visitor.Picture("retention-wrong", whole: true);
        await Look(visitor);
        await visitor.Page.FillAsync("#days", "1");
        await visitor.Press("Show what would go");
        Assert.Contains("No job is that old.", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await visitor.Picture("retention-none", whole: true);
        await Look(visitor);
    }

    [Fact]
    public async Task Jobs_past_their_time_are_deleted_together_and_leave_a_record()
    {
        await using var shop = new Bench();
        shop.Serve();
        var old = new[] { await Open(new { role = "technician", region = "na", text = "It hums." }, shop), await Open(new { role = "technician", region = "na", text = "It trips." }, shop) };
        shop.Ahead = TimeSpan.FromDays(40);
        var kept = await Open(new { role = "technician", region = "na", text = "It squeals." }, shop);
        await using var visitor = await bench.Visit(Device.Phone, shop.Http);
        await visitor.Go("/retention?days=30");
        await visitor.Page.Locator("summary", new() { HasText = "Which ones" }).ClickAsync();
        Assert.Equal(2, await visitor.Page.Locator(".rows a").CountAsync());
        await visitor.Picture("retention", whole: true);
        await Look(visitor);
        await visitor.Page.FillAsync("#who", "F. Holm");
        await visitor.Press("Delete these 2 for good");
        Assert.Contains("Deleted: 2", await visitor.Page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        var deletions = await shop.Http.GetFromJsonAsync<JsonElement>("/api/deletions", TestContext.Current.CancellationToken);
        Assert.Equal(old.Order(StringComparer.Ordinal), deletions.EnumerateArray().Select(one => one.GetProperty("id").GetString()!).Order(StringComparer.Ordinal));
        Assert.All(deletions.EnumerateArray(), one => Assert.Equal(("F. Holm", "no entry for 30 days"), (one.GetProperty("who").GetString(), one.GetProperty("why").GetString())));
        Assert.True((await shop.Http.GetAsync($"/api/sessions/{kept}", TestContext.Current.CancellationToken)).IsSuccessStatusCode);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await shop.Http.GetAsync($"/api/sessions/{old[0]}", TestContext.Current.CancellationToken)).StatusCode);
    }

    private static async Task<string> Download(Visitor visitor, string button)
    {
        var downloading = visitor.Page.WaitForDownloadAsync();
        await visitor.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();
        var download = await downloading;
        Assert.StartsWith("sessions-", download.SuggestedFilename, StringComparison.Ordinal);
        return await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
    }

    private Task<string> Open(object opening) => Open(opening, bench);

    private static async Task<string> Open(object opening, Bench shop)
    {
        var opened = await shop.Http.PostAsJsonAsync("/api/sessions", opening, TestContext.Current.CancellationToken);
        return (await opened.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetString()!;
    }

    private static async Task Look(Visitor visitor)
    {
        await visitor.CheckNarrow();
        await visitor.Check();
    }
}
