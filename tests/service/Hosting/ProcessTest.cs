using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text.Json;

namespace WireCoach.Service.Tests.Hosting;

/// <summary>The service as a process: how it starts, stops and is killed.</summary>
public sealed class ProcessTest : DataFolderTest
{
    [Fact]
    public async Task A_session_goes_on_after_a_restart()
    {
        string id;
        JsonElement before;
        await using (var first = await ServiceProcess.Start(Folder))
        {
            id = await first.Open();
            await first.Post($"/api/sessions/{id}/facts", Reading("1", "4", 3.2));
            before = await first.Get($"/api/sessions/{id}");
            Assert.Equal(0, await first.Stop());
        }

        await using var second = await ServiceProcess.Start(Folder);
        var after = await second.Get($"/api/sessions/{id}");
        Assert.Equal(before.GetProperty("facts").ToString(), after.GetProperty("facts").ToString());
        Assert.Equal(before.GetProperty("assessment").ToString(), after.GetProperty("assessment").ToString());
        await second.Post($"/api/sessions/{id}/facts", Reading("2", "5", 3.3));
        Assert.Equal(2, (await second.Get($"/api/sessions/{id}")).GetProperty("facts").GetArrayLength());
    }

    [Fact]
    public async Task A_killed_process_loses_nothing_that_it_acknowledged()
    {
        var chance = new Random(14);
        var acknowledged = new Dictionary<string, List<double>>(StringComparer.Ordinal);
        for (var kill = 0; kill < 4; kill++)
        {
            await using var service = await ServiceProcess.Start(Folder);
            foreach (var id in acknowledged.Keys.TakeLast(6))
            {
                var facts = (await service.Get($"/api/sessions/{id}")).GetProperty("facts");
                var ohms = facts.EnumerateArray().Select(fact => fact.GetProperty("ohms").GetDouble()).ToList();
                Assert.Equal(acknowledged[id], ohms.Take(acknowledged[id].Count));
                Assert.InRange(ohms.Count, acknowledged[id].Count, acknowledged[id].Count + 1);
                acknowledged[id] = ohms;
            }

            var writers = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => service.Open()));
            var load = writers.Select(id => Load(service, id, acknowledged[id] = [])).ToList();
            await Task.Delay(chance.Next(50, 400), TestContext.Current.CancellationToken);
            await service.Kill();
            await Task.WhenAll(load);
        }
    }

    [Fact]
    public async Task A_stop_in_order_finishes_what_was_taken()
    {
        var taken = new List<double>();
        string id;
        await using (var service = await ServiceProcess.Start(Folder))
        {
            id = await service.Open();
            var load = Load(service, id, taken);
            while (taken.Count < 5 && !load.IsCompleted)
            {
                await Task.Delay(5, TestContext.Current.CancellationToken);
            }

            Assert.Equal(0, await service.Stop());
            await load;
        }

        await using var again = await ServiceProcess.Start(Folder);
        var facts = (await again.Get($"/api/sessions/{id}")).GetProperty("facts");
        Assert.True(taken.Count >= 5);
        Assert.Equal(taken, facts.EnumerateArray().Select(fact => fact.GetProperty("ohms").GetDouble()).Take(taken.Count));
    }

    [Fact]
    public async Task A_second_process_on_one_folder_says_so_and_stops()
    {
        await using var first = await ServiceProcess.Start(Folder);
        await Refused(Folder, "Another WireCoach already uses the data folder");
    }

    [Fact]
    public async Task A_taken_port_stops_the_start_with_one_sentence()
    {
        using var holder = new TcpListener(IPAddress.Loopback, 0);
        holder.Start();
        await Refused(Folder, "address already in use", "--urls", $"http://127.0.0.1:{((IPEndPoint)holder.LocalEndpoint).Port}");
    }

    [Fact]
    public async Task A_folder_that_cannot_be_written_stops_the_start_with_one_sentence()
    {
        var file = Path.Combine(Folder, "a-file");
        await File.WriteAllTextAsync(file, "not a folder", TestContext.Current.CancellationToken);
        await Refused(Path.Combine(file, "data"), "cannot be written");
        await Refused("/proc/wirecoach", "cannot be written");
    }

    [Fact]
    public async Task A_broken_knowledge_file_stops_the_start_with_its_name_and_line()
    {
        var knowledge = Path.Combine(Folder, "knowledge");
        foreach (var file in Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "knowledge"), "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(knowledge, Path.GetRelativePath(Path.Combine(AppContext.BaseDirectory, "knowledge"), file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        await File.AppendAllTextAsync(Path.Combine(knowledge, "sentences", "sessions.yaml"), "- id: broken\n  txt: no such key\n", TestContext.Current.CancellationToken);
        await Refused(Folder, "sentences/sessions.yaml(", "--Knowledge:Folder", knowledge);
    }

    [Fact]
    public async Task A_damaged_journal_stops_the_start_with_its_name()
    {
        await using (var service = await ServiceProcess.Start(Folder))
        {
            await service.Open();
        }

        Flip(Journal, 20);
        await Refused(Folder, "is damaged at byte");
    }

    private static async Task Refused(string folder, string because, params string[] more)
    {
        var (code, _, errors) = await ServiceProcess.Fail(folder, more);
        Assert.NotEqual(0, code);
        Assert.Contains(because, errors, StringComparison.OrdinalIgnoreCase);
        Assert.Single(errors.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    private static object Reading(string from, string to, double ohms) => new { facts = new[] { new { kind = "reading", from, to, ohms } } };

    private static async Task Load(ServiceProcess service, string id, List<double> acknowledged)
    {
        for (var number = 1; ; number++)
        {
            try
            {
                using var response = await service.Client.PostAsJsonAsync($"/api/sessions/{id}/facts", Reading("1", "4", number / 10.0));
                if (!response.IsSuccessStatusCode)
                {
                    return;
                }

                acknowledged.Add(number / 10.0);
            }
            catch (HttpRequestException)
            {
                return;
            }
        }
    }
}
