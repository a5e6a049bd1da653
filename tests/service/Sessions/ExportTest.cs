using System.Text.Json;

namespace WireCoach.Service.Tests.Sessions;

/// <summary>A selection of sessions as one file.</summary>
public sealed class ExportTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task A_selection_is_a_line_each_as_csv_and_whole_logs_as_json()
    {
        var first = await Open("export A", "It hums and does not start.");
        var second = await Open("export A", "=HYPERLINK(\"x\"), it trips");
        await Open("export B", "It hums.");
        var table = await service.Client.GetStringAsync("/api/sessions/export?who=export%20A", TestContext.Current.CancellationToken);
        var lines = table.Trim().Split("\r\n");
        Assert.Equal(3, lines.Length);
        Assert.Contains(lines, line => line.StartsWith(first, StringComparison.Ordinal));
        Assert.Contains("\"'=HYPERLINK(\"\"x\"\"), it trips\"", table, StringComparison.Ordinal);

        var (status, logs) = await service.Get($"/api/sessions/export?format=json&id={second}");
        Assert.Equal(200, status);
        Assert.Equal(second, Assert.Single(logs.EnumerateArray()).GetProperty("session").GetProperty("id").GetString());
        Assert.Contains(logs[0].GetProperty("entries").EnumerateArray(), entry => entry.GetProperty("type").GetString() == "asked");
    }

    [Theory]
    [InlineData("format=xls", "format")]
    [InlineData("from=yesterday", "from")]
    [InlineData("role=king", "role")]
    public async Task A_selection_that_cannot_be_read_names_its_member(string query, string member)
    {
        var (status, problem) = await service.Get($"/api/sessions/export?{query}");
        Assert.Equal(400, status);
        Assert.True(problem.GetProperty("errors").TryGetProperty(member, out _));
    }

    private async Task<string> Open(string who, string text) =>
        (await service.Post("/api/sessions", new { role = "technician", region = "na", who, text })).GetProperty("id").GetString()!;
}
