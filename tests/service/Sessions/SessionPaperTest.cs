using System.Text.Json;
using UglyToad.PdfPig;
using WireCoach.Service.Tests.Conversations;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>The paper of a job, read back by a PDF reader that shares nothing with what wrote it.</summary>
public sealed class SessionPaperTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly Dictionary<string, string> Tags = new(StringComparer.Ordinal)
    {
        ["T1"] = "4", ["T2"] = "1", ["T3"] = "2", ["T4"] = "6", ["T5"] = "3", ["T8"] = "5",
    };

    [Fact]
    public async Task A_finished_job_fits_two_sheets_of_either_paper_with_everything_to_read_tick_and_write()
    {
        var client = new MemberClient(service.Client, new BenchAnswers(new BenchMotor(Tags, 1.5, 3.4)) { Supply = 240 });
        await client.Hold(new
        {
            role = "technician",
            region = "na",
            motorTag = "brine pump",
            instruments = new[] { "multimeter", "clamp-meter", "insulation-tester", "low-voltage-ac" },
            motor = new { horsepower = 0.75, volts = new[] { 115, 230 }, amps = new[] { 10.4, 5.2 }, rpm = 1140, hertz = 60, phases = 1 },
        });
        Assert.Equal("verified", client.Status);

        foreach (var (paper, width, height) in new[] { ("a4", 595, 842), ("letter", 612, 792) })
        {
            using var document = await Paper(client.Id, $"&paper={paper}");
            Assert.InRange(document.NumberOfPages, 1, 2);
            Assert.All(document.GetPages(), page => Assert.Equal((width, height), ((int)Math.Round(page.Width), (int)Math.Round(page.Height))));
            Assert.All(document.GetPages(), page => Assert.Contains(client.Id, page.Text, StringComparison.Ordinal));
            var text = string.Concat(document.GetPages().Select(page => page.Text));
            Assert.All(client.Plan.GetProperty("joints").EnumerateArray(), joint => Assert.Contains(joint.GetProperty("name").GetString()!, text, StringComparison.Ordinal));
            Assert.All(["brine pump", "Cautions", "Before power", "After power", "240 V", "Ω", "verified", "at least", "turns the right way"], expected => Assert.Contains(expected, text, StringComparison.Ordinal));
            Assert.Equal(["Joints", "Cautions", "After power"], new[] { "Joints", "Cautions", "After power" }.OrderBy(heading => text.IndexOf(heading, StringComparison.Ordinal)));
            var steps = client.Plan.GetProperty("steps").GetArrayLength();
            Assert.All(Enumerable.Range(1, steps), step => Assert.Contains($"{step}.", text, StringComparison.Ordinal));
            Assert.True(document.GetPages().Sum(page => page.Paths.Count) > 60, "The diagram and the boxes are drawn as lines.");
            Assert.Equal(0, document.GetPages().Sum(page => page.NumberOfImages));
            Assert.All(document.GetPages().SelectMany(page => page.Letters), letter => Assert.InRange(letter.BoundingBox.Right, 0, width - 20));
        }
    }

    /// <summary>On paper, on the page and in the file: what was found and what to do, then what to beware of, then what was told.</summary>
    [Fact]
    public async Task The_result_stands_before_the_cautions_and_those_before_the_facts()
    {
        var id = (await service.Post("/api/sessions", new { role = "technician", region = "na", text = "it hums and does not start" })).GetProperty("id").GetString()!;
        string[] order = ["Open question", "What was found, and what to do", "Cautions", "What is known"];
        using var document = await Paper(id, string.Empty);
        var page = await service.Client.GetStringAsync($"/api/sessions/{id}/report", TestContext.Current.CancellationToken);
        Assert.All(new[] { string.Concat(document.GetPages().Select(sheet => sheet.Text)), page }, text =>
        {
            Assert.All(order, heading => Assert.Contains(heading, text, StringComparison.Ordinal));
            Assert.Equal(order, order.OrderBy(heading => text.IndexOf(heading, StringComparison.Ordinal)));
        });
    }

    [Fact]
    public async Task A_job_without_a_plan_says_so_and_what_is_still_open()
    {
        var opened = await service.Post("/api/sessions", new { role = "homeowner", region = "iec", text = "it just hums" });
        using var document = await Paper(opened.GetProperty("id").GetString()!, string.Empty);
        Assert.Equal(842, (int)Math.Round(document.GetPage(1).Height));
        Assert.Contains("No plan yet", document.GetPage(1).Text, StringComparison.Ordinal);
        Assert.Contains("Open question", document.GetPage(1).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_paper_that_does_not_exist_is_refused_by_its_name()
    {
        var id = (await service.Post("/api/sessions", new { role = "technician", region = "na" })).GetProperty("id").GetString();
        var (status, problem) = await service.Get($"/api/sessions/{id}/report?format=pdf&paper=a0");
        Assert.Equal(400, status);
        Assert.Contains("a4, letter", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Twenty_papers_at_once_are_all_whole()
    {
        var id = (await service.Post("/api/sessions", new { role = "technician", region = "na", text = "six leads 1 2 3 4 5 6" })).GetProperty("id").GetString()!;
        var texts = await Task.WhenAll(Enumerable.Range(0, 20).Select(async _ =>
        {
            using var document = await Paper(id, string.Empty);
            return document.GetPage(1).Text;
        }));
        Assert.Single(texts.Distinct(StringComparer.Ordinal));
    }

    private async Task<PdfDocument> Paper(string id, string more)
    {
        using var response = await service.Client.GetAsync($"/api/sessions/{id}/report?format=pdf{more}", TestContext.Current.CancellationToken);
        Assert.True(response.IsSuccessStatusCode, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal("application/pdf", response.Content.Headers.ContentType?.MediaType);
        Assert.EndsWith(".pdf", response.Content.Headers.ContentDisposition?.FileName, StringComparison.Ordinal);
        var bytes = await response.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
        if (Environment.GetEnvironmentVariable("WIRECOACH_KEEP") is { } folder)
        {
            await File.WriteAllBytesAsync(Path.Combine(folder, $"{id}{more.Replace('&', '-')}.pdf"), bytes, TestContext.Current.CancellationToken);
        }

        return PdfDocument.Open(bytes);
    }
}
