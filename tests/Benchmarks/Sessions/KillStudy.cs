using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using WireCoach.Service.Tests;

namespace WireCoach.Benchmarks.Sessions;

/// <summary>Kills the service at random under load, again and again on one data folder, and looks for every fact that it acknowledged.</summary>
internal static class KillStudy
{
    private const int Writers = 4;

    public static void Run(string[] args) => Run(args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 300).GetAwaiter().GetResult();

    private static async Task Run(int kills)
    {
        var folder = Directory.CreateTempSubdirectory("wirecoach-kill-").FullName;
        var chance = new Random(20260314);
        var acknowledged = new Dictionary<string, int>(StringComparer.Ordinal);
        var (facts, lost, more, startUps) = (0L, 0L, 0L, 0);
        for (var kill = 0; kill < kills; kill++)
        {
            if (chance.Next(10) == 0)
            {
                startUps++;
                await KillInStartUp(folder, chance);
            }

            await using var service = await ServiceProcess.Start(folder);
            foreach (var id in acknowledged.Keys.TakeLast(2 * Writers))
            {
                var (missing, unasked) = await Compare(service, id, acknowledged[id]);
                (lost, more) = (lost + missing, more + unasked);
            }

            var ids = await Task.WhenAll(Enumerable.Range(0, Writers).Select(_ => service.Open()));
            var load = ids.Select(id => Load(service, id)).ToArray();
            await Task.Delay(chance.Next(20, 500));
            await service.Kill();
            foreach (var (id, count) in ids.Zip(await Task.WhenAll(load)))
            {
                acknowledged[id] = count;
                facts += count;
            }
        }

        await using (var service = await ServiceProcess.Start(folder))
        {
            foreach (var (id, count) in acknowledged)
            {
                lost += (await Compare(service, id, count)).Missing;
            }

            var page = await service.Get("/api/sessions?size=1");
            Console.WriteLine($"{kills} kills under load, {startUps} more in start-up: {facts} facts acknowledged in {acknowledged.Count} sessions, {lost} lost, {more} stored but not acknowledged");
            Console.WriteLine($"sessions in the list: {page.GetProperty("total").GetInt32()}; journal {new DirectoryInfo(folder).EnumerateFiles("journal-*").Sum(file => file.Length) / 1048576.0:0.0} MiB");
        }

        Directory.Delete(folder, recursive: true);
        if (lost > 0)
        {
            throw new InvalidOperationException("Acknowledged facts were lost.");
        }
    }

    private static async Task<(int Missing, int Unasked)> Compare(ServiceProcess service, string id, int acknowledged)
    {
        var session = await service.Get($"/api/sessions/{id}");
        var ohms = session.GetProperty("facts").EnumerateArray().Select(fact => fact.GetProperty("ohms").GetDouble()).ToHashSet();
        var missing = Enumerable.Range(1, acknowledged).Count(number => !ohms.Contains(number));
        return (missing, ohms.Count - acknowledged + missing);
    }

    private static async Task KillInStartUp(string folder, Random chance)
    {
        using var process = ServiceProcess.Run(folder, []);
        _ = process.StandardOutput.ReadToEndAsync();
        _ = process.StandardError.ReadToEndAsync();
        await Task.Delay(chance.Next(100, 900));
        process.Kill();
        await process.WaitForExitAsync();
    }

    private static async Task<int> Load(ServiceProcess service, string id)
    {
        for (var number = 1; ; number++)
        {
            try
            {
                using var response = await service.Client.PostAsJsonAsync(
                    $"/api/sessions/{id}/facts", new { facts = new[] { new { kind = "reading", from = "1", to = "4", ohms = number } } }, JsonSerializerOptions.Web);
                if (!response.IsSuccessStatusCode)
                {
                    return number - 1;
                }
            }
            catch (HttpRequestException)
            {
                return number - 1;
            }
        }
    }
}
