using System.Globalization;
using System.Text;
using System.Text.Json;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Endpoints.Sessions;

/// <summary>A session's log as a table for a spreadsheet; no cell can turn into a formula.</summary>
internal static class CsvReport
{
    public static string Of(SessionLog log)
    {
        var table = new StringBuilder("number,time,type,id,text,rules,facts,who\r\n");
        foreach (var entry in log.Entries)
        {
            table.AppendJoin(',', Cells(entry).Select(Cell)).Append("\r\n");
        }

        return table.ToString();
    }

    private static string[] Cells(LogEntry entry) =>
    [
        entry.Sequence.ToString(CultureInfo.InvariantCulture),
        entry.At.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
        entry.Type,
        entry.Id ?? string.Empty,
        entry.Text ?? string.Empty,
        string.Join(' ', entry.Rules),
        Facts(entry),
        entry.Who ?? string.Empty,
    ];

    private static string Facts(LogEntry entry) =>
        entry.Facts.Count > 0 && entry.Written.TryGetProperty("body", out var body) && body.TryGetProperty("facts", out var facts) ? JsonSerializer.Serialize(facts) : string.Empty;

    private static string Cell(string text)
    {
        var safe = text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' ? $"'{text}" : text;
        return safe.AsSpan().ContainsAny("\",\r\n") ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }
}
