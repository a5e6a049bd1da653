using System.Diagnostics;
using System.Text.Json;
using System.Text.RegularExpressions;
using WireCoach.Rules.Tests;

namespace WireCoach.Service.Tests.Hosting;

/// <summary>The published folder as it is installed: started from anywhere, it finds its knowledge and its pages' files, and a new one goes on with the old one's records.</summary>
public sealed partial class PublishedTest : DataFolderTest
{
    [Fact]
    public async Task A_published_service_runs_from_anywhere_and_a_new_one_keeps_the_records()
    {
        var (first, second, data) = (Path.Combine(Folder, "first"), Path.Combine(Folder, "second"), Path.Combine(Folder, "data"));
        await Publish(first);
        string id;
        await using (var service = await ServiceProcess.Published(first, data))
        {
            var page = await service.Client.GetStringAsync("/", TestContext.Current.CancellationToken);
            var files = FileOfPage().Matches(page).Select(match => match.Groups[1].Value).Distinct(StringComparer.Ordinal).ToList();
            Assert.Contains(files, file => file.EndsWith(".css", StringComparison.Ordinal));
            Assert.Contains(files, file => file.EndsWith(".js", StringComparison.Ordinal));
            foreach (var file in files)
            {
                Assert.NotEmpty(await service.Client.GetByteArrayAsync($"/{file.TrimStart('/')}", TestContext.Current.CancellationToken));
            }

            id = await service.Open();
            await service.Post($"/api/sessions/{id}/messages", new { text = "1-4 is 1.7" });
            Assert.Equal(0, await service.Stop());
        }

        Directory.Move(first, second); // a new build in another place: nothing that matters lies with the program
        await using var upgraded = await ServiceProcess.Published(second, data);
        Assert.Equal(JsonValueKind.Array, (await upgraded.Get($"/api/sessions/{id}")).GetProperty("facts").ValueKind);
        Assert.Equal(1, (await upgraded.Get("/api/sessions")).GetProperty("total").GetInt32());
    }

    private static async Task Publish(string folder)
    {
        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        var configuration = AppContext.BaseDirectory.Contains("release", StringComparison.OrdinalIgnoreCase) ? "Release" : "Debug";
        foreach (var argument in (string[])["publish", Path.Combine(Repository.Root, "service"), "--no-build", "-c", configuration, "-o", folder, "-v", "q", "--nologo", "-nodeReuse:false"])
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, $"{await output}{await errors}");
    }

    [GeneratedRegex("(?:href|src)=\"([^\"#?]+\\.(?:css|js|svg|webmanifest))\"", RegexOptions.NonBacktracking)]
    private static partial Regex FileOfPage();
}
