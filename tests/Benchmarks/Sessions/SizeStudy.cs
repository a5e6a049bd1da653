using System.Buffers;
using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using WireCoach.Rules.Cases;
using WireCoach.Service.Sessions;
using WireCoach.Service.Tests;

namespace WireCoach.Benchmarks.Sessions;

/// <summary>What it costs to have many sessions: 30 facts each, from opening to figures, as a table.</summary>
internal static class SizeStudy
{
    private const int Facts = 30;
    private const int Rounds = 15;

    private static readonly string[] Machines = ["brine pump", "stirrer", "shelf conveyor", "old lathe", "curd mill"];
    private static readonly string[] Complaints = ["hums and does not start", "trips after a minute", "no marks on six wires", "runs the wrong way", "smells hot"];

    public static void Run(string[] args)
    {
        var sizes = args.Length > 0 ? args.Select(size => int.Parse(size, CultureInfo.InvariantCulture)).ToArray() : [1_000, 10_000, 100_000];
        Console.WriteLine("| sessions | journal, database MiB | first open | clean open | open after a kill | turn p50 | list | search | filter | figures | memory MiB |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|");
        foreach (var size in sizes)
        {
            Measure(size).GetAwaiter().GetResult();
        }
    }

    private static async Task Measure(int sessions)
    {
        var folder = Directory.CreateTempSubdirectory("wirecoach-size-").FullName;
        Fill(folder, sessions);
        var (first, service) = await Open(folder);
        await service.Stop();
        await service.DisposeAsync();
        (var clean, service) = await Open(folder);
        await service.Kill();
        await service.DisposeAsync();
        (var killed, service) = await Open(folder);
        await using (service)
        {
            var id = await service.Open();
            var turn = await Median(() => service.Client.PostAsJsonAsync($"/api/sessions/{id}/messages", new { text = "1-4 is 1.7" }));
            var list = await Median(() => service.Client.GetAsync("/api/sessions?size=50"));
            var search = await Median(() => service.Client.GetAsync("/api/sessions?text=lathe+hot"));
            var filter = await Median(() => service.Client.GetAsync("/api/sessions?who=bench+3"));
            var figures = await Median(() => service.Client.GetAsync("/api/figures"));
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {sessions} | {Mebibytes(folder, "journal-*.jsonl"):0}, {Mebibytes(folder, "sessions*.db"):0} | {first:0} ms | {clean:0} ms | {killed:0} ms | {turn:0.0} ms | {list:0.0} ms | {search:0} ms | {filter:0} ms | {figures:0} ms | {service.Mebibytes:0} |"));
        }

        Directory.Delete(folder, recursive: true);
    }

    /// <summary>From the start of the process to its first page.</summary>
    private static async Task<(double Milliseconds, ServiceProcess Service)> Open(string folder)
    {
        var watch = Stopwatch.StartNew();
        var service = await ServiceProcess.Start(folder);
        (await service.Client.GetAsync("/")).EnsureSuccessStatusCode();
        return (watch.Elapsed.TotalMilliseconds, service);
    }

    private static async Task<double> Median(Func<Task<HttpResponseMessage>> request)
    {
        var times = new List<double>();
        for (var round = 0; round < Rounds; round++)
        {
            var watch = Stopwatch.StartNew();
            using var response = (await request()).EnsureSuccessStatusCode();
            await response.Content.ReadAsByteArrayAsync();
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        return times.Order().ElementAt(Rounds / 2);
    }

    private static double Mebibytes(string folder, string files) => Directory.EnumerateFiles(folder, files).Sum(file => new FileInfo(file).Length) / 1048576.0;

    /// <summary>Writes the journal as the service would have written it over a year, file by file.</summary>
    private static void Fill(string folder, int sessions)
    {
        var begin = new DateTimeOffset(2025, 1, 1, 0, 0, 0, TimeSpan.Zero);
        var lines = new ArrayBufferWriter<byte>(1 << 20);
        for (var number = 0; number < sessions; number++)
        {
            var at = begin.AddMilliseconds(Math.Floor(365 * 86_400_000.0 / sessions * number));
            foreach (var stored in Session(SessionId.New(at), number, at))
            {
                EventFormat.Write(lines, stored);
            }

            using var file = new FileStream(Path.Combine(folder, $"journal-{at.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture)}.jsonl"), FileMode.Append);
            file.Write(lines.WrittenSpan);
            lines.ResetWrittenCount();
        }
    }

    private static IEnumerable<StoredEvent> Session(string id, int number, DateTimeOffset at)
    {
        var (sequence, words) = (0, $"{Machines[number % 5]} {number} {Complaints[number / 5 % 5]}");
        yield return Next(new SessionEvent.Opened(Role.Technician, Region.NorthAmerica, $"bench {number % 40}", $"P-{number % 900}", null));
        for (var fact = 0; fact < Facts; fact++)
        {
            var reading = new Fact.Reading { FactId = $"f{fact + 2}-0", From = $"{fact % 6}", To = $"{(fact + 1) % 6}", Ohms = 1.5 + (fact / 10.0) };
            yield return Next(new SessionEvent.FactsTaken([reading], fact == 0 ? words : "1-4 is 1.7"));
        }

        yield return Next(new SessionEvent.CautionShown("isolate-and-prove-dead", "Isolate, lock, prove dead.", []));
        yield return Next(new SessionEvent.Concluded(number % 3 == 0 ? "settled" : "open", "identify", $"layout-{number % 12}", [$"cause-{number % 30}"]));

        StoredEvent Next(SessionEvent happened) => new(id, ++sequence, at.AddSeconds(sequence * 20), happened);
    }
}
