using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using WireCoach.Service.Tests;

namespace WireCoach.Benchmarks.Phrasing;

/// <summary>Whether anybody waits for the model: turns beside one that never answers, and turns with none, by turns on two services.</summary>
internal static class WaitingStudy
{
    public static void Run(string[] args) => Run(args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 400).GetAwaiter().GetResult();

    private static async Task Run(int turns)
    {
        using var silent = new TcpListener(IPAddress.Loopback, 0);
        silent.Start(); // takes connections and says nothing, for ever
        var address = $"http://127.0.0.1:{((IPEndPoint)silent.LocalEndpoint).Port}/v1";
        var (off, beside) = (new List<double>(), new List<double>());
        await using (var without = await Started.Begin([]))
        await using (var with = await Started.Begin(["--Phrasing:Endpoint", address, "--Phrasing:Model", "m", "--Phrasing:TimeoutSeconds", "120"]))
        {
            for (var turn = 0; turn < turns; turn++)
            {
                // Whoever is first in a round has the warmer machine: they take turns at that too.
                foreach (var (service, times) in turn % 2 == 0 ? [(without, off), (with, beside)] : new[] { (with, beside), (without, off) })
                {
                    times.Add(await service.Turn(turn));
                }
            }

            Console.WriteLine($"requests for rewordings that were waiting during the turns: {with.Waiting} of {turns}");
        }

        off.RemoveRange(0, turns / 5);
        beside.RemoveRange(0, turns / 5);
        foreach (var share in new[] { 0.5, 0.9, 0.99 })
        {
            Console.WriteLine($"turn, {100 * share:0} of 100 faster: off {At(off, share):0.000} ms, beside a model that never answers {At(beside, share):0.000} ms, ratio {At(beside, share) / At(off, share):0.00}");
        }
    }

    private static double At(List<double> times, double share) => times.Order().ElementAt((int)((times.Count - 1) * share));

    /// <summary>A service process with one session after another, each with its page's request for rewordings open while the next turn comes.</summary>
    private sealed class Started(ServiceProcess service, string folder) : IAsyncDisposable
    {
        private readonly HttpClient _pages = new() { BaseAddress = service.Client.BaseAddress }; // so that the turn finds its connection open in both
        private string _session = "";
        private CancellationTokenSource _page = new();
        private Task _asking = Task.CompletedTask;

        public int Waiting { get; private set; }

        public static async Task<Started> Begin(string[] settings)
        {
            var folder = Directory.CreateTempSubdirectory("wirecoach-waiting-").FullName;
            return new Started(await ServiceProcess.Start(folder, settings), folder);
        }

        public async Task<double> Turn(int number)
        {
            using var opened = await service.Client.PostAsJsonAsync("/api/sessions", new { role = "technician", region = "iec" });
            _session = (await opened.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;
            (await service.Client.PostAsJsonAsync($"/api/sessions/{_session}/messages", new { text = "1.5 kW single phase motor, 230 V 50 Hz. It hums and does not start." })).Dispose();

            // The page that shows the last turn asks for rewordings, as a page does, and the next turn comes while it waits.
            _asking = Ask();
            await Task.Delay(20);
            Waiting += _asking.IsCompleted ? 0 : 1;
            using var body = new StringContent($$"""{"facts":[{"kind":"running","amps":{{4 + (number % 10)}}.5}]}""", Encoding.UTF8, "application/json");
            var started = Stopwatch.GetTimestamp();
            using var response = await service.Client.PostAsync($"/api/sessions/{_session}/facts", body);
            _ = await response.Content.ReadAsByteArrayAsync();
            response.EnsureSuccessStatusCode();
            var took = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
            await _page.CancelAsync();
            await _asking;
            return took;
        }

        public async ValueTask DisposeAsync()
        {
            await service.DisposeAsync();
            _pages.Dispose();
            _page.Dispose();
            Directory.Delete(folder, recursive: true);
        }

        private async Task Ask()
        {
            _page.Dispose();
            _page = new CancellationTokenSource();
            try
            {
                await _pages.GetStringAsync($"/api/sessions/{_session}/rewordings/stream", _page.Token);
            }
            catch (Exception gone) when (gone is OperationCanceledException or HttpRequestException)
            {
                // The page went on.
            }
        }
    }
}
