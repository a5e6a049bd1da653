using System.Globalization;
using System.Text;
using System.Text.Json;
using WireCoach.Rules.Cases;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Endpoints.Sessions;

/// <summary>A session's log, or many sessions, as a table for a spreadsheet; no cell can turn into a formula.</summary>
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

    /// <summary>A line for each session.</summary>
    public static string Of(IReadOnlyList<SessionSummary> sessions)
    {
        var table = new StringBuilder("session,opened,changed,who,motor,role,region,status,verdict,goal,layout,causes,cautions,confirmed,not confirmed,touches,minutes,practice,first words\r\n");
        foreach (var session in sessions)
        {
            table.AppendJoin(',', Cells(session).Select(Cell)).Append("\r\n");
        }

        return table.ToString();
    }

    private static string[] Cells(SessionSummary session) =>
    [
        session.Id,
        Time(session.CreatedAt),
        Time(session.ChangedAt),
        session.Who ?? string.Empty,
        session.MotorTag ?? string.Empty,
        session.Role.ToString().ToLowerInvariant(),
        session.Region == Region.Iec ? "iec" : "na",
        session.Status,
        session.Verdict ?? string.Empty,
        session.Goal ?? string.Empty,
        session.Layout ?? string.Empty,
        string.Join(' ', session.Causes),
        string.Join(' ', session.Cautions),
        string.Join(' ', session.Confirmed),
        string.Join(' ', session.NotConfirmed),
        session.Touches.ToString(CultureInfo.InvariantCulture),
        (session.ChangedAt - session.CreatedAt).TotalMinutes.ToString("0.#", CultureInfo.InvariantCulture),
        session.Practice ? "yes" : "no",
        session.Title ?? string.Empty,
    ];

    private static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);

    private static string[] Cells(LogEntry entry) =>
    [
        entry.Sequence.ToString(CultureInfo.InvariantCulture),
        Time(entry.At),
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
