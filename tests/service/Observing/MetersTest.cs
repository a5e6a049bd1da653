using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Net;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using WireCoach.Service.Access;
using WireCoach.Service.Observing;
using WireCoach.Service.Tests.Access;

namespace WireCoach.Service.Tests.Observing;

/// <summary>The meters tell what happened, and only that: they reach a collector where one is configured, without a person's words.</summary>
public sealed class MetersTest : DataFolderTest
{
    private const string Words = "ZQXWORDS 1-4 is 1.7";

    [Fact]
    public async Task Each_turn_refusal_and_sign_in_is_counted_once()
    {
        using var service = new SharedService(Folder);
        var own = service.Services.GetRequiredService<Meters>().Own;
        var counted = new ConcurrentDictionary<string, double>(StringComparer.Ordinal);
        using var listener = new MeterListener { InstrumentPublished = (instrument, listening) => Enable(instrument, listening, own) };
        listener.SetMeasurementEventCallback<long>((instrument, value, tags, _) => Add(counted, instrument, value, tags));
        listener.SetMeasurementEventCallback<double>((instrument, _, tags, _) => Add(counted, instrument, 1, tags));
        listener.Start();

        var browser = await service.SignedIn(AccessRole.Technician);
        using (var wrong = await SharedService.SignIn(service.Browser(), "Manager", "ZQXGUESS"))
        {
            Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        }

        var id = await SharedService.Id(await SharedService.Open(browser, "technician"));
        Assert.Equal(HttpStatusCode.OK, await Post(browser, $"/api/sessions/{id}/messages", $$"""{"text":"{{Words}}"}"""));
        Assert.Equal(HttpStatusCode.BadRequest, await Post(browser, $"/api/sessions/{id}/facts", """{"facts":[]}"""));
        Assert.Equal(HttpStatusCode.OK, await Post(browser, $"/api/sessions/{id}/messages", """{"text":"I smell smoke"}"""));
        Assert.Equal(
            [
                "wirecoach.commit.duration stored=True: 3",
                "wirecoach.gate.stopped referred=False: 1",
                "wirecoach.sign_ins outcome=refused role=Manager: 1",
                "wirecoach.sign_ins outcome=signed-in role=Technician: 1",
                "wirecoach.turn.duration kind=message: 2",
                "wirecoach.turn.duration kind=open: 1",
                "wirecoach.turn.refused kind=facts problem=invalid-fact: 1",
            ],
            counted.Select(one => $"{one.Key}: {one.Value}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_configured_collector_is_sent_the_figures_and_no_words()
    {
        await using var collector = await Collector.Start();
        using (var service = new ServiceFixture(("Metrics:Endpoint", collector.Address), ("OTEL_METRIC_EXPORT_INTERVAL", "100")))
        {
            var id = (await service.Post("/api/sessions", new { role = "technician", region = "na", who = "ZQXWHO" })).GetProperty("id").GetString();
            await service.Post($"/api/sessions/{id}/messages", new { text = Words });
            foreach (var name in (string[])["wirecoach.turn.duration", "wirecoach.commit.duration", "wirecoach.sessions.open", "http.server.request.duration", "dotnet.gc.collections"])
            {
                await collector.Has(name);
            }
        }

        Assert.DoesNotContain("ZQX", collector.Received, StringComparison.Ordinal);
        Assert.Equal(["/v1/metrics"], collector.Paths.Distinct(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_collector_that_is_away_disturbs_nobody()
    {
        using var service = new ServiceFixture(("Metrics:Endpoint", "http://127.0.0.1:9"), ("OTEL_METRIC_EXPORT_INTERVAL", "50"));
        for (var number = 0; number < 20; number++)
        {
            await service.Post("/api/sessions", new { role = "technician", region = "na" });
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }
    }

    [Fact]
    public async Task A_collector_that_is_no_address_stops_the_start_with_one_sentence()
    {
        var (code, _, errors) = await ServiceProcess.Fail(Folder, "--Metrics:Endpoint", "collector");
        Assert.Equal(1, code);
        Assert.Contains("Metrics:Endpoint must be", errors, StringComparison.Ordinal);
    }

    private static void Enable(Instrument instrument, MeterListener listening, Meter own)
    {
        if (ReferenceEquals(instrument.Meter, own))
        {
            listening.EnableMeasurementEvents(instrument);
        }
    }

    private static void Add(ConcurrentDictionary<string, double> counted, Instrument instrument, double value, ReadOnlySpan<KeyValuePair<string, object?>> tags)
    {
        var labels = tags.ToArray().Select(tag => $"{tag.Key}={tag.Value}").Order(StringComparer.Ordinal);
        counted.AddOrUpdate($"{instrument.Name} {string.Join(' ', labels)}", value, (_, before) => before + value);
    }

    private static async Task<HttpStatusCode> Post(HttpClient browser, string path, string json)
    {
        using var content = new StringContent(json, Encoding.UTF8, "application/json");
        using var response = await browser.PostAsync(path, content, TestContext.Current.CancellationToken);
        return response.StatusCode;
    }

    /// <summary>What OpenTelemetry calls a collector, as far as the test needs one: it keeps the bodies.</summary>
    private sealed class Collector(WebApplication app, ConcurrentQueue<(string Path, string Body)> received) : IAsyncDisposable
    {
        public string Address => app.Urls.Single();

        public IEnumerable<string> Paths => received.Select(one => one.Path);

        public string Received => string.Concat(received.Select(one => one.Body));

        public static async Task<Collector> Start()
        {
            var received = new ConcurrentQueue<(string Path, string Body)>();
            var builder = WebApplication.CreateSlimBuilder();
            builder.WebHost.UseUrls("http://127.0.0.1:0");
            builder.Logging.ClearProviders();
            var app = builder.Build();
            app.MapPost("/{**path}", async (HttpRequest request) =>
            {
                using var body = new MemoryStream();
                await request.Body.CopyToAsync(body);
                received.Enqueue((request.Path, Encoding.Latin1.GetString(body.ToArray())));
            });
            await app.StartAsync();
            return new(app, received);
        }

        public async Task Has(string name)
        {
            for (var tries = 0; tries < 1200; tries++)
            {
                if (Received.Contains(name, StringComparison.Ordinal))
                {
                    return;
                }

                await Task.Delay(50, TestContext.Current.CancellationToken);
            }

            Assert.Fail($"The collector was never sent {name}.");
        }

        public ValueTask DisposeAsync() => app.DisposeAsync();
    }
}
