using System.Collections.Concurrent;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace WireCoach.Service.Tests.Store;

/// <summary>What disks do: they fill up, become read-only and lose their power. Nothing acknowledged is lost, what is wrong is said, and what goes on goes on.</summary>
public sealed class DiskFaultsTest
{
    private const int Refusals = 20;

    [Fact]
    public async Task A_full_disk_is_said_and_nothing_acknowledged_is_lost()
    {
        using var disk = new OwnDisk(320);
        await using var service = await ServiceProcess.Start(disk.Folder);
        var id = await service.Open();
        disk.FillUpTo(left: 600 << 10);
        var taken = 0;
        for (var refused = 0; refused < Refusals;)
        {
            // The database gives a little room back now and then: full is what stays full.
            var answer = await Take(service, id, taken + 1);
            Assert.True(answer is HttpStatusCode.OK or HttpStatusCode.ServiceUnavailable, $"{answer}");
            (taken, refused) = answer == HttpStatusCode.OK ? (taken + 1, 0) : (taken, refused + 1);
            Assert.True(taken < 20_000, "The disk never was full.");
        }

        Assert.Contains("journal cannot be written", await Trouble(service), StringComparison.Ordinal);
        Assert.Equal(taken, await Facts(service, id)); // reads go on
        await SaysSo(service);

        Assert.Equal(1, (await service.Get("/api/sessions")).GetProperty("total").GetInt32());
        disk.Free();
        await Recovers(service); // by itself: nobody is sent to a service that is not ready
        Assert.Equal(HttpStatusCode.OK, await Take(service, id, taken + 1));
        await service.Kill();
        await using var again = await ServiceProcess.Start(disk.Folder);
        Assert.Equal(taken + 1, await Facts(again, id));
        Assert.Equal(1, (await again.Get("/api/sessions")).GetProperty("total").GetInt32());
    }

    [Fact]
    public async Task A_disk_that_is_nearly_full_is_said_before_it_is_full()
    {
        using var disk = new OwnDisk(320);
        await using var service = await ServiceProcess.Start(disk.Folder);
        Assert.Null(await Trouble(service));
        disk.FillUpTo(left: 100 << 20);
        Assert.Contains("MiB are free", await Trouble(service), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, await Take(service, await service.Open(), 1));
    }

    [Fact]
    public async Task A_read_only_folder_stops_the_start_with_one_sentence_and_changes_nothing()
    {
        using var disk = new OwnDisk(320);
        string id;
        await using (var service = await ServiceProcess.Start(disk.Folder))
        {
            id = await service.Open();
            await Take(service, id, 1);
            Assert.Equal(0, await service.Stop());
        }

        disk.MakeReadOnly();
        var before = Contents(disk.Folder);
        var (code, _, errors) = await ServiceProcess.Fail(disk.Folder);
        Assert.Equal(1, code);
        Assert.Contains("cannot be written", errors, StringComparison.Ordinal);
        Assert.Single(errors.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(before, Contents(disk.Folder));
        disk.MakeWritable();
        await using var again = await ServiceProcess.Start(disk.Folder);
        Assert.Equal(1, await Facts(again, id));
    }

    [Fact]
    public async Task A_power_cut_loses_nothing_acknowledged()
    {
        using var disk = new OwnDisk(320);
        var chance = new Random(20260314);
        var acknowledged = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        for (var cut = 0; cut < 4; cut++)
        {
            Dictionary<string, int> counted;
            await using (var service = await ServiceProcess.Start(disk.Folder))
            {
                var ids = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => service.Open()));
                var load = ids.Select(id => Load(service, id, acknowledged)).ToList();
                await Task.Delay(chance.Next(200, 900), TestContext.Current.CancellationToken);
                counted = new(acknowledged, StringComparer.Ordinal); // what was acknowledged before the light went out
                disk.Cut();
                Assert.NotNull(await Trouble(service, patience: 3000));
                await service.Kill();
                await Task.WhenAll(load);
            }

            disk.Restore();
            await using var again = await ServiceProcess.Start(disk.Folder);
            foreach (var (id, facts) in counted)
            {
                var found = await Facts(again, id);
                Assert.InRange(found, facts, int.MaxValue);
                acknowledged[id] = found; // a sync that was under way when the light went out counts as nothing
            }

            Assert.Equal(acknowledged.Count, (await again.Get("/api/sessions")).GetProperty("total").GetInt32());
            await again.Stop();
        }
    }

    private static async Task<HttpStatusCode> Take(ServiceProcess service, string id, int number)
    {
        using var response = await service.Client.PostAsJsonAsync(
            $"/api/sessions/{id}/facts", new { facts = new[] { new { kind = "reading", from = "1", to = "4", ohms = number / 10.0 } } }, TestContext.Current.CancellationToken);
        return response.StatusCode;
    }

    private static async Task<int> Facts(ServiceProcess service, string id) => (await service.Get($"/api/sessions/{id}")).GetProperty("facts").GetArrayLength();

    /// <summary>A person is told too, and what was typed is still there.</summary>
    private static async Task SaysSo(ServiceProcess service)
    {
        var token = Access.SharedService.Token(await service.Client.GetStringAsync("/", TestContext.Current.CancellationToken));
        using var answer = await Access.SharedService.Post(service.Client, "/", ("_handler", "open"), ("__RequestVerificationToken", token), ("Form.Role", "Technician"), ("Form.Region", "Iec"), ("Form.Text", "brine pump hums"));
        var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("brine pump hums", page, StringComparison.Ordinal);
        Assert.Contains("could not be written to disk", page, StringComparison.OrdinalIgnoreCase);
    }

    private static async Task<string?> Trouble(ServiceProcess service, int patience = 1)
    {
        for (var tries = 0; ; tries++)
        {
            using var response = await service.Client.GetAsync("/health/ready", TestContext.Current.CancellationToken);
            var trouble = (await response.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("trouble").GetString();
            Assert.Equal(trouble is null, response.IsSuccessStatusCode);
            if (trouble is not null || tries + 1 >= patience)
            {
                return trouble;
            }

            await Task.Delay(20, TestContext.Current.CancellationToken);
        }
    }

    private static async Task Recovers(ServiceProcess service)
    {
        for (var tries = 0; await Trouble(service) is { } trouble; tries++)
        {
            Assert.True(tries < 1200, trouble);
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }
    }

    private static async Task Load(ServiceProcess service, string id, ConcurrentDictionary<string, int> acknowledged)
    {
        acknowledged[id] = 0;
        try
        {
            for (var number = 1; await Take(service, id, number) == HttpStatusCode.OK; number++)
            {
                acknowledged[id] = number;
            }
        }
        catch (HttpRequestException)
        {
            // killed
        }
    }

    private static List<string> Contents(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(file => $"{file} {Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(file)))}")];
}
