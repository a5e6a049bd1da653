using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using WireCoach.Knowledge;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Reference;
using WireCoach.Service.Hosting;
using WireCoach.Service.Json;
using WireCoach.Service.Phrasing;
using WireCoach.Service.Sessions;
using WireCoach.Service.Tests;
using WireCoach.WebUi.Desk;

namespace WireCoach.Benchmarks.Sessions;

/// <summary>What a turn costs: in process, over HTTP beside the same endpoint with only its commit, and with many people at once.</summary>
internal static class TurnStudy
{
    private const int Warming = 40;

    private static readonly string[] Talk =
    [
        "brine pump motor, plate says 3/4 hp 115/230 10.4/5.2A 1140, single phase, cap on top. six wires no marks. going on 240",
        "done. cap discharged too",
        "tagged 1 2 3 4 5 6",
        "0.2",
        "OL",
        "1-4 is 1.7, 1-2 nothing, 2-6 1.7, 3-5 3.6",
        "why?",
    ];

    public static void Run(string[] args) => Run(args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 2000).GetAwaiter().GetResult();

    private static async Task Run(int turns)
    {
        var folder = Directory.CreateTempSubdirectory("wirecoach-turn-").FullName;
        await using (var app = await Host(folder))
        {
            await InProcess(app.Services, turns / 10);
            await OverHttp(app, turns);
            await Crowd(app, 64, turns / 10);
        }

        Directory.Delete(folder, recursive: true);
        await StartUp();
    }

    /// <summary>Understand, fold, assess, words: all of a turn but the disk and the wire.</summary>
    private static async Task InProcess(IServiceProvider services, int rounds)
    {
        var (opening, turning, hearing) = (services.GetRequiredService<Opening>(), services.GetRequiredService<Turning>(), services.GetRequiredService<Hearing>());
        var json = services.GetRequiredService<RoleJson>()[Role.Technician];
        var (times, each) = (new List<double>(), Talk.ToDictionary(text => text, _ => new List<double>()));
        for (var round = 0; round < rounds; round++)
        {
            var begun = opening.Read(new NewSession { Role = Role.Technician, Region = Region.NorthAmerica }).Value!;
            var live = turning.Open("study", begun.Opened, begun.Given, DateTimeOffset.UnixEpoch).After;
            foreach (var text in Talk)
            {
                var started = Stopwatch.GetTimestamp();
                var given = hearing.Hear(live, text);
                var turned = turning.Turn(live, given.Value!, DateTimeOffset.UnixEpoch);
                _ = JsonSerializer.SerializeToUtf8Bytes(turned.Reply, json);
                if (round > rounds / 5)
                {
                    times.Add(Stopwatch.GetElapsedTime(started).TotalMilliseconds);
                    each[text].Add(times[^1]);
                }

                live = turned.After;
            }
        }

        Console.WriteLine($"turn in process: median {Quantile(times, 0.5):0.000} ms, p99 {Quantile(times, 0.99):0.000} ms ({times.Count} turns)");
        Console.WriteLine($"the slowest of its messages is number {Talk.Index().MaxBy(said => Quantile(each[said.Item], 0.5)).Index + 1}: median {each.Values.Max(taken => Quantile(taken, 0.5)):0.000} ms");
        await Task.CompletedTask;
    }

    /// <summary>The turn, the same body with only the commit, and the bare framework, by turns on one connection.</summary>
    private static async Task OverHttp(WebApplication app, int turns)
    {
        using var client = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
        var (turn, commit, bare) = (new List<double>(), new List<double>(), new List<double>());
        var id = string.Empty;
        for (var number = 0; number < turns; number++)
        {
            if (number % 20 == 0)
            {
                id = await Open(client);
            }

            var body = Body(number);
            turn.Add(await Time(client, $"/api/sessions/{id}/facts", body));
            commit.Add(await Time(client, $"/study/commit/{id}", body));
            bare.Add(await Time(client, "/study/bare", body));
        }

        foreach (var times in (List<double>[])[turn, commit, bare])
        {
            times.RemoveRange(0, turns / 5);
        }

        Console.WriteLine($"over HTTP: turn {Quantile(turn, 0.5):0.000} ms, only the commit {Quantile(commit, 0.5):0.000} ms, bare {Quantile(bare, 0.5):0.000} ms (medians of {turn.Count})");
        Console.WriteLine($"turn / commit {Quantile(turn, 0.5) / Quantile(commit, 0.5):0.00} (p99 {Quantile(turn, 0.99):0.0} and {Quantile(commit, 0.99):0.0} ms); turn / bare {Quantile(turn, 0.5) / Quantile(bare, 0.5):0.00}");
    }

    /// <summary>People who answer at once, without a moment to think: each next request goes out when the last is answered, so that the mean wait is their number over the rate.</summary>
    private static async Task Crowd(WebApplication app, int people, int turns)
    {
        using var client = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
        var rates = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var path in (string[])["/api/sessions/{0}/facts", "/study/commit/{0}", "/study/bare"])
        {
            await All(Warming);
            var watch = Stopwatch.StartNew();
            var paused = GC.GetTotalPauseDuration();
            var all = await All(turns);
            var rate = rates[path] = all.Count / watch.Elapsed.TotalSeconds;
            Console.WriteLine($"{people} at once, {path}: {rate:0} a second, p50 {Quantile(all, 0.5):0.0} ms, p99 {Quantile(all, 0.99):0.0} ms, {Quantile(all, 0.99) * rate / 1000 / people:0.0} of the mean; collections paused {(GC.GetTotalPauseDuration() - paused).TotalMilliseconds / watch.ElapsedMilliseconds:0%}");

            async Task<List<double>> All(int each)
            {
                var times = await Task.WhenAll(Enumerable.Range(0, people).Select(_ => Task.Run(() => Person(client, path, each))));
                return [.. times.SelectMany(one => one)];
            }
        }

