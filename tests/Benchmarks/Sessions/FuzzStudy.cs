using System.Diagnostics;
using System.Globalization;
using System.Text;
using WireCoach.Service.Tests;

namespace WireCoach.Benchmarks.Sessions;

/// <summary>Sends many bodies that no careful client sends, several at once, and counts what comes back.</summary>
internal static class FuzzStudy
{
    private const int Senders = 8;

    public static void Run(string[] args) => Run(args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1_000_000).GetAwaiter().GetResult();

    private static async Task Run(int bodies)
    {
        var folder = Directory.CreateTempSubdirectory("wirecoach-fuzz-").FullName;
        var failed = 0;
        await using (var service = await ServiceProcess.Start(folder))
        {
            await service.Open();
            var before = service.Mebibytes;
            var watch = Stopwatch.StartNew();
            var counts = await Task.WhenAll(Enumerable.Range(0, Senders).Select(sender => Task.Run(() => Send(service, sender, bodies / Senders))));
            var statuses = counts.SelectMany(count => count.Statuses).GroupBy(status => status.Key, status => status.Value).OrderBy(status => status.Key);
            Console.WriteLine($"{bodies} bodies in {watch.Elapsed.TotalSeconds:0} s; {string.Join(", ", statuses.Select(status => $"{status.Key}: {status.Sum()}"))}");
            Console.WriteLine($"slowest {counts.Max(count => count.Slowest):0} ms; memory {before:0} MiB before, {service.Mebibytes:0} MiB after");
            failed = counts.Sum(count => count.Statuses.Where(status => status.Key >= 500).Sum(status => status.Value));
        }

        Directory.Delete(folder, recursive: true);
        if (failed > 0)
        {
            throw new InvalidOperationException($"{failed} answers were failures.");
        }
    }

    private static async Task<(Dictionary<int, int> Statuses, double Slowest)> Send(ServiceProcess service, int seed, int bodies)
    {
        var fuzz = new BodyFuzz(seed);
        var statuses = new Dictionary<int, int>();
        var slowest = 0.0;
        var id = await service.Open();
        for (var number = 0; number < bodies; number++)
        {
            if (number % 200 == 0)
            {
                id = await service.Open();
            }

            var (part, body) = fuzz.Next();
            using var content = new StringContent(body, Encoding.UTF8, "application/json");
            var started = Stopwatch.GetTimestamp();
            using var response = await service.Client.PostAsync(part.Length == 0 ? "/api/sessions" : $"/api/sessions/{id}/{part}", content);
            slowest = Math.Max(slowest, Stopwatch.GetElapsedTime(started).TotalMilliseconds);
            var status = (int)response.StatusCode;
            statuses[status] = statuses.GetValueOrDefault(status) + 1;
            if (status >= 500)
            {
                Console.WriteLine($"{status} at {part}: {body}");
            }

            if (part == "close" && response.IsSuccessStatusCode)
            {
                id = await service.Open();
            }
        }

        return (statuses, slowest);
    }
}