        var (turn, commit, bare) = (rates["/api/sessions/{0}/facts"], rates["/study/commit/{0}"], rates["/study/bare"]);
        Console.WriteLine($"throughput of turns / of the bare commit: {turn / commit:0.00}; / of the bare endpoint {turn / bare:0.00}; memory {Environment.WorkingSet / 1048576.0:0} MiB (client included)");
    }

    private static async Task<List<double>> Person(HttpClient client, string path, int turns)
    {
        var id = await Open(client);
        var times = new List<double>(turns);
        for (var number = 0; number < turns; number++)
        {
            if (number % 20 == 19)
            {
                id = await Open(client);
            }

            times.Add(await Time(client, string.Format(CultureInfo.InvariantCulture, path, id), Body(number)));
        }

        return times;
    }

    /// <summary>Process start to the first page, and the memory when nobody does anything.</summary>
    private static async Task StartUp()
    {
        var times = new List<double>();
        var memory = 0.0;
        for (var start = 0; start < 6; start++)
        {
            var folder = Directory.CreateTempSubdirectory("wirecoach-start-").FullName;
            var watch = Stopwatch.StartNew();
            await using (var service = await ServiceProcess.Start(folder))
            {
                await service.Client.GetStringAsync("/");
                times.Add(watch.Elapsed.TotalMilliseconds);
                await Task.Delay(2000);
                memory = Math.Max(memory, service.Mebibytes);
            }

            Directory.Delete(folder, recursive: true);
        }

        Console.WriteLine($"process start to first page: first {times[0]:0} ms, median of the next {Quantile(times[1..], 0.5):0} ms; idle memory {memory:0} MiB");
    }

    private static async Task<WebApplication> Host(string folder)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ApplicationName = typeof(CoachDesk).Assembly.GetName().Name });
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var knowledge = KnowledgeFolder.Load(KnowledgeFolder.Beside);
        builder.Logging.ClearProviders();
        builder.AddWeb(folder);
        builder.Services.AddRules(Task.FromResult(knowledge));
        builder.Services.AddSessions(folder);
        builder.Services.AddPhrasing(builder.Configuration);
        builder.Services.AddSingleton(new DataFolder(folder));
        var app = builder.Build();
        app.UseGuards();
        app.MapEverything();
        var answer = JsonSerializer.Serialize(new { text = new string('x', 2000) });
        var likeTurn = new LikeTurn();
        app.MapPost("/study/commit/{id}", async (string id, Study body, ISessionStore store) =>
        {
            await store.Append(await likeTurn.Next(id, store));
            return Results.Content(answer, "application/json", Encoding.UTF8);
        });
        app.MapPost("/study/bare", (Study body) => Results.Content(answer, "application/json", Encoding.UTF8));
        await app.StartAsync();
        return app;
    }

    private static async Task<string> Open(HttpClient client)
    {
        using var response = await client.PostAsJsonAsync("/api/sessions", new { role = "technician", region = "na" });
        using var json = JsonDocument.Parse(await response.Content.ReadAsStringAsync());
        var id = json.RootElement.GetProperty("id").GetString()!;
        var leads = Enumerable.Range(1, 6).Select(lead => new { kind = "lead", tag = $"{lead}" });
        (await client.PostAsJsonAsync($"/api/sessions/{id}/facts", new { facts = leads })).Dispose();
        return id;
    }

    private static string Body(int number) => string.Create(
        CultureInfo.InvariantCulture, $$"""{"facts":[{"kind":"reading","from":"{{1 + (number % 5)}}","to":"{{2 + (number % 5)}}","open":true,"span":"{{number}}"}]}""");

    private static async Task<double> Time(HttpClient client, string path, string body)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        var started = Stopwatch.GetTimestamp();
        using var response = await client.PostAsync(path, content);
        _ = await response.Content.ReadAsByteArrayAsync();
        response.EnsureSuccessStatusCode();
        return Stopwatch.GetElapsedTime(started).TotalMilliseconds;
    }

    private static double Quantile(List<double> values, double share) => values.Order().ElementAt((int)((values.Count - 1) * share));

    private sealed record Study
    {
        public required IReadOnlyList<JsonElement> Facts { get; init; }
    }

    /// <summary>What a turn commits: the events of the session's latest turn once more, as a session of its own.</summary>
    private sealed class LikeTurn
    {
        private readonly ConcurrentDictionary<string, (string Copy, IReadOnlyList<SessionEvent> Turn, int Sequence)> _sessions = new(StringComparer.Ordinal);

        public async Task<IReadOnlyList<StoredEvent>> Next(string id, ISessionStore store)
        {
            if (!_sessions.TryGetValue(id, out var known))
            {
                var events = await store.Events(id);
                var last = events.Where(stored => stored.At == events[^1].At).Select(stored => stored.Event).Where(happened => happened is not SessionEvent.Opened).ToList();
                known = (SessionId.New(DateTimeOffset.UtcNow), last, 0);
            }

            var now = DateTimeOffset.UtcNow;
            IReadOnlyList<SessionEvent> turn = known.Sequence == 0 ? [new SessionEvent.Opened(Role.Technician, Region.NorthAmerica, null, null, null), .. known.Turn] : known.Turn;
            List<StoredEvent> next = [.. turn.Select((happened, place) => new StoredEvent(known.Copy, known.Sequence + place + 1, now, happened))];
            _sessions[id] = known with { Sequence = known.Sequence + next.Count };
            return next;
        }
    }
}
